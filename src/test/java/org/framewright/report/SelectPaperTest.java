package org.framewright.report;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import org.framewright.base.Progress;
import org.framewright.handoff.ExtraPaper;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Select;
import org.framewright.renaming.Renamer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** The papers on a package's pictures: what stands on them. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SelectPaperTest {
  private ReportScene scene;
  private Path folder;
  private HandOffPlan plan;

  @BeforeAll
  void aJobWithSelects(@TempDir Path folder) throws Exception {
    this.folder = folder;
    scene = new ReportScene(folder);
    var job = scene.job();
    var renamer = Renamer.in(job.folder());
    renamer.apply(renamer.plan(job.frameNames(job.scan()).requests()), Progress.NONE);
    var scan = job.scan();
    plan = HandOff.of(job, scan, job.tally(scan)).rated(5);
    assertThat(plan.selects()).hasSize(8);
  }

  private SelectPaper paper(ReportForm form, String language) {
    return new SelectPaper(
        scene.job(), form, Stationery.usual(Locale.of(language), Letterhead.NONE));
  }

  @Test
  void theirNamesAreThoseThatTheHandOffKnows() {
    for (var form : List.of(ReportForm.PDF, ReportForm.XLSX, ReportForm.CSV)) {
      assertThat(ExtraPaper.NAMES).contains(paper(form, "en").name());
    }
  }

  private String written(ReportForm form, String language) throws Exception {
    var out = new ByteArrayOutputStream();
    paper(form, language).write(plan, out, Progress.NONE);
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void theListHasALineForEachWithItsNumberItsNameAndWhatIsKnownOfIt() throws Exception {
    var lines = written(ReportForm.CSV, "en").lines().toList();
    assertThat(lines)
        .first()
        .isEqualTo("\uFEFFNumber,Name,Setup,What,View,Rating,Approved by,Frame");
    assertThat(lines).hasSize(9);
    var first = plan.selects().getFirst();
    assertThat(lines.get(1))
        .startsWith("1," + first.name() + ",001,")
        .contains(",5,", "Odette")
        .endsWith("," + first.original());
    assertThat(lines.get(3)).as("nobody approved setup 003").contains(",5,,");
    assertThat(written(ReportForm.CSV, "de")).startsWith("\uFEFFNummer,Name,Motiv,");
  }

  @Test
  void theSheetShowsEachUnderItsNameWithTheSameNumber() throws Exception {
    var page = written(ReportForm.HTML, "en");
    int at = 0;
    for (int i = 0; i < plan.selects().size(); i++) {
      int name = page.indexOf(">" + plan.selects().get(i).name() + "<", at);
      assertThat(name).as(plan.selects().get(i).name()).isGreaterThan(at);
      at = page.indexOf((i + 1) + " of 8, rated 5", name);
      assertThat(at).isGreaterThan(name);
    }
    assertThat(page).contains("8 frames of 8 setups").doesNotContain("<script>alert");
    var others =
        scene.job().scan().frames().stream()
            .map(frame -> frame.stem())
            .filter(stem -> plan.selects().stream().noneMatch(one -> one.original().endsWith(stem)))
            .toList();
    assertThat(others).isNotEmpty().noneMatch(page::contains);
  }

  @Test
  void aSlateThatGoesAlongIsCalledOne() throws Exception {
    var first = plan.selects().getFirst();
    var slate =
        new Select(
            first.frame(),
            first.original(),
            first.place(),
            first.rating(),
            first.name(),
            first.fields(),
            first.files(),
            true);
    var withSlate =
        new HandOffPlan(
            plan.chosenBy(), List.of(slate, plan.selects().get(1)), List.of(), plan.before());
    for (var form : List.of(ReportForm.HTML, ReportForm.CSV)) {
      var out = new ByteArrayOutputStream();
      paper(form, "en").write(withSlate, out, Progress.NONE);
      var said = out.toString(StandardCharsets.UTF_8);
      assertThat(said).containsOnlyOnce("a slate, of 001");
    }
  }

  @Test
  void whatIsStoppedSaysSo() {
    assertThatThrownBy(
            () ->
                paper(ReportForm.PDF, "en")
                    .write(plan, new ByteArrayOutputStream(), Progress.until(() -> true)))
        .isInstanceOf(CancellationException.class);
  }

  /** ICU's data for territories, by CLDR: letter in the United States, A4 in Germany. */
  @Test
  void thePaperIsTheUsualOneOfTheCountry() {
    assertThat(Paper.usual(Locale.US)).isEqualTo(Paper.LETTER);
    assertThat(Paper.usual(Locale.CANADA_FRENCH)).isEqualTo(Paper.LETTER);
    assertThat(Paper.usual(Locale.GERMANY)).isEqualTo(Paper.A4);
    assertThat(Paper.usual(Locale.UK)).isEqualTo(Paper.A4);
  }

  /** By pdftotext of Poppler and veraPDF; the room is what the hand-off counts with. */
  @Test
  @Tag("slow")
  void theSheetOnPaperCanBeReadAloudSearchedAndKept() throws Exception {
    var pdf = folder.resolve("sheet.pdf");
    try (var out = Files.newOutputStream(pdf)) {
      paper(ReportForm.PDF, "de").write(plan, out, Progress.NONE);
    }
    VeraGreenfieldFoundryProvider.initialise();
    assertThat(ReportPrintTest.failures(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
    assertThat(ReportPrintTest.failures(pdf, PDFAFlavour.PDFA_3_A)).isEmpty();
    assertThat(Files.size(pdf)).isLessThan(paper(ReportForm.PDF, "de").room(8));
    assumeThat(ReportPrintTest.onPath("pdftotext")).as("pdftotext is not installed").isTrue();
    var told = ReportPrintTest.told("pdftotext", pdf.toString(), "-");
    assertThat(told).contains(plan.selects().stream().map(Select::name).toList());
    assertThat(told).contains("Kontaktbogen", "8 von 8").doesNotContain("#");
  }
}
