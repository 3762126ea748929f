package org.framewright.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.job.JobException;
import org.framewright.report.Paper;
import org.framewright.report.Report;
import org.framewright.report.ReportForm;
import org.framewright.report.ReportKind;
import org.framewright.report.ReportOptions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes a report that one prints or sends to the client. */
@Command(
    name = "report",
    description = {
      "Writes a report to print or to send: of the day, of every frame, of the next day, of the"
          + " sign-offs.",
      "The studio's name, how to reach it and its logo come from the app's page of settings."
    },
    addMethodSubcommands = false)
final class ReportCommand implements Callable<Integer> {
  private static final int TOLD = 200;

  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Option(
      names = "--to",
      paramLabel = "FILE",
      required = true,
      description = "The file: .pdf, .html, .xlsx or .csv; the ending tells what it becomes.")
  private Path file;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      defaultValue = "day",
      description =
          "day, how it went; sheet, every frame with its name; next, what is to be shot on the next"
              + " day; sign-off, who approved what and when, with room for a signature. Where not"
              + " given, ${DEFAULT-VALUE}.")
  private String kind;

  @Option(names = "--replace", description = "Replace the file if there is one.")
  private boolean replace;

  @Option(
      names = "--paper",
      paramLabel = "PAPER",
      defaultValue = "a4",
      description = "For a PDF: a4 or letter; ${DEFAULT-VALUE} where not given.")
  private Paper paper;

  @Option(
      names = "--language",
      paramLabel = "LANGUAGE",
      description = "en, de or fr; where not given, the app's.")
  private String language;

  @Mixin private HoursOptions hours;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    var told = kind();
    var form =
        ReportForm.of(file)
            .orElseThrow(
                () ->
                    CommandFailure.badInput(
                        file + ": the ending does not tell what the report is to become",
                        "Give a file that ends in .pdf, .html, .xlsx or .csv."));
    var options =
        new ReportOptions(
            told,
            paper,
            ReportSettings.language(language),
            hours.hours(output),
            ReportSettings.letterhead());
    var job = JobFolder.open(folder, output);
    OutputFile.check(file, job, replace);
    try (var interruption = new Interruption()) {
      var scan = job.scan(interruption);
      if (scan.isEmpty()) {
        throw cancelled();
      }
      var report = Report.of(job, scan.get(), options);
      switch (report.write(
          file, form, replace, new CountProgress(output.err(), interruption, TOLD, "pictures"))) {
        case Report.Written.Done done -> tell(done, form, told);
        case Report.Written.Cancelled _ -> throw cancelled();
        case Report.Written.TooLarge large ->
            throw CommandFailure.badInput(
                large.rows() + " lines are more than a workbook takes", "Write it as .csv.");
      }
    } catch (FileAlreadyExistsException e) {
      throw OutputFile.exists(file);
    }
    return ExitStatus.DONE.code();
  }

  private static CommandFailure cancelled() {
    return new CommandFailure(ExitStatus.FAILED, new Problem("cancelled; no file was written", ""));
  }

  private ReportKind kind() throws CommandFailure {
    var kinds = Arrays.asList(ReportKind.values());
    var wanted = kind.strip().toLowerCase(Locale.ROOT);
    return kinds.stream()
        .filter(one -> one.word().equals(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                CommandFailure.badInput(
                    "there is no report \"" + ReportSettings.shortened(kind) + "\"",
                    "Say --kind "
                        + kinds.stream().map(ReportKind::word).collect(Collectors.joining(", "))
                        + "."));
  }

  private void tell(Report.Written.Done done, ReportForm form, ReportKind told) throws IOException {
    long bytes = Files.size(file);
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("file", file.toString());
      document.put("kind", told.word());
      document.put("form", form.word());
      document.put("bytes", bytes);
      document.put(
          "pictures", form == ReportForm.CSV || form == ReportForm.XLSX ? null : done.pictures());
      document.put("pages", form == ReportForm.PDF ? done.pages() : null);
      output.write(document);
      return;
    }
    output
        .out()
        .println(
            file
                + (form == ReportForm.PDF ? ": " + PlainText.counted(done.pages(), "page") : "")
                + (done.pictures() > 0
                    ? (form == ReportForm.PDF ? ", " : ": ")
                        + PlainText.counted(done.pictures(), "picture")
                    : ""));
  }
}
