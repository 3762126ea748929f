package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.framewright.base.PlainText;
import org.framewright.job.JobException;
import org.framewright.studio.FrameNumbers;
import org.framewright.studio.Numbers;
import org.framewright.studio.NumbersDescription;
import org.framewright.studio.NumbersRows;
import org.framewright.studio.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Numbers of days and weeks across all jobs of the store. */
@Command(
    name = "numbers",
    description = {
      "Numbers of days and weeks (ISO 8601) across all jobs of the store: setups planned, done,",
      "signed off, to be shot again and dropped, frames, selects, the median of the times on set",
      "and of the waits for sign-off, first and last frame."
    },
    addMethodSubcommands = false)
final class StudioNumbersCommand implements Callable<Integer> {
  private static final List<String> HEADINGS =
      List.of(
          "Line",
          "Week",
          "Day",
          "Set",
          "Sets",
          "Planned",
          "Done",
          "Signed off",
          "Pickups",
          "Dropped",
          "Frames",
          "Selects",
          "Minutes on set (median)",
          "Minutes to sign-off (median)",
          "First frame",
          "Last frame");

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

  @Mixin private Output output;
  @Mixin private HoursOptions hours;

  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = "Write them to a file, .csv or .xlsx; else they are printed.")
  private Optional<Path> file = Optional.empty();

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "Only from this day on, such as 2026-11-23.")
  private Optional<LocalDate> from = Optional.empty();

  @Option(names = "--until", paramLabel = "DATE", description = "Only up to this day.")
  private Optional<LocalDate> until = Optional.empty();

  @Option(names = "--replace", description = "Replace the file if there is one.")
  private boolean replace;

  @Option(
      names = "--rebuild",
      description = {
        "Instead of showing them: tell the store anew the numbers of all of its jobs, reckoned with",
        "the hours of work of this computer. Frames are counted in the jobs of this computer; of",
        "others, those told before stay."
      })
  private boolean rebuild;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    check();
    var kept = StudioCommand.kept();
    try (var store = Store.open(kept)) {
      if (rebuild) {
        var worked = hours.hours(output);
        return new StoredJobs(store, kept, output)
            .tell((to, job, scan) -> NumbersRows.tell(to, job, scan, worked))
            .code();
      }
      var numbers = Numbers.of(store, from, until);
      if (file.isPresent()) {
        write(file.get(), numbers);
      } else if (output.json()) {
        output.write(
            Map.of("lines", numbers.rows().stream().map(StudioNumbersCommand::json).toList()));
      } else {
        NumbersDescription.lines(numbers).forEach(output.out()::println);
      }
      return ExitStatus.DONE.code();
    }
  }

  private void check() throws CommandFailure {
    if (rebuild && (file.isPresent() || from.isPresent() || until.isPresent())) {
      throw CommandFailure.badInput("--rebuild shows nothing", "Give it alone.");
    }
    if (hours.isGiven() && !rebuild) {
      throw CommandFailure.badInput(
          "--hours and --break are for --rebuild",
          "Times are reckoned with the hours of the computers that told them.");
    }
    if (replace && file.isEmpty()) {
      throw CommandFailure.badInput("--replace is for a file", "Give --to FILE too.");
    }
    if (from.isPresent() && until.isPresent() && until.get().isBefore(from.get())) {
      throw CommandFailure.badInput(
          until.get() + " is before " + from.get(), "Give the first day with --from.");
    }
    if (file.isPresent()) {
      var name = String.valueOf(file.get().getFileName()).toLowerCase(Locale.ROOT);
      if (!name.endsWith(".csv") && !name.endsWith(".xlsx")) {
        throw CommandFailure.badInput(
            file.get() + ": the ending does not tell what it is to become",
            "Give a file that ends in .csv or .xlsx.");
      }
      OutputFile.check(file.get(), replace);
    }
  }

  private void write(Path to, Numbers numbers) throws IOException, CommandFailure {
    var rows = new ArrayList<List<? extends Object>>();
    rows.add(HEADINGS);
    numbers.rows().forEach(row -> rows.add(cells(row)));
    TableFile.write(to, "Numbers", rows, replace);
    if (output.json()) {
      output.write(Map.of("file", to.toString(), "lines", rows.size() - 1));
    } else {
      output.out().println(to + ": " + PlainText.counted(rows.size() - 1, "line"));
    }
  }

  private static List<? extends Object> cells(Numbers.Row row) {
    var setups = row.setups();
    return List.of(
        word(row),
        row.week().orElse(""),
        row.day().map(LocalDate::toString).orElse(""),
        row.name(),
        row.sets(),
        cell(setups.planned()),
        setups.done(),
        setups.signedOff(),
        setups.pickups(),
        setups.dropped(),
        row.frames().<Object>map(FrameNumbers::frames).orElse(""),
        row.frames().map(frames -> cell(frames.selects())).orElse(""),
        cell(setups.medianOnSet()),
        cell(setups.medianWait()),
        row.frames().flatMap(FrameNumbers::first).map(TIME::format).orElse(""),
        row.frames().flatMap(FrameNumbers::last).map(TIME::format).orElse(""));
  }

  private static Object cell(OptionalInt number) {
    return number.isPresent() ? number.getAsInt() : "";
  }

  private static Object cell(Optional<Duration> time) {
    return time.<Object>map(DayCommand::minutes).orElse("");
  }

  private static String word(Numbers.Row row) {
    return row.of().name().toLowerCase(Locale.ROOT);
  }

  private static Map<String, Object> json(Numbers.Row row) {
    var setups = row.setups();
    var document = new LinkedHashMap<String, Object>();
    document.put("line", word(row));
    document.put("week", row.week().orElse(null));
    document.put("day", row.day().map(LocalDate::toString).orElse(null));
    document.put("job", row.of() == Numbers.Of.SET ? row.name() : null);
    document.put("sets", row.sets());
    document.put("planned", number(setups.planned()));
    document.put("done", setups.done());
    document.put("signedOff", setups.signedOff());
    document.put("pickups", setups.pickups());
    document.put("dropped", setups.dropped());
    document.put("frames", row.frames().map(FrameNumbers::frames).orElse(null));
    document.put("selects", row.frames().map(frames -> number(frames.selects())).orElse(null));
    document.put("minutesOnSet", setups.medianOnSet().map(DayCommand::minutes).orElse(null));
    document.put("minutesToSignOff", setups.medianWait().map(DayCommand::minutes).orElse(null));
    document.put(
        "firstFrame",
        row.frames().flatMap(FrameNumbers::first).map(LocalDateTime::toString).orElse(null));
    document.put(
        "lastFrame",
        row.frames().flatMap(FrameNumbers::last).map(LocalDateTime::toString).orElse(null));
    return document;
  }

  private static Integer number(OptionalInt number) {
    return number.isPresent() ? number.getAsInt() : null;
  }
}
