package org.framewright.shotlist;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * Reads the lists that clients send: separated values in any common encoding, separator and line
 * end, or a workbook (.xlsx). Rows above the headings are passed over; headings may come in any
 * order, case and several languages; columns that mean nothing here are kept.
 *
 * <p>A list may have 60,000 lines, 1,000 columns, 32,767 characters in a cell and 16 million in
 * all; as text 16 MB, as a workbook 64 MB. What is larger is refused before it is read whole.
 */
public final class ListReader {
  /** So many rows show which separator fits. */
  private static final int SAMPLE = 1_000;

  private static final List<Separator> SEPARATORS =
      List.of(
          new Separator(',', Text.of("commas")),
          new Separator(';', Text.of("semicolons")),
          new Separator('\t', Text.of("tabs")),
          new Separator('|', Text.of("bars")));

  private record Separator(char sign, Text words) {}

  private ListReader() {}

  /** Reads a list from a file by what it says itself. */
  public static ListReading read(Path file) {
    return read(file, ListOptions.NONE, ListFit.ANY);
  }

  /**
   * Reads a list from a file; what the disk refuses is a problem of the list, too.
   *
   * @param options what a person says about it
   * @param fit what its setups' names need
   */
  public static ListReading read(Path file, ListOptions options, ListFit fit) {
    return switch (ListFile.of(file)) {
      case ListFile.Content content -> read(content.bytes(), content.name(), options, fit);
      case ListFile.Unreadable unreadable -> unreadable.refused();
    };
  }

  /**
   * Reads a list from bytes.
   *
   * @param sourceName what problems call it
   */
  public static ListReading read(byte[] bytes, String sourceName) {
    return read(bytes, sourceName, ListOptions.NONE, ListFit.ANY);
  }

  /** The same with what a person says about it and what its setups' names need. */
  public static ListReading read(
      byte[] bytes, String sourceName, ListOptions options, ListFit fit) {
    var reading = read(bytes, sourceName, new ListRequest(options, fit));
    return reading.with(reading.as().with(options));
  }

  private static ListReading read(byte[] bytes, String sourceName, ListRequest request) {
    var options = request.options();
    if (bytes.length > Limits.FILE_BYTES) {
      return tooLarge(sourceName, Limits.FILE_BYTES);
    }
    if (FileKind.isZip(bytes)) {
      return Workbook.read(bytes, sourceName, request);
    }
    var foreign = FileKind.foreign(bytes);
    if (foreign.isPresent()) {
      return refused(sourceName, foreign.get().fault(), foreign.get().fix());
    }
    if (bytes.length > Limits.TEXT_BYTES) {
      return tooLarge(sourceName, Limits.TEXT_BYTES);
    }
    if (options.sheet().isPresent()) {
      var refused =
          refused(
              sourceName,
              Text.of("this is a text, which has no sheets"),
              Text.of("Leave the sheet out."));
      return refused.with(
          refused
              .as()
              .with(
                  new ListReading.Source(
                      sourceName, Optional.empty(), options.sheet(), List.of())));
    }
    return options
        .encoding()
        .map(
            name -> {
              var reading = named(bytes, name, sourceName, request);
              return reading.source().encoding().isPresent()
                  ? reading
                  : reading.with(
                      reading.as().with(ListReading.Source.text(sourceName, name.strip())));
            })
        .orElseGet(
            () ->
                text(
                    Encoding.decode(bytes, text -> known(text, sourceName, request)),
                    sourceName,
                    request));
  }

  /** In the encoding that a person says it has. */
  private static ListReading named(byte[] bytes, String name, String source, ListRequest request) {
    Charset charset;
    try {
      charset = Charset.forName(name.strip());
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      return refused(
          source,
          Text.of("there is no encoding \"{0}\"", Cell.brief(name)),
          Text.of("Give one such as UTF-8, windows-1252, windows-1250, GB18030 or Shift_JIS."));
    }
    if (!charset.canEncode()) {
      return refused(
          source,
          Text.of("\"{0}\" is no encoding of lists", Cell.brief(name)),
          Text.of("Give another."));
    }
    var decoded = Encoding.decode(bytes, charset);
    return decoded.isPresent()
        ? text(decoded.get(), source, request)
        : refused(
            source,
            Text.of("it is not written in {0}", EncodingGuess.name(charset)),
            Text.of("Leave the encoding out to have it found, or give another one."));
  }

  /** How many different things the headings of a text say. */
  private static long known(String text, String source, ListRequest request) {
    long known = 0;
    for (var separator : SEPARATORS) {
      known = Math.max(known, headed(text, separator, source, request).known());
    }
    return known;
  }

  private static Headed headed(
      String text, Separator separator, String source, ListRequest request) {
    var grid = new Grid.Builder(source, SAMPLE);
    Csv.read(text, separator.sign(), grid);
    return Headed.of(grid.build(Text.of(""), List.of()), source, request);
  }

  private static ListReading text(Encoding.Decoded decoded, String source, ListRequest request) {
    var text = decoded.text();
    int nul = text.indexOf('\0');
    if (nul >= 0) {
      return new ListReading.Refused(
          List.of(
              at(
                  text,
                  nul,
                  source,
                  Text.of("this is no text: a zero byte stands here"),
                  Text.of("Give a .csv or .xlsx file."))));
    }
    Separator best = null;
    long fits = -1;
    for (var separator : SEPARATORS) {
      if (allowed(text, separator)) {
        long fit = headed(text, separator, source, request).fits();
        if (fit > fits) {
          best = separator;
          fits = fit;
        }
      }
    }
    if (best == null) {
      return new ListReading.Refused(
          List.of(
              ListProblem.of(
                  source,
                  1,
                  1,
                  Text.of("this line names a separator that no list uses"),
                  Text.of("Take it out."))));
    }
    var grid = new Grid.Builder(source, Integer.MAX_VALUE);
    Csv.read(text, best.sign(), grid);
    var form = Text.of("{0}, {1}", decoded.name(), best.words());
    var reading =
        Headed.of(grid.build(form, remarks(decoded, source)), source, request).understand();
    return reading.with(reading.as().with(ListReading.Source.text(source, decoded.charset())));
  }

  private static List<ListProblem> remarks(Encoding.Decoded decoded, String source) {
    var remarks = new ArrayList<ListProblem>();
    if (decoded.isCut()) {
      remarks.add(
          at(
              decoded.text(),
              decoded.text().length(),
              source,
              Text.of("the file ends in the middle of a character"),
              Text.of("See whether its end is missing.")));
    }
    if (decoded.isGuess()) {
      remarks.add(
          ListProblem.ofAll(
                  source,
                  Text.of("its letters were taken for {0}, which is a guess", decoded.name()),
                  Text.of("Where words look wrong, say what it is written in."))
              .with(
                  "--encoding NAME, such as UTF-8, windows-1252, windows-1250, GB18030 or"
                      + " Shift_JIS"));
    }
    return remarks;
  }

  /** A problem at a character of a text. */
  private static ListProblem at(String text, int index, String source, Text what, Text remedy) {
    int line = 1;
    int from = 0;
    for (int i = 0; i < index; i++) {
      char c = text.charAt(i);
      if (c == '\n' || (c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n'))) {
        line++;
        from = i + 1;
      }
    }
    int column = 1 + text.codePointCount(from, index);
    return ListProblem.of(source, line, column, what, remedy);
  }

  /** A first line {@code sep=;}, as spreadsheets write it, leaves one separator. */
  private static boolean allowed(String text, Separator separator) {
    return !text.regionMatches(true, 0, "sep=", 0, 4)
        || text.length() == 4
        || text.charAt(4) == separator.sign();
  }

  static ListReading.Refused tooLarge(String source, long most) {
    return refused(
        source,
        Text.of("it is larger than a shot list can be, {0} MB", most >> 20),
        Text.of("Give the list itself, without what does not belong to it."));
  }

  static ListReading.Refused refused(String source, Text what, Text remedy) {
    return new ListReading.Refused(List.of(ListProblem.ofAll(source, what, remedy)));
  }

  /** Problems in the order of the file. */
  static List<ListProblem> sorted(List<ListProblem> problems) {
    var sorted = new ArrayList<>(problems);
    sorted.sort(Comparator.comparingInt(ListProblem::line).thenComparingInt(ListProblem::column));
    return sorted;
  }
}
