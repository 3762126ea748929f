package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What came of reading a client's list. */
public sealed interface ListReading {

  /**
   * The line of headings as written, by which a list of the same form is known; empty where there
   * is none.
   */
  List<String> headings();

  /**
   * The file that a list came from.
   *
   * @param encoding of a text, by its name in the IANA registry
   * @param sheet of a workbook
   * @param sheets all that a person sees in the workbook; empty for a text
   */
  record Source(Optional<String> encoding, Optional<String> sheet, List<String> sheets) {
    static final Source NONE = new Source(Optional.empty(), Optional.empty(), List.of());

    public Source {
      sheets = List.copyOf(sheets);
    }
  }

  /**
   * A list, with how it was understood.
   *
   * @param form the file's form in words: encoding, separator, heading line
   * @param columns each column, and as what it was taken
   * @param remarks what was left out or guessed; none of it stops the import
   * @param leftOut those remarks that say why a line is no setup
   * @param options what was said about how to read it
   */
  record Understood(
      ShotList list,
      String form,
      Source source,
      List<Column> columns,
      List<ListProblem> remarks,
      List<ListProblem> leftOut,
      List<String> headings,
      ListOptions options)
      implements ListReading {
    public Understood {
      columns = List.copyOf(columns);
      remarks = List.copyOf(remarks);
      leftOut = List.copyOf(leftOut);
      headings = List.copyOf(headings);
    }

    /** The same with a remark more, which stands first. */
    public Understood with(ListProblem remark) {
      var more = new ArrayList<ListProblem>();
      more.add(remark);
      more.addAll(remarks);
      return new Understood(list, form, source, columns, more, leftOut, headings, options);
    }

    /** The same list, from this file. */
    Understood from(Source file) {
      return new Understood(list, form, file, columns, remarks, leftOut, headings, options);
    }
  }

  /**
   * No list; the problems found, in the order of the file, the first 1,000 at most.
   *
   * @param waysOn ways to read it nevertheless, for a person to choose; may be empty
   */
  record Refused(List<ListProblem> problems, List<WayOn> waysOn, List<String> headings)
      implements ListReading {
    public Refused {
      problems = List.copyOf(problems);
      waysOn = List.copyOf(waysOn);
      headings = List.copyOf(headings);
    }

    Refused(List<ListProblem> problems) {
      this(problems, List.of(), List.of());
    }
  }
}
