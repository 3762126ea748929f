package org.framewright.shotlist;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.base.Text;

/** Finds, at their lines, the setups of which no names can be made. */
final class FitCheck {
  /** Where this share of a column does not fit, it is the wrong one. */
  private static final int HALF = 2;

  private final ListColumns columns;
  private final ListRequest request;
  private final ListNotes notes;
  private final Map<String, Cell> names = new HashMap<>();
  private final Set<String> missing = new HashSet<>();
  private int misfits;

  FitCheck(ListColumns columns, ListRequest request, ListNotes notes) {
    this.columns = columns;
    this.request = request;
    this.notes = notes;
  }

  void check(Setup setup, Cell code, List<Cell> row) {
    var made = request.fit().make(setup);
    for (var misfit : made.misfits()) {
      misfits += misfit.field().equals("setup") ? 1 : 0;
      var column = column(misfit.field());
      if (column < 0 && misfit.value().isEmpty()) {
        if (missing.add(misfit.field())) {
          notes.problem(
              code, misfit.what(), misfit.remedy(), "--column " + misfit.field() + "=HEADING");
        }
        continue;
      }
      var cell =
          misfit.field().equals("setup")
              ? code
              : column >= 0 && column < row.size() ? row.get(column) : code;
      notes.problem(cell, misfit.what(), misfit.remedy());
    }
    if (made.misfits().isEmpty() && made.name().isPresent()) {
      var other = names.putIfAbsent(made.name().get(), code);
      if (other != null) {
        notes.problem(
            code,
            Text.of(
                "setup {0} would get the same names as {1} in line {2}",
                code.brief(), other.brief(), other.line()),
            Text.of("Give one of the two another code."));
      }
    }
  }

  private int column(String field) {
    return switch (field) {
      case "setup" -> columns.of(Heading.SETUP);
      case "view" -> Math.max(columns.of(Heading.VIEWS), columns.of(Heading.VIEW));
      default -> columns.filling(field, request.fit()).orElse(-1);
    };
  }

  /**
   * Offers the columns that fit, where the one that was taken does not.
   *
   * @param rows of all setups
   */
  void end(List<List<Cell>> rows) {
    if (misfits * HALF <= rows.size()) {
      return;
    }
    for (int i = 0; i < columns.headings().size(); i++) {
      var values = ColumnValues.of(rows, i, request.fit());
      if (columns.meanings().get(i) != Heading.SETUP
          && columns.meanings().get(i) != Heading.FROM_JOB
          && values.areCodes()
          && values.fits()) {
        var heading = columns.headings().get(i);
        notes.offer(
            Text.of("the setup from \"{0}\"", Cell.brief(heading)),
            request.options().withColumn("setup", heading));
      }
    }
  }
}
