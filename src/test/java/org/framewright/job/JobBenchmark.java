package org.framewright.job;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
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

/** A large job: 5,000 setups, 20,000 frames. Prints milliseconds. */
final class JobBenchmark {
  private static final int SETUPS = 5_000;
  private static final int FRAMES = 20_000;
  private static final int TICKS = 300;

  private JobBenchmark() {}

  public static void main(String[] args) throws Exception {
    var folder = Files.createTempDirectory("framewright-job");
    var convention =
        ((Convention.Parsed.Sound) Convention.read(Path.of("templates/fashion-days.yaml")))
            .convention();
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "large");
    var desk = new Station("desk");
    var job =
        ((Started.Opened) Job.start(convention, folder, values, Clock.systemUTC(), desk)).job();
    var setups = new ArrayList<Setup>();
    for (int i = 1; i <= Math.min(SETUPS, 999); i++) {
      setups.add(setup("%03d".formatted(i)));
    }
    for (int i = 1000; i <= SETUPS; i++) {
      setups.add(setup("X-" + i));
    }
    tell("import", () -> job.importList(new ShotList(setups)));
    var scan = frames(job);
    for (int i = 0; i < FRAMES; i += 100) {
      var some = scan.frames().subList(0, i + 100);
      job.recordArrivals(new FrameScan(some, 2 * some.size(), List.of()));
    }
    var ticks = new double[TICKS];
    for (int i = 0; i < TICKS; i++) {
      var code = setups.get(i).code();
      long from = System.nanoTime();
      job.mark(code, SetupState.ON_SET, MarkDetails.NONE);
      ticks[i] = (System.nanoTime() - from) / 1e6;
    }
    Arrays.sort(ticks);
    System.out.printf(
        "tick, flushed and folded: median %.1f, p99 %.1f%n",
        ticks[TICKS / 2], ticks[TICKS * 99 / 100]);
    for (int i = 0; i < 3; i++) {
      tell("count " + FRAMES + " frames", () -> job.tally(scan));
    }
    for (int i = 0; i < 3; i++) {
      tell("names of " + FRAMES + " frames", () -> job.frameNames(scan));
    }
    for (int i = 0; i < 3; i++) {
      tell("open", () -> Job.open(job.folder(), Clock.systemUTC(), desk));
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

  private static FrameScan frames(Job job) {
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

  private static void tell(String what, Work work) throws Exception {
    long from = System.nanoTime();
    var made = work.run();
    System.out.printf(
        "%s: %.1f (%s)%n", what, (System.nanoTime() - from) / 1e6, made.getClass().getSimpleName());
  }
}
