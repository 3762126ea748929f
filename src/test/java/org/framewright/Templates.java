package org.framewright;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.framewright.naming.Convention;

/** Conventions of the project for tests that need any; read once, since they never change. */
public final class Templates {
  private static final Convention FASHION_DAYS = read(Path.of("templates/fashion-days.yaml"));

  private Templates() {}

  /** A convention of days and setups, which sorts by view. */
  public static Convention fashionDays() {
    return FASHION_DAYS;
  }

  /**
   * A convention that must be sound.
   *
   * @throws AssertionError if it is not
   */
  public static Convention read(Path file) {
    try {
      return switch (Convention.read(file)) {
        case Convention.Parsed.Sound sound -> sound.convention();
        case Convention.Parsed.Faulty faulty ->
            throw new AssertionError(file + ": " + faulty.findings());
      };
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
