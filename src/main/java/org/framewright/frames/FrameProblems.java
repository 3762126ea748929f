package org.framewright.frames;

import java.io.IOException;
import java.nio.file.Path;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;

/** What can be wrong with the files of frames, in words. */
final class FrameProblems {
  private static final String COPY_ANEW = "Copy it from the card again, or move it away.";

  private FrameProblems() {}

  static Problem at(Path path, Problem problem) {
    return new Problem(problem.what(), SpelledName.shown(path), problem.remedy());
  }

  static Problem nameIsNoText(Path file) {
    return new Problem(
        "its name is not UTF-8 text, so it can be neither renamed nor handed over safely",
        SpelledName.shown(file),
        "Give it a name of plain letters and digits; where no locale is set, set LC_ALL=C.UTF-8.");
  }

  static Problem isACopy(Path file, Path of) {
    return new Problem(
        "it is a copy of %s; the two count as one frame".formatted(SpelledName.shown(of)),
        SpelledName.shown(file),
        "Move one of the two away, unless both are meant to be here.");
  }

  /** A file or folder that cannot be listed, looked at or read. */
  static Problem unreadable(Path path, IOException e, String andSo) {
    var cause = FileProblems.of(e);
    return new Problem(
        "it cannot be read (" + cause.what() + ")" + andSo,
        SpelledName.shown(path),
        cause.remedy());
  }

  static Problem unreadable(IOException e) {
    var cause = FileProblems.of(e);
    return new Problem("it cannot be read (" + cause.what() + ")", cause.remedy());
  }

  static Problem broken(String what) {
    return new Problem(what, COPY_ANEW);
  }

  static Problem withoutCaptureTime() {
    return new Problem(
        "its capture time cannot be read; it counts all the same",
        "Move it to its setup if it is counted under none or under another one.");
  }
}
