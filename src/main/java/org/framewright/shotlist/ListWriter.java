package org.framewright.shotlist;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.SequencedMap;
import java.util.function.Function;

/**
 * Writes a list for people and spreadsheets. CSV is that of RFC 4180 in UTF-8 with a byte-order
 * mark, by which spreadsheets tell the encoding.
 */
public final class ListWriter {
  private ListWriter() {}

  /**
   * Writes a list, as a workbook where the file ends in {@code .xlsx}, else as CSV. The file
   * appears whole, in the place of one that was there.
   *
   * @param told what the job tells of a setup, a column each; may be empty
   */
  public static void write(
      Path file, ShotList list, Function<Setup, SequencedMap<String, String>> told)
      throws IOException {
    var rows = rows(list, told);
    boolean workbook = file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".xlsx");
    var bytes = workbook ? workbook(rows) : ("\uFEFF" + csv(rows)).getBytes(StandardCharsets.UTF_8);
    var folder = file.toAbsolutePath().getParent();
    var temporary = Files.createTempFile(folder, ".list", ".tmp");
    try {
      Files.write(temporary, bytes);
      try (var channel = FileChannel.open(temporary, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      Files.move(temporary, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(temporary);
    }
  }

  /** The list as CSV, without a byte-order mark. */
  public static String csv(ShotList list, Function<Setup, SequencedMap<String, String>> told) {
    return csv(rows(list, told));
  }

  private static List<List<String>> rows(
      ShotList list, Function<Setup, SequencedMap<String, String>> told) {
    var columns = new LinkedHashSet<String>();
    list.setups().forEach(setup -> columns.addAll(setup.columns().keySet()));
    var toldHeadings = new LinkedHashSet<String>();
    list.setups().forEach(setup -> toldHeadings.addAll(told.apply(setup).keySet()));
    var header = new ArrayList<>(List.of("Setup", "Title", "Views", "Frames wanted"));
    header.addAll(columns);
    header.addAll(toldHeadings);
    var rows = new ArrayList<List<String>>();
    rows.add(header);
    for (var setup : list.setups()) {
      var row = new ArrayList<>(List.of(setup.code(), setup.title(), setup.viewsText()));
      row.add(setup.framesWanted().isPresent() ? "" + setup.framesWanted().getAsInt() : "");
      columns.forEach(heading -> row.add(setup.columns().getOrDefault(heading, "")));
      var said = told.apply(setup);
      toldHeadings.forEach(heading -> row.add(said.getOrDefault(heading, "")));
      rows.add(row);
    }
    return rows;
  }

  private static String csv(List<List<String>> rows) {
    var text = new StringBuilder();
    for (var row : rows) {
      for (int i = 0; i < row.size(); i++) {
        text.append(i == 0 ? "" : ",").append(quoted(row.get(i)));
      }
      text.append("\r\n");
    }
    return text.toString();
  }

  private static String quoted(String cell) {
    boolean needed =
        cell.chars().anyMatch(c -> c == ',' || c == ';' || c == '"' || c == '\n' || c == '\r')
            || !cell.equals(cell.strip());
    return needed ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
  }

  private static byte[] workbook(List<List<String>> rows) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var workbook = new org.dhatim.fastexcel.Workbook(bytes, "Framewright", null)) {
      var sheet = workbook.newWorksheet("Shot list");
      for (int i = 0; i < rows.size(); i++) {
        for (int j = 0; j < rows.get(i).size(); j++) {
          // As text throughout: a setup 001 is not the number 1.
          sheet.value(i, j, rows.get(i).get(j));
        }
      }
      sheet.range(0, 0, 0, rows.getFirst().size() - 1).style().bold().set();
      sheet.freezePane(1, 1);
    }
    return bytes.toByteArray();
  }
}
