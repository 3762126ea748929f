package org.framewright.cli;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.framewright.base.FileProblems;
import org.framewright.base.PlainText;
import org.framewright.copies.FramesOnce;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.SlateLooks;
import org.framewright.job.SlateWatch;
import org.framewright.job.SlateWord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Counts a job's frames, once or as they arrive, and moves some to another setup. */
@Command(
    name = "frames",
    description =
        "Counts the frames by setup and view, says what is missing, moves frames to another setup,"
            + " says what slates count for, and writes ratings into sidecars.",
    addMethodSubcommands = false)
final class FramesCommand implements Callable<Integer> {
  /** How often a watch looks whether it is to end, in milliseconds. */
  private static final long LOOK = 200;

  /** Slates of thousands of large frames are not read while somebody waits for a count. */
  private static final Duration MOST_READING = Duration.ofMinutes(1);

  private static final int TOLD = 500;

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
      names = "--slate",
      arity = "2",
      paramLabel = "FRAME SETUP",
      description =
          "FRAME shows the slate of SETUP, whatever was read from it: the frames of its body from"
              + " there to the next slate are those of SETUP.")
  private List<String> slate;

  @Option(
      names = "--slate-counts",
      arity = "2",
      paramLabel = "FRAME WORD",
      description =
          "How the slate in FRAME counts: not (it is none), before (for the frames before it, too,"
              + " back to the last slate), follow (it is right, and what was on set when it came"
              + " was not), stay (what was on set was right).")
  private List<String> slateCounts;

  @Option(
      names = "--by",
      paramLabel = "PERSON",
      description =
          "With --move, --slate and --slate-counts: who says so; else the name of the computer's"
              + " user.")
  private String by = System.getProperty("user.name", "");

  @Option(
      names = "--take-back",
      description = "Take this computer's last move, or its last word about a slate, back.")
  private boolean takeBack;

  @Option(
      names = "--write-ratings",
      description =
          "Write the ratings that were given here into the frames' sidecars, for other programs;"
              + " the pictures themselves, and all else that a sidecar says, stay as they are.")
  private boolean writeRatings;

  @Option(
      names = "--preview",
      description = "With --write-ratings: say which sidecars would be written; write none.")
  private boolean preview;

  @Option(
      names = "--table",
      arity = "0..1",
      fallbackValue = "",
      paramLabel = "FILE",
      description =
          "Write a table with a line a frame (file, time, body, setup, view, rating, how it came to"
              + " its setup) to FILE, .csv or .xlsx; without FILE as CSV to standard output. Give"
              + " it after JOB.")
  private String table;

  @Option(names = "--replace", description = "With --table FILE: replace the file if there is one.")
  private boolean replace;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure, InterruptedException {
    if (Stream.of(move != null, takeBack, slate != null, slateCounts != null)
            .filter(asked -> asked)
            .count()
        > 1) {
      throw CommandFailure.badInput(
          "several of --move, --slate, --slate-counts and --take-back together",
          "Do one after the other; nothing was changed.");
    }
    if (seconds != null && seconds < 0) {
      throw CommandFailure.badInput("--for " + seconds, "Give a number of seconds from 0 up.");
    }
    if (preview && !writeRatings) {
      throw CommandFailure.badInput("--preview is of ratings", "Use it with --write-ratings.");
    }
    boolean changes = move != null || takeBack || slate != null || slateCounts != null;
    if (writeRatings && (watch || changes || table != null)) {
      throw CommandFailure.badInput(
          "--write-ratings with another task of this command",
          "Do one after the other; nothing was changed.");
    }
    if (table != null && watch) {
      throw CommandFailure.badInput(
          "--table and --watch together", "Write the table without --watch.");
    }
    if (replace && (table == null || table.isEmpty())) {
      throw CommandFailure.badInput(
          "--replace is about the file of a table", "Give --table FILE with it.");
    }
    var job = Job.open(folder, Clock.system(ZoneId.systemDefault()));
    if (table != null && !table.isEmpty()) {
      // Before anything is moved: what is refused leaves all as it was.
      OutputFile.check(tableFile(), job, replace);
    }
    if (writeRatings) {
      return new RatingsReport(output).write(job, preview).code();
    }
    if (move != null) {
      move(job);
    } else if (slate != null) {
      say(job, slate.getFirst(), new SlateWord.OfSetup(slate.getLast()));
    } else if (slateCounts != null) {
      say(job, slateCounts.getFirst(), word(slateCounts.getLast()));
    } else if (takeBack) {
      job.takeBackMove();
      output.err().println("What was said last of where frames belong was taken back.");
    }
    return watch ? watch(job) : once(job);
  }

  private void move(Job job) throws IOException, JobException, CommandFailure {
    var ids = FrameRange.of(job.inOrder(job.scan()), move.getFirst());
    job.moveFrames(ids, move.getLast(), Optional.ofNullable(view), by);
    output
        .err()
        .println(
            "%s moved to %s; --take-back takes that back."
                .formatted(PlainText.counted(ids.size(), "frame"), move.getLast()));
  }

  private void say(Job job, String frame, SlateWord word)
      throws IOException, JobException, CommandFailure {
    var scan = job.scan();
    var before = job.tally(scan).places();
    var found = FrameRange.one(job.inOrder(scan), frame);
    job.saySlate(found, word, by, scan);
    var after = job.tally(scan).places();
    long moved =
        scan.distinct().stream()
            .filter(one -> !Objects.equals(before.get(one.id()), after.get(one.id())))
            .count();
    output
        .err()
        .println(
            "%s: %s changed; --take-back takes that back."
                .formatted(PlainText.line(found.stem()), PlainText.counted((int) moved, "frame")));
  }

  private static SlateWord word(String word) throws CommandFailure {
    return switch (word) {
      case "not" -> new SlateWord.NoSlate();
      case "before" -> new SlateWord.Backwards();
      case "follow" -> new SlateWord.Follow(Optional.empty());
      case "stay" -> new SlateWord.Stay();
      default ->
          throw CommandFailure.badInput(
              "--slate-counts " + word, "It counts not, before, follow or stay.");
    };
  }

  private Path tableFile() throws CommandFailure {
    try {
      return Path.of(table);
    } catch (InvalidPathException e) {
      throw CommandFailure.badInput(
          "\"" + table + "\" is no path of a file: " + e.getReason(), "Give a file.");
    }
  }

  private int once(Job job) throws IOException, CommandFailure {
    var scan = job.scan();
    readSlates(job, scan);
    var report = FramesReport.of(job, scan);
    if (table != null) {
      table(job, scan, report);
    } else if (output.json()) {
      output.write(report.json());
    } else {
      report.lines().forEach(output.out()::println);
    }
    if (!output.json()) {
      report.problems().forEach(output.err()::println);
    }
    job.warnings().forEach(output.err()::println);
    return (report.needsAPerson() ? ExitStatus.NEEDS_A_PERSON : ExitStatus.DONE).code();
  }

  /** What cannot be kept in a folder that nobody may write to is no reason not to count. */
  private void readSlates(Job job, FrameScan scan) {
    try (var interruption = new Interruption()) {
      int left =
          SlateLooks.of(
              job,
              scan,
              MOST_READING,
              new CountProgress(output.err(), interruption, TOLD, "frames searched for slates"));
      if (left > 0) {
        output
            .err()
            .println(
                PlainText.counted(left, "frame")
                    + " not searched for slates yet; the same command goes on with them.");
      }
    } catch (IOException e) {
      tellNotKept(e);
    }
  }

  private void tellNotKept(IOException failure) {
    output
        .err()
        .println("What slates say could not be kept: " + FileProblems.of(failure).sentence());
  }

  private void table(Job job, FrameScan scan, FramesReport report)
      throws IOException, CommandFailure {
    var rows = new FrameTable(job, job.frameLines(scan));
    if (!table.isEmpty()) {
      TableFile.write(tableFile(), "Frames", rows.rows(), replace);
      if (!output.json()) {
        output
            .out()
            .println(PlainText.counted(rows.lines().size(), "frame") + " written to " + table);
      }
    }
    if (output.json()) {
      var document = report.json();
      document.put("table", rows.json());
      output.write(document);
    } else if (table.isEmpty()) {
      output.out().print(TableFile.csv(rows.rows(), System.lineSeparator()));
      output.out().flush();
    }
  }

  /** Counts until the time is over, Ctrl-C is pressed, or nobody reads the counts any more. */
  private int watch(Job job) throws InterruptedException {
    var counter = new Counter(job);
    try (var interruption = new Interruption();
        var slates = SlateWatch.inBackground(job, Runnable::run, counter);
        var watcher = job.watcher(scan -> counter.count(scan, slates))) {
      watcher.start();
      counter.first.await();
      long end = System.nanoTime() + nanos();
      while (!interruption.cancelled() && !counter.unread && System.nanoTime() - end < 0) {
        Thread.sleep(Math.clamp(Duration.ofNanos(end - System.nanoTime()).toMillis(), 1, LOOK));
      }
    }
    return ExitStatus.DONE.code();
  }

  private long nanos() {
    return seconds == null
        ? Long.MAX_VALUE / 2
        : Math.min(Long.MAX_VALUE / 2, TimeUnit.SECONDS.toNanos(seconds));
  }

  /** Records what arrives and prints each new count. */
  private final class Counter implements SlateWatch.Listener {
    private final Job job;
    private final FramesOnce.Counter once;
    private final CountDownLatch first = new CountDownLatch(1);
    private volatile boolean unread;
    private String before = "";
    private Optional<FrameScan> last = Optional.empty();

    Counter(Job job) {
      this.job = job;
      this.once = new FramesOnce.Counter(job);
    }

    synchronized void count(FrameScan scan, SlateWatch slates) {
      try {
        last = Optional.of(scan);
        job.refresh();
        if (first.getCount() > 0) {
          job.foundPresent(scan);
        } else {
          job.recordArrivals(scan);
        }
        print(FramesReport.of(job, scan, once));
        slates.look(scan);
        unread = output.out().checkError();
      } catch (IOException e) {
        output.err().println("The count could not be recorded: " + FileProblems.of(e).sentence());
      } finally {
        first.countDown();
      }
    }

    @Override
    public synchronized void read() {
      last.ifPresent(scan -> print(FramesReport.of(job, scan, once)));
    }

    @Override
    public void failed(IOException failure) {
      tellNotKept(failure);
    }

    private void print(FramesReport report) {
      if (output.json()) {
        output.writeLine(report.json());
        return;
      }
      var line = report.line();
      if (!line.equals(before)) {
        before = line;
        var now = LocalTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.SECONDS);
        output.out().println(now + "  " + line);
      }
      report.problemsOfFolder().forEach(output.err()::println);
    }
  }
}
