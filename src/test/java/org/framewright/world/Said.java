package org.framewright.world;

import java.util.List;
import java.util.Set;
import org.framewright.shotlist.SetupState;

/** What somebody said to the program, as the model keeps it. */
sealed interface Said {
  /** The type that the line in the log has. */
  String type();

  /**
   * A line of a list.
   *
   * @param frames wanted, or -1
   */
  record Line(String code, String title, List<String> views, int frames) {}

  /** A list; what it changes, {@code removed} and {@code order} as the log told. */
  record Listed(List<Line> lines, List<String> removed, List<String> order) implements Said {
    @Override
    public String type() {
      return "list-changed";
    }
  }

  record Ticked(String setup, SetupState state, String by, String view, String reason)
      implements Said {
    @Override
    public String type() {
      return "marked";
    }
  }

  record TakenBack(LogLine.Id what) implements Said {
    @Override
    public String type() {
      return "taken-back";
    }
  }

  record Arrived(Set<Integer> exposures) implements Said {
    @Override
    public String type() {
      return "arrived";
    }
  }

  record Moved(Set<Integer> exposures, String setup) implements Said {
    @Override
    public String type() {
      return "moved";
    }
  }

  record Chosen(Set<Integer> exposures, boolean chosen) implements Said {
    @Override
    public String type() {
      return "selected";
    }
  }

  record Rated(Set<Integer> exposures, int rating) implements Said {
    @Override
    public String type() {
      return "rated";
    }
  }

  record Commented(String setup, String text) implements Said {
    @Override
    public String type() {
      return "commented";
    }
  }

  /** What changes nothing that the model looks at. */
  record Other(String type) implements Said {}
}
