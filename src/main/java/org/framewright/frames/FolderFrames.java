package org.framewright.frames;

import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
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

/** What is known of one folder's files, and the frames that they make. */
final class FolderFrames {
  private static final Comparator<Known> RAW_FIRST =
      Comparator.comparing((Known known) -> known.file.role())
          .thenComparing(known -> known.file.path());

  private final Path folder;
  private final Map<String, Known> files = new HashMap<>();
  private final SortedMap<String, Group> groups = new TreeMap<>();
  private final Set<Known> pending = new LinkedHashSet<>();
  private final Set<String> changed = new HashSet<>();
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
    var modified = attributes.lastModifiedTime();
    var file = new FrameFile(path, attributes.size(), modified.toInstant(), role.get());
    var fresh = new Known(name, file, modified, attributes.fileKey(), now, listing);
    files.put(name, fresh);
    pending.add(fresh);
    groups.computeIfAbsent(fresh.group(), key -> new Group()).members.add(fresh);
    changed.add(fresh.group());
  }

  void forget(Path path) {
    forget(path.getFileName().toString());
  }

  private void forget(String name) {
    var gone = files.remove(name);
    if (gone != null) {
      pending.remove(gone);
      groups.get(gone.group()).members.remove(gone);
      changed.add(gone.group());
    }
  }

  /** Tells which files are due to be read, and which must be looked at again later. */
  void sort(Instant now, List<Known> due, List<Path> unsettled) {
    for (var known : List.copyOf(pending)) {
      if (known.isDue(now)) {
        due.add(known);
        changed.add(known.group());
      } else if (known.reading == null || known.reading.hollow()) {
        unsettled.add(known.file.path());
        changed.add(known.group());
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
    for (var key : changed) {
      var group = groups.get(key);
      if (group.members.isEmpty()) {
        groups.remove(key);
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
    var names = new HashSet<String>();
    boolean clash = !members.stream().allMatch(known -> names.add(fold(known.name)));
    if (!clash) {
      return frame(members).map(List::of).orElse(List.of());
    }
    // Only a file system that tells letter cases apart can hold these; so they are two frames.
    var apart = new TreeMap<String, List<Known>>();
    for (var known : members) {
      apart.computeIfAbsent(known.stem(), stem -> new ArrayList<>()).add(known);
    }
    return apart.values().stream().flatMap(some -> frame(some).stream()).toList();
  }

  private Optional<Frame> frame(List<Known> members) {
    var sorted = members.stream().sorted(RAW_FIRST).toList();
    var first = sorted.getFirst();
    if (!first.file.role().isPicture()) {
      return Optional.empty();
    }
    var pictures = sorted.stream().filter(known -> known.file.role().isPicture()).toList();
    boolean complete = pictures.stream().allMatch(known -> known.isComplete());
    var ids =
        pictures.stream()
            .filter(known -> known.reading != null)
            .flatMap(known -> known.reading.id().stream())
            .distinct()
            .toList();
    var id =
        complete
            ? first.reading.id().orElseThrow()
            : new FrameId("incomplete " + first.file.path());
    var files = sorted.stream().map(known -> known.file).toList();
    return Optional.of(
        new Frame(
            id,
            complete ? ids : List.of(id),
            folder,
            first.stem(),
            files,
            capture(sorted),
            complete));
  }

  private static Capture capture(List<Known> sorted) {
    var all =
        sorted.stream()
            .filter(known -> known.reading != null)
            .map(known -> known.reading.capture())
            .toList();
    var dated = all.stream().filter(capture -> capture.time().isPresent()).findFirst();
    var camera = all.stream().flatMap(capture -> capture.camera().stream()).findFirst();
    var rating = OptionalInt.empty();
    // A sidecar is the last of them, and its word counts before the pictures' own.
    for (var known : sorted.reversed()) {
      if (known.reading != null && rating.isEmpty()) {
        rating = known.reading.capture().rating();
      }
    }
    var made =
        new Capture(dated.flatMap(Capture::time), dated.flatMap(Capture::offset), camera, rating);
    return all.contains(made) ? all.get(all.indexOf(made)) : made;
  }

  /** Upper and lower case, and composed and decomposed letters, are one. */
  static String fold(String name) {
    var composed =
        name.chars().allMatch(c -> c < 128)
            ? name
            : Normalizer.normalize(name, Normalizer.Form.NFC);
    return composed.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }

  private static String stem(String name) {
    return name.substring(0, name.lastIndexOf('.'));
  }

  private static final class Group {
    final List<Known> members = new ArrayList<>(2);
    List<Frame> frames = List.of();
  }

  /** One file as it was seen, and what was read of it. */
  static final class Known {
    private final String name;
    private final FrameFile file;
    private final FileTime modified;
    private final Object key;
    private int listing;
    private Instant since;
    private Instant seen;
    private FileReading reading;
    private Instant readAt;

    private Known(
        String name, FrameFile file, FileTime modified, Object key, Instant since, int listing) {
      this.name = name;
      this.file = file;
      this.modified = modified;
      this.key = key;
      this.listing = listing;
      this.since = since;
      this.seen = since;
    }

    /** The stem; of a sidecar that is named after a whole file name, that name's stem. */
    private String stem() {
      var stem = FolderFrames.stem(name);
      boolean afterWholeName =
          file.role() == FileRole.SIDECAR
              && FileRole.of(stem).filter(FileRole::isPicture).isPresent();
      return afterWholeName ? FolderFrames.stem(stem) : stem;
    }

    private String group() {
      return fold(stem());
    }

    private boolean isStill(BasicFileAttributes attributes) {
      return file.size() == attributes.size()
          && modified.equals(attributes.lastModifiedTime())
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
