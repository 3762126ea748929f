package org.framewright.mhl;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;

/**
 * The schema and the worked examples of ASC MHL 1.0 (American Society of Cinematographers, MIT
 * licence), where somebody has them: in a folder {@code mhl} of the one that the environment's
 * FRAMEWRIGHT_STANDARDS names, or beside the project. They are never part of it.
 */
final class Standard {
  private Standard() {}

  /** The folder; skips the test where there is none. */
  static Path folder() {
    var places = new ArrayList<Path>();
    Optional.ofNullable(System.getenv("FRAMEWRIGHT_STANDARDS"))
        .map(Path::of)
        .ifPresent(places::add);
    places.add(Path.of("../shared/data"));
    for (var place : places) {
      if (Files.isDirectory(place.resolve("mhl/xsd"))) {
        return place.resolve("mhl");
      }
    }
    return Assumptions.abort(
        "the examples of ASC MHL are not here; name their folder in FRAMEWRIGHT_STANDARDS");
  }

  /** The folders of the examples that have a history. */
  static List<Path> histories() throws IOException {
    try (var all = Files.walk(folder())) {
      return all.filter(path -> path.endsWith(MhlHistory.FOLDER))
          .map(Path::getParent)
          .sorted()
          .toList();
    }
  }
}
