package org.framewright.naming;

import java.util.Optional;
import org.framewright.base.Text;

/**
 * A checked fact about a convention or a value.
 *
 * @param where the place in the convention, such as {@code names.frame}
 * @param line the line in the file, counted from 1; 0 where there is none
 * @param column the column in that line, counted from 1; 0 where there is none
 * @param said what is so, in plain words
 * @param fix its remedy
 */
public record Finding(
    Rule rule,
    Severity severity,
    String where,
    int line,
    int column,
    Text said,
    Optional<Witness> witness,
    Optional<Text> fix) {
  /** What is so, in English. */
  public String message() {
    return said.english();
  }

  /** Its remedy, in English. */
  public Optional<String> remedy() {
    return fix.map(Text::english);
  }
}
