package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.framewright.renaming.Batch;
import org.framewright.renaming.Renamer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code undo}: takes a batch of renames back. */
@Command(
    name = "undo",
    description = "Takes a batch of renames back; undoing an undo redoes it.",
    addMethodSubcommands = false)
final class UndoCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(paramLabel = "FOLDER", description = "The folder whose files were renamed.")
  private Path folder;

  @Option(
      names = "--batch",
      paramLabel = "ID",
      description = "The batch, by its id or its number; the latest if none is given.")
  private String id;

  @Override
  public Integer call() throws IOException, CommandFailure {
    var renamer = Renamer.in(folder);
    return new RenameRun(renamer, output).undo(batch(renamer)).code();
  }

  private String batch(Renamer renamer) throws IOException, CommandFailure {
    if (id == null) {
      return renamer
          .nextUndo()
          .map(Batch::id)
          .orElseThrow(
              () ->
                  CommandFailure.badInput(
                      "there is nothing to undo in " + folder,
                      "See: framewright batches " + folder));
    }
    var known = renamer.batches().stream().map(Batch::id).toList();
    if (known.contains(id)) {
      return id;
    }
    var matching = known.stream().filter(batch -> number(batch).equals(withoutZeros(id))).toList();
    if (matching.size() != 1) {
      throw CommandFailure.badInput(
          "there is no batch " + id + " in " + folder, "See: framewright batches " + folder);
    }
    return matching.getFirst();
  }

  private static String number(String batch) {
    return withoutZeros(batch.substring(0, batch.indexOf('-')));
  }

  private static String withoutZeros(String number) {
    return number.replaceFirst("^0+(?=.)", "");
  }
}
