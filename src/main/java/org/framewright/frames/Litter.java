package org.framewright.frames;

import java.util.Locale;
import java.util.Set;

/**
 * What cards, computers and file servers leave behind in folders. It is no frame, belongs to none,
 * and nobody misses it.
 */
final class Litter {
  /** Besides names that begin with a dot, by which systems hide what is theirs. */
  private static final Set<String> FILES =
      Set.of(
          "thumbs.db",
          "ehthumbs.db",
          "ehthumbs_vista.db",
          "desktop.ini",
          "icon\r",
          "autprint.mrk",
          "nc_fllst.dat");

  /** Temporary files; a camera's list of what is on its card. */
  private static final Set<String> ENDINGS = Set.of("tmp", "temp", "ctg");

  private static final Set<String> FOLDERS =
      Set.of(
          "@eadir",
          "#recycle",
          "@recycle",
          "$recycle.bin",
          "system volume information",
          "lost+found",
          "__macosx");

  private Litter() {}

  static boolean isFile(String name) {
    return name.startsWith(".")
        || ENDINGS.contains(Endings.of(name))
        || FILES.contains(name.toLowerCase(Locale.ROOT));
  }

  static boolean isFolder(String name) {
    return name.startsWith(".") || FOLDERS.contains(name.toLowerCase(Locale.ROOT));
  }
}
