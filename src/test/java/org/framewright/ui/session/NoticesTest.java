package org.framewright.ui.session;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import javafx.beans.property.SimpleObjectProperty;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.FrameScan;
import org.framewright.live.JobView;
import org.framewright.live.LostFolder;
import org.framewright.ui.board.JobViews;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Notices.Notice;
import org.junit.jupiter.api.Test;

class NoticesTest {
  private static final Path JOB = Path.of("/jobs/autumn");
  private static final Problem TORN =
      new Problem(
          "it is cut short", JOB.resolve("01_frames/A/IMG_0007.JPG").toString(), "Copy it anew.");

  private final SimpleObjectProperty<JobView> job = new SimpleObjectProperty<>(view());
  private final SimpleObjectProperty<List<Throwable>> failures =
      new SimpleObjectProperty<>(List.of());
  private final Notices notices =
      new Notices(
          JOB,
          Texts.in(Locale.ENGLISH),
          job,
          failures,
          failure -> new Notice(failure.getMessage(), "Plug it in."));

  private static JobView view(Problem... problems) {
    return with(List.of(problems), List.of());
  }

  private static JobView with(List<Problem> problems, List<Text> warnings) {
    var view = JobViews.of(2).build();
    return new JobView(
        view.revision(),
        view.name(),
        view.list(),
        view.state(),
        view.tally(),
        new FrameScan(List.of(), 0, problems),
        view.latest(),
        view.comments(),
        view.moves(),
        warnings,
        view.at());
  }

  @Test
  void aFileThatCannotBeReadIsReportedWithItsPlaceUntilItIsFixed() {
    assertThat(notices.shown().get()).isEmpty();
    job.set(view(TORN));
    assertThat(notices.shown().get()).hasSize(1);
    assertThat(notices.shown().get().getFirst().what())
        .isEqualTo(Path.of("01_frames", "A", "IMG_0007.JPG") + ": it is cut short.");
    assertThat(notices.shown().get().getFirst().remedy()).isNotBlank();
    job.set(view());
    assertThat(notices.shown().get()).isEmpty();
  }

  @Test
  void whatKeepsTheJobFromGoingOnIsAnAlarmUntilItIsOverAndCannotBePutAway() {
    job.set(with(List.of(TORN), List.of(Text.of("log/a.jsonl, line 3: torn"))));
    failures.set(List.of(new IOException("the disk is full")));
    assertThat(notices.alarm().get()).contains(new Notice("the disk is full", "Plug it in."));
    assertThat(notices.shown().get()).hasSize(2);
    notices.putAway();
    assertThat(notices.alarm().get()).isPresent();
    failures.set(List.of());
    assertThat(notices.alarm().get()).isEmpty();
  }

  @Test
  void aJobFolderThatIsNotThereIsSaidOnceHoweverOftenItIsLookedFor() {
    failures.set(List.of(new LostFolder(JOB), new LostFolder(JOB), new IOException("other")));
    assertThat(notices.alarm().get())
        .hasValueSatisfying(
            alarm -> {
              assertThat(alarm.what()).isEqualTo("The job\u2019s folder is not there: " + JOB);
              assertThat(alarm.remedy()).startsWith("Plug its drive in again");
            });
    assertThat(notices.shown().get()).extracting(Notice::what).containsExactly("other");
  }

  @Test
  void manyFilesWithTheSameTroubleAreOneNoticeWithTheirNumber() {
    var many =
        IntStream.rangeClosed(1, 300)
            .mapToObj(
                i -> new Problem("it is cut short", JOB.resolve(i + ".JPG").toString(), "Copy it."))
            .toList();
    job.set(with(many, List.of()));
    assertThat(notices.shown().get())
        .containsExactly(new Notice("1.JPG and 299 more: it is cut short.", "Copy it."));
  }

  @Test
  void whatWasPutAwayComesBackOnlyAfterItWasFixed() {
    job.set(view(TORN));
    notices.putAway();
    assertThat(notices.shown().get()).isEmpty();
    job.set(with(List.of(TORN), List.of(Text.of("torn"))));
    assertThat(notices.shown().get()).extracting(Notice::what).containsExactly("torn");
    job.set(view());
    job.set(view(TORN));
    assertThat(notices.shown().get()).hasSize(1);
  }

  @Test
  void nothingIsReportedAnyMoreOnceTheJobIsLeft() {
    notices.dispose();
    job.set(view(TORN));
    assertThat(notices.shown().get()).isEmpty();
  }
}
