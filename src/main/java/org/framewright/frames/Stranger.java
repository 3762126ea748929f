package org.framewright.frames;

import java.nio.file.attribute.BasicFileAttributes;
import java.util.Locale;
import java.util.Optional;

/**
 * Something in a folder that is no frame's file, with the listing that saw it last; and why things
 * are not understood, in words.
 */
record Stranger(NotUnderstood what, int listing) {
  /** A name of 255 characters may be one long ending. */
  private static final int LONGEST_SHOWN = 12;

  Stranger at(int newListing) {
    return new Stranger(what, newListing);
  }

  /** Why a thing can be no frame's file, whatever lies beside it. */
  static Optional<String> why(String name, BasicFileAttributes attributes) {
    if (attributes.isSymbolicLink()) {
      return Optional.of("it is a link; only the files themselves count as frames");
    }
    if (!attributes.isRegularFile()) {
      return Optional.of("it is a device or a pipe, no file");
    }
    return Endings.isUnfinished(name)
        ? Optional.of("it was not copied to its end, or still is being copied")
        : Optional.empty();
  }

  /** Why a file by itself is no frame. */
  static String why(String name) {
    var ending = Endings.of(name);
    return switch (ending) {
      case "xmp" -> "it is a sidecar, and the picture that it belongs to is not here";
      case "wav" -> "it is a voice memo, and the picture that it belongs to is not here";
      case "thm" -> "it is a small picture of a clip or a raw that is not here";
      case "" -> "it has no ending that says what it is, and no frame here has its name";
      default ->
          "no picture or clip that is known here ends in %s, and no frame here has its name"
              .formatted(shown(ending));
    };
  }

  private static String shown(String ending) {
    return "."
        + (ending.length() <= LONGEST_SHOWN ? ending : ending.substring(0, LONGEST_SHOWN) + "...")
            .toUpperCase(Locale.ROOT);
  }
}
