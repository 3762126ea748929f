package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RenameCommandTest {
  @TempDir Path folder;
  @TempDir Path elsewhere;
  private Ran ran;

  @BeforeEach
  void frames() throws IOException {
    for (var name : new String[] {"IMG_0001.jpg", "IMG_0001.xmp", "IMG_0002.jpg"}) {
      Files.writeString(folder.resolve(name), name);
    }
  }

  @Test
  void previewsWithoutChangingAnything() throws IOException {
    var map = map("from,to\nIMG_0001.jpg,A_1.jpg\nIMG_0002.jpg,IMG_0001.xmp\n");
    assertThat(run("rename", "--map", map, "--in", folder.toString(), "--preview")).isEqualTo(1);
    assertThat(ran.out())
        .contains("ready      IMG_0001.jpg")
        .contains("blocked    IMG_0002.jpg")
        .contains("1 file can be renamed, 0 unchanged, 1 blocked.");
    assertThat(folder.resolve("IMG_0001.jpg")).exists();
    assertThat(folder.resolve(".framewright")).doesNotExist();
  }

  @Test
  void aPreviewAsCsvIsAMapAgain() throws IOException {
    var map = map("from,to\nIMG_0001.jpg,\"A, 1.jpg\"\nIMG_0002.jpg,IMG_0001.xmp\n");
    assertThat(run("rename", "--map", map, "--in", folder.toString(), "--preview", "--csv"))
        .isEqualTo(1);
    var csv = ran.out();
    assertThat(csv.lines())
        .hasSize(3)
        .startsWith("from,to,group,status,why,remedy", "IMG_0001.jpg,\"A, 1.jpg\",,ready,,");
    var again = Files.writeString(elsewhere.resolve("again.csv"), csv).toString();
    assertThat(run("rename", "--map", again, "--in", folder.toString())).isEqualTo(1);
    assertThat(folder.resolve("A, 1.jpg")).hasContent("IMG_0001.jpg");
    assertThat(run("rename", "--map", map, "--in", folder.toString(), "--csv")).isEqualTo(2);
  }

  @Test
  void renamesUndoesAndListsAsJson() throws IOException {
    var map = map("from;to;group\nIMG_0001.jpg;A_1.jpg;1\nIMG_0001.xmp;A_1.xmp;1\n");
    assertThat(run("rename", "--map", map, "--in", folder.toString(), "--json")).isZero();
    var renamed = ran.json();
    assertThat(renamed.get("applied").asBoolean()).isTrue();
    assertThat(renamed.get("renames").get(1).get("status").asText()).isEqualTo("done");
    assertThat(renamed.get("renames").get(1).get("group").asText()).isEqualTo("1");
    assertThat(folder.resolve("A_1.xmp")).hasContent("IMG_0001.xmp");

    assertThat(run("batches", folder.toString(), "--json")).isZero();
    assertThat(ran.json().get(0).get("batch")).isEqualTo(renamed.get("batch"));

    assertThat(run("undo", folder.toString(), "--batch", "1")).isZero();
    assertThat(ran.out()).contains("Renamed 2 files as batch 0002-");
    assertThat(folder.resolve("IMG_0001.xmp")).hasContent("IMG_0001.xmp");

    assertThat(run("batches", folder.toString())).isZero();
    assertThat(ran.out()).contains("takes back").contains("taken back by");

    assertThat(run("undo", folder.toString())).isEqualTo(2);
    assertThat(ran.err()).contains("nothing to undo");
    assertThat(run("recover", folder.toString())).isZero();
    assertThat(ran.out()).contains("Nothing was interrupted");
  }

  @Test
  void saysWhereAMapIsBad() throws IOException {
    assertThat(run("rename", "--map", map("old,new\n"), "--in", folder.toString())).isEqualTo(2);
    assertThat(ran.err()).contains("map.csv, line 1").contains("from,to");
    assertThat(run("rename", "--map", map("from,to\na,b\nc,\n"), "--in", folder.toString()))
        .isEqualTo(2);
    assertThat(ran.err()).contains("map.csv, line 3, column to: is empty");
    assertThat(run("rename", "--map", elsewhere.resolve("none").toString(), "--in", "x"))
        .isEqualTo(2);
    assertThat(run("rename", "--map", map("from,to\na,b\n"), "--in", folder + "/none"))
        .isEqualTo(2);
  }

  @Test
  void refusesWhileABatchIsInterruptedAndRecoverEndsIt() throws IOException {
    var map = map("from,to\nIMG_0001.jpg,A_1.jpg\nIMG_0002.jpg,A_2.jpg\n");
    assertThat(run("rename", "--map", map, "--in", folder.toString())).isZero();
    // As if the power had failed before the end was recorded, and one rename had not reached the
    // disk.
    Files.move(folder.resolve("A_2.jpg"), folder.resolve("IMG_0002.jpg"));
    withoutItsEnd();
    assertThat(run("rename", "--map", map, "--in", folder.toString())).isEqualTo(3);
    assertThat(ran.err()).contains("was interrupted").contains("Recover first");
    assertThat(run("batches", folder.toString())).isEqualTo(1);
    assertThat(run("recover", folder.toString(), "--json")).isZero();
    assertThat(ran.json().at("/recovered/0/outcome").asText()).isEqualTo("rolled-back");
    assertThat(folder.resolve("IMG_0001.jpg")).exists();
    assertThat(run("batches", folder.toString())).isZero();
    assertThat(ran.out()).contains("rolled back");
  }

  private void withoutItsEnd() throws IOException {
    try (var journals =
        Files.newDirectoryStream(folder.resolve(".framewright/renames"), "*.jsonl")) {
      for (var journal : journals) {
        var lines = Files.readAllLines(journal);
        assertThat(lines.removeLast()).contains("\"end\":\"done\"");
        Files.writeString(journal, String.join("\n", lines) + "\n");
      }
    }
  }

  private String map(String text) throws IOException {
    return Files.writeString(elsewhere.resolve("map.csv"), text).toString();
  }

  private int run(String... args) {
    ran = Ran.run((Object[]) args);
    return ran.status();
  }
}
