package org.framewright.day;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.framewright.shotlist.Setup;

/** How large the setups of a list are against each other, and of what kind, as far as it tells. */
final class Sizes {
  /**
   * Headings of a column that says what kind of thing a setup is, the clearest first. Common
   * practice, no source.
   */
  private static final List<String> KINDS =
      List.of(
          "kind",
          "product group",
          "product category",
          "category",
          "product type",
          "garment type",
          "type",
          "warengruppe",
          "produktgruppe",
          "kategorie",
          "art",
          "catégorie",
          "famille",
          "genre");

  private final Function<Setup, Double> size;
  private final Optional<String> kind;

  private Sizes(Function<Setup, Double> size, Optional<String> kind) {
    this.size = size;
    this.kind = kind;
  }

  /** Of setups that are compared with each other: all have a size of one sort. */
  static Sizes of(Collection<Setup> setups) {
    Function<Setup, Double> size = _ -> 1.0;
    if (setups.stream().allMatch(setup -> setup.wanted().orElse(0) > 0)) {
      size = setup -> (double) setup.wanted().orElseThrow();
    } else if (setups.stream().noneMatch(setup -> setup.views().isEmpty())) {
      size = setup -> (double) setup.views().size();
    }
    return new Sizes(
        size, KINDS.stream().filter(word -> setups.stream().anyMatch(has(word))).findFirst());
  }

  private static Predicate<Setup> has(String word) {
    return setup -> column(setup, word).isPresent();
  }

  /** What a setup says in the column of that heading, whatever its case; none for nothing. */
  static Optional<String> column(Setup setup, String word) {
    return setup.columns().entrySet().stream()
        .filter(column -> column.getKey().strip().toLowerCase(Locale.ROOT).equals(word))
        .map(column -> column.getValue().strip())
        .filter(value -> !value.isEmpty())
        .findFirst();
  }

  Workload.Item of(Setup setup) {
    return new Workload.Item(size.apply(setup), kind(setup));
  }

  /** What kind of thing a setup is; none where the list does not say. */
  Optional<String> kind(Setup setup) {
    return kind.flatMap(word -> column(setup, word)).map(value -> value.toLowerCase(Locale.ROOT));
  }
}
