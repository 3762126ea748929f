package org.framewright;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.mhl.MhlHistory;
import org.junit.jupiter.api.Assumptions;

/**
 * Examples of standards, where somebody has them: in the folder that the environment's
 * FRAMEWRIGHT_STANDARDS names, or beside the project. They are never part of it.
 */
public final class Standards {
  private Standards() {}

  /**
   * The schema and the worked examples of ASC MHL 1.0 (American Society of Cinematographers, MIT
   * licence); skips the test where they are not.
   */
  public static Path mhl() {
    return folder("mhl", "xsd", "the examples of ASC MHL");
  }

  /**
   * The BagIt conformance suite of the Library of Congress (public domain); skips the test where it
   * is not.
   */
  public static Path bagit() {
    return folder("bagit", "v1.0", "the BagIt conformance suite");
  }

  private static Path folder(String name, String sign, String what) {
    var places = new ArrayList<Path>();
    Optional.ofNullable(System.getenv("FRAMEWRIGHT_STANDARDS"))
        .map(Path::of)
        .ifPresent(places::add);
    places.add(Path.of("../shared/data"));
    // Beside a second working tree of the project.
    places.add(Path.of("../../shared/data"));
    for (var place : places) {
      if (Files.isDirectory(place.resolve(name).resolve(sign))) {
        return place.resolve(name);
      }
    }
    return Assumptions.abort(
        what + " are not here; name the folder of " + name + " in FRAMEWRIGHT_STANDARDS");
  }

  /** The folders of the examples of ASC MHL that have a history. */
  public static List<Path> histories() throws IOException {
    try (var all = Files.walk(mhl())) {
      return all.filter(path -> path.endsWith(MhlHistory.FOLDER))
          .map(Path::getParent)
          .sorted()
          .toList();
    }
  }
}
