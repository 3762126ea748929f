package org.framewright.copies.device;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;
import org.framewright.base.SmallFiles;

/**
 * The block devices of a Linux kernel, as {@code /sys} shows them. Source: the kernel's
 * documentation, ABI/stable/sysfs-block and ABI/testing/sysfs-block.
 */
final class BlockDevices {
  private static final int DEEPEST = 16;
  private static final int MOST_BYTES = 1 << 16;
  private static final long SECTOR = 512;
  private static final Pattern NUMBERS = Pattern.compile("\\d{1,9}:\\d{1,9}");
  private static final Pattern MEMORY = Pattern.compile("(zram|ram|pmem_ram|nullb)\\d+");
  private static final Pattern NETWORK = Pattern.compile("(nbd|rbd|drbd|rnbd|aoe|etherd).*");
  private static final Pattern VIRTUAL = Pattern.compile("(vd|xvd|ubd)[a-z]+");

  /** Vendors and models of the disks that hypervisors make up. From memory, no one source. */
  private static final Pattern MADE_UP =
      Pattern.compile(
          "(?i).*(qemu|vmware|vbox|virtualbox|virtual disk|virtual_disk|xensource"
              + "|amazon elastic block|persistentdisk|google ephemeral).*|msft.*");

  private static final Pattern DEBUG = Pattern.compile("(?i).*scsi_debug.*");

  private final Path sys;

  BlockDevices(Path sys) {
    this.sys = sys;
  }

  /** What lies below a block device. */
  sealed interface Below {
    /** Whole disks, all of which it needs. */
    record Disks(List<Disk> disks) implements Below {}

    /** A file, as a disk: the file's path. */
    record Image(String file) implements Below {}

    /** It could not be established. */
    record Unknown() implements Below {}
  }

  /** The device of this name, such as {@code sdb1}, or {@code vg-card} of the device mapper. */
  Optional<String> numbers(String source) {
    if (source.startsWith("/dev/mapper/")) {
      return ofMapper(source.substring("/dev/mapper/".length()));
    }
    if (!source.startsWith("/dev/") || source.contains("..")) {
      return Optional.empty();
    }
    var name = source.substring("/dev/".length()).replace('/', '!');
    return text(sys.resolve("class").resolve("block").resolve(name).resolve("dev"))
        .filter(dev -> NUMBERS.matcher(dev).matches());
  }

  private Optional<String> ofMapper(String name) {
    for (var device : names(sys.resolve("class").resolve("block"))) {
      var folder = sys.resolve("class").resolve("block").resolve(device);
      if (text(folder.resolve("dm").resolve("name")).filter(name::equals).isPresent()) {
        return text(folder.resolve("dev")).filter(dev -> NUMBERS.matcher(dev).matches());
      }
    }
    return Optional.empty();
  }

  /** All devices of the btrfs of which one is given, by their names; empty if it is of none. */
  List<String> btrfsDevices(String numbers) {
    var all = sys.resolve("fs").resolve("btrfs");
    for (var id : names(all)) {
      var devices = all.resolve(id).resolve("devices");
      var names = names(devices);
      for (var name : names) {
        if (text(devices.resolve(name).resolve("dev")).filter(numbers::equals).isPresent()) {
          return names;
        }
      }
    }
    return List.of();
  }

  /** What lies below a device, given by its major and minor number. */
  Below below(String numbers) {
    return below(numbers, 0);
  }

  private Below below(String numbers, int depth) {
    if (depth > DEEPEST || !NUMBERS.matcher(numbers).matches()) {
      return new Below.Unknown();
    }
    Path device;
    try {
      device = sys.resolve("dev").resolve("block").resolve(numbers).toRealPath();
    } catch (IOException e) {
      return new Below.Unknown();
    }
    return Files.exists(device.resolve("partition"))
        ? wholeDisk(device.getParent(), depth)
        : wholeDisk(device, depth);
  }

  private Below wholeDisk(Path disk, int depth) {
    var name = String.valueOf(disk.getFileName());
    if (name.startsWith("loop")) {
      // The kernel writes a file's name as it is, with a line feed behind it.
      return text(disk.resolve("loop").resolve("backing_file"))
          .filter(file -> file.startsWith("/") && !file.endsWith(" (deleted)"))
          .<Below>map(Below.Image::new)
          .orElse(new Below.Unknown());
    }
    var parts = names(disk.resolve("slaves"));
    if (!parts.isEmpty()) {
      return allOf(disk, parts, depth);
    }
    boolean isStack = name.startsWith("dm-") || name.matches("md\\d.*|md_.*|bcache\\d+");
    return isStack ? new Below.Unknown() : new Below.Disks(List.of(disk(disk, name)));
  }

  /** A volume group, an array or a mirror: one device, of all its disks. */
  private Below allOf(Path disk, List<String> parts, int depth) {
    var disks = new ArrayList<Disk>();
    for (var part : parts) {
      var numbers = text(disk.resolve("slaves").resolve(part).resolve("dev"));
      switch (numbers.<Below>map(dev -> below(dev, depth + 1)).orElse(new Below.Unknown())) {
        case Below.Disks more ->
            more.disks().stream().filter(one -> !disks.contains(one)).forEach(disks::add);
        case Below.Image image -> {
          // A file as a part of an array is for tests of arrays, not for pictures.
          return parts.size() == 1 ? image : new Below.Unknown();
        }
        case Below.Unknown unknown -> {
          return unknown;
        }
      }
    }
    return new Below.Disks(List.copyOf(disks));
  }

  private Disk disk(Path disk, String name) {
    var identities = new LinkedHashSet<String>();
    text(disk.resolve("dev")).ifPresent(numbers -> identities.add("disk:" + numbers));
    for (var serial : serials(disk)) {
      identities.add("serial:" + serial);
    }
    return new Disk(
        name,
        nature(disk, name),
        identities,
        text(disk.resolve("diskseq")).orElse(""),
        label(disk, name));
  }

  /** Whatever tells this piece of hardware from others of its kind. */
  private static Set<String> serials(Path disk) {
    var serials = new TreeSet<String>();
    for (var file : List.of("serial", "wwid", "device/serial", "device/wwid", "device/cid")) {
      text(disk.resolve(file)).ifPresent(serials::add);
    }
    vitalProduct(disk.resolve("device").resolve("vpd_pg80")).ifPresent(serials::add);
    // An adapter for USB passes no serial number on; it has one of its own.
    for (var at = disk; at != null; at = at.getParent()) {
      if (Files.exists(at.resolve("idVendor"))) {
        var maker = text(at.resolve("idVendor")).orElse("");
        var product = text(at.resolve("idProduct")).orElse("");
        text(at.resolve("serial"))
            .ifPresent(serial -> serials.add(maker + ":" + product + ":" + serial));
        break;
      }
    }
    var clean = new TreeSet<String>();
    for (var serial : serials) {
      clean.add(PlainText.line(serial).strip().replaceAll("[\\s+]+", "_"));
    }
    clean.remove("");
    return clean;
  }

  /** SCSI Primary Commands, unit serial number page: four bytes, then the number in ASCII. */
  private static Optional<String> vitalProduct(Path page) {
    try {
      var bytes = SmallFiles.read(page, MOST_BYTES);
      return bytes.length <= 4
          ? Optional.empty()
          : Optional.of(new String(bytes, 4, bytes.length - 4, StandardCharsets.ISO_8859_1).strip())
              .filter(text -> !text.isEmpty());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private static Disk.Nature nature(Path disk, String name) {
    var model = model(disk);
    if (MEMORY.matcher(name).matches() || DEBUG.matcher(model).matches()) {
      return Disk.Nature.MEMORY;
    }
    // A session is one of iSCSI: the disk is another computer's.
    if (NETWORK.matcher(name).matches() || disk.toString().matches(".*/session\\d+/.*")) {
      return Disk.Nature.NETWORK;
    }
    return VIRTUAL.matcher(name).matches() || MADE_UP.matcher(model).matches()
        ? Disk.Nature.VIRTUAL
        : Disk.Nature.REAL;
  }

  private static String model(Path disk) {
    var words = new ArrayList<String>();
    for (var file : List.of("device/vendor", "device/model", "device/name")) {
      text(disk.resolve(file)).filter(word -> !word.startsWith("0x")).ifPresent(words::add);
    }
    return PlainText.line(String.join(" ", words)).replaceAll("\\s+", " ").strip();
  }

  private static String label(Path disk, String name) {
    var about = new ArrayList<String>();
    var model = model(disk);
    if (!model.isEmpty()) {
      about.add(model);
    }
    text(disk.resolve("size")).flatMap(BlockDevices::size).ifPresent(about::add);
    return "disk "
        + PlainText.line(name)
        + (about.isEmpty() ? "" : " (" + String.join(", ", about) + ")");
  }

  private static Optional<String> size(String sectors) {
    try {
      double gigabytes = Long.parseLong(sectors) * (double) SECTOR / 1e9;
      return gigabytes < 0.1
          ? Optional.empty()
          : Optional.of(
              String.format(Locale.ROOT, gigabytes < 10 ? "%.1f GB" : "%.0f GB", gigabytes));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** The names in a folder, sorted; none where there is no such folder. */
  private static List<String> names(Path folder) {
    var names = new TreeSet<String>();
    if (Files.isDirectory(folder)) {
      try (var paths = Files.newDirectoryStream(folder)) {
        paths.forEach(path -> names.add(path.getFileName().toString()));
      } catch (IOException | DirectoryIteratorException e) {
        return List.of();
      }
    }
    return List.copyOf(names);
  }

  /** What a file of the kernel says, without the line feed; nothing where it says nothing. */
  static Optional<String> text(Path file) {
    try {
      var text = new String(SmallFiles.read(file, MOST_BYTES), Mount.PATHS).stripTrailing();
      return Optional.of(text).filter(said -> !said.isBlank());
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
