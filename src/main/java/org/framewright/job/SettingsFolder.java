package org.framewright.job;

import java.nio.file.Path;
import java.util.Map;
import org.framewright.base.OperatingSystem;

/** Where a person's computer keeps what belongs to no job: its name as a station, preferences. */
public final class SettingsFolder {
  private SettingsFolder() {}

  /**
   * The usual folder: {@code XDG_CONFIG_HOME} or {@code ~/.config} (XDG Base Directory
   * Specification), {@code ~/Library/Application Support} on macOS, {@code APPDATA} on Windows. The
   * system property {@code framewright.settings} names another folder. It need not exist.
   */
  public static Path usual() {
    var given = System.getProperty("framewright.settings");
    return given != null
        ? Path.of(given)
        : usual(
            OperatingSystem.current(), Path.of(System.getProperty("user.home")), System.getenv());
  }

  /** The usual folder on this system, for this home and environment. */
  public static Path usual(OperatingSystem system, Path home, Map<String, String> environment) {
    if (system == OperatingSystem.MACOS) {
      return home.resolve("Library/Application Support/Framewright");
    }
    var windows = system == OperatingSystem.WINDOWS;
    var given = environment.getOrDefault(windows ? "APPDATA" : "XDG_CONFIG_HOME", "");
    // The XDG specification: a relative path is invalid and to be ignored.
    var base =
        !given.isEmpty() && (windows || given.startsWith("/"))
            ? Path.of(given)
            : home.resolve(windows ? "AppData/Roaming" : ".config");
    return base.resolve(windows ? "Framewright" : "framewright");
  }
}
