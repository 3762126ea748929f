package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code list --propose-order}: another order of what is left, shown, given and taken back. */
@Tag("slow")
class ListOrderTest {
  @TempDir private Path folder;
  private Path job;

  @BeforeEach
  void aJobOfTwoModelsByTurns() throws IOException {
    job = Ran.startIn(folder);
    var list =
        Files.writeString(
            folder.resolve("list.csv"),
            """
            Look,Name,Model,Rack
            001,Coat,Mira,A1
            002,Hat,Jonna,A1
            003,Scarf,Mira,A1
            004,Belt,Jonna,A1
            """);
    assertThat(Ran.run("list", job, "--import", list).status()).isZero();
  }

  private Ran list(Object... more) {
    var words = new ArrayList<Object>(List.of("list", job));
    words.addAll(List.of(more));
    return Ran.run(words.toArray());
  }

  private List<String> codes() throws IOException {
    return list("--json").json().findValuesAsText("setup");
  }

  @Test
  void isShownWithWhatIsChangedAndNothingIsDone() throws IOException {
    var ran = list("--propose-order");
    assertThat(ran.status()).isZero();
    assertThat(ran.out().lines())
        .containsSubsequence(
            "Now: 3 changes of model",
            "Then: 1 change of model",
            "  001  Coat",
            "  003  Scarf",
            "  002  Hat  <- model",
            "  004  Belt",
            "Nothing was changed. With --apply the list gets this order.");
    assertThat(ran.out()).contains("nobody knows how long changes take");
    assertThat(codes()).containsExactly("001", "002", "003", "004");
  }

  @Test
  void isGivenToTheListAndTakenBack() throws IOException {
    assertThat(list("--propose-order", "--apply").out()).contains("--take-back-order");
    assertThat(codes()).containsExactly("001", "003", "002", "004");
    assertThat(list("--propose-order", "--apply").out())
        .contains("No other order has less to be changed.")
        .doesNotContain("--take-back-order");
    assertThat(list("--take-back-order").out())
        .isEqualTo("The list is in the order that it had before.\n");
    assertThat(codes()).containsExactly("001", "002", "003", "004");
    var again = list("--take-back-order");
    assertThat(again.status()).isNotZero();
    assertThat(again.err()).contains("is no change of its order").doesNotContain("Exception");
  }

  @Test
  void anOrderIsNotTakenBackOverWhatCameAfterIt() throws IOException {
    list("--propose-order", "--apply");
    list("--setup", "005", "--title", "Glove");
    assertThat(list("--take-back-order").status()).isNotZero();
    assertThat(codes()).containsExactly("001", "003", "002", "004", "005");
  }

  @Test
  void leavesWhatIsToStay() throws IOException {
    list("--propose-order", "--apply", "--stay", "2");
    assertThat(codes()).containsExactly("001", "002", "004", "003");
  }

  @Test
  void isADocumentToo() throws IOException {
    var json = list("--propose-order", "--json").json();
    assertThat(json.get("applied").asBoolean()).isFalse();
    assertThat(json.get("exact").asBoolean()).isTrue();
    assertThat(json.at("/changesNow/model").asInt()).isEqualTo(3);
    assertThat(json.at("/changesThen/model").asInt()).isEqualTo(1);
    assertThat(json.at("/proposed/2/setup").asText()).isEqualTo("002");
    assertThat(json.at("/proposed/2/changes/0").asText()).isEqualTo("model");
    assertThat(json.get("savesMinutes").isNull()).isTrue();
    assertThat(json.get("whyNoMinutes").asText()).contains("nobody knows");
    assertThat(list("--propose-order", "--apply", "--json").json().get("applied").asBoolean())
        .isTrue();
    assertThat(list("--take-back-order", "--json").json().get(1).asText()).isEqualTo("002");
  }

  private void refused(String what, Object... more) throws IOException {
    var ran = list(more);
    assertThat(ran.status()).as(ran.err()).isEqualTo(2);
    assertThat(ran.err()).contains(what).doesNotContain("Exception");
    assertThat(codes()).containsExactly("001", "002", "003", "004");
  }

  @Test
  void whatCannotBeMeantIsRefusedAndNothingIsChanged() throws IOException {
    refused("Give --propose-order with them", "--apply");
    refused("Give --propose-order with them", "--stay", "001");
    refused("Give --propose-order with them", "--hours", "09:00-18:00");
    refused("Give one, then the other", "--propose-order", "--setup", "005");
    refused("Give one, then the other", "--propose-order", "--take-back-order");
    refused("no setup \"77\"", "--propose-order", "--apply", "--stay", "77");
    refused("Write times as in", "--propose-order", "--apply", "--hours", "late");
  }

  @Test
  void textOfOtherPeopleCannotActOnATerminal() throws IOException {
    list("--setup", "005", "--title", "\u001b[31mred", "--set", "Model=Mira\u001b[2J");
    assertThat(list("--propose-order").out()).contains("red").doesNotContain("\u001b");
  }
}
