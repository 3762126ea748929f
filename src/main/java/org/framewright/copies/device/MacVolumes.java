package org.framewright.copies.device;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.framewright.base.PlainText;
import org.framewright.base.Progress;

/**
 * The volumes of macOS, by what {@code diskutil info -plist} says of them, see diskutil(8). Reads
 * prove nothing: whether a read without the cache reaches the medium was not established there.
 */
final class MacVolumes implements Volumes {
  private static final String DISKUTIL = "/usr/sbin/diskutil";
  private static final List<String> SESSION =
      List.of("/usr/sbin/sysctl", "-n", "kern.bootsessionuuid");

  private static final String PARENT = "ParentWholeDisk";

  private final Answers answers;

  MacVolumes(Answers answers) {
    this.answers = answers;
  }

  @Override
  public Device deviceOf(Path path) throws IOException {
    var real = path.toRealPath();
    var store = Files.getFileStore(real);
    return device(real, store.name(), store.type());
  }

  /** What a source of a mount lies on, such as {@code /dev/disk4s1}. */
  Device device(Path real, String source, String type) {
    if (List.of("smbfs", "nfs", "afpfs", "webdav").contains(type)) {
      return server(real, source, type);
    }
    if (!source.matches("/dev/disk\\d+(s\\d+)*")) {
      return UnknownVolumes.unknown(real);
    }
    var info = info(source);
    var wholes = new TreeSet<String>();
    for (var one : info.map(MacVolumes::stores).orElse(List.of())) {
      // A store of APFS is a partition; its own disk is the one that fails.
      var disk = source.equals("/dev/" + one) ? info : info("/dev/" + one);
      var whole = disk.filter(MacVolumes::isPhysical).flatMap(known -> text(known, PARENT));
      if (whole.isEmpty()) {
        return UnknownVolumes.unknown(real);
      }
      wholes.add(whole.get());
    }
    if (wholes.isEmpty()) {
      return UnknownVolumes.unknown(real);
    }
    var name = info.flatMap(known -> text(known, "MediaName")).filter(text -> !text.isBlank());
    var label = "disk " + String.join(" and ", wholes);
    return new Device(
        String.join(Device.BETWEEN, wholes.stream().map(whole -> "disk:" + whole).toList()),
        Device.Kind.DISK,
        label + name.map(text -> " (" + PlainText.line(text) + ")").orElse(""));
  }

  private Optional<Map<String, Object>> info(String device) {
    return answers.to(List.of(DISKUTIL, "info", "-plist", device)).flatMap(PropertyList::read);
  }

  /** The stores of an APFS volume; of any other, itself. */
  private static List<String> stores(Map<String, Object> info) {
    if (info.get("APFSPhysicalStores") instanceof List<?> stores) {
      return stores.stream()
          .map(store -> store instanceof Map<?, ?> one ? one.get("APFSPhysicalStore") : null)
          .map(name -> name instanceof String text && isName(text) ? text : "?")
          .toList();
    }
    return text(info, "DeviceIdentifier")
        .filter(MacVolumes::isName)
        .map(List::of)
        .orElse(List.of());
  }

  private static boolean isName(String name) {
    return name.matches("disk\\d+(s\\d+)*");
  }

  /** An image in a file and a set of several disks are none that fail by themselves. */
  private static boolean isPhysical(Map<String, Object> info) {
    return text(info, "VirtualOrPhysical").filter("Physical"::equals).isPresent()
        && text(info, "BusProtocol").filter(bus -> !bus.equals("Disk Image")).isPresent()
        && text(info, PARENT).filter(MacVolumes::isName).isPresent();
  }

  private static Optional<String> text(Map<String, Object> info, String key) {
    return info.get(key) instanceof String text ? Optional.of(text) : Optional.empty();
  }

  private static Device server(Path real, String source, String type) {
    var name =
        type.equals("nfs")
            ? source.replaceFirst(":/.*$", "")
            : source
                .replaceFirst("^[a-z]*:?//", "")
                .replaceFirst("/.*$", "")
                .replaceFirst("^.*@", "")
                .replaceFirst(":\\d+$", "");
    name = name.toLowerCase(Locale.ROOT).replace("+", "_");
    boolean isHere = name.equals("localhost") || name.startsWith("127.") || name.equals("::1");
    return name.isBlank() || isHere
        ? UnknownVolumes.unknown(real)
        : new Device("server:" + name, Device.Kind.REMOTE, "server " + PlainText.line(name));
  }

  @Override
  public MountIdentity mountOf(Path path) throws IOException {
    var source = Files.getFileStore(path.toRealPath()).name();
    var volume =
        source.startsWith("/dev/disk")
            ? info(source).flatMap(info -> text(info, "VolumeUUID"))
            : Optional.<String>empty();
    var boot = answers.to(SESSION).map(said -> new String(said, StandardCharsets.US_ASCII).strip());
    return new MountIdentity(volume.orElse(""), "", boot.orElse(""));
  }

  @Override
  public Reading read(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException {
    return new WholeRead(file, each, progress).read(() -> Proof.NONE, false);
  }
}
