package org.framewright.ui.renaming;

import java.util.List;
import org.framewright.renaming.StuckFile;

/**
 * How the last piece of work ended, in words.
 *
 * @param needsAPerson whether somebody must look
 * @param what what happened, in a sentence
 * @param remedy its remedy; empty if none is needed
 * @param files the files that a person must look at
 */
record RenameResult(boolean needsAPerson, String what, String remedy, List<StuckFile> files) {
  static RenameResult fine(String what) {
    return new RenameResult(false, what, "", List.of());
  }

  static RenameResult needs(String what, String remedy) {
    return new RenameResult(true, what, remedy, List.of());
  }
}
