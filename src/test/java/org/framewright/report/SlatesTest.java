package org.framewright.report;

import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.TreeSet;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.framewright.base.Progress;
import org.framewright.frames.slate.Slate;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Slates on paper, as independent programs find them. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Tag("slow")
class SlatesTest {
  /** In a millimetre of a picture. */
  private static final double DOTS = 150 / 25.4;

  private ReportScene scene;
  private Path folder;

  private static final List<String> CODES =
      List.of("001", "A-12", "LOOK.12345", "Ärmel 3", "羊毛のコート", "one-that-is-as-long-as-a-name");

  @BeforeAll
  void aJobOfManyScripts(@TempDir Path folder) throws Exception {
    this.folder = folder;
    scene = new ReportScene(folder);
    var setups = new ArrayList<>(scene.job().shotList().setups());
    for (var code : CODES) {
      setups.add(
          new Setup(
              code,
              code.equals("001")
                  ? ""
                  : "معطف صوفي طويل جدًا بأزرار مزدوجة وحزام من الجلد البني ".repeat(3),
              List.of(new View("F"), new View("B")),
              OptionalInt.empty(),
              new LinkedHashMap<>()));
    }
    scene.job().importList(new ShotList(distinct(setups)));
    VeraGreenfieldFoundryProvider.initialise();
  }

  private static List<Setup> distinct(List<Setup> setups) {
    var known = new LinkedHashMap<String, Setup>();
    setups.forEach(setup -> known.putIfAbsent(Setup.canonicalKey(setup.code()), setup));
    return List.copyOf(known.values());
  }

  private Path printed(SlateSize size, Paper paper, String language) throws Exception {
    var pdf = folder.resolve(size + "-" + paper + "-" + language + ".pdf");
    if (!Files.exists(pdf)) {
      var stationery = new Stationery(paper, Locale.of(language), Letterhead.NONE);
      var made =
          (Slates.Ready) Slates.of(scene.job(), Slates.wanted(scene.job()), size, stationery);
      var written = made.report().write(pdf, ReportForm.PDF, false, Progress.NONE);
      int pages = (Slates.wanted(scene.job()).size() + size.perPage() - 1) / size.perPage();
      assertThat(written).isEqualTo(new Report.Written.Done(0, pages));
    }
    return pdf;
  }

  /** PDF/UA-1 (ISO 14289-1) and PDF/A-3a (ISO 19005-3), as veraPDF checks them. */
  @ParameterizedTest
  @CsvSource({"ONE, A4, en", "ONE, LETTER, fr", "FOUR, A4, de", "FOUR, LETTER, en"})
  void slatesCanBeReadAloudAndKept(SlateSize size, Paper paper, String language) throws Exception {
    var pdf = printed(size, paper, language);
    assertThat(ReportPrintTest.failures(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
    assertThat(ReportPrintTest.failures(pdf, PDFAFlavour.PDFA_3_A)).isEmpty();
  }

  /**
   * Every card, by zbarimg, on pages of 150 and, as it reads large symbols worse, of 75 dots an
   * inch.
   */
  @ParameterizedTest
  @CsvSource({"ONE, A4, en", "ONE, LETTER, fr", "FOUR, A4, de", "FOUR, LETTER, en"})
  void anotherReaderReadsEveryCard(SlateSize size, Paper paper, String language) throws Exception {
    assumeThat(ReportPrintTest.onPath("zbarimg")).as("zbarimg is not installed").isTrue();
    var read = new TreeSet<String>();
    var pdf = printed(size, paper, language);
    for (int dots : new int[] {150, 75}) {
      for (var page : ReportPictures.pages(pdf, dots)) {
        read.addAll(readOn(page));
      }
    }
    var key = scene.job().slateKey();
    var wanted =
        Slates.wanted(scene.job()).stream()
            .map(setup -> Slate.of(key, setup.code()).print())
            .toList();
    assertThat(read).containsExactlyInAnyOrderElementsOf(wanted);
  }

  private static List<String> readOn(Path page) throws Exception {
    var told =
        ReportPrintTest.told(
            "zbarimg", "-q", "--raw", "--nodbus", "-Sdisable", "-Sqrcode.enable", page.toString());
    return told.lines().filter(line -> line.startsWith("S1")).toList();
  }

  /** In a picture of the page at 150 dots an inch. */
  @ParameterizedTest
  @CsvSource({"ONE, A4, en, 45", "ONE, LETTER, fr, 45", "FOUR, A4, de, 25", "FOUR, LETTER, en, 25"})
  void digitsAreAsHighAsTheyShouldBe(SlateSize size, Paper paper, String language, double digits)
      throws Exception {
    var page = ReportPictures.pages(printed(size, paper, language), 150).getFirst();
    var image = ImageIO.read(page.toFile());
    int first = -1;
    int last = -1;
    for (int y = (int) (3 * DOTS); y < (digits + 12) * DOTS; y++) {
      if (!isWhite(image, 5 * DOTS, y, (size.width(paper) - 10) * DOTS, 1)) {
        first = first < 0 ? y : first;
        last = y;
      } else if (first >= 0) {
        break;
      }
    }
    // Round digits reach a little over those with straight ends.
    assertThat((last - first + 1) / DOTS).isBetween(digits, digits * 1.05);
  }

  /** By pdftotext of Poppler. */
  @Test
  void whatACardSaysIsTextToo() throws Exception {
    assumeThat(ReportPrintTest.onPath("pdftotext")).as("pdftotext is not installed").isTrue();
    var pdf = printed(SlateSize.ONE, Paper.A4, "en");
    var told = ReportPrintTest.told("pdftotext", pdf.toString(), "-");
    var key = scene.job().slateKey();
    for (var setup : Slates.wanted(scene.job())) {
      assertThat(told).contains(Slate.of(key, setup.code()).grouped());
    }
    assertThat(told).contains("LOOK.12345", "Ärmel 3", "羊毛のコート", "Views: F B");
  }

  @Test
  void aSheetHasThePapersSize() throws Exception {
    try (var document = Loader.loadPDF(printed(SlateSize.FOUR, Paper.LETTER, "en").toFile())) {
      // Letter: 8.5 by 11 inches of 72 points (ANSI/ASME Y14.1, size A).
      assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(612);
      assertThat(document.getPage(0).getMediaBox().getHeight()).isEqualTo(792);
    }
  }

  /** In a picture of the page at 150 dots an inch: four modules around the symbol are white. */
  @ParameterizedTest
  @CsvSource({"ONE, A4", "ONE, LETTER", "FOUR, A4", "FOUR, LETTER"})
  void aroundASymbolThereIsNothing(SlateSize size, Paper paper) throws Exception {
    var language =
        paper == Paper.A4
            ? (size == SlateSize.ONE ? "en" : "de")
            : (size == SlateSize.ONE ? "fr" : "en");
    double dots = DOTS;
    for (var page : ReportPictures.pages(printed(size, paper, language), 150)) {
      var image = ImageIO.read(page.toFile());
      double whole = size.whole() * dots;
      double module = whole / (size == SlateSize.ONE ? 33 : 29);
      int cards = 0;
      for (int y = 0; y < size.perPage() / 2 + size.perPage() % 2; y++) {
        for (int x = 0; x < Math.min(2, size.perPage()); x++) {
          double left = (x + 0.5) * size.width(paper) * dots - whole / 2;
          int top =
              topOfSymbol(image, left + 4 * module, y * size.height(paper) * dots, size, dots);
          if (top < 0) {
            continue;
          }
          cards++;
          double quiet = 4 * module - 3;
          assertThat(isWhite(image, left, top - quiet, whole, quiet - 2)).isTrue();
          assertThat(isWhite(image, left, top, quiet, 21 * module)).isTrue();
          assertThat(isWhite(image, left + whole - quiet, top, quiet, 21 * module)).isTrue();
          assertThat(isWhite(image, left, top + whole - 8 * module + 3, whole, quiet - 3)).isTrue();
        }
      }
      assertThat(cards).isPositive();
    }
  }

  /** The row in which the mark of the symbol's corner begins: a run of seven dark modules. */
  private static int topOfSymbol(
      BufferedImage image, double left, double from, SlateSize size, double dots) {
    double module = size.whole() * dots / (size == SlateSize.ONE ? 33 : 29);
    int end = (int) Math.min(image.getHeight(), from + size.height(Paper.A4) * dots);
    for (int y = (int) from; y < end; y++) {
      boolean dark = true;
      for (int x = (int) (left + 3); x < left + 7 * module - 3 && dark; x++) {
        dark = x < image.getWidth() && (image.getRGB(x, y) & 0xFF) < 100;
      }
      if (dark && (image.getRGB((int) (left + 7.5 * module), y) & 0xFF) > 150) {
        return y;
      }
    }
    return -1;
  }

  private static boolean isWhite(
      BufferedImage image, double left, double top, double width, double height) {
    for (int y = (int) Math.max(0, top); y < Math.min(image.getHeight(), top + height); y++) {
      for (int x = (int) Math.max(0, left); x < Math.min(image.getWidth(), left + width); x++) {
        if ((image.getRGB(x, y) & 0xFF) < 250) {
          return false;
        }
      }
    }
    return true;
  }
}
