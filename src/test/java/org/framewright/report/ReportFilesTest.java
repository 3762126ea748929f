package org.framewright.report;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.framewright.base.Progress;
import org.framewright.report.ReportFiles.Outcome;
import org.framewright.report.ReportFiles.Sheet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
class ReportFilesTest {
  @TempDir private Path folder;
  private ReportScene scene;

  @BeforeEach
  void begin() throws Exception {
    scene = new ReportScene(Files.createDirectory(folder.resolve("shoot")));
  }

  private Outcome evening() throws IOException {
    return ReportFiles.evening(
        scene.job(),
        scene.job().scan(),
        ReportFiles.eveningFolder(scene.job()),
        Stream.of(ReportKind.DAY, ReportKind.NEXT).map(kind -> scene.options(kind, "en")).toList(),
        Progress.NONE);
  }

  private Outcome write(Path file, boolean mayReplace) throws IOException {
    return ReportFiles.write(
        scene.job(),
        scene.job().scan(),
        List.of(new Sheet(scene.options(ReportKind.SIGN_OFF, "en"), file, mayReplace)),
        Progress.NONE);
  }

  private static String why(Outcome outcome) {
    return outcome.problem().orElseThrow().what();
  }

  private static List<String> names(Path in) throws IOException {
    try (var files = Files.list(in)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  @Tag("slow")
  void anEveningIsADayReportAndANextDayInOneFolderNextToTheJobAndTheSecondLiesBesideTheFirst()
      throws Exception {
    var first = evening();
    assertThat(first.problem()).isEmpty();
    var in = scene.job().folder().resolveSibling(scene.job().name() + "_reports_2026-11-23");
    assertThat(names(in)).containsExactly("2026-11-23_day-report.pdf", "2026-11-23_next-day.pdf");
    // The first bytes of a PDF: ISO 32000-1, 7.5.2.
    assertThat(Files.readAllBytes(first.files().getFirst()))
        .startsWith("%PDF-".getBytes(StandardCharsets.US_ASCII));
    var before = Files.readAllBytes(first.files().getFirst());
    evening();
    assertThat(names(in))
        .containsExactly(
            "2026-11-23_day-report.pdf",
            "2026-11-23_day-report_2.pdf",
            "2026-11-23_next-day.pdf",
            "2026-11-23_next-day_2.pdf");
    assertThat(first.files().getFirst()).hasBinaryContent(before);
  }

  /** Time passes between two reports; what is told does not. */
  @Test
  @Tag("slow")
  void severalReportsAreOfOneMoment() throws Exception {
    var files = List.of(folder.resolve("day.html"), folder.resolve("sheet.html"));
    var late =
        new Progress() {
          @Override
          public void step(int done, int total) {}

          @Override
          public boolean cancelled() {
            scene.clock().pass(Duration.ofMinutes(10));
            return false;
          }
        };
    ReportFiles.write(
        scene.job(),
        scene.job().scan(),
        List.of(
            new Sheet(scene.options(ReportKind.DAY, "en"), files.getFirst(), false),
            new Sheet(scene.options(ReportKind.SHEET, "en"), files.getLast(), false)),
        late);
    for (var file : files) {
      // The first look at whether to stop is before anything is gathered.
      assertThat(file).content().contains("as of ").containsPattern("as of [^<]*12:14");
    }
  }

  @Test
  void throughALinkInThePlaceOfTheFolderNothingIsWritten() throws Exception {
    var elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
    Files.createSymbolicLink(ReportFiles.eveningFolder(scene.job()), elsewhere);
    assertThat(evening().problem()).isPresent();
    assertThat(names(elsewhere)).isEmpty();
  }

  @Test
  void whatIsThereIsReplacedOnlyWhereAPersonAgreedAndALinkNever() throws Exception {
    var file = Files.writeString(folder.resolve("mine.html"), "mine");
    assertThat(why(write(file, false))).isEqualTo("this file exists already");
    assertThat(file).hasContent("mine");
    var link = Files.createSymbolicLink(folder.resolve("link.html"), file);
    assertThat(why(write(link, true))).isEqualTo("this is a link or a device, no file");
    assertThat(file).hasContent("mine");
    assertThat(write(file, true).files()).containsExactly(file);
    assertThat(file).content().startsWith("<!DOCTYPE html>");
  }

  @Test
  void amongTheFramesAndInTheJobsOwnFolderNothingIsWritten() throws Exception {
    var frames = scene.job().framesFolder();
    assertThat(why(write(frames.resolve("day.html"), false))).startsWith("the frames folder holds");
    var own = scene.job().folder().resolve(".framewright/day.html");
    assertThat(why(write(own, false))).startsWith(".framewright holds the job itself");
    assertThat(own).doesNotExist();
    assertThat(write(folder.resolve("gone/day.html"), false).problem()).isPresent();
  }

  @Test
  void stoppedBeforeTheFirstReportItLeavesNoFolder() throws Exception {
    var stopped =
        new Progress() {
          @Override
          public void step(int done, int total) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    var at = ReportFiles.eveningFolder(scene.job());
    var outcome =
        ReportFiles.evening(
            scene.job(),
            scene.job().scan(),
            at,
            List.of(scene.options(ReportKind.DAY, "en")),
            stopped);
    assertThat(outcome.isStopped()).isTrue();
    assertThat(at).doesNotExist();
  }
}
