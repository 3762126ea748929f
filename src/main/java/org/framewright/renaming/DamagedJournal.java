package org.framewright.renaming;

import java.io.IOException;

/** A journal that is not as it was written, or that reaches out of its folder. */
final class DamagedJournal extends IOException {
  private static final long serialVersionUID = 1L;

  /**
   * A fault in a journal.
   *
   * @param line counted from 1; 0 for the whole file
   */
  DamagedJournal(String file, int line, String why) {
    super("the journal " + file + (line == 0 ? "" : ", line " + line) + ": " + why);
  }

  static String remedy() {
    return "Look at the file; move it out of .framewright/renames to go on without it.";
  }
}
