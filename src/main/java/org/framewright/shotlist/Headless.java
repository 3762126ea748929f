package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/**
 * A list without headings: what its columns are, by their cells.
 *
 * @param first the first row of the list
 * @param setups the columns that may be the setup: every line has a code of its own there
 * @param title the column with the words, if there is one
 * @param views the column with words for views, if there is one
 * @param isHeaded whether the first row may be one of unknown headings
 */
record Headless(
    int first, List<Integer> setups, OptionalInt title, OptionalInt views, boolean isHeaded) {
  private static final int SAMPLE = 1_000;
  private static final int LETTERS = 3;

  /** What the rows may be. */
  static Headless of(List<List<Cell>> rows, ListFit fit) {
    int first = 0;
    boolean isNarrow = rows.stream().allMatch(row -> filled(row) <= 1);
    while (!isNarrow && first < rows.size() && filled(rows.get(first)) <= 1) {
      first++;
    }
    var body = rows.subList(first, Math.min(rows.size(), first + SAMPLE));
    var setups = setups(body, fit);
    boolean isHeaded = false;
    if (setups.isEmpty() && body.size() > 2) {
      setups = setups(body.subList(1, body.size()), fit);
      isHeaded = !setups.isEmpty();
    }
    var below = isHeaded ? body.subList(1, body.size()) : body;
    var views = views(below, setups);
    return new Headless(first, setups, title(below, setups, views, isNarrow), views, isHeaded);
  }

  /** Whether there is no doubt. */
  boolean isSure() {
    return setups.size() == 1 && !isHeaded;
  }

  private static long filled(List<Cell> row) {
    return row.stream().filter(cell -> !cell.blank()).count();
  }

  private static int width(List<List<Cell>> rows) {
    return rows.stream().mapToInt(List::size).max().orElse(0);
  }

  private static List<Integer> setups(List<List<Cell>> rows, ListFit fit) {
    var setups = new ArrayList<Integer>();
    var running = new ArrayList<Integer>();
    for (int column = 0; column < width(rows) && rows.size() > 1; column++) {
      var values = ColumnValues.of(rows, column, fit);
      boolean isCode =
          values.filled() * 10 >= Math.min(rows.size(), 500) * 9
              && values.codes() == values.filled()
              && values.areDistinct()
              && values.fits();
      if (isCode) {
        (runs(rows, column) ? running : setups).add(column);
      }
    }
    // A running number is a position where there is anything better.
    return setups.isEmpty() && running.size() == 1 ? running : setups;
  }

  /** Whether a column counts the lines. */
  private static boolean runs(List<List<Cell>> rows, int column) {
    for (int i = 0; i < rows.size(); i++) {
      var text = column < rows.get(i).size() ? rows.get(i).get(column).plain() : "";
      if (!text.isEmpty() && !Setup.canonicalKey(text).equals("" + (i + 1))) {
        return false;
      }
    }
    return true;
  }

  private static OptionalInt title(
      List<List<Cell>> rows, List<Integer> setups, OptionalInt views, boolean isNarrow) {
    int best = -1;
    long most = 0;
    for (int column = 0; column < width(rows) && !isNarrow; column++) {
      if (setups.contains(column) || views.equals(OptionalInt.of(column))) {
        continue;
      }
      int at = column;
      long letters =
          rows.stream()
              .filter(row -> at < row.size())
              .mapToLong(
                  row -> row.get(at).plain().codePoints().filter(Character::isLetter).count())
              .sum();
      if (letters > most && letters >= (long) LETTERS * rows.size()) {
        best = column;
        most = letters;
      }
    }
    return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }

  private static OptionalInt views(List<List<Cell>> rows, List<Integer> setups) {
    for (int column = 0; column < width(rows); column++) {
      int at = column;
      var cells =
          rows.stream()
              .filter(row -> at < row.size() && !row.get(at).blank())
              .map(row -> row.get(at))
              .toList();
      if (!setups.contains(column)
          && !cells.isEmpty()
          && cells.size() * 2 >= rows.size()
          && cells.stream().allMatch(Headless::namesViews)) {
        return OptionalInt.of(column);
      }
    }
    return OptionalInt.empty();
  }

  private static boolean namesViews(Cell cell) {
    return cell.text().length() <= 80
        && ViewsText.read(cell.text()).stream()
            .allMatch(view -> Vocabulary.WORDS.view(view.code()).isPresent());
  }

  /** The columns' meanings. */
  List<Heading> meanings(int width) {
    var meanings = new Heading[width];
    Arrays.fill(meanings, Heading.OTHER);
    meanings[setups.getFirst()] = Heading.SETUP;
    title.ifPresent(column -> meanings[column] = Heading.TITLE);
    views.ifPresent(column -> meanings[column] = Heading.VIEWS);
    return new ArrayList<>(Arrays.asList(meanings));
  }
}
