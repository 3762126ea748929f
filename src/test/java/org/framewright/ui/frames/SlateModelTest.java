package org.framewright.ui.frames;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.framewright.frames.Place;
import org.framewright.frames.slate.JobKey;
import org.framewright.frames.slate.Slate;
import org.framewright.job.Job;
import org.framewright.job.TestClock;
import org.framewright.ui.frames.FrameHeading.Kind;
import org.framewright.ui.frames.SlateModel.Word;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Answer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Four frames came while 001 was on set: two of its front, and two of its back. */
class SlateModelTest {
  @TempDir private Path folder;

  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private FramesOfASetup frames;
  private FramesModel model;
  private SlateModel slates;

  @BeforeEach
  void fourFramesOfOneSetupAreThere() throws Exception {
    frames = FramesOfASetup.in(folder, clock, 2);
    model = frames.model();
    slates = model.slates();
  }

  @AfterEach
  void close() {
    frames.close();
  }

  private void goTo(String name) {
    var tile =
        model.groups().get().tiles().stream()
            .filter(one -> one.frame().stem().equals(name))
            .findFirst()
            .orElseThrow();
    model.goTo(tile.frame().id());
    assertThat(model.current()).map(one -> one.frame().stem()).contains(name);
  }

  /** A slate is read from a frame's picture. */
  private void read(String name, String setup, Optional<JobKey> otherJob) {
    var frame =
        model.job().scan().frames().stream()
            .filter(one -> one.stem().equals(name))
            .findFirst()
            .orElseThrow();
    frames
        .session()
        .change(
            "",
            job -> {
              var slate = Slate.of(otherJob.orElse(job.slateKey()), setup);
              return job.recordLooks(Map.of(frame, Optional.of(slate.print())));
            },
            _ -> {},
            failure -> {
              throw new AssertionError(failure);
            });
  }

  private void say(Word word) {
    assertThat(slates.refusal(word)).isEmpty();
    slates.say(word);
  }

  private Optional<String> setupOf(String name) {
    return model.groups().get().tiles().stream()
        .filter(tile -> tile.frame().stem().equals(name))
        .findFirst()
        .flatMap(Tile::place)
        .map(Place::setup);
  }

  private String why() {
    return slates.why().get().words();
  }

  @Test
  void aFrameSaysWhyItBelongsWhereItDoes() {
    goTo("IMG_0002");
    assertThat(why()).isEqualTo("IMG_0002 in 001: it was on set when the frame arrived");
    assertThat(slates.goToSlate()).contains("No slate placed IMG_0002.");
    model.move(new Place("002", Optional.empty()));
    goTo("IMG_0002");
    assertThat(why()).isEqualTo("IMG_0002 in 002: a person moved it");
    model.filter().set("nothing is called so");
    assertThat(why()).isEmpty();
    assertThat(slates.goToSlate()).isPresent();
  }

  @Test
  void aFrameIsSaidToBeASlateAndThatIsTakenBack() throws Exception {
    goTo("IMG_0003");
    slates.sayOf(model.job().list().setup("002").orElseThrow());
    assertThat(frames.answers().getLast()).isInstanceOf(Answer.Taken.class);
    goTo("IMG_0003");
    assertThat(model.current())
        .flatMap(tile -> tile.slate(Texts.in(Locale.UK)))
        .contains("Slate 002");
    assertThat(why()).startsWith("IMG_0003: a slate, of 002, no frame goes by it");
    assertThat(setupOf("IMG_0003")).isEmpty();
    assertThat(Job.open(frames.session().job().folder(), clock).state().slates().words())
        .isNotEmpty();
    model.undo();
    assertThat(setupOf("IMG_0003")).contains("001");
    assertThat(model.headings()).noneMatch(one -> one.kind() == Kind.SLATES);
  }

  @Test
  void aSlateThatWasReadIsSaidToBeNone() {
    read("IMG_0001", "001", Optional.empty());
    goTo("IMG_0001");
    assertThat(model.heading().get().kind()).isEqualTo(Kind.SLATES);
    say(Word.NONE);
    assertThat(setupOf("IMG_0001")).contains("001");
    model.undo();
    assertThat(setupOf("IMG_0001")).isEmpty();
  }

  @Test
  void aSlateThatContradictsWhatWasOnSetIsFollowedAndThatIsTakenBack() {
    read("IMG_0001", "002", Optional.empty());
    goTo("IMG_0002");
    assertThat(why())
        .isEqualTo(
            "IMG_0002 in 001: it was on set when the frame arrived; in doubt: slate IMG_0001 says"
                + " 002");
    assertThat(model.current()).matches(tile -> tile.orElseThrow().inDoubt());
    assertThat(slates.goToSlate()).isEmpty();
    assertThat(model.heading().get().kind()).isEqualTo(Kind.SLATES);
    assertThat(model.heading().get().frames()).isEqualTo(1);
    assertThat(why()).contains("slate IMG_0001 says 002, on set was 001");
    say(Word.FOLLOW);
    assertThat(setupOf("IMG_0002")).contains("002");
    assertThat(setupOf("IMG_0003")).as("put on set anew after the slate").contains("001");
    assertThat(why()).contains("it is right").contains("1 frame goes by it");
    goTo("IMG_0002");
    assertThat(why()).isEqualTo("IMG_0002 in 002: by slate IMG_0001");
    model.undo();
    assertThat(setupOf("IMG_0002")).contains("001");
  }

  @Test
  void whatWasOnSetIsSaidToBeRight() {
    read("IMG_0001", "002", Optional.empty());
    goTo("IMG_0001");
    say(Word.STAY);
    assertThat(model.job().tally().slates().doubts()).isEmpty();
    assertThat(setupOf("IMG_0002")).contains("001");
    assertThat(why()).contains("what was on set was right");
    assertThat(slates.refusal(Word.STAY))
        .contains("It was said of slate IMG_0001 which of the two is right.");
  }

  @Test
  void aSlateThatWasShotAfterItsFramesCountsForThemToo() {
    read("IMG_0003", "002", Optional.empty());
    goTo("IMG_0003");
    say(Word.BEFORE);
    assertThat(setupOf("IMG_0001")).contains("002");
    assertThat(setupOf("IMG_0002")).contains("002");
    assertThat(why()).contains("it counts for the frames before it, too");
    assertThat(slates.refusal(Word.BEFORE)).contains("Slate IMG_0003 counts for them already.");
    model.undo();
    assertThat(setupOf("IMG_0001")).contains("001");
  }

  @Test
  void whatCannotBeSaidSaysWhy() {
    goTo("IMG_0002");
    for (var word : new Word[] {Word.NONE, Word.BEFORE, Word.FOLLOW, Word.STAY}) {
      assertThat(slates.refusal(word)).contains("IMG_0002 is no slate, as far as is known.");
      slates.say(word);
    }
    model.selection().all();
    assertThat(slates.refusal(Word.OF_SETUP)).contains("Choose one frame alone first.");
    read("IMG_0001", "002", Optional.of(new JobKey("ZZZZ")));
    goTo("IMG_0001");
    assertThat(slates.refusal(Word.FOLLOW)).contains("Slate IMG_0001 names no setup of the list.");
    assertThat(slates.refusal(Word.NONE)).isEmpty();
    assertThat(frames.answers()).isEmpty();
    read("IMG_0004", "001", Optional.empty());
    goTo("IMG_0004");
    assertThat(slates.refusal(Word.STAY))
        .contains("Slate IMG_0004 contradicts nothing that was on set.");
  }
}
