package org.framewright.cli;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.job.JobException;
import org.framewright.shotlist.SetupState;
import org.framewright.studio.Search;
import org.framewright.studio.SearchDescription;
import org.framewright.studio.SearchHit;
import org.framewright.studio.SearchRows;
import org.framewright.studio.Store;
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
        return new StoredJobs(store, kept, output).tell(SearchRows::tell).code();
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
}
