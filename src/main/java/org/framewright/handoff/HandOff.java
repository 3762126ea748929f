package org.framewright.handoff;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.Tally;
import org.framewright.job.FrameNames;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.naming.Numbering;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;
import org.framewright.shotlist.Setup;

/**
 * Hands a job's selects to the retoucher. The frames are copied and never touched; the package
 * appears in its place whole or not at all.
 */
public final class HandOff {
  /** The kind of name that a select gets. */
  static final String SELECT = Reserved.SELECT;

  private static final String FRAME = Reserved.FRAME;

  private final Job job;
  private final FrameScan scan;
  private final Tally tally;
  private final Convention convention;

  private HandOff(Job job, FrameScan scan, Tally tally) {
    this.job = job;
    this.scan = scan;
    this.tally = tally;
    this.convention = job.convention();
  }

  /**
   * A hand-off from the frames of a scan.
   *
   * @throws JobException where the job's convention has no names for selects
   */
  public static HandOff of(Job job, FrameScan scan, Tally tally) throws JobException {
    if (!job.convention().kinds().containsKey(SELECT)) {
      throw new JobException(
          "the convention of this job has no names of the kind \"select\"",
          job.folder().toString(),
          "Start the next job from a convention with a select under names.");
    }
    return new HandOff(job, scan, tally);
  }

  /** The frames that somebody rated this high or higher. */
  public HandOffPlan rated(int atLeast) throws IOException, JobException {
    var chosen =
        scan.frames().stream()
            .filter(frame -> frame.capture().rating().orElse(0) >= atLeast)
            .toList();
    return plan("rated " + atLeast + " or higher", chosen, List.of());
  }

  /** The frames that were chosen in the job. */
  public HandOffPlan chosen() throws IOException, JobException {
    var selects = job.state().selects();
    var chosen =
        scan.frames().stream()
            .filter(frame -> frame.knownAs().stream().anyMatch(selects::contains))
            .toList();
    return plan("chosen in the job", chosen, List.of());
  }

  /**
   * The frames that a list names: a name a line, with or without an ending, with or without its
   * folder below the frames folder. Letter case does not count.
   *
   * @throws JobException where the file is no text
   */
  public HandOffPlan picked(Path picks) throws IOException, JobException {
    List<String> lines;
    try {
      lines = Files.readAllLines(picks);
    } catch (CharacterCodingException e) {
      throw new JobException(
          "this list of picks is not UTF-8 text",
          picks.toString(),
          "Save it as plain text in UTF-8, a name a line.");
    }
    var byName = new HashMap<String, Set<Frame>>();
    for (var frame : scan.frames()) {
      for (var name : names(frame)) {
        byName.computeIfAbsent(name, _ -> new LinkedHashSet<>()).add(frame);
      }
    }
    var chosen = new LinkedHashSet<Frame>();
    var withheld = new ArrayList<Withheld>();
    for (int i = 0; i < lines.size(); i++) {
      var line = lines.get(i).replace("\uFEFF", "").strip();
      if (line.isEmpty()) {
        continue;
      }
      var found = byName.getOrDefault(canonicalKey(line), Set.of());
      var where = picks.getFileName() + ", line " + (i + 1) + ": " + line;
      switch (found.size()) {
        case 0 ->
            withheld.add(
                new Withheld(
                    where,
                    "no frame of the job has this name",
                    "Check the spelling; a rename since the list was made changes names too."));
        case 1 -> chosen.addAll(found);
        default ->
            withheld.add(
                new Withheld(
                    where,
                    "several frames have this name: "
                        + found.stream().map(this::original).collect(Collectors.joining(", ")),
                    "Write it with its folder, as shown here."));
      }
    }
    return plan("picked in " + picks.getFileName(), List.copyOf(chosen), withheld);
  }

  private Set<String> names(Frame frame) {
    var names = new HashSet<String>();
    names.add(canonicalKey(frame.stem()));
    names.add(canonicalKey(original(frame)));
    for (var file : frame.files()) {
      names.add(canonicalKey(file.path().getFileName().toString()));
      names.add(canonicalKey(below(file.path())));
    }
    return names;
  }

  private static String canonicalKey(String name) {
    return Normalizer.normalize(name.replace('\\', '/'), Normalizer.Form.NFC)
        .toUpperCase(Locale.ROOT);
  }

  /** The frame's name with its folder below the frames folder. */
  private String original(Frame frame) {
    return below(frame.folder().resolve(frame.stem()));
  }

  private String below(Path path) {
    var frames = job.framesFolder();
    var relative = path.startsWith(frames) ? frames.relativize(path) : path;
    return relative.toString().replace('\\', '/');
  }

  private HandOffPlan plan(String chosenBy, List<Frame> chosen, List<Withheld> already)
      throws IOException, JobException {
    var withheld = new ArrayList<>(already);
    var names = job.frameNames(scan);
    var unnamed = unnamed(names);
    var leftOut =
        names.leftOut().stream()
            .collect(
                Collectors.toMap(left -> original(left.frame()), left -> left, (one, _) -> one));
    var number =
        convention.numbering(
            SELECT,
            HandOffRecord.all(job).stream()
                .flatMap(handOff -> handOff.selects().stream())
                .map(HandOffRecord.Entry::select)
                .toList());
    var selects = new ArrayList<Select>();
    var taken = new HashMap<String, String>();
    for (var frame : chosen) {
      var original = original(frame);
      var left = leftOut.get(original);
      var place = place(frame);
      if (!frame.complete()) {
        withheld.add(
            new Withheld(
                original,
                "it is not complete: a file is cut short or still being written",
                "Wait until it is written, or copy it from the card again."));
      } else if (left != null) {
        withheld.add(new Withheld(original, left.why(), left.remedy()));
      } else if (place.isEmpty()) {
        withheld.add(
            new Withheld(
                original,
                "no setup claims it",
                "Move it to its setup first, then rename the frames.",
                Withheld.Tool.RENAMING));
      } else if (unnamed.stream().anyMatch(path -> of(frame, path))) {
        withheld.add(
            new Withheld(
                original,
                "it does not have its name by the convention yet",
                "Rename the frames first.",
                Withheld.Tool.RENAMING));
      } else {
        switch (select(frame, original, place.get(), number)) {
          case Named(Select select) -> {
            var other = taken.putIfAbsent(canonicalKey(select.name()), original);
            if (other == null) {
              selects.add(select);
            } else {
              withheld.add(
                  new Withheld(
                      original,
                      "it would have the same name as " + other + ": " + select.name(),
                      "Check the convention: its select names leave out what tells these frames"
                          + " apart.",
                      Withheld.Tool.CHECKING));
            }
          }
          case Unnameable(Withheld why) -> withheld.add(why);
        }
      }
    }
    selects.sort(Comparator.comparing(Select::name));
    return new HandOffPlan(chosenBy, selects, withheld);
  }

  /** The files whose name is not yet what the convention says. */
  private Set<Path> unnamed(FrameNames names) {
    return names.requests().stream()
        .filter(request -> !request.from().equals(request.to()))
        .map(request -> job.folder().resolve(request.from()).normalize())
        .collect(Collectors.toSet());
  }

  private static boolean of(Frame frame, Path file) {
    return frame.files().stream().anyMatch(own -> own.path().normalize().equals(file));
  }

  private Optional<Place> place(Frame frame) {
    return frame.knownAs().stream()
        .map(tally.places()::get)
        .filter(place -> place != null)
        .findFirst();
  }

  private sealed interface Naming {}

  private record Named(Select select) implements Naming {}

  private record Unnameable(Withheld why) implements Naming {}

  private Naming select(Frame frame, String original, Place place, Numbering numbering) {
    var values = new LinkedHashMap<>(job.values());
    switch (convention.read(frame.stem(), FRAME)) {
      case Reading.One one -> values.putAll(one.fields());
      case Reading.Several _ -> {
        return new Unnameable(
            new Withheld(
                original,
                "its name can be read in several ways",
                "Check the convention.",
                Withheld.Tool.CHECKING));
      }
      case Reading.None none -> {
        return new Unnameable(
            new Withheld(
                original, none.message(), "Rename the frames first.", Withheld.Tool.RENAMING));
      }
    }
    var select = convention.kinds().get(SELECT);
    job.shotList()
        .setup(place.setup())
        .ifPresent(
            setup -> {
              for (var name : select.fields().keySet()) {
                fromList(setup, name).ifPresent(text -> values.putIfAbsent(name, text));
              }
            });
    select
        .counter()
        .filter(counter -> !values.containsKey(counter))
        .ifPresent(counter -> values.put(counter, String.valueOf(numbering.next(values))));
    return switch (convention.build(SELECT, values)) {
      case Built.Name name ->
          new Named(
              new Select(
                  frame, original, place, name.text(), name.values(), files(frame, name.text())));
      case Built.Refused refused ->
          new Unnameable(
              new Withheld(
                  original,
                  refused.findings().stream()
                      .map(Finding::message)
                      .collect(Collectors.joining("; ")),
                  refused.findings().stream()
                      .flatMap(finding -> finding.remedy().stream())
                      .findFirst()
                      .orElse("")));
    };
  }

  /** A field that the frame's name does not show may be a column of the shot list. */
  private static Optional<String> fromList(Setup setup, String field) {
    return setup.columns().entrySet().stream()
        .filter(column -> heading(column.getKey()).equals(heading(field)))
        .map(Map.Entry::getValue)
        .filter(text -> !text.isBlank())
        .findFirst();
  }

  private static String heading(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
  }

  private static List<String> files(Frame frame, String name) {
    return frame.files().stream().map(file -> name + ending(frame, file)).toList();
  }

  /** Everything behind the frame's stem, so that {@code A.DNG.xmp} stays with {@code A.DNG}. */
  private static String ending(Frame frame, FrameFile file) {
    var name = file.path().getFileName().toString();
    if (name.regionMatches(true, 0, frame.stem(), 0, frame.stem().length())) {
      return name.substring(frame.stem().length());
    }
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(dot);
  }

  /**
   * Writes the package.
   *
   * @param target the package's folder; it must not exist
   * @param progress told after each file
   */
  public Delivery deliver(HandOffPlan plan, Path target, Progress progress) throws IOException {
    var folder = target.toAbsolutePath().normalize();
    var refusal = refusal(plan, folder);
    if (refusal.isPresent()) {
      return refusal.get();
    }
    var parent = folder.getParent();
    Files.createDirectories(parent);
    if (Files.getFileStore(parent).getUsableSpace() < plan.bytes() + plan.bytes() / 50) {
      return new Delivery.Refused(
          "there is not enough room on the volume of "
              + parent
              + ": the selects are "
              + plan.bytes() / 1_000_000
              + " MB",
          "Make room, or hand off to another drive.");
    }
    // Beside the target, so that the finished folder moves on one volume.
    var draft = parent.resolve(".framewright-" + UUID.randomUUID());
    boolean moved = false;
    try {
      var bag = new Bag(draft);
      int done = 0;
      for (var select : plan.selects()) {
        for (int i = 0; i < select.files().size(); i++) {
          var file = select.frame().files().get(i);
          if (progress.cancelled()) {
            return new Delivery.Cancelled();
          }
          if (!bag.add(file.path(), select.files().get(i))) {
            return new Delivery.Failed(
                "the copy of " + original(select.frame()) + " is not what was read from it",
                "Check the drive of " + parent + "; the frames themselves were only read.");
          }
          if (Files.size(file.path()) != file.size()
              || !Files.getLastModifiedTime(file.path()).toInstant().equals(file.modified())) {
            return new Delivery.Failed(
                file.path().getFileName() + " changed while it was handed off",
                "Let the camera's software and the raw converter finish, then hand off again.");
          }
          progress.step(++done, plan.files());
        }
      }
      var number = HandOffRecord.nextNumber(job);
      var zone = ZoneId.systemDefault();
      var index = PackagePapers.index(plan, zone);
      bag.tag("index.csv", index);
      bag.tag("README.txt", PackagePapers.readme(job, plan, number));
      bag.close(PackagePapers.about(job, plan, number, zone));
      if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
        return exists(folder);
      }
      // A rename of a folder never replaces a file or a folder that holds something.
      Files.move(draft, folder);
      moved = true;
      HandOffRecord.write(job, number, folder, plan, bag);
      return new Delivery.Delivered(
          number, folder, plan.selects().size(), plan.files(), bag.octets());
    } catch (FileAlreadyExistsException e) {
      return exists(folder);
    } finally {
      if (!moved) {
        discard(draft);
      }
    }
  }

  private Optional<Delivery> refusal(HandOffPlan plan, Path folder) {
    if (plan.selects().isEmpty()) {
      return Optional.of(
          new Delivery.Refused(
              "there is nothing to hand off (" + plan.chosenBy() + ")",
              "Rate frames, or name them in a list of picks."));
    }
    if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.of(exists(folder));
    }
    if (folder.startsWith(job.framesFolder())) {
      return Optional.of(
          new Delivery.Refused(
              folder + " lies in the frames folder, where the copies would be counted as frames",
              "Choose another place."));
    }
    return Optional.empty();
  }

  private static Delivery.Refused exists(Path folder) {
    return new Delivery.Refused(
        folder + " is there already", "Choose another name, or move that one away.");
  }

  /** Removes an unfinished package: only folders of ours, made under a name nobody else has. */
  private static void discard(Path draft) throws IOException {
    if (!Files.exists(draft)) {
      return;
    }
    List<Path> contents;
    try (var walk = Files.walk(draft)) {
      contents = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (var path : contents) {
      Files.delete(path);
    }
  }

  /**
   * The name that the first retouched version of a select has by the job's convention, without
   * ending; none where the convention has no such names.
   */
  public Optional<String> retouchedName(Select select) {
    return PackagePapers.retouched(convention, select);
  }

  /** What is recorded of the hand-offs of a job, oldest first. */
  public static Map<Integer, Path> delivered(Job job) throws IOException, JobException {
    var folders = new LinkedHashMap<Integer, Path>();
    HandOffRecord.all(job).forEach(handOff -> folders.put(handOff.number(), handOff.folder()));
    return folders;
  }
}
