package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.renaming.Batch;
import org.framewright.renaming.BatchState;
import org.framewright.renaming.Renamer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code batches}: lists the batches of renames of a folder. */
@Command(
    name = "batches",
    description = "Lists the batches of renames of a folder, oldest first.",
    addMethodSubcommands = false)
final class BatchesCommand implements Callable<Integer> {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm").withZone(ZoneId.systemDefault());

  @Mixin private Output output;

  @Parameters(paramLabel = "FOLDER", description = "The folder whose files were renamed.")
  private Path folder;

  @Option(
      names = "--drop-before",
      paramLabel = "DATE",
      description = "First drop the journals of batches begun before this day (2026-11-25).")
  private LocalDate before;

  @Option(names = "--also-undoable", description = "Drop also those that could still be undone.")
  private boolean alsoUndoable;

  @Override
  public Integer call() throws IOException, CommandFailure {
    var renamer = Renamer.in(folder);
    if (before != null) {
      var pruned =
          renamer.prune(before.atStartOfDay(ZoneId.systemDefault()).toInstant(), alsoUndoable);
      if (pruned.refused().isPresent()) {
        throw new CommandFailure(ExitStatus.REFUSED, pruned.refused().get());
      }
      output.err().println("Dropped " + pruned.dropped().size() + " of the old batches.");
      if (!pruned.kept().isEmpty()) {
        output
            .err()
            .println("Kept " + pruned.kept().size() + " that can be undone or are not ended.");
      }
    }
    var batches = renamer.batches();
    if (output.json()) {
      output.write(batches.stream().map(BatchesCommand::document).toList());
    } else {
      list(batches);
    }
    boolean trouble =
        batches.stream().anyMatch(batch -> batch.state() == BatchState.UNREADABLE)
            || renamer.interrupted().isPresent();
    return (trouble ? ExitStatus.NEEDS_A_PERSON : ExitStatus.DONE).code();
  }

  private void list(List<Batch> batches) {
    if (batches.isEmpty()) {
      output.out().println("No files were renamed in " + folder + ".");
    }
    for (var batch : batches) {
      if (batch.state() == BatchState.UNREADABLE) {
        output.out().println(batch.id() + "  unreadable: " + batch.trouble());
        continue;
      }
      var remarks = new StringBuilder();
      batch.undoes().ifPresent(undone -> remarks.append("  takes back ").append(undone));
      batch.undoneBy().ifPresent(by -> remarks.append("  taken back by ").append(by));
      output
          .out()
          .println(
              "%s  %s  %-11s  %6d  %s%s"
                  .formatted(
                      batch.id(),
                      TIME.format(batch.at()),
                      batch.state().label(),
                      batch.renames(),
                      batch.example(),
                      remarks));
    }
  }

  private static Map<String, Object> document(Batch batch) {
    var line = new LinkedHashMap<String, Object>();
    line.put("batch", batch.id());
    line.put("at", batch.at().toString());
    line.put("state", batch.state().label());
    line.put("renames", batch.renames());
    line.put("example", batch.example());
    line.put("undoable", batch.undoable());
    batch.undoes().ifPresent(undone -> line.put("undoes", undone));
    batch.undoneBy().ifPresent(by -> line.put("undoneBy", by));
    if (!batch.trouble().isEmpty()) {
      line.put("trouble", batch.trouble());
    }
    return line;
  }
}
