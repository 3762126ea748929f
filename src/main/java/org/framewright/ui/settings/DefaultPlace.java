package org.framewright.ui.settings;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** Where something is put that a person did not say a place for. */
public enum DefaultPlace {
  /** The folder in which job folders are made. */
  JOBS,
  /** The folder in which packages for the retoucher are made. */
  PACKAGES;

  /** Under which key it is kept. */
  public String key() {
    return "place." + name().toLowerCase(Locale.ROOT);
  }

  /** What is kept. */
  public Optional<Path> kept(Preferences preferences) {
    return preferences.path(key()).filter(Path::isAbsolute);
  }

  /** What is wrong with what is kept; nothing where nothing is wrong, or nothing is kept. */
  public Optional<SettingFault> fault(Preferences preferences) {
    return preferences
        .any(key())
        .flatMap(kept -> kept instanceof String text ? fault(text) : fault(""))
        .map(fault -> fault.inTheFile(key()));
  }

  /** What is wrong with a text as the path of a folder, whether or not it is there. */
  public static Optional<SettingFault> fault(String text) {
    try {
      return Path.of(text).isAbsolute()
          ? Optional.empty()
          : Optional.of(new SettingFault("notWhole"));
    } catch (InvalidPathException _) {
      return Optional.of(new SettingFault("noPath"));
    }
  }
}
