package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How the cells of a workbook read as text. */
class WorkbookTest {

  private static ListReading.Understood read(byte[] workbook) {
    return (ListReading.Understood) ListReader.read(workbook, "list.xlsx");
  }

  private static String note(Number number, String format) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var workbook = new org.dhatim.fastexcel.Workbook(bytes, "Some office", null)) {
      var sheet = workbook.newWorksheet("Looks");
      sheet.value(0, 0, "Look");
      sheet.value(0, 1, "Note");
      sheet.value(1, 0, "1");
      sheet.value(1, 1, number);
      if (!format.isEmpty()) {
        sheet.style(1, 1).format(format).set();
      }
    }
    return read(bytes.toByteArray()).list().setups().getFirst().note().orElseThrow();
  }

  @Test
  void leavesCellsThatAreNotThereEmpty() throws IOException {
    var rows =
        "<row r=\"2\">"
            + TestWorkbook.cell("A2", "7")
            + TestWorkbook.cell("D2", "far")
            + "</row><row r=\"3\">"
            + TestWorkbook.cell("B3", "no code")
            + TestWorkbook.cell("C3", "x")
            + "</row>";
    var reading = ListReader.read(TestWorkbook.of(1, TestWorkbook.sheet(rows)), "list.xlsx");
    assertThat(((ListReading.Refused) reading).problems())
        .extracting(ListProblem::toString)
        .containsExactly(
            "list.xlsx, sheet S1, line 3, column 1: this line has no setup in the column \"Setup\"");
    var first =
        TestWorkbook.of(1, TestWorkbook.sheet(rows.substring(0, rows.indexOf("<row r=\"3"))));
    assertThat(read(first).list().setups().getFirst().columns()).containsEntry("column 4", "far");
  }

  @ParameterizedTest
  @CsvSource({
    "7, 7",
    "100, 100",
    "1200000, 1200000",
    "0, 0",
    "-5, -5",
    "1.5, 1.5",
    "1.50, 1.5",
    "0.001, 0.001",
    "1E3, 1000",
  })
  void showsNumbersWithoutAnExponentAndWithoutZerosAtTheEnd(String number, String text)
      throws IOException {
    assertThat(note(Double.valueOf(number), "")).isEqualTo(text);
  }

  // ECMA-376, part 1, section 18.8.31: 0 shows a digit, also where the number has none.
  @ParameterizedTest
  @CsvSource({
    "7, 000, 007",
    "1234, 000, 1234",
    "7, 0.00, 7",
    "7, #000, 7",
    "7.5, 000, 7.5",
    "-7, 000, -7",
  })
  void showsTheLeadingZerosOfItsFormat(double number, String format, String text)
      throws IOException {
    assertThat(note(number, format)).isEqualTo(text);
  }

  // ECMA-376, part 1, section 18.17.4.1: in the 1900 date system 2,958,465 is 9999-12-31, and 61 is
  // 1900-03-01 because it has a 29 February.
  @ParameterizedTest
  @CsvSource({
    "61, yyyy-mm-dd, 1900-03-01",
    "2958465, dd.mm.yyyy, 9999-12-31",
    "2958466, dd.mm.yyyy, 2958466",
    "-1, dd.mm.yyyy, -1",
    "61.5, dd.mm.yyyy hh:mm, 1900-03-01T12:00",
    "61, [red]0, 61",
    "61, 0\\d, 61",
    "61, yy, 1900-03-01",
    "61, h:mm, 61",
  })
  void showsDatesAsIso8601Does(double number, String format, String text) throws IOException {
    assertThat(note(number, format)).isEqualTo(text);
  }
}
