package org.framewright.handoff;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.handoff.names.KnownName;
import org.framewright.handoff.names.NamesRead;
import org.framewright.job.FormerNames;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/**
 * Reads clients' lists against all names that the frames of a job have or had. The names are
 * gathered once, from the frames, the journals of renames and the records of hand-offs; what
 * changes afterwards is not seen. May be used by any thread, one at a time or several.
 */
public final class ClientListReader {
  /** Bytes of a list that are read. */
  public static final int LARGEST = 4 << 20;

  private final List<Frame> frames;
  private final List<String> called;
  private final List<KnownName> names;
  private final List<Problem> problems;

  private ClientListReader(
      List<Frame> frames, List<String> called, List<KnownName> names, List<Problem> problems) {
    this.frames = List.copyOf(frames);
    this.called = List.copyOf(called);
    this.names = List.copyOf(names);
    this.problems = List.copyOf(problems);
  }

  static ClientListReader of(Job job, FrameScan scan) throws IOException {
    var frames = scan.distinct();
    var former = FormerNames.of(job);
    var called = frames.stream().map(frame -> FramePaths.original(job, frame)).toList();
    return new ClientListReader(
        frames, called, names(job, scan, frames, former), former.problems());
  }

  /**
   * Reads a file.
   *
   * @throws JobException where the file is no text, or no list of this job's frames
   */
  public ClientNames read(Path file) throws IOException, JobException {
    var bytes =
        BoundedFile.read(file, LARGEST)
            .orElseThrow(
                () ->
                    new JobException(
                        Text.of("this is larger than any list of names"),
                        file.toString(),
                        Text.of("Give a text file with the names of the frames wanted.")));
    return read(bytes, file.getFileName().toString(), file.toString());
  }

  /**
   * Reads a text, as somebody pasted it.
   *
   * @param called what the list is called, in the package's papers too
   * @throws JobException where it is no list of this job's frames
   */
  public ClientNames read(String text, String called) throws JobException {
    return read(text.getBytes(StandardCharsets.UTF_8), called, called);
  }

  private ClientNames read(byte[] bytes, String file, String where) throws JobException {
    try {
      var read = NamesRead.of(bytes, where, names);
      var remarks = new ArrayList<>(problems);
      read.remark().ifPresent(what -> remarks.add(new Problem(what, where, "")));
      return new ClientNames(file, read, frames, called, remarks);
    } catch (FileProblemException e) {
      throw new JobException(e.problem());
    }
  }

  /** Whether both speak of the same frames by the same numbers. */
  public boolean knowsTheSameFrames(ClientListReader other) {
    return called.equals(other.called);
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
}
