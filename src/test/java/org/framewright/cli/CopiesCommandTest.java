package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.Arrays;
import org.framewright.copies.TestVolumes;
import org.framewright.copies.device.Volumes;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CopiesCommandTest {
  @TempDir Path temp;
  private Path job;
  private Path card;
  private Path one;
  private Path two;
  private TestVolumes disks;

  @BeforeEach
  void makeJobAndCard() throws IOException {
    var real = temp.toRealPath();
    var laptop = Files.createDirectory(real.resolve("laptop"));
    job = Ran.startIn(laptop);
    card = real.resolve("A1");
    one = Files.createDirectory(real.resolve("SSD 1"));
    two = Files.createDirectory(real.resolve("SSD 2"));
    var images = Files.createDirectories(card.resolve("DCIM/100STUDI"));
    new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1)
        .take(Exposure.of(Instant.parse("2026-11-23T09:00:00Z"), "001", "F"))
        .writeTo(images);
    disks =
        new TestVolumes()
            .disk(laptop, "laptop")
            .disk(card, "card")
            .disk(one, "one")
            .disk(two, "two");
  }

  private static Ran run(Volumes volumes, Object... words) {
    var out = new StringWriter();
    var err = new StringWriter();
    int status =
        Framewright.run(
            null,
            Path::of,
            new StringReader(""),
            () -> volumes,
            new PrintWriter(out),
            new PrintWriter(err),
            Arrays.stream(words).map(Object::toString).toArray(String[]::new));
    return new Ran(status, out.toString(), err.toString());
  }

  private void copyTo(Path folder) throws IOException {
    try (var files = Files.list(card.resolve("DCIM/100STUDI"))) {
      for (var file : files.toList()) {
        Files.copy(file, folder.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
  }

  @Test
  void aCardOnTwoOtherDisksMayBeCleared() throws IOException {
    copyTo(one);
    copyTo(two);
    var ran = run(disks, "copies", job, card, one, two, "--by", "Ines");
    assertThat(ran.status()).as(ran.toString()).isZero();
    assertThat(ran.out())
        .contains("MAY BE CLEARED: card A1 (2 files")
        .contains("2 files on SSD 1 and SSD 2. If anything was shot on it since, ask again.")
        .contains("3-2-1 (three copies, two kinds of media, one of them elsewhere) is not met");
    var last = run(disks, "copies", job);
    assertThat(last.status()).isZero();
    assertThat(last.out())
        .contains("Card A1 was clear at ")
        .contains(", by Ines, 2 files on SSD 1");
  }

  @Test
  void asJsonItHasTheShapeOfTheContract() throws IOException {
    copyTo(one);
    var ran = run(disks, "copies", job, card, one, "--json");
    assertThat(ran.status()).as(ran.toString()).isEqualTo(1);
    var answer = ran.json();
    assertThat(answer.path("files").asInt()).isEqualTo(4);
    assertThat(answer.path("places")).hasSize(2);
    for (var place : answer.path("places")) {
      for (var list : new String[] {"missing", "different", "samePicture", "extra"}) {
        assertThat(place.path(list).isArray()).as(list).isTrue();
      }
      assertThat(place.path("folder").isTextual()).isTrue();
      assertThat(place.path("device").isTextual()).isTrue();
      assertThat(place.path("identical").isInt()).isTrue();
    }
    var asked = answer.path("cards").path(0);
    assertThat(asked.path("answer").asText()).isEqualTo("not-yet");
    assertThat(asked.path("mayClear").asBoolean(true)).isFalse();
    assertThat(asked.path("why").path(0).path("rule").asText()).isEqualTo("copies");
    assertThat(asked.path("why").path(0).path("message").asText()).isNotEmpty();
    assertThat(asked.path("why").path(0).path("remedy").asText()).isNotEmpty();
    assertThat(asked.path("state").path("files").asInt()).isEqualTo(2);
    assertThat(asked.path("state").path("digest").asText()).hasSize(64);
    assertThat(lastOf(run(disks, "copies", job, "--json").json())).isEqualTo("not-yet");
  }

  private static String lastOf(JsonNode answer) {
    return answer.path("last").path(0).path("answer").asText();
  }

  /** On whatever machine this runs, the folders of one test lie on one disk. */
  @Test
  void foldersOfOneDiskAreNeverEnough() throws IOException {
    copyTo(one);
    copyTo(two);
    var ran = run(Volumes.ofThisSystem(), "copies", job, card, one, two, "--json");
    assertThat(ran.status()).as(ran.toString()).isEqualTo(1);
    assertThat(ran.json().path("cards").path(0).path("mayClear").asBoolean(true)).isFalse();
    assertThat(ran.json().path("cards").path(0).path("answer").asText())
        .isIn("not-yet", "cannot-tell");
  }

  @Test
  void fewerDisksCanBeAskedForAndNoneCannot() throws IOException {
    copyTo(one);
    assertThat(run(disks, "copies", job, card, one, "--needed", "1").status()).isZero();
    assertThat(run(disks, "copies", job, card, one, "--needed", "0").status()).isEqualTo(2);
    assertThat(run(disks, "copies", job, card, one, "--needed", "10").status()).isEqualTo(2);
  }

  @Test
  void aFolderWithoutDcimIsACardIfAPersonSaysSo() throws IOException {
    var sound = Files.createDirectory(temp.toRealPath().resolve("SOUND"));
    disks.disk(sound, "sound");
    Files.writeString(sound.resolve("T001.WAV"), "take one");
    Files.copy(
        sound.resolve("T001.WAV"), one.resolve("T001.WAV"), StandardCopyOption.COPY_ATTRIBUTES);
    assertThat(run(disks, "copies", job, one, "--card", sound, "--needed", "1").status()).isZero();
  }

  @Test
  void aWaiverNeedsAPersonAndAFileOfACard() throws IOException {
    var file = card.resolve("DCIM/100STUDI").resolve("nothing.jpg");
    var nobody = run(disks, "copies", job, card, "--waive", file);
    assertThat(nobody.status()).isEqualTo(2);
    assertThat(nobody.err()).contains("--by PERSON");
    assertThat(run(disks, "copies", job, card, "--waive", file, "--by", "Ines").status())
        .isEqualTo(2);
  }

  @Test
  void aFolderThatIsNotThereAndAJobOnACardAreRefused() {
    assertThat(run(disks, "copies", job, temp.resolve("nowhere")).status()).isEqualTo(2);
    var ran = run(disks, "copies", job, "--card", job.getParent());
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.err()).contains("the job lies on this card");
  }

  @Test
  void theDayAndTheFramesTellHowManyAreInOnePlaceOnly() throws IOException {
    copyTo(job.resolve("01_frames"));
    assertThat(run(disks, "day", job).out()).doesNotContain("In one place only");
    run(disks, "copies", job, one);
    assertThat(run(disks, "day", job).out()).contains("In one place only: 1 of 1 frame (compared");
    assertThat(run(disks, "frames", job).out()).contains("In one place only: 1 of 1 frame");
    assertThat(run(disks, "day", job, "--json").json().path("inOnePlace").path("once").asInt())
        .isEqualTo(1);
    assertThat(run(disks, "frames", job, "--json").json().path("inOnePlace").path("once").asInt())
        .isEqualTo(1);
  }
}
