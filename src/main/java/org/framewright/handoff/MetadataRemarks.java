package org.framewright.handoff;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.SequencedMap;
import java.util.SequencedSet;
import java.util.function.Function;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** What a person should know of a package's metadata; each once, however many files it is of. */
final class MetadataRemarks {
  private static final int SHOWN = 3;

  private final SequencedMap<String, Of> remarks = new LinkedHashMap<>();

  /** One remark, of files. */
  private record Of(SequencedSet<String> files, Function<Integer, Text> what, String remedy) {
    Problem problem() {
      var shown = String.join(", ", files.stream().limit(SHOWN).toList());
      return new Problem(
          what.apply(files.size()), files.size() > SHOWN ? shown + ", …" : shown, Text.of(remedy));
    }
  }

  private void add(String key, String file, Function<Integer, Text> what, String remedy) {
    remarks
        .computeIfAbsent(key, _ -> new Of(new LinkedHashSet<>(), what, remedy))
        .files()
        .add(file);
  }

  void kept(String property, String file) {
    add(
        "kept " + property,
        file,
        count ->
            Text.counted(
                "{0} file says something else of {1}, which stays as it was written",
                "{0} files say something else of {1}, which stays as it was written",
                count,
                property),
        "To write the job's data over it, hand off with --overwrite-metadata.");
  }

  void conflict(String property, String file) {
    add(
        "conflict " + property,
        file,
        count ->
            Text.counted(
                "the older data (IIM) in {0} copy say something else of {1} than the job does",
                "the older data (IIM) in {0} copies say something else of {1} than the job does",
                count,
                property),
        "Some programs show those. Correct them in the program that wrote them.");
  }

  void sidecarLeft(Text why, String file) {
    add(
        "sidecar " + why.english(),
        file,
        count ->
            Text.counted(
                "{0} sidecar is in the package as it was, without the job's data: {1}",
                "{0} sidecars are in the package as they were, without the job's data: {1}",
                count,
                why),
        "Open the picture in the program that wrote it, and save it again.");
  }

  void notEmbedded(Text why, String file) {
    add(
        "embedded " + why.english(),
        file,
        count ->
            Text.counted(
                "{0} copy is as the frame is, and the job's data are in its sidecar only: {1}",
                "{0} copies are as the frames are, and the job's data are in their sidecars only:"
                    + " {1}",
                count,
                why),
        "");
  }

  void nameTaken(String file) {
    add(
        "taken",
        file,
        count ->
            Text.counted(
                "{0} sidecar could not be added: another file has its name",
                "{0} sidecars could not be added: other files have their names", count),
        "Check the convention: its select names meet names of other files.");
  }

  void gtinWrong(String setup) {
    add(
        "gtin",
        setup,
        count ->
            Text.counted(
                "the product number of {0} setup is none, and was left out",
                "the product numbers of {0} setups are none, and were left out", count),
        "Compare it with the label: a digit is mistyped.");
  }

  List<Problem> problems() {
    return remarks.values().stream().map(Of::problem).toList();
  }
}
