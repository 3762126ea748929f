package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.base.FileProblemException;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.handoff.names.KnownName;
import org.framewright.handoff.names.NamesRead;
import org.framewright.handoff.names.Piece;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/**
 * A client's list of the frames wanted, read against the frames of a job: by the names they have,
 * the names they had before renames, and the names they were handed off under.
 *
 * @param file the list's name
 * @param read what each line was taken for
 * @param known the frames that the list may name; {@code read} speaks of them by their index here
 * @param remarks what a person should know of the file, and of names that could not be read
 */
public record ClientNames(
    String file, NamesRead read, List<Frame> known, List<String> called, List<Problem> remarks) {
  private static final int LARGEST = 4 << 20;

  /**
   * @param called how each of the known frames is called in words: by its path below the frames
   *     folder, without ending
   */
  public ClientNames {
    known = List.copyOf(known);
    called = List.copyOf(called);
    remarks = List.copyOf(remarks);
  }

  static ClientNames read(Job job, FrameScan scan, Path file) throws IOException, JobException {
    var bytes =
        BoundedFile.read(file, LARGEST)
            .orElseThrow(
                () ->
                    new JobException(
                        "this is larger than any list of names",
                        file.toString(),
                        "Give a text file with the names of the frames wanted."));
    var frames = scan.distinct();
    var former = FormerNames.of(job);
    var called = frames.stream().map(frame -> FramePaths.original(job, frame)).toList();
    var remarks = new ArrayList<>(former.problems());
    try {
      var read = NamesRead.of(bytes, file.toString(), names(job, scan, frames, former));
      read.remark().ifPresent(what -> remarks.add(new Problem(what, file.toString(), "")));
      return new ClientNames(file.getFileName().toString(), read, frames, called, remarks);
    } catch (FileProblemException e) {
      throw new JobException(e.problem());
    }
  }

  /** Every name of every frame, each once. */
  private static List<KnownName> names(
      Job job, FrameScan scan, List<Frame> frames, FormerNames former) throws IOException {
    var numbers = HashMap.<FrameId, Integer>newHashMap(frames.size());
    for (var frame : frames) {
      numbers.putIfAbsent(frame.id(), numbers.size());
    }
    var names = new ArrayList<KnownName>();
    var byName = new HashMap<String, Set<Integer>>();
    for (var frame : scan.frames()) {
      int number = numbers.get(frame.id());
      var own = new LinkedHashMap<String, KnownName>();
      add(own, number, FramePaths.original(job, frame), KnownName.Kind.NOW);
      for (var file : frame.files()) {
        for (var before : former.of(file.path())) {
          add(own, number, FramePaths.stem(job, before), KnownName.Kind.BEFORE);
        }
      }
      own.keySet()
          .forEach(key -> byName.computeIfAbsent(key, _ -> new LinkedHashSet<>()).add(number));
      names.addAll(own.values());
    }
    names.addAll(selects(job, byName));
    return names;
  }

  private static void add(Map<String, KnownName> own, int frame, String text, KnownName.Kind kind) {
    own.putIfAbsent(NameKey.of(text), new KnownName(frame, text, kind));
  }

  /** The names under which frames were handed off, by the names that they had then. */
  private static List<KnownName> selects(Job job, Map<String, Set<Integer>> byName)
      throws IOException {
    var names = new LinkedHashSet<KnownName>();
    for (var record : HandOffRecords.of(job).read().usable().values()) {
      for (var select : record.selects()) {
        for (int frame : byName.getOrDefault(NameKey.of(select.original()), Set.of())) {
          names.add(new KnownName(frame, select.select(), KnownName.Kind.SELECT));
        }
      }
    }
    return List.copyOf(names);
  }

  /** The frames that are named without a doubt, each once, in the order of the list. */
  public List<Frame> frames() {
    return read.frames().stream().map(known::get).toList();
  }

  /** How a frame is called in words. */
  public String called(int frame) {
    return called.get(frame);
  }

  /** The lines of which a person has to say what is meant. */
  public List<NamesRead.Line> unclear() {
    return read.unclear();
  }

  /** How many names are taken for a frame or several. */
  public long taken() {
    return read.lines().stream()
        .flatMap(line -> line.pieces().stream())
        .filter(piece -> piece instanceof Piece.Taken)
        .count();
  }
}
