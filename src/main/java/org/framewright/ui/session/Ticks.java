package org.framewright.ui.session;

import java.util.List;
import java.util.function.Consumer;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;

/**
 * What people do to the list. Each of these returns at once; what was done is on the disk before
 * {@code then} runs and before any screen shows it.
 */
public interface Ticks {
  /** Ticks one setup. */
  void mark(
      String setup,
      SetupState state,
      MarkDetails details,
      Runnable then,
      Consumer<Throwable> failed);

  /** Ticks several setups, one after the other, as one step. */
  void markAll(List<Mark> marks, Runnable then, Consumer<Throwable> failed);

  /** Takes this station's last step back. */
  void takeBack(Runnable then, Consumer<Throwable> failed);

  /** Puts the list in another order. */
  void reorder(List<String> codes, Runnable then, Consumer<Throwable> failed);

  /** One tick. */
  record Mark(String setup, SetupState state, MarkDetails details) {}
}
