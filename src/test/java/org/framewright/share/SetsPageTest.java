package org.framewright.share;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.framewright.studio.Overview;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the page of all sets is sent, and that nobody comes in who may not. */
@Timeout(60)
class SetsPageTest {
  private final Instant now = Instant.now();

  @TempDir private Path settings;
  private PlayedSets sets;

  @BeforeEach
  void fiftySets() throws Exception {
    sets = new PlayedSets(settings, PlayedSets.sets(50, now));
  }

  @AfterEach
  void end() {
    sets.close();
  }

  private int status(String... lines) throws Exception {
    return RawHttp.status(RawHttp.send(sets.server.address(), RawHttp.lines(lines)));
  }

  private String host() {
    return "127.0.0.1:" + sets.server.address().getPort();
  }

  private static List<String> names(JsonNode state) {
    return StreamSupport.stream(state.path("sets").spliterator(), false)
        .map(set -> set.path("name").asText())
        .toList();
  }

  @Test
  void aDeviceHearsOfAllSetsInTheOrderOfWhatNeedsAPerson() throws Exception {
    try (var stream = sets.paired(Role.ASSISTANT).live()) {
      var state = stream.until(_ -> true);
      assertThat(state.path("full").asBoolean()).isTrue();
      assertThat(state.path("lost").isNull()).isTrue();
      assertThat(state.path("order")).hasSize(50);
      assertThat(names(state))
          .containsExactlyElementsOf(
              PlayedSets.sets(50, now).sets().stream().map(row -> row.name()).toList());
      assertThat(state.path("sets").path(0).path("need").asText()).isEqualTo("urgent");
      assertThat(state.path("sets").path(49).path("need").asText()).isEqualTo("nothing");
    }
  }

  @Test
  void aSetIsToldWithAllThatAPersonAsks() throws Exception {
    sets.live.show(new Overview(List.of(PlayedSets.set(58, 7, now))));
    try (var stream = sets.paired(Role.VIEWER).live()) {
      var set = stream.until(_ -> true).path("sets").path(0);
      assertThat(set.path("name").asText()).isEqualTo("2026-11-23_KVO_Set-58");
      assertThat(set.path("onSet").path("code").asText()).isEqualTo("008");
      assertThat(set.path("onSet").path("title").asText()).isEqualTo("羊毛のコート");
      assertThat(set.path("planned").asInt()).isEqualTo(24);
      assertThat(set.path("done").asInt()).isEqualTo(7);
      assertThat(set.path("need").asText()).isEqualTo("sign-off");
      assertThat(set.path("waiting").toString()).isEqualTo("[\"004\",\"007\"]");
      assertThat(set.path("waitingSince").asLong())
          .isEqualTo(now.minusSeconds(1800).toEpochMilli());
      assertThat(set.path("told").asLong()).isEqualTo(now.minusSeconds(20).toEpochMilli());
      assertThat(set.path("toldBy").asText()).isEqualTo("desk-1a2b");
      assertThat(set.path("silent").asBoolean()).isFalse();
      assertThat(set.path("pace").isNull()).isTrue();
      assertThat(set.path("from").isNull()).isTrue();
    }
  }

  @Test
  void onlyWhatChangedIsToldAgain() throws Exception {
    try (var stream = sets.paired(Role.ASSISTANT).live()) {
      stream.until(_ -> true);
      var rows = new ArrayList<>(PlayedSets.sets(50, now).sets());
      rows.removeIf(row -> row.name().endsWith("-14"));
      rows.add(PlayedSets.set(14, 15, now));
      sets.live.show(new Overview(rows));
      var state = stream.until(_ -> true);
      assertThat(state.path("full").asBoolean()).isFalse();
      assertThat(state.has("order")).isFalse();
      assertThat(names(state)).containsExactly("2026-11-23_KVO_Set-14");
    }
  }

  @Test
  void anotherOrderIsToldWithoutTheSets() throws Exception {
    var one = PlayedSets.set(14, 15, now);
    var other = PlayedSets.set(15, 15, now);
    sets.live.show(new Overview(List.of(one)));
    try (var stream = sets.paired(Role.ASSISTANT).live()) {
      stream.until(_ -> true);
      sets.live.show(new Overview(List.of(one, other)));
      var state = stream.until(_ -> true);
      assertThat(state.path("order")).hasSize(2);
      assertThat(names(state)).containsExactly("2026-11-23_KVO_Set-15");
      sets.live.show(new Overview(List.of(other)));
      state = stream.until(_ -> true);
      assertThat(state.path("order")).hasSize(1);
      assertThat(names(state)).isEmpty();
    }
  }

  @Test
  void aSetThatIsNotHeardOfIsToldSo() throws Exception {
    var silent = PlayedSets.set(6, 3, now);
    var never = PlayedSets.row("new", Optional.empty(), now, now);
    sets.live.show(new Overview(List.of(silent, never)));
    try (var stream = sets.paired(Role.ASSISTANT).live()) {
      var state = stream.until(_ -> true);
      for (var set : state.path("sets")) {
        assertThat(set.path("need").asText()).isEqualTo("silent");
        assertThat(set.path("silent").asBoolean()).isTrue();
      }
    }
  }

  @Test
  void thatTheStoreIsNotReachedIsToldAndEndsWithItsNextAnswer() throws Exception {
    try (var stream = sets.paired(Role.ASSISTANT).live()) {
      stream.until(_ -> true);
      sets.live.lost(now);
      sets.live.lost(now.plus(Duration.ofSeconds(5)));
      var lost = stream.until(_ -> true);
      assertThat(lost.path("lost").asText()).isEqualTo("store");
      assertThat(lost.path("lostSince").asLong()).isEqualTo(now.toEpochMilli());
      sets.live.show(PlayedSets.sets(50, now));
      assertThat(stream.until(_ -> true).path("lost").isNull()).isTrue();
    }
  }

  @Test
  void whatIsToldInASentenceIsToldInTheLanguageOfThePage() throws Exception {
    sets.live.show(new Overview(List.of(PlayedSets.set(1, 3, now))));
    var phone = sets.paired(Role.ASSISTANT);
    phone.language = "de";
    try (var stream = phone.live()) {
      var urgent = stream.until(_ -> true).path("sets").path(0).path("urgent").path(0).asText();
      assertThat(urgent)
          .isNotBlank()
          .isNotEqualTo("the frames still planned do not fit on the disk");
    }
  }

  @Test
  void aSentenceWithNumbersInItIsToldInTheLanguageOfThePage() throws Exception {
    sets.live.show(new Overview(List.of(PlayedSets.set(7, 3, now))));
    var phone = sets.paired(Role.ASSISTANT);
    phone.language = "de";
    try (var stream = phone.live()) {
      var trouble = stream.until(_ -> true).path("sets").path(0).path("troubles").path(0).asText();
      assertThat(trouble).isEqualTo("001 hat keine Aufnahme der Ansicht back");
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"ASSISTANT", "VIEWER"})
  void nobodyCanDoWhatIsOfAJob(Role role) throws Exception {
    var phone = sets.paired(role);
    assertThat(phone.events(Phone.tick(1, "001", "shot")).status()).isEqualTo(403);
    assertThat(phone.post("/code", "{\"typed\":\"001\"}").status()).isEqualTo(403);
    assertThat(phone.bytes("/picture/" + Phone.random(16) + "?edge=320").statusCode())
        .isEqualTo(404);
  }

  @ParameterizedTest
  @ValueSource(strings = {"evil.example", "127.0.0.2:1", ""})
  void aRequestForAnotherHostIsMisdirected(String other) throws Exception {
    assertThat(status("GET / HTTP/1.1", "Host: " + other)).isEqualTo(421);
  }

  @ParameterizedTest
  @CsvSource({
    "/, 200",
    "/sets.js, 200",
    "/sets.html, 404",
    "/index.html, 404",
    "/../../etc/passwd, 404",
    "/%2e%2e/etc/passwd, 404",
    "/live, 401"
  })
  void onlyTheFilesOfThePageAreServed(String path, int status) throws Exception {
    assertThat(status("GET " + path + " HTTP/1.1", "Host: " + host())).isEqualTo(status);
  }

  @Test
  void theFirstPageIsThatOfAllSetsAndIsProtected() throws Exception {
    var answer =
        RawHttp.send(sets.server.address(), RawHttp.lines("GET / HTTP/1.1", "Host: " + host()));
    assertThat(answer).contains("data-page=\"sets\"");
    assertThat(answer.toLowerCase(java.util.Locale.ROOT))
        .contains("content-security-policy: default-src 'none'; script-src 'self';")
        .contains("referrer-policy: no-referrer");
  }

  @Test
  void aRequestOfAnotherOriginIsForbidden() throws Exception {
    assertThat(status("GET / HTTP/1.1", "Host: " + host(), "Origin: http://evil.example"))
        .isEqualTo(403);
  }

  @Test
  void aWrongSignatureIsRefused() throws Exception {
    var phone = sets.paired(Role.ASSISTANT);
    phone.key = Phone.hmac(phone.key, new byte[] {1});
    try (var stream = phone.live()) {
      assertThat(stream.status).isEqualTo(401);
    }
  }

  @Test
  void anInvitationIsForOneDevice() throws Exception {
    var invitation = sets.server.invite(Role.VIEWER);
    assertThat(new Phone(sets.server.address()).pair(invitation, "one").status()).isEqualTo(200);
    assertThat(new Phone(sets.server.address()).pair(invitation, "two").status()).isEqualTo(410);
  }

  @Test
  void aDeviceThatIsUnpairedHearsNoMore() throws Exception {
    var phone = sets.paired(Role.ASSISTANT);
    try (var stream = phone.live()) {
      stream.until(_ -> true);
      sets.server.unpair(phone.id);
      assertThat(stream.next().name()).isEqualTo("unpaired");
      assertThat(stream.next()).isNull();
    }
    try (var stream = phone.live()) {
      assertThat(stream.status).isEqualTo(410);
    }
  }

  @Test
  void aPairedDeviceIsKnownToTheNextRun() throws Exception {
    var phone = sets.paired(Role.ASSISTANT);
    sets.restart();
    try (var stream = phone.live()) {
      assertThat(stream.until(_ -> true).path("sets")).hasSize(50);
    }
  }

  @Test
  void theSetsAreServedOnceOnAComputer() {
    assertThatThrownBy(() -> new PlayedSets(settings, PlayedSets.sets(1, now)))
        .hasMessageContaining("serves these sets already");
  }
}
