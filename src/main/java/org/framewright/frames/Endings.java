package org.framewright.frames;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the endings of files say of them. Which raw endings there are is taken from the lists of
 * formats that open-source readers of raws publish; what makers changed inside one ending over the
 * years is left to the readers, which go by the first bytes.
 */
final class Endings {
  private static final Map<String, FileRole> ROLES = new HashMap<>();

  /**
   * Raws and clips whose container none of the readers knows, or not in every make: whether such a
   * file is whole is seen only by its holding still.
   */
  private static final Set<String> OPAQUE =
      Set.of(
          "ari", "avi", "bay", "bmq", "cap", "cine", "cs1", "dc2", "dcr", "dcs", "drf", "dv", "eip",
          "ia", "k25", "kc2", "kdc", "m2ts", "m2v", "mdc", "mef", "mod", "mos", "mpeg", "mpg",
          "mts", "nev", "ptx", "pxn", "qtk", "r3d", "raw", "rdc", "rwz", "sr2", "srf", "sti", "tod",
          "ts", "wmv");

  /** Files that a copy or a download has not brought to its end, and that get another name then. */
  private static final Set<String> UNFINISHED =
      Set.of("part", "partial", "filepart", "crdownload", "download", "copying", "!ut");

  static {
    put(
        FileRole.RAW,
        "3fr ari arq arw bay bmq cap cine cr2 cr3 crw cs1 dc2 dcr dcs dng drf eip erf fff gpr ia"
            + " iiq k25 kc2 kdc mdc mef mos mrw nef nrw orf ori pef ptx pxn qtk raf raw rdc rw1 rw2"
            + " rwl rwz sr2 srf srw sti x3f");
    put(FileRole.HEIF, "heic heif hif avif");
    put(FileRole.JPEG, "jpg jpeg jpe");
    put(FileRole.OTHER_IMAGE, "tif tiff png");
    put(
        FileRole.VIDEO,
        "3gp avi braw crm dv insv m2ts m2v m4v mod mov mp4 mpeg mpg mts mxf nev r3d tod ts wmv");
    put(FileRole.SIDECAR, "xmp");
  }

  private Endings() {}

  private static void put(FileRole role, String endings) {
    for (var ending : endings.split(" ", -1)) {
      ROLES.put(ending, role);
    }
  }

  /**
   * What stands behind the last dot, in lower case; nothing without a dot behind a first letter.
   */
  static String of(String name) {
    int dot = name.lastIndexOf('.');
    return dot <= 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }

  static Optional<FileRole> role(String name) {
    return Optional.ofNullable(ROLES.get(of(name)));
  }

  static boolean isOpaque(String name) {
    return OPAQUE.contains(of(name));
  }

  static boolean isUnfinished(String name) {
    return UNFINISHED.contains(of(name));
  }
}
