package org.framewright.frames;

import java.io.IOException;
import java.nio.file.Path;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** What can be wrong with the files of frames, in words. */
final class FrameProblems {
  private static final String COPY_ANEW = "Copy it from the card again, or move it away.";

  private FrameProblems() {}

  static Problem at(Path path, Problem problem) {
    return problem.at(SpelledName.shown(path));
  }

  static Problem nameIsNoText(Path file) {
    return new Problem(
        "its name is not UTF-8 text, so it can be neither renamed nor handed over safely",
        SpelledName.shown(file),
        "Give it a name of plain letters and digits; where no locale is set, set LC_ALL=C.UTF-8.");
  }

  static Problem isACopy(Path file, Path of) {
    return new Problem(
        Text.of("it is a copy of {0}; the two count as one frame", SpelledName.shown(of)),
        SpelledName.shown(file),
        "Move one of the two away, unless both are meant to be here.");
  }

  /** A file or folder that cannot be listed, looked at or read. */
  static Problem unreadable(Path path, IOException e) {
    return unreadable(e).at(SpelledName.shown(path));
  }

  /** A file or folder of which something was seen before. */
  static Problem unreadableNow(Path path, IOException e) {
    var cause = FileProblems.of(e);
    return new Problem(
        Text.of("it cannot be read ({0}); what was seen of it before is kept", cause.fault()),
        SpelledName.shown(path),
        cause.fix());
  }

  /** A folder that cannot be looked at just now. */
  static Problem notNow(Path folder, IOException e) {
    var cause = FileProblems.of(e);
    return new Problem(
        Text.of("it cannot be read ({0}); what is shown is from before", cause.fault()),
        SpelledName.shown(folder),
        cause.fix());
  }

  static Problem unreadable(IOException e) {
    var cause = FileProblems.of(e);
    return new Problem(Text.of("it cannot be read ({0})", cause.fault()), cause.fix());
  }

  static Problem broken(Text what) {
    return new Problem(what, COPY_ANEW);
  }

  static Problem withoutCaptureTime() {
    return new Problem(
        "its capture time cannot be read; it counts all the same",
        "Move it to its setup if it is counted under none or under another one.");
  }
}
