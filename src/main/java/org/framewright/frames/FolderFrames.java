package org.framewright.frames;

import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;

/** What is known of one folder's files, and the frames that they make. */
final class FolderFrames {
  private static final Comparator<Known> RAW_FIRST =
      Comparator.comparing((Known known) -> known.file.role())
          .thenComparing(known -> known.file.path());

  private final Path folder;
  private final Map<String, Known> files = new HashMap<>();
  private final SortedMap<String, Group> groups = new TreeMap<>();
  private final Set<Known> pending = new LinkedHashSet<>();
  private final Set<Group> changed = new HashSet<>();
  private List<Frame> frames = List.of();
  private List<Problem> problems = List.of();
  private int frameFiles;
  private int listing;

  FolderFrames(Path folder) {
    this.folder = folder;
  }

  /** A listing of the whole folder begins. */
  void beginListing() {
    listing++;
  }

  /** The listing came to its end: what it did not name is gone. */
  void endListing() {
    var gone = files.values().stream().filter(known -> known.listing != listing).toList();
    gone.forEach(known -> forget(known.name));
  }

  /** Notes what a look saw of a file. */
  void see(Path path, BasicFileAttributes attributes, Instant now) {
    var name = SpelledName.of(path);
    var known = files.get(name);
    if (known != null && known.isStill(attributes)) {
      known.seen = now;
      known.listing = listing;
      return;
    }
    var role = FileRole.of(name);
    if (role.isEmpty()) {
      return;
    }
    if (known != null) {
      forget(name);
    }
    var modified = attributes.lastModifiedTime().toInstant();
    var file = new FrameFile(path, attributes.size(), modified, role.get());
    var group = groups.computeIfAbsent(NameKey.of(stem(name, role.get())), Group::new);
    var fresh = new Known(name, file, group, attributes.fileKey(), now, listing);
    files.put(name, fresh);
    pending.add(fresh);
    group.members.add(fresh);
    changed.add(group);
  }

  /** Notes that a file is still there, of which a look could learn no more. */
  void keep(Path path) {
    var known = files.get(SpelledName.of(path));
    if (known != null) {
      known.listing = listing;
    }
  }

  void forget(Path path) {
    forget(SpelledName.of(path));
  }

  private void forget(String name) {
    var gone = files.remove(name);
    if (gone != null) {
      pending.remove(gone);
      gone.gone = true;
      changed.add(gone.group);
    }
  }

  /** Adds the files that are due to be read, and those that must be looked at again later. */
  void sort(Instant now, List<Known> due, List<Path> unsettled) {
    for (var known : List.copyOf(pending)) {
      if (known.isDue(now)) {
        due.add(known);
        changed.add(known.group);
      } else if (known.reading == null || known.reading.hollow()) {
        unsettled.add(known.file.path());
        changed.add(known.group);
      }
    }
  }

  /** Whether anything changed since the frames were last gathered. */
  boolean isChanged() {
    return !changed.isEmpty();
  }

  /** Makes the frames of what is known now. */
  void gather() {
    if (changed.isEmpty()) {
      return;
    }
    pending.removeIf(known -> known.gone || known.isDone());
    for (var group : changed) {
      group.members.removeIf(this::isGone);
      if (group.members.isEmpty()) {
        groups.remove(group.key);
      } else {
        group.frames = frames(group.members);
      }
    }
    changed.clear();
    var all = new ArrayList<Frame>(groups.size());
    var wrong = new ArrayList<Problem>();
    frameFiles = 0;
    for (var group : groups.values()) {
      all.addAll(group.frames);
      group.members.forEach(known -> known.problems(wrong));
    }
    for (var frame : all) {
      frameFiles += frame.files().size();
    }
    frames = all;
    problems = wrong;
  }

  /** A file may also have vanished between the look at it and the reading. */
  private boolean isGone(Known known) {
    if (known.gone) {
      files.remove(known.name, known);
    }
    return known.gone;
  }

  List<Frame> frames() {
    return frames;
  }

  List<Problem> problems() {
    return problems;
  }

  int frameFiles() {
    return frameFiles;
  }

  private List<Frame> frames(List<Known> members) {
    if (!haveOneNameTwice(members)) {
      return frame(members).map(List::of).orElse(List.of());
    }
    // Only a file system that distinguishes letter case can hold these; so they are two frames.
    var apart = new TreeMap<String, List<Known>>();
    for (var known : members) {
      apart.computeIfAbsent(known.stem(), stem -> new ArrayList<>()).add(known);
    }
    return apart.values().stream().flatMap(some -> frame(some).stream()).toList();
  }

  private static boolean haveOneNameTwice(List<Known> members) {
    if (members.size() == 1) {
      return false;
    }
    var names = new HashSet<String>();
    return !members.stream().allMatch(known -> names.add(NameKey.of(known.name)));
  }

  private Optional<Frame> frame(List<Known> members) {
    var sorted = members.stream().sorted(RAW_FIRST).toList();
    var first = sorted.getFirst();
    if (!first.file.role().isPicture()) {
      return Optional.empty();
    }
    var files = new ArrayList<FrameFile>(sorted.size());
    var ids = new LinkedHashSet<FrameId>();
    boolean complete = true;
    for (var known : sorted) {
      files.add(known.file);
      if (known.file.role().isPicture()) {
        complete &= known.isComplete();
        known.id().ifPresent(ids::add);
      }
    }
    var knownAs = complete ? List.copyOf(ids) : List.of(first.provisionalId());
    return Optional.of(
        new Frame(
            knownAs.getFirst(),
            knownAs,
            folder,
            first.shownStem(),
            List.copyOf(files),
            capture(sorted),
            complete));
  }

  private static Capture capture(List<Known> sorted) {
    var dated = Capture.UNKNOWN;
    var camera = Optional.<Camera>empty();
    var rating = OptionalInt.empty();
    for (var known : sorted) {
      if (known.reading == null) {
        continue;
      }
      var read = known.reading.capture();
      if (dated.time().isEmpty() && read.time().isPresent()) {
        dated = read;
      }
      if (camera.isEmpty()) {
        camera = read.camera();
      }
      // A sidecar is the last of them, and its word counts before the pictures' own.
      if (read.rating().isPresent()) {
        rating = read.rating();
      }
    }
    var made = new Capture(dated.time(), dated.offset(), camera, rating);
    return made.equals(dated) ? dated : made;
  }

  /** The stem; of a sidecar that is named after a whole file name, that name's stem. */
  private static String stem(String name, FileRole role) {
    var stem = stem(name);
    boolean afterWholeName =
        role == FileRole.SIDECAR && FileRole.of(stem).filter(FileRole::isPicture).isPresent();
    return afterWholeName ? stem(stem) : stem;
  }

  private static String stem(String name) {
    return name.substring(0, name.lastIndexOf('.'));
  }

  /** The files of one stem; mostly there are one or two, and there are many thousand groups. */
  private static final class Group {
    final String key;
    final List<Known> members = new ArrayList<>(2);
    List<Frame> frames = List.of();

    Group(String key) {
      this.key = key;
    }
  }

  /** One file as it was seen, and what was read of it. */
  static final class Known {
    private final String name;
    private final FrameFile file;
    private final Group group;
    private final Object key;
    private int listing;
    private Instant since;
    private Instant seen;
    private FileReading reading;
    private Instant readAt;
    private boolean gone;

    private Known(
        String name, FrameFile file, Group group, Object key, Instant since, int listing) {
      this.name = name;
      this.file = file;
      this.group = group;
      this.key = key;
      this.listing = listing;
      this.since = since;
      this.seen = since;
    }

    private String stem() {
      return FolderFrames.stem(name, file.role());
    }

    /** The stem as far as it is text. */
    private String shownStem() {
      return FolderFrames.stem(file.path().getFileName().toString(), file.role());
    }

    /** Stands for the frame while its files do not yet give it an identity. */
    private FrameId provisionalId() {
      return new FrameId("incomplete " + SpelledName.shown(file.path()));
    }

    private void problems(List<Problem> into) {
      if (!SpelledName.isText(file.path().getFileName())) {
        into.add(FrameProblems.nameIsNoText(file.path()));
      }
      if (reading != null) {
        reading.problem().ifPresent(problem -> into.add(FrameProblems.at(file.path(), problem)));
      }
    }

    private Optional<FrameId> id() {
      return reading == null ? Optional.empty() : reading.id();
    }

    private boolean isStill(BasicFileAttributes attributes) {
      return file.size() == attributes.size()
          && file.modified().equals(attributes.lastModifiedTime().toInstant())
          && Objects.equals(key, attributes.fileKey());
    }

    /** Whether two looks that far apart saw the same. */
    private boolean held(Duration needed) {
      if (seen.isBefore(since)) {
        since = seen;
      }
      return !seen.isBefore(since.plus(needed));
    }

    private boolean isOld(Duration age) {
      return !file.modified().isAfter(seen.minus(age));
    }

    private boolean isDue(Instant now) {
      if (reading != null) {
        return reading.again() && !now.isBefore(readAt.plus(FrameScanner.OLD));
      }
      return held(FrameScanner.SETTLE) || isOld(FrameScanner.OLD);
    }

    private boolean isComplete() {
      return reading != null
          && reading.whole()
          && (!reading.hollow() || held(FrameScanner.HOLLOW) || isOld(FrameScanner.HOLLOW));
    }

    private boolean isDone() {
      return reading != null && !reading.again() && (isComplete() || !reading.whole());
    }

    void read(Instant now, FileReader reader, Map<Camera, Camera> bodies, Bytes.Room room) {
      var fresh = reader.read(file.path(), file.role(), room);
      if (fresh.isEmpty()) {
        gone = true;
        return;
      }
      reading = fresh.get().sharing(bodies);
      readAt = now;
    }
  }
}
