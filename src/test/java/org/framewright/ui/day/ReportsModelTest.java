package org.framewright.ui.day;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import org.framewright.base.Problem;
import org.framewright.report.Letterhead;
import org.framewright.report.ReportFiles;
import org.framewright.report.ReportKind;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportsModelTest {
  @TempDir private Path folder;

  private static ReportsModel model(DayScene scene, Tasks tasks, Letterhead.Reading head) {
    return new ReportsModel(
        scene.job(),
        () -> scene.session.view().get().scan(),
        () -> DayScene.HOURS,
        () -> head,
        tasks,
        DayScene.TEXTS,
        scene.troubles::add);
  }

  private static ReportsModel model(DayScene scene, Tasks tasks) {
    return model(scene, tasks, new Letterhead.Reading.Sound(Letterhead.NONE));
  }

  private static String said(ReportsModel model) {
    return ReportsPane.said(model.ended().get().orElseThrow(), DayScene.TEXTS);
  }

  @Test
  void aNameWithoutAnEndingBecomesAPdfAndThenReplacesNothing() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var model = model(scene, Tasks.immediate());
      assertThat(model.nameFor(ReportKind.SHEET))
          .isEqualTo(scene.job().name() + "_2026-11-23_contact-sheet.pdf");
      var there = Files.writeString(folder.resolve("today.pdf"), "mine");
      model.write(ReportKind.DAY, folder.resolve("today"));
      assertThat(there).hasContent("mine");
      assertThat(said(model)).isEqualTo(there + ": this file exists already");
      model.write(ReportKind.DAY, folder.resolve("today.html"));
      assertThat(said(model)).isEqualTo("Written: " + folder.resolve("today.html"));
      assertThat(folder.resolve("today.html")).isRegularFile();
      // The dialog asked whether it may be replaced.
      var agreed = Files.writeString(folder.resolve("agreed.html"), "old");
      model.write(ReportKind.DAY, agreed);
      assertThat(said(model)).isEqualTo("Written: " + agreed);
      assertThat(Files.readString(agreed)).contains("<html");
      assertThat(scene.troubles).isEmpty();
    }
  }

  @Test
  @Tag("slow")
  void theEveningIsOneFolderThatIsTold() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var model = model(scene, Tasks.immediate());
      model.evening();
      var at = ReportFiles.eveningFolder(scene.job());
      assertThat(said(model)).isEqualTo("2 reports written: " + at);
      assertThat(at).isDirectoryContaining("glob:**_day-report.pdf");
      assertThat(at).isDirectoryContaining("glob:**_next-day.pdf");
    }
  }

  @Test
  void oneAfterTheOtherAndWhatIsStoppedIsNoFile() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var queue = new ArrayDeque<Runnable>();
      var model = model(scene, new Tasks(queue::add, Runnable::run));
      model.write(ReportKind.DAY, folder.resolve("one.html"));
      model.write(ReportKind.DAY, folder.resolve("two.html"));
      assertThat(queue).hasSize(1);
      assertThat(model.running().get()).isPresent();
      model.stop();
      queue.remove().run();
      assertThat(model.running().get()).isEmpty();
      assertThat(said(model)).isEqualTo("Stopped; no report was written.");
      assertThat(folder.resolve("one.html")).doesNotExist();
    }
  }

  @Test
  void settingsThatCannotBeUsedAreToldAndNothingIsWritten() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var problem = new Problem("no logo", "logo.png", "Choose another.");
      var model = model(scene, Tasks.immediate(), new Letterhead.Reading.Faulty(problem));
      model.evening();
      assertThat(said(model)).isEqualTo("logo.png: no logo");
      assertThat(ReportFiles.eveningFolder(scene.job())).doesNotExist();
    }
  }
}
