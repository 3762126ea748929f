package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.OptionalInt;
import org.framewright.base.FormulaGuard;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is written into cells so that nothing in them runs and all of it is read again. */
class CellTextTest {

  // OWASP, "CSV Injection": = + - @, tab, carriage return, line feed, full-width forms.
  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\tx",
        "\rx",
        "\nx",
        "\uFF1D1",
        "\uFF0B1",
        "\uFF0D1",
        "\uFF20x"
      })
  void putsAnApostropheBeforeWhatWouldRun(String text) {
    assertThat(FormulaGuard.with(text)).isEqualTo("'" + text);
    assertThat(FormulaGuard.without("'" + text)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "Coat", "a=b", "x-1", "'", "''", "'Coat'", "it's", " =1", "\"", "a;b"})
  void leavesOtherTextAsItIs(String text) {
    assertThat(FormulaGuard.with(text)).isEqualTo(text);
    assertThat(FormulaGuard.without(text)).isEqualTo(text);
  }

  @Test
  void guardsWhatASpreadsheetWithAnotherSeparatorWouldRun() {
    assertThat(FormulaGuard.with("a;=b")).isEqualTo("a;'=b");
    assertThat(FormulaGuard.with("a\n-b\n\n")).isEqualTo("a\n'-b\n\n");
    assertThat(FormulaGuard.with("a;\"=b")).isEqualTo("a;'\"=b");
    assertThat(FormulaGuard.with("'=b")).isEqualTo("''=b");
  }

  @Test
  void guardsCellsAndHeadingsOfAnExport() {
    var columns = new LinkedHashMap<String, String>();
    columns.put("=Rack", "@A, \"1\"");
    var list =
        new ShotList(
            List.of(
                new Setup(
                    "-1",
                    "=cmd|' /C calc'!A1",
                    List.of(new View("+")),
                    OptionalInt.of(2),
                    columns)));
    assertThat(ListWriter.csv(list, _ -> new LinkedHashMap<>()))
        .isEqualTo(
            "Setup,Title,Views,Frames wanted,'=Rack\r\n"
                + "'-1,'=cmd|' /C calc'!A1,\"'\"\"+\"\"\",2,\"'@A, \"\"1\"\"\"\r\n");
  }

  // ECMA-376, part 1, section 22.9.2.19.
  @Test
  void writesWhatXmlCannotHoldAsWorkbooksDo() {
    assertThat(XmlText.escaped("a\u001Bb\r\n\tc")).isEqualTo("a_x001B_b_x000D_\n\tc");
    assertThat(XmlText.escaped("_x001B_ _x1_ __x0041_"))
        .isEqualTo("_x005F_x001B_ _x1_ __x005F_x0041_");
    assertThat(XmlText.escaped("\uD83D\uDC5F \uD83D \uDC5F \uFFFE\uFFFD"))
        .isEqualTo("\uD83D\uDC5F _xD83D_ _xDC5F_ _xFFFE_\uFFFD");
    assertThat(XmlText.plain("_x001b_ _x005F_x001B_ _xZZZZ_")).isEqualTo("\u001B _x001B_ _xZZZZ_");
  }

  @Test
  void putsQuotationMarksAroundViewsThatWouldReadAsOthers() {
    var views =
        List.of(
            new View("F", OptionalInt.of(8)),
            new View("three quarter"),
            new View("Front, left", OptionalInt.of(2)),
            new View("F B"),
            new View("a:3"),
            new View("-"),
            new View("12\" shelf"),
            new View(" x"),
            new View("two\nlines"));
    var text = ViewsText.write(views);
    assertThat(text)
        .isEqualTo(
            "F:8, three quarter, \"Front, left\":2, \"F B\", \"a:3\", \"-\", \"12\"\" shelf\", \" x\","
                + " \"two\nlines\"");
    assertThat(ViewsText.read(text)).isEqualTo(views);
    assertThat(ViewsText.read(ViewsText.write(List.of(new View("-")))))
        .containsExactly(new View("-"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"12\" shelf", "\"open", "\"a\"b", "\"\"", "\"a\":x"})
  void takesAQuotationMarkForTextWhereItEnclosesNothing(String text) {
    assertThat(ViewsText.read(text)).extracting(View::code).containsAnyOf(text, "\"a\"", "12\"");
  }

  @Test
  void readsASectionOfTheListForWhatItIs() {
    var read =
        (ListReading.Understood)
            ListReader.read(
                "Setup,Title,Note\nDresses,,\n,,as agreed\n1,Coat,\nRow 9,,\n"
                    .getBytes(java.nio.charset.StandardCharsets.UTF_8),
                "list.csv");
    assertThat(read.list().codes()).containsExactly("1", "Row 9");
    assertThat(read.remarks())
        .extracting(ListProblem::toString)
        .containsExactly(
            "list.csv, line 2, column 1: \"Dresses\" stands alone in its line and is left out",
            "list.csv, line 3, column 3: \"as agreed\" stands alone in its line and is left out");
  }

  @Test
  void namesASeparatorThatNoListUses() {
    var read =
        (ListReading.Refused)
            ListReader.read(
                "sep=#\nSetup#Title\n1#x\n".getBytes(java.nio.charset.StandardCharsets.UTF_8),
                "list.csv");
    assertThat(read.problems().getFirst().toString())
        .isEqualTo("list.csv, line 1, column 1: this line names a separator that no list uses");
    assertThat(
            ListReader.read(
                "sep=;\nSetup;Title\n1;x,y\n".getBytes(java.nio.charset.StandardCharsets.UTF_8),
                "list.csv"))
        .isInstanceOfSatisfying(
            ListReading.Understood.class, one -> assertThat(one.remarks()).isEmpty());
  }

  @Test
  void shortensLongTextInMessages() {
    assertThat(Cell.brief("x".repeat(60))).hasSize(60);
    assertThat(Cell.brief("x".repeat(61))).isEqualTo("x".repeat(60) + "...");
    assertThat(Cell.brief("x".repeat(59) + "\uD83D\uDC5F!")).isEqualTo("x".repeat(59) + "...");
  }
}
