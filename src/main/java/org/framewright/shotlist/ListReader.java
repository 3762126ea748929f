package org.framewright.shotlist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;

/**
 * Reads the lists that clients send: separated values in any common encoding, separator and line
 * end, or a workbook (.xlsx). Rows above the headings are passed over; headings may come in any
 * order, case and several languages; columns that mean nothing here are kept.
 *
 * <p>A list may have 20,000 lines, 1,000 columns and 32,767 characters in a cell; as text 16 MB, as
 * a workbook 64 MB. What is larger is refused before it is read whole.
 */
public final class ListReader {
  /** So many rows show which separator fits. */
  private static final int SAMPLE = 1_000;

  private static final List<Separator> SEPARATORS =
      List.of(
          new Separator(',', "commas"),
          new Separator(';', "semicolons"),
          new Separator('\t', "tabs"),
          new Separator('|', "bars"));

  private record Separator(char sign, String name) {}

  private ListReader() {}

  /** Reads a list from a file; what the disk refuses is a problem of the list, too. */
  public static ListReading read(Path file) {
    var name = file.getFileName() == null ? file.toString() : file.getFileName().toString();
    try {
      // Asked first: opening a pipe waits for its other end, and a device may never end.
      var attributes = Files.readAttributes(file, BasicFileAttributes.class);
      if (attributes.isDirectory()) {
        return refused(
            file.toString(), "this is a folder, a list was meant", "Give a .csv or .xlsx file.");
      }
      if (!attributes.isRegularFile()) {
        return refused(
            file.toString(), "this is a device or a pipe, no file", "Give a .csv or .xlsx file.");
      }
      if (attributes.size() > Limits.FILE_BYTES) {
        return tooLarge(name, Limits.FILE_BYTES);
      }
      try (var in = Files.newInputStream(file)) {
        // The file may grow, and the files of a system may be longer than they say.
        return read(in.readNBytes((int) Limits.FILE_BYTES + 1), name);
      }
    } catch (IOException e) {
      var problem = FileProblems.of(e);
      var where = problem.where().isEmpty() ? file.toString() : problem.where();
      return new ListReading.Refused(
          List.of(new ListProblem(new Problem(problem.what(), where, problem.remedy()), 0, 0)));
    }
  }

  /**
   * Reads a list from bytes.
   *
   * @param sourceName what problems call it
   */
  public static ListReading read(byte[] bytes, String sourceName) {
    if (bytes.length > Limits.FILE_BYTES) {
      return tooLarge(sourceName, Limits.FILE_BYTES);
    }
    if (FileKind.isZip(bytes)) {
      return Workbook.read(bytes, sourceName);
    }
    var foreign = FileKind.foreign(bytes);
    if (foreign.isPresent()) {
      return refused(sourceName, foreign.get().what(), foreign.get().remedy());
    }
    if (bytes.length > Limits.TEXT_BYTES) {
      return tooLarge(sourceName, Limits.TEXT_BYTES);
    }
    return text(Encoding.decode(bytes), sourceName);
  }

  private static ListReading text(Encoding.Decoded decoded, String source) {
    var text = decoded.text();
    int nul = text.indexOf('\0');
    if (nul >= 0) {
      return new ListReading.Refused(
          List.of(
              at(
                  text,
                  nul,
                  source,
                  "this is no text: a zero byte stands here",
                  "Give a .csv or .xlsx file.")));
    }
    Separator best = null;
    long fits = -1;
    for (var separator : SEPARATORS) {
      if (!allowed(text, separator)) {
        continue;
      }
      var grid = new Grid.Builder(source, SAMPLE);
      Csv.read(text, separator.sign(), grid);
      long fit = Headed.of(grid.build("", List.of()), source).fits();
      if (fit > fits) {
        best = separator;
        fits = fit;
      }
    }
    if (best == null) {
      return new ListReading.Refused(
          List.of(
              ListProblem.of(
                  source, 1, 1, "this line names a separator that no list uses", "Take it out.")));
    }
    var grid = new Grid.Builder(source, Integer.MAX_VALUE);
    Csv.read(text, best.sign(), grid);
    return Headed.of(
            grid.build(decoded.name() + ", " + best.name(), remarks(decoded, source)), source)
        .understand();
  }

  private static List<ListProblem> remarks(Encoding.Decoded decoded, String source) {
    return decoded.isCut()
        ? List.of(
            at(
                decoded.text(),
                decoded.text().length(),
                source,
                "the file ends in the middle of a character",
                "See whether its end is missing."))
        : List.of();
  }

  /** A problem at a character of a text. */
  private static ListProblem at(String text, int index, String source, String what, String remedy) {
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

  private static ListReading.Refused tooLarge(String source, long most) {
    return refused(
        source,
        String.format(Locale.ROOT, "it is larger than a shot list can be, %d MB", most >> 20),
        "Give the list itself, without what does not belong to it.");
  }

  static ListReading.Refused refused(String source, String what, String remedy) {
    return new ListReading.Refused(List.of(ListProblem.ofAll(source, what, remedy)));
  }

  /** Problems in the order of the file. */
  static List<ListProblem> sorted(List<ListProblem> problems) {
    var sorted = new ArrayList<>(problems);
    sorted.sort(Comparator.comparingInt(ListProblem::line).thenComparingInt(ListProblem::column));
    return sorted;
  }
}
