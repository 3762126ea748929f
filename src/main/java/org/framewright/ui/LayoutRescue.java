package org.framewright.ui;

import java.util.Arrays;
import javafx.application.Platform;
import javafx.scene.Parent;
import javafx.scene.Scene;

/**
 * Keeps the window usable when laying out what it shows fails: a fault of the toolkit's, or of
 * ours. First what lies over the page goes, then the page gives way to a note from which it can be
 * made anew. Never twice for one failure: a note that fails as well is left as it is.
 */
final class LayoutRescue {
  private final Scene scene;
  private final Shell shell;
  private final Jobs jobs;
  private final Appearance appearance;
  private boolean unsettled;

  LayoutRescue(Scene scene, Shell shell, Jobs jobs, Appearance appearance) {
    this.scene = scene;
    this.shell = shell;
    this.jobs = jobs;
    this.appearance = appearance;
  }

  /** Whether a failure broke off the toolkit's layout or styling of a window. */
  static boolean concerns(Throwable failure) {
    return Arrays.stream(failure.getStackTrace())
        .anyMatch(
            at ->
                (at.getClassName().equals(Parent.class.getName())
                        && at.getMethodName().equals("layout"))
                    || (at.getClassName().startsWith(Scene.class.getName())
                        && at.getMethodName().equals("pulse")));
  }

  /**
   * On the interface thread, after such a failure.
   *
   * @return whether the window can show a dialog about it
   */
  boolean recover() {
    var again = unsettled;
    unsettled = true;
    if (again || !shell.dialogs().open().get()) {
      shell.withhold();
    }
    if (again) {
      jobs.closeClient();
    } else {
      jobs.renewClient();
    }
    shell.reassemble();
    scene.setRoot(shell.root());
    appearance.dress(scene);
    settleOnceLaidOut();
    return !again;
  }

  private void settleOnceLaidOut() {
    scene.addPostLayoutPulseListener(
        new Runnable() {
          @Override
          public void run() {
            scene.removePostLayoutPulseListener(this);
            unsettled = false;
          }
        });
    Platform.requestNextPulse();
  }
}
