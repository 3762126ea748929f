package org.framewright.job;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.base.Text;
import org.framewright.job.EventCodec.BadLine;

/**
 * How far the log of one station was read. It is read in pieces: of a line that is too long to be
 * an event nothing is kept.
 */
final class LogTail {
  /**
   * The longest line that is read or written, in bytes. The import of a list is one line: this is
   * room for some 200,000 setups of 300 bytes.
   */
  static final int LONGEST_LINE = 64 << 20;

  private static final int PIECE = 1 << 16;

  /** Of so many lines a file's warnings tell each by itself. */
  private static final int MOST_LINES = 50;

  /** Hears of each line that is an event, in the order of the file. */
  @FunctionalInterface
  interface Lines {
    /**
     * A line that is an event was read.
     *
     * @param text the line without its line feed
     */
    void line(Entry entry, byte[] text);
  }

  private final Path file;
  private final int longest;
  private final boolean shrank;
  private Object identity;
  private long size = -1;
  private FileTime modified;

  /** Where the first line begins that was not read to its end. */
  private long offset;

  private int line;
  private long lastNumber;

  /** Whether something follows the last line feed that is no event. */
  private boolean torn;

  /** Whether the last line was taken although its line feed is missing. */
  private boolean taken;

  /** Whether {@link #offset} lies within a line of which nothing is kept. */
  private boolean overlong;

  private final TreeMap<Integer, Text> damaged = new TreeMap<>();
  private final Set<Integer> tornLines = new HashSet<>();
  private final List<Text> gaps = new ArrayList<>();
  private int damagedBeyond;
  private int gapsBeyond;

  /**
   * @param shrank whether this file took the place of a longer one
   */
  LogTail(Path file, boolean shrank) {
    this(file, shrank, LONGEST_LINE);
  }

  LogTail(Path file, boolean shrank, int longest) {
    this.file = file;
    this.shrank = shrank;
    this.longest = longest;
  }

  long lastNumber() {
    return lastNumber;
  }

  /** Whether the file ends in a torn line. */
  boolean torn() {
    return torn;
  }

  /** Whether a line feed must precede what is appended. */
  boolean open() {
    return torn || taken;
  }

  /** Whether the file is as it was when it was read last. */
  boolean isRead(BasicFileAttributes now) {
    return now.size() == size && now.lastModifiedTime().equals(modified) && isSame(now);
  }

  /** Whether the file is the one that was read, and has all of what was read. */
  boolean continues(BasicFileAttributes now) {
    return size < 0 || (isSame(now) && now.size() >= offset);
  }

  /** Whether more was read of the file than it has now. */
  boolean isLongerThan(BasicFileAttributes now) {
    return now.size() < offset;
  }

  private boolean isSame(BasicFileAttributes now) {
    return Objects.equals(identity, now.fileKey());
  }

  /** Reads what came since the last time. */
  void read(SeekableByteChannel channel, BasicFileAttributes attributes, Lines events)
      throws IOException {
    identity = attributes.fileKey();
    modified = attributes.lastModifiedTime();
    size = attributes.size();
    channel.position(offset);
    var rest = new ByteArrayOutputStream();
    var piece = ByteBuffer.allocate(Math.clamp(size - offset, 1, PIECE));
    long end = offset;
    while (channel.read(piece.clear()) > 0) {
      int from = 0;
      int length = piece.position();
      for (int i = 0; i < length; i++) {
        if (piece.get(i) == '\n') {
          keep(rest, piece.array(), from, i);
          whole(rest.toByteArray(), events);
          rest.reset();
          from = i + 1;
          offset = end + from;
        }
      }
      keep(rest, piece.array(), from, length);
      end += length;
    }
    torn = false;
    if (overlong) {
      offset = end;
      torn = true;
    } else if (rest.size() > 0) {
      last(rest.toByteArray(), events);
    }
  }

  private void keep(ByteArrayOutputStream rest, byte[] bytes, int from, int to) {
    if (!overlong && rest.size() + (to - from) > longest) {
      overlong = true;
      rest.reset();
    }
    if (!overlong) {
      rest.write(bytes, from, to - from);
    }
  }

  private void last(byte[] text, Lines events) {
    try {
      var read = EventCodec.decode(text);
      line++;
      offset += text.length;
      taken = true;
      accept(read, text, events);
    } catch (BadLine e) {
      torn = true;
    }
  }

  private void whole(byte[] text, Lines events) {
    if (taken) {
      taken = false;
      if (text.length == 0 && !overlong) {
        return;
      }
    }
    line++;
    if (overlong) {
      overlong = false;
      damaged(Text.of("it is longer than any event"));
      return;
    }
    try {
      accept(EventCodec.decode(text), text, events);
    } catch (BadLine e) {
      damaged(e.why);
    }
  }

  private void damaged(Text why) {
    damaged.put(line, why);
    if (damaged.size() > MOST_LINES) {
      // The last one is needed to know what the next line says of it.
      damaged.remove(damaged.lowerKey(line));
      damagedBeyond++;
    }
  }

  private void accept(EventCodec.Line read, byte[] text, Lines events) {
    var number = read.entry().number();
    if (read.afterTorn() && damaged.containsKey(line - 1)) {
      tornLines.add(line - 1);
    } else if (number > lastNumber + 1 && !damaged.containsKey(line - 1)) {
      gap(lastNumber + 1, number - 1);
    }
    lastNumber = Math.max(lastNumber, number);
    events.line(read.entry(), text);
  }

  private void gap(long from, long to) {
    if (gaps.size() < MOST_LINES) {
      gaps.add(
          Text.of(
              "{0}, line {1}: events {2} to {3} are missing before it; somebody took lines out of"
                  + " this file.",
              file, line, from, to));
    } else {
      gapsBeyond++;
    }
  }

  /** What a person should know of this file. */
  void describe(List<Text> warnings) {
    damaged.forEach(
        (number, why) ->
            warnings.add(
                tornLines.contains(number)
                    ? Text.of(
                        "{0}, line {1}: this line was torn when a computer stopped while writing"
                            + " it; what it would have said was never confirmed.",
                        file, number)
                    : Text.of(
                        "{0}, line {1}: this line is left out, {2}; it was changed or damaged after"
                            + " it was written.",
                        file, number, why)));
    if (damagedBeyond > 0) {
      warnings.add(Text.of("{0}: {1} more lines are left out.", file, damagedBeyond));
    }
    warnings.addAll(gaps);
    if (gapsBeyond > 0) {
      warnings.add(Text.of("{0}: events are missing in {1} more places.", file, gapsBeyond));
    }
    if (torn) {
      warnings.add(
          Text.of(
              "{0}, line {1}: the last line is torn, so it is left out; what it would have said was"
                  + " never confirmed.",
              file, line + 1));
    }
    if (shrank) {
      warnings.add(
          Text.of(
              "{0}: this log became shorter; an older copy of it may have come from another drive.",
              file));
    }
  }
}
