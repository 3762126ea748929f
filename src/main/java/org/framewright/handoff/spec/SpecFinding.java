package org.framewright.handoff.spec;

import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * Where a picture is not what the client asked for.
 *
 * @param file its path below the folder that came back
 * @param rule what of it
 * @param asked what is asked, such as {@code 8}
 * @param has what it has, as the end of a sentence about the file: {@code has 16 bits a channel}
 * @param fix what to do about it
 */
public record SpecFinding(String file, Rule rule, Text asked, Text has, Text fix) {
  /** The same for a person, with the file as its place. */
  public Problem problem() {
    return new Problem(asked.isEmpty() ? has : Text.of("{0}; asked: {1}", has, asked), file, fix);
  }
}
