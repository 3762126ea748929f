package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Names below each other, piece by piece. */
class NameColumnsTest {
  /** The pieces of each name; a dash where it has none, nothing for a name that does not fit. */
  private static List<String> rows(String... names) {
    var columns = NameColumns.of(List.of(names));
    return List.of(names).stream()
        .map(
            name ->
                columns.row(NameTokens.of(name).name()).stream()
                    .map(text -> text.orElse("-"))
                    .collect(Collectors.joining(" ")))
        .toList();
  }

  @Test
  void aPieceMayBeLeftOutWithTheSeparatorBeforeIt() {
    assertThat(rows("A_F_01", "A_02", "B_F_03")).containsExactly("A F 01", "A - 02", "B F 03");
    assertThat(rows("1_F_x_01", "1_x_02", "2_F_x_03"))
        .as("which of two is left out cannot be seen: it is the first that makes the name fit")
        .hasSize(3)
        .doesNotContain("");
  }

  @Test
  void theFirstPieceMayBeLeftOutWithTheSeparatorBehindIt() {
    assertThat(rows("HDR_001_01", "002_02", "HDR_003_03"))
        .containsExactly("HDR 001 01", "- 002 02", "HDR 003 03");
  }

  @Test
  void aNumberThatIsLeftOutIsToldFromTheOthersByItsLength() {
    assertThat(rows("001_02_0003", "001_0004", "002_01_0005"))
        .containsExactly("001 02 0003", "001 - 0004", "002 01 0005");
  }

  @Test
  void lettersAreLeftOutRatherThanNumbers() {
    assertThat(rows("01_F_02_03", "01_02_04", "02_B_01_05"))
        .containsExactly("01 F 02 03", "01 - 02 04", "02 B 01 05");
  }

  @Test
  void aNameOfLessThanHalfThePiecesDoesNotFit() {
    assertThat(rows("A_F_x_y_01", "A_B_x_y_02", "A_03")).last().isEqualTo("");
    assertThat(rows("A_F_x_01", "A_B_x_02", "A_03")).last().isEqualTo("A - - 03");
  }

  @Test
  void theMakingThatMostNamesFitIsTaken() {
    assertThat(rows("A-B-C-D-9", "A-01", "D-02", "E-03"))
        .containsExactly("", "A 01", "D 02", "E 03");
  }

  /** Of two makings that as many names fit, the shorter one says less than was seen. */
  @Test
  void ofTwoMakingsThatAsManyFitTheShorterOneIsTaken() {
    assertThat(rows("A_01_02_x", "01-02")).containsExactly("", "01 02");
  }

  @Test
  void numbersWithZerosInFrontHaveTheLengthThatMostHave() {
    assertThat(rows("A_001", "A_002", "A_13", "A_0004")).containsExactly("A 001", "A 002", "", "");
    assertThat(rows("A_1", "A_20", "A_300")).containsExactly("A 1", "A 20", "A 300");
    assertThat(rows("A_0", "A_10")).containsExactly("A 0", "A 10");
    assertThat(rows("A_00", "A_1")).as("as many of each: the shorter").contains("");
  }

  @Test
  void lettersAndDigitsThatNeverChangeAreOnePiece() {
    assertThat(rows("A7_001", "A7_002")).containsExactly("A7 001", "A7 002");
    assertThat(rows("A7_001", "A8_002")).containsExactly("A 7 001", "A 8 002");
    assertThat(rows("A7_001")).as("of one name nothing is known").containsExactly("A 7 001");
    assertThat(rows("001_A7", "002_A7")).as("the last number may count").hasSize(2);
  }

  @Test
  void theUnderscoreSeparatesWhereItIsInAsManyNamesAsAnotherSign() {
    assertThat(rows("red coat-x_01", "blue hat-y_02"))
        .containsExactly("red coat-x 01", "blue hat-y 02");
    assertThat(rows("red coat-01", "blue hat-02")).containsExactly("red coat 01", "blue hat 02");
  }

  @Test
  void ofManyNamesTheFirstFiveHundredAreCompared() {
    var names = new ArrayList<String>();
    for (int i = 0; i < NameColumns.MOST + 1; i++) {
      names.add("A_%04d".formatted(i));
    }
    var columns = NameColumns.of(names);
    assertThat(columns.rows()).hasSize(NameColumns.MOST);
    assertThat(columns.row(names.getLast())).isEmpty();
  }

  @Test
  void aNameOfMoreThanSixtyPiecesIsNotCompared() {
    assertThat(NameColumns.of(List.of("a1".repeat(30))).columns()).hasSize(60);
    assertThat(NameColumns.of(List.of("a1".repeat(30) + "b")).columns()).isEmpty();
  }

  @Test
  void whatStandsBehindTheLastPieceIsKept() {
    assertThat(NameColumns.of(List.of("A_01)", "A_02)")).end()).isEqualTo(")");
  }
}
