package org.framewright.copies.device;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.framewright.base.PlainText;
import org.framewright.base.SmallFiles;

/**
 * Which whole disks a path lies on under Linux: from the path to its mount, from there to the block
 * device, and down to the disks, through partitions, volume groups, arrays and images in files.
 */
final class LinuxDevices {
  private static final int DEEPEST = 8;
  private static final int MOST_MOUNTS = 16 << 20;

  private static final Set<String> MEMORY =
      Set.of(
          "tmpfs",
          "ramfs",
          "devtmpfs",
          "hugetlbfs",
          "proc",
          "sysfs",
          "cgroup",
          "cgroup2",
          "devpts",
          "debugfs",
          "tracefs",
          "securityfs",
          "configfs",
          "efivarfs",
          "pstore",
          "bpf",
          "mqueue",
          "fusectl",
          "binfmt_misc",
          "nsfs",
          "rootfs");

  private static final Set<String> SERVER_COLON =
      Set.of("nfs", "nfs4", "fuse.sshfs", "ceph", "fuse.glusterfs");

  private static final Set<String> SERVER_SLASHES = Set.of("cifs", "smb3", "smbfs", "ncpfs");

  private static final Set<String> ONE_DEVICE =
      Set.of(
          "ext2",
          "ext3",
          "ext4",
          "xfs",
          "vfat",
          "msdos",
          "exfat",
          "ntfs",
          "ntfs3",
          "fuseblk",
          "hfs",
          "hfsplus",
          "f2fs",
          "udf",
          "iso9660",
          "jfs",
          "reiserfs");

  private final Path root;
  private final Path proc;
  private final BlockDevices blocks;
  private volatile Snapshot latest = new Snapshot("", List.of(), Map.of());

  /**
   * The devices of a system.
   *
   * @param root holds its {@code proc}, {@code sys} and {@code run}
   */
  LinuxDevices(Path root) {
    this.root = root;
    this.proc = root.resolve("proc");
    this.blocks = new BlockDevices(root.resolve("sys"));
  }

  /** What was found for mounts; it holds for as long as no mount comes or goes. */
  private record Snapshot(String mountinfo, List<Mount> table, Map<Mount, Found> found) {}

  /**
   * What a path lies on.
   *
   * @param device that, as it is told to others
   * @param disks the whole disks, all of which it needs; none where they are not known
   * @param onImage whether a file lies between, so that the memory of its file system answers
   * @param mount the mount of the path
   */
  record Found(Device device, List<Disk> disks, boolean onImage, Optional<Mount> mount) {}

  /**
   * What a path lies on.
   *
   * @param path absolute, without links
   * @param number the number of the device that the system gives for the file; empty if unknown
   */
  Found find(String path, Optional<String> number) throws IOException {
    var mountinfo =
        new String(
            SmallFiles.read(proc.resolve("self").resolve("mountinfo"), MOST_MOUNTS),
            StandardCharsets.ISO_8859_1);
    var snapshot = latest;
    if (!mountinfo.equals(snapshot.mountinfo())) {
      snapshot = new Snapshot(mountinfo, Mount.table(mountinfo), new ConcurrentHashMap<>());
      latest = snapshot;
    }
    var table = snapshot.table();
    var mount = Mount.holding(path, table);
    if (mount.isEmpty()) {
      return unknown(path, Optional.empty());
    }
    boolean hidden =
        number.isPresent()
            && ONE_DEVICE.contains(mount.get().type())
            && !number.get().equals(mount.get().device());
    return hidden
        ? unknown(path, mount)
        : snapshot.found().computeIfAbsent(mount.get(), on -> on(on, path, table, 0));
  }

  private Found on(Mount mount, String path, List<Mount> table, int depth) {
    if (depth > DEEPEST) {
      return unknown(path, Optional.of(mount));
    }
    var type = mount.type();
    if (MEMORY.contains(type)) {
      return noMedium(mount, "memory (" + type + ")");
    }
    if (SERVER_COLON.contains(type) || SERVER_SLASHES.contains(type)) {
      return server(mount, path);
    }
    if (type.equals("overlay")) {
      return overlay(mount, path, table, depth);
    }
    if (type.equals("btrfs")) {
      return btrfs(mount, path, table, depth);
    }
    return mount.isOnBlockDevice()
        ? onDevices(mount, List.of(mount.device()), path, table, depth)
        : unknown(path, Optional.of(mount));
  }

  // ---- servers

  private Found server(Mount mount, String path) {
    var source = mount.source();
    var name =
        SERVER_SLASHES.contains(mount.type())
            ? source.replaceFirst("^[/\\\\]+", "").replaceFirst("[/\\\\].*$", "")
            : source.replaceFirst("^[^@/]*@", "").replaceFirst(":/.*$|:$|:[^:\\]]*$", "");
    name = name.toLowerCase(Locale.ROOT).replaceFirst("^\\[(.*)]$", "$1").replaceFirst("\\.$", "");
    var identities = new LinkedHashSet<String>();
    identities.add(name);
    mount.option("addr").ifPresent(identities::add);
    mount.option("ip").ifPresent(identities::add);
    if (name.isBlank() || identities.stream().anyMatch(this::isHere)) {
      return unknown(path, Optional.of(mount));
    }
    var tokens = identities.stream().map(one -> "server:" + one.replace('+', '_')).toList();
    var device =
        new Device(
            String.join(Device.BETWEEN, tokens),
            Device.Kind.REMOTE,
            "server " + PlainText.line(name));
    return new Found(device, List.of(), false, Optional.of(mount));
  }

  /** Whether a server is this very computer. */
  private boolean isHere(String server) {
    return server.equals("localhost")
        || server.startsWith("localhost.")
        || server.startsWith("127.")
        || server.equals("::1")
        || BlockDevices.text(proc.resolve("sys/kernel/hostname"))
            .map(name -> name.toLowerCase(Locale.ROOT))
            .filter(name -> server.equals(name) || server.startsWith(name + "."))
            .isPresent();
  }

  // ---- disks

  private Found btrfs(Mount mount, String path, List<Mount> table, int depth) {
    var numbers = blocks.numbers(mount.source());
    var members = numbers.map(blocks::btrfsDevices).orElse(List.of());
    var all = new ArrayList<String>();
    for (var member : members) {
      blocks.numbers("/dev/" + member).ifPresent(all::add);
    }
    return members.isEmpty() || all.size() != members.size()
        ? unknown(path, Optional.of(mount))
        : onDevices(mount, all, path, table, depth);
  }

  private Found onDevices(
      Mount mount, List<String> devices, String path, List<Mount> table, int depth) {
    var disks = new LinkedHashSet<Disk>();
    boolean onImage = false;
    for (var numbers : devices) {
      switch (blocks.below(numbers)) {
        case BlockDevices.Below.Disks found -> disks.addAll(found.disks());
        case BlockDevices.Below.Image image -> {
          onImage = true;
          var below = Mount.holding(image.file(), table);
          if (below.isEmpty()) {
            return unknown(path, Optional.of(mount));
          }
          var found = on(below.get(), image.file(), table, depth + 1);
          if (found.disks().isEmpty()) {
            return new Found(found.device(), List.of(), true, Optional.of(mount));
          }
          disks.addAll(found.disks());
        }
        case BlockDevices.Below.Unknown _ -> {
          return unknown(path, Optional.of(mount));
        }
      }
    }
    return new Found(device(disks), List.copyOf(disks), onImage, Optional.of(mount));
  }

  private static Device device(Set<Disk> disks) {
    var identities = new LinkedHashSet<String>();
    disks.forEach(disk -> identities.addAll(disk.identities()));
    var label = String.join(" and ", disks.stream().map(Disk::label).toList());
    var natures = disks.stream().map(Disk::nature).distinct().toList();
    var kind =
        natures.equals(List.of(Disk.Nature.REAL))
            ? Device.Kind.DISK
            : natures.contains(Disk.Nature.MEMORY) ? Device.Kind.NO_MEDIUM : Device.Kind.UNKNOWN;
    var said =
        switch (kind) {
          case DISK -> label;
          case NO_MEDIUM -> label + ", which is memory";
          default ->
              natures.contains(Disk.Nature.NETWORK)
                  ? label + ", which lies on another computer"
                  : label + ", which is made up by a virtual machine";
        };
    return new Device(String.join(Device.BETWEEN, identities), kind, said);
  }

  // ---- layers

  /** All layers on one device, or nobody knows which file lies where. */
  private Found overlay(Mount mount, String path, List<Mount> table, int depth) {
    var folders = new ArrayList<String>();
    for (var option : List.of("lowerdir", "upperdir")) {
      mount.option(option).ifPresent(list -> folders.addAll(List.of(list.split("(?<!\\\\):", -1))));
    }
    var found = new LinkedHashSet<Found>();
    for (var folder : folders) {
      var plain = folder.replace("\\:", ":").replace("\\,", ",");
      var below = plain.startsWith("/") ? Mount.holding(plain, table) : Optional.<Mount>empty();
      if (below.isEmpty() || below.get().equals(mount)) {
        return unknown(path, Optional.of(mount));
      }
      var layer = on(below.get(), plain, table, depth + 1);
      found.add(new Found(layer.device(), layer.disks(), layer.onImage(), Optional.empty()));
    }
    if (found.size() != 1) {
      return unknown(path, Optional.of(mount));
    }
    var one = found.getFirst();
    return new Found(one.device(), one.disks(), one.onImage(), Optional.of(mount));
  }

  // ---- none

  private static Found noMedium(Mount mount, String label) {
    var device = new Device("memory:" + mount.device(), Device.Kind.NO_MEDIUM, label);
    return new Found(device, List.of(), false, Optional.of(mount));
  }

  private static Found unknown(String path, Optional<Mount> mount) {
    var id = mount.map(on -> "mount:" + on.device() + ":" + on.source()).orElse("unknown:" + path);
    var type = mount.map(on -> " (" + PlainText.line(on.type()) + ")").orElse("");
    var device =
        new Device(
            id.replace(Device.BETWEEN, "_"),
            Device.Kind.UNKNOWN,
            "a disk that could not be determined" + type);
    return new Found(device, List.of(), false, mount);
  }

  // ---- which volume, since when

  /** The identity of what was found. */
  MountIdentity identity(Found found) {
    var insertions = found.disks().stream().map(Disk::insertion).toList();
    boolean known = !insertions.isEmpty() && insertions.stream().noneMatch(String::isEmpty);
    return new MountIdentity(
        found.mount().flatMap(this::volume).orElse(""),
        known ? String.join(MountIdentity.PARTS, insertions) : "",
        BlockDevices.text(proc.resolve("sys/kernel/random/boot_id")).orElse(""));
  }

  /** The file system's own id, which udev has read for us. */
  private Optional<String> volume(Mount mount) {
    var numbers =
        mount.isOnBlockDevice() ? Optional.of(mount.device()) : blocks.numbers(mount.source());
    if (numbers.isEmpty()) {
      return Optional.empty();
    }
    var byUdev = BlockDevices.text(root.resolve("run/udev/data/b" + numbers.get()));
    for (var line : byUdev.map(text -> text.split("\n", -1)).orElse(new String[0])) {
      if (line.startsWith("E:ID_FS_UUID=")) {
        return Optional.of(line.substring("E:ID_FS_UUID=".length()).strip());
      }
    }
    return Optional.empty();
  }

  /** Whether all of this runs in a virtual machine, below which other memory may answer. */
  boolean isVirtualMachine() {
    return BlockDevices.text(proc.resolve("cpuinfo"))
            .map(text -> text.contains(" hypervisor"))
            .orElse(false)
        || Files.exists(proc.resolve("device-tree/hypervisor"));
  }
}
