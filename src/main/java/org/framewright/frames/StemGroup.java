package org.framewright.frames;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.base.NameKey;

/** The files of one stem; mostly there are one or two, and there are many thousand groups. */
final class StemGroup {
  private static final Comparator<Known> RAW_FIRST =
      Comparator.comparing((Known known) -> known.file.role())
          .thenComparing(known -> known.file.path());

  final String key;

  final List<Known> members = new ArrayList<>(2);
  private List<Frame> frames = List.of();

  /** The files of other groups that bear this one's name; nearly always none. */
  private List<Known> guests = List.of();

  /** Whether it has a picture or a clip. */
  private boolean exposed;

  /** Made when they are asked for: of thousands of groups few have no picture. */
  private List<String> hostKeys;

  private Optional<String> clipKey = Optional.empty();

  /** Of a group without a picture, the one that takes its files in. */
  StemGroup host;

  /** Members that bear the name of no frame, letter by letter. */
  private List<Known> alone = List.of();

  StemGroup(String key) {
    this.key = key;
  }

  /** Lets go of the members that are gone. */
  void sweep() {
    members.removeIf(Known::isGone);
    host = null;
    exposed = members.stream().anyMatch(Known::isExposure);
  }

  /**
   * Of a group without a picture: finds the one whose name its files bear; null if none is there.
   */
  void findHost(Map<String, StemGroup> groups) {
    if (hostKeys == null) {
      hostKeys = Stems.shorter(key);
      clipKey = Stems.clipOf(key);
    }
    host = clipKey.map(groups::get).filter(StemGroup::hasClip).orElse(null);
    for (var shorter : hostKeys) {
      var group = groups.get(shorter);
      if (group != null && group.exposed) {
        host = group;
        return;
      }
    }
  }

  boolean isExposed() {
    return exposed;
  }

  /** Takes in the files of other groups; answers whether they are others than before. */
  boolean takeIn(List<Known> others) {
    boolean fresh = !guests.equals(others);
    guests = others;
    return fresh;
  }

  boolean hasClip() {
    return members.stream().anyMatch(known -> known.file.role() == FileRole.VIDEO);
  }

  /** The members that belong to no frame. */
  List<Known> notUnderstood() {
    return !exposed && host == null ? members : alone;
  }

  List<Frame> frames() {
    return frames;
  }

  /** Makes its frames anew. */
  void gather(Path folder) {
    alone = List.of();
    if (!exposed) {
      frames = List.of();
    } else if (haveOneNameTwice(members)) {
      // Only a file system that distinguishes letter case can hold these; so they are two frames.
      apart(folder);
    } else {
      frames = frame(folder, joined(members, guests)).map(List::of).orElse(List.of());
    }
  }

  private void apart(Path folder) {
    var byStem = new TreeMap<String, List<Known>>();
    for (var known : members) {
      byStem.computeIfAbsent(known.stem(), _ -> new ArrayList<>()).add(known);
    }
    var made = new ArrayList<Frame>();
    alone = new ArrayList<>();
    for (var some : byStem.values()) {
      boolean first = made.isEmpty() && some.stream().anyMatch(Known::isExposure);
      frame(folder, first ? joined(some, guests) : some)
          .ifPresentOrElse(made::add, () -> alone.addAll(some));
    }
    frames = made;
  }

  private static List<Known> joined(List<Known> members, List<Known> guests) {
    if (guests.isEmpty()) {
      return members;
    }
    var all = new ArrayList<>(members);
    all.addAll(guests);
    return all;
  }

  private static boolean haveOneNameTwice(List<Known> members) {
    if (members.size() == 1) {
      return false;
    }
    var names = new HashSet<String>();
    return !members.stream().allMatch(known -> names.add(NameKey.of(known.name)));
  }

  private static Optional<Frame> frame(Path folder, List<Known> some) {
    var sorted = some.stream().sorted(RAW_FIRST).toList();
    var first = sorted.getFirst();
    if (!first.isExposure()) {
      return Optional.empty();
    }
    var files = new ArrayList<FrameFile>(sorted.size());
    var ids = new LinkedHashSet<FrameId>();
    boolean complete = true;
    for (var known : sorted) {
      files.add(known.file);
      if (known.isExposure()) {
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
    var label = Optional.<String>empty();
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
      if (read.label().isPresent()) {
        label = read.label();
      }
    }
    var made = new Capture(dated.time(), dated.offset(), camera, rating, label);
    return made.equals(dated) ? dated : made;
  }
}
