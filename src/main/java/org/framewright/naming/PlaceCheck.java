package org.framewright.naming;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.SequencedMap;
import org.framewright.base.Text;

/** Names and paths that a place they travel to does not take, or takes badly. */
final class PlaceCheck {
  /** Moves that all proofs may try together, about a second's worth. */
  private static final long MOVES = 4_000_000;

  private final Effort effort = new Effort(MOVES);
  private final Convention convention;
  private final Report report;

  PlaceCheck(Convention convention, Report report) {
    this.convention = convention;
    this.report = report;
  }

  void folders() {
    convention
        .declaredFolders()
        .values()
        .forEach(folder -> portable(new Chain(folder.parts()), folder.place()));
  }

  void check(DeclaredKind kind) {
    portable(kind.chain(), kind.place());
    length(kind);
  }

  private void portable(Chain chain, Declared.Place place) {
    var reported = new LinkedHashSet<Text>();
    for (var target : convention.targets()) {
      for (var ban : Ban.at(target)) {
        if (reported.contains(ban.what())) {
          continue;
        }
        try {
          var found = new Product(effort).unwanted(chain, ban.names());
          if (found.isPresent()) {
            reported.add(ban.what());
            report.add(
                Rule.NOT_PORTABLE,
                ban.severity(),
                place,
                Text.of(
                    "“{0}” {1}: not for {2}", found.get().first(), ban.what(), target.inWords()),
                new Witness(found.get().firstValues(), Report.none(), List.of(found.get().first())),
                ban.remedy());
          }
        } catch (Effort.TooLarge e) {
          report.add(
              Rule.TOO_LARGE,
              Severity.ERROR,
              place,
              Text.of("this is too large to prove that no name {0}", ban.what()),
              null,
              Text.of("Show fewer fields or shorter ones in one name."));
          return;
        }
      }
    }
  }

  private static SequencedMap<String, String> longestValues(DeclaredKind kind, boolean bytes) {
    var values = new LinkedHashMap<String, String>();
    for (var leaf : kind.chain().leaves()) {
      if (leaf.part() instanceof Part.Show(Declared field, Shape shape)) {
        values.put(field.name(), shape.value(shape.texts().longest(bytes)));
      }
    }
    return values;
  }

  private void length(DeclaredKind kind) {
    for (var target : convention.targets()) {
      if (target == Target.RECEIVERS && kind.id().equals(Reserved.JOB)) {
        // Receivers get files, not the job's folder.
        continue;
      }
      var name = kind.chain().longest(target.countsBytes());
      int length = Dfa.weight(name, target.countsBytes());
      if (length > target.longest()) {
        var values = longestValues(kind, target.countsBytes());
        Report.confirm(kind, values, name);
        report.add(
            Rule.TOO_LONG,
            Severity.ERROR,
            kind.place(),
            Text.of(
                target.countsBytes()
                    ? "the longest name has {0} bytes; with an ending of {1}, {2} takes {3}"
                    : "the longest name has {0} characters; with an ending of {1}, {2} takes {3}",
                length,
                Target.ENDING,
                target.inWords(),
                target.longest()),
            new Witness(values, Report.none(), List.of(name)),
            Text.of("Give its longest fields a smaller length."));
        return;
      }
    }
  }

  /** The longest path of each kind, with all folders above it. */
  void paths() {
    var job = convention.declaredKinds().get(Reserved.JOB);
    if (job == null || convention.targets().stream().noneMatch(Target::limitsPaths)) {
      return;
    }
    var folder =
        convention.declaredFolders().values().stream()
            .map(declared -> new Chain(declared.parts()).longest(false))
            .reduce("", (a, b) -> a.length() >= b.length() ? a : b);
    var above = job.chain().longest(false) + "/" + folder + "/";
    for (var kind : convention.declaredKinds().values()) {
      var path = above + kind.chain().longest(false);
      int length = convention.before() + 1 + path.length() + Target.ENDING;
      if (kind != job && kind.sameAs().isEmpty() && length > Target.WINDOWS_PATH) {
        report.add(
            Rule.TOO_LONG,
            Severity.WARNING,
            kind.place(),
            Text.of(
                "the longest path has {0} characters, {1} of them for the folder that jobs lie in;"
                    + " Windows takes {2}",
                length, convention.before(), Target.WINDOWS_PATH),
            new Witness(longestValues(job, false), longestValues(kind, false), List.of(path)),
            Text.of("Give the longest fields a smaller length, or a smaller before:."));
      }
    }
  }
}
