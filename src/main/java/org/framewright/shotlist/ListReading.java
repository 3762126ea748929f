package org.framewright.shotlist;

import java.util.List;

/** What came of reading a client's list. */
public sealed interface ListReading {

  /**
   * A list, with how it was understood.
   *
   * @param form the file's form in words: encoding, separator, heading line
   * @param columns each column, and as what it was taken
   * @param remarks what was left out or guessed; none of it stops the import
   */
  record Understood(ShotList list, String form, List<Column> columns, List<ListProblem> remarks)
      implements ListReading {
    public Understood {
      columns = List.copyOf(columns);
      remarks = List.copyOf(remarks);
    }
  }

  /** No list; the problems found, in the order of the file, the first 1,000 at most. */
  record Refused(List<ListProblem> problems) implements ListReading {
    public Refused {
      problems = List.copyOf(problems);
    }
  }
}
