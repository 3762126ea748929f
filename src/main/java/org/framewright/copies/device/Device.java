package org.framewright.copies.device;

import java.util.Arrays;
import java.util.HashSet;

/**
 * What fails as one: a whole disk, a group of disks that only work together, or a server.
 *
 * @param id what it is known by while this program runs, such as {@code disk:8:0}; a disk with a
 *     serial number, or a group of disks, is known by several, with {@code +} between them
 * @param kind what is known of it
 * @param label what to call it before a person, such as {@code disk sdb (USB, 64 GB)}
 */
public record Device(String id, Kind kind, String label) {
  private static final String SEVERAL = "\\+";

  /** What is known of a device. */
  public enum Kind {
    /** A disk or card of this computer, or several of them that work as one. */
    DISK,
    /** A server, whatever its disks are. */
    REMOTE,
    /** There is nothing behind it that outlasts a restart, or nothing that can be found. */
    NO_MEDIUM,
    /** It could not be established. */
    UNKNOWN
  }

  /** Whether two devices are one. */
  public enum Sameness {
    /** What destroys one destroys the other. */
    SAME,
    /** Both are known, and they are two. */
    DISTINCT,
    /** Not established: neither of the other answers may be taken for granted. */
    UNKNOWN
  }

  /**
   * Whether two devices are one. They are if anything that they are known by agrees: a disk of this
   * computer, or a serial number. Cheap adapters share serial numbers; their disks are then taken
   * for one, which errs on the safe side. Two servers may be one by two names.
   */
  public static Sameness compare(Device a, Device b) {
    if (a.kind == Kind.UNKNOWN || b.kind == Kind.UNKNOWN) {
      return Sameness.UNKNOWN;
    }
    var shared = new HashSet<>(Arrays.asList(a.id.split(SEVERAL)));
    shared.retainAll(Arrays.asList(b.id.split(SEVERAL)));
    if (!shared.isEmpty()) {
      return Sameness.SAME;
    }
    boolean lasting = a.kind != Kind.NO_MEDIUM && b.kind != Kind.NO_MEDIUM;
    boolean oneIsHere = a.kind == Kind.DISK || b.kind == Kind.DISK;
    return lasting && oneIsHere ? Sameness.DISTINCT : Sameness.UNKNOWN;
  }
}
