package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.renaming.Recovery;
import org.framewright.renaming.Renamer;
import org.framewright.renaming.StuckFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code recover}: finishes or rolls back renames that were interrupted. */
@Command(
    name = "recover",
    description = "Brings interrupted renames to an end: every file gets its old or its new name.",
    addMethodSubcommands = false)
final class RecoverCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(paramLabel = "FOLDER", description = "The folder whose files were being renamed.")
  private Path folder;

  @Option(
      names = "--close",
      description = "If it cannot be ended, leave the files as they are and close the batch.")
  private boolean close;

  @Override
  public Integer call() throws IOException, CommandFailure {
    var renamer = Renamer.in(folder);
    var done = new ArrayList<Map<String, Object>>();
    boolean stuck = false;
    for (boolean more = true; more; ) {
      var recovery = close ? renamer.close() : renamer.recover();
      switch (recovery) {
        case Recovery.Nothing nothing -> {
          if (done.isEmpty() && !output.json()) {
            output.out().println("Nothing was interrupted in " + folder + ".");
          }
          more = false;
        }
        case Recovery.RolledBack back -> {
          report(done, back.batch(), "rolled-back", "every file has its old name", List.of());
          back.evidence().words().ifPresent(output.err()::println);
        }
        case Recovery.Finished finished -> {
          report(done, finished.batch(), "finished", "every file has its new name", List.of());
          finished.evidence().words().ifPresent(output.err()::println);
        }
        case Recovery.Stuck files -> {
          var words = close ? "closed; look at these files" : "stands still; look at these files";
          report(done, files.batch(), "stuck", words, files.files());
          stuck = true;
          more = close;
        }
        case Recovery.Refused refused ->
            throw new CommandFailure(ExitStatus.REFUSED, refused.problem());
      }
    }
    if (output.json()) {
      output.write(Map.of("recovered", done));
    }
    return (stuck ? ExitStatus.NEEDS_A_PERSON : ExitStatus.DONE).code();
  }

  private void report(
      List<Map<String, Object>> done,
      String batch,
      String outcome,
      String words,
      List<StuckFile> files) {
    var line = new LinkedHashMap<String, Object>();
    line.put("batch", batch);
    line.put("outcome", outcome);
    line.put(
        "files",
        files.stream()
            .map(
                file ->
                    Map.of(
                        "path", file.path().toString(), "why", file.why(), "remedy", file.remedy()))
            .toList());
    done.add(line);
    if (!output.json()) {
      output.out().println("Batch " + batch + ": " + words + ".");
      for (var file : files) {
        output.out().println("  " + file.path() + ": " + file.why() + ". " + file.remedy());
      }
    }
  }
}
