package org.framewright.job;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.frames.Camera;
import org.framewright.frames.Capture;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.naming.Convention;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/**
 * What a tick costs in a long job and in a long list, as a ratio to a short one, and what opening
 * costs as a ratio to reading the log's lines. Prints milliseconds. The list of 200,000 needs
 * {@code -Dbench.heap=1g}.
 */
final class JobBenchmark {
  private static final int SETUPS = 5_000;
  private static final int FRAMES = 20_000;
  private static final int EVENTS = 100_000;
  private static final int LONG_LIST = 200_000;
  private static final int TICKS = 300;
  private static final Station DESK = new Station("desk");

  private final Path folder;
  private final Convention convention;

  private JobBenchmark(Path folder, Convention convention) {
    this.folder = folder;
    this.convention = convention;
  }

  public static void main(String[] args) throws Exception {
    var fashion =
        ((Convention.Parsed.Sound) Convention.read(Path.of("templates/fashion-days.yaml")))
            .convention();
    new JobBenchmark(Files.createTempDirectory("framewright-job"), fashion).run();
  }

  private void run() throws Exception {
    var small = start("small", 50);
    ticks("warming up", small, 0);
    double base = ticks("50 setups, short log", small, 0);
    double list = ticks("5,000 setups, short log", start("list", SETUPS), base);
    var longLog = start("log", SETUPS);
    lengthen(longLog);
    var reopened = opening(longLog);
    double log = ticks("5,000 setups, 100,000 events", reopened, base);
    var longest = start("longest", LONG_LIST);
    double lines = ticks("200,000 setups", longest, base);
    opening(longest);
    System.out.printf(
        "tick as a ratio to the small job: long list %.2f, long log %.2f, longest list %.2f%n",
        list / base, log / base, lines / base);
    frames(start("frames", SETUPS));
  }

  private Job start(String title, int setups) throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", title);
    var job =
        ((Started.Opened) Job.start(convention, folder, values, Clock.systemUTC(), DESK)).job();
    var list = new ArrayList<Setup>();
    for (int i = 1; i <= setups; i++) {
      list.add(setup(i <= 999 ? "%03d".formatted(i) : "X-" + i));
    }
    describe("import " + setups, () -> job.importList(new ShotList(list)));
    return job;
  }

  /** Another station's log of many events, as a long season makes it. */
  private static void lengthen(Job job) throws Exception {
    var lines = new ByteArrayOutputStream();
    var codes = job.shotList().codes();
    var begin = Instant.now().minus(Duration.ofHours(20));
    for (int i = 0; i < EVENTS; i++) {
      var stamp = new Stamp(begin.plusMillis(i * 500L).toEpochMilli(), 0, "set");
      var code = codes.get(i % codes.size());
      var event =
          i % 4 == 0
              ? new Event.Arrived(List.of(new FrameId("%032x".formatted(i))))
              : new Event.Marked(
                  code, i % 2 == 0 ? SetupState.ON_SET : SetupState.SHOT, MarkDetails.by("Ana"));
      var entry = new Entry(i + 1, stamp, stamp.instant(), event);
      lines.writeBytes(EventCodec.encode(new EventCodec.Line(entry, false)));
      lines.write('\n');
    }
    Files.write(job.folder().resolve(".framewright/log/set.jsonl"), lines.toByteArray());
  }

  private static Job opening(Job job) throws Exception {
    var log = job.folder().resolve(".framewright/log");
    Job opened = job;
    double reading = Double.MAX_VALUE;
    double opening = Double.MAX_VALUE;
    for (int i = 0; i < 3; i++) {
      long from = System.nanoTime();
      try (var files = Files.newDirectoryStream(log, "*.jsonl")) {
        for (var file : files) {
          Files.readAllLines(file);
        }
      }
      long middle = System.nanoTime();
      opened = Job.open(job.folder(), Clock.systemUTC(), DESK);
      reading = Math.min(reading, (middle - from) / 1e6);
      opening = Math.min(opening, (System.nanoTime() - middle) / 1e6);
    }
    System.out.printf(
        "open %s: %.0f, %.1f times as long as reading its lines%n",
        job.name(), opening, opening / reading);
    return opened;
  }

  private static double ticks(String what, Job job, double base) throws Exception {
    var codes = job.shotList().codes();
    var ticks = new double[TICKS];
    for (int i = 0; i < TICKS; i++) {
      long from = System.nanoTime();
      job.mark(codes.get(i % codes.size()), SetupState.ON_SET, MarkDetails.NONE);
      ticks[i] = (System.nanoTime() - from) / 1e6;
    }
    Arrays.sort(ticks);
    double median = ticks[TICKS / 2];
    System.out.printf(
        "tick, flushed and folded, %s: median %.2f, p99 %.2f, %.2f of the small job's%n",
        what, median, ticks[TICKS * 99 / 100], base == 0 ? 1 : median / base);
    return median;
  }

  private static void frames(Job job) throws Exception {
    var scan = frameScan(job);
    for (int i = 0; i < FRAMES; i += 100) {
      var some = scan.frames().subList(0, i + 100);
      job.recordArrivals(new FrameScan(some, 2 * some.size(), List.of()));
    }
    for (int i = 0; i < 3; i++) {
      describe("count " + FRAMES + " frames", () -> job.tally(scan));
    }
    for (int i = 0; i < 3; i++) {
      describe("names of " + FRAMES + " frames", () -> job.frameNames(scan));
    }
  }

  private static Setup setup(String code) {
    return new Setup(
        code,
        "Garment " + code,
        List.of(new View("F"), new View("B")),
        OptionalInt.of(10),
        new LinkedHashMap<>(Map.of("Rack", "A1", "Colour", "oat")));
  }

  private static FrameScan frameScan(Job job) {
    var camera = Optional.of(new Camera("Studio", "Body A", "0001"));
    var start = Instant.now();
    var frames = new ArrayList<Frame>();
    for (int i = 0; i < FRAMES; i++) {
      var taken = start.plusMillis(i * 10L);
      var stem = "IMG_%05d".formatted(i);
      var raw = job.framesFolder().resolve(stem + ".DNG");
      var jpeg = job.framesFolder().resolve(stem + ".JPG");
      frames.add(
          new Frame(
              new FrameId("%032x".formatted(i)),
              job.framesFolder(),
              stem,
              List.of(
                  new FrameFile(raw, 1, taken, FileRole.RAW),
                  new FrameFile(jpeg, 1, taken, FileRole.JPEG)),
              new Capture(
                  Optional.of(LocalDateTime.ofInstant(taken, ZoneOffset.UTC)),
                  Optional.of(ZoneOffset.UTC),
                  camera,
                  OptionalInt.empty()),
              true));
    }
    return new FrameScan(frames, 2 * FRAMES, List.of());
  }

  /** Something that is timed. */
  private interface Work {
    Object run() throws Exception;
  }

  private static void describe(String what, Work work) throws Exception {
    long from = System.nanoTime();
    var made = work.run();
    System.out.printf(
        "%s: %.1f (%s)%n", what, (System.nanoTime() - from) / 1e6, made.getClass().getSimpleName());
  }
}
