package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.handoff.spec.SpecFinding;
import org.framewright.handoff.spec.Specification;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.handoff.verify.Verified;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.naming.Reserved;
import org.framewright.renaming.RenameRequest;

/**
 * What came back from the retoucher, read against what was handed off, and against what the client
 * asked of the pictures where the job says so.
 *
 * @param folder what came back, without links
 * @param answers one for each select that was handed off, by name
 * @param extras files that answer no select, and why
 * @param bag what the folder's own lists of checksums say of it, where it has some
 * @param problems records of hand-offs and a delivery specification that could not be used
 * @param specification what the client asks of the pictures, where that is known
 */
public record Returns(
    Path folder,
    List<Answer> answers,
    List<Extra> extras,
    Optional<PackageCheck> bag,
    List<Problem> problems,
    Optional<Specification> specification) {
  private static final int MOST_MISSING = 20;

  /** The kind of name that a retouched file has. */
  static final String RETOUCHED = Reserved.RETOUCHED;

  public Returns {
    answers = List.copyOf(answers);
    extras = List.copyOf(extras);
    problems = List.copyOf(problems);
  }

  /** What came back to a client who asks nothing of the pictures. */
  public Returns(
      Path folder,
      List<Answer> answers,
      List<Extra> extras,
      Optional<PackageCheck> bag,
      List<Problem> problems) {
    this(folder, answers, extras, bag, problems, Optional.empty());
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
   * @param versions the versions that came, with their files; empty where names say none
   * @param frame the pictures of the frame as they lie in the job now, raw first; those that are
   *     there
   * @param findings where the files that count are not what the client asked for
   */
  public record Answer(
      String select,
      String setup,
      State state,
      List<String> files,
      SortedMap<Integer, List<String>> versions,
      List<Path> frame,
      List<SpecFinding> findings) {
    public Answer {
      files = List.copyOf(files);
      versions = Collections.unmodifiableSortedMap(new TreeMap<>(versions));
      frame = List.copyOf(frame);
      findings = List.copyOf(findings);
    }

    Answer(
        String select,
        String setup,
        State state,
        List<String> files,
        SortedMap<Integer, List<String>> versions) {
      this(select, setup, state, files, versions, List.of(), List.of());
    }

    Answer(String select, String setup, State state, List<String> files) {
      this(select, setup, state, files, new TreeMap<>());
    }

    /** The same with what is not as the client asked. */
    Answer with(List<SpecFinding> found) {
      return new Answer(select, setup, state, files, versions, frame, found);
    }

    /** The newest version; none where names say none. */
    public OptionalInt newest() {
      return versions.isEmpty() ? OptionalInt.empty() : OptionalInt.of(versions.lastKey());
    }

    /** The files that count: those of the newest version, else all. */
    public List<String> newestFiles() {
      return versions.isEmpty() ? files : versions.lastEntry().getValue();
    }

    /** The versions between the first and the newest that did not come; the first of many. */
    public List<Integer> missing() {
      return versions.isEmpty()
          ? List.of()
          : IntStream.range(versions.firstKey(), versions.lastKey())
              .filter(version -> !versions.containsKey(version))
              .limit(MOST_MISSING)
              .boxed()
              .toList();
    }
  }

  /**
   * A file that answers no select.
   *
   * @param said why
   * @param likely the select that it likely is of
   */
  public record Extra(String file, Text said, Optional<Likely> likely) {
    Extra(String file, Text said) {
      this(file, said, Optional.empty());
    }

    /** Why, in English. */
    public String why() {
      return said.english();
    }
  }

  /**
   * The select that a file likely is of.
   *
   * @param said how its name differs
   * @param name the name that it should have, with its ending, in the folder where it lies; none
   *     where that is for a person to say
   */
  public record Likely(String select, Text said, Optional<String> name) {
    /** How its name differs, in English. */
    public String reason() {
      return said.english();
    }
  }

  /** Where a file that an answer names lies. */
  public Path path(String file) {
    return folder.resolve(file);
  }

  /** Where files are not what the client asked for, by select. */
  public List<SpecFinding> findings() {
    return answers.stream().flatMap(answer -> answer.findings().stream()).toList();
  }

  /** Whether every select is answered and nothing else came. */
  public boolean complete() {
    return extras.isEmpty()
        && problems.isEmpty()
        && bag.map(PackageCheck::whole).orElse(true)
        && answers.stream().allMatch(answer -> answer.state() == State.ANSWERED);
  }

  /** How many selects are in a state. */
  public long count(State state) {
    return answers.stream().filter(answer -> answer.state() == state).count();
  }

  /**
   * Reads a folder and all below it against the job's hand-offs, and against the job's own delivery
   * specification where it has one. Nothing is written; links in the folder are not followed.
   *
   * @param handOff the number of one hand-off; none for all of them
   * @throws JobException where the job has no such hand-off, or the folder is not one that came
   *     back
   */
  public static Returns of(Job job, Path folder, OptionalInt handOff)
      throws IOException, JobException {
    return read(job, folder, handOff, Progress.NONE).orElseThrow();
  }

  /**
   * The same with a look at how far it is.
   *
   * @param progress gets steps of mebibytes that were read
   * @return nothing where it was stopped
   */
  public static Optional<Returns> read(Job job, Path folder, OptionalInt handOff, Progress progress)
      throws IOException, JobException {
    return switch (Specification.ofJob(job.folder()).orElse(null)) {
      case null -> read(job, folder, handOff, new Asking(Optional.empty(), List.of()), progress);
      case Specification.Parsed.Faulty faulty ->
          read(job, folder, handOff, new Asking(Optional.empty(), faulty.problems()), progress);
      case Specification.Parsed.Sound(Specification own) -> {
        var problems = own.problems(job.convention());
        var asking = new Asking(problems.isEmpty() ? Optional.of(own) : Optional.empty(), problems);
        yield read(job, folder, handOff, asking, progress);
      }
    };
  }

  /** The same against a specification that is not the job's own and fits its convention. */
  public static Optional<Returns> read(
      Job job, Path folder, OptionalInt handOff, Specification specification, Progress progress)
      throws IOException, JobException {
    return read(job, folder, handOff, new Asking(Optional.of(specification), List.of()), progress);
  }

  /**
   * What the client asks of the pictures.
   *
   * @param problems why nobody can say
   */
  private record Asking(Optional<Specification> specification, List<Problem> problems) {}

  private static Optional<Returns> read(
      Job job, Path folder, OptionalInt handOff, Asking asking, Progress progress)
      throws IOException, JobException {
    var listing = HandOffRecords.of(job).read();
    var records =
        listing.usable().values().stream()
            .filter(HandOffRecord::mayComeBack)
            .filter(one -> handOff.isEmpty() || one.number() == handOff.getAsInt())
            .toList();
    var problems =
        new ArrayList<>(
            listing.damaged().entrySet().stream()
                .filter(one -> handOff.isEmpty() || one.getKey() == handOff.getAsInt())
                .map(Map.Entry::getValue)
                .toList());
    if (records.isEmpty()) {
      throw problems.isEmpty() ? nothing(job, handOff) : new JobException(problems.getFirst());
    }
    problems.addAll(asking.problems());
    var real = folder.toRealPath();
    var below = FolderFiles.below(real);
    if (!below.all()) {
      throw new JobException(
          Text.of("there are more than {0} files in it", FolderFiles.MOST),
          folder.toString(),
          Text.of("Give the folder that came back, and only that."));
    }
    // A list of checksums may be that of the package which went out, without its files.
    var bag = OpenPackage.in(real).filter(one -> one.known().kind() != PackageCheck.Kind.SHA256SUM);
    var steps = new ReadSteps(below, bag.isPresent(), progress);
    var reader = new ReturnReader(job, ExpectedSelect.of(records), ExpectedSelect.slates(records));
    for (var file : below.files()) {
      if (progress.cancelled()) {
        return Optional.empty();
      }
      reader.take(file);
      steps.read(file);
    }
    below.others().forEach(reader::takeOther);
    var answers = reader.answers(asking.specification(), real, progress);
    var extras = reader.extras();
    var verified = bag.map(one -> one.read(steps.ofPackage()));
    steps.end();
    return progress.cancelled() || verified.filter(Verified.Cancelled.class::isInstance).isPresent()
        ? Optional.empty()
        : Optional.of(
            new Returns(
                real,
                answers,
                extras,
                verified.map(one -> ((Verified.Read) one).check()),
                problems,
                asking.specification()));
  }

  private static JobException nothing(Job job, OptionalInt handOff) {
    return new JobException(
        handOff.isEmpty()
            ? Text.of("nothing was handed off from this job yet")
            : Text.of("this job has no hand-off {0}", handOff.getAsInt()),
        job.folder().toString(),
        Text.of("Hand off first: framewright deliver JOB --to DIR --rating N."));
  }

  /**
   * The renames that give the files which likely are of a select their right names, for a {@link
   * org.framewright.renaming.Renamer} in the folder that came back. What lies beside a file under
   * its name, such as a sidecar, goes with it.
   */
  public List<RenameRequest> renames() {
    var requests = new ArrayList<RenameRequest>();
    for (var extra : extras) {
      var name = extra.likely().flatMap(Likely::name);
      if (name.isPresent()) {
        var file = Path.of(extra.file());
        var folder = extra.file().substring(0, extra.file().lastIndexOf('/') + 1);
        var group = folder + name.get().replaceFirst("\\..*", "");
        requests.add(new RenameRequest(file, file.resolveSibling(name.get()), group));
      }
    }
    return List.copyOf(requests);
  }
}
