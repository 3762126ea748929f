package org.framewright.frames;

import java.time.Duration;
import java.util.Locale;
import java.util.Set;
import org.framewright.base.OperatingSystem;

/**
 * Whether to listen to a folder, or only to look at it every second.
 *
 * <p>On Windows a listener holds the folder open: no folder above it can then be renamed, and its
 * drive not be ejected, until the listener is closed (dotnet/runtime issue 103383, fsnotify issue
 * 356; from memory for drives, not run on Windows). While frames come they are to show at once, so
 * there it is listened to until nothing has changed for a while, and again from the next change on.
 *
 * @param system where the program runs
 * @param rest after how long without a change nobody listens any more on Windows
 */
record Listening(OperatingSystem system, Duration rest) {
  private static final Duration REST = Duration.ofMinutes(5);

  /** File systems of this computer's own disks, as Linux and macOS call them. */
  private static final Set<String> OWN =
      Set.of(
          "ext2", "ext3", "ext4", "xfs", "btrfs", "f2fs", "zfs", "tmpfs", "vfat", "exfat", "apfs",
          "hfs");

  static Listening ofThisSystem() {
    return new Listening(OperatingSystem.current(), REST);
  }

  /**
   * Whether to listen.
   *
   * @param unchanged how long nothing has changed in the folder
   */
  boolean listens(Duration unchanged) {
    return system != OperatingSystem.WINDOWS || unchanged.compareTo(rest) < 0;
  }

  /**
   * Whether events come from a place although none came yet. Windows calls a share of another
   * computer by the name of that computer's file system, so there nobody knows.
   *
   * @param type what the system calls the place's file system
   */
  boolean comeFrom(String type) {
    return system != OperatingSystem.WINDOWS && OWN.contains(type.toLowerCase(Locale.ROOT));
  }
}
