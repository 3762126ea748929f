package org.framewright.ui.settings;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Where this computer keeps a program's preferences and its log. */
public final class Places {
  private final Path folder;

  private Places(Path folder) {
    this.folder = folder;
  }

  /**
   * The usual place: {@code XDG_CONFIG_HOME} or {@code ~/.config} (XDG Base Directory
   * Specification), {@code ~/Library/Application Support} on macOS, {@code APPDATA} on Windows. The
   * system property {@code framewright.settings} names another folder.
   */
  public static Places usual() {
    var given = System.getProperty("framewright.settings");
    return given != null
        ? new Places(Path.of(given))
        : usual(
            System.getProperty("os.name"),
            Path.of(System.getProperty("user.home")),
            System.getenv());
  }

  static Places usual(String system, Path home, Map<String, String> environment) {
    var name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("mac")) {
      return new Places(home.resolve("Library/Application Support/Framewright"));
    }
    var windows = name.startsWith("windows");
    var given = environment.getOrDefault(windows ? "APPDATA" : "XDG_CONFIG_HOME", "");
    // The XDG specification: a relative path is invalid and to be ignored.
    var base =
        !given.isEmpty() && (windows || given.startsWith("/"))
            ? Path.of(given)
            : home.resolve(windows ? "AppData/Roaming" : ".config");
    return new Places(base.resolve(windows ? "Framewright" : "framewright"));
  }

  /** All in one folder, for tests. */
  public static Places in(Path folder) {
    return new Places(folder);
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
    return Path.of(System.getProperty("framewright.home", ""), "templates")
        .toAbsolutePath()
        .normalize();
  }
}
