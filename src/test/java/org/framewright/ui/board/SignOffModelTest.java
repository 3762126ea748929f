package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.framewright.job.SetupStatus;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Test;

class SignOffModelTest {
  private static final Set<String> COMPUTERS = Set.of("vm-7-0a1b2c3d", "vm-7", "localhost");

  private static SignOffModel of(String... names) {
    return new SignOffModel(List.of(names), COMPUTERS);
  }

  private static SetupStatus agreed(String by, int minute) {
    var at = Optional.of(Instant.parse("2026-11-23T12:00:00Z").plusSeconds(60L * minute));
    return new SetupStatus(SetupState.SIGNED_OFF, at, Optional.of(by), at, Optional.empty(), false);
  }

  @Test
  void whoAgreedBeforeIsOfferedTheLastFirstAndEachOnce() {
    assertThat(
            SignOffModel.before(
                Stream.of(
                    agreed("Odette Kvist", 1),
                    SetupStatus.TO_SHOOT,
                    agreed("Bram de Wit", 3),
                    agreed("odette kvist ", 2))))
        .containsExactly("Bram de Wit", "odette kvist ");
  }

  @Test
  void noMoreNamesAreOfferedThanThereAreDigitsFor() {
    assertThat(
            SignOffModel.before(
                Stream.iterate(0, i -> i + 1).limit(9).map(i -> agreed("P" + i, i))))
        .containsExactly("P8", "P7", "P6", "P5");
  }

  @Test
  void theLastWhoAgreedIsChosenUntilAnotherIs() {
    var model = of("Bram de Wit", "Odette Kvist");
    assertThat(model.name()).contains("Bram de Wit");
    model.step(1);
    model.step(1);
    assertThat(model.name()).contains("Odette Kvist");
    model.choose(0);
    assertThat(model.name()).contains("Bram de Wit");
    model.choose(2);
    assertThat(model.name()).as("there is no third").contains("Bram de Wit");
  }

  @Test
  void aTypedNameTakesThePlaceOfTheChosenOne() {
    var model = of("Bram de Wit");
    model.typed().set("  Ines Vance ");
    assertThat(model.name()).contains("Ines Vance");
    assertThat(model.chosen().get()).isEqualTo(-1);
    model.choose(0);
    assertThat(model.typed().get()).isEmpty();
    assertThat(model.name()).contains("Bram de Wit");
  }

  @Test
  void whatWasTypedAndTakenAwayLeavesTheNameOfBefore() {
    var model = of("Bram de Wit");
    model.typed().set("I");
    model.typed().set("");
    assertThat(model.name()).contains("Bram de Wit");
  }

  @Test
  void withoutANameNobodyAgrees() {
    var model = of();
    assertThat(model.ready().get()).isFalse();
    for (var none : List.of("", "   ", "…", "1", "?!")) {
      model.typed().set(none);
      assertThat(model.ready().get()).as(none).isFalse();
    }
    assertThat(model.lacksLetters()).isTrue();
    for (var name : List.of("Ö", "عبد", "山田", "de Wit, Bram")) {
      model.typed().set(name);
      assertThat(model.ready().get()).as(name).isTrue();
    }
  }

  @Test
  void aComputersNameIsNobodysWhateverItsCase() {
    var model = of();
    for (var name : List.of("vm-7-0a1b2c3d", " VM-7 ", "Localhost")) {
      model.typed().set(name);
      assertThat(model.name()).as(name).isEmpty();
      assertThat(model.isComputer()).as(name).isTrue();
    }
    model.typed().set("Vm-7 van Dam");
    assertThat(model.name()).isPresent();
  }
}
