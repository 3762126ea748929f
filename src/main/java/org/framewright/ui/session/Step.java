package org.framewright.ui.session;

import java.util.List;
import java.util.Optional;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/** What a person does to the list in one go: it is undone as one, and done again as one. */
public sealed interface Step {

  /** Setups are ticked, one after the other. */
  record Ticked(List<Mark> marks) implements Step {
    public Ticked {
      marks = List.copyOf(marks);
    }

    /** One setup is ticked. */
    public Ticked(String setup, SetupState state, MarkDetails details) {
      this(List.of(new Mark(setup, state, details)));
    }
  }

  /** One tick. */
  record Mark(String setup, SetupState state, MarkDetails details) {}

  /**
   * The list comes into another order.
   *
   * @param codes all of them in their new order
   * @param moved the one that a person moved
   */
  record Moved(List<String> codes, String moved) implements Step {
    public Moved {
      codes = List.copyOf(codes);
    }
  }

  /**
   * A setup comes into the list.
   *
   * @param behind the one that it comes right behind; at the end if empty
   */
  record Added(Setup setup, Optional<String> behind) implements Step {}

  /** The list says something else of a setup. */
  record Changed(Setup setup) implements Step {}
}
