package org.framewright.frames;

import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;

/** What is known of one folder's files, and the frames that they make. */
final class FolderFrames {
  private final Path folder;
  private final Map<String, Known> files = new HashMap<>();
  private final SortedMap<String, StemGroup> groups = new TreeMap<>();
  private final Set<Known> pending = new LinkedHashSet<>();
  private final Set<StemGroup> changed = new HashSet<>();

  /** Links, pipes, half-copied files: what can never be a frame's file, by name. */
  private final Map<String, Stranger> strangers = new TreeMap<>();

  /** The groups without a picture. */
  private final Set<StemGroup> orphans = new LinkedHashSet<>();

  /** The groups that have guests. */
  private final Set<StemGroup> hosts = new HashSet<>();

  private List<Frame> frames = List.of();
  private List<Problem> problems = List.of();
  private List<NotUnderstood> notUnderstood = List.of();
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
    var gone = files.values().stream().filter(known -> !known.isOf(listing)).toList();
    gone.forEach(known -> forget(known.name));
    strangers.values().removeIf(stranger -> stranger.listing() != listing);
  }

  /** Notes what a look saw of a file, a link or whatever else is no folder. */
  void see(Path path, BasicFileAttributes attributes, Instant now) {
    var name = SpelledName.of(path);
    var known = files.get(name);
    if (known != null && known.isStill(attributes)) {
      known.stayed(now, listing);
      return;
    }
    if (Litter.isFile(name)) {
      return;
    }
    if (known != null) {
      forget(name);
    }
    var odd = Stranger.why(name, attributes);
    if (odd.isPresent()) {
      strangers.put(name, new Stranger(new NotUnderstood(path, odd.get()), listing));
      return;
    }
    strangers.remove(name);
    var role = FileRole.of(name).orElse(FileRole.COMPANION);
    var modified = attributes.lastModifiedTime().toInstant();
    var file = new FrameFile(path, attributes.size(), modified, role);
    var group = groups.computeIfAbsent(NameKey.of(Stems.of(name, role)), StemGroup::new);
    var fresh = new Known(name, file, group, attributes.fileKey(), now, listing);
    files.put(name, fresh);
    if (role != FileRole.COMPANION) {
      pending.add(fresh);
    }
    group.members.add(fresh);
    changed.add(group);
  }

  /** Notes that a file is still there, of which a look could learn no more. */
  void keep(Path path) {
    var known = files.get(SpelledName.of(path));
    if (known != null) {
      known.keep(listing);
    }
    strangers.computeIfPresent(SpelledName.of(path), (_, stranger) -> stranger.at(listing));
  }

  void forget(Path path) {
    forget(SpelledName.of(path));
  }

  private void forget(String name) {
    strangers.remove(name);
    var gone = files.remove(name);
    if (gone != null) {
      pending.remove(gone);
      gone.leave();
      changed.add(gone.group);
    }
  }

  /** Adds the files that are due to be read, and those that must be looked at again later. */
  void sort(Instant now, List<Known> due, List<Path> unsettled) {
    for (var known : List.copyOf(pending)) {
      if (known.isDue(now)) {
        due.add(known);
        changed.add(known.group);
      } else if (known.isUnsettled()) {
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
    pending.removeIf(known -> known.isGone() || known.isDone());
    for (var group : changed) {
      // A file may also have vanished between the look at it and the reading.
      group.members.stream()
          .filter(Known::isGone)
          .forEach(known -> files.remove(known.name, known));
      group.sweep();
      if (group.members.isEmpty()) {
        groups.remove(group.key);
      }
      if (group.members.isEmpty() || group.isExposed()) {
        orphans.remove(group);
      } else {
        orphans.add(group);
      }
    }
    takeIn();
    for (var group : changed) {
      group.gather(folder);
    }
    changed.clear();
    var all = new ArrayList<Frame>(groups.size());
    var wrong = new ArrayList<Problem>();
    var others = new ArrayList<NotUnderstood>();
    frameFiles = 0;
    for (var group : groups.values()) {
      all.addAll(group.frames());
      group.members.forEach(known -> known.problems(wrong));
      for (var known : group.notUnderstood()) {
        others.add(new NotUnderstood(known.file.path(), Stranger.why(known.name)));
      }
    }
    for (var frame : all) {
      frameFiles += frame.files().size();
    }
    frames = all;
    problems = wrong;
    notUnderstood = others;
  }

  /** Gives each group without a picture to the frame whose name it bears, if there is one. */
  private void takeIn() {
    if (orphans.isEmpty() && hosts.isEmpty()) {
      return;
    }
    var guests = new HashMap<StemGroup, List<Known>>();
    for (var orphan : orphans) {
      orphan.findHost(groups);
      if (orphan.host != null) {
        guests.computeIfAbsent(orphan.host, _ -> new ArrayList<>()).addAll(orphan.members);
      }
    }
    hosts.addAll(guests.keySet());
    for (var host : hosts) {
      if (host.takeIn(guests.getOrDefault(host, List.of()))) {
        changed.add(host);
      }
    }
    hosts.retainAll(guests.keySet());
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

  /** Adds what is neither a frame, nor a companion of one, nor litter. */
  void notUnderstood(List<NotUnderstood> into) {
    into.addAll(notUnderstood);
    strangers.values().forEach(stranger -> into.add(stranger.what()));
  }
}
