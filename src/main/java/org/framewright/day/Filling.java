package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;
import org.framewright.job.FrameLine;

/**
 * How fast frames fill a disk: the bytes of the last hour in which some were taken, by the frames
 * themselves. That they were copied in later plays no part.
 *
 * @param bytes of all files of the frames and clips that were taken in it
 * @param over how long it is; less than an hour where the day is younger
 * @param until its end, the time of the newest frame
 */
public record Filling(long bytes, Duration over, Instant until) {
  private static final Duration HOUR = Duration.ofHours(1);

  /** Before that there is no telling. Common practice, no source. */
  private static final Duration SHORTEST = Duration.ofMinutes(10);

  /** A body whose clock is a little ahead. */
  private static final Duration AHEAD = Duration.ofMinutes(1);

  /** Longer than any job; what lasts longer is not reckoned. */
  private static final Duration LONGEST = Duration.ofHours(100_000);

  /** By the frames that have a time; none where it is too early to tell. */
  static Optional<Filling> of(List<FrameLine> lines, ZoneId zone, Instant now) {
    record Taken(Instant at, long bytes) {}
    var seen = new HashSet<FrameId>();
    var taken =
        lines.stream()
            .filter(line -> line.frame().complete() && line.taken().isPresent())
            .filter(line -> seen.add(line.frame().id()))
            .map(
                line ->
                    new Taken(
                        line.taken().get().atZone(zone).toInstant(),
                        line.frame().files().stream().mapToLong(FrameFile::size).sum()))
            .filter(one -> !one.at().isAfter(now.plus(AHEAD)))
            .toList();
    var newest = taken.stream().map(Taken::at).max(Instant::compareTo);
    if (newest.isEmpty()) {
      return Optional.empty();
    }
    var until = newest.get();
    var from = until.minus(HOUR);
    var day = LocalDate.ofInstant(until, zone);
    var begin =
        taken.stream()
            .map(Taken::at)
            .filter(at -> LocalDate.ofInstant(at, zone).equals(day))
            .min(Instant::compareTo)
            .filter(from::isBefore)
            .orElse(from);
    var over = Duration.between(begin, until);
    long bytes =
        taken.stream().filter(one -> !one.at().isBefore(begin)).mapToLong(Taken::bytes).sum();
    return over.compareTo(SHORTEST) < 0 || bytes <= 0
        ? Optional.empty()
        : Optional.of(new Filling(bytes, over, until));
  }

  /** How long so many free bytes last if it goes on so. */
  public Duration lasts(long free) {
    double seconds = Math.max(0, free) / (double) bytes * over.toSeconds();
    return seconds >= LONGEST.toSeconds() ? LONGEST : Duration.ofSeconds(Math.round(seconds));
  }
}
