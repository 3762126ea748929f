package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The command that writes reports, with the settings of this computer. */
@Tag("slow")
@Isolated("It sets where this computer keeps its settings.")
class ReportCommandTest {
  private static final String SETTINGS = "framewright.settings";

  @TempDir private Path folder;
  private Path job;
  private Path settings;
  private String before;

  @BeforeEach
  void aJobWithOneFrame() throws IOException {
    before = System.getProperty(SETTINGS);
    settings = Files.createDirectory(folder.resolve("settings")).resolve("preferences.json");
    System.setProperty(SETTINGS, settings.getParent().toString());
    job = Ran.startIn(folder);
    var list = Files.writeString(folder.resolve("list.csv"), "Look;Name;Views\n001;Coat;F\n");
    assertThat(run("list", job, "--import", list).status()).isZero();
    new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 17)
        .take(Exposure.of(Instant.parse("2026-11-23T09:00:00Z"), "001", "F"))
        .writeTo(job.resolve("01_frames"));
    run("frames", job, "--move", "IMG_0017..IMG_0017", "001", "--view", "F");
    assertThat(run("mark", job, "001", "signed-off", "--by", "Odette").status()).isZero();
  }

  @AfterEach
  void theSettingsOfTheOtherTests() {
    if (before == null) {
      System.clearProperty(SETTINGS);
    } else {
      System.setProperty(SETTINGS, before);
    }
  }

  private Ran report(Path file, Object... more) {
    var words = new Object[4 + more.length];
    System.arraycopy(new Object[] {"report", job, "--to", file}, 0, words, 0, 4);
    System.arraycopy(more, 0, words, 4, more.length);
    return run(words);
  }

  @Test
  void theEndingTellsTheFormAndTheKindWhatItTells() throws IOException {
    for (var kind : List.of("day", "sheet", "next", "sign-off")) {
      for (var ending : List.of("html", "xlsx", "csv")) {
        var file = folder.resolve(kind + "." + ending);
        var ran = report(file, "--kind", kind, "--language", "en", "--json");
        assertThat(ran.status()).as(ran.err()).isZero();
        assertThat(ran.json().path("kind").asText()).isEqualTo(kind);
        assertThat(ran.json().path("form").asText()).isEqualTo(ending);
        assertThat(ran.json().path("bytes").asLong()).isEqualTo(Files.size(file));
        assertThat(ran.json().path("pages").isNull()).isTrue();
      }
    }
    assertThat(Files.readString(folder.resolve("sheet.html"))).contains("IMG_0017");
    assertThat(Files.readString(folder.resolve("sign-off.csv")))
        .contains("Odette")
        .contains("head -c");
  }

  @Test
  void aPdfIsWrittenWithItsPages() throws IOException {
    var file = folder.resolve("Tag.PDF");
    var ran = report(file, "--kind", "sheet", "--paper", "letter", "--language", "de");
    assertThat(ran.out()).isEqualTo(file + ": 1 page, 1 picture" + System.lineSeparator());
    assertThat(Files.readString(file, StandardCharsets.ISO_8859_1)).startsWith("%PDF-1.");
  }

  @Test
  void whatIsThereStaysUnlessItIsToBeReplaced() throws IOException {
    var file = Files.writeString(folder.resolve("day.csv"), "mine");
    assertThat(report(file).status()).isEqualTo(3);
    assertThat(report(file).err()).contains("exists already").contains("--replace");
    assertThat(file).hasContent("mine");
    assertThat(report(file, "--replace").status()).isZero();
    assertThat(Files.readString(file)).startsWith("\uFEFF");
  }

  @Test
  void nothingIsWrittenAmongTheFramesOrTheJobsOwnFiles() throws IOException {
    for (var place :
        List.of("01_frames/day.pdf", ".framewright/day.pdf", ".framewright/log/a.csv")) {
      var ran = report(job.resolve(place), "--replace");
      assertThat(ran.status()).as(place).isEqualTo(3);
      assertThat(job.resolve(place)).doesNotExist();
    }
    assertThat(report(job.resolve("day.csv")).status()).isZero();
  }

  @Test
  void whatItCannotDoItSaysWithARemedy() {
    assertThat(report(folder.resolve("day.doc")).err()).contains(".pdf, .html, .xlsx or .csv");
    assertThat(report(folder.resolve("a.csv"), "--kind", "night").err())
        .contains("there is no report \"night\"")
        .contains("--kind day, sheet, next, sign-off");
    assertThat(report(folder.resolve("a.csv"), "--language", "it").err()).contains("en, de or fr");
    assertThat(report(folder.resolve("a.csv"), "--paper", "b5").status()).isEqualTo(2);
    assertThat(report(folder.resolve("a.csv"), "--hours", "9").err()).contains("09:00-18:00");
    assertThat(report(folder.resolve("gone/a.csv")).status()).isEqualTo(2);
    assertThat(run("report", folder, "--to", folder.resolve("a.csv")).status()).isEqualTo(2);
    assertThat(folder.resolve("a.csv")).doesNotExist();
  }

  @Test
  void theStudioStandsAtTheTop() throws IOException {
    Files.writeString(
        settings,
        "{\"studio.studio\":\"Nova <& Söhne>\",\"studio.mail\":\"hello@nova.example\","
            + "\"language\":\"fr\"}");
    var file = folder.resolve("day.html");
    assertThat(report(file).status()).isZero();
    assertThat(Files.readString(file))
        .contains("Nova &lt;&amp; Söhne&gt;", "hello@nova.example", "lang=\"fr\"");
  }

  @Test
  void aLogoThatIsNoneIsTold() throws IOException {
    var logo = Files.writeString(folder.resolve("logo.png"), "none");
    Files.writeString(settings, "{\"studio.logo\":\"" + logo.toString().replace('\\', '/') + "\"}");
    var ran = report(folder.resolve("day.html"));
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("no picture that can be printed").contains("logo.png");
    Files.writeString(settings, "{\"studio.logo\":\"logo.png\"}");
    assertThat(report(folder.resolve("day.html")).err())
        .contains("studio.logo")
        .doesNotContain("--metadata");
  }

  @Test
  void helpSaysWhatItDoes() {
    var ran = run("report", "--help");
    assertThat(ran.status()).isZero();
    assertThat(ran.out())
        .contains("--kind", "--paper", "--language", "--replace", "sign-off", ".xlsx", "--json");
    assertThat(run("--help").out()).contains("report");
  }

  /** They take a second to load; a command that needs none of them must not wait for it. */
  @Test
  @Tag("slow")
  void otherCommandsDoNotLoadWhatSetsReportsOnPaper() throws Exception {
    for (var command :
        List.of(List.of("--version"), List.of("mark", job.toString(), "001", "shot"))) {
      var words =
          new ArrayList<>(
              List.of(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-verbose:class",
                  "-cp",
                  System.getProperty("java.class.path"),
                  Framewright.class.getName()));
      words.addAll(command);
      var told = folder.resolve("loaded");
      var process =
          new ProcessBuilder(words).redirectErrorStream(true).redirectOutput(told.toFile()).start();
      assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isZero();
      assertThat(Files.readString(told))
          .contains("org.framewright.cli.Framewright")
          .doesNotContain("com.openhtmltopdf", "org.apache.pdfbox", "org.apache.fontbox");
    }
  }
}
