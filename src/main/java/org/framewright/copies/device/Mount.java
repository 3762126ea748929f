package org.framewright.copies.device;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One line of {@code /proc/self/mountinfo}. Source: proc_pid_mountinfo(5).
 *
 * @param id its number among the mounts
 * @param parent the mount that it is mounted on
 * @param device major and minor number of what it says files lie on, such as {@code 8:17}
 * @param point where it is mounted, absolute
 * @param type the file system
 * @param source what is mounted: a device, a server's folder, or any word
 * @param options those of the file system
 */
record Mount(
    int id,
    int parent,
    String device,
    String point,
    String type,
    String source,
    List<String> options) {
  private static final int FIRST_OPTIONAL = 6;

  /** Paths come in the encoding in which Java reads them too, so that both are spelled alike. */
  static final Charset PATHS =
      Charset.forName(System.getProperty("sun.jnu.encoding", "UTF-8"), StandardCharsets.UTF_8);

  /**
   * All lines that are understood; another one, if there ever is any, names no mount of ours.
   *
   * @param mountinfo its bytes, each as one character
   */
  static List<Mount> table(String mountinfo) {
    var mounts = new ArrayList<Mount>();
    for (var line : mountinfo.split("\n", -1)) {
      of(line).ifPresent(mounts::add);
    }
    return mounts;
  }

  private static Optional<Mount> of(String line) {
    var fields = List.of(line.split(" ", -1));
    int dash = fields.indexOf("-");
    if (dash < FIRST_OPTIONAL || fields.size() < dash + 4) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Mount(
              Integer.parseInt(fields.get(0)),
              Integer.parseInt(fields.get(1)),
              fields.get(2),
              unescaped(fields.get(4)),
              fields.get(dash + 1),
              unescaped(fields.get(dash + 2)),
              List.of(unescaped(fields.get(dash + 3)).split("(?<!\\\\),", -1))));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** Blanks, tabs, line feeds, backslashes and number signs are written as {@code \040}. */
  private static String unescaped(String field) {
    var bytes = new byte[field.length()];
    int length = 0;
    for (int i = 0; i < field.length(); i++) {
      char one = field.charAt(i);
      if (one == '\\' && isOctal(field, i + 1)) {
        bytes[length++] = (byte) Integer.parseInt(field.substring(i + 1, i + 4), 8);
        i += 3;
      } else {
        bytes[length++] = (byte) one;
      }
    }
    return new String(bytes, 0, length, PATHS);
  }

  private static boolean isOctal(String field, int from) {
    return from + 3 <= field.length()
        && field.substring(from, from + 3).chars().allMatch(digit -> digit >= '0' && digit <= '7');
  }

  /**
   * The mount that a path lies on. The way goes as the kernel's does, from the root over the mounts
   * on the path, so that a mount that a later one hides is not met.
   *
   * @param path absolute, without links
   */
  static Optional<Mount> holding(String path, List<Mount> table) {
    var at = root(table);
    for (int i = 0; i < table.size() && at.isPresent(); i++) {
      var next = next(at.get(), path, table);
      if (next.isEmpty()) {
        return at;
      }
      at = next;
    }
    return at;
  }

  private static Optional<Mount> root(List<Mount> table) {
    Mount root = null;
    for (var mount : table) {
      boolean hasParent =
          table.stream().anyMatch(other -> other.id == mount.parent && other.id != mount.id);
      if (mount.point.equals("/") && !hasParent) {
        root = mount;
      }
    }
    return Optional.ofNullable(root);
  }

  /** Of the mounts on this one that the path passes, the first; of several there, the last. */
  private static Optional<Mount> next(Mount on, String path, List<Mount> table) {
    Mount first = null;
    for (var mount : table) {
      if (mount.parent == on.id
          && mount.id != on.id
          && mount.isOnTheWayTo(path)
          && (first == null || mount.point.length() <= first.point.length())) {
        first = mount;
      }
    }
    return Optional.ofNullable(first);
  }

  private boolean isOnTheWayTo(String path) {
    return point.equals("/")
        || (path.startsWith(point)
            && (path.length() == point.length() || path.charAt(point.length()) == '/'));
  }

  /** The value of an option, such as {@code addr=192.0.2.7}. */
  Optional<String> option(String name) {
    return options.stream()
        .filter(option -> option.startsWith(name + "="))
        .map(option -> option.substring(name.length() + 1))
        .findFirst();
  }

  /** Whether the device's number is that of a block device. */
  boolean isOnBlockDevice() {
    return !device.startsWith("0:");
  }
}
