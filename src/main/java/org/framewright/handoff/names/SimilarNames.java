package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The names most like one that no frame has: those that take the fewest changes of letters
 * (Levenshtein; two that changed places count as one), of equals those whose last number is
 * nearest; and those with the same last number.
 */
final class SimilarNames {
  private static final int MOST = 3;

  private static final int FEWEST_DIGITS = 3;
  private static final int MOST_TOKENS = 12;
  private static final int LONGEST = 80;

  /** Names looked at in all. */
  private static final long ALL = 20_000_000;

  private final NameIndex index;
  private final SearchBudget budget = new SearchBudget(ALL);

  /**
   * By how many of a name's last tokens are compared: these, in one, as often as they are needed.
   */
  private final Map<Integer, String[]> ends = new HashMap<>();

  SimilarNames(NameIndex index) {
    this.index = index;
  }

  private record Near(KnownName name, long apart) {}

  /** The names nearest to one, one of a frame; none where there is none that is like it. */
  List<KnownName> to(List<Token> written) {
    int count = Math.min(written.size(), MOST_TOKENS);
    if (count == 0 || !budget.take(index.names().size())) {
      return List.of();
    }
    var wanted = joined(written);
    if (wanted.length() > LONGEST) {
      return List.of();
    }
    int most = Math.max(1, Math.min(4, wanted.length() / 3));
    var candidates = ends.computeIfAbsent(count, this::ends);
    var best = new HashMap<Integer, Near>();
    for (int name = 0; name < candidates.length; name++) {
      int changes = changes(wanted, candidates[name], most);
      if (changes > most) {
        continue;
      }
      if (changes < most) {
        most = changes;
        best.clear();
      }
      var near = new Near(index.names().get(name), apart(written, index.tokens(name)));
      best.merge(near.name().frame(), near, (a, b) -> NEARER.compare(a, b) <= 0 ? a : b);
    }
    var frames = new LinkedHashMap<Integer, KnownName>();
    best.values().stream()
        .sorted(NEARER)
        .limit(MOST)
        .forEach(near -> frames.put(near.name().frame(), near.name()));
    var number = written.getLast();
    if (number.number() && number.text().length() >= FEWEST_DIGITS) {
      index.find(List.of(number)).fitting().stream()
          .limit(MOST)
          .forEach(name -> frames.putIfAbsent(name.frame(), name));
    }
    return frames.values().stream().limit(MOST + 1).toList();
  }

  private static final Comparator<Near> NEARER =
      Comparator.comparingLong(Near::apart).thenComparingInt(near -> near.name().frame());

  private String[] ends(int count) {
    var all = new String[index.names().size()];
    for (int name = 0; name < all.length; name++) {
      var tokens = index.tokens(name);
      all[name] = joined(tokens.subList(Math.max(0, tokens.size() - count), tokens.size()));
    }
    return all;
  }

  private static String joined(List<Token> tokens) {
    var joined = new ArrayList<String>();
    tokens.forEach(token -> joined.add(token.exact()));
    return String.join("_", joined);
  }

  private static long apart(List<Token> one, List<Token> other) {
    if (one.isEmpty() || other.isEmpty()) {
      return Long.MAX_VALUE;
    }
    var a = one.getLast();
    var b = other.getLast();
    return a.number() && b.number() && a.text().length() < 18 && b.text().length() < 18
        ? Math.abs(Long.parseLong(a.text()) - Long.parseLong(b.text()))
        : Long.MAX_VALUE;
  }

  /** How many changes of a letter make one text another; more than {@code most} is not counted. */
  static int changes(String one, String other, int most) {
    int shorter = Math.min(one.length(), other.length());
    int from = 0;
    while (from < shorter && one.charAt(from) == other.charAt(from)) {
      from++;
    }
    int same = 0;
    while (same < shorter - from
        && one.charAt(one.length() - 1 - same) == other.charAt(other.length() - 1 - same)) {
      same++;
    }
    return counted(
        one.substring(from, one.length() - same),
        other.substring(from, other.length() - same),
        most);
  }

  /** Only cells near the diagonal are worked out: others take more changes than are counted. */
  private static int counted(String a, String b, int most) {
    if (Math.abs(a.length() - b.length()) > most) {
      return most + 1;
    }
    int far = most + 1;
    var earlier = new int[b.length() + 1];
    var before = new int[b.length() + 1];
    var now = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      before[j] = Math.min(j, far);
    }
    for (int i = 1; i <= a.length(); i++) {
      int from = Math.max(1, i - most);
      int to = Math.min(b.length(), i + most);
      now[from - 1] = from == 1 ? Math.min(i, far) : far;
      int least = now[from - 1];
      for (int j = from; j <= to; j++) {
        int replaced = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int above = j < i + most ? before[j] : far;
        now[j] = Math.min(before[j - 1] + replaced, Math.min(above, now[j - 1]) + 1);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          now[j] = Math.min(now[j], earlier[j - 2] + 1);
        }
        least = Math.min(least, now[j]);
      }
      if (least > most) {
        return far;
      }
      var free = earlier;
      earlier = before;
      before = now;
      now = free;
    }
    return Math.min(before[b.length()], far);
  }
}
