package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.naming.Built;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;

/**
 * What came back from the retoucher, read against what was handed off.
 *
 * @param answers one for each select that was handed off, by name
 * @param extras files that answer no select, and why
 * @param bag what the folder's own manifest says of it, where it has one
 */
public record Returns(List<Answer> answers, List<Extra> extras, Optional<BagCheck> bag) {
  /** The kind of name that a retouched file has. */
  static final String RETOUCHED = Reserved.RETOUCHED;

  private static final Set<String> PAPERS =
      Set.of(
          "bagit.txt",
          "bag-info.txt",
          "manifest-sha256.txt",
          "tagmanifest-sha256.txt",
          "sha256sums",
          "index.csv",
          "readme.txt",
          "thumbs.db",
          "desktop.ini");

  public Returns {
    answers = List.copyOf(answers);
    extras = List.copyOf(extras);
  }

  /** How a select was answered. */
  public enum State {
    /** A retouched file came back under the name that the convention gives it. */
    ANSWERED("came back"),
    /** A file with other content came back under the select's own name, without a version. */
    CHANGED("came back changed under its own name, without a version"),
    /** Only what was handed off came back, as it was. */
    UNTOUCHED("came back as it was handed off"),
    /** Nothing came back. */
    MISSING("is missing");

    private final String words;

    State(String words) {
      this.words = words;
    }

    /** The state as the end of a sentence. */
    public String words() {
      return words;
    }

    /** The word of JSON. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * One select that was handed off.
   *
   * @param files the files that answer it, relative to the folder
   */
  public record Answer(String select, String setup, State state, List<String> files) {}

  /** A file that answers no select. */
  public record Extra(String file, String why) {}

  /** Whether every select is answered and nothing else came. */
  public boolean complete() {
    return extras.isEmpty()
        && bag.map(BagCheck::clean).orElse(true)
        && answers.stream().allMatch(answer -> answer.state() == State.ANSWERED);
  }

  /** How many selects are in a state. */
  public long count(State state) {
    return answers.stream().filter(answer -> answer.state() == state).count();
  }

  /**
   * Reads a folder and all below it against the job's hand-offs.
   *
   * @param handOff the number of one hand-off; none for all of them
   * @throws JobException where the job has no such hand-off
   */
  public static Returns of(Job job, Path folder, OptionalInt handOff)
      throws IOException, JobException {
    var records =
        HandOffRecord.all(job).stream()
            .filter(one -> handOff.isEmpty() || one.number() == handOff.getAsInt())
            .toList();
    if (records.isEmpty()) {
      throw new JobException(
          handOff.isEmpty()
              ? "nothing was handed off from this job yet"
              : "this job has no hand-off " + handOff.getAsInt(),
          job.folder().toString(),
          "Hand off first: framewright deliver JOB --to DIR --rating N.");
    }
    var expected = new TreeMap<String, HandOffRecord.Entry>();
    for (var one : records) {
      one.selects().forEach(select -> expected.put(canonicalKey(select.select()), select));
    }
    var reader = new Reader(job, folder, expected);
    for (var file : reader.files()) {
      reader.take(file);
    }
    return new Returns(
        reader.answers(),
        reader.extras,
        BagCheck.isBag(folder) ? Optional.of(BagCheck.of(folder)) : Optional.empty());
  }

  private static String canonicalKey(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFC).toUpperCase(Locale.ROOT);
  }

  private static final class Reader {
    private final Job job;
    private final Path folder;
    private final Map<String, HandOffRecord.Entry> expected;
    private final Map<String, Map<State, List<String>>> found = new LinkedHashMap<>();
    private final List<Extra> extras = new ArrayList<>();

    private Reader(Job job, Path folder, Map<String, HandOffRecord.Entry> expected) {
      this.job = job;
      this.folder = folder;
      this.expected = expected;
    }

    private List<Path> files() throws IOException {
      try (var walk = Files.walk(folder)) {
        return walk.filter(Files::isRegularFile)
            .filter(file -> !file.getFileName().toString().startsWith("."))
            .filter(
                file -> !PAPERS.contains(file.getFileName().toString().toLowerCase(Locale.ROOT)))
            .sorted()
            .toList();
      }
    }

    private void take(Path file) throws IOException {
      var relative = folder.relativize(file).toString().replace('\\', '/');
      var name = file.getFileName().toString();
      int dot = name.lastIndexOf('.');
      var stem = dot > 0 ? name.substring(0, dot) : name;
      if (Files.size(file) == 0) {
        extras.add(new Extra(relative, "the file is empty"));
        return;
      }
      var own = expected.get(canonicalKey(stem));
      if (own != null) {
        var checksum = Checksum.of(file);
        answer(
            own, own.files().containsValue(checksum) ? State.UNTOUCHED : State.CHANGED, relative);
        return;
      }
      if (!job.convention().kinds().containsKey(RETOUCHED)) {
        extras.add(new Extra(relative, "this is not the name of a select that was handed off"));
        return;
      }
      switch (job.convention().read(stem, RETOUCHED)) {
        case Reading.One one -> {
          var values = new LinkedHashMap<>(job.values());
          values.putAll(one.fields());
          var select =
              job.convention().build(HandOff.SELECT, values) instanceof Built.Name built
                  ? built.text()
                  : "";
          var entry = expected.get(canonicalKey(select));
          if (entry == null) {
            extras.add(
                new Extra(
                    relative,
                    "it would be the retouched " + select + ", which was not handed off"));
          } else {
            answer(entry, State.ANSWERED, relative);
          }
        }
        case Reading.Several _ ->
            extras.add(new Extra(relative, "its name can be read in several ways"));
        case Reading.None none -> extras.add(new Extra(relative, none.message()));
      }
    }

    private void answer(HandOffRecord.Entry entry, State state, String file) {
      found
          .computeIfAbsent(entry.select(), _ -> new TreeMap<>())
          .computeIfAbsent(state, _ -> new ArrayList<>())
          .add(file);
    }

    /** A select's best answer counts: a version, else a change, else its own copy. */
    private List<Answer> answers() {
      return expected.values().stream()
          .map(
              entry -> {
                var answers = found.getOrDefault(entry.select(), Map.of());
                var state = answers.keySet().stream().min(State::compareTo).orElse(State.MISSING);
                return new Answer(
                    entry.select(),
                    entry.setup(),
                    state,
                    List.copyOf(answers.getOrDefault(state, List.of())));
              })
          .collect(Collectors.toList());
    }
  }
}
