package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code mark} by what a scanner reads. The product numbers are examples of GS1. */
class MarkByCodeTest {
  private static final String LIST =
      """
      Setup,Title,EAN,SKU
      001,Coat,"9506000134352, 614141000012",KV-1
      002,Hat,95012346,KV-2
      003,Scarf,,KV-2
      """;

  @TempDir private Path folder;
  private Path job;

  @BeforeEach
  void aJobWithAListOfCodes() throws Exception {
    job = Ran.startIn(folder);
    var list = Files.writeString(folder.resolve("list.csv"), LIST);
    assertThat(Ran.run("list", job, "--import", list).status()).isZero();
  }

  private String state(String setup) throws Exception {
    for (var one : Ran.run("list", job, "--json").json()) {
      if (one.path("setup").asText().equals(setup)) {
        return one.path("state").asText();
      }
    }
    throw new AssertionError(setup);
  }

  @Test
  void putsTheSetupOfACodeOnSet() throws Exception {
    var ran = Ran.run("mark", job, "--code", "614141000012", "on-set");
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).isEqualToNormalizingNewlines("001 on set: Coat\n");
    assertThat(state("001")).isEqualTo("on-set");
  }

  @Test
  void marksAnythingElseThatIsSaid() throws Exception {
    var ran = Ran.run("mark", job, "--code", "kv-1", "pickup", "--reason", "creased", "--json");
    assertThat(ran.json().path("state").asText()).isEqualTo("pickup");
    assertThat(ran.json().path("reason").asText()).isEqualTo("creased");
  }

  @Test
  void anUnknownCodeChangesNothing() throws Exception {
    assertThat(Ran.run("mark", job, "001", "on-set").status()).isZero();
    var ran = Ran.run("mark", job, "--code", "4006381333931", "on-set");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("no setup of the list has the code \"4006381333931\"");
    assertThat(state("001")).isEqualTo("on-set");
  }

  @Test
  void aCodeOfTwoSetupsIsAskedAbout() throws Exception {
    var ran = Ran.run("mark", job, "--code", "KV-2", "on-set");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("several setups have the code \"KV-2\": 002, 003");
    assertThat(state("002")).isEqualTo("to-shoot");
    assertThat(state("003")).isEqualTo("to-shoot");
  }

  @Test
  void readsWhatAScannerTypesLineByLine() throws Exception {
    var ran =
        Ran.answering("]E09506000134352\r\n\nnothing\n95012346\n", "mark", job, "--codes", "-");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).isEqualToNormalizingNewlines("001 on set: Coat\n002 on set: Hat\n");
    assertThat(ran.err()).contains("no setup of the list has the code \"nothing\"");
    assertThat(state("002")).isEqualTo("on-set");
  }

  @Test
  void readsTheCodesOfAFileAndSaysEachAsOneLineOfJson() throws Exception {
    var codes = Files.writeString(folder.resolve("codes.txt"), "KV-1\n95012346\n");
    var ran = Ran.run("mark", job, "--codes", codes, "shot", "--json");
    assertThat(ran.status()).isZero();
    assertThat(ran.out().lines())
        .extracting(line -> new JsonMapper().readTree(line).path("setup").asText())
        .containsExactly("001", "002");
    assertThat(state("001")).isEqualTo("shot");
  }

  @Test
  void aListThatWasChangedMeanwhileIsTheOneThatCounts() throws Exception {
    var marks =
        new ScannedMarks(Job.open(job, Clock.systemUTC()), SetupState.ON_SET, MarkDetails.NONE);
    var list = Files.writeString(folder.resolve("list.csv"), LIST + "004,Boots,,KV-3\n");
    assertThat(Ran.run("list", job, "--import", list).status()).isZero();
    assertThat(marks.mark("KV-3").code()).isEqualTo("004");
  }

  @Test
  void codesAndSetupsAreNotMixed() {
    assertThat(Ran.run("mark", job, "001", "on-set", "--code", "KV-1").status()).isEqualTo(2);
    assertThat(Ran.run("mark", job, "--code", "KV-1", "--codes", "-").status()).isEqualTo(2);
    assertThat(Ran.run("mark", job, "--code", "KV-1", "--take-back").status()).isEqualTo(2);
    assertThat(Ran.run("mark", job, "--code", "KV-1", "gone").status()).isEqualTo(2);
  }

  @Test
  void aFileOfCodesThatIsNotThereIsToldAndNothingIsMarked() throws Exception {
    var ran = Ran.run("mark", job, "--codes", folder.resolve("none.txt"));
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("none.txt");
    assertThat(state("001")).isEqualTo("to-shoot");
  }
}
