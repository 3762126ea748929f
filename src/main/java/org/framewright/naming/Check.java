package org.framewright.naming;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import org.framewright.base.Text;

/**
 * Proves a convention sound, or shows what is not, each fault with a witness that build confirms.
 * The proofs of one rule share an {@link Effort}, so that a hostile convention is answered, too.
 */
final class Check {
  private final Convention convention;
  private final Report report;

  Check(Convention convention, Report report) {
    this.convention = convention;
    this.report = report;
  }

  /**
   * @param framesPlanned frames planned for each run of a counter; 0 if unknown
   */
  void prove(long framesPlanned) {
    var sameName = new SameNameCheck(convention, report);
    var reading = new ReadingCheck(convention, report);
    var order = new OrderCheck(report);
    var places = new PlaceCheck(convention, report);
    // Folders first: they are short, and a hostile name must not use up their proofs.
    places.folders();
    for (var kind : convention.declaredKinds().values()) {
      if (kind.sameAs().isEmpty()) {
        sameName.check(kind);
        reading.check(kind);
        order.check(kind);
        places.check(kind);
        counterFull(kind, framesPlanned);
      }
    }
    reading.kindsApart();
    places.paths();
    unused();
  }

  private void counterFull(DeclaredKind kind, long framesPlanned) {
    kind.counter()
        .map(convention.declared()::get)
        .ifPresent(
            counter -> {
              var show = kind.shows().get(counter.name());
              var shape = (NumberShape) show.shape();
              long room = shape.largest() - shape.smallest() + 1;
              if (framesPlanned > room) {
                var last =
                    Report.example(kind, Map.of(counter.name(), Long.toString(shape.largest())));
                report.add(
                    Rule.COUNTER_FULL,
                    Severity.ERROR,
                    kind.place(),
                    counter.restarts().isEmpty()
                        ? Text.of(
                            "the counter {0} has numbers for {1} frames; {2} are planned",
                            counter.name(), room, framesPlanned)
                        : Text.of(
                            "the counter {0} has numbers for {1} frames of one {2}; {3} are"
                                + " planned",
                            counter.name(),
                            room,
                            String.join(", ", counter.restarts()),
                            framesPlanned),
                    new Witness(last, Report.none(), List.of(Report.text(kind, last))),
                    Text.of(
                        "Give it {0}.",
                        "digits: " + Long.toString(framesPlanned + shape.smallest()).length()));
              }
            });
  }

  private void unused() {
    var used = new LinkedHashSet<String>();
    convention.declaredKinds().values().forEach(kind -> used.addAll(kind.shows().keySet()));
    convention
        .declaredFolders()
        .values()
        .forEach(folder -> Part.eachShow(folder.parts(), show -> used.add(show.field().name())));
    for (var field : convention.declared().values()) {
      if (!used.contains(field.name())) {
        report.add(
            Rule.UNUSED_FIELD,
            Severity.WARNING,
            field.place(),
            Text.of("the field {0} shows in no name", field.name()),
            null,
            Text.of("Show it as {0}, or take it out.", "{" + field.name() + "}"));
      }
    }
  }
}
