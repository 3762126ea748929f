package org.framewright.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.concurrent.Callable;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.SetupRange;
import org.framewright.report.Letterhead;
import org.framewright.report.Paper;
import org.framewright.report.Report;
import org.framewright.report.ReportForm;
import org.framewright.report.SlateSize;
import org.framewright.report.Slates;
import org.framewright.report.Stationery;
import org.framewright.shotlist.Setup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes cards to print that are held into the first picture of each setup. */
@Command(
    name = "slates",
    description = {
      "Writes cards to print, one a setup: its code, large, what it is, and a symbol. Held into a"
          + " setup's first picture, it says whose frames follow; scanned, it puts the setup on"
          + " set.",
      "Print on white paper that does not shine, at full size."
    },
    addMethodSubcommands = false)
final class SlatesCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Option(
      names = "--to",
      paramLabel = "FILE.pdf",
      required = true,
      description = "The file, a PDF.")
  private Path file;

  @Option(
      names = "--setups",
      paramLabel = "CODES",
      description =
          "Some setups, such as 001..040 or \"001 004\"; without it all that are not dropped.")
  private String setups;

  @Option(
      names = "--per-page",
      paramLabel = "N",
      defaultValue = "1",
      description =
          "1, a card as large as the paper, read in a field of 3 m; or 4, to be cut, read in 1.5 m;"
              + " ${DEFAULT-VALUE} where not given.")
  private int perPage;

  @Option(names = "--replace", description = "Replace the file if there is one.")
  private boolean replace;

  @Option(
      names = "--paper",
      paramLabel = "PAPER",
      defaultValue = "a4",
      description = "a4 or letter; ${DEFAULT-VALUE} where not given.")
  private Paper paper;

  @Option(
      names = "--language",
      paramLabel = "LANGUAGE",
      description = "en, de or fr; where not given, the app's.")
  private String language;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (ReportForm.of(file).filter(form -> form == ReportForm.PDF).isEmpty()) {
      throw CommandFailure.badInput(
          file + ": slates are written as a PDF", "Give a file that ends in .pdf.");
    }
    var stationery = new Stationery(paper, ReportSettings.language(language), Letterhead.NONE);
    var size = size();
    var job = JobFolder.open(folder, output);
    OutputFile.check(file, job, replace);
    var wanted = wanted(job);
    try (var interruption = new Interruption()) {
      switch (Slates.of(job, wanted, size, stationery)) {
        case Slates.Refused(var problem) -> throw new CommandFailure(ExitStatus.REFUSED, problem);
        case Slates.Ready(var report) -> {
          switch (report.write(file, ReportForm.PDF, replace, interruption)) {
            case Report.Written.Done done -> tell(wanted.size(), done.pages());
            case Report.Written.Cancelled _ ->
                throw new CommandFailure(
                    ExitStatus.FAILED, new Problem("cancelled; no file was written", ""));
            case Report.Written.TooLarge _ -> throw new IllegalStateException("no workbook");
          }
        }
      }
    } catch (FileAlreadyExistsException e) {
      throw OutputFile.exists(file);
    }
    return ExitStatus.DONE.code();
  }

  private SlateSize size() throws CommandFailure {
    return switch (perPage) {
      case 1 -> SlateSize.ONE;
      case 4 -> SlateSize.FOUR;
      default ->
          throw CommandFailure.badInput(
              "there are no sheets of " + perPage + " slates", "Say --per-page 1 or 4.");
    };
  }

  private List<Setup> wanted(Job job) throws JobException {
    return setups == null
        ? Slates.wanted(job)
        : SetupRange.setups(job, SetupRange.words(job, setups));
  }

  private void tell(int cards, int pages) throws IOException {
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("file", file.toString());
      document.put("slates", cards);
      document.put("pages", pages);
      document.put("bytes", Files.size(file));
      output.write(document);
      return;
    }
    output
        .out()
        .println(
            file
                + ": "
                + PlainText.counted(cards, "slate")
                + ", "
                + PlainText.counted(pages, "page"));
  }
}
