package org.framewright.naming;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import org.framewright.base.Text;

/** Names that cannot be distinguished: read in two ways, as two kinds, or folded into one. */
final class ReadingCheck {
  /** Moves that all proofs of one rule may try together, about a second's worth. */
  private static final long MOVES = 4_000_000;

  private final Effort toRead = new Effort(MOVES);
  private final Effort toFold = new Effort(MOVES);
  private final Effort toSeparate = new Effort(MOVES);
  private final Convention convention;
  private final Report report;

  ReadingCheck(Convention convention, Report report) {
    this.convention = convention;
    this.report = report;
  }

  void check(DeclaredKind kind) {
    report.prove(kind, Rule.TWO_READINGS, () -> readings(kind));
    report.prove(kind, Rule.CASE_CLASH, () -> caseClash(kind));
  }

  private void readings(DeclaredKind kind) throws Effort.TooLarge {
    var found = new Product(toRead).ambiguity(kind.chain());
    if (found.isEmpty()) {
      return;
    }
    Report.confirm(kind, kind, found.get());
    var fields = new LinkedHashSet<String>();
    kind.shows()
        .keySet()
        .forEach(
            name -> {
              var first = found.get().firstValues().get(name);
              var second = found.get().secondValues().get(name);
              if (first == null ? second != null : !first.equals(second)) {
                fields.add(name);
              }
            });
    report.add(
        Rule.TWO_READINGS,
        Severity.ERROR,
        kind.place(),
        Text.of(
            "“{0}” can be read in two ways, and two sets of values make it: nothing in it shows"
                + " where {1} begin and end",
            found.get().first(), Series.of(fields.stream().limit(3).toList())),
        Report.witness(found.get()),
        Text.of(
            "Put text between them that none of their values can contain, or give them a fixed"
                + " length."));
  }

  /** Names that belong to two kinds. */
  void kindsApart() {
    var kinds = List.copyOf(convention.declaredKinds().values());
    for (int i = 0; i < kinds.size(); i++) {
      var one = kinds.get(i);
      if (one.sameAs().isPresent()) {
        sameAs(one);
        continue;
      }
      for (int j = i + 1; j < kinds.size(); j++) {
        var other = kinds.get(j);
        if (other.sameAs().isEmpty()) {
          report.prove(other, Rule.WRONG_KIND, () -> apart(one, other));
        }
      }
    }
  }

  private void apart(DeclaredKind one, DeclaredKind other) throws Effort.TooLarge {
    var found = new Product(toSeparate).intersection(one.chain(), other.chain());
    if (found.isPresent()) {
      Report.confirm(one, other, found.get());
      report.add(
          Rule.WRONG_KIND,
          Severity.ERROR,
          other.place(),
          Text.of(
              "“{0}” can be read as a {1} name and as a {2} name",
              found.get().first(), one.id(), other.id()),
          Report.witness(found.get()),
          Text.of(
              "Give one of them a text that the other cannot have, or write {0} if their names are"
                  + " to be the same.",
              "{" + one.id() + "}"));
    }
  }

  private void sameAs(DeclaredKind kind) {
    var original = convention.declaredKinds().get(kind.sameAs().orElseThrow());
    var values = Report.example(kind, Map.of());
    report.add(
        Rule.WRONG_KIND,
        Severity.NOTE,
        kind.place(),
        Text.of(
            "a {0} keeps the name of its {1}; only the folder shows which of the two it is",
            kind.id(), original.id()),
        new Witness(values, values, List.of(Report.text(kind, values))),
        Text.of("Nothing, if that is meant."));
  }

  private void caseClash(DeclaredKind kind) throws Effort.TooLarge {
    var folding =
        convention.targets().stream().filter(Target::foldsCase).map(Target::inWords).toList();
    if (folding.isEmpty()) {
      return;
    }
    var found = new Product(toFold).caseClash(kind.chain());
    if (found.isPresent()) {
      Report.confirm(kind, kind, found.get());
      report.add(
          Rule.CASE_CLASH,
          Severity.WARNING,
          kind.place(),
          Text.of(
              "“{0}” and “{1}” are one and the same on {2}",
              found.get().first(), found.get().second(), Series.listed(folding)),
          Report.witness(found.get()),
          Text.of(
              "Give the field capital or small letters only, with {0} or {1}.",
              "letters: upper", "letters: lower"));
    }
  }
}
