package org.framewright.frames;

import java.nio.file.attribute.BasicFileAttributes;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.Text;

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
  static Optional<Text> why(String name, BasicFileAttributes attributes) {
    if (attributes.isSymbolicLink()) {
      return Optional.of(Text.of("it is a link; only the files themselves count as frames"));
    }
    if (!attributes.isRegularFile()) {
      return Optional.of(Text.of("it is a device or a pipe, no file"));
    }
    return Endings.isUnfinished(name)
        ? Optional.of(Text.of("it was not copied to its end, or still is being copied"))
        : Optional.empty();
  }

  /** Why a file by itself is no frame. */
  static Text why(String name) {
    var ending = Endings.of(name);
    return switch (ending) {
      case "xmp" -> Text.of("it is a sidecar, and the picture that it belongs to is not here");
      case "wav" -> Text.of("it is a voice memo, and the picture that it belongs to is not here");
      case "thm" -> Text.of("it is a small picture of a clip or a raw that is not here");
      case "" -> Text.of("it has no ending that says what it is, and no frame here has its name");
      default ->
          Text.of(
              "no picture or clip that is known here ends in {0}, and no frame here has its name",
              shown(ending));
    };
  }

  private static String shown(String ending) {
    return "."
        + (ending.length() <= LONGEST_SHOWN ? ending : ending.substring(0, LONGEST_SHOWN) + "...")
            .toUpperCase(Locale.ROOT);
  }
}
