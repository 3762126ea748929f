package org.framewright.ui.settings;

import java.nio.file.Path;
import java.util.Map;
import org.framewright.base.OperatingSystem;
import org.framewright.job.SettingsFolder;

/** Where this computer keeps a program's preferences and its log. */
public final class Places {
  private static final String HOME = "framewright.home";

  private final Path folder;

  private Places(Path folder) {
    this.folder = folder;
  }

  /** The usual place, see {@link SettingsFolder}. */
  public static Places usual() {
    return new Places(SettingsFolder.usual());
  }

  static Places usual(OperatingSystem system, Path home, Map<String, String> environment) {
    return new Places(SettingsFolder.usual(system, home, environment));
  }

  /** All in one folder, for tests. */
  public static Places in(Path folder) {
    return new Places(folder);
  }

  /** All of it. */
  public Path folder() {
    return folder;
  }

  /** The preferences' file. */
  public Path preferences() {
    return folder.resolve("preferences.json");
  }

  /** The log of what nobody foresaw. */
  public Path log() {
    return folder.resolve("framewright.log");
  }

  /**
   * The conventions that come with the program: {@code templates} in its home, which the launcher
   * names in the system property {@code framewright.home}, else in the working directory.
   */
  public Path templates() {
    return home().resolve("templates");
  }

  /** The guide that comes with the program. */
  public Path guide() {
    return home().resolve("docs").resolve("guide");
  }

  /** The licences of what the program is made of: beside it, else where the source has them. */
  public Path licences() {
    return System.getProperty(HOME) == null
        ? home().resolve("src").resolve("main").resolve("licences")
        : home().resolve("licences");
  }

  /** The program's own folder. */
  public Path home() {
    return Path.of(System.getProperty(HOME, "")).toAbsolutePath().normalize();
  }
}
