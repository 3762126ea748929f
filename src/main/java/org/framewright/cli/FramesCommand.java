package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.framewright.frames.CameraClock;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Missing;
import org.framewright.frames.SetupTally;
import org.framewright.frames.Tally;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Standing;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Counts a job's frames, once or as they arrive, and moves some to another setup. */
@Command(
    name = "frames",
    description =
        "Counts the frames by setup and view, says what is missing, and moves frames to another"
            + " setup.",
    mixinStandardHelpOptions = true)
final class FramesCommand implements Callable<Integer> {
  /** An error of a body's clock that people should know of, in seconds. */
  private static final double WORTH_TELLING = 5;

  private static final int MOST_LISTED = 20;

  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Option(
      names = "--watch",
      description = "Count as frames arrive, until interrupted; with --json one line a count.")
  private boolean watch;

  @Option(
      names = "--for",
      paramLabel = "SECONDS",
      description = "With --watch: stop that long after the first count.")
  private Long seconds;

  @Option(
      names = "--move",
      arity = "2",
      paramLabel = "FROM..TO SETUP",
      description =
          "Move the frames from FROM to TO, in the order in which they were taken, to a setup. FROM"
              + " and TO are names without ending; a single name moves one frame.")
  private List<String> move;

  @Option(names = "--view", paramLabel = "VIEW", description = "With --move: the view.")
  private String view;

  @Option(
      names = "--by",
      paramLabel = "PERSON",
      description = "With --move: who says so; else the name of the computer's user.")
  private String by = System.getProperty("user.name", "");

  @Option(names = "--take-back", description = "Take this computer's last move back.")
  private boolean takeBack;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure, InterruptedException {
    if (move != null && takeBack) {
      throw CommandFailure.badInput(
          "--move and --take-back together", "Do one after the other; nothing was changed.");
    }
    if (seconds != null && seconds < 0) {
      throw CommandFailure.badInput("--for " + seconds, "Give a number of seconds from 0 up.");
    }
    var job = Job.open(folder, Clock.system(ZoneId.systemDefault()));
    if (move != null) {
      move(job);
    } else if (takeBack) {
      job.takeBackMove();
      output.err().println("The last move of frames was taken back.");
    }
    return watch ? watch(job) : once(job);
  }

  private void move(Job job) throws IOException, JobException, CommandFailure {
    var scan = job.scan();
    var range = range(job.inOrder(scan), move.getFirst());
    var ids = range.stream().map(Frame::id).toList();
    job.moveFrames(ids, move.getLast(), Optional.ofNullable(view), by);
    output
        .err()
        .printf(
            "%s moved to %s; --take-back takes that back.%n",
            counted(range.size(), "frame"), move.getLast());
  }

  private static List<Frame> range(List<Frame> frames, String text) throws CommandFailure {
    int dots = text.indexOf("..");
    var from = dots < 0 ? text : text.substring(0, dots);
    var to = dots < 0 ? text : text.substring(dots + 2);
    int first = find(frames, from);
    int last = find(frames, to);
    if (first > last) {
      throw CommandFailure.badInput(
          "%s was taken after %s".formatted(from, to), "Write the earlier frame first.");
    }
    return frames.subList(first, last + 1).stream().filter(Frame::complete).toList();
  }

  /** Finds a frame by its name, or by a folder and its name where two bodies share one. */
  private static int find(List<Frame> frames, String text) throws CommandFailure {
    var wanted = Path.of(text);
    var found =
        frames.stream()
            .filter(frame -> ends(frame.folder().resolve(frame.stem()), wanted))
            .toList();
    if (found.isEmpty()) {
      throw CommandFailure.badInput(
          "there is no frame \"" + text + "\"",
          "Give the name of a file without its ending, as IMG_0012.");
    }
    if (found.size() > 1) {
      throw CommandFailure.badInput(
          "there are %d frames \"%s\"".formatted(found.size(), text),
          "Write the folder before the name: "
              + found.stream()
                  .map(frame -> frame.folder().getFileName().resolve(frame.stem()).toString())
                  .collect(Collectors.joining(" or ")));
    }
    return frames.indexOf(found.getFirst());
  }

  private static boolean ends(Path path, Path wanted) {
    return lower(path).endsWith(lower(wanted));
  }

  private static Path lower(Path path) {
    return Path.of(path.toString().toLowerCase(Locale.ROOT));
  }

  private int once(Job job) throws IOException {
    var scan = job.scan();
    var standing = job.standing(scan);
    var tally = standing.tally();
    if (output.json()) {
      output.write(json(job, scan, standing));
    } else {
      tell(job, scan, standing);
    }
    job.warnings().forEach(output.err()::println);
    boolean attention = !tally.unassigned().isEmpty() || !tally.incomplete().isEmpty();
    return (attention ? ExitStatus.NEEDS_A_PERSON : ExitStatus.DONE).code();
  }

  private int watch(Job job) throws InterruptedException {
    var counter = new Counter(job);
    try (var watcher = job.watcher(counter::count)) {
      watcher.start();
      counter.first.await();
      var never = new CountDownLatch(1);
      if (seconds == null) {
        never.await();
      } else if (never.await(seconds, TimeUnit.SECONDS)) {
        throw new IllegalStateException("nobody opens this latch");
      }
    }
    return ExitStatus.DONE.code();
  }

  /** Records what arrives and tells each new count. */
  private final class Counter {
    private final Job job;
    private final CountDownLatch first = new CountDownLatch(1);
    private String before = "";

    Counter(Job job) {
      this.job = job;
    }

    void count(FrameScan scan) {
      try {
        job.refresh();
        if (first.getCount() > 0) {
          job.foundPresent(scan);
        } else {
          job.recordArrivals(scan);
        }
        var standing = job.standing(scan);
        var tally = standing.tally();
        if (output.json()) {
          output.writeLine(json(job, scan, standing));
        } else {
          var line = line(job, tally);
          if (!line.equals(before)) {
            before = line;
            output
                .out()
                .println(
                    LocalTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.SECONDS)
                        + "  "
                        + line);
          }
          scan.troubles().stream()
              .filter(trouble -> trouble.path().equals(job.framesFolder()))
              .forEach(trouble -> output.err().println(trouble.path() + ": " + trouble.message()));
        }
        output.out().flush();
      } catch (IOException e) {
        output.err().println("The count could not be recorded: " + e.getMessage());
      } finally {
        first.countDown();
      }
    }
  }

  private static String line(Job job, Tally tally) {
    var line = new StringBuilder(counted(tally.frames(), "frame"));
    job.state()
        .onSet()
        .ifPresent(
            now -> {
              var counted = Optional.ofNullable(tally.bySetup().get(now.setup()));
              line.append("; on set ").append(now.setup()).append(": ");
              line.append(counted.map(SetupTally::frames).orElse(0));
              missing(job, now.setup(), counted).forEach(words -> line.append("; ").append(words));
            });
    if (!tally.unassigned().isEmpty()) {
      line.append("; unassigned ").append(tally.unassigned().size());
    }
    if (!tally.incomplete().isEmpty()) {
      line.append("; incomplete ").append(tally.incomplete().size());
    }
    return line.toString();
  }

  private void tell(Job job, FrameScan scan, Standing standing) {
    var tally = standing.tally();
    var out = output.out();
    out.println(counted(tally.frames(), "frame") + ", " + counted(tally.files(), "file"));
    tally
        .bySetup()
        .forEach(
            (setup, counted) -> {
              out.printf("  %s: %d%s%n", setup, counted.frames(), views(counted));
              missing(job, setup, Optional.of(counted))
                  .forEach(words -> out.println("    missing " + words));
              if (standing.state().of(setup).changedSinceSignOff()) {
                out.println("    changed since sign-off");
              }
            });
    if (!job.state().pickups().isEmpty()) {
      out.println("Pickups: " + String.join(", ", job.state().pickups()));
    }
    if (!tally.unassigned().isEmpty()) {
      out.println("Unassigned: " + tally.unassigned().size());
      tally.unassigned().stream()
          .limit(MOST_LISTED)
          .forEach(
              one ->
                  out.println(
                      "  "
                          + one.frame().stem()
                          + ": "
                          + one.why()
                          + one.likely().map(setup -> "; likely " + setup).orElse("")));
      rest(tally.unassigned().size());
    }
    if (!tally.incomplete().isEmpty()) {
      out.println("Incomplete: " + tally.incomplete().size());
      tally.incomplete().stream()
          .limit(MOST_LISTED)
          .forEach(frame -> out.println("  " + frame.stem()));
      rest(tally.incomplete().size());
    }
    tally.cameras().stream().flatMap(clock -> clock(clock).stream()).forEach(out::println);
    scan.troubles().stream()
        .limit(MOST_LISTED)
        .forEach(
            trouble -> output.err().println(shown(job, trouble.path()) + ": " + trouble.message()));
    if (scan.troubles().size() > MOST_LISTED) {
      output.err().println("and " + (scan.troubles().size() - MOST_LISTED) + " more");
    }
  }

  private void rest(int size) {
    if (size > MOST_LISTED) {
      output.out().println("  and " + (size - MOST_LISTED) + " more");
    }
  }

  private static Path shown(Job job, Path path) {
    return path.startsWith(job.folder()) ? job.folder().relativize(path) : path;
  }

  private static String views(SetupTally tally) {
    var views =
        tally.byView().entrySet().stream()
            .filter(entry -> !entry.getKey().isEmpty())
            .map(entry -> entry.getKey() + " " + entry.getValue())
            .collect(Collectors.joining(", "));
    return views.isEmpty() ? "" : " (" + views + ")";
  }

  private static Optional<String> clock(CameraClock clock) {
    if (clock.offsetSeconds().isEmpty()
        || Math.abs(clock.offsetSeconds().getAsDouble()) < WORTH_TELLING) {
      return Optional.empty();
    }
    double seconds = clock.offsetSeconds().getAsDouble();
    var body = clock.camera().model() + " " + clock.camera().serial();
    var zone =
        clock.wholeHours().isPresent()
            ? ", which is whole hours: its time zone or summer time is set wrongly"
            : "";
    return Optional.of(
        String.format(
            Locale.ROOT,
            "%s: its clock is %.1f s %s (spread %.1f s, measured on %s)%s",
            body.strip(),
            Math.abs(seconds),
            seconds > 0 ? "behind" : "ahead",
            clock.spreadSeconds().orElse(0),
            counted(clock.measuredOn(), "frame"),
            zone));
  }

  private static List<String> missing(Job job, String setup, Optional<SetupTally> tally) {
    return job.shotList().setup(setup).stream()
        .flatMap(found -> Missing.of(found, tally).stream())
        .map(missing -> missing.words(code -> viewName(job, code)))
        .toList();
  }

  private static String viewName(Job job, String code) {
    var field = job.convention().fields().get("view");
    return field == null ? code : field.choices().getOrDefault(code, code);
  }

  private static Map<String, Object> json(Job job, FrameScan scan, Standing standing) {
    var tally = standing.tally();
    var document = new LinkedHashMap<String, Object>();
    document.put("frames", tally.frames());
    document.put("files", tally.files());
    document.put("unassigned", tally.unassigned().size());
    document.put("incomplete", tally.incomplete().size());
    var bySetup = new LinkedHashMap<String, Object>();
    tally
        .bySetup()
        .forEach(
            (setup, counted) -> {
              var one = new LinkedHashMap<String, Object>();
              one.put("frames", counted.frames());
              one.put("byView", counted.byView());
              one.put("missing", missing(job, setup, Optional.of(counted)));
              one.put("changedSinceSignOff", standing.state().of(setup).changedSinceSignOff());
              bySetup.put(setup, one);
            });
    document.put("bySetup", bySetup);
    document.put("cameras", tally.cameras().stream().map(FramesCommand::json).toList());
    document.put("pickups", job.state().pickups());
    document.put(
        "unassignedFrames",
        tally.unassigned().stream()
            .map(
                one -> {
                  var frame = new LinkedHashMap<String, Object>();
                  frame.put("frame", one.frame().stem());
                  frame.put("likely", one.likely().orElse(null));
                  frame.put("why", one.why());
                  return frame;
                })
            .toList());
    document.put(
        "incompleteFrames", tally.incomplete().stream().map(frame -> frame.stem()).toList());
    document.put(
        "troubles",
        scan.troubles().stream()
            .map(
                trouble ->
                    Map.of(
                        "path",
                        shown(job, trouble.path()).toString(),
                        "message",
                        trouble.message()))
            .toList());
    return document;
  }

  private static Map<String, Object> json(CameraClock clock) {
    var camera = new LinkedHashMap<String, Object>();
    camera.put("make", clock.camera().make());
    camera.put("model", clock.camera().model());
    camera.put("serial", clock.camera().serial());
    camera.put("frames", clock.frames());
    camera.put("clockOffsetSeconds", orNull(clock.offsetSeconds()));
    camera.put("clockSpreadSeconds", orNull(clock.spreadSeconds()));
    camera.put("measuredOn", clock.measuredOn());
    camera.put("wholeHours", clock.wholeHours().isPresent() ? clock.wholeHours().getAsInt() : null);
    return camera;
  }

  private static Double orNull(OptionalDouble value) {
    return value.isPresent() ? Math.round(value.getAsDouble() * 1000) / 1000.0 : null;
  }

  private static String counted(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }
}
