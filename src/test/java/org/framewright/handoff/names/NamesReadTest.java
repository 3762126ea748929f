package org.framewright.handoff.names;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.FileProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Lists as clients write them. How they write is common practice, no source; the people are
 * invented.
 */
class NamesReadTest {
  /** A frame each: the name it has, the name it had; as of two bodies in two folders. */
  private static final String[][] FRAMES = {
    {"A/20261123_KVO_001_F_0003", "A/IMG_1234"},
    {"A/20261123_KVO_001_F_0004", "A/IMG_1236"},
    {"A/20261123_KVO_001_B_0005", "A/IMG_1237"},
    {"A/20261123_KVO_002_F_0001", "A/IMG_1239"},
    {"A/20261123_KVO_002_B_0002", "A/IMG_1240"},
    {"B/20261123_KVO_003_F_0001", "B/_DSC2234"},
    {"B/20261123_KVO_003_F_0002", "B/_DSC1240"},
    {"B/20261123_KVO_003_F_0120", "B/_DSC0002"},
  };

  static List<KnownName> names() {
    var names = new ArrayList<KnownName>();
    for (int i = 0; i < FRAMES.length; i++) {
      add(names, i, FRAMES[i], FRAMES[i][0].substring("A/20261123_".length()));
    }
    return names;
  }

  /** A frame's names: the one it has, the one it had, the one it has as a select. */
  static void add(List<KnownName> names, int frame, String[] nowAndBefore, String select) {
    names.add(new KnownName(frame, nowAndBefore[0], KnownName.Kind.NOW));
    names.add(new KnownName(frame, nowAndBefore[1], KnownName.Kind.BEFORE));
    names.add(new KnownName(frame, select, KnownName.Kind.SELECT));
  }

  private static NamesRead read(String text) {
    return read(text, names());
  }

  static NamesRead read(String text, List<KnownName> names) {
    try {
      return NamesRead.of(text.getBytes(UTF_8), "names.txt", names);
    } catch (FileProblemException e) {
      throw new AssertionError(e.problem().sentences(), e);
    }
  }

  /** What was made of a text: frames taken; {@code ?} and the fitting ones; {@code !} and near. */
  private static String said(String text) {
    return read(text).lines().stream()
        .flatMap(line -> line.pieces().stream())
        .filter(piece -> !(piece instanceof Piece.Aside))
        .map(
            piece ->
                switch (piece) {
                  case Piece.Taken taken -> numbers(taken.frames());
                  case Piece.Asked asked ->
                      "?" + numbers(asked.fitting().stream().map(KnownName::frame).toList());
                  case Piece.Unknown unknown ->
                      "!" + numbers(unknown.nearest().stream().map(KnownName::frame).toList());
                  case Piece.Aside _ -> "";
                })
        .collect(Collectors.joining(" "));
  }

  static String numbers(List<Integer> frames) {
    return frames.stream().map(String::valueOf).collect(Collectors.joining("+"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          IMG 1234, 1236-1240                          = 0 1+2+3+4
          001_F_0003.jpg                               = 0
          20261123_KVO_002_F_0001.JPG                  = 3
          20261123 KVO 001 F 0003                      = 0
          kvo-001-f-0003                               = 0
          A/20261123_KVO_001_F_0004                    = 1
          A\\20261123_KVO_001_F_0004.NEF                = 1
          KVO_001_F_0003_v01                           = 0
          F_0003                                       = 0
          img1237                                      = 2
          _DSC1240.NEF please crop 4:5                 = 6
          - IMG_1236                                   = 1
          * 001_F_0004 (love it!)                      = 1
          1. IMG_1239                                  = 3
          2) IMG_1239                                  = 3
          • IMG_1239                                   = 3
          [x] IMG_1239                                 = 3
          (20261123_KVO_001_B_0005)                    = 2
          "IMG_1234.jpg", "IMG_1236.jpg"               = 0 1
          Nr. 1234                                     = 0
          #1234                                        = 0
          № 1236                                       = 1
          1234                                         = 0
          1236, 1237, 1238                             = 1 2 !2+3+1
          1234 1236 1237                               = 0 1 2
          IMG_1234 & IMG_1236 + IMG_1237               = 0 1 2
          IMG_1234 und 1236                            = 0 1
          001_F_0003, 0004                             = 0 1
          look 001 frame 0005                          = 2
          002 0001                                     = 3
          Look 001: 3, 4                               = 0 1
          look 3: 1-2                                  = 5+6
          Our favourites: 1234, 1236                   = 0 1
          We love IMG_1234 and IMG_1236 most of all.   = 0 1
          IMG_1234-Edit.tif                            = 0
          IMG_1234 copy.jpg                            = 0
          IMG_1234 (1).jpg                             = 0
          Screenshot 2026-11-24 at 10.14.22 IMG_1234.png = 0
          Screenshot_20261124-101422_001_F_0003.jpg    = 0
          https://gallery.example/kvo/IMG_1234.jpg?s   = 0
          IMG_1234-36                                  = 0+1
          IMG_1236 to IMG_1237                         = 1+2
          IMG_1236-IMG_1237                            = 1+2
          IMG_1236-IMG_1237.jpg                        = 1+2
          IMG_1236 bis 1237                            = 1+2
          20261123_KVO_001_F_0003 - 20261123_KVO_001_F_0004 = 0+1
          1236–1237                                    = 1+2
          IMG_1234, 2 copies                           = 0
          120                                          = 7
          """)
  void aLineIsTakenForItsFrames(String line, String frames) {
    assertThat(said(line)).isEqualTo(frames);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          1240                                         = ?4+6
          001                                          = ?0+1+2
          not IMG_1239                                 = ?3
          everything but IMG_1239                      = ?3
          IMG_1234 or IMG_1236                         = ?0 ?1
          IMG_1234 (not IMG_1236)                      = 0 ?1
          IMG_1234 (IMG_1236 is nice too)              = 0 ?1
          ~~IMG_1237~~                                 = ?2
          IMG_1237?                                    = ?2
          we need 1239 by Friday                       = ?3
          IMG_1234.jpg,1236,800                        = 0 ?1
          IMG_1234, 36                                 = 0 ?1
          IMG_1234-6                                   = ?0
          1236/1237                                    = ?1 ?2
          IMG_1236_IMG_1237                            = ?1
          20261123_KVO_001_F_0003 - 20261123_KVO_002_F_0001 = ?0+3
          Look 9: 0003                                 = ?0
          """)
  void whatMayMeanSeveralOrNoneIsAskedAbout(String line, String asked) {
    assertThat(said(line)).isEqualTo(asked);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          IMG_1324                                     = !0
          DSC_1234                                     = !5+0
          DSC 1234                                     = !5+0
          IMG_1236-1299                                = !3
          IMG_1240-1236                                = !
          1-999999999                                  = !
          Bildschirmfoto 2026-11-24 um 10.14.22.png    = !
          """)
  void whatNoFrameHasIsToldWithTheNearest(String line, String unknown) {
    assertThat(said(line)).startsWith(unknown);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          Hi Ines, please find our 25 favourites below (deadline Friday 27/11 at 3pm) = ``
          Thanks, Claire                               = ``
          Tel. +49 30 1234-567                         = ``
          mail me at claire1234@example.com            = ``
          120 pictures please                          = ``
          KVO                                          = ``
          """)
  void aRemarkNamesNoFrame(String line, String nothing) {
    assertThat(said(line)).isEmpty();
  }

  @Test
  void aHeadingHoldsForTheLinesBelow() {
    assertThat(said("Look 3:\n0001\n2\n\nIMG_1234\n0005")).isEqualTo("5 6 0 2");
  }

  @Test
  void whatStandsBelowNotTheseIsAskedAbout() {
    assertThat(said("IMG_1234\nNot these:\nIMG_1236\nIMG_1237\n\nIMG_1239")).isEqualTo("0 ?1 ?2 3");
  }

  @Test
  void quotedRepliesAreToldAndNotTaken() {
    var read =
        read(
            """
            Lovely! We take 001_F_0003.

            On Tue, 24 Nov 2026 at 10:14, Ines wrote:
            > IMG_1236 and IMG_1237 are my favourites.
            > Which do you want?
            and IMG_1239
            """);
    assertThat(read.frames()).containsExactly(0, 3);
    assertThat(read.lines().stream().filter(line -> line.passedOver().isPresent())).hasSize(3);
  }

  @Test
  void theMailThatIsAnsweredBelowAHeadIsQuoted() {
    var read =
        read(
            """
            001_F_0003 please

            -----Original Message-----
            From: Ines
            Sent: Tuesday, 24 November 2026 10:14
            Subject: selects of IMG_1236

            IMG_1237
            """);
    assertThat(read.frames()).containsExactly(0);
    assertThat(read("001_F_0003\nVon: Ines\nGesendet: 24.11.2026\n\nIMG_1237").frames())
        .containsExactly(0);
  }

  @Test
  void theHeadOfTheMailItselfIsPassedOver() {
    var read =
        read("From: Claire\nDate: 24 Nov 2026\nSubject: IMG_1236\n\nIMG_1234\n-- \nTel 1237");
    assertThat(read.frames()).containsExactly(0);
    assertThat(read.unclear()).isEmpty();
  }

  @Test
  void boxesThatAreNotTickedAreNotTaken() {
    assertThat(read("[x] IMG_1234\n[ ] IMG_1236\n[X] IMG_1237").frames()).containsExactly(0, 2);
    assertThat(read("[ ] IMG_1234\n[ ] IMG_1236").frames()).containsExactly(0, 1);
  }

  @Test
  void ofATableTheColumnOfNamesIsRead() {
    var read =
        read(
            """
            Rating;Filename;Remark;Selected
            5;IMG_1234.CR3;"skin, please; see 1236";yes
            4;IMG_1236.CR3;;no
            5;001_B_0005.jpg;1239;x
            """);
    assertThat(read.frames()).containsExactly(0, 2);
    assertThat(read.unclear()).isEmpty();
  }

  @Test
  void theSameFrameTwiceIsOneAndSaysWhereItWasNamedBefore() {
    var read = read("IMG_1234\n001_F_0003\n");
    assertThat(read.frames()).containsExactly(0);
    assertThat(read.lines().getLast().pieces().getFirst().why())
        .contains("named in line 1 already");
  }

  @Test
  void aRangeSaysWhichNumbersAreNot() {
    assertThat(read("IMG_1234-1237").lines().getFirst().pieces().getFirst().why())
        .isEqualTo("a range of 3 frames; there is no 1235");
  }

  @Test
  void textsOfOtherComputersAreRead() throws Exception {
    var wide = ("\uFEFF" + "IMG_1234\r\nIMG_1236").getBytes(UTF_16LE);
    assertThat(NamesRead.of(wide, "names.txt", names()).frames()).containsExactly(0, 1);
    var windows = "schön: IMG_1234".getBytes(Charset.forName("windows-1252"));
    var read = NamesRead.of(windows, "names.txt", names());
    assertThat(read.frames()).containsExactly(0);
    assertThat(read.remark()).isPresent();
    assertThat(said("ＩＭＧ＿１２３４")).isEqualTo("0");
  }

  @Test
  void whatIsNoTextIsRefusedWithAWayOn() {
    for (var bytes :
        List.of(
            "PK\3\4 a workbook".getBytes(UTF_8),
            "%PDF-1.7".getBytes(UTF_8),
            "a\0b".getBytes(UTF_8),
            "{\\rtf1".getBytes(UTF_8),
            "<!DOCTYPE html><p>".getBytes(UTF_8),
            "Subject: x\nContent-Transfer-Encoding: base64\n\nSU1H".getBytes(UTF_8))) {
      assertThatThrownBy(() -> NamesRead.of(bytes, "names.txt", names()))
          .isInstanceOfSatisfying(
              FileProblemException.class,
              e -> {
                assertThat(e.problem().where()).isEqualTo("names.txt");
                assertThat(e.problem().remedy()).isNotEmpty();
              });
    }
  }

  @Test
  void aListOfAnotherJobIsRefused() {
    var text = "XYZ_0001_99\n".repeat(NamesRead.MOST_UNKNOWN + 1);
    assertThatThrownBy(() -> NamesRead.of(text.getBytes(UTF_8), "names.txt", names()))
        .isInstanceOf(FileProblemException.class)
        .hasMessageContaining("no frame of the job");
  }

  @Test
  void whatIsUnclearIsSettledByAPersonAndNothingElseIs() {
    var read = read("IMG_1234\nIMG_1236 ?\nIMG_9234");
    var unclear = read.unclear();
    assertThat(unclear).extracting(NamesRead.Line::number).containsExactly(2, 3);
    var settled =
        read.settled(
            List.of(new NamesRead.Answer(2, 0, List.of(1)), new NamesRead.Answer(3, 0, List.of())));
    assertThat(settled.unclear()).isEmpty();
    assertThat(settled.frames()).containsExactly(0, 1);
    assertThat(settled.lines().get(2).pieces().getFirst())
        .isEqualTo(new Piece.Aside("IMG_9234", "left out"));
    assertThat(read.unclear()).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"?", " ?", " (?)", "(?)", "\u00a0?", "\uff1f", " \u061f", ".jpg ?"})
  void aQuestionMarkBehindANameIsAQuestion(String mark) {
    assertThat(read("IMG_1234\nIMG_1236" + mark).unclear())
        .extracting(NamesRead.Line::number)
        .containsExactly(2);
    assertThat(read("IMG_1236 please. Is that well?").unclear()).isEmpty();
  }

  @Test
  void anAnswerMustBeOneToWhatIsAsked() {
    var read = read("IMG_1234\nIMG_1236 ?");
    for (var wrong :
        List.of(
            new NamesRead.Answer(1, 0, List.of(0)),
            new NamesRead.Answer(2, 0, List.of(5)),
            new NamesRead.Answer(7, 0, List.of()))) {
      assertThatThrownBy(() -> read.settled(List.of(wrong)))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
