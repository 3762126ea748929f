package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Text;
import org.framewright.shotlist.ListFit;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;

class SetupDraftTest {
  private final Setup coat =
      new Setup(
          "A-09",
          "Coat",
          List.of(new View("F", OptionalInt.of(4)), new View("B")),
          OptionalInt.of(6),
          new LinkedHashMap<>(Map.of("Rack", "R2")));
  private final ShotList list = new ShotList(List.of(new Setup("A-08", "Hat"), coat));

  private SetupDraft draft(SetupDraft.Kind kind, Optional<Setup> from, String... labels) {
    return new SetupDraft(
        kind,
        from,
        list,
        List.of(labels),
        setup ->
            setup.code().contains("/")
                ? new ListFit.Made(
                    List.of(
                        new ListFit.Misfit(
                            "setup",
                            setup.code(),
                            Text.of("no name can hold a slash"),
                            Text.of("Leave it out."))),
                    Optional.empty())
                : new ListFit.Made(List.of(), Optional.of("KVO_" + setup.code())),
        new Tasks(Runnable::run, Runnable::run),
        Texts.in(Locale.ENGLISH));
  }

  @Test
  void aNewSetupCountsOnAndHasTheColumnsOfTheList() {
    var draft = draft(SetupDraft.Kind.ADDED, Optional.empty(), "Colour", "rack");
    assertThat(draft.code().get()).isEqualTo("A-10");
    assertThat(draft.columns().keySet()).containsExactly("Rack", "Colour");
    assertThat(draft.ready().get()).isTrue();
    assertThat(draft.name().get()).isEqualTo("KVO_A-10");
    draft.title().set(" Belt ");
    draft.views().set("F:2, D");
    draft.frames().set("5");
    draft.columns().get("Colour").set("red");
    var typed = draft.setup().orElseThrow();
    assertThat(typed.title()).isEqualTo("Belt");
    assertThat(typed.views()).containsExactly(new View("F", OptionalInt.of(2)), new View("D"));
    assertThat(typed.framesWanted()).hasValue(5);
    assertThat(typed.columns()).containsEntry("Colour", "red").containsEntry("Rack", "");
  }

  @Test
  void aListWithoutColumnsOffersTheUsualOnes() {
    var bare =
        new SetupDraft(
            SetupDraft.Kind.ADDED,
            Optional.empty(),
            ShotList.empty(),
            List.of(),
            _ -> new ListFit.Made(List.of(), Optional.empty()),
            new Tasks(Runnable::run, Runnable::run),
            Texts.in(Locale.ENGLISH));
    assertThat(bare.code().get()).isEqualTo("001");
    assertThat(bare.columns().keySet()).containsExactly("Rack", "Model", "Note");
  }

  @Test
  void aDuplicateIsLikeTheOtherButForItsNumber() {
    var draft = draft(SetupDraft.Kind.DUPLICATE, Optional.of(coat));
    assertThat(draft.setup())
        .contains(new Setup("A-10", "Coat", coat.views(), coat.framesWanted(), coat.columns()));
  }

  @Test
  void aSetupThatIsChangedKeepsItsNumberAndAllThatIsNotTyped() {
    var draft = draft(SetupDraft.Kind.CHANGED, Optional.of(coat));
    draft.title().set("Coat, belted");
    assertThat(draft.setup())
        .contains(
            new Setup("A-09", "Coat, belted", coat.views(), coat.framesWanted(), coat.columns()));
  }

  @Test
  void whatIsWrongIsSaidWithItsRemedyAndCannotBeAdded() {
    var draft = draft(SetupDraft.Kind.ADDED, Optional.empty());
    draft.code().set(" ");
    assertThat(draft.finding().get()).isEqualTo("It needs a number.");
    draft.code().set("a-9");
    assertThat(draft.finding().get()).isEqualTo("The list has A-09 already. A-10 is free.");
    draft.code().set("A/10");
    assertThat(draft.finding().get()).isEqualTo("no name can hold a slash. Leave it out.");
    assertThat(draft.name().get()).isEmpty();
    assertThat(draft.setup()).isEmpty();
    draft.code().set("A-10");
    draft.views().set("F, B, F");
    assertThat(draft.finding().get()).isEqualTo("The view F stands there twice.");
    draft.views().set("");
    for (var number : List.of("0", "-1", "many", "12345", "1.5")) {
      draft.frames().set(number);
      assertThat(draft.ready().get()).as(number).isFalse();
      assertThat(draft.finding().get()).contains("a number from 1 to 9,999");
    }
    draft.frames().set("");
    assertThat(draft.ready().get()).isTrue();
    assertThat(draft.finding().get()).isEmpty();
  }

  @Test
  void nothingIsReadyBeforeItsNamesWereTried() {
    var waiting = new java.util.ArrayDeque<Runnable>();
    var draft =
        new SetupDraft(
            SetupDraft.Kind.ADDED,
            Optional.empty(),
            list,
            List.of(),
            _ -> new ListFit.Made(List.of(), Optional.empty()),
            new Tasks(waiting::add, Runnable::run),
            Texts.in(Locale.ENGLISH));
    assertThat(draft.ready().get()).isFalse();
    draft.title().set("Belt");
    waiting.remove().run();
    assertThat(draft.ready().get()).as("what was tried is not what is typed now").isFalse();
    waiting.remove().run();
    assertThat(draft.ready().get()).isTrue();
  }
}
