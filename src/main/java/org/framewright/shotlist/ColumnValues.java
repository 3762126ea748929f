package org.framewright.shotlist;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;

/**
 * What the cells below a heading look like, by the first of them.
 *
 * @param filled how many hold something
 * @param fitting how many of them can be a setup's code
 * @param codes how many of them look like codes
 * @param distinct how many different ones there are
 * @param misfit why the first that cannot be a code cannot
 */
record ColumnValues(
    int filled, int fitting, int codes, int distinct, Optional<ListFit.Misfit> misfit) {
  private static final int SAMPLE = 500;

  /** A few lines are sums, notes or mistakes. */
  private static final double MOST = 0.9;

  static ColumnValues of(List<List<Cell>> rows, int column, ListFit fit) {
    int filled = 0;
    int fitting = 0;
    int codes = 0;
    Optional<ListFit.Misfit> misfit = Optional.empty();
    var distinct = new HashSet<String>();
    for (var row : rows) {
      if (filled == SAMPLE) {
        break;
      }
      if (column >= row.size() || row.get(column).blank()) {
        continue;
      }
      var text = row.get(column).plain();
      if (Vocabulary.WORDS.isTotal(text)) {
        continue;
      }
      filled++;
      distinct.add(Setup.canonicalKey(text));
      codes += CodeShape.isCode(text) ? 1 : 0;
      var problem = fit.code(text);
      if (problem.isEmpty()) {
        fitting++;
      } else if (misfit.isEmpty()) {
        misfit = problem;
      }
    }
    return new ColumnValues(filled, fitting, codes, distinct.size(), misfit);
  }

  boolean fits() {
    return fitting >= MOST * filled;
  }

  boolean fitsNowhere() {
    return filled > 0 && fitting == 0;
  }

  boolean areCodes() {
    return filled > 0 && codes >= MOST * filled;
  }

  boolean areDistinct() {
    return distinct == filled;
  }
}
