package org.framewright.renaming;

import java.nio.file.Path;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** The renames stopped before their end. */
final class Halt extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Path path;
  private final transient Problem problem;
  private final boolean cancelled;

  private Halt(Path path, Problem problem, boolean cancelled) {
    super(problem.what());
    this.path = path;
    this.problem = problem;
    this.cancelled = cancelled;
  }

  static Halt at(Path path, Text what, Text remedy) {
    return at(path, new Problem(what, remedy));
  }

  static Halt at(Path path, Problem problem) {
    return new Halt(path, problem, false);
  }

  static Halt cancelled(Path path) {
    return new Halt(path, new Problem("cancelled", ""), true);
  }

  Path path() {
    return path;
  }

  Problem problem() {
    return problem;
  }

  boolean isCancelled() {
    return cancelled;
  }
}
