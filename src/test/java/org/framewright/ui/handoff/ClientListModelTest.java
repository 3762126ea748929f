package org.framewright.ui.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.handoff.metadata.Studio;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.renaming.Renamer;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.FreshJob;
import org.framewright.ui.handoff.ListReading.Row;
import org.framewright.ui.handoff.ListReading.State;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against frames 0001 to 0004 of one setup, which were IMG_0001 to IMG_0004. */
@Tag("slow")
class ClientListModelTest {
  @TempDir private Path folder;

  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private final List<Throwable> troubles = new ArrayList<>();
  private JobSession session;
  private ClientListModel model;

  @BeforeEach
  void fourNamedFramesAreThere() throws Exception {
    var job = FreshJob.in(folder, clock);
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    for (var i = 0; i < 4; i++) {
      camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(job.framesFolder());
    }
    job.recordArrivals(job.scan());
    var renamer = Renamer.in(job.folder(), clock);
    renamer.apply(renamer.plan(job.frameNames(job.scan()).requests()), Progress.NONE);
    session =
        JobSession.begin(Job.open(job.folder(), clock), Progress.NONE, Runnable::run, Runnable::run)
            .orElseThrow();
    model = begun(Tasks.immediate());
  }

  private ClientListModel begun(Tasks tasks) {
    var begun = new ClientListModel(session, tasks, Texts.in(Locale.ENGLISH), troubles::add);
    begun.begin(() -> {});
    return begun;
  }

  @AfterEach
  void close() {
    session.close();
    assertThat(troubles).isEmpty();
  }

  private ListReading now() {
    return model.reading().get();
  }

  private Row row(State state) {
    return now().rows().stream().filter(row -> row.state() == state).findFirst().orElseThrow();
  }

  private List<String> named() {
    return model.named().orElseThrow().names().frames().stream()
        .map(Frame::stem)
        .map(stem -> stem.substring(stem.length() - 4))
        .toList();
  }

  @Test
  void saysOfEachLineOfAMailWhatItWasTakenFor() {
    model.text().set("Hello Ines,\n\n- IMG_0002.jpg please\n- 001_F_0004\n\n> IMG_0001");
    assertThat(model.rows())
        .extracting(Row::heading)
        .anyMatch(line -> line.startsWith("1  Hello Ines,") && line.endsWith("(names no frame)"))
        .anyMatch(
            line -> line.startsWith("6  ") && line.contains("quoted from an earlier message"));
    assertThat(row(State.TAKEN).said()).contains("IMG_0002.jpg = ", "its name before a rename");
    assertThat(model.ready().get()).isTrue();
    assertThat(named()).containsExactly("0002", "0004");
  }

  @Test
  void withoutANameNothingCanGo() {
    assertThat(model.rows()).isEmpty();
    model.text().set("Thank you!");
    assertThat(model.ready().get()).isFalse();
    assertThat(model.named()).isEmpty();
  }

  @Test
  void nothingGoesBeforeAPersonSaidWhatIsMeant() {
    model.text().set("IMG_0001\nIMG_0002 ?");
    assertThat(model.ready().get()).isFalse();
    assertThat(model.named()).isEmpty();
    var asked = row(State.UNCLEAR);
    assertThat(asked.said()).contains("a question mark stands behind it");
    model.choose(asked, asked.candidates().getFirst());
    assertThat(row(State.SETTLED).said()).contains("as was chosen");
    assertThat(named()).containsExactly("0001", "0002");
    model.choose(row(State.SETTLED), asked.candidates().getFirst());
    assertThat(row(State.UNCLEAR)).isEqualTo(asked);
    model.leaveOut(asked);
    assertThat(named()).containsExactly("0001");
    assertThat(row(State.SETTLED).isLeftOut()).isTrue();
    model.leaveOut(row(State.SETTLED));
    assertThat(model.ready().get()).isFalse();
  }

  @Test
  void severalOfThoseThatFitMayBeMeant() {
    model.text().set("IMG_0003 or IMG_0004");
    assertThat(now().rows()).hasSize(2).allMatch(row -> row.state() == State.UNCLEAR);
    for (int i = 0; i < 2; i++) {
      var row = row(State.UNCLEAR);
      model.choose(row, row.candidates().getFirst());
    }
    assertThat(named()).containsExactly("0003", "0004");
  }

  @Test
  void aNameOfNoFrameIsAskedAboutWithTheNearest() {
    model.text().set("IMG_0001\nIMG_0031.jpg");
    var unknown = row(State.UNCLEAR);
    assertThat(unknown.said()).contains("no frame has this name");
    model.leaveOutTheRest();
    assertThat(now().unclear()).isZero();
    assertThat(named()).containsExactly("0001");
  }

  @Test
  void answersHoldWhileOneTypesOnAndGoWithWhatTheyAnswered() {
    model.text().set("IMG_0002 ?");
    model.choose(row(State.UNCLEAR), row(State.UNCLEAR).candidates().getFirst());
    model.text().set("IMG_0002 ?\nIMG_0004");
    assertThat(named()).containsExactly("0002", "0004");
    model.text().set("IMG_0003 ?\nIMG_0004");
    assertThat(model.ready().get()).isFalse();
    assertThat(row(State.UNCLEAR).chosen()).isEmpty();
  }

  @Test
  void showsOnlyWhatIsAskedAboutAndKeepsItWhenItIsSettled() {
    model.text().set("IMG_0001\nIMG_0002 ?\nIMG_0003");
    model.onlyUnclear().set(true);
    assertThat(model.rows()).hasSize(1);
    model.leaveOut(model.rows().getFirst());
    assertThat(model.rows()).hasSize(1);
    model.text().set("IMG_0001");
    assertThat(model.onlyUnclear().get()).isFalse();
    assertThat(model.rows()).hasSize(1);
  }

  @Test
  void aLineStandsAboveTheFirstOfItsPartsThatIsShown() {
    model.text().set("IMG_0001, IMG_0002 ?, IMG_0003 ?");
    assertThat(model.rows())
        .extracting(row -> row.heading().isEmpty())
        .containsExactly(false, true, true);
    model.onlyUnclear().set(true);
    assertThat(model.rows())
        .extracting(row -> row.heading().isEmpty())
        .containsExactly(false, true);
    assertThat(model.rows().getFirst().part().piece()).isEqualTo(1);
  }

  @Test
  void aFileIsReadInPlaceOfTheTextUntilOneTypesAgain() throws Exception {
    model.text().set("IMG_0001");
    var list = Files.writeString(folder.resolve("mail.txt"), "IMG_0002\nIMG_0003");
    model.load(list);
    assertThat(model.text().get()).isEmpty();
    assertThat(named()).containsExactly("0002", "0003");
    Files.writeString(list, "IMG_0004");
    model.load(list);
    assertThat(named()).containsExactly("0004");
    model.text().set("IMG_0001");
    assertThat(model.file().get()).isEmpty();
    assertThat(named()).containsExactly("0001");
  }

  @Test
  void aFileThatIsNoListIsRefusedWithItsRemedy() throws Exception {
    model.load(folder.resolve("nowhere.txt"));
    assertThat(now().problem().orElseThrow().remedy()).contains("Check the path");
    model.load(Files.write(folder.resolve("list.xlsx"), new byte[] {'P', 'K', 3, 4, 0, 0}));
    assertThat(now().problem().orElseThrow().what()).contains("a document or a workbook");
    assertThat(model.ready().get()).isFalse();
    assertThat(model.rows()).isEmpty();
  }

  @Test
  void aListOfAnotherJobIsRefused() {
    model.text().set("DSC_98765.jpg\n".repeat(1100));
    assertThat(now().problem().orElseThrow().remedy()).contains("the list of this job");
    assertThat(model.ready().get()).isFalse();
  }

  @Test
  void answersHoldWhenTheListIsAskedForAgainAndGoWithTheHandOff() {
    model.text().set("IMG_0001\nIMG_0002 ?");
    model.leaveOut(row(State.UNCLEAR));
    model.begin(() -> {});
    assertThat(named()).containsExactly("0001");
    model.clear();
    assertThat(model.rows()).isEmpty();
    model.text().set("IMG_0001\nIMG_0002 ?");
    assertThat(model.ready().get()).isFalse();
  }

  @Test
  void theNewestTextWins() {
    Deque<Runnable> background = new ArrayDeque<>();
    var slow = begun(new Tasks(background::add, Runnable::run));
    while (!background.isEmpty()) {
      background.remove().run();
    }
    slow.text().set("IMG_0001");
    slow.text().set("IMG_0002");
    slow.text().set("IMG_0003");
    background.remove().run();
    assertThat(slow.ready().get()).isFalse();
    background.remove().run();
    assertThat(background).isEmpty();
    assertThat(slow.ready().get()).isTrue();
    assertThat(slow.reading().get().rows().getFirst().heading()).isEqualTo("1  IMG_0003");
  }

  @Test
  void whatWasNamedIsWhatGoes() {
    model.text().set("IMG_0001\nIMG_0003 ?");
    model.choose(row(State.UNCLEAR), row(State.UNCLEAR).candidates().getFirst());
    var handOff =
        new HandOffModel(
            session,
            Tasks.immediate(),
            Texts.in(Locale.ENGLISH),
            () -> new Studio.Reading.Sound(Studio.NOTHING),
            page -> page,
            troubles::add);
    handOff.askFor(model.named().orElseThrow());
    var plan = handOff.looked().get().orElseThrow().parts().getFirst();
    assertThat(plan.selects())
        .extracting(select -> select.name())
        .containsExactly("KVO_001_F_0001", "KVO_001_F_0003");
    assertThat(plan.chosenBy()).isEqualTo("named in a pasted list");
  }
}
