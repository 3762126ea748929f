package org.framewright.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.zip.CRC32C;

/** Lines of logs made by hand, with the right checksum whatever they say. */
final class Lines {
  private Lines() {}

  /** Seals what stands before the checksum: an object without its closing brace. */
  static String sealed(String open) {
    var crc = new CRC32C();
    crc.update(open.getBytes(StandardCharsets.UTF_8));
    return open + ",\"crc32c\":\"%08x\"}".formatted(crc.getValue());
  }

  /** An event; {@code body} begins with its type: {@code "marked","setup":"1"}. */
  static String event(String station, long number, String time, String body) {
    return sealed(
        "{\"station\":\"%s\",\"number\":%d,\"time\":\"%s\",\"count\":0,\"clock\":\"%s\",\"type\":%s"
            .formatted(station, number, time, time, body));
  }

  static void append(Path log, String line) throws IOException {
    Files.writeString(log, line + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }
}
