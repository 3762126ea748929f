package org.framewright.shotlist;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.function.Function;
import org.framewright.base.DurableFiles;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * Writes a list for people and spreadsheets: as a workbook where the file ends in {@code .xlsx},
 * else as CSV. CSV is that of RFC 4180 in UTF-8 with a byte-order mark, by which spreadsheets know
 * the encoding, with an apostrophe before what they would run as a formula. {@link ListReader}
 * reads the same list from either.
 *
 * <p>The file appears whole or not at all; one that is replaced stays as it was until then, and
 * keeps its permissions.
 */
public final class ListWriter {
  /** The headings that every exported list begins with, in this order. */
  static final Map<Heading, String> HEADINGS = headings();

  private ListWriter() {}

  private static Map<Heading, String> headings() {
    var headings = new EnumMap<Heading, String>(Heading.class);
    headings.put(Heading.SETUP, "Setup");
    headings.put(Heading.TITLE, "Title");
    headings.put(Heading.VIEWS, "Views");
    headings.put(Heading.FRAMES, "Frames wanted");
    return Collections.unmodifiableMap(headings);
  }

  /**
   * Writes a list to a file that must not exist yet.
   *
   * @param job what the job knows of a setup, a column each; may be empty
   * @return why the list cannot be written in this form; empty if it was written
   * @throws FileAlreadyExistsException if anything has that name; it is as it was
   */
  public static Optional<Problem> create(
      Path file, ShotList list, Function<Setup, SequencedMap<String, String>> job)
      throws IOException {
    return write(file, list, job, DurableFiles::create);
  }

  /** The same in place of a file that may be there; a folder, a link or a device is refused. */
  public static Optional<Problem> replace(
      Path file, ShotList list, Function<Setup, SequencedMap<String, String>> job)
      throws IOException {
    return write(file, list, job, DurableFiles::replace);
  }

  private interface Store {
    void write(Path file, byte[] bytes) throws IOException;
  }

  private static Optional<Problem> write(
      Path file, ShotList list, Function<Setup, SequencedMap<String, String>> job, Store store)
      throws IOException {
    var rows = rows(list, job);
    if (!file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".xlsx")) {
      store.write(file, ("\uFEFF" + CsvText.of(rows, "\r\n")).getBytes(StandardCharsets.UTF_8));
      return Optional.empty();
    }
    for (var row : rows) {
      if (row.size() > Workbook.MOST_COLUMNS
          || row.stream().anyMatch(cell -> XmlText.escaped(cell).length() > Limits.CELL)) {
        return Optional.of(
            new Problem(
                Text.of("the line of setup {0} holds more than a workbook takes", row.getFirst()),
                file.toString(),
                "Export it as .csv."));
      }
    }
    store.write(file, workbook(rows));
    return Optional.empty();
  }

  /** The list as CSV, without a byte-order mark. */
  public static String csv(ShotList list, Function<Setup, SequencedMap<String, String>> job) {
    return CsvText.of(rows(list, job), "\r\n");
  }

  private static List<List<String>> rows(
      ShotList list, Function<Setup, SequencedMap<String, String>> job) {
    var columns = new LinkedHashSet<String>();
    list.setups().forEach(setup -> columns.addAll(setup.columns().keySet()));
    // A number of frames in words is kept as a column; its cell is the one that it came from.
    columns.remove(HEADINGS.get(Heading.FRAMES));
    var jobs = list.setups().stream().map(job).toList();
    var jobHeadings = new LinkedHashSet<String>();
    jobs.forEach(row -> jobHeadings.addAll(row.keySet()));
    var header = new ArrayList<>(HEADINGS.values());
    header.addAll(columns);
    header.addAll(jobHeadings);
    var rows = new ArrayList<List<String>>();
    rows.add(header);
    for (int i = 0; i < jobs.size(); i++) {
      var setup = list.setups().get(i);
      var fromJob = jobs.get(i);
      var row =
          new ArrayList<>(
              List.of(setup.code(), setup.title(), setup.viewsText(), framesWanted(setup)));
      columns.forEach(heading -> row.add(setup.columns().getOrDefault(heading, "")));
      jobHeadings.forEach(heading -> row.add(fromJob.getOrDefault(heading, "")));
      rows.add(row);
    }
    return rows;
  }

  private static String framesWanted(Setup setup) {
    return setup.framesWanted().isPresent()
        ? Integer.toString(setup.framesWanted().getAsInt())
        : setup.columns().getOrDefault(HEADINGS.get(Heading.FRAMES), "");
  }

  private static byte[] workbook(List<List<String>> rows) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var workbook = new org.dhatim.fastexcel.Workbook(bytes, "Framewright", null)) {
      var sheet = workbook.newWorksheet("Shot list");
      for (int i = 0; i < rows.size(); i++) {
        for (int j = 0; j < rows.get(i).size(); j++) {
          // As text throughout: a setup 001 is not the number 1, and text never runs as a formula.
          sheet.value(i, j, XmlText.escaped(rows.get(i).get(j)));
        }
      }
      sheet.range(0, 0, 0, rows.getFirst().size() - 1).style().bold().set();
      sheet.freezePane(1, 1);
    }
    return bytes.toByteArray();
  }
}
