package org.framewright.handoff.names;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a person is told of each part of a list, with its reason: the part, {@code >} and the frames
 * that are taken, {@code ?} and those that are asked about, {@code !} and the nearest where no
 * frame has the name, {@code -} where nothing is asked for. How clients write is common practice,
 * no source.
 */
class NamesToldTest {
  /** Beside those of {@link NamesReadTest}, which go to 7. */
  private static final String[][] MORE_FRAMES = {
    {"A/20261123_KVO_004_F_0006", "A/IMG_1246"},
    {"A/20261123_KVO_005_F_0007", "A/IMG_1254"},
    {"A/20261123_KVO_005_F_0008", "A/IMG_9300"},
    {"B/20261123_KVO_005_B_0009", "B/IMG_9300"},
    {"B/moodboard", "B/XT_7001"},
  };

  private static final int FIRST = 8;
  private static final int MOODBOARD = 12;

  private static List<KnownName> names() {
    var names = NamesReadTest.names();
    for (int i = FIRST; i <= MOODBOARD; i++) {
      var frame = MORE_FRAMES[i - FIRST];
      var select = i == MOODBOARD ? "KVO_moodboard" : frame[0].substring("A/20261123_".length());
      NamesReadTest.add(names, i, frame, select);
    }
    names.add(new KnownName(MOODBOARD, "B/XT_7003", KnownName.Kind.BEFORE));
    return names;
  }

  private static NamesRead read(String text) {
    return NamesReadTest.read(text, names());
  }

  private static String told(String text) {
    return read(text.replace("\\n", "\n")).lines().stream()
        .flatMap(line -> line.pieces().stream())
        .map(piece -> piece.written() + " " + meant(piece) + " " + piece.why())
        .collect(Collectors.joining(" | "));
  }

  private static String meant(Piece piece) {
    return switch (piece) {
      case Piece.Taken taken -> ">" + NamesReadTest.numbers(taken.frames());
      case Piece.Asked asked -> "?" + frames(asked.fitting());
      case Piece.Unknown unknown -> "!" + frames(unknown.nearest());
      case Piece.Aside _ -> "-";
    };
  }

  private static String frames(List<KnownName> names) {
    return NamesReadTest.numbers(names.stream().map(KnownName::frame).toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          IMG_1266                      = IMG_1266 !8+1 no frame has this name
          F_0003                        = F_0003 >0 a part of its name and of no other
          001_B_0005 (1240)             = 001_B_0005 >2 a part of its name and of no other | 1240 ?4+6 several frames fit
          20261123                      = 20261123 ?0+1+2+5+6+7 several frames fit
          IMG 9300                      = IMG 9300 ?10+11 several frames fit
          moodboard                     = moodboard >12 its name
          moodboard, IMG_1234           = moodboard >12 its name | IMG_1234 >0 its name before a rename, A/IMG_1234
          the moodboard                 = ``
          XT_7004                       = XT_7004 !12 no frame has this name
          XYZ_9234                      = XYZ_9234 ! no frame has this name
          XYZ_120                       = XYZ_120 !7 no frame has this name
          final.jpg                     = final.jpg ! no frame has this name
          1238                          = 1238 !2+3+1 no frame has this name
          IMG_1234.jpg IMG_1236.jpg.xmp = IMG_1234.jpg >0 its name before a rename, A/IMG_1234 | IMG_1236.jpg.xmp >1 its name before a rename, A/IMG_1236
          IMG_١٢٣٤                      = IMG_١٢٣٤ >0 its name before a rename, A/IMG_1234
          IMG_1239?                     = IMG_1239 ?3 a question mark stands behind it
          ~~IMG_1237~~                  = IMG_1237 ?2 a sign in the line strikes it out
          or IMG_1234                   = IMG_1234 ?0 the line says “or”
          IMG_1234, or IMG_1236         = IMG_1234 ?0 it is one of several | IMG_1236 ?1 it is one of several
          IMG_1234, 1237 or 1239        = IMG_1234 >0 its name before a rename, A/IMG_1234 | 1237 ?2 it is one of several | 1239 ?3 it is one of several
          1234 and not 1236             = 1234 >0 a part of its name before a rename and of no other, A/IMG_1234 | 1236 ?1 the line says “not”
          """)
  void aNameSaysByWhichNameItsFrameIsFound(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          IMG_1234-Edit.tif                              = IMG_1234-Edit.tif >0 it holds “IMG_1234”, its name before a rename
          IMG_1234-2.jpg                                 = IMG_1234-2.jpg ?0 a range, or the name of a copy?
          IMG_9300-Edit.tif                              = IMG_9300-Edit.tif ?10+11 it holds “IMG_9300”, which fits several frames
          IMG_1234_IMG_1236_final.jpg                    = IMG_1234_IMG_1236_final.jpg ?0 it holds “IMG_1234”, and another name
          Screenshot 2026-11-23 at 10.14.22.png          = 2026-11-23 - a date, a time or a measure | 10.14.22.png ! no frame has this name
          Screenshot_20261123-101422_001_F_0003.jpg      = Screenshot_20261123-101422_001_F_0003.jpg >0 it holds “001_F_0003”, a part of its name and of no other
          Screenshot_20261123-101422_F_0001.jpg          = Screenshot_20261123-101422_F_0001.jpg ?3+5 it holds “F_0001”, which fits several frames
          `https://gallery.example/kvo/IMG_1234.jpg?s=1236` = IMG_1234.jpg >0 its name before a rename, A/IMG_1234
          https://gallery.example/kvo/                   = ``
          https://gallery1234.example                    = ``
          www.example.com                                = ``
          """)
  void aNameInsideALongerOneIsTakenWhereItIsTheOnlyOne(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          claire1234 = claire1234 !0 no frame has this name
          abc123     = abc123 ! no frame has this name
          abc12      = abc12 - a number in a remark
          mm100      = mm100 ! no frame has this name
          300xyz     = 300xyz ! no frame has this name
          300dpi     = 300dpi - a number in a remark
          100mm      = 100mm - a number in a remark
          100mm_2    = 100mm_2 ! no frame has this name
          size_12    = size_12 ! no frame has this name
          A12        = A12 - a number in a remark
          A12 1234   = A12 - a number in a remark | 1234 ?0 it stands in a sentence; a frame, or something else?
          img 9999   = img 9999 ! no frame has this name
          kvo 1234   = kvo 1234 !0 no frame has this name
          XY 9999    = XY 9999 ! no frame has this name
          AZ 9999    = AZ 9999 ! no frame has this name
          WXYZ 9999  = WXYZ 9999 ! no frame has this name
          VWXYZ 9999 = 9999 - a number in a remark
          Xy 9999    = 9999 - a number in a remark
          X 9999     = 9999 - a number in a remark
          AZ 999     = 999 - a number in a remark
          """)
  void whatLooksLikeANameIsToldAndAMeasureIsNot(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          IMG_1236, 1240               = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 >4 goes on with “IMG_1236”
          IMG_1236 & 1240              = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 >4 goes on with “IMG_1236”
          IMG_1236 + 1240              = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 >4 goes on with “IMG_1236”
          IMG_1236 • 1240              = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 >4 goes on with “IMG_1236”
          IMG_1236 / 1240              = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 >4 goes on with “IMG_1236”
          IMG_1236 und 1240            = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 >4 goes on with “IMG_1236”
          IMG_1236 e 1240              = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 >4 goes on with “IMG_1236”
          IMG_1236 E 1240              = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 ?4+6 several frames fit
          IMG_1236: 1240               = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 ?4+6 several frames fit
          IMG_1236 and: 1240           = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 ?4+6 several frames fit
          IMG_1236 please 1240         = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1240 ?4+6 several frames fit
          IMG_1236 and                 = IMG_1236 >1 its name before a rename, A/IMG_1236
          20261123_KVO_001_F_0003 0004 = 20261123_KVO_001_F_0003 >0 its name | 0004 >1 goes on with “20261123_KVO_001_F_0003”
          IMG_1236, 1239 - 1240        = IMG_1236 >1 its name before a rename, A/IMG_1236 | 1239 - 1240 >3+4 a range of 2 frames
          IMG_1236, 37                 = IMG_1236 >1 its name before a rename, A/IMG_1236 | 37 ?2 it goes on with “IMG_1236”, or counts?
          IMG_1236, 6                  = IMG_1236 >1 its name before a rename, A/IMG_1236 | 6 ?8 so short a number is a frame, or something else
          IMG_1236, 99                 = IMG_1236 >1 its name before a rename, A/IMG_1236 | 99 - a number in a remark
          IMG_1239.jpg 1240            = IMG_1239.jpg >3 its name before a rename, A/IMG_1239 | 1240 ?4+6 it stands behind the whole name of a file; a frame, or something else?
          """)
  void aNumberGoesOnWithTheNameDirectlyBeforeItAndWithNoOther(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          frames 1236, 1237      = 1236 >1 a part of its name before a rename and of no other, A/IMG_1236 | 1237 >2 goes on with “1236”
          2 frames 1236          = 2 - it counts something | 1236 >1 a part of its name before a rename and of no other, A/IMG_1236
          Bilder 1236 und 1237   = 1236 >1 a part of its name before a rename and of no other, A/IMG_1236 | 1237 >2 goes on with “1236”
          Frames:1234            = 1234 >0 a part of its name before a rename and of no other, A/IMG_1234
          1234:love it           = 1234 >0 a part of its name before a rename and of no other, A/IMG_1234
          1234: 1236             = 1234 >0 a part of its name before a rename and of no other, A/IMG_1234 | 1236 >1 a part of its name before a rename and of no other, A/IMG_1236
          1236: nice             = 1236 >1 a part of its name before a rename and of no other, A/IMG_1236
          1236: 5                = 1236 >1 a part of its name before a rename and of no other, A/IMG_1236 | 5 - a number in a remark
          120, 0003              = 120 ?7 it fits but for its zeros | 0003 >0 a part of its name and of no other
          2, 120                 = 2 ?4+6+7+3 so short a number is a frame, or something else | 120 ?7 it fits but for its zeros
          9                      = 9 ?11 so short a number is a frame, or something else
          99                     = 99 ! no frame has this name
          we need 003 by Friday  = 003 ?5+6+7 it stands in a sentence; a frame, or something else?
          we love 1236, 99 and 5 = 1236 ?1 it stands in a sentence; a frame, or something else? | 99 - a number in a remark | 5 - a number in a remark
          IMG_1239 we need 2     = IMG_1239 >3 its name before a rename, A/IMG_1239 | 2 - a number in a remark
          1234, please 2 of them = 1234 >0 a part of its name before a rename and of no other, A/IMG_1234 | 2 - a number in a remark
          1234 looks great       = 1234 >0 a part of its name before a rename and of no other, A/IMG_1234
          120 looks              = 120 - it counts something
          Tel. 030 1234-567      = 030 - a number in a remark | 1234-567 - a date, a time or a measure
          """)
  void aNumberAloneIsAFrameOnlyWhereNumbersStand(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          1236 - 1237             = 1236 - 1237 >1+2 a range of 2 frames
          1236 - 1236             = 1236 - 1236 >1 a range of 1 frame
          1236-36                 = 1236-36 ! no frame has this name
          001-002                 = 001-002 ?0+1+2 several frames fit 001 of it
          9001-9003               = 9001-9003 !12+3+5 no frame has the name that it begins with
          IMG_1240-9299           = IMG_1240-9299 !3 no frame has the name that it ends with
          IMG_1234-9300           = IMG_1234-9300 ! a range of 8067 numbers is more than is looked up
          IMG_1240-1246           = IMG_1240-1246 >4+8 a range of 2 frames; there is no 1241, 1242, 1243, 1244, 1245
          IMG_1246-1254           = IMG_1246-1254 >8+9 a range of 2 frames; there is no 1247, 1248, 1249, 1250, 1251 and 2 more of it
          IMG_1236 → IMG_1239     = IMG_1236 → IMG_1239 >1+2+3 a range of 3 frames; there is no 1238
          IMG_1236... 1239        = IMG_1236... 1239 >1+2+3 a range of 3 frames; there is no 1238
          IMG_1236 hasta IMG_1239 = IMG_1236 hasta IMG_1239 >1+2+3 a range of 3 frames; there is no 1238
          frames 1236-1237        = 1236-1237 >1+2 a range of 2 frames
          001_F_0003 - 002_F_0001 = 001_F_0003 - 002_F_0001 ?0+3 a range from one name to another that begins otherwise
          IMG_1236-003_F_0120     = IMG_1236-003_F_0120 ?1+7 a range from one name to another that begins otherwise
          IMG_1236 to             = IMG_1236 >1 its name before a rename, A/IMG_1236
          IMG_1236 to IMG         = IMG_1236 >1 its name before a rename, A/IMG_1236
          IMG_1236 - 37           = IMG_1236 >1 its name before a rename, A/IMG_1236 | 37 ?2 it goes on with “IMG_1236”, or counts?
          003/120                 = 003 ?5+6+7 numbers with a slash between them | 120 ?7 numbers with a slash between them
          see 1236/1237           = 1236 ?1 numbers with a slash between them | 1237 ?2 numbers with a slash between them
          1236/1237/1239          = 1236 ?1 numbers with a slash between them | 1237 ?2 numbers with a slash between them | 1239 ?3 numbers with a slash between them
          1236-1237-1239          = 1236-1237-1239 !3 no frame has this name
          24/11/2026              = 24/11/2026 - a date, a time or a measure
          2026-11-24              = 2026-11-24 - a date, a time or a measure
          Friday 24-11-2026       = 24-11-2026 - a date, a time or a measure
          12-34                   = 12-34 - a date, a time or a measure
          12.30-14.00             = 12.30-14.00 - a date, a time or a measure
          IMG_1234 at 10:14       = IMG_1234 >0 its name before a rename, A/IMG_1234 | 10:14 - a date, a time or a measure
          """)
  void numbersInOneAreARangeNamesOrADate(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          001, 0003          = 001 ?0+1+2 several frames fit | 0003 >0 a part of its name and of no other
          001 frame F_0003   = 001 frame F_0003 >0 both parts stand in its name and in no other
          KVO_002 frame 0001 = KVO_002 frame 0001 >3 both parts stand in its name and in no other
          KVO_001 0099       = KVO_001 ?0+1+2 several frames fit | 0099 !11 no frame has this name
          001 0099           = 001 ?0+1+2 several frames fit | 0099 !11 no frame has this name
          001 please         = 001 ?0+1+2 several frames fit
          """)
  void twoPartsOfANameAreReadTogetherWhereOneFrameHasBoth(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          Look 3: 1 - 2        = 1 - 2 >5+6 a range of 2 frames
          looks 003: 1         = 1 >5 under “looks 003”
          Looks 3: 1-2         = 1-2 >5+6 a range of 2 frames
          Look 003: 0001-2     = 0001-2 >5+6 a range of 2 frames
          Look 004: 6          = 6 >8 under “Look 004”
          KVO_001: 3, 4        = 3 >0 under “KVO_001” | 4 >1 under “KVO_001”
          20261123: 1, 3       = 1 ?0+1+2+5+3 several frames fit under “20261123” | 3 ?0+5+6+7 several frames fit under “20261123”
          Look 3: 1 - IMG_1234 = 1 >5 under “Look 3” | IMG_1234 >0 its name before a rename, A/IMG_1234
          Look 3: 005          = 005 ?9+10+11 no frame fits under “Look 3”, only elsewhere
          Look 3: 999          = 999 ! no frame fits under “Look 3”
          Look 17: 3-4         = 3-4 ! no frame has the name that it begins with
          Look 17:\\n3         = 3 ! no frame fits under “Look 17”
          Look 17: 1234        = 1234 ?0 no frame fits under “Look 17”, only elsewhere
          1240: 2              = 2 ! no frame fits under “1240”
          0005: 001            = 0005 >2 a part of its name and of no other | 001 ?0+1+2 several frames fit
          see 001: 3           = 001 ?0+1+2 it stands in a sentence; a frame, or something else? | 3 ?0+5+6+7 so short a number is a frame, or something else
          """)
  void aHeadingHoldsForTheNumbersBehindIt(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          Look 3:\\nwe need 2 of them\\n1 = 2 - a number in a remark | 1 >5 under “Look 3”
          Look 3:\\n1\\nIMG_1234\\n2      = 1 >5 under “Look 3” | IMG_1234 >0 its name before a rename, A/IMG_1234 | 2 ?4+6+7+3 so short a number is a frame, or something else
          Look 3:\\n\\n1                  = 1 >5 under “Look 3”
          Look 3:\\n1\\n\\n2              = 1 >5 under “Look 3” | 2 ?4+6+7+3 so short a number is a frame, or something else
          Look 3: 1\\n2                   = 1 >5 under “Look 3” | 2 >6 under “Look 3”
          """)
  void aHeadingHoldsUntilAnEmptyLineOrAnotherName(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          (IMG_1234) IMG_1236             = IMG_1236 >1 its name before a rename, A/IMG_1236 | IMG_1234 ?0 it stands in brackets behind another name
          IMG_1239 (IMG_1234) IMG_1236    = IMG_1239 >3 its name before a rename, A/IMG_1239 | IMG_1236 >1 its name before a rename, A/IMG_1236 | IMG_1234 ?0 it stands in brackets behind another name
          {IMG_1236} (IMG_1237)           = IMG_1236 >1 its name before a rename, A/IMG_1236 | IMG_1237 >2 its name before a rename, A/IMG_1237
          IMG_1234 [IMG_1236] {2}         = IMG_1234 >0 its name before a rename, A/IMG_1234 | IMG_1236 ?1 it stands in brackets behind another name | 2 - a number in a remark
          2 copies (IMG_1234)             = 2 - it counts something | IMG_1234 >0 its name before a rename, A/IMG_1234
          IMG_1236 (the skin, 2 versions) = IMG_1236 >1 its name before a rename, A/IMG_1236 | 2 - it counts something
          IMG_1234 (2)                    = IMG_1234 >0 its name before a rename, A/IMG_1234 | 2 - a number in brackets
          IMG_1236 (99)                   = IMG_1236 >1 its name before a rename, A/IMG_1236 | 99 - a number in a remark
          IMG_1234 (003)                  = IMG_1234 >0 its name before a rename, A/IMG_1234 | 003 ?5+6+7 several frames fit
          Look 3:\\n1 (09)\\n1 (2)        = 1 >5 under “Look 3” | 09 - a number in brackets | 1 >5 under “Look 3”; named in line 2 already | 2 ?6 it stands in brackets behind another name
          Not these:\\nIMG_1236           = IMG_1236 ?1 it stands below “Not these:”
          """)
  void whatStandsInBracketsIsARemarkUnlessItNamesAFrame(String line, String told) {
    assertThat(told(line)).isEqualTo(told);
  }

  private static Piece only(String line) {
    var pieces = read(line).lines().getFirst().pieces();
    assertThat(pieces).hasSize(1);
    return pieces.getFirst();
  }

  @Test
  void ofManyFramesSixAreNamedAndAllAreCounted() {
    assertThat(only("20261123"))
        .isInstanceOfSatisfying(
            Piece.Asked.class,
            asked -> {
              assertThat(asked.fitting()).hasSize(6);
              assertThat(asked.count()).isEqualTo(FIRST + MORE_FRAMES.length - 1);
            });
  }

  @Test
  void aFrameThatIsAskedAboutIsNamedByTheNameThatFitsBestAndElseByTheOneItHas() {
    assertThat(only("1240").candidates())
        .extracting(KnownName::text)
        .containsExactly("A/IMG_1240", "B/_DSC1240");
    assertThat(only("F_0001").candidates())
        .extracting(KnownName::text)
        .containsExactly("A/20261123_KVO_002_F_0001", "B/20261123_KVO_003_F_0001");
    assertThat(only("IMG_1239?").candidates())
        .extracting(KnownName::text)
        .containsExactly("A/20261123_KVO_002_F_0001");
  }

  @Test
  void ofTheNamesOfOneFrameTheNearestIsTold() {
    assertThat(only("XT_7004").candidates())
        .extracting(KnownName::text)
        .containsExactly("B/XT_7003");
    assertThat(only("XT_7000").candidates())
        .extracting(KnownName::text)
        .containsExactly("B/XT_7001");
  }

  @Test
  void aLineIsShownAsItStandsThereAndOfALongOneTheBeginning() {
    var fits = "IMG_1234 " + "x".repeat(191);
    assertThat(read("  IMG_1234, please \n").lines().getFirst().text())
        .isEqualTo("IMG_1234, please");
    assertThat(read(fits).lines().getFirst().text()).isEqualTo(fits);
    assertThat(read(fits + "x").lines().getFirst().text()).isEqualTo(fits + " ...");
  }

  @Test
  void aLineTooLongForAListIsToldAndNotRead() {
    var longest = "IMG_1234" + " ".repeat(LineReader.LONGEST_LINE - 8);
    assertThat(only(longest)).isInstanceOf(Piece.Taken.class);
    assertThat(only(longest + " "))
        .isInstanceOf(Piece.Unknown.class)
        .extracting(Piece::why)
        .isEqualTo("a line of more than 100000 characters is no list of names");
  }

  @Test
  void asManyUnknownNamesAsAListMayHaveAreEachTold() {
    var read = read("QQQQQQ_77777_88\n".repeat(NamesRead.MOST_UNKNOWN));
    assertThat(read.unclear()).hasSize(NamesRead.MOST_UNKNOWN);
  }
}
