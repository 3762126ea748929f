package org.framewright.ui.lists;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.shotlist.Column;
import org.framewright.shotlist.Heading;
import org.framewright.shotlist.ListOptions;
import org.framewright.ui.look.Texts;

/**
 * What a column may be.
 *
 * @param id the word for it in the options of a list: {@code setup}, {@code unused}, a field of the
 *     convention
 * @param words for people
 * @param group those of one group stand together
 */
record Use(String id, String words, Group group) {
  enum Group {
    /** A field, which one column is. */
    FIELD,
    /** What several columns may be. */
    ANY
  }

  /** The convention's words for what its lists call otherwise. */
  private static final Map<String, String> OF_CONVENTION = Map.of("views", "view");

  /**
   * All that one may choose, in the order of a menu.
   *
   * @param fields the labels of the convention's fields, by their names
   */
  static List<Use> all(SequencedMap<String, String> fields, Texts texts) {
    var own = new LinkedHashMap<>(fields);
    var all = new ArrayList<Use>();
    for (var heading : Heading.values()) {
      if (heading.isChosen()) {
        var id = heading.word();
        var label = own.remove(OF_CONVENTION.getOrDefault(id, id));
        all.add(new Use(id, words(texts, texts.get("lists.use." + id), label), Group.FIELD));
      }
    }
    own.forEach((name, label) -> all.add(new Use(name, label, Group.FIELD)));
    for (var heading : List.of(Heading.VIEW, Heading.KEPT, Heading.UNUSED)) {
      var id = heading.use().orElseThrow();
      all.add(new Use(id, texts.get("lists.use." + id), Group.ANY));
    }
    return List.copyOf(all);
  }

  private static String words(Texts texts, String word, String label) {
    return label == null || label.toLowerCase(Locale.ROOT).equals(word.toLowerCase(Locale.ROOT))
        ? word
        : texts.get("lists.use.labelled", label, word);
  }

  /** The word for what a column was taken as. */
  static String of(Column column) {
    return column
        .field()
        .or(() -> column.taken().use())
        .orElseGet(() -> column.taken() == Heading.OTHER ? "kept" : column.taken().word());
  }

  /** The word for what a person says it is. */
  static Optional<String> said(ListOptions options, String heading) {
    return options.said(heading).map(id -> id.equals("view") ? "views" : id);
  }

  /** These options, with a column being this. */
  ListOptions in(ListOptions options, String heading) {
    return Heading.ofUse(id)
        .map(use -> options.withUse(use, heading))
        .orElseGet(() -> options.withColumn(id, heading));
  }
}
