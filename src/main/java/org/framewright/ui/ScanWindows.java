package org.framewright.ui;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;
import org.framewright.ui.page.Desk;
import org.framewright.ui.scan.ScanKeys;
import org.framewright.ui.scan.ScanModel;
import org.framewright.ui.scan.ScanQuestions;

/**
 * Hears scanners in every window of the app. What is asked because of a scan is asked in the first
 * one; where a question lies there already, or in the window that has the keys, a scan does
 * nothing, and that is said.
 */
final class ScanWindows implements AutoCloseable {
  private final Desk desk;
  private final ScanModel model;
  private final ScanQuestions questions;
  private final Stage main;
  private final DialogLayer mainDialogs;
  private final Map<Stage, ScanKeys> windows = new HashMap<>();

  ScanWindows(
      Desk desk, ScanModel model, ScanQuestions questions, Stage main, DialogLayer mainDialogs) {
    this.desk = desk;
    this.model = model;
    this.questions = questions;
    this.main = main;
    this.mainDialogs = mainDialogs;
  }

  /** Listens to a window until it is closed. */
  void listenTo(Stage window, DialogLayer dialogs) {
    windows.put(
        window,
        ScanKeys.of(
            window,
            desk.tasks().ui(),
            System::nanoTime,
            model::knows,
            text -> waitFor(text, dialogs),
            desk::trouble));
    window.addEventHandler(WindowEvent.WINDOW_HIDDEN, _ -> leave(window));
  }

  private void leave(Stage window) {
    var keys = windows.remove(window);
    if (keys != null) {
      keys.close();
    }
  }

  /** Not before the list is read: until then nobody knows what it means. */
  private void waitFor(String text, DialogLayer dialogs) {
    model.whenRead(() -> scanned(text, dialogs), () -> desk.say(questions.notYet(text)));
  }

  private void scanned(String text, DialogLayer dialogs) {
    var asking = List.of(dialogs, mainDialogs).stream().filter(layer -> layer.open().get());
    asking
        .findFirst()
        .ifPresentOrElse(layer -> layer.remark(questions.notNow(text)), () -> hear(text));
  }

  private void hear(String text) {
    questions.hear(text);
    if (mainDialogs.open().get() && !main.isFocused()) {
      main.toFront();
      main.requestFocus();
    }
  }

  /** Asks to which setup the code that was scanned last belongs. */
  void addLast() {
    questions.addLast();
  }

  /** Whether keys are held that may still become a scan. */
  boolean isHolding() {
    return windows.values().stream().anyMatch(ScanKeys::isHolding);
  }

  @Override
  public void close() {
    List.copyOf(windows.keySet()).forEach(this::leave);
  }
}
