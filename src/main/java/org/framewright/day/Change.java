package org.framewright.day;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.Text;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.View;

/** What may have to be changed between two setups, as far as the list tells. */
public enum Change {
  /** Another model, who comes from make-up. */
  MODEL,
  /** Another set, background or place. */
  SET,
  /** Another rack, rail or shelf. */
  RACK,
  /** Other views are wanted: another height, angle or lens. */
  VIEWS;

  /** Headings of a column that says on which set a setup is shot. Common practice, no source. */
  private static final List<String> SETS =
      List.of(
          "set",
          "location",
          "background",
          "backdrop",
          "hintergrund",
          "kulisse",
          "ort",
          "décor",
          "fond",
          "lieu");

  /** The word for it in documents. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** So many of them. */
  public Text counted(int count) {
    return switch (this) {
      case MODEL -> Text.counted("{0} change of model", "{0} changes of model", count);
      case SET -> Text.counted("{0} change of set", "{0} changes of set", count);
      case RACK -> Text.counted("{0} change of rack", "{0} changes of rack", count);
      case VIEWS -> Text.counted("{0} change of views", "{0} changes of views", count);
    };
  }

  /** What is changed. */
  public Text said() {
    return switch (this) {
      case MODEL -> Text.of("model");
      case SET -> Text.of("set");
      case RACK -> Text.of("rack");
      case VIEWS -> Text.of("views");
    };
  }

  /** What the list says of a setup, whatever its case; empty where it says nothing. */
  String of(Setup setup) {
    return switch (this) {
      case MODEL -> plain(setup.model());
      case RACK -> plain(setup.rack());
      case SET ->
          plain(SETS.stream().flatMap(word -> Sizes.column(setup, word).stream()).findFirst());
      case VIEWS ->
          String.join(
              " ",
              setup.views().stream()
                  .map(View::code)
                  .map(code -> code.toUpperCase(Locale.ROOT))
                  .sorted()
                  .toList());
    };
  }

  private static String plain(Optional<String> text) {
    return text.map(String::strip).orElse("").toLowerCase(Locale.ROOT);
  }

  /**
   * What has to be changed from one setup to the next. To have nothing said of it is a value of its
   * own: who comes after a model with a setup that names none has changed, too.
   */
  public static Set<Change> between(Setup one, Setup next) {
    var changes = EnumSet.noneOf(Change.class);
    for (var change : values()) {
      if (!change.of(one).equals(change.of(next))) {
        changes.add(change);
      }
    }
    return changes;
  }

  /** Several of them as one value. */
  static Text all(List<Text> texts) {
    return texts.stream().reduce((one, more) -> Text.of("{0}, {1}", one, more)).orElse(Text.NONE);
  }
}
