package org.framewright.renaming;

import java.text.Normalizer;
import java.util.function.UnaryOperator;
import org.framewright.base.OperatingSystem;

/**
 * How a kind of volume answers on macOS and on Windows, as far as it matters for renames. Nothing
 * here was run on such a system; the sources are those of Apple (xnu 11417.101.15, hfs-715,
 * msdosfs-788, SMBClient-494) and Microsoft's documentation ("Naming Files, Paths, and Namespaces",
 * "MoveFileExW", "System Error Codes").
 *
 * <p>Rename: hfs_vnops.c has vnop_renamex, msdosfs and smbfs have none, and vn_default_error then
 * answers ENOTSUP. Links: HFS+ and APFS; smbfs has them; FAT has none. Names: hfs_catalog.c,
 * msdosfs_vnops.c and smb_converter.c list names decomposed; APFS keeps the spelling and takes both
 * for one name; NTFS takes them for two. Locks: err_advlock on smbfs. Flush of a folder: smbfs
 * answers F_FULLFSYNC with ENOTSUP; FAT of Windows does nothing and says that it did, but flushes
 * all of the volume through its root (Windows-driver-samples, filesys/fastfat/flush.c,
 * FatCommonFlushBuffers, UserDirectoryOpen). Order: NTFS and ReFS log renames, and so do the disks
 * of servers; that a log is written in order is from memory. Times: FAT in two seconds, HFS+ in
 * one. Numbers: the runtime gives none on Windows (fileKey is null). exFAT is public on neither
 * system: taken as FAT.
 */
enum SystemVolume {
  MAC_APFS(OperatingSystem.MACOS, "apfs", Accents.ONE_NAME, true, true, true, Flush.FOLDER, 1),
  MAC_HFS(
      OperatingSystem.MACOS,
      "hfs",
      Accents.DECOMPOSED,
      true,
      true,
      true,
      Flush.FOLDER,
      1_000_000_000),
  MAC_EXFAT(
      OperatingSystem.MACOS,
      "exfat",
      Accents.DECOMPOSED,
      false,
      false,
      true,
      Flush.FOLDER,
      10_000_000),
  MAC_FAT(
      OperatingSystem.MACOS,
      "msdos",
      Accents.DECOMPOSED,
      false,
      false,
      true,
      Flush.FOLDER,
      2_000_000_000),
  MAC_SMB(
      OperatingSystem.MACOS, "smbfs", Accents.DECOMPOSED, false, true, false, Flush.IN_ORDER, 100),
  WINDOWS_NTFS(
      OperatingSystem.WINDOWS, "NTFS", Accents.TWO_NAMES, true, true, true, Flush.IN_ORDER, 100),
  WINDOWS_REFS(
      OperatingSystem.WINDOWS, "ReFS", Accents.TWO_NAMES, true, false, true, Flush.IN_ORDER, 100),
  WINDOWS_EXFAT(
      OperatingSystem.WINDOWS,
      "exFAT",
      Accents.TWO_NAMES,
      true,
      false,
      true,
      Flush.VOLUME,
      10_000_000),
  WINDOWS_SMB(
      OperatingSystem.WINDOWS, "NTFS", Accents.TWO_NAMES, true, true, true, Flush.IN_ORDER, 100);

  /** What a volume makes of a letter with an accent. */
  enum Accents {
    /** It lists both spellings in two parts, and finds the file by either. */
    DECOMPOSED,
    /** It lists the spelling that was given, and finds the file by either. */
    ONE_NAME,
    /** Two spellings are two files. */
    TWO_NAMES
  }

  /** What the flush of a folder does there. */
  enum Flush {
    /** The names in it are on the disk; of other changes any may be, and any not. */
    FOLDER,
    /** It has to be that of the volume's root, and flushes all. */
    VOLUME,
    /** Nothing that is known; but a log keeps the order, and a file's flush takes it along. */
    IN_ORDER
  }

  final OperatingSystem system;
  final String type;
  final Accents accents;

  /** Whether the system's own rename refuses a taken name here; else there is no such rename. */
  final boolean renames;

  final boolean links;
  final boolean locks;
  final Flush flush;
  final long timeStepNanos;

  SystemVolume(
      OperatingSystem system,
      String type,
      Accents accents,
      boolean renames,
      boolean links,
      boolean locks,
      Flush flush,
      long timeStepNanos) {
    this.system = system;
    this.type = type;
    this.accents = accents;
    this.renames = renames;
    this.links = links;
    this.locks = locks;
    this.flush = flush;
    this.timeStepNanos = timeStepNanos;
  }

  Traits traits() {
    var traits = Traits.of(type, system == OperatingSystem.WINDOWS);
    boolean numbers = traits.stableKeys() && system != OperatingSystem.WINDOWS;
    return new Traits(
        traits.type(),
        numbers,
        traits.windowsNames(),
        traits.toleranceNanos(),
        traits.atomicRename());
  }

  /** How the renames are done where the first way that works is taken. */
  Guarantee guarantee() {
    return renames ? Guarantee.NATIVE : links ? Guarantee.LINKED : Guarantee.RESERVED;
  }

  /** As the volume lists a name that was given to it. */
  String listed(String name) {
    return accents == Accents.DECOMPOSED ? Normalizer.normalize(name, Normalizer.Form.NFD) : name;
  }

  /**
   * What is one for two names that the volume takes for one. None of these tells case apart; their
   * tables take one letter for one letter, so that \u00df is no SS (from memory).
   */
  UnaryOperator<String> key() {
    return accents == Accents.TWO_NAMES
        ? SystemVolume::capitals
        : name -> capitals(Normalizer.normalize(name, Normalizer.Form.NFD));
  }

  private static String capitals(String name) {
    return name.codePoints()
        .map(Character::toUpperCase)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }
}
