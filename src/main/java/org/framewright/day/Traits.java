package org.framewright.day;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.framewright.shotlist.Heading;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.View;

/**
 * What the setups of a list say of each {@link Change}, each heading and each setup looked at once.
 * For one thread.
 */
final class Traits {
  /** Headings of a column that says on which set a setup is shot. Common practice, no source. */
  private static final Set<String> SETS =
      Set.of(
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

  private final Map<String, Heading> headings = new HashMap<>();
  private final Map<String, List<String>> bySetup = new HashMap<>();

  /** In the order of {@link Change}, whatever its case; empty where the list says nothing. */
  List<String> of(Setup setup) {
    return bySetup.computeIfAbsent(
        setup.code(),
        _ -> List.of(Change.values()).stream().map(change -> of(setup, change)).toList());
  }

  private String of(Setup setup, Change change) {
    return switch (change) {
      case MODEL -> column(setup, Heading.MODEL);
      case RACK -> column(setup, Heading.RACK);
      case SET ->
          setup.columns().entrySet().stream()
              .filter(column -> SETS.contains(plain(column.getKey())))
              .map(column -> plain(column.getValue()))
              .filter(text -> !text.isEmpty())
              .findFirst()
              .orElse("");
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

  private String column(Setup setup, Heading heading) {
    return setup.columns().entrySet().stream()
        .filter(column -> headings.computeIfAbsent(column.getKey(), Heading::of) == heading)
        .map(column -> plain(column.getValue()))
        .filter(text -> !text.isEmpty())
        .findFirst()
        .orElse("");
  }

  private static String plain(String text) {
    return text.strip().toLowerCase(Locale.ROOT);
  }

  /**
   * What has to be changed from one setup to the next. To have nothing said of it is a value of its
   * own: who comes after a model with a setup that names none has changed, too.
   */
  Set<Change> between(Setup one, Setup next) {
    var changes = EnumSet.noneOf(Change.class);
    var before = of(one).iterator();
    var behind = of(next).iterator();
    for (var change : Change.values()) {
      if (!before.next().equals(behind.next())) {
        changes.add(change);
      }
    }
    return changes;
  }
}
