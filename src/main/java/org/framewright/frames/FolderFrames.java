package org.framewright.frames;

import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.text.Normalizer;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

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
  private List<Trouble> troubles = List.of();
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
    var name = path.getFileName().toString();
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
    var group = groups.computeIfAbsent(fold(stem(name, role.get())), Group::new);
    var fresh = new Known(name, file, group, attributes.fileKey(), now, listing);
    files.put(name, fresh);
    pending.add(fresh);
    group.add(fresh);
    changed.add(group);
  }

  void forget(Path path) {
    forget(path.getFileName().toString());
  }

  private void forget(String name) {
    var gone = files.remove(name);
    if (gone != null) {
      pending.remove(gone);
      gone.group.remove(gone);
      changed.add(gone.group);
    }
  }

  /** Tells which files are due to be read, and which must be looked at again later. */
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
    pending.removeIf(known -> known.isDone());
    for (var group : changed) {
      if (group.members.isEmpty()) {
        groups.remove(group.key);
      } else {
        group.frames = frames(group.members);
      }
    }
    changed.clear();
    var all = new ArrayList<Frame>(groups.size());
    var told = new ArrayList<Trouble>();
    frameFiles = 0;
    for (var group : groups.values()) {
      all.addAll(group.frames);
      for (var known : group.members) {
        if (known.reading != null && known.reading.trouble().isPresent()) {
          told.add(new Trouble(known.file.path(), known.reading.trouble().get()));
        }
      }
    }
    for (var frame : all) {
      frameFiles += frame.files().size();
    }
    frames = all;
    troubles = told;
  }

  List<Frame> frames() {
    return frames;
  }

  List<Trouble> troubles() {
    return troubles;
  }

  int frameFiles() {
    return frameFiles;
  }

  private List<Frame> frames(List<Known> members) {
    if (!haveOneNameTwice(members)) {
      return frame(members).map(List::of).orElse(List.of());
    }
    // Only a file system that tells letter cases apart can hold these; so they are two frames.
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
    return !members.stream().allMatch(known -> names.add(fold(known.name)));
  }

  private Optional<Frame> frame(List<Known> members) {
    var sorted = members.stream().sorted(RAW_FIRST).toList();
    var first = sorted.getFirst();
    if (!first.file.role().isPicture()) {
      return Optional.empty();
    }
    var files = new ArrayList<FrameFile>(sorted.size());
    var ids = new ArrayList<FrameId>(sorted.size());
    boolean complete = true;
    for (var known : sorted) {
      files.add(known.file);
      if (known.file.role().isPicture()) {
        complete &= known.isComplete();
        known.id().filter(id -> !ids.contains(id)).ifPresent(ids::add);
      }
    }
    var knownAs =
        complete ? List.copyOf(ids) : List.of(new FrameId("incomplete " + first.file.path()));
    return Optional.of(
        new Frame(
            knownAs.getFirst(),
            knownAs,
            folder,
            first.stem(),
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
      var told = known.reading.capture();
      if (dated.time().isEmpty() && told.time().isPresent()) {
        dated = told;
      }
      if (camera.isEmpty()) {
        camera = told.camera();
      }
      // A sidecar is the last of them, and its word counts before the pictures' own.
      if (told.rating().isPresent()) {
        rating = told.rating();
      }
    }
    var made = new Capture(dated.time(), dated.offset(), camera, rating);
    return made.equals(dated) ? dated : made;
  }

  /** Upper and lower case, and composed and decomposed letters, are one. */
  static String fold(String name) {
    var composed =
        name.chars().allMatch(c -> c < 128)
            ? name
            : Normalizer.normalize(name, Normalizer.Form.NFC);
    return composed.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
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

  /** The files of one stem; mostly there is one, and there are many thousand groups. */
  private static final class Group {
    final String key;
    List<Known> members = List.of();
    List<Frame> frames = List.of();

    Group(String key) {
      this.key = key;
    }

    void add(Known known) {
      members = Stream.concat(members.stream(), Stream.of(known)).toList();
    }

    void remove(Known gone) {
      members = members.stream().filter(known -> !known.equals(gone)).toList();
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

    void read(Instant now, Map<Camera, Camera> bodies, Bytes.Room room) {
      var fresh = FileReading.of(file.path(), file.role(), room);
      reading = fresh.sharing(bodies);
      readAt = now;
    }
  }
}
