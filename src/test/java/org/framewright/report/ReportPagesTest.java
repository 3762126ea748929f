package org.framewright.report;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import nu.validator.client.EmbeddedValidator;
import org.assertj.core.api.SoftAssertions;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.framewright.base.Progress;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the pages and tables of reports say of one job, and that they say no more than text. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportPagesTest {
  private ReportScene scene;
  private Path folder;

  @BeforeAll
  void aJob(@TempDir Path folder) throws Exception {
    this.folder = folder;
    scene = new ReportScene(folder);
  }

  /** The Nu Html Checker, by its own schemas. */
  @Tag("slow")
  @ParameterizedTest
  @EnumSource
  void aPageIsValidHtml(ReportKind kind) throws Exception {
    var checker = new EmbeddedValidator();
    checker.setNoLangDetect(true);
    checker.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
    var told = checker.validate(scene.written(kind, ReportForm.HTML, "de"));
    for (var message : new JsonMapper().readTree(told).path("messages")) {
      assertThat(message.path("type").asText()).as(message.toString()).isEqualTo("info");
      // That ends of empty elements have no meaning in HTML is known: the page is XML, too.
      assertThat(message.path("message").asText()).startsWith("Trailing slash");
    }
  }

  @ParameterizedTest
  @EnumSource
  void noTitleIsMoreThanText(ReportKind kind) throws IOException {
    var html = scene.html(kind);
    assertThat(html)
        .doesNotContain(
            "<script", "<b>", "</style> ", "\u202E", "\u0007", "\u001b", "src=\"http", "href=");
    assertThat(html.lines().mapToInt(String::length).max().orElse(0)).isLessThan(400_000);
    assertThat(html).doesNotContain("W".repeat(Html.LONGEST + 1));
  }

  @Test
  void theDayTellsWhatWasShotAndApproved() throws IOException {
    var html = scene.html(ReportKind.DAY);
    assertThat(html)
        .contains("Monday, 23 November 2026, as of 12:04")
        .contains("8 of 11 setups are done.")
        .contains("Of 12 setups: 7 signed off, 1 shot, 1 pickup, 2 to shoot, 1 dropped.")
        .contains("Odette, 09:22")
        .contains("010 is to be shot again: &lt;b&gt;")
        .contains("011 was dropped")
        .contains("001 has no frame of the view back")
        .contains("Time on set</h2>")
        .contains(
            "001 Évasé skirt, “früh” Łagodny: 22\u00a0min. 002 معطف صوفي طويل 12: 22\u00a0min.")
        .contains("Comments</h2>", "collar lower", "&lt;b&gt;belt&lt;/b&gt;")
        .contains("Copies were not compared yet.")
        .contains("Studio Növa");
  }

  @Test
  void theSheetShowsEachFrameOfItsSetupOnce() throws IOException {
    var html = scene.html(ReportKind.SHEET);
    assertThat(html.split("data:image/jpeg", -1)).hasSize(1 + 24);
    assertThat(html.split(">chosen<", -1)).hasSize(1 + 1);
    assertThat(html.split("rated 5", -1)).hasSize(1 + 8);
    assertThat(html.indexOf("001 front")).isLessThan(html.indexOf("002 front"));
    assertThat(html).contains("3 frames. Approved by Odette, 23 Nov 2026, 09:22");
    assertThat(html).contains("Ada, 23 Nov 2026, 11:54: collar lower");
    assertThat(html).containsPattern(", of [^:]+: &lt;b&gt;belt&lt;/b&gt;");
  }

  @Test
  void aSignOffSaysHowItIsProved() throws IOException {
    var html = scene.html(ReportKind.SIGN_OFF);
    var first = scene.job().signOffs(scene.job().scan()).getFirst();
    assertThat(html)
        .contains("7 setups approved with 21 frames")
        .contains("Approved by Odette, 23 Nov 2026, 09:22")
        .contains("<bdi dir=\"ltr\">Approved by أوديت, 23 Nov 2026, 09:44</bdi>")
        .contains(first.proof().orElseThrow().sha256())
        .contains(first.proof().orElseThrow().command())
        .contains("Signature");
  }

  @Test
  void theNextDayGoesByThePaceAndAroundTheBreak() throws IOException {
    var facts = scene.facts();
    var next = new NextSection(facts, scene.options(ReportKind.NEXT, "en"));
    var each = facts.setupTimes().of(ReportScene.setup(9, "")).orElseThrow();
    var begins = new ArrayList<>(next.begins().values());
    assertThat(next.begins().keySet()).containsExactly("009", "010", "012");
    assertThat(begins.getFirst()).isEqualTo("2026-11-24T09:00:00Z");
    assertThat(Duration.between(begins.get(0), begins.get(1))).isEqualTo(each);
    assertThat(scene.html(ReportKind.NEXT)).contains("To be shot again: 010", "again: &lt;b&gt;");
  }

  @Test
  void whatTheClientChangedIsMarked(@TempDir Path other) throws Exception {
    var changed = new ReportScene(other);
    changed.clock().set("2026-11-24T09:00:00Z");
    var setups = new ArrayList<>(changed.job().shotList().setups());
    setups.set(8, ReportScene.setup(9, "Another coat"));
    setups.add(ReportScene.setup(13, "A hat"));
    changed.job().importList(new ShotList(setups));
    changed.job().mark("008", SetupState.SHOT, MarkDetails.by("Timo"));
    assertThat(changed.html(ReportKind.NEXT))
        .contains("Changed by the client’s list: 009, 013")
        .contains("changed: title &quot;Παλτό με κουμπιά&quot; -&gt; &quot;Another coat&quot;")
        .contains("changed: new on the list");
  }

  @Test
  void formulasOfTitlesDoNotRun(@TempDir Path other) throws Exception {
    var hostile = new ReportScene(other);
    var setups = new ArrayList<>(hostile.job().shotList().setups());
    setups.set(0, ReportScene.setup(1, "=HYPERLINK(\"x\")"));
    hostile.job().importList(new ShotList(setups));
    var csv = Files.readString(hostile.written(ReportKind.SIGN_OFF, ReportForm.CSV, "en"));
    assertThat(csv).startsWith("\uFEFFSetup,What,Approved by").contains("'=HYPERLINK");
  }

  @ParameterizedTest
  @EnumSource
  void aWorkbookHasASheetForEachTable(ReportKind kind) throws IOException {
    var file = scene.written(kind, ReportForm.XLSX, "fr");
    try (var workbook = new ReadableWorkbook(file.toFile())) {
      var words = new Words(Locale.FRENCH, scene.job().zone());
      var tables = Section.of(scene.facts(), scene.options(kind, "fr")).tables(words);
      assertThat(workbook.getSheets().map(sheet -> sheet.getName()))
          .containsExactlyElementsOf(
              tables.stream().map(table -> words.say(table.name())).toList());
      var rows = workbook.getFirstSheet().read();
      assertThat(rows).hasSize(1 + tables.getFirst().rows().size());
      assertThat(rows.getFirst().getCellText(0))
          .isEqualTo(words.say(tables.getFirst().headings().getFirst()));
    }
  }

  @Test
  void everyTextIsSaidInGermanAndFrench() throws IOException {
    var soft = new SoftAssertions();
    for (var kind : ReportKind.values()) {
      for (var language : List.of("de", "fr")) {
        var html = Files.readString(scene.written(kind, ReportForm.HTML, language));
        soft.assertThat(html)
            .as(kind + " " + language)
            .contains("lang=\"" + language + "\"")
            .doesNotContain("Approved", "as of", "frames", "setups", " the ");
      }
    }
    soft.assertAll();
  }

  @Test
  void aFileThatIsThereStaysUnlessItMayBeReplaced() throws IOException {
    var file = Files.writeString(folder.resolve("mine.html"), "mine");
    var report = scene.report(ReportKind.NEXT, "en");
    assertThatThrownBy(() -> report.write(file, ReportForm.HTML, false, Progress.NONE))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("mine");
    report.write(file, ReportForm.HTML, true, Progress.NONE);
    assertThat(Files.readString(file)).startsWith("<!DOCTYPE html>");
  }

  @Test
  void aReportThatIsStoppedLeavesNoFile() throws IOException {
    var into = Files.createDirectory(folder.resolve("stopped"));
    var ended =
        scene
            .report(ReportKind.SHEET, "en")
            .write(into.resolve("sheet.html"), ReportForm.HTML, false, Progress.until(() -> true));
    assertThat(ended).isInstanceOf(Report.Written.Cancelled.class);
    assertThat(into).isEmptyDirectory();
  }

  @Test
  void aJobWithNothingInItHasReportsToo(@TempDir Path other) throws Exception {
    var empty = new ReportScene(other);
    var scan = new org.framewright.frames.FrameScan(List.of(), 0, List.of());
    for (var kind : ReportKind.values()) {
      var report = Report.of(empty.job(), scan, empty.options(kind, "en"));
      var file = other.resolve("empty-" + kind.word() + ".html");
      assertThat(report.write(file, ReportForm.HTML, false, Progress.NONE))
          .isEqualTo(new Report.Written.Done(0, 0));
    }
  }

  @Test
  void aFileThatIsNoPictureIsNoLogo() throws IOException {
    var text = Files.writeString(folder.resolve("logo.png"), "no picture");
    assertThat(Letterhead.readLogo(text)).isInstanceOf(Letterhead.LogoReading.Faulty.class);
    assertThat(Letterhead.readLogo(folder.resolve("gone.png")))
        .isInstanceOf(Letterhead.LogoReading.Faulty.class);
  }

  @Test
  void theEndingTellsTheForm() {
    assertThat(ReportForm.of(Path.of("a/Day.PDF"))).contains(ReportForm.PDF);
    assertThat(ReportForm.of(Path.of("day.csv"))).contains(ReportForm.CSV);
    assertThat(ReportForm.of(Path.of("pdf"))).isEqualTo(Optional.empty());
    assertThat(ReportForm.of(Path.of("day.pdf.txt"))).isEqualTo(Optional.empty());
  }
}
