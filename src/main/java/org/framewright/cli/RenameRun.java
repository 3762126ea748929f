package org.framewright.cli;

import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.PlannedRename;
import org.framewright.renaming.RenameDescription;
import org.framewright.renaming.RenameRequest;
import org.framewright.renaming.Renamer;
import org.framewright.renaming.Status;

/** Plans renames, applies them unless previewing, and reports how it went. */
final class RenameRun {
  private final Renamer renamer;
  private final Output output;

  RenameRun(Renamer renamer, Output output) {
    this.renamer = renamer;
    this.output = output;
  }

  /** Shows what would be done; changes nothing. */
  ExitStatus preview(List<RenameRequest> requests, boolean csv) throws IOException {
    var plan = renamer.plan(requests);
    renamer.volumeWarning().ifPresent(output.err()::println);
    var interrupted = renamer.interrupted();
    interrupted.ifPresent(
        batch ->
            output
                .err()
                .println(
                    "Batch " + batch.batch() + " was interrupted in this folder; recover first."));
    if (output.json()) {
      output.write(document(plan.id(), plan.renames(), false));
    } else if (csv) {
      csv(plan.renames());
    } else {
      table(plan.renames());
      output.out().println(RenameDescription.counts(plan));
    }
    return plan.blocked() > 0 ? ExitStatus.NEEDS_A_PERSON : ExitStatus.DONE;
  }

  /** Renames what can be renamed. */
  ExitStatus apply(List<RenameRequest> requests) throws IOException, CommandFailure {
    var plan = renamer.plan(requests);
    renamer.volumeWarning().ifPresent(output.err()::println);
    try (var progress = new Interruption()) {
      return report(renamer.apply(plan, progress), plan.id());
    }
  }

  /** Takes a batch back. */
  ExitStatus undo(String batch) throws IOException, CommandFailure {
    try (var progress = new Interruption()) {
      return report(renamer.undo(batch, progress), batch);
    }
  }

  private ExitStatus report(Outcome outcome, String planned) throws CommandFailure {
    return switch (outcome) {
      case Outcome.Applied applied -> {
        if (output.json()) {
          output.write(document(applied.batch(), applied.renames(), true));
        } else {
          table(applied.renames().stream().filter(RenameRun::needsAPerson).toList());
          output.out().println(RenameDescription.applied(applied));
        }
        if (applied.guarantee().reduced()) {
          output.err().println(applied.guarantee().words());
        }
        applied.evidence().words().ifPresent(output.err()::println);
        yield applied.needsAPerson() ? ExitStatus.NEEDS_A_PERSON : ExitStatus.DONE;
      }
      case Outcome.Nothing nothing -> {
        if (output.json()) {
          output.write(document(planned, nothing.renames(), false));
        } else {
          table(nothing.renames().stream().filter(RenameRun::needsAPerson).toList());
          output.out().println("No file was renamed.");
        }
        yield nothing.renames().stream().anyMatch(RenameRun::needsAPerson)
            ? ExitStatus.NEEDS_A_PERSON
            : ExitStatus.DONE;
      }
      case Outcome.Cancelled cancelled ->
          throw new CommandFailure(
              ExitStatus.FAILED,
              "batch " + cancelled.batch() + " was cancelled; every file has its old name",
              "");
      case Outcome.RolledBack back ->
          throw new CommandFailure(
              ExitStatus.FAILED,
              "batch " + back.batch() + ": " + back.why() + "; every file has its old name",
              back.remedy());
      case Outcome.Halted halted ->
          throw new CommandFailure(
              ExitStatus.FAILED,
              "batch " + halted.batch() + ": " + halted.why(),
              halted.remedy() + " Then: framewright recover " + renamer.root());
      case Outcome.Refused refused ->
          throw new CommandFailure(ExitStatus.REFUSED, refused.problem());
    };
  }

  private static boolean needsAPerson(PlannedRename rename) {
    return rename.status() == Status.BLOCKED || rename.status() == Status.SKIPPED;
  }

  private void csv(List<PlannedRename> renames) throws IOException {
    var schema = CsvSchema.builder();
    for (var column : List.of("from", "to", "group", "status", "why", "remedy")) {
      schema.addColumn(column);
    }
    var rows =
        renames.stream()
            .map(
                rename ->
                    List.of(
                        RenameMap.cell(rename.from().toString()),
                        RenameMap.cell(rename.to().toString()),
                        RenameMap.cell(rename.group()),
                        rename.status().word(),
                        RenameMap.cell(rename.why()),
                        RenameMap.cell(rename.remedy())))
            .toList();
    output
        .out()
        .print(new CsvMapper().writer(schema.setUseHeader(true).build()).writeValueAsString(rows));
  }

  private void table(List<PlannedRename> renames) {
    RenameDescription.table(renames).forEach(output.out()::println);
  }

  private static SequencedMap<String, Object> document(
      String batch, List<PlannedRename> renames, boolean applied) {
    var lines = new ArrayList<Map<String, Object>>();
    for (var rename : renames) {
      var line = new LinkedHashMap<String, Object>();
      line.put("from", rename.from().toString());
      line.put("to", rename.to().toString());
      line.put("group", rename.group());
      line.put("status", rename.status().word());
      line.put("why", rename.why());
      line.put("remedy", rename.remedy());
      lines.add(line);
    }
    var document = new LinkedHashMap<String, Object>();
    document.put("batch", batch);
    document.put("renames", lines);
    document.put("applied", applied);
    return document;
  }
}
