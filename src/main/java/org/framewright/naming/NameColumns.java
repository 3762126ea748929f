package org.framewright.naming;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.naming.NameTokens.Kind;
import org.framewright.naming.NameTokens.Token;

/**
 * Names of one making, one below the other: the pieces that they have in common. The making is the
 * one that most of the names fit, some with pieces left out; names that do not fit are left aside.
 */
final class NameColumns {
  /** Names that are compared with each other; more say nothing new. */
  static final int MOST = 500;

  private static final int MOST_TOKENS = 60;

  /**
   * A piece.
   *
   * @param before the text between it and the piece before
   * @param values its text in each of the names that have it, each text once
   * @param optional whether some names do not have it
   */
  record Column(Kind kind, String pattern, String before, Set<String> values, boolean optional) {
    /** Whether all names have the same text there. */
    boolean isConstant() {
      return values.size() == 1 && !optional;
    }
  }

  private final List<Column> columns;
  private final String end;
  private final List<List<Optional<String>>> rows;
  private final Map<String, List<Optional<String>>> byName;

  private NameColumns(
      List<Column> columns,
      String end,
      List<List<Optional<String>>> rows,
      Map<String, List<Optional<String>>> byName) {
    this.columns = columns;
    this.end = end;
    this.rows = rows;
    this.byName = byName;
  }

  List<Column> columns() {
    return columns;
  }

  /** The text behind the last piece. */
  String end() {
    return end;
  }

  /** Each name's texts by column. */
  List<List<Optional<String>>> rows() {
    return rows;
  }

  /** A name's texts by column; none where it does not fit, or was not compared. */
  List<Optional<String>> row(String name) {
    return byName.getOrDefault(name, List.of());
  }

  static NameColumns of(List<String> examples) {
    var names =
        examples.stream()
            .limit(MOST)
            .map(NameTokens::of)
            .filter(name -> !name.tokens().isEmpty() && name.tokens().size() <= MOST_TOKENS)
            .toList();
    if (names.isEmpty()) {
      return new NameColumns(List.of(), "", List.of(), Map.of());
    }
    var best = new Fit(names);
    var separator = separator(names);
    if (separator != 0) {
      var words = new Fit(joined(names, separator, false));
      best = words.fits.size() >= best.fits.size() ? words : best;
      var all = new Fit(joined(names, separator, true));
      best = all.fits.size() > best.fits.size() ? all : best;
    }
    return best.columns();
  }

  private static List<NameTokens> joined(List<NameTokens> names, char separator, boolean all) {
    return names.stream().map(name -> name.joinedWithin(separator, all)).toList();
  }

  /**
   * The character that stands between pieces: in all names if there is one, the underscore first.
   */
  private static char separator(List<NameTokens> names) {
    var found = new LinkedHashMap<Character, Integer>();
    for (var name : names) {
      var own = new LinkedHashSet<Character>();
      name.tokens().stream()
          .filter(token -> token.isSeparator() && token.text().length() == 1)
          .forEach(token -> own.add(token.text().charAt(0)));
      own.forEach(separator -> found.merge(separator, 1, Integer::sum));
    }
    int most = found.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    if (found.getOrDefault('_', 0) == most && most > 0) {
      return '_';
    }
    return found.entrySet().stream()
        .filter(entry -> entry.getValue() == most)
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse('\0');
  }

  /** The making that most names fit, and how each of them fits it. */
  private static final class Fit {
    private List<Token> whole = List.of();
    private List<int[]> fits = List.of();
    private List<NameTokens> fitting = List.of();

    Fit(List<NameTokens> names) {
      var makings = new LinkedHashMap<List<String>, NameTokens>();
      names.forEach(name -> makings.putIfAbsent(name.shape(), name));
      for (var making : makings.values().stream().limit(50).toList()) {
        var widths = widths(making.shape(), names);
        var fits = new ArrayList<int[]>();
        var fitting = new ArrayList<NameTokens>();
        for (var name : names) {
          embedding(making.tokens(), widths, name.tokens())
              .ifPresent(
                  fit -> {
                    fits.add(fit);
                    fitting.add(name);
                  });
        }
        if (fits.size() > this.fits.size()
            || (fits.size() == this.fits.size() && making.tokens().size() < whole.size())) {
          this.whole = making.tokens();
          this.fits = fits;
          this.fitting = fitting;
        }
      }
    }

    /** By token of the making, the lengths of its numbers in names of exactly that making. */
    private static List<Set<Integer>> widths(List<String> shape, List<NameTokens> names) {
      var widths = new ArrayList<Set<Integer>>();
      shape.forEach(_ -> widths.add(new LinkedHashSet<>()));
      for (var name : names) {
        if (name.shape().equals(shape)) {
          for (int i = 0; i < shape.size(); i++) {
            widths.get(i).add(name.tokens().get(i).text().length());
          }
        }
      }
      return widths;
    }

    /**
     * Which token of the making each token of the name is. A name may leave out a piece with the
     * separator before it, or the first with the one after it; where that can be seen in two ways,
     * the letters are what is left out.
     */
    private static Optional<int[]> embedding(
        List<Token> making, List<Set<Integer>> widths, List<Token> name) {
      if (name.size() > making.size()) {
        return Optional.empty();
      }
      if (2 * pieces(name) < pieces(making)) {
        return Optional.empty(); // Any word could be what is left of a longer name.
      }
      var found = new ArrayList<int[]>();
      var dead = new boolean[making.size() + 1][name.size() + 1];
      embed(making, widths, name, 0, 0, new int[name.size()], found, dead);
      return found.size() == 1
          ? Optional.of(found.getFirst())
          : found.stream().filter(fit -> leavesOutLetters(making, fit)).findFirst();
    }

    private static long pieces(List<Token> tokens) {
      return tokens.stream().filter(token -> !token.isSeparator()).count();
    }

    private static boolean leavesOutLetters(List<Token> making, int[] fit) {
      var kept = new LinkedHashSet<Integer>();
      for (int at : fit) {
        kept.add(at);
      }
      for (int i = 0; i < making.size(); i++) {
        if (!kept.contains(i)
            && making.get(i).kind() != Kind.LETTERS
            && making.get(i).kind() != Kind.SEPARATOR) {
          return false;
        }
      }
      return true;
    }

    /**
     * @param dead from where nothing was found before, so that each place is tried once
     */
    private static void embed(
        List<Token> making,
        List<Set<Integer>> widths,
        List<Token> name,
        int at,
        int next,
        int[] fit,
        List<int[]> found,
        boolean[][] dead) {
      if (found.size() > 8 || dead[at][next]) {
        return;
      }
      int before = found.size();
      if (next == name.size() && at == making.size()) {
        found.add(fit.clone());
        return;
      }
      if (at < making.size() && next < name.size()) {
        var expected = making.get(at);
        var token = name.get(next);
        boolean same =
            expected.shape().equals(token.shape())
                && (expected.kind() != Kind.DIGITS
                    || widths.get(at).contains(token.text().length())
                    || name.size() == making.size());
        if (same) {
          fit[next] = at;
          embed(making, widths, name, at + 1, next + 1, fit, found, dead);
        }
      }
      int left = making.size() - at;
      if (left - 1 > name.size() - next - 1 && left > name.size() - next) {
        if (at + 1 < making.size()
            && making.get(at).isSeparator()
            && !making.get(at + 1).isSeparator()) {
          embed(making, widths, name, at + 2, next, fit, found, dead);
        } else if (at == 0
            && making.size() > 1
            && !making.get(0).isSeparator()
            && making.get(1).isSeparator()) {
          embed(making, widths, name, 2, next, fit, found, dead);
        }
      }
      dead[at][next] = found.size() == before;
    }

    /** Numbers with zeros in front have one length; names with another do not fit. */
    private void dropOtherWidths() {
      for (int at = 0; at < whole.size(); at++) {
        if (whole.get(at).kind() != Kind.DIGITS) {
          continue;
        }
        var byWidth = new TreeMap<Integer, Integer>();
        boolean padded = false;
        for (int row = 0; row < fits.size(); row++) {
          var text = text(row, at).orElse("");
          padded |= text.length() > 1 && text.startsWith("0");
          if (!text.isEmpty()) {
            byWidth.merge(text.length(), 1, Integer::sum);
          }
        }
        if (padded && byWidth.size() > 1) {
          int most = Collections.max(byWidth.values());
          int width =
              byWidth.entrySet().stream()
                  .filter(entry -> entry.getValue() == most)
                  .findFirst()
                  .orElseThrow()
                  .getKey();
          for (int row = fits.size() - 1; row >= 0; row--) {
            int length = text(row, at).map(String::length).orElse(width);
            if (length != width) {
              fits.remove(row);
              fitting.remove(row);
            }
          }
        }
      }
    }

    NameColumns columns() {
      dropOtherWidths();
      var rows = new ArrayList<List<Optional<String>>>();
      fits.forEach(_ -> rows.add(new ArrayList<>()));
      var columns = new ArrayList<Column>();
      var before = new StringBuilder();
      for (int at = 0; at < whole.size(); at++) {
        var token = whole.get(at);
        if (token.isSeparator()) {
          before.append(token.text());
          continue;
        }
        var values = new LinkedHashSet<String>();
        boolean optional = false;
        for (int row = 0; row < fits.size(); row++) {
          var text = text(row, at);
          text.ifPresent(values::add);
          optional |= text.isEmpty();
          rows.get(row).add(text);
        }
        var kind = token.kind() == Kind.LETTERS && !areLetters(values) ? Kind.MIXED : token.kind();
        columns.add(new Column(kind, token.pattern(), before.toString(), values, optional));
        before.setLength(0);
      }
      joinConstants(columns, rows);
      var byName = new HashMap<String, List<Optional<String>>>();
      for (int row = 0; row < rows.size(); row++) {
        byName.put(fitting.get(row).name(), rows.get(row));
      }
      return new NameColumns(List.copyOf(columns), before.toString(), List.copyOf(rows), byName);
    }

    private static boolean areLetters(Set<String> values) {
      return values.stream().allMatch(value -> value.codePoints().allMatch(Character::isLetter));
    }

    /** Letters and digits without anything between them that never change are one piece. */
    private static void joinConstants(List<Column> columns, List<List<Optional<String>>> rows) {
      int lastNumber = -1;
      for (int i = 0; i < columns.size(); i++) {
        lastNumber = columns.get(i).kind() == Kind.DIGITS ? i : lastNumber;
      }
      for (int i = columns.size() - 1; i > 0 && rows.size() > 1; i--) {
        var first = columns.get(i - 1);
        var second = columns.get(i);
        if (second.before().isEmpty()
            && i < lastNumber
            && first.isConstant()
            && second.isConstant()
            && first.kind() != Kind.DATE
            && second.kind() != Kind.DATE) {
          var text = first.values().iterator().next() + second.values().iterator().next();
          columns.set(i - 1, new Column(Kind.MIXED, "", first.before(), Set.of(text), false));
          columns.remove(i);
          for (var row : rows) {
            row.set(i - 1, Optional.of(text));
            row.remove(i);
          }
        }
      }
    }

    private Optional<String> text(int row, int at) {
      var fit = fits.get(row);
      for (int i = 0; i < fit.length; i++) {
        if (fit[i] == at) {
          return Optional.of(fitting.get(row).tokens().get(i).text());
        }
      }
      return Optional.empty();
    }
  }
}
