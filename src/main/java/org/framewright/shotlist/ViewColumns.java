package org.framewright.shotlist;

import java.util.BitSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** A list may have one column a view, with a cross or a number where it is wanted. */
final class ViewColumns {
  private static final Pattern MARK =
      Pattern.compile("x|✓|✔|✗|•|\\*|yes|y|ja|oui|si|sì|sí|\\d{1,4}", Pattern.CASE_INSENSITIVE);

  private static final Set<String> VIEW_WORDS =
      Set.of(
          "f",
          "b",
          "s",
          "d",
          "front",
          "back",
          "side",
          "left",
          "right",
          "top",
          "detail",
          "details",
          "profile",
          "close",
          "full",
          "vorne",
          "hinten",
          "seite",
          "avant",
          "dos",
          "cote",
          "frente",
          "espalda",
          "lado",
          "fronte",
          "retro",
          "lato",
          "voor",
          "achter",
          "zij",
          "fram",
          "bak",
          "sida",
          "vorderansicht",
          "ruckansicht",
          "seitenansicht");

  private ViewColumns() {}

  /**
   * Takes columns that nothing else is known of as views: those with marks alone, headed by a word
   * for a view or standing below a heading such as {@code Views}.
   *
   * @param meanings of each column; changed
   * @param above the row above the headings
   */
  static void take(
      List<Heading> meanings, List<String> headings, List<Cell> above, List<List<Cell>> rows) {
    if (meanings.contains(Heading.VIEWS)) {
      return;
    }
    var marked = onlyMarked(rows);
    boolean below = false;
    for (int i = 0; i < headings.size(); i++) {
      if (i < above.size() && !above.get(i).blank()) {
        below = Heading.of(above.get(i).plain()) == Heading.VIEWS;
      }
      boolean named = below || VIEW_WORDS.contains(Heading.plain(headings.get(i)));
      if (meanings.get(i) == Heading.OTHER && named && marked.get(i)) {
        meanings.set(i, Heading.VIEW);
      }
    }
  }

  /** The columns that hold marks and nothing else. */
  private static BitSet onlyMarked(List<List<Cell>> rows) {
    var marked = new BitSet();
    var others = new BitSet();
    for (var row : rows) {
      for (int i = 0; i < row.size(); i++) {
        if (!others.get(i) && !row.get(i).blank()) {
          (MARK.matcher(row.get(i).plain()).matches() ? marked : others).set(i);
        }
      }
    }
    marked.andNot(others);
    return marked;
  }
}
