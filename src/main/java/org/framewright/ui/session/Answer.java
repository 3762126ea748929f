package org.framewright.ui.session;

import java.util.Optional;

/** What became of what a person did. */
public sealed interface Answer {
  /** A step was taken. */
  record Taken(Step step) implements Answer {}

  /** A step was undone; it is not known which if it was taken before the job was opened here. */
  record Undone(Optional<Step> step) implements Answer {}

  /** What was undone was done again; nothing if there was nothing. */
  record Redone(Optional<Step> step) implements Answer {}
}
