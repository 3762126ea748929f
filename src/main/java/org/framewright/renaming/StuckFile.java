package org.framewright.renaming;

import java.nio.file.Path;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * A file that a person must look at.
 *
 * @param path relative to the root
 * @param problem what is wrong with it
 */
public record StuckFile(Path path, Problem problem) {
  StuckFile(Path path, Text why, Text remedy) {
    this(path, new Problem(why, remedy));
  }

  /** What is wrong. */
  public String why() {
    return problem.sentence();
  }

  /** What to do about it. */
  public String remedy() {
    return problem.remedy();
  }
}
