package org.framewright.naming;

import java.util.List;
import java.util.Map;
import org.framewright.base.Text;

/** Two sets of values that make one name: by a shape that shows too little, or by a counter. */
final class SameNameCheck {
  private final Convention convention;
  private final Report report;

  SameNameCheck(Convention convention, Report report) {
    this.convention = convention;
    this.report = report;
  }

  void check(DeclaredKind kind) {
    losses(kind);
    restarts(kind);
  }

  private void losses(DeclaredKind kind) {
    for (var show : kind.shows().values()) {
      show.shape()
          .loss()
          .ifPresent(
              loss -> {
                var first = Report.example(kind, Map.of(show.field().name(), loss.first()));
                var second = Report.example(kind, Map.of(show.field().name(), loss.second()));
                report.add(
                    Rule.SAME_NAME,
                    Severity.ERROR,
                    kind.place(),
                    Text.of(
                        "two values of {0}, {1} and {2}, make the same name, because this shape"
                            + " leaves a part out",
                        show.field().name(), loss.first(), loss.second()),
                    new Witness(first, second, List.of(Report.text(kind, first))),
                    Text.of(
                        "Show it in full, or declare a field that holds no more than this name"
                            + " shows."));
              });
    }
  }

  private void restarts(DeclaredKind kind) {
    kind.counter()
        .map(convention.declared()::get)
        .ifPresent(
            counter -> {
              for (var name : counter.restarts()) {
                var texts = convention.declared().get(name).main().texts().two();
                if (kind.shows().containsKey(name) || texts[1] == null) {
                  continue;
                }
                var values = Report.example(kind, Map.of());
                var main = convention.declared().get(name).main();
                var first = Report.with(values, name, main.value(texts[0]));
                var second = Report.with(values, name, main.value(texts[1]));
                report.add(
                    Rule.SAME_NAME,
                    Severity.ERROR,
                    kind.place(),
                    Text.of(
                        "the counter {0} restarts on {1}, which this name does not show, so that"
                            + " two of them get the same name",
                        counter.name(), name),
                    new Witness(first, second, List.of(Report.text(kind, values))),
                    Text.of("Show {0} in it, or let the counter run on.", "{" + name + "}"));
              }
            });
  }
}
