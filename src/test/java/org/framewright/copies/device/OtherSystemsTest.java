package org.framewright.copies.device;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Disks of macOS and Windows. The answers have the form of diskutil(8) and of Microsoft's Storage
 * module; they are written from memory, not recorded.
 */
class OtherSystemsTest {
  private static final Path FILE = Path.of("x").toAbsolutePath();

  private final Map<String, String> said = new HashMap<>();

  private Optional<byte[]> answer(List<String> command) {
    return Optional.ofNullable(said.get(command.getLast()))
        .map(text -> text.getBytes(StandardCharsets.UTF_8));
  }

  private static String plist(String... entries) {
    return """
    <?xml version="1.0" encoding="UTF-8"?>
    <!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
    <plist version="1.0"><dict>%s</dict></plist>
    """
        .formatted(String.join("", entries));
  }

  private static String entry(String key, String value) {
    return "<key>" + key + "</key><string>" + value + "</string>";
  }

  private static String physical(String id, String whole, String bus) {
    return plist(
        entry("DeviceIdentifier", id),
        entry("ParentWholeDisk", whole),
        entry("VirtualOrPhysical", "Physical"),
        entry("BusProtocol", bus),
        entry("MediaName", "Card Reader"));
  }

  private Device mac(String source, String type) {
    return new MacVolumes(this::answer).device(FILE, source, type);
  }

  @Test
  void aCardOnAMacIsItsWholeDisk() {
    said.put("/dev/disk4s1", physical("disk4s1", "disk4", "Secure Digital"));
    assertThat(mac("/dev/disk4s1", "exfat"))
        .isEqualTo(new Device("disk:disk4", Device.Kind.DISK, "disk disk4 (Card Reader)"));
  }

  @Test
  void aVolumeOfApfsIsTheDiskOfItsPhysicalStore() {
    said.put(
        "/dev/disk3s5",
        plist(
            entry("DeviceIdentifier", "disk3s5"),
            entry("ParentWholeDisk", "disk3"),
            entry("VirtualOrPhysical", "Virtual"),
            "<key>APFSPhysicalStores</key><array><dict>",
            entry("APFSPhysicalStore", "disk0s2"),
            "</dict></array>"));
    assertThat(mac("/dev/disk3s5", "apfs").kind()).isEqualTo(Device.Kind.UNKNOWN);
    said.put("/dev/disk0s2", physical("disk0s2", "disk0", "Apple Fabric"));
    assertThat(mac("/dev/disk3s5", "apfs").id()).isEqualTo("disk:disk0");
  }

  @Test
  void anImageOnAMacAndADiskThatDoesNotAnswerAreUnknown() {
    said.put("/dev/disk5s1", physical("disk5s1", "disk5", "Disk Image"));
    assertThat(mac("/dev/disk5s1", "hfs").kind()).isEqualTo(Device.Kind.UNKNOWN);
    assertThat(mac("/dev/disk6s1", "hfs").kind()).isEqualTo(Device.Kind.UNKNOWN);
    assertThat(mac("map auto_home", "autofs").kind()).isEqualTo(Device.Kind.UNKNOWN);
  }

  @Test
  void aShareOnAMacIsItsServer() {
    assertThat(mac("//ines@NAS._smb._tcp.local/shots", "smbfs").id())
        .isEqualTo("server:nas._smb._tcp.local");
    assertThat(mac("nas.local:/shots", "nfs").kind()).isEqualTo(Device.Kind.REMOTE);
  }

  @Test
  void aPropertyListFetchesAndExpandsNothing() {
    var hostile =
        "<!DOCTYPE plist [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">"
            + "<!ENTITY f SYSTEM \"file:///etc/passwd\">]><plist><dict><key>k</key>"
            + "<string>&f;</string></dict></plist>";
    var read = PropertyList.read(hostile.getBytes(StandardCharsets.UTF_8));
    assertThat(read.map(Object::toString).orElse("")).doesNotContain("root:");
    assertThat(PropertyList.read("no xml".getBytes(StandardCharsets.UTF_8))).isEmpty();
  }

  private Device windows(String path, String json) {
    return new WindowsVolumes(
            _ -> Optional.ofNullable(json).map(text -> text.getBytes(StandardCharsets.UTF_8)))
        .device(FILE, path);
  }

  @Test
  void aDriveOfWindowsIsItsDiskAndItsSerialNumber() {
    assertThat(
            windows(
                "E:\\DCIM\\x",
                "{\"Number\":2,\"SerialNumber\":\" 4C53 01 \",\"FriendlyName\":\"Card\","
                    + "\"BusType\":\"USB\"}"))
        .isEqualTo(new Device("disk:2+serial:4C53_01", Device.Kind.DISK, "disk 2 (Card)"));
  }

  @Test
  void poolsSeveralDisksAndNoAnswerAreUnknownOnWindows() {
    for (var json :
        new String[] {
          "{\"Number\":5,\"BusType\":\"Spaces\"}",
          "{\"Number\":6,\"BusType\":\"File Backed Virtual\"}",
          "[{\"Number\":1,\"BusType\":\"USB\"},{\"Number\":2,\"BusType\":\"USB\"}]",
          "nonsense",
          null
        }) {
      assertThat(windows("D:\\x", json).kind()).as(json).isEqualTo(Device.Kind.UNKNOWN);
    }
    assertThat(windows("\\\\?\\Volume{1}\\x", null).kind()).isEqualTo(Device.Kind.UNKNOWN);
    assertThat(windows("\\\\NAS\\shots\\x", null).id()).isEqualTo("server:nas");
  }
}
