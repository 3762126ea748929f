package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.base.Text;

/**
 * Finds which of its names each file of a batch has, by listings (a look-up would find one file
 * under two spellings) and by what the journal saw of the file.
 */
final class FileLocator {
  private final Disk disk;
  private final Journal journal;
  private final Recognition recognition;
  private final Map<Path, ListedNames> listings = new HashMap<>();
  private final Position[] positions;
  private final List<StuckFile> troubles = new ArrayList<>();

  /** The file of the batch that has a name; by the path as the volume spells it. */
  private final Map<String, Integer> located = new HashMap<>();

  private FileLocator(Disk disk, Journal journal, Recognition recognition) {
    this.disk = disk;
    this.journal = journal;
    this.recognition = recognition;
    this.positions = new Position[journal.ops().size()];
  }

  /**
   * Looks for every file; first clears what an interrupted move of a mover without the native call
   * left behind.
   */
  static FileLocator find(Disk disk, Journal journal, Recognition recognition) throws IOException {
    var found = new FileLocator(disk, journal, recognition);
    for (var folder : journal.folders()) {
      found.listings.put(folder, ListedNames.of(disk, folder));
    }
    found.locate();
    return found;
  }

  Position[] positions() {
    return positions;
  }

  /** Files that are nowhere, in two places, or not to be distinguished from another one. */
  List<StuckFile> troubles() {
    return troubles;
  }

  boolean all(Position position) {
    for (var at : positions) {
      if (at != position) {
        return false;
      }
    }
    return troubles.isEmpty();
  }

  /** What stands in the way of taking every file back to its old name. */
  List<StuckFile> obstaclesBack() throws IOException {
    var obstacles = new ArrayList<StuckFile>();
    for (int i = 0; i < positions.length; i++) {
      var op = journal.ops().get(i);
      if (positions[i] == Position.TARGET && op.conflicted()) {
        needFree(journal.temp(op), null, obstacles);
      }
      if (positions[i] != Position.SOURCE) {
        needFree(journal.source(op), Position.TARGET, obstacles);
      }
    }
    return obstacles;
  }

  /** What stands in the way of carrying every file on to its new name. */
  List<StuckFile> obstaclesForward() throws IOException {
    var obstacles = new ArrayList<StuckFile>();
    for (int i = 0; i < positions.length; i++) {
      var op = journal.ops().get(i);
      if (positions[i] == Position.SOURCE && op.conflicted()) {
        needFree(journal.temp(op), null, obstacles);
      }
      if (positions[i] != Position.TARGET) {
        needFree(journal.target(op), Position.SOURCE, obstacles);
      }
    }
    return obstacles;
  }

  /** The name must be free, or held by a conflicted file of the batch that leaves it first. */
  private void needFree(Path name, Position leaving, List<StuckFile> obstacles) throws IOException {
    if (!listed(name)) {
      return;
    }
    var holder = located.get(spelled(name));
    boolean leaves =
        holder != null
            && leaving != null
            && positions[holder] == leaving
            && journal.ops().get(holder).conflicted();
    if (!leaves) {
      obstacles.add(
          new StuckFile(
              relative(name),
              Text.of("another file has taken the name {0}", relative(name)),
              Text.of("Move that file to another name or folder, then recover again.")));
    }
  }

  private void locate() throws IOException {
    var unclear = new ArrayList<Integer>();
    var missing = new ArrayList<Op>();
    var sides = EnumSet.noneOf(Position.class);
    for (int i = 0; i < positions.length; i++) {
      var op = journal.ops().get(i);
      var at = candidates(op);
      if (at.size() == 2 && halves(op, at)) {
        at.remove(last(at));
      }
      if (at.size() == 1) {
        found(i, at.iterator().next());
        if (op.conflicted()) {
          sides.add(positions[i]);
        }
      } else if (at.isEmpty()) {
        positions[i] = Position.SOURCE;
        missing.add(op);
      } else if (at.contains(Position.TEMP) && recognition.mayMistake(op)) {
        found(i, Position.TEMP); // No other file has that name; the others only look like it.
        sides.add(Position.TEMP);
      } else if (op.conflicted() && !at.contains(Position.TEMP)) {
        unclear.add(i);
      } else {
        positions[i] = Position.SOURCE;
        troubles.add(twice(op, at));
      }
    }
    for (int i : unclear) {
      decide(i, sides);
    }
    for (var op : missing) {
      troubles.add(missing(op));
    }
  }

  /**
   * Only where files have no numbers that hold: the file under one name is like that of another
   * rename. A barrier lies between leaving the old names and taking the new ones, so all conflicted
   * files are on one side of it; and if nothing shows which side, files of equal hashes may be
   * exchanged, others not.
   */
  private void decide(int index, Set<Position> sides) throws IOException {
    var op = journal.ops().get(index);
    boolean isNew = sides.contains(Position.TARGET);
    if (recognition.mayDiffer(op) && isNew == sides.contains(Position.SOURCE)) {
      positions[index] = Position.SOURCE;
      troubles.add(
          new StuckFile(
              relative(journal.source(op)),
              Text.of(
                  "in this copy of the folder nothing shows whether the file is at its old name or"
                      + " at {0}",
                  relative(journal.target(op))),
              Text.of("Recover in the folder that this one was copied from; or close the batch.")));
      return;
    }
    found(index, isNew ? Position.TARGET : Position.SOURCE);
  }

  private void found(int index, Position position) throws IOException {
    positions[index] = position;
    var path = journal.path(journal.ops().get(index), position);
    if (located.putIfAbsent(spelled(path), index) != null) {
      troubles.add(
          new StuckFile(
              relative(path),
              Text.of("two renames of the batch claim the file {0}", relative(path)),
              Text.of("Look at the journal; close the batch and name the file by hand.")));
    }
  }

  private static Position last(Set<Position> at) {
    return at.contains(Position.TARGET) ? Position.TARGET : Position.TEMP;
  }

  private EnumSet<Position> candidates(Op op) throws IOException {
    var at = EnumSet.noneOf(Position.class);
    for (var position : Position.values()) {
      if (position == Position.TEMP && !op.conflicted()) {
        continue;
      }
      var path = journal.path(op, position);
      if (!listed(path)) {
        continue;
      }
      if (recognition.is(op, path)) {
        at.add(position);
      } else if (disk.removePlaceholder(path)) {
        unlist(path);
      }
    }
    return at;
  }

  /** Two links of one file, left by a rename that was cut in half: the later one is removed. */
  private boolean halves(Op op, Set<Position> at) throws IOException {
    var later = journal.path(op, last(at));
    var earlier = journal.path(op, at.iterator().next());
    if (!disk.dropSecondName(earlier, later)) {
      return false;
    }
    unlist(later);
    return true;
  }

  private boolean listed(Path path) throws IOException {
    return listings.get(path.getParent()).spelling(path.getFileName()).isPresent();
  }

  private void unlist(Path path) {
    listings.get(path.getParent()).remove(path.getFileName());
  }

  /** The path with its last name as the volume spells it; the same for one file only. */
  private String spelled(Path path) throws IOException {
    var name = path.getFileName();
    return PathBytes.exact(path.getParent())
        + "/"
        + listings.get(path.getParent()).spelling(name).orElse(PathBytes.exact(name));
  }

  private StuckFile missing(Op op) throws IOException {
    for (var position : Position.values()) {
      var path = op.conflicted() || position != Position.TEMP ? journal.path(op, position) : null;
      if (path != null && listed(path) && !located.containsKey(spelled(path))) {
        return new StuckFile(
            relative(path),
            Text.of(
                "{0} is not the file that the batch renamed, or was changed since", relative(path)),
            Text.of("Put the file back as it was; or close the batch and name the file by hand."));
      }
    }
    return new StuckFile(
        relative(journal.source(op)),
        Text.of(
            "the file is neither at its old name nor at its new name, {0}",
            relative(journal.target(op))),
        disk.traits().atomicRename()
            ? Text.of("Put the file back under one of them; or close the batch without it.")
            : Text.of(
                "A power cut can take a file's name on this volume. Let the system check the"
                    + " volume: that brings such a file back under another name. Put it under one"
                    + " of these; or close the batch without it."));
  }

  private StuckFile twice(Op op, Set<Position> at) {
    var names =
        at.stream().map(position -> relative(journal.path(op, position)).toString()).toList();
    return new StuckFile(
        relative(journal.source(op)),
        Text.of("one file is there twice, as {0}", String.join(" and ", names)),
        disk.traits().atomicRename()
            ? Text.of("Remove the copy that is not needed, then recover again.")
            : Text.of(
                "A power cut can give a file two names on this volume, and to remove one may take"
                    + " the content of both. Copy the file to another disk and let the system check"
                    + " the volume; then remove the name that is not needed, and recover again."));
  }

  private Path relative(Path path) {
    return journal.root().relativize(path);
  }
}
