package org.framewright.ui;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;
import org.framewright.base.OperatingSystem;

/** Starts the app. */
public final class Launch {
  private Launch() {}

  /**
   * Opens the app and returns when its last window is closed.
   *
   * @param job the job folder to begin with
   */
  public static void open(Optional<Path> job) {
    Application.launch(App.class, job.map(Path::toString).stream().toArray(String[]::new));
  }

  /** Whether this computer has a display to open a window on, as far as its environment says. */
  public static boolean hasDisplay() {
    return OperatingSystem.current() != OperatingSystem.LINUX
        || !System.getenv().getOrDefault("DISPLAY", "").isEmpty()
        || !System.getenv().getOrDefault("WAYLAND_DISPLAY", "").isEmpty();
  }

  /** The app from a main class of its own: {@code Launch [JOB]}. */
  public static void main(String[] args) {
    open(args.length == 0 ? Optional.empty() : Optional.of(Path.of(args[0])));
  }
}
