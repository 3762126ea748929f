package org.framewright.job;

import org.framewright.shotlist.Setup;

/** Under which code a setup of another job would come into the list, or why it cannot. */
public sealed interface Entering {
  /** It would be this setup. */
  record As(Setup setup) implements Entering {}

  /** Its frames could not be named. */
  record Refused(MoveRefusal why) implements Entering {}
}
