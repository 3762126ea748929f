package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What pages hear of the job, as the description of the protocol says. */
class LiveTest {
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

  private void mark(String setup, SetupState state, MarkDetails details) throws Exception {
    job.live.ask(job -> job.mark(setup, state, details)).get();
  }

  private static List<String> codes(JsonNode state) {
    return StreamSupport.stream(state.path("setups").spliterator(), false)
        .map(setup -> setup.path("code").asText())
        .toList();
  }

  private static List<String> names(JsonNode json) {
    var names = new ArrayList<String>();
    json.fieldNames().forEachRemaining(names::add);
    return names;
  }

  @Test
  void theFirstMessageIsTheWholeState() throws Exception {
    mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    job.shoot("001", "F", 2);
    var phone = job.paired(Role.ASSISTANT);
    try (var stream = phone.live()) {
      assertThat(stream.status).isEqualTo(200);
      var event = stream.next();
      assertThat(event.name()).isEqualTo("state");
      var state = event.data();
      assertThat(event.id()).isEqualTo(state.path("revision").asText());
      assertThat(state.path("full").asBoolean()).isTrue();
      assertThat(state.path("role").asText()).isEqualTo("assistant");
      assertThat(state.path("last").asLong()).isEqualTo(1);
      assertThat(state.path("job").asText()).isEqualTo(job.live.job().name());
      assertThat(state.path("lost").asBoolean()).isFalse();
      assertThat(state.path("onSet").path("code").asText()).isEqualTo("001");
      assertThat(state.path("onSet").path("view").asText()).isEqualTo("F");
      assertThat(state.path("order")).hasSize(3);
      assertThat(codes(state)).containsExactly("001", "002", "003");
      var setup = state.path("setups").path(0);
      assertThat(setup.path("title").asText()).isEqualTo("Look 1");
      assertThat(setup.path("state").asText()).isEqualTo("on-set");
      assertThat(setup.path("frames").asInt()).isEqualTo(2);
      assertThat(setup.path("wanted").isNull()).isTrue(); // One view says no number.
      assertThat(setup.path("views").path(0).toString())
          .isEqualTo(
              "{\"code\":\"F\",\"label\":\"front\",\"frames\":2,\"wanted\":2,\"before\":true}");
      assertThat(setup.path("columns").path("Rack").asText()).isEqualTo("R1");
      assertThat(setup.path("codes").toString()).contains("\"04006381333931\"");
      assertThat(setup.path("pictures")).hasSize(2);
      var day = state.path("day");
      assertThat(day.path("planned").asInt()).isEqualTo(3);
      assertThat(day.path("frames").asInt()).isEqualTo(2);
    }
  }

  @Test
  void laterOnesHoldWhatChanged() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    try (var stream = phone.live()) {
      stream.next();
      phone.events(Phone.tick(2, "002", "on-set"));
      var state = stream.until(it -> it.path("last").asLong() == 2);
      assertThat(state.path("full").asBoolean()).isFalse();
      assertThat(codes(state)).containsExactly("002");
      assertThat(state.path("order").isMissingNode()).isTrue();
      assertThat(state.path("comments").isMissingNode()).isTrue();
      mark("003", SetupState.DROPPED, MarkDetails.NONE.andReason("wet"));
      state = stream.until(it -> codes(it).contains("003"));
      assertThat(codes(state)).containsExactly("003");
      assertThat(state.path("setups").path(0).path("reason").asText()).isEqualTo("wet");
      assertThat(state.path("day").path("planned").asInt()).isEqualTo(2);
    }
  }

  /** What the client's window does not show, no message for a client holds. */
  @Test
  void aClientHearsWhatTheClientsWindowShows() throws Exception {
    mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    mark("002", SetupState.PICKUP, MarkDetails.NONE.andReason("torn"));
    job.shoot("001", "F", 2);
    var assistant = job.paired(Role.ASSISTANT);
    assistant.events(Phone.comment(2, "001", null, "only among us"));
    var client = job.paired(Role.CLIENT);
    client.events(Phone.comment(2, "001", null, "collar lower"));
    try (var stream = client.live()) {
      var state = stream.next().data();
      assertThat(names(state))
          .containsExactly(
              "revision",
              "full",
              "time",
              "seen",
              "last",
              "role",
              "job",
              "lost",
              "onSet",
              "order",
              "setups",
              "client",
              "comments",
              "day");
      assertThat(state.path("setups")).isEmpty();
      assertThat(state.path("order")).isEmpty();
      assertThat(state.path("day").isNull()).isTrue();
      var shown = state.path("client");
      assertThat(shown.path("code").asText()).isEqualTo("001");
      assertThat(shown.path("canAgree").asBoolean()).isTrue();
      assertThat(shown.path("frames").asInt()).isEqualTo(2);
      assertThat(shown.path("pictures").path(0).path("number").asInt()).isEqualTo(2);
      assertThat(shown.path("pictures").path(1).path("number").asInt()).isEqualTo(1);
      assertThat(shown.path("pictures").path(0).path("view").asText()).isEqualTo("F");
      assertThat(state.path("comments")).hasSize(1);
      assertThat(state.path("comments").path(0).path("own").asBoolean()).isTrue();
      assertThat(state.path("comments").path(0).path("number").asInt()).isEqualTo(2);
      assertThat(state.toString())
          .doesNotContain("torn", "Rack", "among us", "001_", job.folder.getParent().toString());
    }
  }

  @Test
  void anAssistantHearsAllComments() throws Exception {
    var assistant = job.paired(Role.ASSISTANT);
    var client = job.paired(Role.CLIENT);
    try (var stream = assistant.live()) {
      assertThat(stream.next().data().path("comments")).isEmpty();
      client.events(Phone.comment(2, "001", null, "collar lower"));
      var said = stream.until(it -> it.path("comments").size() == 1).path("comments").path(0);
      assertThat(said.path("setup").asText()).isEqualTo("001");
      assertThat(said.path("text").asText()).isEqualTo("collar lower");
      assertThat(said.path("by").asText()).isEqualTo("Ada");
      assertThat(said.path("picture").isNull()).isTrue();
      assertThat(said.path("own").asBoolean()).isFalse();
      assertThat(said.has("number")).isFalse();
    }
  }

  @Test
  void aViewerHearsTheListAndNoMore() throws Exception {
    mark("001", SetupState.ON_SET, MarkDetails.NONE);
    mark("002", SetupState.PICKUP, MarkDetails.NONE.andReason("torn"));
    job.shoot("001", "F", 1);
    job.paired(Role.CLIENT).events(Phone.comment(2, "001", null, "collar lower"));
    try (var stream = job.paired(Role.VIEWER).live()) {
      var state = stream.next().data();
      assertThat(names(state.path("setups").path(0)))
          .containsExactly("code", "title", "state", "frames", "wanted");
      assertThat(state.path("comments")).isEmpty();
      assertThat(state.path("client").isNull()).isTrue();
      assertThat(state.toString()).doesNotContain("torn", "R1", "collar");
    }
  }

  @Test
  void aNewerStreamOfADeviceEndsTheOlder() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    try (var older = phone.live()) {
      older.next();
      try (var newer = phone.live()) {
        newer.next();
        assertThat(older.next()).isNull();
        assertThat(job.server.devices().getFirst().connected()).isTrue();
        phone.events(Phone.tick(2, "001", "on-set"));
        assertThat(codes(newer.until(it -> it.path("last").asLong() == 2))).contains("001");
      }
    }
  }

  @Test
  void anUnpairedDeviceIsToldSoAndHearsNoMore() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    try (var stream = phone.live()) {
      stream.next();
      job.server.unpair(phone.id);
      assertThat(stream.next().name()).isEqualTo("unpaired");
      assertThat(stream.next()).isNull();
    }
    try (var stream = phone.live()) {
      assertThat(stream.status).isEqualTo(410);
    }
    assertThat(job.server.devices()).isEmpty();
  }

  @Test
  void whyThereIsNoForecastIsSaidInThePagesLanguage() throws Exception {
    var phone = job.paired(Role.VIEWER);
    phone.language = "fr-CH, fr;q=0.9";
    try (var stream = phone.live()) {
      var day = stream.until(it -> !it.path("day").path("why").isNull()).path("day");
      assertThat(day.path("why").asText()).isEqualTo("trop tôt pour le dire");
      assertThat(day.path("finish").isNull()).isTrue();
    }
  }

  @Test
  void picturesGoToWhoMaySeeThemAndTellNothingElse() throws Exception {
    mark("001", SetupState.ON_SET, MarkDetails.NONE);
    job.shoot("001", "F", 1);
    mark("002", SetupState.ON_SET, MarkDetails.NONE);
    job.shoot("002", "F", 1);
    var assistant = job.paired(Role.ASSISTANT);
    String hidden;
    String shown;
    try (var stream = assistant.live()) {
      var state = stream.next().data();
      hidden = state.path("setups").path(0).path("pictures").path(0).asText();
      shown = state.path("setups").path(1).path("pictures").path(0).asText();
      assertThat(List.of(hidden, shown))
          .as(() -> state + ", arrivals " + job.live.job().state().arrivals())
          .doesNotContain("")
          .doesNotHaveDuplicates();
    }
    assertThat(picture(assistant, hidden)).isEqualTo(200);
    var client = job.paired(Role.CLIENT);
    assertThat(picture(client, shown)).isEqualTo(200);
    assertThat(picture(client, hidden)).isEqualTo(404);
    assertThat(picture(client, "0".repeat(32))).isEqualTo(404);
    assertThat(picture(job.paired(Role.VIEWER), shown)).isEqualTo(404);
    assertThat(client.bytes("/picture/" + shown).statusCode()).isEqualTo(404);
    assertThat(client.bytes("/picture/" + shown + "?edge=9999").statusCode()).isEqualTo(404);
    var answer = client.bytes("/picture/" + shown + "?edge=320");
    assertThat(answer.headers().firstValue("Content-Type").orElseThrow()).isEqualTo("image/jpeg");
    assertThat(answer.headers().firstValue("Cache-Control").orElseThrow())
        .isEqualTo("private, max-age=3600");
    assertThat(segments(answer.body())).isEmpty();
  }

  private static int picture(Phone phone, String token) throws Exception {
    return phone.bytes("/picture/" + token + "?edge=1600").statusCode();
  }

  /**
   * The application segments and comments of a JPEG (ITU-T T.81, B.2.4.6), without JFIF's APP0,
   * which has only densities.
   */
  private static List<String> segments(byte[] jpeg) {
    var found = new ArrayList<String>();
    for (int i = 2; (jpeg[i + 1] & 0xFF) != 0xDA; ) {
      int marker = jpeg[i + 1] & 0xFF;
      if ((marker > 0xE0 && marker <= 0xEF) || marker == 0xFE) {
        found.add(Integer.toHexString(marker));
      }
      i += 2 + ((jpeg[i + 2] & 0xFF) << 8 | (jpeg[i + 3] & 0xFF));
    }
    return found;
  }

  @Test
  void aLostFolderIsTold() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    try (var stream = phone.live()) {
      stream.next();
      var moved = job.folder.resolveSibling("moved");
      Files.move(job.folder, moved);
      assertThat(stream.until(it -> it.path("lost").asBoolean()).path("full").asBoolean())
          .isFalse();
      Files.move(moved, job.folder);
      stream.until(it -> !it.path("lost").asBoolean());
    }
  }
}
