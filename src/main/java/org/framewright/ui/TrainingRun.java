package org.framewright.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.event.Event;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import javafx.stage.Window;

/**
 * Opens the app on a job and goes through its pages, for Java to see what they load: from that it
 * makes the cache (JEP 483, 514) that packages bring along.
 */
final class TrainingRun {
  private static final List<KeyCode> PAGES =
      List.of(KeyCode.F2, KeyCode.F3, KeyCode.F4, KeyCode.F5, KeyCode.F6, KeyCode.F7, KeyCode.F8);

  private static final int MILLIS_A_PAGE = 1500;

  private TrainingRun() {}

  /**
   * Goes through them and ends.
   *
   * @param args the job's folder, which is only looked at
   */
  public static void main(String[] args) {
    Thread.ofPlatform().daemon().name("pages").start(TrainingRun::turnPages);
    Launch.open(Optional.of(Path.of(args[0])));
  }

  private static void turnPages() {
    try {
      Thread.sleep(4L * MILLIS_A_PAGE);
      for (var key : PAGES) {
        Platform.runLater(() -> press(key));
        Thread.sleep(MILLIS_A_PAGE);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Platform.runLater(Platform::exit);
  }

  private static void press(KeyCode key) {
    for (var window : List.copyOf(Window.getWindows())) {
      if (window instanceof Stage stage && stage.isShowing()) {
        var type = KeyEvent.KEY_PRESSED;
        Event.fireEvent(
            stage.getScene().getRoot(),
            new KeyEvent(type, "", "", key, false, false, false, false));
      }
    }
  }
}
