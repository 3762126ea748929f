package org.framewright.renaming;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Pattern;
import java.util.zip.CRC32C;
import org.framewright.base.Sha256;

/** Writes journals as somebody would who knows the format and means harm: the checksums hold. */
final class JournalForge {
  private static final Pattern CRC = Pattern.compile(",\"crc\":\"[0-9a-f]{8}\"\\}$");

  private JournalForge() {}

  /** Lines without their last brace, closed with their checksums, and the commit behind them. */
  static byte[] sealed(List<String> lines) {
    var all = new ByteArrayOutputStream();
    lines.forEach(line -> all.writeBytes(closed(line)));
    var sum = HexFormat.of().formatHex(Sha256.digest().digest(all.toByteArray()));
    all.writeBytes(closed("{\"commit\":\"" + sum + "\""));
    return all.toByteArray();
  }

  /** A line without its last brace, closed with its checksum. */
  static byte[] closed(String line) {
    var crc = new CRC32C();
    var bytes = line.getBytes(StandardCharsets.UTF_8);
    crc.update(bytes);
    var closed = new ByteArrayOutputStream();
    closed.writeBytes(bytes);
    closed.writeBytes(JournalFormat.closing(crc));
    return closed.toByteArray();
  }

  /** Exchanges a text in the plan of an open journal, and makes its checksums hold again. */
  static void change(Path journal, String text, String other) throws IOException {
    var lines = new ArrayList<String>();
    for (var line : Files.readAllLines(journal)) {
      if (!line.startsWith("{\"commit\"") && !line.startsWith("{\"end\"")) {
        lines.add(CRC.matcher(line).replaceFirst("").replace(text, other));
      }
    }
    Files.write(journal, sealed(lines));
  }

  /** Takes the end off a journal, as if the program had been killed before it. */
  static void open(Path journal) throws IOException {
    var lines = Files.readAllLines(journal);
    lines.removeIf(line -> line.startsWith("{\"end\""));
    Files.write(journal, lines);
  }
}
