package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadyCommandTest {
  @TempDir private Path folder;
  private Path job;

  @BeforeEach
  void startAJob() {
    job = Ran.startIn(folder);
  }

  @Test
  void aJobWithoutAListCannotBegin() throws Exception {
    var ran = Ran.run("ready", job, "--quick", "--json");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.json().get("of").asText()).isEqualTo("morning");
    assertThat(ran.json().get("answer").asText()).isEqualTo("not-ready");
    assertThat(ran.json().get("missing").get(0).get("stops").asBoolean()).isTrue();
    assertThat(ran.json().get("missing").get(0).get("what").asText()).contains("list is empty");
    try (var logs = Files.newDirectoryStream(job.resolve(".framewright/log"), "*.jsonl")) {
      assertThat(Files.readString(logs.iterator().next()))
          .contains("\"type\":\"ready-asked\",\"of\":\"morning\",\"answer\":\"not-ready\"");
    }
  }

  @Test
  void anItemIsTickedByAPersonAndTakenBack() throws Exception {
    var ticked =
        Ran.run(
            "ready", job, "--quick", "--checklist", "studio", "--tick", "cables", "--by", "Timo");
    assertThat(ticked.out().lines().filter(line -> line.contains("[x] cables")).toList().size())
        .isEqualTo(1);
    assertThat(ticked.out()).contains("(Timo, ").contains("[ ] exits");
    assertThat(job.resolve("checklist.yaml")).exists();
    var back = Ran.run("ready", job, "--quick", "--untick", "cables", "--by", "Timo", "--json");
    for (var item : back.json().get("items")) {
      assertThat(item.get("tickedBy").isNull()).isTrue();
    }
    assertThat(back.json().get("checklist").asText()).isEqualTo("Studio");
  }

  @Test
  void whatCannotBeTickedIsRefusedAndChangesNothing() throws Exception {
    assertThat(Ran.run("ready", job, "--tick", "cables").err()).contains("--by PERSON");
    assertThat(Ran.run("ready", job, "--tick", "cables", "--by", "A").err())
        .contains("has no checklist");
    assertThat(Ran.run("ready", job, "--checklist", "attic").err())
        .contains("There are interiors, outdoors, products, studio");
    assertThat(Ran.run("ready", job, "--burst", "0").status()).isEqualTo(2);
    Ran.run("ready", job, "--quick", "--checklist", "studio");
    var ran = Ran.run("ready", job, "--quick", "--tick", "cables", "--tick", "x", "--by", "A");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("no item x").contains("strain-relief");
    assertThat(Ran.run("ready", job, "--quick").out()).contains("[ ] cables");
  }

  @Test
  void aFaultyChecklistIsToldWithItsPlace() throws Exception {
    Files.writeString(job.resolve("checklist.yaml"), "checklist: Mine\nmornin: {a: b}\n");
    var ran = Ran.run("ready", job, "--quick");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err())
        .contains("checklist.yaml, line 2, column 1: “mornin” has no meaning here")
        .contains("Is “morning” meant?");
  }

  @Test
  void theEveningIsAskedForApart() throws Exception {
    var ran = Ran.run("ready", job, "--wrap", "--json");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.json().get("of").asText()).isEqualTo("evening");
    assertThat(ran.json().get("answer").asText()).isEqualTo("ready-but-for");
    assertThat(Ran.run("ready", job, "--wrap").out()).startsWith("Wrapped but for 2 things:");
  }

  @Test
  void anAnswerThatNoLongerHoldsSaysWhy() throws Exception {
    Ran.run("ready", job, "--quick", "--copies", folder.resolve("second"));
    Files.createDirectory(folder.resolve("second"));
    var ran = Ran.run("ready", job, "--quick");
    assertThat(ran.out()).startsWith("The answer of ").contains("no longer holds:");
    assertThat(ran.out())
        .contains("The place for copies " + folder.resolve("second") + " is there now");
  }
}
