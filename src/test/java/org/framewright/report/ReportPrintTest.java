package org.framewright.report;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** Reports on paper, as independent programs find them. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Tag("slow")
class ReportPrintTest {
  private ReportScene scene;
  private Path folder;

  @BeforeAll
  void aJob(@TempDir Path folder) throws Exception {
    this.folder = folder;
    scene = new ReportScene(folder);
    VeraGreenfieldFoundryProvider.initialise();
  }

  static String failures(Path pdf, PDFAFlavour flavour) throws Exception {
    try (var in = Files.newInputStream(pdf);
        var parser = Foundries.defaultInstance().createParser(in, flavour);
        var validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      var result = validator.validate(parser);
      return result.getTestAssertions().stream()
          .filter(one -> one.getStatus() == TestAssertion.Status.FAILED)
          .map(one -> one.getRuleId().getClause() + ": " + one.getMessage())
          .distinct()
          .limit(10)
          .collect(Collectors.joining("\n", "", result.isCompliant() ? "" : "\nnot compliant"));
    }
  }

  /** PDF/UA-1 (ISO 14289-1) and PDF/A-3a (ISO 19005-3), as veraPDF checks them. */
  @ParameterizedTest
  @EnumSource
  void aReportCanBeReadAloudAndKept(ReportKind kind) throws Exception {
    var pdf = scene.written(kind, ReportForm.PDF, "de");
    assertThat(failures(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
    assertThat(failures(pdf, PDFAFlavour.PDFA_3_A)).isEmpty();
  }

  @Test
  void soCanOneWithALogoOnLetterPaper() throws Exception {
    var logo = folder.resolve("logo.png");
    ImageIO.write(new BufferedImage(900, 300, BufferedImage.TYPE_INT_ARGB), "png", logo.toFile());
    var sound = (Letterhead.LogoReading.Sound) Letterhead.readLogo(logo);
    var plain = scene.options(ReportKind.DAY, "fr");
    var options =
        new ReportOptions(
            ReportKind.DAY,
            Paper.LETTER,
            Locale.FRENCH,
            plain.hours(),
            new Letterhead("Studio Növa", "", Optional.of(sound.logo())));
    var pdf = folder.resolve("letter.pdf");
    Report.of(scene.job(), scene.job().scan(), options)
        .write(pdf, ReportForm.PDF, false, Progress.NONE);
    assertThat(failures(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
    assertThat(failures(pdf, PDFAFlavour.PDFA_3_A)).isEmpty();
    try (var document = Loader.loadPDF(pdf.toFile())) {
      // Letter: 8.5 by 11 inches of 72 points (ANSI/ASME Y14.1, size A).
      assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(612);
      assertThat(document.getPage(0).getMediaBox().getHeight()).isEqualTo(792);
    }
  }

  @Test
  void soCanATableOfSeveralPages(@TempDir Path other) throws Exception {
    var large = new ReportScene(other);
    var setups = new ArrayList<>(large.job().shotList().setups());
    for (int i = 13; i <= 90; i++) {
      setups.add(ReportScene.setup(i, "Coat " + i));
    }
    large.job().importList(new ShotList(setups));
    var wholeDay =
        new DayHours(LocalTime.MIDNIGHT, LocalTime.of(23, 59), List.of(), ZoneOffset.UTC);
    var options =
        new ReportOptions(ReportKind.NEXT, Paper.A4, Locale.GERMAN, wholeDay, Letterhead.NONE);
    var pdf = other.resolve("next.pdf");
    var written =
        Report.of(large.job(), large.job().scan(), options)
            .write(pdf, ReportForm.PDF, false, Progress.NONE);
    assertThat(((Report.Written.Done) written).pages()).isGreaterThan(1);
    assertThat(failures(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
    assertThat(failures(pdf, PDFAFlavour.PDFA_3_A)).isEmpty();
  }

  /** The library cannot tag a table of which but the head comes before the end of a page. */
  @Test
  void aTableMayComeAnywhereOnAPage() throws Exception {
    for (int above = 200; above < 264; above += 4) {
      var text = new StringBuilder();
      var html = new Html(text);
      var page = new Page(html, new Words(Locale.ENGLISH, ZoneOffset.UTC), true, _ -> null);
      page.begin(
          "A job",
          ReportKind.DAY,
          new Stationery(Paper.A4, Locale.ENGLISH, Letterhead.NONE),
          Text.of("today"));
      html.element("div", "", "style", "height:" + above + "mm");
      page.heading(Text.of("What was shot"));
      html.open("table");
      page.headings(List.of(Text.of("Setup"), Text.of("What")), 50, 50);
      html.open("tbody");
      for (int i = 0; i < 20; i++) {
        html.open("tr");
        html.wordsIn("td", ReportScene.code(i)).wordsIn("td", "Wool coat ".repeat(20)).end();
      }
      html.close().end();
      page.end();
      var out = new ByteArrayOutputStream();
      int pages = Press.print(text.toString(), Locale.ENGLISH, _ -> new byte[0], out, () -> false);
      assertThat(pages).as("below %d mm", above).isBetween(2, 3);
    }
  }

  /** By pdffonts of Poppler. */
  @ParameterizedTest
  @EnumSource
  void everyFontIsInIt(ReportKind kind) throws Exception {
    assumeThat(onPath("pdffonts")).as("pdffonts is not installed").isTrue();
    var told = told("pdffonts", scene.written(kind, ReportForm.PDF, "en").toString());
    var fonts = told.lines().skip(2).toList();
    assertThat(fonts).hasSizeGreaterThan(1);
    assertThat(fonts).allMatch(line -> line.matches(".* yes yes yes +\\d+ +\\d+"));
  }

  /** By pdftotext of Poppler. */
  @ParameterizedTest
  @EnumSource
  void everySetupIsFoundInIt(ReportKind kind) throws Exception {
    assumeThat(onPath("pdftotext")).as("pdftotext is not installed").isTrue();
    var told = told("pdftotext", scene.written(kind, ReportForm.PDF, "en").toString(), "-");
    var setups =
        switch (kind) {
          case DAY, SHEET -> Stream.of(1, 2, 3, 4, 5, 6, 7, 8);
          case NEXT -> Stream.of(9, 10, 12);
          case SIGN_OFF -> Stream.of(1, 2, 4, 5, 6, 7, 8);
        };
    assertThat(told).contains(setups.map(ReportScene::code).toList());
    if (kind != ReportKind.NEXT) {
      assertThat(told).contains("羊毛のコート", "真丝衬衫", "양모 재킷", "Шерстяное", "เสื้อคลุมผ้าไหม");
    }
    // What no font has a sign for would stand there as this.
    assertThat(told).doesNotContain("#");
  }

  @Test
  void aReportThatIsStoppedWhileItIsPrintedLeavesNoFile() throws Exception {
    var into = Files.createDirectory(folder.resolve("stopped"));
    var steps = new int[1];
    var ended =
        scene
            .report(ReportKind.SHEET, "en")
            .write(
                into.resolve("sheet.pdf"),
                ReportForm.PDF,
                false,
                new Progress() {
                  @Override
                  public void step(int done, int total) {
                    steps[0] = total - done;
                  }

                  @Override
                  public boolean cancelled() {
                    return scene.job() != null && steps[0] == 0 && printing();
                  }
                });
    assertThat(ended).isInstanceOf(Report.Written.Cancelled.class);
    assertThat(into).isEmptyDirectory();
  }

  private static boolean printing() {
    return Arrays.stream(Thread.currentThread().getStackTrace())
        .anyMatch(call -> call.getClassName().equals(Press.class.getName()));
  }

  static String told(String... words) throws IOException, InterruptedException {
    var process = new ProcessBuilder(words).redirectErrorStream(true).start();
    var told = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).as(told).isZero();
    return told;
  }

  static boolean onPath(String program) {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .anyMatch(place -> Files.isExecutable(Path.of(place, program)));
  }
}
