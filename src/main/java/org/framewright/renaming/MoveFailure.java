package org.framewright.renaming;

import java.nio.file.Path;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** A rename that the system refused. */
final class MoveFailure extends RenamingFailure {
  private static final long serialVersionUID = 1L;

  private final boolean mayPass;

  MoveFailure(Path from, Text why, Text remedy) {
    this(from, why, remedy, false);
  }

  private MoveFailure(Path from, Text why, Text remedy, boolean mayPass) {
    super(new Problem(why, String.valueOf(from.getFileName()), remedy));
    this.mayPass = mayPass;
  }

  /** Whether it may pass by itself in a moment: another program is at the file. */
  boolean mayPass() {
    return mayPass;
  }

  static MoveFailure denied(Path file) {
    return new MoveFailure(
        file,
        Text.of("no permission to rename it"),
        Text.of("Ask for the right to change its folder."));
  }

  /** The same where a program that reads the file for a moment is answered with the same number. */
  static MoveFailure deniedForNow(Path file) {
    return new MoveFailure(
        file,
        Text.of("no permission to rename it"),
        Text.of(
            "Ask for the right to change its folder; or close the program that has the file open."),
        true);
  }

  static MoveFailure failing(Path file) {
    return new MoveFailure(
        file,
        Text.of("the disk failed (input/output error)"),
        Text.of("Check the cable and the disk; copy what matters before going on."));
  }

  static MoveFailure otherVolume(Path file) {
    return new MoveFailure(
        file,
        Text.of("the new name lies on another volume"),
        Text.of("Rename within one volume; copy between volumes."));
  }

  static MoveFailure full(Path file) {
    return new MoveFailure(
        file, Text.of("no space is left on the volume"), Text.of("Free some space."));
  }

  static MoveFailure readOnly(Path file) {
    return new MoveFailure(
        file,
        Text.of("the volume is read-only"),
        Text.of("Unlock the card or mount the volume for writing."));
  }

  static MoveFailure tooLong(Path file) {
    return new MoveFailure(
        file, Text.of("the new name or path is too long here"), Text.of("Use shorter names."));
  }

  static MoveFailure badName(Path file) {
    return new MoveFailure(
        file,
        Text.of("the volume does not take the new name"),
        Text.of("Use letters and signs that it knows."));
  }

  static MoveFailure shareGone(Path file) {
    return new MoveFailure(
        file,
        Text.of("the server does not answer"),
        Text.of("Connect to it again, then run the same command."));
  }

  static MoveFailure otherFolder(Path file) {
    return new MoveFailure(
        file,
        Text.of("its folder became a file or a link meanwhile"),
        Text.of("Check the folder, then plan again."));
  }

  static MoveFailure heldOpen(Path file) {
    return new MoveFailure(
        file, Text.of("another program holds it open"), Text.of("Close that program."), true);
  }

  static MoveFailure unknown(Path file, int error) {
    return new MoveFailure(
        file,
        Text.of("the system refused the rename (error {0})", error),
        Text.of("Try again."),
        false);
  }
}
