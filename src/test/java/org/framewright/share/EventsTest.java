package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EventsTest {
  @TempDir private Path root;
  private SharedJob job;

  @BeforeEach
  void aSharedJob() throws Exception {
    job = SharedJob.in(root, 3);
  }

  @AfterEach
  void end() {
    job.close();
  }

  private SetupState state(String setup) {
    return job.live.now().state().of(setup).state();
  }

  private static JsonNode json(String text) throws Exception {
    return Phone.JSON.readTree(text);
  }

  /** The answer without the time. */
  private static JsonNode said(Phone.Answer answer) {
    return ((com.fasterxml.jackson.databind.node.ObjectNode) answer.json()).without("time");
  }

  @Test
  void whatAPhoneTicksIsKeptAndShown() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var answer = phone.events(Phone.tick(2, "001", "on-set"), Phone.tick(3, "001", "shot"));
    assertThat(answer.status()).isEqualTo(200);
    assertThat(said(answer)).isEqualTo(json("{\"last\":3}"));
    assertThat(state("001")).isEqualTo(SetupState.SHOT);
  }

  @Test
  void whatIsSentAgainIsKeptOnce() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var events = List.of(Phone.tick(2, "001", "on-set"), Phone.tick(3, "002", "on-set"));
    for (int i = 0; i < 3; i++) {
      assertThat(said(phone.events(events.toArray(String[]::new)))).isEqualTo(json("{\"last\":3}"));
    }
    assertThat(Files.readAllLines(log(phone))).hasSize(3);
  }

  private Path log(Phone phone) throws Exception {
    try (var files = Files.walk(job.folder)) {
      return files.filter(file -> file.endsWith(phone.id + ".jsonl")).findFirst().orElseThrow();
    }
  }

  @Test
  void whatComesTooEarlyIsAGap() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    assertThat(said(phone.events(Phone.tick(3, "001", "on-set"))))
        .isEqualTo(json("{\"last\":1,\"gap\":true}"));
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
  }

  /** RFC 9110, section 15.5.10. */
  @Test
  void anotherEventUnderANumberIsAClash() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    phone.events(Phone.tick(2, "001", "on-set"));
    var answer = phone.events(Phone.tick(2, "002", "on-set"), Phone.tick(3, "003", "on-set"));
    assertThat(answer.status()).isEqualTo(409);
    assertThat(said(answer)).isEqualTo(json("{\"last\":2,\"clash\":2}"));
    assertThat(state("001")).isEqualTo(SetupState.ON_SET);
  }

  @Test
  void whatIsRefusedSaysWhyInThePagesLanguageAndStopsThere() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    phone.language = "de";
    var answer =
        phone.events(
            Phone.tick(2, "001", "on-set"),
            Phone.tick(3, "999", "on-set"),
            Phone.tick(4, "002", "on-set"));
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.json().path("last").asLong()).isEqualTo(2);
    var refused = answer.json().path("refused");
    assertThat(refused.path("number").asLong()).isEqualTo(3);
    assertThat(refused.path("what").asText()).contains("Motivliste").contains("999");
    assertThat(refused.path("remedy").asText()).contains("001");
    assertThat(state("001")).isEqualTo(SetupState.ON_SET);
    // The page takes it out and numbers the rest anew.
    assertThat(said(phone.events(Phone.tick(3, "002", "on-set")))).isEqualTo(json("{\"last\":3}"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"to-shoot", "on-set", "shot", "pickup", "dropped"})
  void anAssistantTicksEveryStateButASignOff(String word) throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    assertThat(phone.events(Phone.tick(2, "001", word)).json().path("last").asLong()).isEqualTo(2);
    assertThat(state("001").word()).isEqualTo(word);
  }

  @Test
  void aSignOffIsTheClients() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var answer = phone.events(Phone.signOff(2, "001", "Ada"));
    assertThat(answer.json().path("refused").path("what").asText())
        .isEqualTo("a sign-off is the client's");
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
  }

  @Test
  void aClientSignsOffWhatIsOnSetWithAName() throws Exception {
    var client = job.paired(Role.CLIENT);
    mark("001", SetupState.ON_SET);
    assertThat(said(client.events(Phone.signOff(2, "001", "Ada")))).isEqualTo(json("{\"last\":2}"));
    assertThat(job.live.now().state().of("001").signedOffBy().orElseThrow()).isEqualTo("Ada");
  }

  private void mark(String setup, SetupState state) throws Exception {
    job.live.ask(job -> job.mark(setup, state, MarkDetails.NONE)).get();
  }

  @Test
  void aSignOffThatIsSentAgainIsNotRefused() throws Exception {
    var client = job.paired(Role.CLIENT);
    mark("001", SetupState.ON_SET);
    var event = Phone.signOff(2, "001", "Ada");
    client.events(event);
    mark("002", SetupState.ON_SET);
    assertThat(said(client.events(event))).isEqualTo(json("{\"last\":2}"));
  }

  @Test
  void aClientSignsOffWhatWasShot() throws Exception {
    var client = job.paired(Role.CLIENT);
    mark("001", SetupState.SHOT);
    mark("002", SetupState.ON_SET);
    client.events(Phone.signOff(2, "001", "Ada"));
    assertThat(state("001")).isEqualTo(SetupState.SIGNED_OFF);
  }

  @Test
  void aClientDoesNotSignOffWhatWasNotShot() throws Exception {
    var client = job.paired(Role.CLIENT);
    mark("002", SetupState.ON_SET);
    var answer = client.events(Phone.signOff(2, "001", "Ada"));
    assertThat(answer.json().path("refused").path("number").asLong()).isEqualTo(2);
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
  }

  @Test
  void aClientDoesNotSignOffWithoutAName() throws Exception {
    var client = job.paired(Role.CLIENT);
    mark("001", SetupState.ON_SET);
    var answer = client.events(Phone.signOff(2, "001", " "));
    assertThat(answer.json().path("refused").path("remedy").asText())
        .isEqualTo("Say who signs off.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"to-shoot", "on-set", "shot", "pickup", "dropped"})
  void aClientTicksNothingElse(String word) throws Exception {
    var client = job.paired(Role.CLIENT);
    mark("001", SetupState.SHOT);
    var answer = client.events(Phone.tick(2, "001", word));
    assertThat(answer.json().path("refused").path("number").asLong()).isEqualTo(2);
    assertThat(state("001")).isEqualTo(SetupState.SHOT);
  }

  /** RFC 9110, section 15.5.4. */
  @Test
  void aViewerDoesNothing() throws Exception {
    var viewer = job.paired(Role.VIEWER);
    assertThat(viewer.events(Phone.tick(2, "001", "on-set")).status()).isEqualTo(403);
    assertThat(viewer.post("/code", "{\"typed\":\"001\"}").status()).isEqualTo(403);
    assertThat(viewer.events(Phone.comment(2, "001", null, "lower")).status()).isEqualTo(403);
    assertThat(job.live.now().comments()).isEmpty();
  }

  @Test
  void aCommentIsKeptWithItsFrame() throws Exception {
    mark("001", SetupState.ON_SET);
    job.shoot("001", "F", 2);
    var phone = job.paired(Role.CLIENT);
    try (var stream = phone.live()) {
      var token = stream.next().data().path("client").path("pictures").path(0).path("token");
      phone.events(Phone.comment(2, "001", token.asText(), "collar lower"));
    }
    var comment = job.live.now().comments().getFirst();
    assertThat(comment.text()).isEqualTo("collar lower");
    assertThat(comment.by()).isEqualTo("Ada");
    assertThat(comment.frames()).contains(job.live.now().latest().get("001").getFirst().id());
  }

  @Test
  void aCommentOnAPictureIsKeptAfterARestart() throws Exception {
    mark("001", SetupState.ON_SET);
    job.shoot("001", "F", 1);
    var phone = job.paired(Role.CLIENT);
    String token;
    try (var stream = phone.live()) {
      token = stream.next().data().path("client").path("pictures").path(0).path("token").asText();
    }
    job.restart();
    phone.events(Phone.comment(2, "001", token, "collar lower"));
    assertThat(job.live.now().comments().getFirst().frames())
        .contains(job.live.now().latest().get("001").getFirst().id());
  }

  @Test
  void aCommentOnAPictureThatIsNoneIsOfTheSetup() throws Exception {
    var phone = job.paired(Role.CLIENT);
    phone.events(Phone.comment(2, "001", "0".repeat(32), "collar lower"));
    assertThat(job.live.now().comments().getFirst().frames()).isEmpty();
  }

  @Test
  void aPhoneTakesBackItsOwn() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var other = job.paired(Role.ASSISTANT);
    phone.events(Phone.tick(2, "001", "dropped"));
    assertThat(other.events(Phone.takeBack(2, 2)).json().path("refused").isMissingNode()).isFalse();
    assertThat(state("001")).isEqualTo(SetupState.DROPPED);
    phone.events(Phone.takeBack(3, 2));
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
  }

  @Test
  void whatALaterPageMayAskIsRefusedAndNotLost() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    for (var event :
        List.of(
            Phone.tick(2, "001", "polished"),
            "{\"number\":2,\"at\":1,\"do\":\"dance\",\"setup\":\"001\"}")) {
      assertThat(phone.events(event).json().path("refused").path("remedy").asText())
          .isEqualTo("Load the page anew.");
    }
  }

  /** RFC 9110, section 15.5.1. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "{}",
        "[1]",
        "[{}]",
        "[{\"number\":0,\"at\":1,\"do\":\"take-back\",\"of\":1}]",
        "[{\"number\":2,\"do\":\"take-back\",\"of\":1}]",
        "[{\"number\":2.5,\"at\":1,\"do\":\"take-back\",\"of\":1}]",
        "[{\"number\":99999999999999999999,\"at\":1,\"do\":\"take-back\",\"of\":1}]",
        "[{\"number\":2,\"number\":3,\"at\":1,\"do\":\"take-back\",\"of\":1}]",
        "[{\"number\":2,\"at\":1,\"do\":\"tick\",\"setup\":[\"001\"],\"state\":\"shot\"}]",
        "[{\"number\":2,\"at\":1,\"do\":\"tick\",\"setup\":\"001\"}]",
        "[[[[[[[[]]]]]]]]",
        "[] []",
        "[",
        "\u0000"
      })
  void whatIsNoListOfEventsIsRefusedWhole(String body) throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    assertThat(phone.post("/events", body).status()).isEqualTo(400);
    assertThat(Files.readAllLines(log(phone))).hasSize(1);
  }

  @Test
  void moreThanAHundredAtOnceAreNoList() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var many =
        IntStream.range(2, 103)
            .mapToObj(number -> Phone.takeBack(number, 1))
            .toArray(String[]::new);
    assertThat(phone.events(many).status()).isEqualTo(400);
  }

  /** RFC 9110, section 15.6.4: nothing is kept half, and all is kept once it is back. */
  @Test
  void whileTheFolderIsGoneThePageIsToldToWait() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var moved = job.folder.resolveSibling("moved");
    Files.move(job.folder, moved);
    var answer = phone.events(Phone.tick(2, "001", "on-set"));
    assertThat(answer.status()).isEqualTo(503);
    assertThat(answer.json().path("what").asText()).isNotEmpty();
    assertThat(answer.json().toString()).doesNotContain(job.folder.getFileName().toString());
    assertThat(Files.exists(job.folder)).isFalse();
    Files.move(moved, job.folder);
    assertThat(said(phone.events(Phone.tick(2, "001", "on-set")))).isEqualTo(json("{\"last\":2}"));
    assertThat(Job.open(job.folder, job.clock, SharedJob.DESK).state().of("001").state())
        .isEqualTo(SetupState.ON_SET);
  }

  @Test
  void aScannedCodeFindsItsSetups() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    assertThat(said(phone.post("/code", "{\"typed\":\"2\"}")))
        .isEqualTo(json("{\"setups\":[\"002\"]}"));
    assertThat(said(phone.post("/code", "{\"typed\":\"4006381333931\"}")))
        .isEqualTo(json("{\"setups\":[\"001\"]}"));
    assertThat(said(phone.post("/code", "{\"typed\":\"9506000134352\"}")))
        .isEqualTo(json("{\"unknown\":\"9506000134352\",\"checked\":true}"));
  }

  @Test
  void aClientScansNothing() throws Exception {
    assertThat(job.paired(Role.CLIENT).post("/code", "{\"typed\":\"2\"}").status()).isEqualTo(403);
  }
}
