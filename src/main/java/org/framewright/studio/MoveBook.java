package org.framewright.studio;

import java.io.IOException;
import java.util.List;
import java.util.UUID;

/** Where the moves of setups between sets are decided. Safe for several threads. */
interface MoveBook {
  /** The moves that begin or end at a job, those asked for first first. */
  List<SetupMove> of(UUID job) throws IOException;

  /** Asks for a move; asked for again under the same id, it stays as it is. */
  void ask(SetupMove move) throws IOException;

  /**
   * Says what happens next to a setup.
   *
   * @param move as it was read
   * @return false if something else happened to the setup since
   */
  boolean step(SetupMove move, MoveStep.Kind kind, String station, String facts) throws IOException;
}
