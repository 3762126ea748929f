package org.framewright.handoff.verify;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A line of {@code fetch.txt}, RFC 8493, section 2.2.3.
 *
 * @param bytes less than nothing where it leaves that open
 */
record FetchLine(long bytes, String path) {
  private static final Pattern NUMBER = Pattern.compile("\\d{1,18}");

  static Optional<FetchLine> of(String line) {
    int address = end(line, 0);
    int length = blanks(line, address);
    int lengthEnd = end(line, length);
    int path = blanks(line, lengthEnd);
    var said = line.substring(length, lengthEnd);
    boolean open = said.equals("-");
    if (address == 0 || path >= line.length() || !(open || NUMBER.matcher(said).matches())) {
      return Optional.empty();
    }
    return Optional.of(new FetchLine(open ? -1 : Long.parseLong(said), line.substring(path)));
  }

  private static int end(String line, int from) {
    int to = from;
    while (to < line.length() && !isBlank(line.charAt(to))) {
      to++;
    }
    return to;
  }

  private static int blanks(String line, int from) {
    int to = from;
    while (to < line.length() && isBlank(line.charAt(to))) {
      to++;
    }
    return to;
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t';
  }
}
