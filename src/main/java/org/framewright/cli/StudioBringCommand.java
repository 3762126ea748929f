package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.concurrent.Callable;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Station;
import org.framewright.naming.Convention;
import org.framewright.studio.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes the folder of a job that only other computers have so far. */
@Command(
    name = "bring",
    description = {
      "Makes the folder of a job that another computer added to the store, with its list and all",
      "that was done, and adds it here. Frames stay where they are. Prints the folder's path."
    },
    addMethodSubcommands = false)
final class StudioBringCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "NAME", description = "The job's name, as studio shows it.")
  private String name;

  @Option(
      names = "--in",
      paramLabel = "DIR",
      required = true,
      description = "The folder to make it in.")
  private Path parent;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    var kept = StudioCommand.kept();
    try (var store = Store.open(kept)) {
      var found = store.named(name);
      if (found.isEmpty()) {
        throw CommandFailure.badInput(
            "the store has no job " + name, "See: framewright studio --all");
      }
      if (found.size() > 1) {
        throw CommandFailure.badInput(
            "the store has several jobs " + name,
            "Copy the folder of the one that is meant from a computer that has it.");
      }
      var job = found.getFirst();
      var clock = Clock.system(ZoneId.systemDefault());
      var folder = Job.bring(convention(job), parent, store.logs(job.id()), clock, Station.here());
      StudioCommand.settings().add(kept, folder);
      if (output.json()) {
        var document = new LinkedHashMap<String, Object>();
        document.put("job", job.name());
        document.put("folder", folder.toString());
        output.write(document);
      } else {
        output.out().println(folder);
      }
      return ExitStatus.DONE.code();
    }
  }

  static Convention convention(Store.Kept job) throws CommandFailure {
    return switch (Convention.parse(job.convention(), job.name())) {
      case Convention.Parsed.Sound sound -> sound.convention();
      case Convention.Parsed.Faulty _ ->
          throw CommandFailure.badInput(
              "the convention that the store has of " + job.name() + " cannot be read",
              "Copy the job's folder from a computer that has it.");
    };
  }
}
