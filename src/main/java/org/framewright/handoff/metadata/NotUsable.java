package org.framewright.handoff.metadata;

import org.framewright.base.Text;

/** Something in a file keeps it from being changed; it is to stay as it is. */
final class NotUsable extends Exception {
  private static final long serialVersionUID = 1L;
  private final transient Text why;

  NotUsable(Text why) {
    super(why.english(), null, false, false);
    this.why = why;
  }

  Text why() {
    return why;
  }
}
