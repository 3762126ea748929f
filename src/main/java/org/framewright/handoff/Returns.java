package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.FileProblems;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
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
 * @param problems records of hand-offs that could not be used
 */
public record Returns(
    List<Answer> answers, List<Extra> extras, Optional<BagCheck> bag, List<Problem> problems) {
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
    problems = List.copyOf(problems);
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
        && problems.isEmpty()
        && bag.map(BagCheck::clean).orElse(true)
        && answers.stream().allMatch(answer -> answer.state() == State.ANSWERED);
  }

  /** How many selects are in a state. */
  public long count(State state) {
    return answers.stream().filter(answer -> answer.state() == state).count();
  }

  /**
   * Reads a folder and all below it against the job's hand-offs. Nothing is written; links in the
   * folder are not followed.
   *
   * @param handOff the number of one hand-off; none for all of them
   * @throws JobException where the job has no such hand-off, or the folder is not one that came
   *     back
   */
  public static Returns of(Job job, Path folder, OptionalInt handOff)
      throws IOException, JobException {
    var listing = HandOffRecords.of(job).read();
    var records =
        listing.usable().values().stream()
            .filter(one -> one.state().mayBeOut())
            .filter(one -> handOff.isEmpty() || one.number() == handOff.getAsInt())
            .toList();
    var problems =
        listing.damaged().entrySet().stream()
            .filter(one -> handOff.isEmpty() || one.getKey() == handOff.getAsInt())
            .map(Map.Entry::getValue)
            .toList();
    if (records.isEmpty()) {
      throw problems.isEmpty() ? nothing(job, handOff) : new JobException(problems.getFirst());
    }
    var real = folder.toRealPath();
    var below = FolderFiles.below(real);
    if (!below.all()) {
      throw new JobException(
          "there are more than " + FolderFiles.MOST + " files in it",
          folder.toString(),
          "Give the folder that came back, and only that.");
    }
    var reader = new Reader(job, Expected.of(records));
    below.files().forEach(reader::take);
    below.others().forEach(reader::takeOther);
    return new Returns(
        reader.answers(),
        reader.extras,
        BagCheck.isBag(real) ? Optional.of(BagCheck.of(real)) : Optional.empty(),
        problems);
  }

  private static JobException nothing(Job job, OptionalInt handOff) {
    return new JobException(
        handOff.isEmpty()
            ? "nothing was handed off from this job yet"
            : "this job has no hand-off " + handOff.getAsInt(),
        job.folder().toString(),
        "Hand off first: framewright deliver JOB --to DIR --rating N.");
  }

  /**
   * A select that was handed off, once or several times.
   *
   * @param copies all that it was handed off as
   */
  private record Expected(String select, String setup, List<HandOffRecord.Copy> copies) {
    static SortedMap<String, Expected> of(List<HandOffRecord> records) {
      var all = new TreeMap<String, Expected>();
      for (var one : records) {
        for (var entry : one.selects()) {
          all.merge(
              NameKey.of(entry.select()),
              new Expected(entry.select(), entry.setup(), entry.files()),
              (before, now) ->
                  new Expected(
                      now.select,
                      now.setup,
                      Stream.concat(before.copies.stream(), now.copies.stream()).toList()));
        }
      }
      return all;
    }

    /** Whether a file is one of the copies; files of other sizes are not read. */
    boolean has(FolderFiles.Found file) throws IOException {
      var candidates =
          copies.stream()
              .filter(copy -> copy.bytes().orElse(file.bytes()) == file.bytes())
              .map(HandOffRecord.Copy::sha256)
              .collect(Collectors.toSet());
      return !candidates.isEmpty() && candidates.contains(Checksum.of(file.path()));
    }
  }

  private static final class Reader {
    private final Job job;
    private final SortedMap<String, Expected> expected;
    private final Map<String, Map<State, List<String>>> found = new HashMap<>();
    private final List<Extra> extras = new ArrayList<>();

    private Reader(Job job, SortedMap<String, Expected> expected) {
      this.job = job;
      this.expected = expected;
    }

    private void takeOther(FolderFiles.Other other) {
      extras.add(new Extra(other.name(), other.problem().what()));
    }

    private void take(FolderFiles.Found file) {
      var name = file.path().getFileName().toString();
      if (name.startsWith(".") || PAPERS.contains(name.toLowerCase(Locale.ROOT))) {
        return;
      }
      if (file.bytes() == 0) {
        extras.add(new Extra(file.name(), "the file is empty"));
        return;
      }
      int dot = name.lastIndexOf('.');
      take(file, dot > 0 ? name.substring(0, dot) : name);
    }

    private void take(FolderFiles.Found file, String stem) {
      var relative = file.name();
      var own = expected.get(NameKey.of(stem));
      if (own != null) {
        try {
          answer(own, own.has(file) ? State.UNTOUCHED : State.CHANGED, relative);
        } catch (IOException e) {
          extras.add(new Extra(relative, FileProblems.of(e).what()));
        }
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
          var entry = expected.get(NameKey.of(select));
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

    private void answer(Expected entry, State state, String file) {
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
