package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which of its names each file of a batch has, told from listings (a look-up would find one file
 * under two spellings) and from what the journal saw of the file.
 */
final class FileLocator {
  private final Disk disk;
  private final Journal journal;
  private final Map<Path, Set<String>> listings = new HashMap<>();
  private final Place[] places;
  private final List<StuckFile> troubles = new ArrayList<>();

  /** The file of the batch that has a name; by the exact path. */
  private final Map<String, Integer> located = new HashMap<>();

  private FileLocator(Disk disk, Journal journal) {
    this.disk = disk;
    this.journal = journal;
    this.places = new Place[journal.ops().size()];
  }

  /** Looks for every file; first clears what an interrupted move of a lower mover left behind. */
  static FileLocator find(Disk disk, Journal journal) throws IOException {
    var found = new FileLocator(disk, journal);
    for (var folder : journal.folders()) {
      var names = new HashSet<String>();
      for (var name : disk.names(folder)) {
        names.add(PathBytes.exact(name));
      }
      found.listings.put(folder, names);
    }
    found.locate();
    return found;
  }

  Place[] places() {
    return places;
  }

  /** Files that are nowhere, or in two places. */
  List<StuckFile> troubles() {
    return troubles;
  }

  boolean all(Place place) {
    for (var where : places) {
      if (where != place) {
        return false;
      }
    }
    return troubles.isEmpty();
  }

  /** What stands in the way of taking every file back to its old name. */
  List<StuckFile> obstaclesBack() {
    var obstacles = new ArrayList<StuckFile>();
    for (int i = 0; i < places.length; i++) {
      var op = journal.ops().get(i);
      if (places[i] == Place.TARGET && op.conflicted()) {
        needFree(journal.temp(op), null, obstacles);
      }
      if (places[i] != Place.SOURCE) {
        needFree(journal.source(op), Place.TARGET, obstacles);
      }
    }
    return obstacles;
  }

  /** What stands in the way of carrying every file on to its new name. */
  List<StuckFile> obstaclesForward() {
    var obstacles = new ArrayList<StuckFile>();
    for (int i = 0; i < places.length; i++) {
      var op = journal.ops().get(i);
      if (places[i] == Place.SOURCE && op.conflicted()) {
        needFree(journal.temp(op), null, obstacles);
      }
      if (places[i] != Place.TARGET) {
        needFree(journal.target(op), Place.SOURCE, obstacles);
      }
    }
    return obstacles;
  }

  /** The name must be free, or held by a conflicted file of the batch that leaves it first. */
  private void needFree(Path name, Place leaving, List<StuckFile> obstacles) {
    if (!listed(name)) {
      return;
    }
    var holder = located.get(PathBytes.exact(name));
    boolean leaves =
        holder != null
            && leaving != null
            && places[holder] == leaving
            && journal.ops().get(holder).conflicted();
    if (!leaves) {
      obstacles.add(
          new StuckFile(
              relative(name),
              "another file has taken the name " + relative(name),
              "Move that file to another name or folder, then recover again."));
    }
  }

  private void locate() throws IOException {
    var unclear = new ArrayList<Integer>();
    var missing = new ArrayList<Op>();
    var sides = EnumSet.noneOf(Place.class);
    for (int i = 0; i < places.length; i++) {
      var op = journal.ops().get(i);
      var at = candidates(op);
      if (at.size() == 2 && halves(op, at)) {
        at.remove(last(at));
      }
      if (at.size() == 1) {
        place(i, at.iterator().next());
        if (op.conflicted()) {
          sides.add(places[i]);
        }
      } else if (at.isEmpty()) {
        places[i] = Place.SOURCE;
        missing.add(op);
      } else if (at.contains(Place.TEMP) && !op.hash().isEmpty()) {
        place(i, Place.TEMP); // No other file has that name; the others only look like it.
        sides.add(Place.TEMP);
      } else if (op.conflicted() && !at.contains(Place.TEMP)) {
        unclear.add(i);
      } else {
        places[i] = Place.SOURCE;
        troubles.add(twice(op, at));
      }
    }
    // Only where files have no numbers: the file under one name equals that of another rename. A
    // barrier lies between leaving the old names and taking the new ones, so all are on one side.
    for (int i : unclear) {
      place(i, sides.contains(Place.TARGET) ? Place.TARGET : Place.SOURCE);
    }
    for (var op : missing) {
      troubles.add(missing(op));
    }
  }

  private void place(int index, Place place) {
    places[index] = place;
    located.put(PathBytes.exact(journal.path(journal.ops().get(index), place)), index);
  }

  private static Place last(Set<Place> places) {
    return places.contains(Place.TARGET) ? Place.TARGET : Place.TEMP;
  }

  private EnumSet<Place> candidates(Op op) throws IOException {
    var at = EnumSet.noneOf(Place.class);
    for (var place : Place.values()) {
      if (place == Place.TEMP && !op.conflicted()) {
        continue;
      }
      var path = journal.path(op, place);
      if (!listed(path)) {
        continue;
      }
      if (is(op, path)) {
        at.add(place);
      } else if (disk.removePlaceholder(path)) {
        unlist(path);
      }
    }
    return at;
  }

  private boolean is(Op op, Path path) throws IOException {
    var look = disk.look(path);
    return look.isFile()
        && disk.traits().same(op.seen(), look.seen())
        && (op.hash().isEmpty() || op.hash().equals(disk.hash(path)));
  }

  /** Two links of one file, left by a rename that was cut in half: the later one is removed. */
  private boolean halves(Op op, Set<Place> at) throws IOException {
    var later = journal.path(op, last(at));
    var earlier = journal.path(op, at.iterator().next());
    if (!disk.dropSecondName(earlier, later)) {
      return false;
    }
    unlist(later);
    return true;
  }

  private boolean listed(Path path) {
    return listings.get(path.getParent()).contains(PathBytes.exact(path.getFileName()));
  }

  private void unlist(Path path) {
    listings.get(path.getParent()).remove(PathBytes.exact(path.getFileName()));
  }

  private StuckFile missing(Op op) {
    for (var place : Place.values()) {
      var path = op.conflicted() || place != Place.TEMP ? journal.path(op, place) : null;
      if (path != null && listed(path) && !located.containsKey(PathBytes.exact(path))) {
        return new StuckFile(
            relative(path),
            relative(path) + " is not the file that the batch renamed, or was changed since",
            "Put the file back as it was; or close the batch and name the file by hand.");
      }
    }
    return new StuckFile(
        relative(journal.source(op)),
        "the file is neither at its old name nor at its new name, " + relative(journal.target(op)),
        "Put the file back under one of them; or close the batch without it.");
  }

  private StuckFile twice(Op op, Set<Place> at) {
    var names = at.stream().map(place -> relative(journal.path(op, place)).toString()).toList();
    return new StuckFile(
        relative(journal.source(op)),
        "one file is there twice, as " + String.join(" and ", names),
        "Remove the copy that is not needed, then recover again.");
  }

  private Path relative(Path path) {
    return journal.root().relativize(path);
  }
}
