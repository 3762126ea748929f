package org.framewright.naming;

import java.util.Locale;
import org.framewright.base.Text;

/** A place that names travel to, and what it asks of them. */
enum Target {
  /** Microsoft, "Naming Files, Paths, and Namespaces"; NTFS and exFAT names, MS-FSCC 2.1.5.2. */
  WINDOWS,
  /** APFS and HFS+: 255 units, folds case by default, compares normalised. */
  MACOS,
  /** ext4, xfs, btrfs: 255 bytes, every byte but / and NUL. */
  LINUX,
  /** Synchronised drives: what all of the three above can hold. */
  CLOUD,
  /** POSIX.1 XBD 3.282: the portable file name character set, no leading hyphen. */
  POSIX,
  /** UPDIG Image Receivers Guidelines v4: A-Z a-z 0-9 - _, 31 characters with the ending. */
  RECEIVERS;

  /** A file's ending with its dot, as in {@code .jpeg}. */
  static final int ENDING = 5;

  /** A path of 260 on Windows counts the NUL at its end. */
  static final int WINDOWS_PATH = 259;

  String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  Text inWords() {
    return switch (this) {
      case WINDOWS -> Text.of("Windows");
      case MACOS -> Text.of("macOS");
      case LINUX -> Text.of("Linux");
      case CLOUD -> Text.of("a synchronised drive");
      case POSIX -> Text.of("a portable archive");
      case RECEIVERS -> Text.of("image receivers");
    };
  }

  /** The most that a name without its ending may have. */
  int longest() {
    return this == RECEIVERS ? 31 - ENDING : 255 - ENDING;
  }

  /** Whether the limit counts UTF-8 bytes; UTF-16 units otherwise. */
  boolean countsBytes() {
    return this == LINUX || this == CLOUD || this == POSIX;
  }

  boolean foldsCase() {
    return this == WINDOWS || this == MACOS || this == CLOUD;
  }

  boolean limitsPaths() {
    return this == WINDOWS || this == CLOUD;
  }
}
