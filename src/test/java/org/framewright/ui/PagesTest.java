package org.framewright.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.naming.Convention;
import org.framewright.renaming.RenameRequest;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.ListReader;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.renaming.CrashedRename;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** Starting a job, renaming and taking it back, and a crash put in order, on the real app. */
class PagesTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private FxRobot robot;
  private OpenApp opened;
  private Composition app;

  /** Answers every question for a folder with the test's own. */
  private final class Prepared implements FileChoosers {
    @Override
    public Optional<Path> folder(String title, Optional<Path> startIn) {
      return Optional.of(folder);
    }

    @Override
    public Optional<Path> file(String title, Optional<Path> startIn, List<String> endings) {
      return Optional.of(Path.of("templates/fashion-days.yaml"));
    }

    @Override
    public Optional<Path> save(String title, Optional<Path> startIn, String suggestedName) {
      return Optional.empty();
    }
  }

  @BeforeEach
  void openTheApp() throws Exception {
    opened = OpenApp.open(folder.resolve("settings"), clock, new Prepared());
    app = opened.app();
    robot = opened.robot();
    waitForFxEvents();
  }

  @AfterEach
  void closeTheApp() throws Exception {
    opened.close();
  }

  private void await(Callable<Boolean> condition) throws Exception {
    opened.await(condition);
  }

  private Node find(String selector) {
    return app.scene().getRoot().lookup(selector);
  }

  private boolean canPress(String selector) {
    return find(selector) instanceof Button button && !button.isDisabled() && button.isVisible();
  }

  private void press(KeyCode... keys) {
    opened.press(keys);
  }

  private void write(String field, String text) throws Exception {
    await(() -> find(field) != null);
    robot.interact(
        () -> {
          var input = find(field);
          input.requestFocus();
          if (input instanceof TextField typed) {
            typed.clear();
          } else if (input instanceof ComboBox<?> combo) {
            combo.getEditor().clear();
          }
        });
    robot.write(text, 0);
    waitForFxEvents();
  }

  /** A job with three frames of the first setup, written while it was on set. */
  private Job jobWithFrames() throws Exception {
    var sound = (Convention.Parsed.Sound) Convention.read(Path.of("templates/fashion-days.yaml"));
    var started =
        (Started.Opened)
            Job.start(
                sound.convention(),
                folder,
                Map.of("day", "2026-11-23", "client", "KVO", "title", "look book"),
                clock);
    var job = started.job();
    var list = (ListReading.Understood) ListReader.read(Path.of("samples/shot-list.csv"));
    job.importList(list.list());
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    for (var i = 0; i < 3; i++) {
      camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(job.framesFolder());
    }
    job.recordArrivals(job.scan());
    return job;
  }

  private static List<String> names(Job job) throws IOException {
    return job.scan().frames().stream().map(frame -> frame.stem()).sorted().toList();
  }

  private void openNames(Job job) throws Exception {
    robot.interact(() -> app.openJob(job.folder()));
    await(() -> app.pageIds().contains("names"));
    robot.interact(() -> app.show("names"));
  }

  @Test
  void startsAJobByKeyboardWhileItsNameGrows() throws Exception {
    robot.interact(() -> find("#convention").requestFocus());
    press(KeyCode.CONTROL, KeyCode.L);
    press(KeyCode.CONTROL, KeyCode.P);
    write("#field-client", "KVO");
    write("#field-title", "look book");
    await(() -> canPress("#start"));
    var name = LocalDate.now(clock) + "_KVO_look-book";
    assertThat(((Button) find("#start")).getText()).isEqualTo("Start " + name);
    press(KeyCode.CONTROL, KeyCode.ENTER);
    await(() -> app.pageIds().contains("board"));
    assertThat(folder.resolve(name).resolve("01_frames")).isDirectory();
    assertThat(Job.open(folder.resolve(name), clock).convention().title())
        .isEqualTo("Fashion over several days");
  }

  @Test
  void renamesTheFramesAndTakesItBack() throws Exception {
    var job = jobWithFrames();
    var before = names(job);
    openNames(job);
    await(() -> canPress("#rename"));
    assertThat(((Button) find("#rename")).getText()).isEqualTo("Rename 3 files");
    press(KeyCode.CONTROL, KeyCode.ENTER);
    await(() -> canPress("#undo"));
    assertThat(names(job)).allMatch(name -> name.contains("_KVO_001_F_"));
    press(KeyCode.BACK_SPACE);
    await(() -> canPress("#rename"));
    assertThat(names(job)).isEqualTo(before);
  }

  @Test
  void offersToPutACrashedRenameInOrderAndDoesIt() throws Exception {
    var job = jobWithFrames();
    var before = names(job);
    CrashedRename.leaveIn(
        job.folder(),
        1,
        job.frameNames(job.scan()).requests().stream()
            .map(request -> new RenameRequest(request.from(), request.to()))
            .toList());
    assertThat(names(job)).as("something was renamed before the crash").isNotEqualTo(before);
    robot.interact(() -> app.openJob(job.folder()));
    await(() -> find("#recover") != null);
    assertThat(canPress("#rename")).isFalse();
    press(KeyCode.ALT, KeyCode.R);
    await(() -> find("#interrupted") == null && canPress("#rename"));
    assertThat(names(job)).isEqualTo(before);
  }
}
