package org.framewright.cli;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.framewright.base.FormulaGuard;
import org.framewright.renaming.RenameRequest;

/**
 * A map of names: a CSV file in UTF-8 whose first line is {@code from,to} or {@code from,to,group},
 * separated by commas, semicolons or tabs. Paths are relative to the folder that is renamed in.
 */
final class RenameMap {
  /** A million lines stay below it. */
  private static final int LARGEST = 128 << 20;

  private RenameMap() {}

  static List<RenameRequest> read(Path file) throws CommandFailure, IOException {
    var text = text(file);
    if (text.startsWith("\uFEFF")) {
      text = text.substring(1);
    }
    var separator = separator(text);
    var requests = new ArrayList<RenameRequest>();
    try (MappingIterator<String[]> rows =
        new CsvMapper()
            .readerFor(String[].class)
            .with(CsvParser.Feature.WRAP_AS_ARRAY)
            .with(CsvParser.Feature.SKIP_EMPTY_LINES)
            .with(CsvSchema.emptySchema().withColumnSeparator(separator))
            .readValues(text)) {
      var columns = new Columns(file, rows.hasNextValue() ? rows.nextValue() : new String[0]);
      while (rows.hasNextValue()) {
        int line = rows.getCurrentLocation().getLineNr();
        requests.add(columns.request(rows.nextValue(), line));
      }
    } catch (JacksonException e) {
      var at = e.getLocation();
      throw CommandFailure.badInput(
          file + ", line " + (at == null ? 1 : at.getLineNr()) + ": this is no CSV",
          "Check the quotation marks of the line.");
    }
    return requests;
  }

  private static String text(Path file) throws CommandFailure, IOException {
    byte[] bytes;
    try (var in = Files.newInputStream(file)) {
      // A device has no size that could be looked at first.
      bytes = in.readNBytes(LARGEST + 1);
    }
    if (bytes.length > LARGEST) {
      throw CommandFailure.badInput(
          file + ": is larger than any map of names, " + (LARGEST >> 20) + " MB",
          "Check the path; split a map that is so large.");
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw CommandFailure.badInput(file + ": is not UTF-8", "Save it as CSV in UTF-8.");
    }
  }

  /**
   * A text as a cell in which no spreadsheet sees a formula. Reading the map takes the apostrophes
   * away again.
   */
  static String cell(String text) {
    return FormulaGuard.with(text);
  }

  private static String text(String cell) {
    return FormulaGuard.without(cell);
  }

  private static char separator(String text) {
    var head = text.lines().findFirst().orElse("");
    for (char candidate : new char[] {',', ';', '\t'}) {
      if (head.indexOf(candidate) >= 0) {
        return candidate;
      }
    }
    return ',';
  }

  /** Which column holds what. */
  private static final class Columns {
    private final Path file;
    private final int from;
    private final int to;
    private final int group;

    Columns(Path file, String[] head) throws CommandFailure {
      var names = Arrays.stream(head).map(String::strip).toList();
      this.file = file;
      this.from = names.indexOf("from");
      this.to = names.indexOf("to");
      this.group = names.indexOf("group");
      if (from < 0 || to < 0) {
        throw CommandFailure.badInput(
            file + ", line 1: the first line must name the columns from and to",
            "Begin the file with the line from,to (and group, if files belong together).");
      }
    }

    RenameRequest request(String[] row, int line) throws CommandFailure {
      return new RenameRequest(
          path(row, from, "from", line),
          path(row, to, "to", line),
          group >= 0 && group < row.length ? RenameMap.text(row[group]) : "");
    }

    private Path path(String[] row, int column, String name, int line) throws CommandFailure {
      var text = column < row.length ? RenameMap.text(row[column]) : "";
      if (text.isEmpty()) {
        throw CommandFailure.badInput(
            file + ", line " + line + ", column " + name + ": is empty", "Fill it in.");
      }
      try {
        return Path.of(text);
      } catch (InvalidPathException e) {
        throw CommandFailure.badInput(
            file + ", line " + line + ", column " + name + ": is no path: " + e.getReason(),
            "Use names that this system knows.");
      }
    }
  }
}
