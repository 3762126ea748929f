package org.framewright.report;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.OutputPlace;

/** Reports as files. Nothing is replaced that nobody was asked about, and nothing half-written. */
public final class ReportFiles {
  /** So many evenings of one day are enough. */
  private static final int MOST = 999;

  private ReportFiles() {}

  /**
   * A report to be written.
   *
   * @param mayReplace whether a person agreed that what is there goes
   */
  public record Sheet(ReportOptions options, Path file, boolean mayReplace) {}

  /**
   * What came of it.
   *
   * @param files those that are there, whole
   * @param problem why not all are
   */
  public record Outcome(List<Path> files, Optional<Problem> problem) {
    public Outcome {
      files = List.copyOf(files);
    }

    /** Nothing was written. */
    public static Outcome refused(Problem problem) {
      return new Outcome(List.of(), Optional.of(problem));
    }

    /** Whether somebody stopped it before anything was written. */
    public boolean isStopped() {
      return files.isEmpty() && problem.isEmpty();
    }
  }

  /** The day by the job's clock. */
  private static LocalDate today(Job job) {
    return LocalDate.ofInstant(job.now(), job.zone());
  }

  /** What a report's file is called if nobody says otherwise. */
  public static String name(Job job, ReportKind kind) {
    return job.name() + "_" + today(job) + "_" + word(kind) + ".pdf";
  }

  private static String word(ReportKind kind) {
    return switch (kind) {
      case DAY -> "day-report";
      case SHEET -> "contact-sheet";
      case NEXT -> "next-day";
      case SIGN_OFF -> "sign-offs";
    };
  }

  /** The folder of an evening's reports, next to the job. */
  public static Path eveningFolder(Job job) {
    return job.folder().resolveSibling(job.name() + "_reports_" + today(job));
  }

  /** What reports tell of a job, gathered once for all of them, so that they are of one moment. */
  private record Gathered(Job job, FrameScan scan, Map<DayHours, JobFacts> byHours) {
    JobFacts with(DayHours hours) throws IOException {
      var known = byHours.get(hours);
      if (known == null) {
        known = JobFacts.of(job, scan, hours);
        byHours.put(hours, known);
      }
      return known;
    }
  }

  /** Writes one after the other, until one cannot be written or somebody stops. */
  public static Outcome write(Job job, FrameScan scan, List<Sheet> sheets, Progress progress) {
    var files = new ArrayList<Path>();
    var gathered = new Gathered(job, scan, new HashMap<>());
    try {
      for (var sheet : sheets) {
        var problem = write(gathered, sheet, files, progress);
        if (problem.isPresent()) {
          return new Outcome(files, problem);
        }
      }
    } catch (FileAlreadyExistsException e) {
      return new Outcome(files, Optional.of(exists(e.getFile())));
    } catch (IOException e) {
      return new Outcome(files, Optional.of(FileProblems.of(e)));
    }
    return new Outcome(files, Optional.empty());
  }

  private static Optional<Problem> write(
      Gathered gathered, Sheet sheet, List<Path> files, Progress progress) throws IOException {
    if (progress.cancelled()) {
      return Optional.empty();
    }
    var file = sheet.file();
    var harm = barred(gathered.job(), file, sheet.mayReplace());
    if (harm.isPresent()) {
      return harm;
    }
    boolean free = isFree(file);
    var report = Report.of(gathered.with(sheet.options().hours()), sheet.options());
    return switch (report.write(file, ReportForm.of(file).orElseThrow(), !free, progress)) {
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

  /** What the file of a job's slates is called if nobody says otherwise. */
  public static String slatesName(Job job) {
    return job.name() + "_slates.pdf";
  }

  /** Writes the slates of all setups that are not dropped, a card on each sheet. */
  public static Outcome slates(
      Job job, Path file, boolean mayReplace, Stationery stationery, Progress progress) {
    try {
      var harm = barred(job, file, mayReplace);
      if (harm.isPresent()) {
        return Outcome.refused(harm.get());
      }
      return switch (Slates.of(job, Slates.wanted(job), SlateSize.ONE, stationery)) {
        case Slates.Refused(var problem) -> Outcome.refused(problem);
        case Slates.Ready(var report) -> {
          var written = report.write(file, ReportForm.PDF, !isFree(file), progress);
          boolean done = written instanceof Report.Written.Done;
          yield new Outcome(done ? List.of(file) : List.of(), Optional.empty());
        }
      };
    } catch (FileAlreadyExistsException e) {
      return Outcome.refused(exists(e.getFile()));
    } catch (IOException e) {
      return Outcome.refused(FileProblems.of(e));
    }
  }

  /** Why a file may not be written, as far as can be told before. */
  private static Optional<Problem> barred(Job job, Path file, boolean mayReplace)
      throws IOException {
    var harm = OutputPlace.problem(file, job);
    if (harm.isPresent() || isFree(file)) {
      return harm;
    }
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.of(
          new Problem("this is a link or a device, no file", file.toString(), "Give a file."));
    }
    return mayReplace ? Optional.empty() : Optional.of(exists(file.toString()));
  }

  /**
   * Writes an evening's reports as PDFs into a folder of the day, beside those that are there.
   *
   * @param folder made where it is not there; through a link nothing is written
   */
  public static Outcome evening(
      Job job, FrameScan scan, Path folder, List<ReportOptions> reports, Progress progress) {
    try {
      boolean made = makeFolder(folder);
      for (int number = 1; number <= MOST; number++) {
        var sheets = new ArrayList<Sheet>();
        for (var options : reports) {
          sheets.add(new Sheet(options, folder.resolve(name(job, options.kind(), number)), false));
        }
        if (sheets.stream().map(Sheet::file).allMatch(ReportFiles::isFree)) {
          var outcome = write(job, scan, sheets, progress);
          if (made && outcome.files().isEmpty()) {
            Files.deleteIfExists(folder);
          }
          return outcome;
        }
      }
      return Outcome.refused(
          new Problem(
              "there are too many reports of this day",
              folder.toString(),
              "Move some of them away."));
    } catch (IOException e) {
      return Outcome.refused(FileProblems.of(e));
    }
  }

  private static String name(Job job, ReportKind kind, int number) {
    var name = today(job) + "_" + word(kind);
    return number == 1 ? name + ".pdf" : name + "_" + number + ".pdf";
  }

  private static boolean isFree(Path file) {
    return !Files.exists(file, LinkOption.NOFOLLOW_LINKS);
  }

  private static boolean makeFolder(Path folder) throws IOException {
    if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    DurableFiles.createFolder(folder);
    return true;
  }

  private static Problem exists(String file) {
    return new Problem("this file exists already", file, "Give another name.");
  }
}
