package org.framewright.copies;

import java.util.List;

/** The answer to whether a card may be cleared. */
public sealed interface Verdict {
  /** Why not; empty if it may be. */
  List<Reason> why();

  /** The answer as machines read it. */
  String word();

  /**
   * It may.
   *
   * @param state what it holds for; anything that came later needs another answer
   * @param by the disks that hold copies
   * @param copies on how many disks besides the card each file is at the least that is to be kept
   * @param waived files that a person waived
   */
  record MayClear(CardState state, List<Witness> by, int copies, List<Waiver> waived)
      implements Verdict {
    /** How many files are to be kept: all but those that were waived. */
    public int kept() {
      return state.files() - waived.size();
    }

    @Override
    public List<Reason> why() {
      return List.of();
    }

    @Override
    public String word() {
      return "may-be-cleared";
    }
  }

  /** Something is missing, which can be mended; what could not be established comes after it. */
  record NotYet(List<Reason> why) implements Verdict {
    @Override
    public String word() {
      return "not-yet";
    }
  }

  /** Something could not be established. */
  record CannotTell(List<Reason> why) implements Verdict {
    @Override
    public String word() {
      return "cannot-tell";
    }
  }
}
