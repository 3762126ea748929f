package org.framewright.naming;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;

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
                    "the counter "
                        + counter.name()
                        + " has numbers for "
                        + room
                        + " frames"
                        + (counter.restarts().isEmpty()
                            ? ""
                            : " of one " + String.join(", ", counter.restarts()))
                        + "; "
                        + framesPlanned
                        + " are planned",
                    new Witness(last, Report.none(), List.of(Report.text(kind, last))),
                    "Give it digits: "
                        + Long.toString(framesPlanned + shape.smallest()).length()
                        + ".");
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
            "the field " + field.name() + " shows in no name",
            null,
            "Show it as {" + field.name() + "}, or take it out.");
      }
    }
  }
}
