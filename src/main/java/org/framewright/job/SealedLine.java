package org.framewright.job;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import org.framewright.job.EventCodec.BadLine;

/** A line of a log as its writer sealed it, which is never changed on any way. */
public final class SealedLine {
  /** The longest one, in bytes. */
  public static final int LONGEST = LogTail.LONGEST_LINE;

  private final Entry entry;
  private final byte[] text;

  private SealedLine(Entry entry, byte[] text) {
    this.entry = entry;
    this.text = text;
  }

  /** A line that was read. */
  static SealedLine of(Entry entry, byte[] text) {
    return new SealedLine(entry, text);
  }

  /** Seals the line of an event. */
  static SealedLine of(Entry entry) {
    return new SealedLine(entry, EventCodec.encode(new EventCodec.Line(entry, false)));
  }

  /**
   * A line that came from elsewhere.
   *
   * @return nothing if it is damaged, or is no event
   */
  public static Optional<SealedLine> read(byte[] text) {
    try {
      return text.length > LONGEST
          ? Optional.empty()
          : Optional.of(new SealedLine(EventCodec.decode(text).entry(), text.clone()));
    } catch (BadLine e) {
      return Optional.empty();
    }
  }

  Entry entry() {
    return entry;
  }

  /** Whose event it is: a station or a device. */
  public String writer() {
    return entry.stamp().station();
  }

  /** Its place in the log of its writer, from 1. */
  public long number() {
    return entry.number();
  }

  /** When it was made, by its stamp: milliseconds since 1970-01-01T00:00Z. */
  public long millis() {
    return entry.stamp().millis();
  }

  /** The line in UTF-8 without its line feed. */
  public byte[] bytes() {
    return text.clone();
  }

  /** How many bytes it has. */
  public int length() {
    return text.length;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SealedLine line && Arrays.equals(text, line.text);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(text);
  }

  @Override
  public String toString() {
    return new String(text, StandardCharsets.UTF_8);
  }
}
