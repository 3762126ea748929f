package org.framewright.world;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.zip.CRC32C;

/**
 * One event as its line says it, read as docs/formats.md has it and by no code of the program.
 *
 * @param end where its line ends in the file
 */
record LogLine(
    String station,
    long number,
    long millis,
    int count,
    Instant clock,
    String type,
    String text,
    int end) {
  private static final String SEAL = ",\"crc32c\":\"";
  private static final Pattern HEAD =
      Pattern.compile(
          "\\{\"station\":\"([^\"]+)\",\"number\":(\\d+),\"time\":\"([^\"]+)\",\"count\":(\\d+),"
              + "\"clock\":\"([^\"]+)\",(?:\"afterTorn\":true,)?\"type\":\"([^\"]+)\".*",
          Pattern.DOTALL);

  /** What names an event: who wrote it, and its number there. */
  record Id(String station, long number) {}

  Id id() {
    return new Id(station, number);
  }

  /** A member of text, or of a list of texts as it stands there. */
  Optional<String> member(String name) {
    var found = Pattern.compile("\"" + name + "\":(?:\"([^\"]*)\"|(\\[[^\\]]*\\]))").matcher(text);
    return found.find()
        ? Optional.of(found.group(1) == null ? found.group(2) : found.group(1))
        : Optional.empty();
  }

  /** The whole lines from a place on; what is no whole line is passed over. */
  static List<LogLine> read(byte[] file, int start) {
    var lines = new ArrayList<LogLine>();
    int from = start;
    while (from < file.length) {
      int end = from;
      while (end < file.length && file[end] != '\n') {
        end++;
      }
      of(new String(file, from, end - from, StandardCharsets.UTF_8), end).ifPresent(lines::add);
      from = end + 1;
    }
    return lines;
  }

  private static Optional<LogLine> of(String line, int end) {
    int seal = line.lastIndexOf(SEAL);
    if (seal < 0 || !line.endsWith("\"}")) {
      return Optional.empty();
    }
    var sum = new CRC32C();
    sum.update(line.substring(0, seal).getBytes(StandardCharsets.UTF_8));
    var said = line.substring(seal + SEAL.length(), line.length() - 2);
    var head = HEAD.matcher(line);
    if (!said.equals("%08x".formatted(sum.getValue())) || !head.matches()) {
      return Optional.empty();
    }
    return Optional.of(
        new LogLine(
            head.group(1),
            Long.parseLong(head.group(2)),
            Instant.parse(head.group(3)).toEpochMilli(),
            Integer.parseInt(head.group(4)),
            Instant.parse(head.group(5)),
            head.group(6),
            line,
            end));
  }

  /** A line with its seal. */
  static String sealed(String openObject) {
    var sum = new CRC32C();
    sum.update(openObject.getBytes(StandardCharsets.UTF_8));
    return openObject + SEAL + "%08x".formatted(sum.getValue()) + "\"}\n";
  }
}
