package org.framewright.base;

/**
 * What a person needs to know of anything that is wrong.
 *
 * @param what what is wrong, in plain words
 * @param where a file, a line, a setup; empty where {@code what} says it
 * @param remedy what to do about it; empty where nothing can be done
 */
public record Problem(String what, String where, String remedy) {
  /** A problem whose place its words name. */
  public Problem(String what, String remedy) {
    this(what, "", remedy);
  }

  /** Where and what, without the remedy: {@code list.csv, line 3: the setup has no code}. */
  public String sentence() {
    return where.isBlank() ? what : where + ": " + what;
  }

  /** Where, what and the remedy, if there is one. */
  public String sentences() {
    return remedy.isEmpty() ? sentence() : sentence() + ". " + remedy;
  }
}
