package org.framewright.copies.device;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;
import org.framewright.base.Progress;

/**
 * The volumes of Windows, by what its own storage commands say (Microsoft, Storage module of
 * PowerShell: Get-Partition, Get-Disk; classes MSFT_Partition and MSFT_Disk). Reads prove nothing:
 * whether a read without buffers reaches the medium was not established there.
 */
final class WindowsVolumes implements Volumes {
  private static final Pattern LETTER = Pattern.compile("([A-Za-z]):\\\\.*", Pattern.DOTALL);
  private static final Pattern SHARE = Pattern.compile("\\\\\\\\([^\\\\]+)\\\\.*", Pattern.DOTALL);

  /** MSFT_Disk, BusType: what is one piece of hardware of this computer. */
  private static final Set<String> HARDWARE =
      Set.of("SCSI", "ATAPI", "ATA", "USB", "SAS", "SATA", "SD", "MMC", "NVMe", "UFS", "1394");

  private static final JsonMapper JSON = new JsonMapper();

  private final Answers answers;

  WindowsVolumes(Answers answers) {
    this.answers = answers;
  }

  @Override
  public Device deviceOf(Path path) throws IOException {
    var real = path.toRealPath();
    boolean isOfItsLetter =
        Files.getFileStore(real)
            .equals(Files.getFileStore(real.getRoot())); // no volume in a folder
    return isOfItsLetter ? device(real, real.toString()) : UnknownVolumes.unknown(real);
  }

  /** What a path such as {@code E:\DCIM} lies on. */
  Device device(Path real, String text) {
    var share = SHARE.matcher(text);
    if (share.matches() && !share.group(1).equals("?") && !share.group(1).equals(".")) {
      var name = share.group(1).toLowerCase(Locale.ROOT).replace("+", "_");
      boolean isHere = name.equals("localhost") || name.startsWith("127.");
      return isHere
          ? UnknownVolumes.unknown(real)
          : new Device("server:" + name, Device.Kind.REMOTE, "server " + PlainText.line(name));
    }
    var letter = LETTER.matcher(text);
    if (!letter.matches()) {
      return UnknownVolumes.unknown(real);
    }
    return answer(letter.group(1))
        .filter(disk -> HARDWARE.contains(disk.path("BusType").asText()))
        .filter(disk -> disk.path("Number").isInt())
        .map(WindowsVolumes::device)
        .orElseGet(() -> UnknownVolumes.unknown(real));
  }

  private static Device device(JsonNode disk) {
    var id = new StringBuilder("disk:" + disk.path("Number").asInt());
    var serial = disk.path("SerialNumber").asText("").strip().replaceAll("[\\s+]+", "_");
    if (!serial.isEmpty() && !serial.equals("null")) {
      id.append(Device.BETWEEN).append("serial:").append(PlainText.line(serial));
    }
    var name = PlainText.line(disk.path("FriendlyName").asText("").strip());
    return new Device(
        id.toString(),
        Device.Kind.DISK,
        "disk " + disk.path("Number").asInt() + (name.isEmpty() ? "" : " (" + name + ")"));
  }

  /** One disk; where it is several, or none, nothing is known. */
  private Optional<JsonNode> answer(String letter) {
    var script =
        "Get-Partition -DriveLetter "
            + letter
            + " -ErrorAction Stop | Get-Disk | Select-Object Number,SerialNumber,FriendlyName,"
            + "@{n='BusType';e={\"$($_.BusType)\"}} | ConvertTo-Json -Compress";
    return answers
        .to(List.of("powershell.exe", "-NoProfile", "-NonInteractive", "-Command", script))
        .flatMap(
            said -> {
              try {
                return Optional.of(JSON.readTree(said)).filter(JsonNode::isObject);
              } catch (IOException e) {
                return Optional.empty();
              }
            });
  }

  /** Which volume it is, and since when, was not established. */
  @Override
  public MountIdentity mountOf(Path path) throws IOException {
    return UnknownVolumes.unknownMount(path);
  }

  @Override
  public Reading read(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException {
    return new WholeRead(file, each, progress).read(() -> Proof.NONE, false);
  }
}
