package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import javafx.scene.input.KeyCode;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.renaming.Renamer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a client's list to the package, by keys and mouse, on the real app. */
@Tag("slow")
class ClientListPageTest {
  @TempDir private Path folder;

  @Test
  void whatAClientWroteIsSettledAndHandedOff() throws Exception {
    var clock = Clock.system(ZoneOffset.UTC);
    var job = FreshJob.withFrames(folder, clock, 3);
    var renamer = Renamer.in(job.folder(), clock);
    renamer.apply(renamer.plan(job.frameNames(job.scan()).requests()), Progress.NONE);
    var second =
        job.scan().frames().stream()
            .map(Frame::stem)
            .filter(stem -> stem.endsWith("0002"))
            .findFirst()
            .orElseThrow();
    var app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      app.await(() -> app.exists("#setups"));
      app.pressUntil(() -> app.exists("#hand-off-by-list"), KeyCode.F3);
      app.awaitReading(".grid-title", "3 frames, 0 selects");
      app.press(KeyCode.N);
      app.await(() -> app.holdsTheKeys("#client-list-text"));
      app.type("- IMG_0001.jpg, please\n- IMG_0002 ?\n- IMG_0003 ?\n");
      app.awaitReading(
          "#client-list-counted", "1 frame named without a doubt; 2 lines to be settled");
      app.robot().clickOn("1  " + second);
      app.awaitReading(
          "#client-list-counted", "2 frames named without a doubt; 1 line to be settled");
      app.pressUntil(() -> app.holdsTheKeys("#client-list-rows"), KeyCode.TAB);
      app.press(KeyCode.ALT, KeyCode.DOWN);
      app.press(KeyCode.DIGIT0);
      app.awaitReading("#client-list-counted", "2 frames named without a doubt");
      app.press(KeyCode.ENTER);
      app.await(() -> app.reads("#hand-off-going").startsWith("2 selects go: 2 files"));
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      var target = folder.resolve(job.name() + "_hand-off_1");
      app.await(() -> Files.isDirectory(target));
      try (var files = Files.list(target.resolve("data"))) {
        assertThat(files.map(file -> file.getFileName().toString()))
            .containsExactlyInAnyOrder(
                "KVO_001_F_0001.JPG",
                "KVO_001_F_0001.xmp",
                "KVO_001_F_0002.JPG",
                "KVO_001_F_0002.xmp");
      }
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }
}
