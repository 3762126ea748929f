package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads logs; of one that grew only what came since. */
final class LogReader {
  private static final class Known {
    private final byte[] bytes;
    private final List<LogLine> lines;

    Known(byte[] bytes, List<LogLine> lines) {
      this.bytes = bytes;
      this.lines = lines;
    }
  }

  private final Map<Path, Known> known = new HashMap<>();

  List<LogLine> lines(Path file) throws IOException {
    var bytes = Files.readAllBytes(file);
    var was = known.get(file);
    if (was != null && Arrays.equals(was.bytes, bytes)) {
      return was.lines;
    }
    var lines = new ArrayList<LogLine>();
    int from = 0;
    if (was != null && !was.lines.isEmpty()) {
      int end = was.lines.getLast().end();
      if (bytes.length >= end && Arrays.equals(bytes, 0, end, was.bytes, 0, end)) {
        lines.addAll(was.lines);
        from = end + 1;
      }
    }
    lines.addAll(LogLine.read(bytes, from));
    known.put(file, new Known(bytes, List.copyOf(lines)));
    return List.copyOf(lines);
  }
}
