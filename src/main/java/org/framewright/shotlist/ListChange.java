package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.function.Predicate;
import org.framewright.base.Text;

/**
 * What differs between two lists, setup by setup.
 *
 * @param added in the new list only, in its order
 * @param removed in the old list only, in its order, and nothing has been done on them
 * @param changed in both, with other content
 * @param kept in the old list only, but work has been done on them, so they stay
 * @param reordered whether the setups that both lists hold stand in another order
 */
public record ListChange(
    List<Setup> added,
    List<Setup> removed,
    List<Changed> changed,
    List<Setup> kept,
    boolean reordered) {

  /** One setup, as it was and as it is to be. */
  public record Changed(Setup before, Setup after) {

    /** What changed, a phrase each: {@code title "Coat" -> "Long coat"}. */
    public List<Text> descriptions() {
      var descriptions = new ArrayList<Text>();
      describe(descriptions, Text.of("code"), before.code(), after.code());
      describe(descriptions, Text.of("title"), before.title(), after.title());
      describe(descriptions, Text.of("views"), before.viewsText(), after.viewsText());
      describe(descriptions, Text.of("frames wanted"), number(before), number(after));
      var headings = new LinkedHashSet<>(before.columns().keySet());
      headings.addAll(after.columns().keySet());
      for (var heading : headings) {
        describe(
            descriptions,
            Text.of("{0}", heading),
            before.columns().getOrDefault(heading, ""),
            after.columns().getOrDefault(heading, ""));
      }
      return List.copyOf(descriptions);
    }

    private static String number(Setup setup) {
      return setup.framesWanted().isPresent() ? "" + setup.framesWanted().getAsInt() : "";
    }

    private static void describe(List<Text> descriptions, Text what, String before, String after) {
      if (!before.equals(after)) {
        descriptions.add(Text.of("{0} \"{1}\" -> \"{2}\"", what, before, after));
      }
    }
  }

  public ListChange {
    added = List.copyOf(added);
    removed = List.copyOf(removed);
    changed = List.copyOf(changed);
    kept = List.copyOf(kept);
  }

  /** Whether the lists are the same. */
  public boolean isEmpty() {
    return added.isEmpty()
        && removed.isEmpty()
        && changed.isEmpty()
        && kept.isEmpty()
        && !reordered;
  }

  /** The difference when no work has been done yet. */
  public static ListChange between(ShotList before, ShotList after) {
    return between(before, after, setup -> false);
  }

  /**
   * The difference; setups match by code, whatever its case and leading zeros.
   *
   * @param worked whether work has been done on a setup of the old list
   */
  public static ListChange between(ShotList before, ShotList after, Predicate<Setup> worked) {
    var old = new HashMap<String, Setup>();
    before.setups().forEach(setup -> old.put(Setup.canonicalKey(setup.code()), setup));
    var added = new ArrayList<Setup>();
    var changed = new ArrayList<Changed>();
    var shared = new ArrayList<String>();
    for (var setup : after.setups()) {
      var canonicalKey = Setup.canonicalKey(setup.code());
      var was = old.get(canonicalKey);
      if (was == null) {
        added.add(setup);
        continue;
      }
      shared.add(canonicalKey);
      if (!was.saysTheSameAs(setup)) {
        changed.add(new Changed(was, setup));
      }
    }
    var still = new HashSet<>(shared);
    var removed = new ArrayList<Setup>();
    var kept = new ArrayList<Setup>();
    var order = new ArrayList<String>();
    for (var setup : before.setups()) {
      if (still.contains(Setup.canonicalKey(setup.code()))) {
        order.add(Setup.canonicalKey(setup.code()));
      } else {
        (worked.test(setup) ? kept : removed).add(setup);
      }
    }
    return new ListChange(added, removed, changed, kept, !order.equals(shared));
  }
}
