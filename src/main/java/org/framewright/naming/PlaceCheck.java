package org.framewright.naming;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.SequencedMap;

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
    var reported = new LinkedHashSet<String>();
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
                "“" + found.get().first() + "” " + ban.what() + ": not for " + target.inWords(),
                new Witness(found.get().firstValues(), Report.none(), List.of(found.get().first())),
                ban.remedy());
          }
        } catch (Effort.TooLarge e) {
          report.add(
              Rule.TOO_LARGE,
              Severity.ERROR,
              place,
              "this is too large to prove that no name " + ban.what(),
              null,
              "Show fewer fields or shorter ones in one name.");
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
            "the longest name has "
                + length
                + (target.countsBytes() ? " bytes" : " characters")
                + "; with an ending of "
                + Target.ENDING
                + ", "
                + target.inWords()
                + " takes "
                + target.longest(),
            new Witness(values, Report.none(), List.of(name)),
            "Give its longest fields a smaller length.");
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
            "the longest path has "
                + length
                + " characters, "
                + convention.before()
                + " of them for the folder that jobs lie in; Windows takes "
                + Target.WINDOWS_PATH,
            new Witness(longestValues(job, false), longestValues(kind, false), List.of(path)),
            "Give the longest fields a smaller length, or a smaller before:.");
      }
    }
  }
}
