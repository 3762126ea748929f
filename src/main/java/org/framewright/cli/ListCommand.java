package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Standing;
import org.framewright.shotlist.Fault;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.ListReader;
import org.framewright.shotlist.ListReading;
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
    description = "Shows the shot list; imports the client's list, exports it for a spreadsheet.",
    mixinStandardHelpOptions = true)
final class ListCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Option(
      names = "--import",
      paramLabel = "FILE",
      description = "The client's list: .csv in any common form, or .xlsx.")
  private Optional<Path> imported = Optional.empty();

  @Option(
      names = "--preview",
      description = "With --import: show what would change; change nothing.")
  private boolean preview;

  @Option(
      names = "--export",
      paramLabel = "FILE",
      description = "Writes the list with states and counts: .csv or .xlsx.")
  private Optional<Path> exported = Optional.empty();

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (preview && imported.isEmpty()) {
      throw CommandFailure.badInput("--preview shows an import", "Give --import FILE with it.");
    }
    var job = JobFolder.open(folder, output);
    if (imported.isPresent()) {
      take(job, imported.get());
    }
    var standing = job.standing();
    if (exported.isPresent()) {
      ListWriter.write(
          exported.get(), job.shotList(), setup -> SetupDescription.columns(setup, standing));
    }
    if (output.json()) {
      output.write(
          job.shotList().setups().stream()
              .map(setup -> SetupDescription.document(job, setup, Optional.of(standing)))
              .toList());
    } else if (imported.isEmpty() && exported.isEmpty()) {
      table(job, standing);
    } else {
      exported.ifPresent(
          file ->
              output.out().println(setups(job.shotList().setups().size()) + " written to " + file));
    }
    return ExitStatus.DONE.code();
  }

  private void take(Job job, Path file) throws IOException, CommandFailure {
    switch (ListReader.read(file)) {
      case ListReading.Refused refused -> {
        var faults = refused.faults();
        faults.subList(0, faults.size() - 1).forEach(this::tell);
        throw CommandFailure.badInput(
            faults.getLast().toString(),
            (faults.getLast().remedy() + " Nothing was imported.").strip());
      }
      case ListReading.Understood understood -> {
        output.err().println("Read as " + understood.form() + ".");
        understood.columns().forEach(column -> output.err().println("  " + column));
        for (var remark : understood.remarks()) {
          output.err().println((remark + " " + remark.remedy()).strip());
        }
        var change =
            preview ? job.previewImport(understood.list()) : job.importList(understood.list());
        if (output.json()) {
          return;
        }
        tell(change);
      }
    }
  }

  private void tell(Fault fault) {
    output.err().println("framewright: " + fault);
    output.err().println(fault.remedy());
  }

  private void tell(ListChange change) {
    var out = output.out();
    if (change.isEmpty()) {
      out.println("The list is the one that the job has.");
      return;
    }
    change.added().forEach(setup -> out.println("added    " + named(setup)));
    change
        .changed()
        .forEach(
            changed ->
                out.println(
                    "changed  "
                        + changed.after().code()
                        + ": "
                        + String.join("; ", changed.told())));
    change.removed().forEach(setup -> out.println("removed  " + named(setup)));
    change
        .kept()
        .forEach(
            setup ->
                out.println(
                    "kept     " + named(setup) + " (no longer in the list, but it was worked on)"));
    if (change.reordered()) {
      out.println("The order changes.");
    }
    out.println(
        change.added().size()
            + " added, "
            + change.changed().size()
            + " changed, "
            + change.removed().size()
            + " removed, "
            + change.kept().size()
            + " kept."
            + (preview ? " Nothing was changed yet." : ""));
  }

  private static String named(Setup setup) {
    return setup.code() + (setup.title().isEmpty() ? "" : " " + setup.title());
  }

  private static String setups(int count) {
    return count == 1 ? "1 setup" : count + " setups";
  }

  private void table(Job job, Standing standing) {
    var list = job.shotList().setups();
    if (list.isEmpty()) {
      output
          .out()
          .println("The shot list is empty. Import one: framewright list JOB --import FILE");
      return;
    }
    int codes = width(list.stream().map(Setup::code).toList(), "setup");
    int titles = width(list.stream().map(Setup::title).toList(), "title");
    var form = "%-" + codes + "s  %-10s  %7s  %-" + titles + "s  %s";
    output.out().println(form.formatted("setup", "state", "frames", "title", "").stripTrailing());
    for (var setup : list) {
      var wanted = setup.wanted();
      output
          .out()
          .println(
              form.formatted(
                      setup.code(),
                      standing.state().of(setup.code()).state().label(),
                      SetupDescription.frames(setup, standing.tally())
                          + (wanted.isPresent() ? "/" + wanted.getAsInt() : ""),
                      setup.title(),
                      remark(job, setup, standing))
                  .stripTrailing());
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
    return begun ? String.join(", ", job.missing(setup, standing.tally())) : "";
  }

  private static int width(List<String> texts, String heading) {
    return Math.clamp(
        texts.stream().mapToInt(String::length).max().orElse(1), heading.length(), 48);
  }
}
