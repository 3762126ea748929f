package org.framewright.frames;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * One body's clock, measured on frames that arrived as they were taken.
 *
 * <p>Arrival minus capture is, for such frames, the clock's error plus the few seconds of the way;
 * for frames that came later it is anything above. So the differences of tethered frames lie close
 * together, and the others scatter. The measure: find the {@link #WINDOW} that holds most
 * differences (of equals the earliest), take those of it and of the {@link #LATE} after it, and
 * report their median and the median distance from that. A body of which fewer than half of five or
 * more known arrivals lie together was not tethered: then nothing is measured.
 *
 * <p>Window and lateness are judgement, no source.
 */
final class BodyClock {
  private static final double WINDOW = 10;
  private static final double LATE = 60;
  private static final int FEW = 5;

  private final Camera camera;
  private final int frames;
  private final double[] together;

  private BodyClock(Camera camera, int frames, double[] differences) {
    this.camera = camera;
    this.frames = frames;
    this.together = together(differences);
  }

  /** The clocks of all bodies of which there are frames. */
  static Map<Camera, BodyClock> measure(
      List<Frame> frames, Map<FrameId, Instant> arrivals, ZoneId zone) {
    var counts = new HashMap<Camera, Integer>();
    var differences =
        new TreeMap<Camera, List<Double>>(
            Comparator.comparing(Camera::make)
                .thenComparing(Camera::model)
                .thenComparing(Camera::serial));
    for (var frame : frames) {
      var camera = frame.capture().camera();
      if (camera.isEmpty()) {
        continue;
      }
      counts.merge(camera.get(), 1, Integer::sum);
      var ofBody = differences.computeIfAbsent(camera.get(), body -> new ArrayList<>());
      var arrival = frame.arrival(arrivals);
      var capture = frame.capture().instant(zone);
      if (arrival.isPresent() && capture.isPresent()) {
        ofBody.add(seconds(capture.get(), arrival.get()));
      }
    }
    var clocks = new LinkedHashMap<Camera, BodyClock>();
    differences.forEach(
        (camera, values) ->
            clocks.put(
                camera,
                new BodyClock(
                    camera,
                    counts.get(camera),
                    values.stream().mapToDouble(value -> value).toArray())));
    return clocks;
  }

  Instant putRight(Instant capture) {
    return together.length == 0 ? capture : capture.plusNanos((long) (median(together) * 1e9));
  }

  /** Whether a frame arrived as it was taken. */
  boolean isTethered(Instant arrival, Instant capturedPutRight) {
    return together.length > 0 && Math.abs(seconds(capturedPutRight, arrival)) <= LATE;
  }

  CameraClock describe() {
    if (together.length == 0) {
      return new CameraClock(camera, OptionalDouble.empty(), OptionalDouble.empty(), frames, 0);
    }
    double middle = median(together);
    double[] distances =
        Arrays.stream(together).map(value -> Math.abs(value - middle)).sorted().toArray();
    return new CameraClock(
        camera,
        OptionalDouble.of(middle),
        OptionalDouble.of(median(distances)),
        frames,
        together.length);
  }

  private static double[] together(double[] differences) {
    double[] sorted = differences.clone();
    Arrays.sort(sorted);
    int best = 0;
    int bestStart = 0;
    int end = 0;
    for (int start = 0; start < sorted.length; start++) {
      while (end < sorted.length && sorted[end] - sorted[start] <= WINDOW) {
        end++;
      }
      if (end - start > best) {
        best = end - start;
        bestStart = start;
      }
    }
    int last = bestStart;
    while (last < sorted.length && sorted[last] - sorted[bestStart] <= WINDOW + LATE) {
      last++;
    }
    double[] found = Arrays.copyOfRange(sorted, bestStart, last);
    return sorted.length >= FEW && found.length * 2 < sorted.length ? new double[0] : found;
  }

  private static double median(double[] sorted) {
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }

  private static double seconds(Instant from, Instant to) {
    var between = Duration.between(from, to);
    return between.toSeconds() + between.toNanosPart() / 1e9;
  }
}
