package org.framewright.handoff.spec;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.disk.SymbolicLinks;
import org.framewright.frames.PictureBorder;
import org.framewright.frames.PictureHeader;
import org.framewright.frames.PictureHeader.Kind;
import org.framewright.frames.PictureHeader.Model;
import org.framewright.naming.Convention;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a client may ask, and what a file is made of it. The numbers of product pictures are those
 * of the GS1 Product Image Specification Standard, from memory; all others are made up.
 */
class SpecificationTest {
  private static final String SRGB = "sRGB IEC61966-2.1";

  @TempDir private Path folder;

  private static Specification sound(String yaml) {
    return switch (Specification.parse(yaml, "delivery.yaml")) {
      case Specification.Parsed.Sound(Specification specification) -> specification;
      case Specification.Parsed.Faulty(List<Problem> problems) ->
          throw new AssertionError(problems.toString());
    };
  }

  private static Specification ofAll(String rules) {
    return sound("specification: Test\nall: {" + rules + "}\n");
  }

  private static List<String> faults(String yaml) {
    return switch (Specification.parse(yaml, "delivery.yaml")) {
      case Specification.Parsed.Sound _ -> List.of();
      case Specification.Parsed.Faulty(List<Problem> problems) ->
          problems.stream().map(Problem::sentences).toList();
    };
  }

  private static String faultOf(String rules) {
    var faults = faults("specification: Test\nall: {" + rules + "}\n");
    assertThat(faults).as(rules).hasSize(1);
    return faults.getFirst();
  }

  private static PictureBorder.Reading notAsked() {
    throw new AssertionError("nobody asked what its border is like");
  }

  /** A picture, of which a test changes what it is about. */
  private static final class Picture {
    private Kind kind = Kind.JPEG;
    private PictureHeader.Size size = new PictureHeader.Size(2400, 1600, false);
    private PictureHeader.Colour colour = new PictureHeader.Colour(Model.RGB, 8, 0);
    private int layers;
    private int pages = 1;
    private Optional<PictureHeader.Profile> profile = Optional.empty();
    private Optional<PictureHeader.Resolution> resolution = Optional.empty();
    private long bytes = 1_000_000;
    private PictureBorder.Reading border =
        new PictureBorder.Reading.Read(new PictureBorder(Collections.nCopies(1, 8)));

    Picture size(int width, int height) {
      size = new PictureHeader.Size(width, height, false);
      return this;
    }

    PictureHeader.Reading reading() {
      return new PictureHeader.Reading.Read(
          new PictureHeader(kind, size, colour, layers, pages, profile, resolution, bytes));
    }

    List<String> against(Specification specification, String... view) {
      return specification
          .findings("a." + Kinds.endings(kind).getFirst(), List.of(view), reading(), () -> border)
          .stream()
          .map(finding -> finding.problem().sentences())
          .toList();
    }
  }

  private static Picture picture() {
    return new Picture();
  }

  @Test
  void theSampleIsSoundAndGoesWithItsConvention() throws Exception {
    var file = Path.of("samples/delivery-product-images.yaml");
    assertThat(Specification.isMeant(file)).isTrue();
    var sample = ((Specification.Parsed.Sound) Specification.read(file)).specification();
    assertThat(sample.name()).contains("delivery");
    assertThat(sample.problems(convention("gs1-product-images"))).isEmpty();
    assertThat(sample.problems(convention("fashion-days")))
        .extracting(Problem::sentence)
        .containsExactly(
            file
                + ", line 13, column 7: the convention of this job has no names of the kind"
                + " “delivery”");
  }

  private static Convention convention(String name) throws Exception {
    return ((Convention.Parsed.Sound) Convention.read(Path.of("templates/" + name + ".yaml")))
        .convention();
  }

  /** GS1, from memory: a picture of type A has 900 to 2400 pixels and 300 ppi. */
  @ParameterizedTest
  @CsvSource({"899, false", "900, true", "2400, true", "2401, false"})
  void theLongSideOfAProductPictureLiesBetweenTheBounds(int side, boolean right) throws Exception {
    var sample =
        ((Specification.Parsed.Sound)
                Specification.read(Path.of("samples/delivery-product-images.yaml")))
            .specification();
    var picture = picture().size(600, side);
    picture.profile = Optional.of(new PictureHeader.Profile(SRGB, true));
    picture.resolution = Optional.of(new PictureHeader.Resolution(300, 299.9994));
    assertThat(picture.against(sample))
        .isEqualTo(
            right
                ? List.of()
                : List.of(
                    "a.jpg: its long side has "
                        + side
                        + " pixels; asked: 900 to 2400 pixels. "
                        + (side > 2400
                            ? "Export it smaller."
                            : "Export it larger, from the picture in full size.")));
  }

  @Test
  void eachFindingSaysWhatIsAskedWhatThereIsAndWhatToDo() {
    var deep = picture();
    deep.kind = Kind.TIFF;
    deep.colour = new PictureHeader.Colour(Model.CMYK, 16, 2);
    deep.layers = 3;
    deep.profile = Optional.of(new PictureHeader.Profile("Coated", true));
    deep.resolution = Optional.of(new PictureHeader.Resolution(72, 72));
    deep.bytes = 20_000_001;
    assertThat(
            deep.against(
                ofAll(
                    "kinds: [jpeg, png], width: 2000, height: at least 2000, short-side: 2000-2400,"
                        + " aspect: [\"4:5\", square], resolution: 300, bits: 8, colours: [rgb,"
                        + " grey], profile: "
                        + SRGB
                        + ", alpha: no, layers: no, file-size: at most 20 MB")))
        .containsExactly(
            "a.tif: it is of the kind tiff; asked: jpeg or png. Save it as jpeg.",
            "a.tif: it is 2400 pixels wide; asked: 2000 pixels. Export it smaller.",
            "a.tif: it is 1600 pixels high; asked: at least 2000 pixels. Export it larger, from the"
                + " picture in full size.",
            "a.tif: its short side has 1600 pixels; asked: 2000 to 2400 pixels. Export it larger,"
                + " from the picture in full size.",
            "a.tif: it is 2400 by 1600 pixels; asked: 4:5 or 1:1. Crop it to the proportions that"
                + " are asked for.",
            "a.tif: it says 72 ppi; asked: 300 ppi. Set the resolution that is asked for, and leave"
                + " the pixels as they are.",
            "a.tif: it has 16 bits a channel; asked: 8. Export it with 8 bits a channel.",
            "a.tif: its colours are cmyk; asked: rgb or grey. Convert it to rgb or grey.",
            "a.tif: its colour profile is Coated; asked: "
                + SRGB
                + ". Convert it, and embed the profile.",
            "a.tif: it has 2 channels besides its colours; asked: none. Delete alpha channels and"
                + " transparency, and save it again.",
            "a.tif: it has 3 layers; asked: none. Flatten it, and save it again.",
            "a.tif: it has 20,000,001 bytes; asked: at most 20 MB. Compress it more, or make it"
                + " smaller.");
  }

  @Test
  void aViewAsksInPlaceOfAllAndBesides() {
    var specification =
        sound(
            """
            specification: Test
            all: {bits: 8, long-side: at least 2000}
            views:
              D: {long-side: at least 4000, layers: no}
              back: {bits: any}
            """);
    var picture = picture();
    assertThat(picture.against(specification, "F", "front")).isEmpty();
    assertThat(picture.against(specification, "D", "detail"))
        .singleElement()
        .asString()
        .contains("at least 4000 pixels");
    picture.colour = new PictureHeader.Colour(Model.RGB, 16, 0);
    assertThat(picture.against(specification, "F", "front")).hasSize(1);
    assertThat(picture.against(specification, "B", "Back")).isEmpty();
    assertThat(specification.words().get("D").get("long-side").english())
        .isEqualTo("at least 4000 pixels");
  }

  /** Steps of 8 bits: 10 pixels of 100 are 3 off. */
  @Test
  void aBackgroundIsWhiteOrSaysHowMuchOfItIsNot() {
    var offWhite = new ArrayList<>(Collections.nCopies(257, 0));
    offWhite.set(0, 90);
    offWhite.set(3, 10);
    var picture = picture();
    picture.border = new PictureBorder.Reading.Read(new PictureBorder(offWhite));
    assertThat(picture.against(ofAll("background: white within 3"))).isEmpty();
    assertThat(picture.against(ofAll("background: any"))).isEmpty();
    assertThat(picture.against(ofAll("background: white")))
        .containsExactly(
            "a.jpg: 10 of 100 pixels at its border are not white; the farthest is 3 of 255 off; asked: a"
                + " white background. Make the background white up to all four sides.");
    picture.border = new PictureBorder.Reading.NotRead(Text.of("it cannot be decoded"));
    assertThat(picture.against(ofAll("background: White within 2")).getFirst())
        .startsWith(
            "a.jpg: its background cannot be judged: it cannot be decoded; asked: a white background,"
                + " within 2 of 255.");
    for (var wrong :
        List.of("black", "white within 65", "white within", "yes", "white within 999")) {
      assertThat(faultOf("background: " + wrong))
          .contains("“" + wrong + "” is not understood here");
    }
  }

  @Test
  void aPictureThatLiesOnItsSideIsMeasuredAsItIsSeen() {
    var picture = picture();
    picture.size = new PictureHeader.Size(1600, 2400, true);
    assertThat(picture.against(ofAll("width: 2400, height: 1600, aspect: \"3:2\""))).isEmpty();
  }

  /** 1001 by 1251 is 4:5 to a pixel, 1001 by 1253 is not. */
  @ParameterizedTest
  @CsvSource({
    "1000, 1250, true",
    "1001, 1251, true",
    "1001, 1252, true",
    "1001, 1253, false",
    "1250, 1000, false"
  })
  void proportionsHoldToAPixel(int width, int height, boolean right) {
    assertThat(picture().size(width, height).against(ofAll("aspect: \"4:5\"")).isEmpty())
        .isEqualTo(right);
  }

  @Test
  void anyProfileWillDoWhereYesIsAsked() {
    var picture = picture();
    assertThat(picture.against(ofAll("profile: yes")))
        .containsExactly(
            "a.jpg: it has no colour profile; asked: an embedded profile. Embed the profile when"
                + " you export it.");
    picture.profile = Optional.of(new PictureHeader.Profile("Any", true));
    assertThat(picture.against(ofAll("profile: yes"))).isEmpty();
    assertThat(picture.against(ofAll("profile: no"))).hasSize(1);
    assertThat(picture.against(ofAll("profile: [Other, any]"))).isEmpty();
    picture.profile = Optional.of(new PictureHeader.Profile("", true));
    assertThat(picture.against(ofAll("profile: Other")).getFirst()).contains("says no name");
  }

  /** W3C PNG: the chunk sRGB says what IEC 61966-2-1 defines. */
  @Test
  void aPngThatSaysItIsSrgbHasThatProfile() {
    var picture = picture();
    picture.kind = Kind.PNG;
    picture.profile = Optional.of(new PictureHeader.Profile(SRGB, false));
    assertThat(picture.against(ofAll("profile: sRGB v4 ICC preference"))).isEmpty();
    assertThat(picture.against(ofAll("profile: Display P3"))).hasSize(1);
  }

  @Test
  void layersAndChannelsMayBeWanted() {
    var picture = picture();
    picture.kind = Kind.PSD;
    var wanted = ofAll("layers: yes, alpha: yes");
    assertThat(picture.against(wanted)).hasSize(2);
    picture.layers = 1;
    picture.colour = new PictureHeader.Colour(Model.RGB, 8, 1);
    assertThat(picture.against(wanted)).isEmpty();
    picture.layers = 0;
    picture.pages = 2;
    assertThat(picture.against(ofAll("layers: no")).getFirst())
        .contains("it holds 2 pictures one behind another");
  }

  @Test
  void anEndingThatSaysAnotherKindIsAlwaysAFinding() {
    var specification = ofAll("bits: 8");
    assertThat(
            specification.findings(
                "x/a.tif", List.of(), picture().reading(), SpecificationTest::notAsked))
        .extracting(finding -> finding.problem().sentence())
        .containsExactly("x/a.tif: its name ends in .tif, and it is of the kind jpeg; asked: .jpg");
    assertThat(
            specification.findings(
                "A.JPEG", List.of(), picture().reading(), SpecificationTest::notAsked))
        .isEmpty();
    assertThat(
            specification.findings(
                "a.dng",
                List.of(),
                new PictureHeader.Reading.NotRead(Text.of("it is a raw")),
                SpecificationTest::notAsked))
        .extracting(SpecFinding::rule)
        .containsExactly(Rule.READABLE);
  }

  @ParameterizedTest
  @CsvSource({
    "at most 20 MB, 20000000",
    "at most 20 MiB, 20971520",
    "at most 1.5 kb, 1500",
    "at most 2 GB, 2000000000",
    "at most 700 bytes, 700"
  })
  void sizesOfFilesHaveUnits(String asked, long most) {
    var specification = ofAll("file-size: " + asked);
    var picture = picture();
    picture.bytes = most;
    assertThat(picture.against(specification)).isEmpty();
    picture.bytes = most + 1;
    assertThat(picture.against(specification)).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "width: 2400", "width: exactly 2400 pixels", "width: 900-2400", "width: 900 to 2400 px",
        "width: 900 – 2400", "width: At least 2400", "width: at most 2400", "width: any"
      })
  void amountsAreWrittenInSeveralWays(String rule) {
    assertThat(picture().against(ofAll(rule))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "colors: rgb | line 2, column 7: “colors” has no meaning here. Is “colours” meant?",
        "bits: 8, bits: 16 | line 2, column 16: “bits” is given twice. Keep one of the two.",
        "kinds: [jpg] | line 2, column 14: “jpg” is not understood here. Is “jpeg” meant?",
        "width: 2400-900 | line 2, column 14: 2400 to 900 holds nothing. Put the smaller one"
            + " first.",
        "width: big | line 2, column 14: “big” is not understood here. Write it as at least 2400,"
            + " or 900-4800.",
        "file-size: 20 | line 2, column 18: “20” is not understood here. Write it as at most 20"
            + " MB.",
        "aspect: wide | line 2, column 15: “wide” is not understood here. Write it as \"4:5\".",
        "bits: 9 | line 2, column 13: “9” is not understood here. Write it as 8, 16.",
        "layers: maybe | line 2, column 15: “maybe” is not understood here. Write it as yes, no,"
            + " any.",
        "kinds: [] | line 2, column 14: nothing stands here. Write a value, or any.",
        "bits: {a: b} | line 2, column 13: this should be plain text. Write it on the same line, in"
            + " quotes.",
        "'width: at least 2400, long-side: at most 2000' | line 2, column 6: no picture has all the"
            + " sizes that are asked for together here. Correct what is mistyped, or ask for one of"
            + " them only.",
        "'width: 2400, height: 1600, aspect: square' | line 2, column 6: no picture has all the"
            + " sizes that are asked for together here. Correct what is mistyped, or ask for one of"
            + " them only.",
        "'kinds: jpeg, bits: 16' | line 2, column 6: no file of the kind jpeg has all that is asked"
            + " for together here. Correct what is mistyped, or ask for one of them only.",
        "'kinds: [jpeg, png], layers: yes' | line 2, column 6: no file of the kind jpeg or png has"
            + " all that is asked for together here. Correct what is mistyped, or ask for one of"
            + " them only."
      })
  void aFaultSaysWhereWhatAndItsRemedy(String rules, String fault) {
    assertThat(faultOf(rules)).isEqualTo("delivery.yaml, " + fault);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "width: 2400, long-side: 2400, short-side: at most 1600",
        "width: 1600, height: 2400, long-side: at least 2000, aspect: \"2:3\"",
        "width: 1001, height: 1251, aspect: \"4:5\"",
        "short-side: at least 900, long-side: at least 900, aspect: square",
        "kinds: [jpeg, tiff], bits: 16"
      })
  void whatCanBeHadIsNoContradiction(String rules) {
    assertThat(faults("specification: T\nall: {" + rules + "}\n")).isEmpty();
  }

  @Test
  void aViewThatContradictsWhatIsAskedOfAllIsFoundWhereItStands() {
    var faults =
        faults(
            """
            specification: Test
            all: {kinds: [jpeg]}
            views:
              D: {layers: yes}
            """);
    assertThat(faults).singleElement().asString().startsWith("delivery.yaml, line 4, column 6: ");
  }

  @Test
  void allFaultsAreToldAtOnce() {
    assertThat(faults("specification: T\nal: {bits: 8}\nall: {bit: 8, layers: 7, width: x}\n"))
        .hasSize(4);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "# nothing\n",
        "- a\n- b\n",
        "just a text",
        "convention: X\nfields: {}\n",
        "specification: T\n",
        "all: {bits: 8}\n",
        "specification: [a]\nall: {bits: 8}\n",
        "specification: T\nall: 8\n",
        "specification: T\nviews: [a]\n",
        "specification: T\nall: &x {bits: 8}\n",
        "specification: T\n---\nall: {bits: 8}\n",
        "specification: T\nall: {bits: 8\n",
        "specification: T\nall: {width: 99999999999}\n",
        "specification: T\nall: {aspect: \"0:0\"}\n"
      })
  void whatIsNoSpecificationIsRefusedWithAPlace(String yaml) {
    assertThat(faults(yaml))
        .isNotEmpty()
        .allSatisfy(fault -> assertThat(fault).startsWith("delivery.yaml, line "));
  }

  @Test
  @Tag("slow")
  void aHugeOrDeepOrHostileFileIsRefused() throws Exception {
    assertThat(faults("specification: " + "x".repeat(300_000))).hasSize(1);
    assertThat(faults("[".repeat(10_000))).hasSize(1);
    assertThat(faults("specification: T\nall: {" + "a: 1, ".repeat(5_000) + "}\n")).hasSize(100);
    var views = new StringBuilder("specification: T\nviews:\n");
    for (int i = 0; i < 2_000; i++) {
      views.append("  v").append(i).append(": {bits: 8}\n");
    }
    assertThat(faults(views.toString())).hasSize(1);
    assertThat(faults("specification: T\nall: {\"b\\e[31mits\": 8}\n").getFirst())
        .doesNotContain("\u001b");
    var file = Files.write(folder.resolve("latin.yaml"), new byte[] {'a', ':', ' ', (byte) 0xE4});
    assertThat(problem(Specification.read(file))).contains("not text in UTF-8");
    assertThat(problem(Specification.read(folder))).contains("a folder");
    assertThat(problem(Specification.read(folder.resolve("none.yaml")))).contains("none.yaml");
    Files.writeString(folder.resolve("marked.yaml"), "\uFEFFspecification: T\nall: {bits: 8}\n");
    assertThat(Specification.read(folder.resolve("marked.yaml")))
        .isInstanceOf(Specification.Parsed.Sound.class);
  }

  private static String problem(Specification.Parsed parsed) {
    return ((Specification.Parsed.Faulty) parsed).problems().getFirst().sentences();
  }

  @Test
  void theSpecificationOfAJobIsItsOwnFileAndNoLink() throws Exception {
    assertThat(Specification.ofJob(folder)).isEmpty();
    var elsewhere = Files.writeString(folder.resolve("x.yaml"), "specification: T\nall: {bits: 8}");
    SymbolicLinks.make(folder.resolve(Specification.FILE), elsewhere);
    assertThat(Specification.ofJob(folder).orElseThrow())
        .isInstanceOf(Specification.Parsed.Faulty.class);
    Files.delete(folder.resolve(Specification.FILE));
    Files.copy(elsewhere, folder.resolve(Specification.FILE));
    assertThat(Specification.ofJob(folder).orElseThrow())
        .isInstanceOf(Specification.Parsed.Sound.class);
  }

  @Test
  void aViewThatTheConventionDoesNotHaveIsTold() throws Exception {
    var specification =
        sound("specification: T\nviews:\n  F: {bits: 8}\n  frnt: {bits: 8}\n  Detail: {bits: 8}\n");
    assertThat(specification.problems(convention("fashion-days")))
        .extracting(Problem::sentences)
        .containsExactly(
            "delivery.yaml, line 4, column 9: “frnt” is no view of this job’s convention. Is"
                + " “front” meant?");
    assertThat(specification.problems(convention("gs1-product-images"))).hasSize(3);
  }
}
