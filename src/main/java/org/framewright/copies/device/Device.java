package org.framewright.copies.device;

import java.util.Arrays;
import java.util.HashSet;
import java.util.regex.Pattern;

/**
 * What fails as one: a whole disk, a group of disks that only work together, or a server.
 *
 * @param id what it is known by while this program runs, such as {@code disk:8:0}; a disk with a
 *     serial number, or a group of disks, is known by several, with {@code +} between them
 * @param kind what is known of it
 * @param label what to call it before a person, such as {@code disk sdb (USB, 64 GB)}
 */
public record Device(String id, Kind kind, String label) {
  static final String BETWEEN = "+";

  private static final Pattern SEVERAL = Pattern.compile(BETWEEN, Pattern.LITERAL);

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
    var shared = new HashSet<>(Arrays.asList(SEVERAL.split(a.id)));
    shared.retainAll(Arrays.asList(SEVERAL.split(b.id)));
    if (!shared.isEmpty()) {
      return Sameness.SAME;
    }
    boolean known = isKnown(a) && isKnown(b);
    boolean oneIsHere = a.kind == Kind.DISK || b.kind == Kind.DISK;
    return known && oneIsHere ? Sameness.DISTINCT : Sameness.UNKNOWN;
  }

  private static boolean isKnown(Device device) {
    return device.kind == Kind.DISK || device.kind == Kind.REMOTE;
  }
}
