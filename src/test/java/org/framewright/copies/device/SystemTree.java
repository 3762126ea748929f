package org.framewright.copies.device;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.framewright.disk.SymbolicLinks;

/**
 * The files of a kernel as text, laid out in a folder: a line {@code PATH = CONTENT} is a file,
 * {@code PATH -> TARGET} a link.
 */
final class SystemTree {
  private final Path root;

  SystemTree(Path root) {
    this.root = root;
  }

  SystemTree with(String lines) throws IOException {
    for (var line : lines.lines().map(String::strip).filter(one -> !one.isEmpty()).toList()) {
      int link = line.indexOf(" -> ");
      int file = line.indexOf(" = ");
      var path = root.resolve(line.substring(0, link > 0 ? link : file).strip());
      Files.createDirectories(path.getParent());
      if (link > 0) {
        SymbolicLinks.make(path, Path.of(line.substring(link + 4).strip()));
      } else {
        Files.writeString(path, line.substring(file + 3) + "\n");
      }
    }
    return this;
  }

  /** A disk with one partition, as sysfs shows them. */
  SystemTree disk(String bus, String name, String numbers, String partition) throws IOException {
    var disk = "sys/devices/" + bus + "/block/" + name;
    var up = "../../devices/" + bus + "/block/" + name;
    with(disk + "/dev = " + numbers);
    with("sys/dev/block/" + numbers + " -> " + up);
    with("sys/class/block/" + name + " -> " + up);
    if (!partition.isEmpty()) {
      var child = name + (name.matches(".*\\d") ? "p1" : "1");
      with(disk + "/" + child + "/dev = " + partition);
      with(disk + "/" + child + "/partition = 1");
      with("sys/dev/block/" + partition + " -> " + up + "/" + child);
      with("sys/class/block/" + child + " -> " + up + "/" + child);
    }
    return this;
  }

  SystemTree mounts(String mountinfo) throws IOException {
    var file = root.resolve("proc/self/mountinfo");
    Files.createDirectories(file.getParent());
    Files.writeString(file, mountinfo.stripIndent());
    return this;
  }

  LinuxDevices devices() {
    return new LinuxDevices(root);
  }
}
