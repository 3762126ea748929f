package org.framewright.cli;

import java.nio.file.FileSystem;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;

/** The frames from one to another in an order, as a person writes them: {@code FROM..TO}. */
final class FrameRange {
  private FrameRange() {}

  /**
   * The complete frames of a range, each once. Which end is named first does not matter.
   *
   * @param frames all frames, in the order in which they were taken
   */
  static List<FrameId> of(List<Frame> frames, String text) throws CommandFailure {
    int dots = text.indexOf("..");
    var from = dots < 0 ? text : text.substring(0, dots);
    var to = dots < 0 ? text : text.substring(dots + 2);
    int one = find(frames, from);
    int other = find(frames, to);
    return frames.subList(Math.min(one, other), Math.max(one, other) + 1).stream()
        .filter(Frame::complete)
        .map(Frame::id)
        .distinct()
        .toList();
  }

  /** The one complete frame that a person names. */
  static Frame one(List<Frame> frames, String text) throws CommandFailure {
    var frame = frames.get(find(frames, text));
    if (!frame.complete()) {
      throw CommandFailure.badInput(
          "the frame \"" + text + "\" is not whole", "Wait until it is, or copy it again.");
    }
    return frame;
  }

  /** Finds a frame by its name, or by a folder and its name where two bodies share one. */
  private static int find(List<Frame> frames, String text) throws CommandFailure {
    if (frames.isEmpty()) {
      throw CommandFailure.badInput(
          "the job has no frames yet", "Move frames once they are there.");
    }
    var requested = path(text, frames.getFirst().folder().getFileSystem());
    var found =
        frames.stream()
            .filter(frame -> lower(frame.folder().resolve(frame.stem())).endsWith(requested))
            .toList();
    if (found.isEmpty()) {
      throw CommandFailure.badInput(
          "there is no frame \"" + text + "\"",
          "Give the name of a file without its ending, as IMG_0012.");
    }
    if (found.size() > 1) {
      throw CommandFailure.badInput(
          "there are %d frames \"%s\"".formatted(found.size(), text),
          "Write the folder before the name: "
              + found.stream()
                  .map(frame -> frame.folder().getFileName().resolve(frame.stem()).toString())
                  .collect(Collectors.joining(" or ")));
    }
    return frames.indexOf(found.getFirst());
  }

  private static Path path(String text, FileSystem system) throws CommandFailure {
    try {
      return lower(system.getPath(text));
    } catch (InvalidPathException e) {
      throw CommandFailure.badInput(
          "\"" + text + "\" is no name of a frame",
          "Give the name of a file without its ending, as IMG_0012.");
    }
  }

  private static Path lower(Path path) {
    return path.getFileSystem().getPath(path.toString().toLowerCase(Locale.ROOT));
  }
}
