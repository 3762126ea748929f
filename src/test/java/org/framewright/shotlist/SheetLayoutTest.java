package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Hidden rows and columns, and cells that are merged. Source of the elements: ECMA-376, part 1,
 * sections 18.3.1.13 (col), 18.3.1.55 (mergeCell) and 18.3.1.73 (row).
 */
class SheetLayoutTest {

  private static SheetLayout layout(String elements) throws XMLStreamException {
    var xml =
        XMLInputFactory.newInstance()
            .createXMLStreamReader(new StringReader("<sheet>" + elements + "</sheet>"));
    var builder = new SheetLayout.Builder();
    while (xml.hasNext()) {
      if (xml.next() == XMLStreamConstants.START_ELEMENT) {
        builder.element(xml);
      }
    }
    return builder.build();
  }

  @Test
  void rowsAreHiddenWhereTheySaySo() throws XMLStreamException {
    var layout =
        layout(
            "<row r='2' hidden='1'/><row r='3' hidden='true'/><row r='4' hidden='0'/><row r='5'/>");
    assertThat(layout.hiddenRows()).containsExactly(2, 3);
    assertThat(layout.hiddenColumns()).isEmpty();
    assertThat(layout.merges()).isEmpty();
  }

  @Test
  void aRowWithoutANumberFollowsTheOneBefore() throws XMLStreamException {
    assertThat(layout("<row r='7'/><row hidden='1'/><row r='x' hidden='1'/>").hiddenRows())
        .containsExactly(8, 9);
  }

  @ParameterizedTest
  @CsvSource({
    "min='2' max='4' hidden='1', 2 3 4",
    "min='2' max='2' hidden='true', 2",
    "min='2' max='4', ''",
    "min='4' max='2' hidden='1', ''",
    "max='2' hidden='1', 1 2",
    "min='0' max='1' hidden='1', 1",
    "min='3' hidden='1', ''",
    "min='999' max='16384' hidden='1', 999 1000",
  })
  void columnsAreHiddenFromTheFirstToTheLastThatAListMayHave(String col, String hidden)
      throws XMLStreamException {
    assertThat(Limits.COLUMNS).isEqualTo(1_000);
    var columns = layout("<col " + col + "/>").hiddenColumns();
    assertThat(columns.stream().map(String::valueOf).collect(Collectors.joining(" ")))
        .isEqualTo(hidden);
  }

  @Test
  void cellsAreMergedOverSeveralRows() throws XMLStreamException {
    assertThat(layout("<mergeCell ref='B2:C5'/><mergeCell ref='A7:A8'/>").merges())
        .containsExactly(new SheetLayout.Merge(2, 2, 5), new SheetLayout.Merge(1, 7, 8));
  }

  @ParameterizedTest
  @CsvSource({"A1:D1", "A3:A2", "A1", "1:2", "''", "ABCD1:ABCD2"})
  void mergesOfOneRowAndOtherReferencesAreNone(String reference) throws XMLStreamException {
    assertThat(layout("<mergeCell ref='" + reference + "'/><mergeCell/>"))
        .isSameAs(SheetLayout.NONE);
  }

  @Test
  void noMoreIsKeptThanAListMayHaveOfLines() throws XMLStreamException {
    var rows = "<row hidden='1'/>".repeat(Limits.LINES + 1);
    assertThat(layout(rows).hiddenRows()).hasSize(Limits.LINES);
    var merges = "<mergeCell ref='A1:A2'/>".repeat(Limits.LINES + 1);
    assertThat(layout(merges).merges()).hasSize(Limits.LINES);
  }

  // What becomes of merged cells

  private static Cell cell(String text, int line, int column) {
    return new Cell(text, line, column);
  }

  @Test
  void theTextOfMergedCellsIsCarriedDownToTheirLastRow() {
    var cells = new MergedCells(List.of(new SheetLayout.Merge(2, 3, 5)));
    assertThat(cells.carry(cell("", 2, 2)).text()).isEmpty();
    var first = cell("Coat", 3, 2);
    assertThat(cells.carry(first)).isSameAs(first);
    for (int line = 4; line <= 5; line++) {
      var carried = cells.carry(cell("", line, 2));
      assertThat(carried).isEqualTo(new Cell("Coat", line, 2, Cell.Kind.CARRIED));
    }
    assertThat(cells.carry(cell("", 6, 2)).text()).isEmpty();
    assertThat(cells.carry(cell("", 4, 1)).text()).isEmpty();
    assertThat(cells.carry(cell("own", 4, 2)).text()).isEqualTo("own");
  }

  @Test
  void aRowReachesAsFarAsTheMergedCellsThatAreOpenInIt() {
    var cells =
        new MergedCells(
            List.of(
                new SheetLayout.Merge(2, 3, 5), new SheetLayout.Merge(Limits.COLUMNS + 1, 3, 4)));
    assertThat(cells.lastColumn(3)).isZero();
    cells.carry(cell("a", 3, 2));
    assertThat(cells.lastColumn(5)).isEqualTo(2);
    assertThat(cells.lastColumn(6)).isZero();
    cells.carry(cell("b", 3, Limits.COLUMNS + 1));
    assertThat(cells.lastColumn(4)).isEqualTo(Limits.COLUMNS);
    assertThat(cells.lastColumn(5)).isEqualTo(2);
  }

  // What is said of hidden parts

  private static List<String> remarks(String hidden, int lines) throws IOException {
    var rows = new StringBuilder();
    for (int line = 2; line <= lines; line++) {
      var attributes = hidden.contains(" " + line + " ") ? " hidden=\"1\"" : "";
      rows.append("<row r=\"").append(line).append('"').append(attributes).append('>');
      rows.append(TestWorkbook.cell("A" + line, "" + line)).append("</row>");
    }
    return remarks(TestWorkbook.sheet(rows.toString()));
  }

  private static List<String> remarks(String sheet) throws IOException {
    var read = ListReader.read(TestWorkbook.of(1, sheet), "list.xlsx");
    return ((ListReading.Understood) read).remarks().stream().map(ListProblem::toString).toList();
  }

  @Test
  void aHiddenRowIsReadAndTold() throws IOException {
    assertThat(remarks(" 3 ", 4))
        .containsExactly(
            "list.xlsx, sheet S1, line 3: this line is hidden in the sheet and was read");
    assertThat(remarks("", 4)).isEmpty();
  }

  @Test
  void hiddenRowsAreToldAsRangesTheFirstEight() throws IOException {
    assertThat(remarks(" 2 3 4 9 ", 9))
        .containsExactly(
            "list.xlsx, sheet S1, line 2: this line and 3 more are hidden in the sheet and were"
                + " read: lines 2 to 4, 9");
    var even = Stream.iterate(2, line -> line + 2).limit(10).map(String::valueOf);
    assertThat(remarks(even.collect(Collectors.joining(" ", " ", " ")), 20))
        .containsExactly(
            "list.xlsx, sheet S1, line 2: this line and 9 more are hidden in the sheet and were"
                + " read: lines 2, 4, 6, 8, 10, 12, 14, 16");
  }

  @Test
  void hiddenColumnsThatHoldSomethingAreToldByTheirLetters() throws IOException {
    var sheet =
        TestWorkbook.sheet(
            "<row r=\"2\">"
                + TestWorkbook.cell("A2", "7")
                + TestWorkbook.cell("Z2", "z")
                + TestWorkbook.cell("AA2", "aa")
                + TestWorkbook.cell("AZ2", "az")
                + TestWorkbook.cell("BA2", "ba")
                + "</row>");
    var cols =
        "<cols><col min=\"3\" max=\"3\" hidden=\"1\"/><col min=\"26\" max=\"27\" hidden=\"1\"/>"
            + "<col min=\"52\" max=\"60\" hidden=\"1\"/></cols><sheetData>";
    assertThat(remarks(sheet.replace("<sheetData>", cols)))
        .containsExactly(
            "list.xlsx, sheet S1: columns are hidden in the sheet and were read: Z, AA, AZ, BA");
  }
}
