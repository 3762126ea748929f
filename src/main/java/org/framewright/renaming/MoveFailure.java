package org.framewright.renaming;

import java.nio.file.Path;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** A rename that the system refused. */
final class MoveFailure extends RenamingFailure {
  private static final long serialVersionUID = 1L;

  private final boolean mayPass;

  MoveFailure(Path from, String why, String remedy) {
    this(from, Text.of(why), remedy, false);
  }

  private MoveFailure(Path from, Text why, String remedy, boolean mayPass) {
    super(new Problem(why, String.valueOf(from.getFileName()), remedy));
    this.mayPass = mayPass;
  }

  /** Whether it may pass by itself in a moment: another program is at the file. */
  boolean mayPass() {
    return mayPass;
  }

  static MoveFailure denied(Path file) {
    return new MoveFailure(
        file, "no permission to rename it", "Ask for the right to change its folder.");
  }

  /** The same where a program that reads the file for a moment is answered with the same number. */
  static MoveFailure deniedForNow(Path file) {
    return new MoveFailure(
        file,
        Text.of("no permission to rename it"),
        "Ask for the right to change its folder; or close the program that has the file open.",
        true);
  }

  static MoveFailure failing(Path file) {
    return new MoveFailure(
        file,
        "the disk failed (input/output error)",
        "Check the cable and the disk; copy what matters before going on.");
  }

  static MoveFailure otherVolume(Path file) {
    return new MoveFailure(
        file,
        "the new name lies on another volume",
        "Rename within one volume; copy between volumes.");
  }

  static MoveFailure full(Path file) {
    return new MoveFailure(file, "no space is left on the volume", "Free some space.");
  }

  static MoveFailure readOnly(Path file) {
    return new MoveFailure(
        file, "the volume is read-only", "Unlock the card or mount the volume for writing.");
  }

  static MoveFailure tooLong(Path file) {
    return new MoveFailure(file, "the new name or path is too long here", "Use shorter names.");
  }

  static MoveFailure badName(Path file) {
    return new MoveFailure(
        file, "the volume does not take the new name", "Use letters and signs that it knows.");
  }

  static MoveFailure shareGone(Path file) {
    return new MoveFailure(
        file, "the server does not answer", "Connect to it again, then run the same command.");
  }

  static MoveFailure otherFolder(Path file) {
    return new MoveFailure(
        file, "its folder became a file or a link meanwhile", "Check the folder, then plan again.");
  }

  static MoveFailure heldOpen(Path file) {
    return new MoveFailure(
        file, Text.of("another program holds it open"), "Close that program.", true);
  }

  static MoveFailure unknown(Path file, int error) {
    return new MoveFailure(
        file, Text.of("the system refused the rename (error {0})", error), "Try again.", false);
  }
}
