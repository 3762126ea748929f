package org.framewright.ui;

import static org.framewright.ui.OnInterface.onInterface;

import java.lang.ref.WeakReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.stage.Stage;
import org.framewright.job.Job;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.util.WaitForAsyncUtils;

/**
 * A closed job leaves memory. On a stage of its own: the stage that the tests share keeps each
 * event of the test, and with it the page that it came from.
 */
@Tag("slow")
class ClosedJobTest {
  private static final int PATIENCE_SECONDS = 30;

  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);

  @Test
  void nothingKeepsAJobInMemoryOnceAnotherIsOpen() throws Exception {
    Files.writeString(
        folder.resolve("preferences.json"),
        "{\"safety.reminded\": \"" + LocalDate.now(clock) + "\"}");
    Toolkit.start();
    var app = onInterface(this::app);
    try {
      open(app, FreshJob.withFrames(Files.createDirectory(folder.resolve("first")), clock, 3));
      var before = new WeakReference<>(onInterface(app::session));
      for (var page : List.of("frames", "names", "board")) {
        onInterface(
            () -> {
              app.show(page);
              return page;
            });
      }
      open(app, FreshJob.in(Files.createDirectory(folder.resolve("second")), clock));
      await(
          () -> {
            System.gc();
            return before.get() == null;
          });
    } finally {
      onInterface(
          () -> {
            app.stage().close();
            app.close();
            return app;
          });
    }
  }

  private Composition app() throws Exception {
    var stage = new Stage();
    var app = OpenApp.composed(stage, folder, clock, new Answers(folder));
    app.open();
    return app;
  }

  private static void open(Composition app, Job job) throws Exception {
    onInterface(
        () -> {
          app.openJob(job.folder());
          return job;
        });
    await(
        () ->
            onInterface(
                () ->
                    app.session() != null
                        && app.session().job().folder().equals(job.folder())
                        && app.pageIds().contains("board")));
  }

  private static void await(Callable<Boolean> condition) throws Exception {
    WaitForAsyncUtils.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS, condition);
  }
}
