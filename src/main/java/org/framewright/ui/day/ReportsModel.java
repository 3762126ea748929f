package org.framewright.ui.day;

import com.ibm.icu.util.LocaleData;
import com.ibm.icu.util.ULocale;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.OutputPlace;
import org.framewright.report.Paper;
import org.framewright.report.Report;
import org.framewright.report.ReportForm;
import org.framewright.report.ReportKind;
import org.framewright.report.ReportOptions;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.ReportLetterhead;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Steps;
import org.framewright.ui.task.Tasks;

/** Writes reports, one piece of work at a time. Nothing is replaced that nobody was asked about. */
final class ReportsModel {
  /** So many evenings of one day are enough. */
  private static final int MOST = 999;

  private final Job job;
  private final Supplier<FrameScan> scan;
  private final Supplier<DayHours> hours;
  private final Supplier<ReportLetterhead.Reading> letterhead;
  private final Tasks tasks;
  private final Texts texts;
  private final Consumer<Throwable> trouble;
  private final ReadOnlyObjectWrapper<Optional<Running>> running =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Ended>> ended =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /** One report to be written. */
  private record Sheet(ReportKind kind, Path file, boolean mayReplace) {}

  /**
   * How writing ended.
   *
   * @param files those that are there, whole
   * @param problem why not all are
   */
  record Ended(List<Path> files, Optional<Problem> problem) {
    Ended {
      files = List.copyOf(files);
    }

    /** Whether somebody stopped it. */
    boolean isStopped() {
      return files.isEmpty() && problem.isEmpty();
    }
  }

  /**
   * @param scan the frames as they are shown
   * @param letterhead who sends reports; asked in the background
   */
  ReportsModel(
      Job job,
      Supplier<FrameScan> scan,
      Supplier<DayHours> hours,
      Supplier<ReportLetterhead.Reading> letterhead,
      Tasks tasks,
      Texts texts,
      Consumer<Throwable> trouble) {
    this.job = job;
    this.scan = scan;
    this.hours = hours;
    this.letterhead = letterhead;
    this.tasks = tasks;
    this.texts = texts;
    this.trouble = trouble;
  }

  /** What is being written. */
  ReadOnlyObjectProperty<Optional<Running>> running() {
    return running.getReadOnlyProperty();
  }

  /** How the last writing ended. */
  ReadOnlyObjectProperty<Optional<Ended>> ended() {
    return ended.getReadOnlyProperty();
  }

  private LocalDate today() {
    return LocalDate.ofInstant(job.now(), job.zone());
  }

  /** What a report's file is called if nobody says otherwise. */
  String nameFor(ReportKind kind) {
    return job.name() + "_" + today() + "_" + fileWord(kind) + ".pdf";
  }

  private static String fileWord(ReportKind kind) {
    return switch (kind) {
      case DAY -> "day-report";
      case SHEET -> "contact-sheet";
      case NEXT -> "next-day";
      case SIGN_OFF -> "sign-offs";
    };
  }

  /** Where reports go that nobody named a place for: the job's folder for paper, if it has one. */
  Optional<Path> usualFolder() {
    return job.convention().folders().containsKey("paper")
        ? Optional.of(job.folder("paper")).filter(Files::isDirectory)
        : Optional.empty();
  }

  /** The folder of an evening's reports, next to the job. */
  Path eveningFolder() {
    return job.folder().resolveSibling(job.name() + "_reports_" + today());
  }

  /**
   * Writes one report where a person said; a file that is there was agreed to. A name without an
   * ending becomes a PDF, and then nothing is replaced.
   */
  void write(ReportKind kind, Path chosen) {
    boolean told = ReportForm.of(chosen).isPresent();
    var file = told ? chosen : chosen.resolveSibling(chosen.getFileName() + ".pdf");
    var sheet = new Sheet(kind, file, told && !isFree(file));
    var frames = scan.get();
    begin(texts.get("day.writing." + kind.word()), steps -> write(List.of(sheet), frames, steps));
  }

  /** Writes the day report and the next day into the evening's folder. */
  void evening() {
    var folder = eveningFolder();
    var frames = scan.get();
    begin(texts.get("day.writing.evening"), steps -> evening(folder, frames, steps));
  }

  /** Stops; a report that is not whole is no file. */
  void stop() {
    running.get().ifPresent(Running::cancel);
  }

  private void begin(String title, Tasks.Work<Ended> work) {
    if (running.get().isPresent()) {
      return;
    }
    ended.set(Optional.empty());
    var started =
        tasks.run(
            title,
            work,
            end -> over(Optional.of(end)),
            failure -> {
              over(Optional.empty());
              trouble.accept(failure);
            });
    if (!started.finished().get()) {
      running.set(Optional.of(started));
    }
  }

  private void over(Optional<Ended> end) {
    running.set(Optional.empty());
    ended.set(end);
  }

  private Ended evening(Path folder, FrameScan frames, Steps steps) {
    try {
      boolean made = makeFolder(folder);
      for (int number = 1; number <= MOST; number++) {
        var day = evening(folder, ReportKind.DAY, number);
        var next = evening(folder, ReportKind.NEXT, number);
        if (isFree(day.file()) && isFree(next.file())) {
          var end = write(List.of(day, next), frames, steps);
          if (made && end.files().isEmpty()) {
            Files.deleteIfExists(folder);
          }
          return end;
        }
      }
      return refused(
          new Problem(
              "there are too many reports of this day",
              folder.toString(),
              "Move some of them away."));
    } catch (IOException e) {
      return refused(FileProblems.of(e));
    }
  }

  private Sheet evening(Path folder, ReportKind kind, int number) {
    var name =
        number == 1
            ? "%s_%s.pdf".formatted(today(), fileWord(kind))
            : "%s_%s_%s.pdf".formatted(today(), fileWord(kind), number);
    return new Sheet(kind, folder.resolve(name), false);
  }

  private static boolean isFree(Path file) {
    return !Files.exists(file, LinkOption.NOFOLLOW_LINKS);
  }

  /** Through a link they would be written who knows where. */
  private static boolean makeFolder(Path folder) throws IOException {
    if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    DurableFiles.createFolder(folder);
    return true;
  }

  private static Ended refused(Problem problem) {
    return new Ended(List.of(), Optional.of(problem));
  }

  private Ended write(List<Sheet> sheets, FrameScan frames, Steps steps) {
    var files = new ArrayList<Path>();
    try {
      switch (letterhead.get()) {
        case ReportLetterhead.Reading.Faulty(var problem) -> {
          return refused(problem);
        }
        case ReportLetterhead.Reading.Sound(var head) -> {
          for (var sheet : sheets) {
            var options =
                new ReportOptions(
                    sheet.kind(), paper(texts.locale()), texts.locale(), hours.get(), head);
            var problem = write(sheet, frames, options, files, steps);
            if (problem.isPresent()) {
              return new Ended(files, problem);
            }
          }
        }
      }
    } catch (FileAlreadyExistsException e) {
      return new Ended(files, Optional.of(exists(e.getFile())));
    } catch (IOException e) {
      return new Ended(files, Optional.of(FileProblems.of(e)));
    }
    return new Ended(files, Optional.empty());
  }

  private Optional<Problem> write(
      Sheet sheet, FrameScan frames, ReportOptions options, List<Path> files, Steps steps)
      throws IOException {
    if (steps.cancelled()) {
      return Optional.empty();
    }
    var file = sheet.file();
    var harm = OutputPlace.problem(file, job);
    if (harm.isPresent()) {
      return harm;
    }
    if (!isFree(file)) {
      if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
        return Optional.of(
            new Problem("this is a link or a device, no file", file.toString(), "Give a file."));
      }
      if (!sheet.mayReplace()) {
        return Optional.of(exists(file.toString()));
      }
    }
    var report = Report.of(job, frames, options);
    boolean replace = !isFree(file);
    return switch (report.write(file, ReportForm.of(file).orElseThrow(), replace, steps)) {
      case Report.Written.Done _ -> {
        files.add(file);
        yield Optional.empty();
      }
      case Report.Written.Cancelled _ -> Optional.empty();
      case Report.Written.TooLarge(int rows) ->
          Optional.of(
              new Problem(
                  Text.of("{0} lines are more than a workbook takes", new Text.Grouped(rows)),
                  file.toString(),
                  "Write it as .csv."));
    };
  }

  private static Problem exists(String file) {
    return new Problem("this file exists already", file, "Give another name.");
  }

  /** What paper a country uses, by Unicode CLDR. */
  static Paper paper(Locale locale) {
    var size = LocaleData.getPaperSize(ULocale.forLocale(locale));
    return size.getHeight() < 290 ? Paper.LETTER : Paper.A4;
  }
}
