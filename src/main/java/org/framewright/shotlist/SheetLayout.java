package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamReader;

/**
 * What a sheet says of its cells besides their content (ECMA-376, part 1, sections 18.3.1.13,
 * 18.3.1.55 and 18.3.1.73). Rows and columns count from 1.
 *
 * @param hiddenRows the first of the rows that are hidden
 * @param hiddenColumns the first of the columns that are hidden
 * @param merges the first of the ranges that are merged to one cell over several rows
 */
record SheetLayout(List<Integer> hiddenRows, List<Integer> hiddenColumns, List<Merge> merges) {

  /** Cells of one column that show the first one's text. */
  record Merge(int column, int firstRow, int lastRow) {}

  static final SheetLayout NONE = new SheetLayout(List.of(), List.of(), List.of());

  private static final Pattern RANGE =
      Pattern.compile("([A-Za-z]{1,3})([0-9]{1,7}):[A-Za-z]{1,3}([0-9]{1,7})");

  /** Collects it while a sheet is looked over; what is too much is passed over. */
  static final class Builder {
    private final TreeSet<Integer> hiddenRows = new TreeSet<>();
    private final TreeSet<Integer> hiddenColumns = new TreeSet<>();
    private final List<Merge> merges = new ArrayList<>();
    private int row;

    /** Takes an element that begins. */
    void element(XMLStreamReader xml) {
      switch (xml.getLocalName()) {
        case "row" -> {
          row = number(xml, "r", row + 1);
          if (isTrue(xml, "hidden") && hiddenRows.size() < Limits.LINES) {
            hiddenRows.add(row);
          }
        }
        case "col" -> {
          if (isTrue(xml, "hidden")) {
            int last = Math.min(number(xml, "max", 0), Limits.COLUMNS);
            for (int column = Math.max(1, number(xml, "min", 1)); column <= last; column++) {
              hiddenColumns.add(column);
            }
          }
        }
        case "mergeCell" -> merge(xml.getAttributeValue(null, "ref"));
        default -> {}
      }
    }

    private void merge(String reference) {
      var range = RANGE.matcher(reference == null ? "" : reference);
      if (range.matches() && merges.size() < Limits.LINES) {
        int first = Integer.parseInt(range.group(2));
        int last = Integer.parseInt(range.group(3));
        if (last > first) {
          merges.add(new Merge(WorkbookFile.columnOf(range.group(1)), first, last));
        }
      }
    }

    private static boolean isTrue(XMLStreamReader xml, String name) {
      var value = xml.getAttributeValue(null, name);
      return value != null && (value.equals("1") || value.equals("true"));
    }

    private static int number(XMLStreamReader xml, String name, int otherwise) {
      var value = xml.getAttributeValue(null, name);
      return value != null && value.matches("[0-9]{1,7}") ? Integer.parseInt(value) : otherwise;
    }

    SheetLayout build() {
      return hiddenRows.isEmpty() && hiddenColumns.isEmpty() && merges.isEmpty()
          ? NONE
          : new SheetLayout(
              List.copyOf(hiddenRows), List.copyOf(hiddenColumns), List.copyOf(merges));
    }
  }
}
