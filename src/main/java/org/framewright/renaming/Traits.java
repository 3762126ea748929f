package org.framewright.renaming;

import java.util.Locale;
import java.util.Set;

/**
 * What is known of a kind of volume.
 *
 * @param type the system's name of it, {@code ext4}, {@code exfat}
 * @param stableKeys whether a file keeps its number across renames and mounts
 * @param windowsNames whether names follow the rules of Windows
 * @param toleranceNanos how far apart two readings of one modification time may lie
 * @param atomicRename whether the volume promises that a power cut leaves a rename done or not done
 */
record Traits(
    String type,
    boolean stableKeys,
    boolean windowsNames,
    long toleranceNanos,
    boolean atomicRename) {
  private static final Set<String> STABLE =
      Set.of(
          "ext2",
          "ext3",
          "ext4",
          "xfs",
          "btrfs",
          "tmpfs",
          "zfs",
          "f2fs",
          "bcachefs",
          "apfs",
          "hfs",
          "nfs",
          "nfs4");
  private static final Set<String> FAT = Set.of("vfat", "msdos", "fat", "fat32", "exfat");

  /** FAT keeps times in steps of two seconds. */
  private static final long FAT_STEP_NANOS = 2_000_000_000L;

  static Traits of(String type, boolean onWindows) {
    var kind = type.toLowerCase(Locale.ROOT);
    boolean fat = FAT.contains(kind) || kind.startsWith("fuse");
    boolean windowsNames =
        onWindows
            || fat
            || kind.startsWith("ntfs")
            || kind.equals("cifs")
            || kind.startsWith("smb");
    return new Traits(kind, STABLE.contains(kind), windowsNames, fat ? FAT_STEP_NANOS : 0, !fat);
  }

  /** Whether a file may have two names; FAT has no links. */
  boolean mayHaveLinks() {
    return !FAT.contains(type);
  }

  /** Whether two looks can be of the same state of the same file. */
  boolean same(Seen a, Seen b) {
    return a.size() == b.size()
        && a.key().equals(b.key())
        && Math.abs(a.modifiedNanos() - b.modifiedNanos()) <= toleranceNanos;
  }
}
