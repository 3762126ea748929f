package org.framewright.frames;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;

/**
 * Files of real bodies, where somebody has a folder of them: named by the system property {@code
 * framewright.real.frames} or the environment's FRAMEWRIGHT_REAL_FRAMES, or lying beside the
 * project. They are never part of it.
 */
final class RealFrames {
  private RealFrames() {}

  /** The files; skips the test where there are none. */
  static List<Path> found() throws IOException {
    for (var folder : places()) {
      if (Files.isDirectory(folder)) {
        try (var files = Files.list(folder)) {
          var frames = files.filter(file -> FileRole.of(file).isPresent()).sorted().toList();
          if (!frames.isEmpty()) {
            return frames;
          }
        }
      }
    }
    Assumptions.abort(
        "there are no files of real bodies here; name a folder in FRAMEWRIGHT_REAL_FRAMES");
    return List.of();
  }

  private static List<Path> places() {
    var places = new ArrayList<Path>();
    Optional.ofNullable(System.getProperty("framewright.real.frames"))
        .or(() -> Optional.ofNullable(System.getenv("FRAMEWRIGHT_REAL_FRAMES")))
        .map(Path::of)
        .ifPresent(places::add);
    places.add(Path.of("../shared/data/frames"));
    return places;
  }
}
