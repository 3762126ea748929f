package org.framewright.report;

import java.util.List;
import org.framewright.base.Text;

/**
 * A table for a spreadsheet.
 *
 * @param name what it lists
 * @param headings a text each
 * @param rows cells as text, as many as headings
 */
record Table(Text name, List<Text> headings, List<List<String>> rows) {
  Table {
    headings = List.copyOf(headings);
    rows = List.copyOf(rows);
  }
}
