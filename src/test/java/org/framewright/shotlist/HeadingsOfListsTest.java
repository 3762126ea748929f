package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How the row of headings is found, and what its columns are called. */
class HeadingsOfListsTest {

  private static ListReading.Understood read(String text) {
    return (ListReading.Understood)
        ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
  }

  private static ListProblem refused(String text) {
    var reading = ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
    return ((ListReading.Refused) reading).problems().getFirst();
  }

  /** A workbook whose sheets are called S1, S2 and so on. */
  private static ListReading.Understood sheets(String[]... sheets) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var workbook = new org.dhatim.fastexcel.Workbook(bytes, "Some office", null)) {
      for (int s = 0; s < sheets.length; s++) {
        var sheet = workbook.newWorksheet("S" + (s + 1));
        for (int i = 0; i < sheets[s].length; i++) {
          var cells = sheets[s][i].split(",", -1);
          for (int j = 0; j < cells.length; j++) {
            sheet.value(i, j, cells[j]);
          }
        }
      }
    }
    return (ListReading.Understood) ListReader.read(bytes.toByteArray(), "list.xlsx");
  }

  private static String[] rows(String... rows) {
    return rows;
  }

  // The sheet that is best understood

  @Test
  void takesTheSheetWithMoreHeadingsThatItKnows() throws IOException {
    var read =
        sheets(
            rows("Look,a,b,c,d,e,f", "1,,,,,,", "2,,,,,,"),
            rows("Look,Name", "3,Coat"),
            rows("Look", "4"));
    assertThat(read.list().codes()).containsExactly("3");
  }

  @Test
  void takesTheWiderOfTwoSheetsWithTheSameHeadings() throws IOException {
    var read =
        sheets(
            rows("Look,Name", "1,Coat", "2,Hat", "3,Belt"),
            rows("Look,Name,Size", "4,Coat,34"),
            rows("Look,Name", "5,Coat", "6,Hat", "7,Belt", "8,Bag"));
    assertThat(read.list().codes()).containsExactly("4");
  }

  @Test
  void takesTheSheetWithMoreFullRowsOfTwoWithTheSameHeadings() throws IOException {
    var read =
        sheets(
            rows("Look,Name", "a note", "another", "a third", "a fourth"),
            rows("Look,Name", "1,Coat", "2,Hat"));
    assertThat(read.list().codes()).containsExactly("1", "2");
  }

  @Test
  void takesTheFirstOfSheetsThatAreUnderstoodAsWell() throws IOException {
    var read = sheets(rows("Look,Name", "1,Coat"), rows("Look,Name", "2,Hat"));
    assertThat(read.list().codes()).containsExactly("1");
  }

  @Test
  void takesASheetThatThisProgramExportedBeforeAnyOther() throws IOException {
    var read =
        sheets(
            rows("Look,Name,Views,Frames,Day,Rack,Model,Note", "1,Coat,F,8,Mon,A,Mira,late"),
            rows("Setup,Title,Views,Frames wanted", "2,Hat,,"));
    assertThat(read.list().codes()).containsExactly("2");
  }

  @Test
  void readsItsOwnExportWhateverAColumnIsCalled() {
    var columns = new LinkedHashMap<String, String>();
    columns.put("a;setup;title;views;frames;day;rack;model;note", "x");
    var list =
        new ShotList(List.of(new Setup("1", "Coat", List.of(), OptionalInt.empty(), columns)));
    assertThat(read(ListWriter.csv(list, _ -> new LinkedHashMap<>())).list()).isEqualTo(list);
  }

  @Test
  void isNoExportWhereTheFirstHeadingsAreOthers() {
    // The second row knows more headings than the first.
    var read =
        read("Setup,Title,Views,Frames\nNote,Look,Name,Views,Frames,Day\nx,1,Coat,F,8,Mon\n");
    assertThat(read.list().codes()).containsExactly("1");
    assertThat(read.form().english()).endsWith("headings in line 2");
  }

  // Columns

  @Test
  void takesTheFirstOfColumnsThatMayMeanTheSame() {
    var read = read("Look,Look No.,Name,Description\n1,x,Coat,long\n");
    assertThat(read.list().setups().getFirst().code()).isEqualTo("1");
    assertThat(read.list().setups().getFirst().title()).isEqualTo("Coat");
    assertThat(read.list().setups().getFirst().columns())
        .isEqualTo(Map.of("Look No.", "x", "Description", "long"));
  }

  @Test
  void givesAHeadingThatIsThereAlreadyTheNextFreeNumber() {
    var read = read("Setup,Size,Size 2,Size,Size\n1,a,b,c,d\n");
    assertThat(read.list().setups().getFirst().columns())
        .containsExactly(
            Map.entry("Size", "a"),
            Map.entry("Size 2", "b"),
            Map.entry("Size 3", "c"),
            Map.entry("Size 4", "d"));
  }

  @Test
  void listsColumnsThatHaveAHeadingOrHoldSomething() {
    var read = read("Setup,Title,,Colour,\n1,Coat,, ,\n2,Hat,,,oat,far\n");
    assertThat(read.columns())
        .extracting(Column::position, Column::heading)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(1, "Setup"),
            org.assertj.core.groups.Tuple.tuple(2, "Title"),
            org.assertj.core.groups.Tuple.tuple(4, "Colour"),
            org.assertj.core.groups.Tuple.tuple(5, "column 5"),
            org.assertj.core.groups.Tuple.tuple(6, "column 6"));
    assertThat(read.list().setups().getFirst().columns()).isEqualTo(Map.of("Colour", ""));
    assertThat(read.list().setups().getLast().columns())
        .isEqualTo(Map.of("Colour", "", "column 5", "oat", "column 6", "far"));
  }

  @Test
  void takesAColumnForAViewOnlyWhereItHoldsNothingButMarks() {
    var setup = read("Setup,Front,Back\n1,x,x\n2,hem only,x\n").list().setups().getFirst();
    assertThat(setup.viewsText()).isEqualTo("Back");
    assertThat(setup.columns()).isEqualTo(Map.of("Front", "x"));
  }

  // Rows above, between and below

  @Test
  void saysWhatStandsAboveTheHeadingsAndWhere() {
    var read = read(",,Winter campaign\nSetup,Title,Note\n1,Coat,\n");
    assertThat(read.remarks())
        .extracting(ListProblem::toString)
        .containsExactly(
            "list.csv, line 1, column 3: \"Winter campaign\" stands above the headings and is left"
                + " out");
  }

  @Test
  void saysWhatItReadWhereItFoundNoHeadings() {
    assertThat(refused(",Winter, ,campaign\n"))
        .hasToString(
            "list.csv, line 1, column 1: no line of headings with a setup in it was found; the"
                + " first line reads Winter | campaign");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"Setup,Title,\n1,Coat,x\nSetup,Title,\n", "Setup,Title,\n1,Coat,x\nSetup,Title,"})
  void leavesHeadingsOutThatAreRepeatedToTheLastCell(String text) {
    var read = read(text);
    assertThat(read.list().codes()).containsExactly("1");
    assertThat(read.remarks())
        .extracting(ListProblem::toString)
        .containsExactly("list.csv, line 3, column 1: the headings are repeated here, left out");
  }

  @Test
  void readsARowThatEndsWithItsSeparatorAtTheEndOfTheFile() {
    assertThat(read("Setup,Title\n1,Coat\n2,").list().codes()).containsExactly("1", "2");
  }
}
