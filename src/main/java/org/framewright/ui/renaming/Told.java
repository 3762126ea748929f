package org.framewright.ui.renaming;

import java.util.List;
import org.framewright.renaming.StuckFile;

/**
 * How the last piece of work ended, in words.
 *
 * @param needsAPerson whether somebody must look
 * @param what what happened, in a sentence
 * @param mend what would mend it; empty if nothing needs mending
 * @param files the files that a person must look at
 */
record Told(boolean needsAPerson, String what, String mend, List<StuckFile> files) {
  static Told fine(String what) {
    return new Told(false, what, "", List.of());
  }

  static Told needs(String what, String mend) {
    return new Told(true, what, mend, List.of());
  }
}
