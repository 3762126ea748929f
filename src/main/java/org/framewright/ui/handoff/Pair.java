package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.framewright.frames.Capture;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;

/**
 * A select's picture and what came back of it, side by side.
 *
 * @param select none where there is no picture of it
 * @param came none where there is no picture of it
 */
record Pair(Optional<Frame> select, Optional<Frame> came) {
  static final Pair NONE = new Pair(Optional.empty(), Optional.empty());

  /**
   * Of the files of a line.
   *
   * @param reading another one with each time that a folder is read: its pictures may be others
   */
  static Pair of(ReturnLine line, int reading) {
    return new Pair(frame(line.select(), reading), frame(line.came(), reading));
  }

  /** Files as the readers of pictures take them; they are opened only when they are shown. */
  private static Optional<Frame> frame(List<Path> paths, int reading) {
    var files =
        paths.stream()
            .filter(path -> path.getFileName() != null)
            .flatMap(
                path ->
                    FileRole.of(path).filter(FileRole::isPicture).stream()
                        .map(role -> new FrameFile(path, 0, Instant.EPOCH, role)))
            .toList();
    return files.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Frame(
                new FrameId(reading + files.getFirst().path().toString()),
                files.getFirst().path().getParent(),
                files.getFirst().path().getFileName().toString(),
                files,
                Capture.UNKNOWN,
                true));
  }
}
