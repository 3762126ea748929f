package org.framewright.base;

import java.util.regex.Pattern;

/**
 * What a person needs to know of anything that is wrong.
 *
 * @param fault what is wrong, in plain words
 * @param where a file, a line, a setup; empty where {@code fault} says it
 * @param fix what to do about it; empty where nothing can be done
 */
public record Problem(Text fault, String where, Text fix) {
  /** A place in a text, as all rooms write one. */
  private static final Pattern PLACE =
      Pattern.compile("(.*), line ([0-9]+)(?:, column ([0-9]+))?", Pattern.DOTALL);

  public Problem {
    where = where == null ? "" : where;
  }

  /** A problem of which no words change with what they tell. */
  public Problem(String what, String where, String remedy) {
    this(Text.of(what), where, Text.of(remedy));
  }

  /** A problem whose place its words name. */
  public Problem(String what, String remedy) {
    this(what, "", remedy);
  }

  /** A problem of which only the fault has words that change with what they tell. */
  public Problem(Text fault, String where, String remedy) {
    this(fault, where, Text.of(remedy));
  }

  /** A problem whose place its words name. */
  public Problem(Text fault, Text fix) {
    this(fault, "", fix);
  }

  /** A problem whose place its words name. */
  public Problem(Text fault, String remedy) {
    this(fault, "", Text.of(remedy));
  }

  /** The same at another place. */
  public Problem at(String where) {
    return new Problem(fault, where, fix);
  }

  /** What is wrong, in English. */
  public String what() {
    return fault.english();
  }

  /** What to do about it, in English; empty where nothing can be done. */
  public String remedy() {
    return fix.english();
  }

  /** Where, in words. */
  public Text place() {
    var place = PLACE.matcher(where);
    if (!place.matches()) {
      return Text.of("{0}", where);
    }
    // Strings, since nobody groups the digits of a line's number.
    return place.group(3) == null
        ? Text.of("{0}, line {1}", place.group(1), place.group(2))
        : Text.of("{0}, line {1}, column {2}", place.group(1), place.group(2), place.group(3));
  }

  /** Where and what, without the remedy, to stand in another text. */
  public Text said() {
    return where.isBlank() ? fault : Text.of("{0}: {1}", place(), fault);
  }

  /** The same in English: {@code list.csv, line 3: the setup has no code}. */
  public String sentence() {
    return where.isBlank() ? what() : where + ": " + what();
  }

  /** Where, what and the remedy, if there is one. */
  public String sentences() {
    return fix.isEmpty() ? sentence() : sentence() + ". " + remedy();
  }
}
