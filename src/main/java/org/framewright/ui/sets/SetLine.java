package org.framewright.ui.sets;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.framewright.studio.SetRow.Need;

/**
 * A set in words.
 *
 * @param code of the setup on set; empty where none is
 * @param title of it, or that nothing is on set
 * @param since when it is there; may be empty
 * @param done of the planned, so many are shot
 * @param number how many that are, in words
 * @param finish when the rest is likely done, or why nobody can say
 * @param pace how long setups took lately; may be empty
 * @param matters what a person should know, the most urgent first
 * @param heard when it was told and by whom, or since when it is silent
 * @param folder where this computer has it
 */
record SetLine(
    UUID job,
    String name,
    Need need,
    String needWords,
    String code,
    String title,
    String since,
    int done,
    int planned,
    String number,
    String signedOff,
    String finish,
    String pace,
    List<String> matters,
    String heard,
    boolean silent,
    Optional<Path> folder) {
  SetLine {
    matters = List.copyOf(matters);
  }

  /** How much of the planned is done, from 0 to 1. */
  double share() {
    return planned <= 0 ? 0 : Math.clamp((double) done / planned, 0, 1);
  }
}
