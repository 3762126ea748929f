package org.framewright.ui.sets;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.job.TestClock;
import org.framewright.studio.Overview;
import org.framewright.studio.OverviewFollower.Heard;
import org.framewright.ui.look.Texts;
import org.junit.jupiter.api.Test;

/** The page of all sets without a page: a played source tells, and a person reads. */
class SetsModelTest {
  private static final Instant NOW = Instant.parse("2026-11-23T14:00:00Z");
  private static final Heard AWAY =
      new Heard.Away(
          new Problem(
              Text.of("the store is not reached"), "store.example", Text.of("Check the network")));

  private final TestClock clock = new TestClock(NOW.toString());
  private final ArrayDeque<Runnable> ui = new ArrayDeque<>();
  private Consumer<Heard> tell = _ -> {};
  private int open;
  private final SetsModel model =
      new SetsModel(
          listener -> {
            tell = listener;
            open++;
            return () -> open--;
          },
          Texts.in(Locale.UK),
          clock,
          ui::add);

  private void hear(Heard... all) {
    for (var heard : all) {
      tell.accept(heard);
    }
    letGo();
  }

  private void letGo() {
    while (!ui.isEmpty()) {
      ui.poll().run();
    }
  }

  private static Heard.Sets sets() {
    return new Heard.Sets(
        InventedSets.of(NOW),
        Map.of(InventedSets.id("2026-11-23_KVO_winter-coats"), Path.of("/shoots/coats")));
  }

  private List<String> names() {
    return model.lines().stream().map(line -> line.name().substring(11)).toList();
  }

  private SetLine line(String name) {
    return model.lines().stream().filter(line -> line.name().endsWith(name)).findFirst().get();
  }

  @Test
  void theSetsThatNeedAPersonComeFirst() {
    model.follow();
    hear(sets());
    assertThat(names())
        .containsExactly(
            "NOVA_evening",
            "KVO_winter-coats",
            "ILMA_knitwear",
            "KVO_shoes",
            "AUREL_bags",
            "SOREN_denim",
            "TANA_swimwear",
            "NOVA_lookbook",
            "MIRE_jewellery");
    assertThat(model.said().get().summary()).isEqualTo("9 sets, 7 need a person");
    assertThat(model.said().get().instead()).isEmpty();
  }

  @Test
  void aSetIsToldWhole() {
    model.follow();
    hear(sets());
    var coats = line("winter-coats");
    assertThat(coats.needWords()).isEqualTo("waits for sign-off");
    assertThat(coats.code() + " " + coats.title()).isEqualTo("018 Cape, double-faced wool");
    assertThat(coats.since()).isEqualTo("since 13:56 · 4 min");
    assertThat(coats.number()).isEqualTo("17 of 32 shot");
    assertThat(coats.signedOff()).isEqualTo("11 signed off");
    assertThat(coats.share()).isEqualTo(17 / 32.0);
    assertThat(coats.finish()).isEqualTo("done between 15:30 and 16:15");
    assertThat(coats.pace()).isEqualTo("7 min a setup lately");
    assertThat(coats.matters()).containsExactly("Waits for sign-off: 016, 017, since 13:13");
    assertThat(coats.heard()).isEqualTo("told at 13:59 by Studio 3");
    assertThat(coats.folder()).isEqualTo(Optional.of(Path.of("/shoots/coats")));
    assertThat(line("shoes").folder()).isEqualTo(Optional.empty());
    assertThat(line("NOVA_evening").matters())
        .containsExactly(
            "The frames still planned do not fit on the disk",
            "Waits for sign-off: 005, since 13:48",
            "3 frames belong to no setup yet",
            "005 has no frame of the view back");
    assertThat(line("denim").heard()).isEqualTo("silent since 13:22 (Loft), 7 events came since");
    assertThat(line("jewellery").finish()).isEqualTo("too early to tell when it is done");
    assertThat(line("lookbook").finish()).isEqualTo("Nothing is left to shoot");
    assertThat(line("swimwear").title()).isEqualTo("No computer told how it stands");
    assertThat(line("swimwear").heard()).isEqualTo("nothing was heard yet");
  }

  @Test
  void whatASetNeedsIsSaidInTheReadersLanguage() {
    var words = new SetWords(Texts.in(Locale.GERMANY), ZoneOffset.UTC, NOW);
    var bags =
        InventedSets.of(NOW).sets().stream().filter(row -> row.name().endsWith("bags")).findFirst();
    assertThat(words.line(bags.orElseThrow(), Optional.empty()).matters())
        .containsExactly("24 Aufnahmen sind nur auf einem Datenträger");
  }

  @Test
  void howLongSomethingIsOnSetGoesOnByItself() {
    model.follow();
    hear(sets());
    clock.pass(Duration.ofMinutes(3));
    model.show();
    assertThat(line("winter-coats").since()).isEqualTo("since 13:56 · 7 min");
  }

  @Test
  void whatIsTypedFindsASetByNameSetupOrMatter() {
    model.follow();
    hear(sets());
    model.typed().set("kvo COATS");
    assertThat(names()).containsExactly("KVO_winter-coats");
    model.typed().set("hammered");
    assertThat(names()).containsExactly("MIRE_jewellery");
    model.typed().set("016");
    assertThat(names()).containsExactly("KVO_winter-coats");
    model.typed().set("disk");
    assertThat(names()).containsExactly("NOVA_evening", "AUREL_bags");
    model.typed().set("nowhere");
    assertThat(model.said().get().instead()).isEqualTo("No set has this.");
    assertThat(model.said().get().summary()).isEqualTo("9 sets, 7 need a person");
    model.typed().set("");
    assertThat(names()).hasSize(9);
  }

  @Test
  void theChosenSetStaysChosenWhereverItGoes() {
    model.follow();
    hear(sets());
    var shoes = line("shoes");
    model.chosen().set(Optional.of(shoes.job()));
    var fewer = sets().overview().sets().stream().skip(2).toList();
    hear(new Heard.Sets(new Overview(fewer), Map.of()));
    assertThat(model.chosenLine().get().name()).isEqualTo(shoes.name());
    model.typed().set("coats");
    assertThat(model.chosenLine()).isEqualTo(Optional.empty());
  }

  @Test
  void whatWasKnownStaysWhereTheStoreIsAway() {
    model.follow();
    hear(sets());
    clock.pass(Duration.ofMinutes(2));
    hear(AWAY);
    clock.pass(Duration.ofMinutes(10));
    hear(AWAY);
    assertThat(model.said().get().away())
        .isEqualTo("The store is not reached since 14:02. This is as of 14:00.");
    assertThat(names()).hasSize(9);
    hear(sets());
    assertThat(model.said().get().away()).isEmpty();
  }

  @Test
  void aStoreThatWasNeverReachedSaysWhatToDo() {
    model.follow();
    assertThat(model.said().get().instead()).isEqualTo("The studio’s store is asked…");
    hear(AWAY);
    assertThat(model.said().get().away()).isEqualTo("The store is not reached since 14:00.");
    assertThat(model.said().get().instead()).isEqualTo("Check the network");
    assertThat(model.said().get().join()).isFalse();
  }

  @Test
  void aComputerWithoutAStoreIsToldHowToJoin() {
    model.follow();
    hear(new Heard.NoStore());
    assertThat(model.said().get().join()).isTrue();
    assertThat(model.said().get().instead()).startsWith("This computer goes by no studio’s store");
    hear(sets());
    assertThat(model.said().get().join()).isFalse();
    assertThat(names()).hasSize(9);
  }

  @Test
  void aStudioThatRestsSaysSo() {
    model.follow();
    hear(new Heard.Sets(new Overview(List.of()), Map.of()));
    assertThat(model.said().get().instead()).isEqualTo("No set was worked on within a week.");
    assertThat(model.said().get().summary()).isEmpty();
  }

  @Test
  void oneRefreshWaitsAtMostAndNothingIsLostInIt() {
    model.follow();
    tell.accept(sets());
    tell.accept(AWAY);
    assertThat(ui).hasSize(1);
    letGo();
    assertThat(names()).hasSize(9);
    assertThat(model.said().get().away()).startsWith("The store is not reached");
  }

  @Test
  void theStoreIsAskedOnlyWhileThePageIsLookedAt() {
    assertThat(open).isZero();
    model.follow();
    model.follow();
    assertThat(open).isEqualTo(1);
    model.pause();
    assertThat(open).isZero();
    hear(sets());
    model.follow();
    assertThat(open).isEqualTo(1);
    assertThat(names()).hasSize(9);
  }
}
