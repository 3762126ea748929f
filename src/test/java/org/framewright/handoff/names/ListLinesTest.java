package org.framewright.handoff.names;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.framewright.base.FileProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Which lines of a mail or a table ask for frames. How programs write them is common practice, no
 * source; the people are invented.
 */
class ListLinesTest {
  private static final List<KnownName> NAMES =
      IntStream.range(1, 6)
          .mapToObj(i -> new KnownName(i, "IMG_100" + i, KnownName.Kind.NOW))
          .toList();

  private static NamesRead read(byte[] bytes) {
    try {
      return NamesRead.of(bytes, "names.txt", NAMES);
    } catch (FileProblemException e) {
      throw new AssertionError(e.problem().sentences(), e);
    }
  }

  private static NamesRead read(String text) {
    return read(text.getBytes(UTF_8));
  }

  /** The lines by number: the frames that each asks for, or why it is passed over. */
  private static List<String> lines(String text) {
    return read(text).lines().stream()
        .map(
            line ->
                line.number()
                    + " "
                    + line.passedOver()
                        .orElseGet(
                            () ->
                                line.pieces().stream()
                                    .map(
                                        piece ->
                                            piece instanceof Piece.Taken taken
                                                ? taken.frames().toString()
                                                : piece.why())
                                    .collect(Collectors.joining(", "))))
        .toList();
  }

  @Test
  void theHeadOfAMailEndsWithItsLastLine() {
    assertThat(lines("\n \nFrom: Claire\nDate: 24 Nov 2026\nIMG_1001\n"))
        .containsExactly("3 the head of a mail", "4 the head of a mail", "5 [1]");
    assertThat(lines("*Von:* Claire\n*Betreff:* IMG_1002"))
        .containsExactly("1 the head of a mail", "2 the head of a mail");
  }

  @Test
  void oneLineThatBeginsAsAHeadDoesIsAPersonsOwn() {
    assertThat(lines("Hi Ines\nwe decided\nTo: IMG_1001\nthanks"))
        .containsExactly("1 ", "2 ", "3 [1]", "4 ");
  }

  @Test
  void aHeadBehindSomethingElseBeginsTheMailThatWasAnswered() {
    assertThat(lines("IMG_1001\n\n\nVon: Ines\nGesendet: Montag\n\nIMG_1002\n-- \n1003"))
        .containsExactly(
            "1 [1]",
            "4 the head of a mail",
            "5 the head of a mail",
            "7 quoted from an earlier message",
            "8 quoted from an earlier message",
            "9 quoted from an earlier message");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "-----Original Message-----",
        "---------- Forwarded message ---------",
        "________________ Ursprüngliche Nachricht",
        "----- MESSAGE D'ORIGINE -----",
        "Ines Falk wrote:",
        "Am Di., 24. Nov. 2026 um 10:14 Uhr schrieb Ines Falk <ines@studio.example>:",
        "Le mar. 24 nov. 2026 à 10:14, Ines Falk a écrit :",
        "El mar, 24 nov 2026, Ines Falk escribió:",
        "Il giorno mar 24 nov 2026 Ines Falk ha scritto:",
        "Em ter., 24 de nov. de 2026, Ines Falk escreveu:",
        "Op di 24 nov. 2026 schreef Ines Falk:",
        "wt., 24 lis 2026, Ines Falk napisał(a):",
      })
  void whatStandsBelowTheLineBeforeAnOlderMailIsQuoted(String line) {
    assertThat(lines("IMG_1001\n" + line + "\nIMG_1002\nIMG_1003"))
        .containsExactly(
            "1 [1]",
            "2 quoted from an earlier message",
            "3 quoted from an earlier message",
            "4 quoted from an earlier message");
  }

  @Test
  void answersBetweenQuotedLinesAreTaken() {
    assertThat(lines("Ines wrote:\n\n > IMG_1002\nIMG_1001\n> IMG_1003\nIMG_1004"))
        .containsExactly(
            "1 quoted from an earlier message",
            "3 quoted from an earlier message",
            "4 [1]",
            "5 quoted from an earlier message",
            "6 [4]");
    assertThat(lines("IMG_1001\nInes wrote:"))
        .containsExactly("1 [1]", "2 quoted from an earlier message");
  }

  @Test
  void aSignatureIsPassedOver() {
    assertThat(lines("IMG_1001\n--\nClaire\nIMG_1002"))
        .containsExactly("1 [1]", "2 a signature", "3 a signature", "4 a signature");
  }

  @Test
  void aBoxWithoutATickIsNotChosenHoweverMuchStandsBehindIt() {
    var remark = " the skin, please".repeat(40);
    assertThat(lines("[x] IMG_1001" + remark + "\n - [ ] IMG_1002" + remark + "\n☐ IMG_1003"))
        .containsExactly("1 [1]", "2 marked as not chosen", "3 marked as not chosen");
    assertThat(lines("☑ IMG_1001\n[] IMG_1002\nIMG_1003"))
        .containsExactly("1 [1]", "2 marked as not chosen", "3 [3]");
    assertThat(lines("[ ] IMG_1001\n☐ IMG_1002")).containsExactly("1 [1]", "2 [2]");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\r\n", "\r", "\n", "\u2028", "\u2029", "\f", "\u000b"})
  void linesEndAsTheirComputerEndsThem(String end) {
    assertThat(lines("IMG_1001" + end + end + "IMG_1003")).containsExactly("1 [1]", "3 [3]");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          Filename;Remark / IMG_1001;IMG_1002 is nicer               = 2 [1]
          File,Pick / IMG_1001,yes / IMG_1002,no                     = 2 [1], 3 marked as not chosen
          Pick,File / x,IMG_1001 / -,IMG_1002 / ,IMG_1003            = 2 [1], 3 marked as not chosen, 4 marked as not chosen
          File name|Rating|Chosen / IMG_1001|5|ja / IMG_1002|4|nein  = 2 [1], 3 marked as not chosen
          File,Remark,Selected / IMG_1001,nice,1 / IMG_1002,nice     = 2 [1], 3 marked as not chosen
          File,Remark,Selected / IMG_1001,,FALSE / IMG_1002,,OK      = 2 marked as not chosen, 3 [2]
          Rating;Dateiname / 5;IMG_1001 / 4 / / 3;IMG_1003           = 2 [1], 5 [3]
          Remark;Image / "he said ""no; 1"" twice";IMG_1001          = 2 [1]
          Remark;Image / \"""skin"";";IMG_1001                       = 2 [1]
          Size;Image / 5" print;IMG_1001                             = 2 [1]
          Image;Size / "IMG_1001";"5;6" / "";7 / "IMG_1003           = 2 [1], 4 [3]
          / / Image;Rating / IMG_1001;1002                           = 4 [1]
          """)
  void ofATableTheChosenNamesAreTaken(String table, String expected) {
    var lines = lines(table.strip().replaceAll(" ?/ ?", "\n"));
    assertThat(lines.getFirst()).endsWith(" the headings of a table");
    assertThat(String.join(", ", lines.subList(1, lines.size()))).isEqualTo(expected);
  }

  @Test
  void aTableMayHaveManyColumns() {
    var more =
        IntStream.range(0, 60)
            .mapToObj(i -> "Field %03d".formatted(i))
            .collect(Collectors.toList());
    assertThat(lines("Image;Pick;" + String.join(";", more) + "\nIMG_1001;no;1002\nIMG_1003;x;;;"))
        .containsExactly("1 the headings of a table", "2 marked as not chosen", "3 [3]");
  }

  @Test
  void aWordAloneIsNoHeadingOfATable() {
    assertThat(lines("Images\n> IMG_1002\nIMG_1001"))
        .containsExactly("1 ", "2 quoted from an earlier message", "3 [1]");
  }

  @Test
  void aTextMayBeginWithTheMarkOfItsEncoding() {
    assertThat(read("\uFEFFIMG_1001").frames()).containsExactly(1);
    assertThat(read("\uFEFFIMG_1001").remark()).isEmpty();
  }

  @Test
  void anEmptyTextAsksForNothing() {
    assertThat(read("").lines()).isEmpty();
    assertThat(read("\n \n").lines()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"%PDF", "PK\3\4", "\0IMG_1001"})
  void aFileOfAFewBytesThatIsNoTextIsRefused(String bytes) {
    assertThatThrownBy(() -> NamesRead.of(bytes.getBytes(UTF_8), "names.txt", NAMES))
        .isInstanceOf(FileProblemException.class);
  }
}
