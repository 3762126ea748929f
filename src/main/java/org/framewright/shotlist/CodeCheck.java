package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.Text;

/** Asks about what a spreadsheet may have made of a code. */
final class CodeCheck {
  private static final Text AS_TEXT =
      Text.of(
          "In the spreadsheet, set the column's format to text, type the code again, and export the"
              + " list once more.");

  private final String heading;
  private final ListOptions options;
  private final ListNotes notes;
  private final List<Cell> maybeDates = new ArrayList<>();

  /**
   * @param heading of the column that is the setup
   */
  CodeCheck(String heading, ListOptions options, ListNotes notes) {
    this.heading = heading;
    this.options = options;
    this.notes = notes;
  }

  /** Says so where a cell has no code to read. */
  boolean isUnreadable(Cell cell) {
    switch (cell.kind()) {
      case NO_VALUE ->
          notes.problem(
              cell,
              Text.of("the setup is a formula that was saved without its value"),
              Text.of("Open the list in a spreadsheet program, save it, and import it again."));
      case ERROR ->
          notes.problem(
              cell,
              Text.of("the setup shows the error {0}", cell.brief()),
              Text.of("Put its formula right in the spreadsheet, or write the code itself."));
      default -> {
        return false;
      }
    }
    return true;
  }

  /** Looks at a code. */
  void look(Cell cell) {
    var text = cell.plain();
    if (CodeShape.isShortened(text)) {
      notes.problem(
          cell,
          Text.of(
              "\"{0}\" is a long number that a spreadsheet shortened; its last digits"
                  + " are lost",
              cell.brief()),
          Text.of(
              "In the spreadsheet that has the number, set the column's format to text or to a"
                  + " number without decimals, and export the list once more."));
    } else if (cell.kind() == Cell.Kind.LONG_NUMBER) {
      notes.problem(
          cell,
          Text.of(
              "\"{0}\" has more than the 15 digits that a spreadsheet keeps of a"
                  + " number; the others are lost",
              cell.brief()),
          AS_TEXT);
    } else if (cell.kind() == Cell.Kind.DATE || CodeShape.isDate(text)) {
      date(cell);
    } else if (CodeShape.mayBeDate(text)) {
      maybeDates.add(cell);
    }
  }

  /** A few dates among other codes are dates. */
  void end(int setups) {
    if (maybeDates.size() * 2 < setups) {
      maybeDates.forEach(this::date);
    }
  }

  private void date(Cell cell) {
    var what =
        Text.of(
            "\"{0}\" is a date where a code is meant, as a spreadsheet makes of 3-1", cell.brief());
    var chosen = options.columns().get("setup");
    if (chosen != null) {
      notes.remarkOnce(cell, Text.of("{0}; it is taken as it stands", what), Text.NONE);
      return;
    }
    var asItIs = options.withColumn("setup", heading);
    notes.problem(cell, what, Text.of("{0} Or take dates as they stand.", AS_TEXT), asItIs.words());
    notes.offer(
        Text.of("the setup from \"{0}\", dates as they stand", Cell.brief(heading)), asItIs);
  }
}
