package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code list --setup}: a setup that comes on the day, and one that the list said wrong. */
class ListEditTest {
  @TempDir private Path folder;
  private Path job;

  @BeforeEach
  void aJobWithAList() throws IOException {
    job = Ran.startIn(folder);
    var list =
        Files.writeString(
            folder.resolve("list.csv"), "Look,Name,Views,Rack\n001,Coat,F,A1\n002,Hat,F,A2\n");
    assertThat(Ran.run("list", job, "--import", list).status()).isZero();
  }

  private List<String> codes() throws IOException {
    return Ran.run("list", job, "--json").json().findValuesAsText("setup");
  }

  @Test
  void aSetupIsAddedBehindAnother() throws IOException {
    var ran =
        Ran.run(
            "list",
            job,
            "--setup",
            "010",
            "--title",
            "Felt belt",
            "--views",
            "F:2, B",
            "--set",
            "rack=B2",
            "--behind",
            "1");
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).isEqualTo("010 Felt belt is in the list.\n");
    assertThat(codes()).containsExactly("001", "010", "002");
    var exported = folder.resolve("out.csv");
    assertThat(Ran.run("list", job, "--export", exported).status()).isZero();
    assertThat(Files.readString(exported)).contains("010").contains("B2").doesNotContain("rack");
  }

  @Test
  void whatTheListSaysOfASetupIsChangedAndTheRestStays() throws IOException {
    assertThat(Ran.run("mark", job, "001", "shot").status()).isZero();
    var ran = Ran.run("list", job, "--setup", "1", "--title", "Coat, belted");
    assertThat(ran.out()).isEqualTo("001 Coat, belted is changed.\n");
    var shown = Ran.run("list", job, "--json").json().get(0);
    assertThat(shown.get("title").asText()).isEqualTo("Coat, belted");
    assertThat(shown.get("state").asText()).isEqualTo("shot");
    assertThat(shown.get("views").toString()).contains("F");
    assertThat(Ran.run("list", job, "--setup", "1", "--title", "Coat, belted").out())
        .isEqualTo("001 Coat, belted is in the list just so already.\n");
  }

  private void refused(String what, Object... more) throws IOException {
    var before = Ran.run("list", job, "--json").out();
    var words = new java.util.ArrayList<Object>(List.of("list", job));
    words.addAll(List.of(more));
    var ran = Ran.run(words.toArray());
    assertThat(ran.status()).as(ran.err()).isEqualTo(2);
    assertThat(ran.err()).contains(what).doesNotContain("Exception");
    assertThat(Ran.run("list", job, "--json").out()).isEqualTo(before);
  }

  @Test
  void whatCannotBeMeantIsRefusedAndNothingIsChanged() throws IOException {
    refused("Say which, with --setup CODE", "--title", "Belt");
    refused("--behind is for a new one", "--setup", "002", "--behind", "001");
    refused("no number of frames", "--setup", "010", "--frames", "-1");
    refused("stands twice", "--setup", "010", "--views", "F, B, F");
    refused("belt/2", "--setup", "belt/2");
    refused("there is no setup \"9\"", "--setup", "010", "--behind", "9");
    refused("moon", "--setup", "001", "--views", "from the moon");
    refused("Give one, then the other", "--setup", "010", "--import", folder.resolve("list.csv"));
  }

  @Test
  void aNumberOfFramesComesAndGoes() throws IOException {
    Ran.run("list", job, "--setup", "002", "--frames", "12");
    assertThat(Ran.run("list", job).out()).contains("0/12");
    Ran.run("list", job, "--setup", "002", "--frames", "0");
    assertThat(Ran.run("list", job).out()).doesNotContain("0/12");
  }
}
