package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** What deliver says of the selects in a package, with the settings of this computer. */
@Tag("slow")
@Isolated("It sets where this computer keeps its settings.")
class DeliverMetadataTest {
  private static final String SETTINGS = "framewright.settings";

  @TempDir private Path folder;
  private Path job;
  private Path target;
  private Path settings;
  private String before;

  @BeforeEach
  void aJobWithOneFrameThatIsRated() throws IOException {
    before = System.getProperty(SETTINGS);
    settings = Files.createDirectory(folder.resolve("settings")).resolve("preferences.json");
    System.setProperty(SETTINGS, settings.getParent().toString());
    target = folder.resolve("package");
    job = Ran.startIn(folder);
    var list = Files.writeString(folder.resolve("list.csv"), "Look;Name;Views;EAN\n001;Coat;F;7\n");
    assertThat(run("list", job, "--import", list).status()).isZero();
    new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 17)
        .take(Exposure.of(Instant.parse("2026-11-23T09:00:00Z"), "001", "F").rated(5))
        .writeTo(job.resolve("01_frames"));
    assertThat(run("frames", job, "--move", "IMG_0017..IMG_0017", "001", "--view", "F").status())
        .isLessThan(2);
    assertThat(run("rename", job).status()).isZero();
  }

  @AfterEach
  void theSettingsOfTheOtherTests() {
    if (before == null) {
      System.clearProperty(SETTINGS);
    } else {
      System.setProperty(SETTINGS, before);
    }
  }

  private Ran deliver(Object... more) {
    var words = new Object[6 + more.length];
    System.arraycopy(
        new Object[] {"deliver", job, "--to", target, "--rating", "5"}, 0, words, 0, 6);
    System.arraycopy(more, 0, words, 6, more.length);
    return run(words);
  }

  private String data(String ending) throws IOException {
    return Files.readString(
        target.resolve("data").resolve("KVO_001_F_0001" + ending), StandardCharsets.ISO_8859_1);
  }

  @Test
  void aSidecarIsWrittenWhereNothingElseIsSaid() throws IOException {
    Files.writeString(settings, "{\"studio.photographer\": \"Ines Vander\"}");
    var ran = deliver();
    assertThat(ran.status()).as(ran.err()).isZero();
    assertThat(ran.out()).contains("The job's data (IPTC) are in 1 sidecar\n");
    assertThat(data(".xmp")).contains("Ines Vander").contains("KVO_001_F_0001_v01");
    assertThat(data(".JPG")).doesNotContain("Ines Vander");
    assertThat(ran.err())
        .contains("001: the product number of 1 setup is none, and was left out")
        .contains("Compare it with the label");
  }

  @Test
  void copiesSayItThemselvesWhereThatIsAskedFor() throws IOException {
    Files.writeString(settings, "{\"studio.photographer\": \"Ines Vander\"}");
    var ran = deliver("--metadata", "embed", "--json");
    assertThat(ran.status()).as(ran.err()).isZero();
    assertThat(ran.json().path("sidecars").asInt()).isEqualTo(1);
    assertThat(ran.json().path("embedded").asInt()).isEqualTo(2);
    assertThat(data(".JPG")).contains("Ines Vander");
    assertThat(data(".DNG")).contains("Ines Vander");
  }

  @Test
  void nothingIsSaidAndNoSettingIsReadWhereThatIsAskedFor() throws IOException {
    Files.writeString(settings, "{oops");
    var ran = deliver("--metadata", "none");
    assertThat(ran.status()).as(ran.err()).isZero();
    assertThat(ran.out()).doesNotContain("IPTC");
    assertThat(target.resolve("README.txt")).content().doesNotContain("IPTC");
    assertThat(data(".xmp")).doesNotContain("KVO_001_F_0001_v01");
  }

  @Test
  void aBadSettingIsToldWithItsPlaceAndRemedyAndNothingIsWritten() throws IOException {
    Files.writeString(settings, "{\"studio.mail\": \"ines at nova\"}");
    var ran = deliver();
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err())
        .contains(settings + ": the setting studio.mail cannot be used: it is no mail address")
        .contains("page of settings")
        .doesNotContain("\tat ");
    assertThat(target).doesNotExist();
    Files.writeString(settings, "{\"studio.copyright\": \"(c) {day.year} {flavour}\"}");
    var unknown = deliver();
    assertThat(unknown.status()).isEqualTo(3);
    assertThat(unknown.err()).contains("{flavour}, a field that the convention");
    assertThat(target).doesNotExist();
  }

  @Test
  void whatSomebodyWroteIsWrittenOverOnlyIfAskedFor() throws IOException {
    Files.writeString(settings, "{\"studio.credit\": \"Nova\"}");
    var sidecar = job.resolve("01_frames/20261123_KVO_001_F_0001.xmp");
    var theirs =
        Files.readString(sidecar)
            .replaceFirst(
                "<rdf:Description",
                "<rdf:Description xmlns:photoshop=\"http://ns.adobe.com/photoshop/1.0/\""
                    + " photoshop:Credit=\"Agency\"");
    Files.writeString(sidecar, theirs);
    var kept = deliver();
    assertThat(data(".xmp")).contains("Agency").doesNotContain("Nova");
    assertThat(kept.err())
        .contains("1 file says something else of Credit Line")
        .contains("--overwrite-metadata");
    target = folder.resolve("second");
    assertThat(deliver("--overwrite-metadata").err()).doesNotContain("Credit Line");
    assertThat(data(".xmp")).contains("Nova").doesNotContain("Agency");
    assertThat(sidecar).hasContent(theirs);
  }

  @Test
  void wordsThatAreNoneAreRefused() {
    assertThat(deliver("--metadata", "everywhere").status()).isEqualTo(2);
    assertThat(deliver("--metadata", "none", "--overwrite-metadata").status()).isEqualTo(2);
    assertThat(target).doesNotExist();
  }
}
