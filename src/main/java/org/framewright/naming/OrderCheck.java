package org.framewright.naming;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.Text;

/** Names whose order is not the order of time. */
final class OrderCheck {
  /** Pairs of values that the proof may try, about a second's worth. */
  private static final long VALUES = 500_000;

  private final Effort effort = new Effort(VALUES);
  private final Report report;

  /** Shapes of dates that do not sort. */
  private final Set<Shape> reported = new HashSet<>();

  OrderCheck(Report report) {
    this.report = report;
  }

  void check(DeclaredKind kind) {
    report.prove(kind, Rule.SORT_ORDER, () -> sortOrder(kind));
  }

  private void sortOrder(DeclaredKind kind) throws Effort.TooLarge {
    var order = new SortOrder(kind, effort);
    if (!order.showsTime()) {
      return;
    }
    sorted(kind, order);
    if (kind.id().equals(Reserved.JOB)) {
      dateFirst(kind);
    }
  }

  /** Where the texts of a date alone are out of order, that is the mistake, reported once. */
  private void sorted(DeclaredKind kind, SortOrder order) throws Effort.TooLarge {
    var byBytes = order.inversion(Compare.bytes());
    var found = byBytes.isPresent() ? byBytes : order.inversion(Compare.numbers());
    if (found.isEmpty()) {
      return;
    }
    Report.confirm(kind, kind, found.get());
    var date = dateOutOfOrder(kind);
    if (date.isPresent() && !reported.add(date.get().shape())) {
      return;
    }
    report.add(
        Rule.SORT_ORDER,
        Severity.WARNING,
        date.map(show -> show.field().place()).orElse(kind.place()),
        Text.of(
            byBytes.isPresent()
                ? "“{0}” is earlier than “{1}” and comes after it in byte order"
                : "“{0}” is earlier than “{1}” and comes after it in the order of file browsers, by"
                    + " numbers",
            found.get().first(),
            found.get().second()),
        Report.witness(found.get()),
        Text.of(
            "Write year, month and day in this order with all their digits, the counter after them"
                + " and with a fixed number of digits."));
  }

  /** The first date whose texts alone are out of order. */
  private Optional<Part.Show> dateOutOfOrder(DeclaredKind kind) throws Effort.TooLarge {
    for (var show : kind.shows().values()) {
      if (show.shape() instanceof DateShape && outOfOrder(show)) {
        return Optional.of(show);
      }
    }
    return Optional.empty();
  }

  private boolean outOfOrder(Part.Show show) throws Effort.TooLarge {
    var alone = new DeclaredKind("", "", List.of(show), Optional.empty(), show.field().place());
    var order = new SortOrder(alone, effort);
    return order.inversion(Compare.bytes()).isPresent()
        || order.inversion(Compare.numbers()).isPresent();
  }

  /** That a job's date comes first is common practice, no source. */
  private void dateFirst(DeclaredKind kind) {
    var first = kind.chain().leaves().getFirst();
    if (first.part() instanceof Part.Show(Declared field, Shape shape)
        && field.type() != FieldType.DATE
        && kind.shows().values().stream().anyMatch(show -> show.field().type() == FieldType.DATE)
        && shape.texts().two()[1] != null) {
      var date =
          kind.shows().values().stream()
              .filter(show -> show.field().type() == FieldType.DATE)
              .findFirst()
              .orElseThrow();
      var dates = date.shape().texts().two();
      var others = shape.texts().two();
      boolean rising = others[0].compareTo(others[1]) < 0;
      var early = date.shape().value(dates[0]);
      var late = date.shape().value(dates[1]);
      boolean inOrder = early.compareTo(late) < 0;
      var name = field.name();
      var values = Report.example(kind, Map.of());
      var earlier =
          Report.with(
              Report.with(values, date.field().name(), inOrder ? early : late),
              name,
              shape.value(rising ? others[1] : others[0]));
      var later =
          Report.with(
              Report.with(values, date.field().name(), inOrder ? late : early),
              name,
              shape.value(rising ? others[0] : others[1]));
      report.add(
          Rule.SORT_ORDER,
          Severity.NOTE,
          kind.place(),
          Text.of(
              "jobs sort by {0} before they sort by time, since the date does not come first",
              name),
          new Witness(
              earlier, later, List.of(Report.text(kind, earlier), Report.text(kind, later))),
          Text.of("Put the date first, if jobs are to stand in the order of time."));
    }
  }
}
