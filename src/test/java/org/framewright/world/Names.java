package org.framewright.world;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** What the names of frames say, by the templates that the world starts jobs with. */
final class Names {
  /** Day, setup, view and number, in the order of each template. */
  private static final List<Pattern> PATTERNS =
      List.of(
          Pattern.compile("\\d{8}_KVO_(?<setup>\\d{3})(?:_(?<view>[FBSD]))?_\\d{4}"),
          Pattern.compile("\\d{8}_(?<setup>[A-Z0-9]{2,6})(?:_(?<view>raw|step|hero|bite))?_\\d{4}"),
          Pattern.compile("\\d{8}_\\d{5}_(?<setup>\\d{2})(?<view>)"));

  /** What a name says. */
  record Read(String key, String view) {}

  private Names() {}

  static String stem(String path) {
    var name = path.substring(path.lastIndexOf('/') + 1);
    return name.substring(0, name.lastIndexOf('.'));
  }

  static Optional<Read> read(int template, String path) {
    var name = PATTERNS.get(template).matcher(stem(path));
    return name.matches()
        ? Optional.of(
            new Read(
                Model.key(name.group("setup")),
                name.group("view") == null ? "" : name.group("view")))
        : Optional.empty();
  }
}
