package org.framewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.framewright.cli.Ran.run;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The commands around the sample job, which is played once by the first of them. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class HandOffCommandsTest {
  private Path folder;
  private String story;
  private String job;

  @BeforeAll
  void playTheDemo(@TempDir Path given) {
    folder = given;
    var ran = run("demo", "--tiny", "--into", folder.resolve("demo"));
    assertThat(ran.err()).isEmpty();
    assertThat(ran.status()).isZero();
    story = ran.out();
    job = story.strip().lines().toList().getLast().replace("The job folder: ", "").strip();
  }

  @Test
  void theDemoEndsWithTheJobFoldersPath() {
    assertThat(Path.of(job)).isDirectory();
    assertThat(story).contains("1. The job folder").contains("How the job stands");
  }

  @Test
  void aDemoIntoTheSameFolderIsRefusedInOneOrTwoLines() {
    var again = run("demo", "--tiny", "--into", folder.resolve("demo"));
    assertThat(again.status()).isEqualTo(2);
    assertThat(again.err().strip().lines()).hasSizeLessThanOrEqualTo(2);
    assertThat(again.err()).contains("exists already");
  }

  @Test
  void deliverPreviewsWithoutWriting() throws Exception {
    var target = folder.resolve("preview");
    var ran = run("deliver", job, "--to", target, "--rating", 5, "--preview", "--json");
    assertThat(ran.status()).isZero();
    assertThat(ran.json().path("delivered").asBoolean()).isFalse();
    assertThat(ran.json().path("selects")).isNotEmpty();
    assertThat(target).doesNotExist();
  }

  @Test
  void deliverWritesAPackageAndReturnsReadsWhatComesBack() throws Exception {
    var target = folder.resolve("package");
    var delivered = run("deliver", job, "--to", target, "--rating", 5, "--json");
    assertThat(delivered.status()).isZero();
    var json = delivered.json();
    assertThat(json.path("handOff").asInt()).isGreaterThan(1);
    assertThat(Path.of(json.path("folder").asText()).resolve("bagit.txt")).exists();

    var back = Files.createDirectory(folder.resolve("back"));
    for (var select : json.path("selects")) {
      Files.writeString(back.resolve(select.path("select").asText() + "_v01.tif"), "retouched");
    }
    var number = json.path("handOff").asInt();
    var complete = run("returns", job, back, "--hand-off", number, "--json");
    assertThat(complete.status()).isZero();
    assertThat(complete.json().path("complete").asBoolean()).isTrue();

    Files.writeString(back.resolve("final.tif"), "who knows");
    var extra = run("returns", job, back, "--hand-off", number);
    assertThat(extra.status()).isEqualTo(1);
    assertThat(extra.out()).contains("extra: final.tif");
  }

  @Test
  void deliverIntoAFolderThatExistsIsRefused() {
    var ran = run("deliver", job, "--to", folder, "--rating", 4);
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.err()).contains("is there already");
    assertThat(ran.out()).isEmpty();
  }

  @Test
  void deliverWantsARatingOrPicks() {
    assertThat(run("deliver", job, "--to", folder.resolve("new")).status()).isEqualTo(2);
    assertThat(run("deliver", job, "--to", folder.resolve("new"), "--rating", 9).status())
        .isEqualTo(2);
    var missing = run("deliver", job, "--to", folder.resolve("new"), "--picks", "none.txt");
    assertThat(missing.status()).isEqualTo(2);
    assertThat(missing.err()).contains("none.txt");
  }

  @Test
  void picksThatAreNotFoundNeedAPerson() throws Exception {
    var picks = Files.writeString(folder.resolve("picks.txt"), "20261102_KVO_001_F_0001\nIMG_1\n");
    var ran = run("deliver", job, "--to", folder.resolve("picked"), "--picks", picks);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.err()).contains("picks.txt, line 2: IMG_1");
    assertThat(folder.resolve("picked/data/KVO_001_F_0001.JPG")).exists();
  }

  @Test
  void daySaysStatesPaceAndSpace() throws Exception {
    var ran = run("day", job, "--json");
    var json = ran.json();
    assertThat(json.path("setups").path("signed-off").asInt()).isEqualTo(38);
    assertThat(json.path("pace").path("setupsShot").asInt()).isEqualTo(38);
    assertThat(json.path("all").path("setups").asInt()).isEqualTo(2);
    assertThat(json.path("all").path("marginMinutes").asDouble()).isPositive();
    assertThat(json.path("space").path("framesPlanned").asInt()).isEqualTo(12);
    assertThat(run("day", job).out()).contains("38 signed off");
  }

  @Test
  void dayRefusesHoursThatAreNone() {
    var ran = run("day", job, "--hours", "18:00-09:00");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("A day ends after it begins");
    assertThat(run("day", job, "--break", "lunch").status()).isEqualTo(2);
    assertThat(run("day", folder).status()).isEqualTo(2);
  }
}
