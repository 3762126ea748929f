package org.framewright.renaming;

/** What a no-replace rename answered, where the answer is no failure. */
enum MoveResult {
  MOVED,
  /** The new name is taken; nothing was changed. */
  TAKEN,
  /** There is no such file, or one of the folders is gone. */
  GONE,
  /** This volume or system has no such call; nothing was changed. */
  UNSUPPORTED
}
