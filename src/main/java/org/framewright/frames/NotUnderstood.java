package org.framewright.frames;

import java.nio.file.Path;
import java.util.Locale;
import org.framewright.base.Text;

/**
 * A file below the frames folder that is neither a frame, nor a companion of one, nor litter. It
 * counts for nothing and stays as it is; a person should know of it, since it may be a frame in a
 * format that is not known here.
 *
 * @param file where it lies
 * @param said why, in plain words
 */
public record NotUnderstood(Path file, Text said) {
  /** Why, in English. */
  public String why() {
    return said.english();
  }

  /** Its ending as people write it, {@code .CRW}; empty where it has none. */
  public String ending() {
    var ending = Endings.of(SpelledName.shown(file.getFileName()));
    return ending.isEmpty() ? "" : "." + ending.toUpperCase(Locale.ROOT);
  }
}
