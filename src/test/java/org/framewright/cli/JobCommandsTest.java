package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands start, list, mark and rename JOB, in the order of a day. */
class JobCommandsTest {
  @TempDir private Path folder;
  private Ran ran;
  private String job;

  @BeforeEach
  void aStartedJob() throws IOException {
    assertThat(
            run(
                "start",
                "--by",
                "templates/fashion-days.yaml",
                "--in",
                folder.toString(),
                "day=2026-11-23",
                "client=Kvø",
                "title=Winter & wool"))
        .isZero();
    job = ran.out().strip();
    assertThat(Path.of(job).getFileName()).hasToString("2026-11-23_KVO_winter-and-wool");
    assertThat(ran.err()).contains("title: Winter & wool -> Winter and wool (signs as words)");
  }

  private int run(String... args) {
    ran = Ran.run((Object[]) args);
    return ran.status();
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private void importList() throws IOException {
    var list = file("list.csv", "Look;Name;Views\n1;Coat;F:2 B\n002;Hat;F\n3;Scarf;\n");
    assertThat(run("list", job, "--import", list)).isZero();
  }

  @Test
  void startsAJobAndSaysItsFoldersAsJson() throws IOException {
    assertThat(
            run(
                "start",
                "--by",
                "templates/fashion-days.yaml",
                "--in",
                folder.toString(),
                "--json",
                "day=2026-11-24",
                "client=KVO",
                "title=x"))
        .isZero();
    assertThat(Path.of(ran.json().get("folders").get("frames").asText())).isDirectory();
    assertThat(ran.json().get("name").asText()).isEqualTo("2026-11-24_KVO_x");
  }

  @Test
  void refusesAJobThatExistsOrWhoseValuesAreBad() {
    assertThat(
            run(
                "start",
                "--by",
                "templates/fashion-days.yaml",
                "--in",
                folder.toString(),
                "day=2026-11-23",
                "client=KVO",
                "title=winter and wool"))
        .isEqualTo(2);
    assertThat(ran.err()).contains("exists already");
    assertThat(
            run(
                "start",
                "--by",
                "templates/fashion-days.yaml",
                "--in",
                folder.toString(),
                "day=soon",
                "klient=KVO"))
        .isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err()).contains("klient").contains("soon");
    assertThat(
            run("start", "--by", "templates/fashion-days.yaml", "--in", folder.toString(), "day"))
        .isEqualTo(2);
    assertThat(ran.err()).contains("field=value");
  }

  @Test
  void importsAListAndSaysHowItWasUnderstood() throws IOException {
    importList();
    assertThat(ran.out()).contains("added    002 Hat").contains("3 added, 0 changed");
    assertThat(ran.err()).contains("semicolons").contains("\"Look\" is the setup");
    assertThat(run("list", job, "--json")).isZero();
    assertThat(ran.json().get(0).get("setup").asText()).isEqualTo("1");
    assertThat(ran.json().get(0).get("views"))
        .extracting(JsonNode::asText)
        .containsExactly("F", "B");
    assertThat(ran.json().get(0).get("state").asText()).isEqualTo("to-shoot");
    assertThat(ran.json().get(0).get("frames").asInt()).isZero();
  }

  @Test
  void refusesABadListWithEveryFaultAndChangesNothing() throws IOException {
    importList();
    var bad = file("bad.csv", "Setup,Title\n1,Coat\n,Hat\n01,Scarf\n");
    assertThat(run("list", job, "--import", bad)).isEqualTo(2);
    assertThat(ran.err())
        .contains("bad.csv, line 3, column 1: ")
        .contains("bad.csv, line 4, column 1: ")
        .contains("Nothing was imported.");
    assertThat(run("list", job)).isZero();
    assertThat(ran.out()).contains("002").contains("Hat");
  }

  @Test
  void previewsAndImportsAChangedListAndKeepsWhatWasWorkedOn() throws IOException {
    importList();
    assertThat(run("mark", job, "3", "dropped", "--reason", "sold out")).isZero();
    var noon = file("noon.csv", "Look,Name\n1,Long coat\n4,Gloves\n");
    assertThat(run("list", job, "--import", noon, "--preview")).isZero();
    assertThat(ran.out())
        .contains("added    4 Gloves")
        .contains("changed  1: title \"Coat\" -> \"Long coat\"")
        .contains("removed  002 Hat")
        .contains("kept     3 Scarf")
        .contains("Nothing was changed yet.");
    assertThat(run("list", job, "--import", noon)).isZero();
    assertThat(run("list", job)).isZero();
    assertThat(ran.out()).contains("Gloves").contains("sold out").doesNotContain("Hat");
  }

  @Test
  void exportsAListThatItReadsAgain() throws IOException {
    importList();
    run("mark", job, "1", "signed-off", "--by", "Ana");
    for (var name : List.of("out.csv", "out.xlsx")) {
      var exported = folder.resolve(name).toString();
      assertThat(run("list", job, "--export", exported)).isZero();
      assertThat(run("list", job, "--import", exported)).isZero();
      assertThat(ran.out()).contains("The list is the one that the job has.");
    }
    assertThat(folder.resolve("out.csv")).content().contains("signed off").contains("Ana");
  }

  @Test
  void ticksSetupsAndRefusesWhatIsNone() throws IOException {
    importList();
    assertThat(run("mark", job, "001", "on-set", "--view", "back")).isZero();
    assertThat(ran.out()).isEqualTo("1 on set: Coat" + System.lineSeparator());
    assertThat(run("mark", job, "1", "SIGNED-OFF", "--by", "Ana", "--json")).isZero();
    assertThat(ran.json().get("signedOffBy").asText()).isEqualTo("Ana");
    assertThat(ran.json().get("state").asText()).isEqualTo("signed-off");

    assertThat(run("mark", job, "1", "signed-off")).isEqualTo(2);
    assertThat(ran.err()).contains("--by NAME");
    assertThat(run("mark", job, "9", "shot")).isEqualTo(2);
    assertThat(ran.err()).contains("no setup \"9\"");
    assertThat(run("mark", job, "1", "finished")).isEqualTo(2);
    assertThat(ran.err()).contains("to-shoot, on-set, shot, signed-off, pickup, dropped");
    assertThat(run("mark", folder.toString(), "1", "shot")).isEqualTo(2);
    assertThat(ran.err()).contains("no job folder");
  }

  @Test
  void ticksSeveralSetupsAtOnceOrNone() throws IOException {
    importList();
    var codes = new ArrayList<String>();
    assertThat(run("list", job, "--json")).isZero();
    ran.json().forEach(setup -> codes.add(setup.get("setup").asText()));
    assertThat(codes).hasSizeGreaterThanOrEqualTo(3);
    var range = codes.get(2) + ".." + codes.get(0);

    assertThat(run("mark", job, codes.get(0), "nine", "dropped")).isEqualTo(2);
    assertThat(ran.err()).contains("no setup \"nine\"");
    assertThat(run("mark", job, range, "signed-off")).isEqualTo(2);
    assertThat(run("mark", job, range, "on-set")).isEqualTo(2);
    assertThat(run("mark", job, "shot")).isEqualTo(2);
    assertThat(states()).containsOnly("to-shoot");

    assertThat(run("mark", job, range, "dropped", "--reason", "rain", "--json")).isZero();
    assertThat(ran.json()).hasSize(3);
    assertThat(states().subList(0, 3)).containsOnly("dropped");
    assertThat(run("mark", job, codes.get(1), codes.get(0), codes.get(1), "to-shoot")).isZero();
    assertThat(ran.out().lines()).hasSize(2);
    assertThat(states().subList(0, 3)).containsExactly("to-shoot", "to-shoot", "dropped");
  }

  @Test
  void takesTheLastTickOfThisComputerBack() throws IOException {
    importList();
    assertThat(run("mark", job, "--take-back")).isEqualTo(2);
    assertThat(ran.err()).contains("made no tick");
    run("mark", job, "1", "pickup");
    assertThat(ran.err()).contains("No reason is given");
    run("mark", job, "1", "shot");
    assertThat(ran.err()).contains("1 has no frame yet.");
    assertThat(run("mark", job, "1", "--take-back")).isEqualTo(2);
    assertThat(states().getFirst()).isEqualTo("shot");
    assertThat(run("mark", job, "--take-back")).isZero();
    assertThat(ran.out())
        .isEqualTo("1 shot is taken back; it is pickup again" + System.lineSeparator());
    assertThat(run("mark", job, "--take-back", "--json")).isZero();
    assertThat(ran.json().get("state").asText()).isEqualTo("to-shoot");
  }

  private List<String> states() throws IOException {
    assertThat(run("list", job, "--json")).isZero();
    var states = new ArrayList<String>();
    ran.json().forEach(setup -> states.add(setup.get("state").asText()));
    return states;
  }

  @Test
  void namesTheFramesOfAJob() throws IOException {
    importList();
    run("mark", job, "1", "on-set", "--view", "F");
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 9999);
    var frames = Path.of(job, "01_frames");
    camera.take(Exposure.of(Instant.now(), "1", "F")).writeTo(frames);
    camera.take(Exposure.of(Instant.now(), "1", "F")).writeTo(frames);
    camera.take(Exposure.of(Instant.EPOCH, "1", "F")).writeTo(frames);

    assertThat(run("rename", job, "--preview")).isEqualTo(1);
    assertThat(ran.err()).contains("Left out: ").contains("IMG_0002");
    assertThat(ran.out()).contains("4 files can be renamed");

    assertThat(run("rename", job, "--json")).isEqualTo(1);
    assertThat(ran.json().get("applied").asBoolean()).isTrue();
    assertThat(ran.json().get("renames"))
        .extracting(rename -> rename.get("to").asText())
        .hasSize(4)
        .allMatch(name -> name.matches("01_frames.\\d{8}_KVO_001_F_000[12]\\.(JPG|DNG)"));
    assertThat(run("list", job, "--json")).isZero();
    assertThat(ran.json().get(0).get("frames").asInt()).isEqualTo(2);
    assertThat(ran.json().get(0).get("missing"))
        .extracting(JsonNode::asText)
        .containsExactly("back: none of 1");
  }
}
