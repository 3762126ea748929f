package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.concurrent.Callable;
import org.framewright.job.JobException;
import org.framewright.studio.OwnSet;
import org.framewright.studio.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Adds a job of this computer to the store. */
@Command(
    name = "add",
    description = {
      "Adds a job of this computer to the store, and exchanges it. Each computer that has a folder",
      "of the job adds it once; copies of one folder are the same set."
    },
    addMethodSubcommands = false)
final class StudioAddCommand implements Callable<Integer> {
  @Mixin private Output output;
  @Mixin private HoursOptions hours;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    var kept = StudioCommand.kept();
    try (var store = Store.open(kept)) {
      var set =
          OwnSet.open(store, folder, hours.hours(output), Clock.system(ZoneId.systemDefault()));
      var exchanged = set.follow();
      StudioCommand.settings().add(kept, set.job().folder());
      if (output.json()) {
        var document = new LinkedHashMap<String, Object>();
        document.put("job", set.job().name());
        document.put("sent", exchanged.sent());
        document.put("brought", exchanged.brought());
        output.write(document);
      } else {
        output
            .out()
            .println(
                set.job().name()
                    + " is in the store; events sent: "
                    + exchanged.sent()
                    + ", brought: "
                    + exchanged.brought());
      }
      var told = set.job().warnings();
      told.forEach(warning -> output.err().println("Note: " + warning));
      return ExitStatus.DONE.code();
    }
  }
}
