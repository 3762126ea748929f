package org.framewright.ui.page;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Answer;
import org.framewright.ui.session.Step;
import org.junit.jupiter.api.Test;

class StepWordsTest {
  private final ShotList list =
      new ShotList(List.of(new Setup("012", "Tweed jacket"), new Setup("013", "x".repeat(80))));
  private final StepWords words =
      new StepWords(
          Texts.in(Locale.ENGLISH), list::setup, view -> view.equals("F") ? "front" : view);

  private static Step ticked(String code, SetupState state, MarkDetails details) {
    return new Step.Ticked(code, state, details);
  }

  private String said(Step step) {
    return words.of(new Answer.Taken(step));
  }

  @Test
  void everyTickIsASentenceOfWhatIsSoNow() {
    assertThat(said(ticked("012", SetupState.SHOT, MarkDetails.NONE)))
        .isEqualTo("012 Tweed jacket is shot.");
    assertThat(said(ticked("012", SetupState.TO_SHOOT, MarkDetails.NONE)))
        .isEqualTo("012 Tweed jacket is to shoot.");
    assertThat(said(ticked("012", SetupState.SIGNED_OFF, MarkDetails.by("Ines Varga"))))
        .isEqualTo("012 Tweed jacket is signed off by Ines Varga.");
    assertThat(said(ticked("012", SetupState.PICKUP, MarkDetails.NONE.andReason("sleeve"))))
        .isEqualTo("012 Tweed jacket is a pickup: sleeve.");
    assertThat(said(ticked("012", SetupState.PICKUP, MarkDetails.NONE.andReason(""))))
        .isEqualTo("012 Tweed jacket is a pickup.");
    assertThat(said(ticked("012", SetupState.DROPPED, MarkDetails.NONE.andReason("no hat"))))
        .isEqualTo("012 Tweed jacket is dropped: no hat.");
    assertThat(said(ticked("012", SetupState.ON_SET, MarkDetails.NONE.andView("F"))))
        .isEqualTo("012 Tweed jacket is on set, front before the camera.");
  }

  @Test
  void everyStateHasItsSentence() {
    for (var state : SetupState.values()) {
      assertThat(said(ticked("012", state, MarkDetails.NONE))).startsWith("012 Tweed jacket is ");
    }
  }

  @Test
  void twoTicksOfOneStepAreTwoSentencesAndALongTitleIsCut() {
    assertThat(
            said(
                new Step.Ticked(
                    List.of(
                        new Step.Mark("012", SetupState.SHOT, MarkDetails.NONE),
                        new Step.Mark("013", SetupState.ON_SET, MarkDetails.NONE)))))
        .isEqualTo("012 Tweed jacket is shot. 013 " + "x".repeat(48) + "\u2026 is on set.");
  }

  @Test
  void aSetupThatTheListNoLongerHasIsCalledByItsNumber() {
    assertThat(said(ticked("099", SetupState.SHOT, MarkDetails.NONE))).isEqualTo("099 is shot.");
  }

  @Test
  void changesOfTheListAreSaid() {
    assertThat(said(new Step.Moved(List.of("013", "012"), "012")))
        .isEqualTo("012 Tweed jacket has another place in the running order.");
    assertThat(said(new Step.Ordered(List.of("013", "012"))))
        .isEqualTo("What is left to shoot has another order.");
    assertThat(said(new Step.Added(new Setup("014", "Belt"), Optional.empty())))
        .isEqualTo("014 Belt is in the list.");
    assertThat(said(new Step.Changed(new Setup("012", "Tweed coat"))))
        .isEqualTo("012 Tweed coat is changed.");
  }

  private static Step.Frames frames(String... names) {
    return new Step.Frames(
        Stream.of(names).map(FrameId::new).toList(),
        names.length,
        names.length == 1 ? Optional.of(names[0]) : Optional.empty());
  }

  @Test
  void whatIsDoneToFramesIsSaid() {
    assertThat(said(new Step.Selected(frames("IMG_7"), frames(), "Timo")))
        .isEqualTo("IMG_7 is a select.");
    assertThat(said(new Step.Selected(frames("a", "b"), frames(), "Timo")))
        .isEqualTo("2 frames are selects.");
    assertThat(said(new Step.Selected(frames(), frames("IMG_7"), "Timo")))
        .isEqualTo("IMG_7 is no select any more.");
    assertThat(said(new Step.Selected(frames("IMG_7"), frames("a"), "Timo")))
        .isEqualTo("IMG_7 is the select, the other one is not.");
    assertThat(said(new Step.Selected(frames("IMG_7"), frames("a", "b"), "Timo")))
        .isEqualTo("IMG_7 is the select, the other 2 are not.");
    assertThat(said(new Step.Rated(frames("IMG_7"), 3, "Timo"))).isEqualTo("IMG_7 is rated 3.");
    assertThat(said(new Step.Rated(frames("a", "b"), 0, "Timo")))
        .isEqualTo("2 frames are not rated any more.");
    assertThat(said(new Step.Placed(frames("a", "b"), new Place("012", Optional.of("F")), "Timo")))
        .isEqualTo("2 frames belong to 012 Tweed jacket now.");
  }

  @Test
  void whatIsUndoneIsSaidWithWhatItWas() {
    var step = ticked("012", SetupState.SHOT, MarkDetails.NONE);
    assertThat(words.of(new Answer.Undone(Optional.of(step))))
        .isEqualTo("Undone: 012 Tweed jacket is shot.");
    assertThat(words.of(new Answer.Undone(Optional.empty())))
        .isEqualTo("The last tick is taken back.");
    assertThat(words.of(new Answer.Redone(Optional.of(step))))
        .isEqualTo("012 Tweed jacket is shot.");
    assertThat(words.of(new Answer.Redone(Optional.empty())))
        .isEqualTo("Nothing was undone that could be done again.");
  }

  @Test
  void aCommentIsSaidWithItsWords() {
    var none = Step.Frames.of(List.of());
    assertThat(said(new Step.Commented("012", none, "collar lower", "Ada")))
        .isEqualTo("012 Tweed jacket has a comment: collar lower");
  }
}
