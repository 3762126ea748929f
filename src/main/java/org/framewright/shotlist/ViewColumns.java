package org.framewright.shotlist;

import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * A list may have one column a view, with a cross or a number where it is wanted: {@code Front,
 * Back}, also several times, below {@code On model} and below {@code Flat}.
 */
final class ViewColumns {
  private ViewColumns() {}

  /**
   * Takes columns that nothing else is known of as views: those with marks alone, headed by a word
   * for a view or standing below a heading such as {@code Views}; and those that a person said are.
   *
   * @param meanings of each column; changed
   * @param headings each column's own
   * @param above the row above the headings
   * @return the view of each column that was taken, and whether the row above has a part in it
   */
  static Taken take(
      List<Heading> meanings,
      List<String> headings,
      List<Cell> header,
      List<Cell> above,
      List<List<Cell>> rows,
      ListFit fit,
      ListNotes notes) {
    var views = new LinkedHashMap<Integer, String>();
    for (int i = 0; i < meanings.size(); i++) {
      if (meanings.get(i) == Heading.VIEW) {
        boolean isHeaded = i < header.size() && !header.get(i).blank();
        views.put(i, isHeaded ? header.get(i).plain() : headings.get(i));
      }
    }
    if (meanings.contains(Heading.VIEWS)) {
      return new Taken(views, false);
    }
    var marked = onlyMarked(rows);
    var groups = new HashMap<Integer, String>();
    var group = "";
    boolean below = false;
    boolean byAbove = false;
    for (int i = 0; i < Math.min(header.size(), meanings.size()); i++) {
      if (i < above.size() && !above.get(i).blank()) {
        group = above.get(i).plain();
        below = Heading.of(group) == Heading.VIEWS;
      }
      var heading = header.get(i).plain();
      boolean named = below || Vocabulary.WORDS.view(heading).isPresent();
      if (views.containsKey(i)) {
        groups.put(i, below ? "" : group);
      }
      if (meanings.get(i) == Heading.OTHER && named && !heading.isEmpty() && marked.get(i)) {
        meanings.set(i, Heading.VIEW);
        views.put(i, heading);
        groups.put(i, below ? "" : group);
        byAbove |= below;
      }
    }
    byAbove |= toldApart(views, groups, header, fit, notes);
    return new Taken(views, byAbove);
  }

  /**
   * Columns that are views.
   *
   * @param byAbove whether the row above the headings says that one is, or which
   */
  record Taken(Map<Integer, String> views, boolean byAbove) {
    /** The first cell of the row above that says nothing of a view. */
    Optional<Cell> unused(List<Cell> above) {
      var unused = Optional.<Cell>empty();
      boolean used = false;
      for (int i = above.size() - 1; i >= 0; i--) {
        used |= byAbove && views.containsKey(i);
        if (!above.get(i).blank()) {
          unused = used ? unused : Optional.of(above.get(i));
          used = false;
        }
      }
      return unused;
    }
  }

  /** Views that several columns have are told apart by what stands above them, where that does. */
  private static boolean toldApart(
      Map<Integer, String> views,
      Map<Integer, String> groups,
      List<Cell> header,
      ListFit fit,
      ListNotes notes) {
    var seen = new HashSet<String>();
    var twice = new HashSet<String>();
    views
        .values()
        .forEach(
            view -> {
              if (!seen.add(Heading.plain(view))) {
                twice.add(Heading.plain(view));
              }
            });
    if (twice.isEmpty()) {
      return false;
    }
    var full = new LinkedHashMap<Integer, String>();
    views.forEach(
        (column, view) ->
            full.put(
                column,
                twice.contains(Heading.plain(view)) && !groups.getOrDefault(column, "").isEmpty()
                    ? groups.get(column) + " " + view
                    : view));
    boolean areApart =
        new HashSet<>(full.values()).size() == full.size()
            && full.values().stream().allMatch(fit::isView);
    if (areApart) {
      views.putAll(full);
      return true;
    }
    views.forEach(
        (column, view) -> {
          if (twice.remove(Heading.plain(view))) {
            notes.remark(
                header.get(column),
                Text.of(
                    "several columns are headed \"{0}\"; a cross in each is a frame of that view",
                    Cell.brief(view)),
                Text.NONE);
          }
        });
    return false;
  }

  /** Whether a cell says that a view is wanted or not. */
  private static boolean isMark(Cell cell) {
    var text = cell.plain();
    return Vocabulary.WORDS.isWanted(text)
        || Vocabulary.WORDS.isUnwanted(text)
        || (text.length() <= 4 && text.chars().allMatch(Character::isDigit));
  }

  /** The columns that hold marks and nothing else. */
  private static BitSet onlyMarked(List<List<Cell>> rows) {
    var marked = new BitSet();
    var others = new BitSet();
    for (var row : rows) {
      var first = row.stream().filter(cell -> !cell.blank()).findFirst();
      if (first.isPresent() && Vocabulary.WORDS.isTotal(first.get().plain())) {
        continue; // the crosses are counted there
      }
      for (int i = 0; i < row.size(); i++) {
        if (!others.get(i) && !row.get(i).blank()) {
          (isMark(row.get(i)) ? marked : others).set(i);
        }
      }
    }
    marked.andNot(others);
    return marked;
  }
}
