package org.framewright.shotlist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Reads the lists that clients send: separated values in any common encoding, separator and line
 * end, or a workbook (.xlsx). Rows above the headings are passed over; headings may come in any
 * order, case and several languages; columns that mean nothing here are kept.
 */
public final class ListReader {
  /** A shot list of 100,000 lines is a tenth of this. */
  private static final long LARGEST = 64L << 20;

  private static final List<Separator> SEPARATORS =
      List.of(
          new Separator(',', "commas"),
          new Separator(';', "semicolons"),
          new Separator('\t', "tabs"),
          new Separator('|', "bars"));

  private record Separator(char sign, String name) {}

  private ListReader() {}

  /** Reads a list from a file. */
  public static ListReading read(Path file) throws IOException {
    var name = file.getFileName().toString();
    if (Files.size(file) > LARGEST) {
      return refused(name, "it is too large for a shot list", "Give the list itself.");
    }
    return read(Files.readAllBytes(file), name);
  }

  /**
   * Reads a list from bytes.
   *
   * @param sourceName what faults call it
   */
  public static ListReading read(byte[] bytes, String sourceName) {
    if (Encoding.starts(bytes, 'P', 'K', 3, 4)) {
      return Workbook.read(bytes, sourceName);
    }
    if (Encoding.starts(bytes, 0xD0, 0xCF, 0x11, 0xE0)
        || Encoding.starts(bytes, '%', 'P', 'D', 'F')) {
      return refused(
          sourceName,
          "this is neither separated values nor a workbook of the open format",
          "Save the list as .xlsx or .csv and give that.");
    }
    var decoded = Encoding.decode(bytes);
    var text = decoded.text();
    int nul = text.indexOf('\0');
    if (nul >= 0) {
      return refused(
          sourceName, "this is no text: it holds zero bytes", "Give a .csv or .xlsx file.");
    }
    Headed best = null;
    for (var separator : SEPARATORS) {
      var said = said(text);
      if (said != 0 && said != separator.sign()) {
        continue;
      }
      var grid =
          Csv.read(sourceName, text, separator.sign(), decoded.name() + ", " + separator.name());
      var headed = Headed.of(grid, sourceName);
      if (best == null || headed.fits() > best.fits()) {
        best = headed;
      }
    }
    return best == null
        ? refused(sourceName, "its first line names a separator that no list uses", "Take it out.")
        : best.understand();
  }

  /** The separator that a first line {@code sep=;} names, as spreadsheets write it; else 0. */
  private static char said(String text) {
    return text.regionMatches(true, 0, "sep=", 0, 4) && text.length() > 4 ? text.charAt(4) : 0;
  }

  static ListReading.Refused refused(String source, String message, String remedy) {
    return new ListReading.Refused(List.of(new Fault(source, 0, 0, message, remedy)));
  }

  /** Faults in the order of the file. */
  static List<Fault> sorted(List<Fault> faults) {
    var sorted = new ArrayList<>(faults);
    sorted.sort(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column));
    return sorted;
  }
}
