package org.framewright.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.framewright.base.PlainText;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Standing;
import org.framewright.shotlist.ListWriter;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code list}: the shot list, imported, shown and exported. */
@Command(
    name = "list",
    description =
        "Shows the shot list; imports the client's list, adds or changes a setup, proposes an order"
            + " of what is left, exports it for a spreadsheet.",
    addMethodSubcommands = false)
final class ListCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Mixin private ListImport list;

  @Mixin private ListEdit edit;

  @Mixin private ListOrder order;

  @Option(
      names = "--export",
      paramLabel = "FILE",
      description = "Writes the list with states and counts: .csv or .xlsx.")
  private Optional<Path> exported = Optional.empty();

  @Option(names = "--replace", description = "With --export: replace the file if there is one.")
  private boolean replace;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    var options = list.options();
    if (replace && exported.isEmpty()) {
      throw CommandFailure.badInput("--replace is about an export", "Give --export FILE with it.");
    }
    edit.check(list.isAsked());
    order.check(list.isAsked() || edit.isAsked() || exported.isPresent());
    var job = JobFolder.open(folder, output);
    if (order.isAsked()) {
      order.take(job, output);
      return ExitStatus.DONE.code();
    }
    if (exported.isPresent()) {
      // Before anything is imported: what is refused leaves all as it was.
      OutputFile.check(exported.get(), job, replace);
    }
    if (list.isAsked()) {
      list.take(job, options, output);
      if (list.isPreview() && output.json() && exported.isEmpty()) {
        return ExitStatus.DONE.code();
      }
    }
    if (edit.isAsked()) {
      edit.take(job, output);
    }
    var standing = job.standing();
    if (exported.isPresent()) {
      export(job, standing, exported.get());
    }
    if (output.json()) {
      output.write(
          job.shotList().setups().stream()
              .map(setup -> SetupDescription.document(job, setup, Optional.of(standing)))
              .toList());
    } else if (!list.isAsked() && !edit.isAsked() && exported.isEmpty()) {
      table(job, standing);
    } else {
      exported.ifPresent(
          file ->
              output
                  .out()
                  .println(
                      PlainText.counted(job.shotList().setups().size(), "setup")
                          + " written to "
                          + file));
    }
    return ExitStatus.DONE.code();
  }

  private void export(Job job, Standing standing, Path file) throws IOException, CommandFailure {
    Function<Setup, SequencedMap<String, String>> columns =
        setup -> SetupDescription.columns(setup, standing);
    try {
      var problem =
          replace
              ? ListWriter.replace(file, job.shotList(), columns)
              : ListWriter.create(file, job.shotList(), columns);
      if (problem.isPresent()) {
        throw new CommandFailure(ExitStatus.BAD_INPUT, problem.get());
      }
    } catch (FileAlreadyExistsException e) {
      throw OutputFile.exists(file);
    }
  }

  private void table(Job job, Standing standing) {
    var setups = job.shotList().setups();
    if (setups.isEmpty() && job.moves().given().isEmpty()) {
      output
          .out()
          .println("The shot list is empty. Import one: framewright list JOB --import FILE");
      return;
    }
    int codes = width(setups.stream().map(Setup::code).map(PlainText::line).toList(), "setup");
    int titles = width(setups.stream().map(Setup::title).map(PlainText::line).toList(), "title");
    var form = "%-" + codes + "s  %-10s  %7s  %-" + titles + "s  %s";
    output.out().println(form.formatted("setup", "state", "frames", "title", "").stripTrailing());
    for (var setup : setups) {
      var wanted = setup.wanted();
      output
          .out()
          .println(
              form.formatted(
                      PlainText.line(setup.code()),
                      standing.state().of(setup.code()).state().label(),
                      SetupDescription.frames(setup, standing.tally())
                          + (wanted.isPresent() ? "/" + wanted.getAsInt() : ""),
                      PlainText.line(setup.title()),
                      remark(job, setup, standing))
                  .stripTrailing());
    }
    for (var given : job.moves().given()) {
      output
          .out()
          .println(
              "Given to another set: "
                  + PlainText.line(given.setup().code())
                  + (given.arrived() ? " to " : " on its way to ")
                  + PlainText.line(given.to().name()));
    }
  }

  private static String remark(Job job, Setup setup, Standing standing) {
    var status = standing.state().of(setup.code());
    if (status.reason().isPresent()) {
      return status.reason().get();
    }
    if (status.changedSinceSignOff()) {
      return "changed since sign-off by " + status.signedOffBy().orElse("");
    }
    if (status.signedOffBy().isPresent()) {
      return "by " + status.signedOffBy().get();
    }
    boolean begun = status.state() != SetupState.TO_SHOOT && status.state() != SetupState.DROPPED;
    return begun
        ? String.join(", ", job.missing(setup, standing.tally()))
        : job.moves()
            .came(setup.code())
            .map(came -> "from " + PlainText.line(came.from().name()))
            .orElse("");
  }

  private static int width(List<String> texts, String heading) {
    return Math.clamp(
        texts.stream().mapToInt(String::length).max().orElse(1), heading.length(), 48);
  }
}
