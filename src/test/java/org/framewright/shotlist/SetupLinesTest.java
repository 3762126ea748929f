package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a line below the headings says, and what is said about it. */
class SetupLinesTest {

  private static ListReading.Understood read(String text) {
    return (ListReading.Understood)
        ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
  }

  private static List<String> refused(String text) {
    var reading = ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
    return ((ListReading.Refused) reading).problems().stream().map(ListProblem::toString).toList();
  }

  private static List<String> remarks(String text) {
    return read(text).remarks().stream().map(ListProblem::toString).toList();
  }

  @Test
  void keepsTheFirstThousandRemarks() {
    var text = new StringBuilder("Setup,Title\n1,Coat\n");
    for (int i = 0; i <= Limits.PROBLEMS; i++) {
      text.append("Dresses,\n");
    }
    var remarks = read(text.toString()).remarks();
    assertThat(remarks).hasSize(Limits.PROBLEMS);
    assertThat(remarks.getLast().line()).isEqualTo(Limits.PROBLEMS + 2);
  }

  @Test
  void saysHowTwoSetupsAreTheSame() {
    assertThat(refused("Setup,Title\na-1,Coat\na-1,Hat\nA-01,Belt\n"))
        .containsExactly(
            "list.csv, line 3, column 1: setup a-1 stands in line 2 already",
            "list.csv, line 4, column 1: setup A-01 looks the same as a-1 in line 2: case and"
                + " leading zeros do not count");
  }

  @Test
  void findsTitlesInTheFirstColumnToo() {
    var read = read("Title,Setup\nCoat,1\n,Dresses\n");
    assertThat(read.list().codes()).containsExactly("1");
    assertThat(read.remarks())
        .extracting(ListProblem::toString)
        .containsExactly(
            "list.csv, line 3, column 2: \"Dresses\" stands alone in its line and is left out");
    assertThat(refused("Title,Setup\nCoat,\n"))
        .containsExactly(
            "list.csv, line 2, column 6: this line has no setup in the column \"Setup\"");
  }

  @Test
  void takesALoneWordForASetupWhereTheListHasNoTitles() {
    assertThat(read("Setup,Note\nDresses,\n").list().codes()).containsExactly("Dresses");
  }

  @Test
  void leavesOutALoneNoteInALineThatEndsBeforeItsTitle() {
    assertThat(remarks("Note,Setup,Title\n,1,Coat\nlunch,\n"))
        .containsExactly(
            "list.csv, line 3, column 1: \"lunch\" stands alone in its line and is left out");
    assertThat(remarks("Note,Title,Setup\n,Coat,1\nlunch\n"))
        .containsExactly(
            "list.csv, line 3, column 1: \"lunch\" stands alone in its line and is left out");
  }

  @Test
  void saysThatALineOfSeveralCellsHasNoSetupWhereItEndsBeforeIt() {
    assertThat(refused("Note,Title,Setup\nlunch,Coat\n"))
        .containsExactly("list.csv, line 2: this line has no setup in the column \"Setup\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\uFFFDcoat", "Co\uFFFDat", "coat\uFFFD"})
  void saysWhereALetterCouldNotBeRead(String title) {
    assertThat(remarks("Setup,Title\n1," + title + "\n"))
        .containsExactly(
            "list.csv, line 2, column 3: a letter of \"" + title + "\" could not be read");
  }

  @ParameterizedTest
  @CsvSource({"12, 12", "12 pcs., 12", "1, 1", "9999, 9999", "012, 12"})
  void readsANumberOfFrames(String cell, int frames) {
    var read = read("Setup,Frames\n1," + cell + "\n");
    assertThat(read.list().setups().getFirst().framesWanted()).hasValue(frames);
    assertThat(read.remarks()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-", "00"})
  void wantsNoNumberOfFramesWhereTheListSaysNone(String cell) {
    var read = read("Setup,Frames\n1," + cell + "\n");
    assertThat(read.list().setups().getFirst().framesWanted()).isEqualTo(OptionalInt.empty());
    assertThat(read.remarks()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"a few", "12345", "8 or 9"})
  void keepsANumberOfFramesInWordsAndSaysSo(String cell) {
    var read = read("Setup,Frames\n1," + cell + "\n");
    assertThat(read.list().setups().getFirst().columns()).isEqualTo(Map.of("Frames", cell));
    assertThat(read.remarks())
        .extracting(ListProblem::toString)
        .containsExactly(
            "list.csv, line 2, column 3: \""
                + cell
                + "\" is no number of frames; it is kept as text");
  }

  @Test
  void saysThatAViewIsNamedTwiceAndKeepsTheFirst() {
    var text = "Setup,Views\n1,\"F:8, B, f:2\"\n";
    assertThat(read(text).list().setups().getFirst().viewsText()).isEqualTo("F:8, B");
    assertThat(remarks(text))
        .containsExactly("list.csv, line 2, column 3: the view f is named twice");
  }

  @Test
  void wantsNoFrameOfAViewWhoseColumnSaysZero() {
    var setup = read("Setup,Front,Back\n1,0,1\n").list().setups().getFirst();
    assertThat(setup.viewsText()).isEqualTo("Back:1");
  }
}
