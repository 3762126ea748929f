package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/** What came of reading a client's list. */
public sealed interface ListReading {

  /** How it was read. */
  ReadAs as();

  /**
   * The line of headings as written, by which a list of the same form is known; empty where there
   * is none.
   */
  default List<String> headings() {
    return as().table().headings();
  }

  /** Each column, and as what it was taken; empty where no table was found. */
  default List<Column> columns() {
    return as().table().columns();
  }

  /** The file that it came from. */
  default Source source() {
    return as().source();
  }

  /** What was said about how to read it. */
  default ListOptions options() {
    return as().options();
  }

  /**
   * How a list was read.
   *
   * @param table what was found in it
   * @param options what was said about how to read it
   * @param before that it was read as an earlier list was, and as which
   */
  record ReadAs(Source source, ListTable table, ListOptions options, Optional<ListProblem> before) {
    static final ReadAs NOTHING =
        new ReadAs(Source.NONE, ListTable.NONE, ListOptions.NONE, Optional.empty());

    ReadAs with(Source file) {
      return new ReadAs(file, table, options, before);
    }

    ReadAs with(ListTable found) {
      return new ReadAs(source, found, options, before);
    }

    ReadAs with(ListOptions said) {
      return new ReadAs(source, table, said, before);
    }

    ReadAs with(ListProblem asBefore) {
      return new ReadAs(source, table, options, Optional.of(asBefore));
    }
  }

  /**
   * The file that a list came from.
   *
   * @param name the file's own
   * @param encoding of a text, by its name in the IANA registry
   * @param sheet of a workbook
   * @param sheets all that a person sees in the workbook; empty for a text
   */
  record Source(
      String name, Optional<String> encoding, Optional<String> sheet, List<String> sheets) {
    static final Source NONE = new Source("", Optional.empty(), Optional.empty(), List.of());

    public Source {
      sheets = List.copyOf(sheets);
    }

    /** A text in an encoding. */
    static Source text(String name, String encoding) {
      return new Source(name, Optional.of(encoding), Optional.empty(), List.of());
    }
  }

  /** The same, read so. */
  default ListReading with(ReadAs other) {
    return switch (this) {
      case Understood understood ->
          new Understood(
              understood.list, understood.form, other, understood.remarks, understood.leftOut);
      case Refused refused -> new Refused(refused.problems, refused.waysOn, other);
    };
  }

  /** The same, which was read as an earlier list was. */
  default ListReading asBefore(ListProblem before) {
    return with(as().with(before));
  }

  /**
   * A list, with how it was understood.
   *
   * @param form the file's form in words: encoding, separator, heading line
   * @param remarks what was left out or guessed; none of it stops the import
   * @param leftOut those remarks that say why a line is no setup
   */
  record Understood(
      ShotList list, Text form, ReadAs as, List<ListProblem> remarks, List<ListProblem> leftOut)
      implements ListReading {
    public Understood {
      remarks = List.copyOf(remarks);
      leftOut = List.copyOf(leftOut);
    }

    /** All that is told: as which list it was read, and the remarks. */
    public List<ListProblem> told() {
      var told = new ArrayList<ListProblem>();
      as.before().ifPresent(told::add);
      told.addAll(remarks);
      return told;
    }
  }

  /**
   * No list; the problems found, in the order of the file, the first 1,000 at most.
   *
   * @param waysOn ways to read it nevertheless, for a person to choose; may be empty
   */
  record Refused(List<ListProblem> problems, List<WayOn> waysOn, ReadAs as) implements ListReading {
    public Refused {
      problems = List.copyOf(problems);
      waysOn = List.copyOf(waysOn);
    }

    Refused(List<ListProblem> problems) {
      this(problems, List.of(), ReadAs.NOTHING);
    }
  }
}
