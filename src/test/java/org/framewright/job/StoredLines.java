package org.framewright.job;

import java.time.Instant;
import java.util.List;
import java.util.stream.LongStream;
import org.framewright.shotlist.SetupState;

/** Lines of a log that a test makes, for rooms that know no event. */
public final class StoredLines {
  private static final Instant START = Instant.parse("2026-11-23T09:00:00Z");

  private StoredLines() {}

  /** A tick of a setup as the event of this number. */
  public static SealedLine line(String writer, long number, String setup) {
    var at = START.plusSeconds(number);
    return SealedLine.of(
        new Entry(
            number,
            new Stamp(at.toEpochMilli(), 0, writer),
            at,
            new Event.Marked(setup, SetupState.SHOT, MarkDetails.NONE)));
  }

  /** Ticks as the events of these numbers. */
  public static List<SealedLine> lines(String writer, long from, long to) {
    return LongStream.rangeClosed(from, to)
        .mapToObj(number -> line(writer, number, "s" + number))
        .toList();
  }
}
