package org.framewright.ui.board;

import java.util.Optional;
import org.framewright.shotlist.Setup;

/** What the list is grouped by. */
public enum Grouping {
  /** The running order, without groups. */
  NONE,
  DAY,
  RACK,
  MODEL;

  /** What a setup has for it; empty where it has nothing. */
  String of(Setup setup) {
    return (switch (this) {
          case NONE -> Optional.<String>empty();
          case DAY -> setup.day();
          case RACK -> setup.rack();
          case MODEL -> setup.model();
        })
        .orElse("");
  }

  /** The one after it, round and round. */
  Grouping next() {
    return switch (this) {
      case NONE -> DAY;
      case DAY -> RACK;
      case RACK -> MODEL;
      case MODEL -> NONE;
    };
  }
}
