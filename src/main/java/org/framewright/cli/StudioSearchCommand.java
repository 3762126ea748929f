package org.framewright.cli;

import java.io.IOException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Station;
import org.framewright.shotlist.SetupState;
import org.framewright.studio.OwnSet;
import org.framewright.studio.Search;
import org.framewright.studio.SearchDescription;
import org.framewright.studio.SearchHit;
import org.framewright.studio.SearchRows;
import org.framewright.studio.Store;
import org.framewright.studio.StoreException;
import org.framewright.studio.StudioSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Looks for setups and frames in all jobs of the store. */
@Command(
    name = "search",
    description = {
      "Looks in all jobs of the store, of all years: for garments by title, code or GTIN, for",
      "people, clients, jobs, or for a frame by its name. Every word has to be found; case and",
      "accents do not count. The best comes first, with what was found."
    },
    addMethodSubcommands = false)
final class StudioSearchCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(
      paramLabel = "WORDS",
      arity = "0..*",
      description = "What to look for; also a part of a word, from three letters up.")
  private List<String> words = List.of();

  @Option(
      names = "--limit",
      paramLabel = "N",
      defaultValue = "20",
      description = "Show N hits at most, from 1 to 1000 (${DEFAULT-VALUE}).")
  private int most;

  @Option(
      names = "--rebuild",
      description = {
        "Instead of looking for something: tell the store anew what all of its jobs are found by.",
        "Names of frames come from the jobs of this computer; of others, those told before stay."
      })
  private boolean rebuild;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    var text = String.join(" ", words);
    if (rebuild != text.isBlank()) {
      throw CommandFailure.badInput(
          rebuild ? "--rebuild looks for nothing" : "nothing is looked for",
          rebuild ? "Leave the words out." : "Give words: framewright studio search coat");
    }
    if (most < 1 || most > Search.MOST) {
      throw CommandFailure.badInput("--limit " + most, "Give a number from 1 to " + Search.MOST);
    }
    var kept = StudioCommand.kept();
    try (var store = Store.open(kept)) {
      if (rebuild) {
        return rebuild(store, kept);
      }
      var hits = Search.of(store, text, most);
      if (output.json()) {
        output.write(Map.of("hits", hits.stream().map(StudioSearchCommand::json).toList()));
      } else {
        SearchDescription.lines(hits, most).forEach(output.out()::println);
      }
      return ExitStatus.DONE.code();
    }
  }

  private static Map<String, Object> json(SearchHit hit) {
    var document = new LinkedHashMap<String, Object>();
    document.put("job", hit.name());
    document.put("date", hit.day().toString());
    document.put("setup", hit.setup().orElse(null));
    document.put("title", hit.title());
    document.put("state", hit.state().map(SetupState::word).orElse(null));
    document.put("matched", hit.matched());
    return document;
  }

  private int rebuild(Store store, StudioSettings.Kept kept) throws IOException, JobException {
    var clock = Clock.system(ZoneId.systemDefault());
    var done = new HashSet<UUID>();
    boolean whole = true;
    for (var folder : kept.jobs()) {
      try {
        var job = Job.open(folder, clock);
        if (store.has(OwnSet.id(job))) {
          SearchRows.tell(store, job);
          done.add(OwnSet.id(job));
        }
      } catch (StoreException e) {
        throw e;
      } catch (JobException e) {
        whole = note(e.problem().sentence());
      } catch (IOException e) {
        whole = note(folder + ": " + e.getMessage());
      }
    }
    for (var job : store.all()) {
      if (!done.contains(job.id())) {
        try {
          fromStore(store, job, clock);
          done.add(job.id());
        } catch (JobException e) {
          whole = note(e.problem().sentence());
        } catch (CommandFailure e) {
          whole = note(e.problem().sentence());
        }
      }
    }
    if (output.json()) {
      output.write(Map.of("jobs", done.size()));
    } else {
      output.out().println("Jobs told anew: " + done.size());
    }
    return (whole ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON).code();
  }

  private boolean note(String line) {
    output.err().println("Note: " + line);
    return false;
  }

  private static void fromStore(Store store, Store.Kept stored, Clock clock)
      throws IOException, JobException, CommandFailure {
    var convention = StudioBringCommand.convention(stored);
    SearchRows.tellWithoutFrames(
        store, Job.stored(convention, store.logs(stored.id()), clock, Station.here()));
  }
}
