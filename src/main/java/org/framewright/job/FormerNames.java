package org.framewright.job;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.SequencedSet;
import java.util.Set;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.renaming.Batch;
import org.framewright.renaming.BatchState;
import org.framewright.renaming.RenameRequest;
import org.framewright.renaming.Renamer;

/** The paths that a job's files had before they were renamed, by the journals of its renames. */
public final class FormerNames {
  /** Renames that are read; of a job with more, the oldest are left out. */
  private static final long MOST = 2_000_000;

  private final Path root;
  private final Map<Path, SequencedSet<Path>> byPath = new HashMap<>();

  /** The other way round, made when somebody first asks. */
  private final Map<Path, List<Path>> byFormer = new HashMap<>();

  private final List<Problem> problems = new ArrayList<>();

  /** Batches that take one back which is no such batch itself. */
  private final Set<String> undos = new HashSet<>();

  private FormerNames(Path root) {
    this.root = root;
  }

  /** Reads the journals of a job. */
  public static FormerNames of(Job job) throws IOException {
    var renamer = Renamer.in(job.folder());
    var names = new FormerNames(job.folder());
    var batches = renamer.batches();
    long left = MOST - batches.stream().mapToLong(Batch::renames).sum();
    for (var batch : batches) {
      if (left < 0) {
        left += batch.renames();
        names.unknown(batch, Text.of("there are more renames than are looked up"));
      } else if (batch.state() == BatchState.UNREADABLE) {
        names.unknown(batch, batch.damage());
      } else if (batch.state() == BatchState.DONE) {
        names.read(renamer, batch);
      }
    }
    return names;
  }

  private void unknown(Batch batch, Text why) {
    problems.add(
        new Problem(
            Text.of(
                "the names that files had before the rename {0} are not known: {1}",
                batch.id(), why),
            root.toString(),
            "See: framewright batches JOB. Names of that time are told as unknown."));
  }

  private void read(Renamer renamer, Batch batch) {
    boolean undo = batch.undoes().filter(undone -> !undos.contains(undone)).isPresent();
    if (undo) {
      undos.add(batch.id());
    }
    try {
      take(renamer.renames(batch.id()), undo);
    } catch (IOException e) {
      unknown(batch, FileProblems.of(e).fault());
    }
  }

  /** The renames of a batch are all at once, so that two files may have changed their names. */
  private void take(List<RenameRequest> renames, boolean undo) {
    var now = new HashMap<Path, SequencedSet<Path>>();
    for (var rename : renames) {
      var names = byPath.remove(rename.from());
      names = names == null ? new LinkedHashSet<>() : names;
      if (undo) {
        // A name that was taken back at once is nobody's.
        names.remove(rename.to());
      } else {
        names.add(rename.from());
      }
      now.put(rename.to(), names);
    }
    byPath.putAll(now);
  }

  /** The paths that a file had, oldest first; none where it was never renamed. */
  public List<Path> of(Path file) {
    var names = file.startsWith(root) ? byPath.get(root.relativize(file)) : null;
    return names == null ? List.of() : names.stream().map(root::resolve).toList();
  }

  /** The name, without ending, that a frame came with, as far as that is known. */
  String first(Frame frame) {
    var file = frame.primary();
    var paths = of(file.path());
    if (paths.isEmpty()) {
      return frame.stem();
    }
    var name = paths.getFirst().getFileName().toString();
    var ending = frame.ending(file);
    return !ending.isEmpty() && name.endsWith(ending)
        ? name.substring(0, name.length() - ending.length())
        : name.replaceFirst("\\.[^.]*$", "");
  }

  /** The paths that files have now which had this one before. */
  public List<Path> now(Path before) {
    if (!before.startsWith(root)) {
      return List.of();
    }
    if (byFormer.isEmpty()) {
      byPath.forEach(
          (now, names) ->
              names.forEach(
                  name -> byFormer.computeIfAbsent(name, _ -> new ArrayList<>()).add(now)));
    }
    return byFormer.getOrDefault(root.relativize(before), List.of()).stream()
        .map(root::resolve)
        .toList();
  }

  /** The batches whose names are not known, and why. */
  public List<Problem> problems() {
    return List.copyOf(problems);
  }
}
