package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.page.DialogSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What fails while the window is laid out leaves a window that works. */
@Timeout(120)
@Tag("slow")
class LayoutRescueTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private final Thread.UncaughtExceptionHandler before =
      Thread.getDefaultUncaughtExceptionHandler();
  private OpenApp app;

  /** Fails each time it is laid out. */
  private static final class Broken extends Region {
    @Override
    protected void layoutChildren() {
      throw new ArrayIndexOutOfBoundsException("Index -29 out of bounds for length 88");
    }
  }

  @BeforeEach
  void openTheListWithASetupOnSet() throws Exception {
    var job = FreshJob.in(folder, clock);
    job.mark("003", SetupState.ON_SET, MarkDetails.NONE);
    app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    onInterface(
        () -> {
          app.app().hearTheUncaught();
          return app;
        });
    app.openJob(job);
    app.await(() -> app.reads(".set-code").equals("003"));
  }

  @AfterEach
  void closeTheApp() throws Exception {
    Thread.setDefaultUncaughtExceptionHandler(before);
    app.close();
  }

  private void breakThePage() throws Exception {
    onInterface(
        () -> {
          ((Pane) app.app().scene().lookup(".set-words")).getChildren().add(new Broken());
          return app;
        });
    waitForFxEvents();
  }

  @Test
  void aPageThatCannotBeLaidOutGivesWayToANoteAndComesAgainByAKey() throws Exception {
    breakThePage();
    app.awaitReading(".dialog-title", "That did not work");
    app.press(KeyCode.ESCAPE);
    app.await(() -> app.exists("#page-again"));
    app.press(KeyCode.F3);
    app.await(() -> app.exists("#grid"));
    app.press(KeyCode.F2);
    app.await(() -> isWhole("003"));
    app.press(KeyCode.SPACE);
    app.await(() -> app.reads(".set-code").equals("004"));
    app.await(() -> isWhole("004"));
  }

  @Test
  void theNotesButtonMakesThePageAnew() throws Exception {
    breakThePage();
    app.awaitReading(".dialog-title", "That did not work");
    app.press(KeyCode.ESCAPE);
    app.pressUntil(() -> app.holdsTheKeys("#page-again"), KeyCode.TAB);
    app.press(KeyCode.SPACE);
    app.await(() -> isWhole("003"));
  }

  @Test
  void aDialogThatCannotBeLaidOutGoesAndThePageStays() throws Exception {
    onInterface(
        () -> {
          var broken = new Broken();
          // In a turn of its own, where nobody catches what fails.
          Platform.runLater(
              () -> app.app().dialogs().show(DialogSpec.reading("A broken one", broken, broken)));
          return app;
        });
    app.awaitReading(".dialog-title", "That did not work");
    app.press(KeyCode.ESCAPE);
    app.await(() -> app.reads(".dialog-title").isEmpty());
    assertThat(app.exists("#page-again")).isFalse();
    app.await(() -> isWhole("003"));
    app.press(KeyCode.SPACE);
    app.await(() -> app.reads(".set-code").equals("004"));
  }

  /** On the interface thread: the band is there, laid out within the window that is shown. */
  private boolean isWhole(String code) {
    Node band = app.app().scene().getRoot().lookup(".on-set-band");
    if (band == null || band.getScene() == null || band.getLayoutBounds().getHeight() < 50) {
      return false;
    }
    try {
      return app.reads(".set-code").equals(code);
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }
}
