package org.framewright.ui.session;

import java.util.Optional;
import java.util.function.Consumer;

/**
 * What people do to the list, step by step. Each of these returns at once; what was done is on the
 * disk before {@code then} runs and before any screen shows it.
 */
public interface Steps {
  /** Takes a step. What was undone before it cannot be done again from then on. */
  void take(Step step, Runnable then, Consumer<Throwable> failed);

  /**
   * Undoes this station's last step.
   *
   * @param then gets the step; nothing if it was a tick that was made before the job was opened
   *     here
   */
  void undo(Consumer<Optional<Step>> then, Consumer<Throwable> failed);

  /**
   * Does again what was undone last.
   *
   * @param then gets the step; nothing if there is none
   */
  void redo(Consumer<Optional<Step>> then, Consumer<Throwable> failed);
}
