package org.framewright.copies;

import java.io.IOException;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.job.ComparedAt;
import org.framewright.job.Job;

/**
 * How many frames of a job are in one place only, as far as comparisons found.
 *
 * @param at when the last comparison was made
 * @param frames how many frames the job has now
 * @param once of which so many were found on one disk only
 * @param notCompared and so many came since, or changed
 */
public record FramesOnce(Instant at, int frames, int once, int notCompared) {
  private static final int MOST_RUNS = 5;

  /** Those of a scan; nothing where no comparison was ever made. */
  public static Optional<FramesOnce> of(Job job, FrameScan scan) {
    return new Counter(job).of(scan);
  }

  /** That some are on one disk only, where that is so. */
  public Optional<Text> saidOnce() {
    return once == 0
        ? Optional.empty()
        : Optional.of(
            Text.counted("{0} frame is on one disk only", "{0} frames are on one disk only", once));
  }

  /** That some were not compared, where that is so. */
  public Optional<Text> saidNotCompared() {
    return notCompared == 0
        ? Optional.empty()
        : Optional.of(
            Text.counted(
                "{0} frame was not compared with its copies",
                "{0} frames were not compared with their copies", notCompared));
  }

  /**
   * Counts again and again, and reads a file of evidence only where the log tells of one that was
   * not read yet, or the file is not what it was. For one thread.
   */
  public static final class Counter {
    private final Job job;
    private Map<ComparedAt, Found> found = Map.of();

    /** One that has read nothing yet. */
    public Counter(Job job) {
      this.job = job;
    }

    /** What one run found, empty where that cannot be believed, and the file that says it. */
    private record Found(EvidenceReader.Stamp file, Map<FrameId, Integer> frames) {}

    /** Those of a scan; nothing where no comparison was ever made. */
    public Optional<FramesOnce> of(FrameScan scan) {
      var runs = job.comparisons();
      if (runs.isEmpty()) {
        return Optional.empty();
      }
      var now = new HashMap<ComparedAt, Found>();
      var known = new HashMap<FrameId, Integer>();
      for (var run : runs.reversed().stream().limit(MOST_RUNS).toList()) {
        var one = found(run);
        now.put(run, one);
        one.frames().forEach((frame, disks) -> known.merge(frame, disks, Math::max));
      }
      found = now;
      int once = 0;
      int notCompared = 0;
      var frames = scan.distinct();
      for (var frame : frames) {
        int disks =
            frame.knownAs().stream().mapToInt(id -> known.getOrDefault(id, 0)).max().orElse(0);
        once += disks == 1 ? 1 : 0;
        notCompared += disks == 0 ? 1 : 0;
      }
      return Optional.of(new FramesOnce(runs.getLast().at(), frames.size(), once, notCompared));
    }

    private Found found(ComparedAt run) {
      var stamp = EvidenceReader.stamp(job.folder(), run.found());
      var before = found.get(run);
      if (before != null && before.file().equals(stamp)) {
        return before;
      }
      var frames = new HashMap<FrameId, Integer>();
      try {
        if (EvidenceReader.read(job.folder(), run.found(), line -> add(line, frames))) {
          return new Found(stamp, Map.copyOf(frames));
        }
      } catch (IOException e) {
        // Then it says nothing, and its frames count as not compared.
      }
      return new Found(stamp, Map.of());
    }
  }

  private static void add(String line, Map<FrameId, Integer> frames) {
    if (!line.startsWith(Evidence.FRAME)) {
      return;
    }
    var parts = line.substring(Evidence.FRAME.length()).split(Evidence.BETWEEN, -1);
    if (parts.length == 2 && parts[1].length() == 1 && Character.isDigit(parts[1].charAt(0))) {
      frames.put(new FrameId(parts[0]), parts[1].charAt(0) - '0');
    }
  }
}
