package org.framewright.shotlist;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;
import org.framewright.base.Text;

/**
 * Reads a list out of a workbook: the sheet that was chosen, else the one whose headings are best
 * understood.
 */
final class Workbook {
  /** Columns A to XFD. Source: Microsoft, "Excel specifications and limits". */
  static final int MOST_COLUMNS = 16_384;

  /** So many rows show whether a sheet is a list. */
  private static final int SAMPLE = 1_000;

  private static final int NAMED = 8;

  private final ReadableWorkbook workbook;
  private final WorkbookFile file;
  private final String source;
  private final ListRequest request;
  private final CellText text;

  private Workbook(
      ReadableWorkbook workbook, WorkbookFile file, String source, ListRequest request) {
    this.workbook = workbook;
    this.file = file;
    this.source = source;
    this.request = request;
    this.text = new CellText(workbook.isDate1904());
  }

  static ListReading read(byte[] bytes, String source, ListRequest request) {
    try {
      var file = WorkbookFile.look(bytes);
      if (file.problem().isPresent()) {
        var fault = file.problem().get();
        return ListReader.refused(source, fault.fault(), fault.fix());
      }
      try (var workbook = open(bytes)) {
        return new Workbook(workbook, file, source, request).read();
      }
    } catch (IOException | XMLStreamException | RuntimeException e) {
      // The libraries throw what they like at a broken file.
      return ListReader.refused(
          source,
          Text.of("it is not a sound workbook"),
          Text.of("Open it in a spreadsheet program and save it again as .xlsx or .csv."));
    }
  }

  private static ReadableWorkbook open(byte[] bytes) throws IOException {
    try {
      return new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(true, true));
    } catch (ExcelReaderException e) {
      // A workbook need not have styles, but the library gives no formats without them.
      return new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(false, true));
    }
  }

  private ListReading read() throws IOException {
    var sheets = workbook.getSheets().limit(Limits.SHEETS).toList();
    if (sheets.isEmpty()) {
      return ListReader.refused(
          source, Text.of("the workbook has no sheet"), Text.of("Give another file."));
    }
    var seen = sheets.stream().filter(Workbook::isSeen).map(Sheet::getName).toList();
    if (request.options().sheet().isPresent()) {
      var name = request.options().sheet().get();
      var chosen = named(sheets, name);
      return chosen.isPresent() ? read(chosen.get(), seen, List.of()) : noSheet(name, seen);
    }
    Optional<Sheet> best = Optional.empty();
    long most = -1;
    var lists = new ArrayList<String>();
    for (var sheet : sheets) {
      // A hidden sheet is read only where there is no other, or where somebody names it.
      long fit = headed(sheet, SAMPLE, List.of()).fits() - (isSeen(sheet) ? 0 : Long.MAX_VALUE / 2);
      if (fit >= Headed.A_LIST) {
        lists.add(sheet.getName());
      }
      if (best.isEmpty() || fit > most) {
        best = Optional.of(sheet);
        most = fit;
      }
    }
    lists.remove(best.get().getName());
    return read(best.get(), seen, lists);
  }

  private static boolean isSeen(Sheet sheet) {
    return sheet.getVisibility() == SheetVisibility.VISIBLE;
  }

  private static Optional<Sheet> named(List<Sheet> sheets, String name) {
    return sheets.stream()
        .filter(sheet -> sheet.getName().equals(name))
        .findFirst()
        .or(
            () ->
                sheets.stream()
                    .filter(sheet -> sheet.getName().strip().equalsIgnoreCase(name.strip()))
                    .findFirst());
  }

  private ListReading noSheet(String name, List<String> seen) {
    return new ListReading.Refused(
        List.of(
            ListProblem.ofAll(
                source,
                Text.of("the workbook has no sheet \"{0}\"", Cell.brief(name)),
                Text.of("Its sheets are {0}.", quoted(seen)))),
        others(seen),
        ListReading.ReadAs.NOTHING.with(
            new ListReading.Source(source, Optional.empty(), Optional.of(name), seen)));
  }

  /** Ways to read each of these sheets. */
  private List<WayOn> others(List<String> names) {
    return names.stream()
        .limit(NAMED)
        .map(
            name ->
                new WayOn(
                    Text.of("the list in the sheet \"{0}\"", Cell.brief(name)),
                    request.options().withSheet(name)))
        .toList();
  }

  private static Text quoted(List<String> names) {
    var first =
        names.stream()
            .limit(NAMED)
            .map(name -> Text.of("\"{0}\"", Cell.brief(name)))
            .reduce((one, next) -> Text.of("{0}, {1}", one, next))
            .orElse(Text.NONE);
    return names.size() > NAMED ? Text.of("{0} and {1} more", first, names.size() - NAMED) : first;
  }

  /**
   * @param others sheets that may be lists, too
   */
  private ListReading read(Sheet sheet, List<String> seen, List<String> others) throws IOException {
    var remarks = new ArrayList<ListProblem>();
    if (!others.isEmpty()) {
      remarks.add(
          ListProblem.ofAll(
                  source,
                  Text.of(
                      "other sheets look like lists, too: {0}; \"{1}\" was read",
                      quoted(others), Cell.brief(sheet.getName())),
                  Text.of("Where another one is meant, choose it."))
              .with("--sheet \"" + Cell.brief(others.getFirst()) + "\""));
    }
    if (!isSeen(sheet)) {
      remarks.add(
          ListProblem.ofAll(
              source,
              Text.of("the sheet \"{0}\" is hidden", Cell.brief(sheet.getName())),
              Text.NONE));
    }
    var reading = headed(sheet, Integer.MAX_VALUE, remarks).understand();
    var as =
        reading
            .as()
            .with(
                new ListReading.Source(
                    source, Optional.empty(), Optional.of(sheet.getName()), seen));
    if (reading instanceof ListReading.Refused refused) {
      var ways = new ArrayList<>(refused.waysOn());
      ways.addAll(others(others));
      return new ListReading.Refused(refused.problems(), ways, as);
    }
    return reading.with(as);
  }

  private Headed headed(Sheet sheet, int most, List<ListProblem> remarks) throws IOException {
    var name = source + ", sheet " + Cell.brief(sheet.getName());
    var grid = new Grid.Builder(name, most);
    var layout = file.layout(sheet.getId());
    var merges = new MergedCells(layout.merges());
    try (var rows = sheet.openStream()) {
      rows.limit(most)
          .takeWhile(_ -> !grid.isFull())
          .forEach(row -> grid.add(cells(row, grid, merges)));
    }
    var read = grid.build(Text.of("workbook, sheet {0}", Cell.brief(sheet.getName())), List.of());
    var all = new ArrayList<>(remarks);
    all.addAll(new HiddenParts(layout, read, name).remarks());
    return Headed.of(
        new Grid(read.form(), read.rows(), read.problems(), all, read.excess()), name, request);
  }

  private List<Cell> cells(Row row, Grid.Builder grid, MergedCells merges) {
    var cells = new ArrayList<Cell>();
    int line = row.getRowNum();
    int width = Math.max(row.getCellCount(), merges.lastColumn(line));
    for (int i = 0; i < width; i++) {
      var cell = i < row.getCellCount() ? row.getCell(i) : null;
      if (cell == null && i >= Limits.COLUMNS) {
        continue;
      }
      var read = cell == null ? new Cell("", line, i + 1) : text.of(cell, line, i + 1);
      grid.add(cells, merges.carry(read));
    }
    return cells;
  }
}
