package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.NameKey;
import org.framewright.base.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wrong names as retouchers give them; common practice, no source. */
class LikelySelectsTest {
  @TempDir private static Path folder;
  private static RetouchedNames names;

  @BeforeAll
  static void aJob() throws Exception {
    names = new RetouchedNames(Scene.ofOneFile(folder).job());
  }

  private static ExpectedSelect select(String name, String... endings) {
    return new ExpectedSelect(
        name,
        "001",
        "A/20261123_" + name,
        Stream.of(endings)
            .map(end -> new HandOffRecord.Copy(name + end, "", OptionalLong.empty()))
            .toList());
  }

  private static final SortedMap<String, ExpectedSelect> EXPECTED =
      new TreeMap<>(
          Stream.of(
                  select("KVO_001_F_0001", ".JPG"),
                  select("KVO_001_F_0002", ".DNG", ".JPG"),
                  select("KVO_002_B_0013", ".JPG"))
              .collect(Collectors.toMap(one -> NameKey.of(one.select()), one -> one)));

  private static List<Returns.Extra> extras(
      Map<String, SortedMap<Integer, List<String>>> versions,
      List<String> sidecars,
      String... files) {
    var strays =
        Stream.of(files).map(file -> new LikelySelects.Stray(file, Text.of("no name"))).toList();
    return new LikelySelects(EXPECTED, names, versions).of(strays, sidecars);
  }

  private static String told(Returns.Extra extra) {
    return extra
        .likely()
        .map(
            likely ->
                likely.select()
                    + ": "
                    + likely.reason()
                    + likely.name().map(name -> " -> " + name).orElse(""))
        .orElse("?");
  }

  private static List<Optional<String>> given(List<Returns.Extra> extras) {
    return extras.stream().map(extra -> extra.likely().flatMap(Returns.Likely::name)).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      quoteCharacter = '`',
      textBlock =
          """
          KVO_001_F_0001_v02 final.jpg   = KVO_001_F_0001: “final” stands beside it -> KVO_001_F_0001_v02.jpg
          KVO_001_F_0001_final.jpg       = KVO_001_F_0001: it has no version; “final” stands beside it -> KVO_001_F_0001_v01.jpg
          KVO_001_F_0001_final.png       = KVO_001_F_0001: it has no version; “final” stands beside it; it is of another format than what was handed off -> KVO_001_F_0001_v01.png
          KVO_001_F_0002.dng             = KVO_001_F_0002: it has no version -> KVO_001_F_0002_v01.dng
          kvo_001_f_0001.jpg             = KVO_001_F_0001: its letters are not capital and small as they should be; it has no version -> KVO_001_F_0001_v01.jpg
          kvo_001_f_0001_v01.jpg         = KVO_001_F_0001: its letters are not capital and small as they should be -> KVO_001_F_0001_v01.jpg
          KVO-001-F-0001_v02.jpg         = KVO_001_F_0001: other signs or zeros stand in the select's name -> KVO_001_F_0001_v02.jpg
          KVO_001_F_0001_v2.jpg          = KVO_001_F_0001: its version is written otherwise, such as without zeros -> KVO_001_F_0001_v02.jpg
          KVO_001_F_0001 version 3.psd   = KVO_001_F_0001: its version is written otherwise, such as without zeros -> KVO_001_F_0001_v03.psd
          KVO_001_F_0001_V2_rev.jpg      = KVO_001_F_0001: its version is written otherwise, such as without zeros; “rev” stands beside it -> KVO_001_F_0001_v02.jpg
          KVO_001_F_0001_v final.jpg     = KVO_001_F_0001: it has no version; “v final” stands beside it -> KVO_001_F_0001_v01.jpg
          KVO_001_F_0001_v0.jpg          = KVO_001_F_0001: it has no version -> KVO_001_F_0001_v01.jpg
          KVO_001_F_0001_v12345.jpg      = KVO_001_F_0001: it has no version -> KVO_001_F_0001_v01.jpg
          20261123_KVO_001_F_0001.jpg    = KVO_001_F_0001: it has the name of the frame; it has no version -> KVO_001_F_0001_v01.jpg
          001_F_0001_v01.jpg             = KVO_001_F_0001: it has a part of the select's name -> KVO_001_F_0001_v01.jpg
          KVO_002_B_0013/v3.jpg          = KVO_002_B_0013: its folder is called KVO_002_B_0013 -> KVO_002_B_0013_v03.jpg
          a/KVO_002_B_0013/final.jpg     = KVO_002_B_0013: its folder is called KVO_002_B_0013 -> KVO_002_B_0013_v01.jpg
          KVO_002_B_0113.jpg             = KVO_002_B_0013: its name is most like KVO_002_B_0013; look at the picture
          KVO_009_F_0001.jpg             = KVO_001_F_0001: its name is most like KVO_001_F_0001; look at the picture
          holiday.jpg                    = ?
          """)
  void aWrongNameIsToldWithItsSelectAndTheNameThatFollowsFromIt(String file, String expected) {
    assertThat(told(extras(Map.of(), List.of(), file).getFirst())).isEqualTo(expected);
  }

  @Test
  void eachOfSeveralSelectsIsNamedByItself() {
    var extras = extras(Map.of(), List.of(), "KVO_001_F_0001 ok.jpg", "KVO_001_F_0002 ok.jpg");
    assertThat(given(extras))
        .containsExactly(
            Optional.of("KVO_001_F_0001_v01.jpg"), Optional.of("KVO_001_F_0002_v01.jpg"));
  }

  @Test
  void twoPicturesOfOneSelectAndOneVersionGetNoName() {
    assertThat(given(extras(Map.of(), List.of(), "KVO_001_F_0001 a.jpg", "KVO_001_F_0001 b.jpg")))
        .containsOnly(Optional.empty());
    assertThat(
            given(
                extras(Map.of(), List.of(), "KVO_001_F_0001 v2 a.jpg", "KVO_001_F_0001 v2 b.jpg")))
        .containsOnly(Optional.empty());
    assertThat(given(extras(Map.of(), List.of(), "KVO_001_F_0001 a.jpg", "KVO_001_F_0001 a.psd")))
        .containsExactly(
            Optional.of("KVO_001_F_0001_v01.jpg"), Optional.of("KVO_001_F_0001_v01.psd"));
  }

  @Test
  void aVersionThatCameIsNotGivenAgain() {
    SortedMap<Integer, List<String>> came = new TreeMap<>(Map.of(2, List.of("x.jpg")));
    var versions = Map.of("KVO_001_F_0001", came);
    assertThat(given(extras(versions, List.of(), "KVO_001_F_0001 v2.jpg", "KVO_001_F_0001 v3.jpg")))
        .containsExactly(Optional.empty(), Optional.of("KVO_001_F_0001_v03.jpg"));
    assertThat(given(extras(versions, List.of(), "KVO_001_F_0001 a.jpg")))
        .containsExactly(Optional.empty());
  }

  @Test
  void aSidecarIsOfThePictureBesideIt() {
    var extras =
        extras(
            Map.of(),
            List.of(
                "a/KVO_001_F_0001 x.xmp",
                "b/KVO_001_F_0002 x.jpg.xmp",
                "b/KVO_001_F_0001 x.xmp",
                "c/other.xmp"),
            "a/KVO_001_F_0001 x.jpg",
            "b/KVO_001_F_0002 x.jpg",
            "a/KVO_002_B_0013 x.jpg");
    assertThat(extras.stream().skip(3).map(extra -> extra.file() + " = " + told(extra)))
        .containsExactly(
            "a/KVO_001_F_0001 x.xmp = KVO_001_F_0001: it goes with its picture"
                + " -> KVO_001_F_0001_v01.xmp",
            "b/KVO_001_F_0002 x.jpg.xmp = KVO_001_F_0002: it goes with its picture"
                + " -> KVO_001_F_0002_v01.jpg.xmp");
  }
}
