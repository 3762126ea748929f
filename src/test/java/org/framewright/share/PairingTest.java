package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicInteger;
import org.framewright.job.Device;
import org.framewright.job.TestClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PairingTest {
  @TempDir private Path root;
  private final TestClock clock = new TestClock(Instant.now().toString());
  private SharedJob job;

  @BeforeEach
  void aSharedJob() throws Exception {
    job = SharedJob.in(root, clock, 3);
  }

  @AfterEach
  void end() {
    job.close();
  }

  @Test
  void whoAsksForAnotherDeviceThanItSignsAsIsTurnedAway() throws Exception {
    var phone = new Phone(job.server.address());
    phone.open(job.server.invite(Role.ASSISTANT));
    var other = "{\"device\":\"page-ffffffff\",\"name\":\"a phone\"}";
    assertThat(phone.post("/pair", other).status()).isEqualTo(400);
    assertThat(job.server.devices()).isEmpty();
    assertThat(phone.pair("a phone").status()).isEqualTo(200);
  }

  @Test
  void aLinkHasItsSecretInTheFragmentOnly() {
    var link = job.server.invite(Role.ASSISTANT).link();
    assertThat(link.getFragment()).matches("[A-Z2-7]{26}\\.a");
    assertThat(link.getPath()).isEqualTo("/");
    assertThat(link.getQuery()).isNull();
    assertThat(link.toString()).startsWith(job.server.address().toString());
  }

  @Test
  void anInvitedDeviceIsPairedAndNamedInTheLog() throws Exception {
    var phone = new Phone(job.server.address());
    var answer = phone.pair(job.server.invite(Role.CLIENT), "Ines’ phone");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.json().path("role").asText()).isEqualTo("client");
    assertThat(answer.json().path("job").asText()).isEqualTo(job.live.job().name());
    assertThat(answer.json().path("last").asLong()).isEqualTo(1);
    assertThat(answer.json().path("time").asLong()).isEqualTo(clock.millis());
    assertThat(job.server.devices())
        .containsExactly(
            new PairedDevice(phone.id, "Ines’ phone", Role.CLIENT, false, clock.instant()));
    assertThat(job.live.job().last(new Device(phone.id))).isEqualTo(1);
    var log = Files.readString(log(phone));
    assertThat(log).contains("Ines’ phone");
  }

  private Path log(Phone phone) throws Exception {
    try (var files = Files.walk(job.folder)) {
      return files.filter(file -> file.endsWith(phone.id + ".jsonl")).findFirst().orElseThrow();
    }
  }

  @Test
  void theSameDeviceGetsTheSameAnswerAgain() throws Exception {
    var phone = new Phone(job.server.address());
    var first = phone.pair(job.server.invite(Role.CLIENT), "phone");
    assertThat(phone.pair("phone").json()).isEqualTo(first.json());
    job.restart();
    assertThat(phone.pair("phone").json()).isEqualTo(first.json());
    assertThat(job.server.devices()).hasSize(1);
  }

  @Test
  void anotherDeviceIsTooLate() throws Exception {
    var invitation = job.server.invite(Role.CLIENT);
    new Phone(job.server.address()).pair(invitation, "phone");
    var late = new Phone(job.server.address()).pair(invitation, "photo of the code");
    assertThat(late.status()).isEqualTo(410); // RFC 9110, section 15.5.11
    assertThat(late.json().path("why").asText()).isEqualTo("spent");
    assertThat(job.server.devices()).hasSize(1);
  }

  @Test
  void afterTenMinutesAnInvitationIsOld() throws Exception {
    var invitation = job.server.invite(Role.CLIENT);
    assertThat(invitation.until()).isEqualTo(clock.instant().plus(Duration.ofMinutes(10)));
    var phone = new Phone(job.server.address());
    clock.pass(Duration.ofMinutes(10).plusMillis(1));
    phone.offset = 600_001;
    var answer = phone.pair(invitation, "phone");
    assertThat(answer.status()).isEqualTo(410);
    assertThat(answer.json().path("why").asText()).isEqualTo("old");
    assertThat(job.server.holds(invitation)).isFalse();
  }

  @Test
  void anInvitationThatWasWithdrawnIsOld() throws Exception {
    var invitation = job.server.invite(Role.CLIENT);
    assertThat(job.server.holds(invitation)).isTrue();
    job.server.withdraw(invitation);
    var answer = new Phone(job.server.address()).pair(invitation, "phone");
    assertThat(answer.json().path("why").asText()).isEqualTo("old");
  }

  @Test
  void anInvitationOfABeforeRestartIsOld() throws Exception {
    var invitation = job.server.invite(Role.CLIENT);
    job.restart();
    var answer = new Phone(job.server.address()).pair(invitation, "phone");
    assertThat(answer.json().path("why").asText()).isEqualTo("old");
  }

  @Test
  void aDeviceWithAWrongClockIsToldTheTime() throws Exception {
    var phone = new Phone(job.server.address());
    phone.offset = 3_600_000;
    var answer = phone.pair(job.server.invite(Role.CLIENT), "phone");
    assertThat(answer.status()).isEqualTo(401);
    assertThat(answer.json().path("time").asLong()).isEqualTo(clock.millis());
    phone.offset = 0;
    assertThat(phone.pair("phone").status()).isEqualTo(200);
  }

  @Test
  void whoeverIsInvitedCannotTakeTheNameOfOneWhoIsThere() throws Exception {
    var assistant = job.paired(Role.ASSISTANT);
    var impostor = new Phone(assistant.id, job.server.address());
    var answer = impostor.pair(job.server.invite(Role.CLIENT), "phone");
    assertThat(answer.status()).isEqualTo(410);
    assertThat(answer.json().path("why").asText()).isEqualTo("taken");
    assertThat(assistant.events(Phone.tick(2, "001", "on-set")).status()).isEqualTo(200);
  }

  @Test
  void whoWasUnpairedCanBePairedAnewAndGoesOnWithItsLog() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    phone.events(Phone.tick(2, "001", "on-set"));
    job.server.unpair(phone.id);
    assertThat(phone.events(Phone.tick(3, "001", "shot")).status()).isEqualTo(410);
    var again = phone.pair(job.server.invite(Role.ASSISTANT), "another name");
    assertThat(again.json().path("last").asLong()).isEqualTo(2);
    assertThat(phone.events(Phone.tick(3, "001", "shot")).json().path("last").asLong())
        .isEqualTo(3);
  }

  @Test
  void aDeviceWithoutANameIsCalledByItsRole() throws Exception {
    new Phone(job.server.address()).pair(job.server.invite(Role.VIEWER), " \n ");
    assertThat(job.server.devices().getFirst().name()).isEqualTo("viewer");
  }

  @Test
  void aNameIsOneLineOfSixtyLetters() throws Exception {
    new Phone(job.server.address())
        .pair(job.server.invite(Role.VIEWER), "😀\u001b[2J" + "a".repeat(90));
    var name = job.server.devices().getFirst().name();
    assertThat(name.codePointCount(0, name.length())).isEqualTo(60);
    assertThat(name).doesNotContain("\u001b");
  }

  @Test
  void theJobIsNamedOnlyAfterItsFolderTookIt() throws Exception {
    var invitation = job.server.invite(Role.ASSISTANT);
    var moved = job.folder.resolveSibling("moved");
    Files.move(job.folder, moved);
    var phone = new Phone(job.server.address());
    assertThat(phone.pair(invitation, "phone").status()).isEqualTo(503);
    assertThat(job.server.devices()).isEmpty();
    Files.move(moved, job.folder);
    assertThat(phone.pair(invitation, "phone").status()).isEqualTo(200);
  }

  @Test
  void whenADeviceWasSeenIsKnownAfterARestart() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    clock.pass(Duration.ofMinutes(3));
    phone.offset = 180_000;
    assertThat(phone.events(Phone.tick(2, "001", "shot")).status()).isEqualTo(200);
    var seen = clock.instant();
    clock.pass(Duration.ofMinutes(3));
    job.restart();
    assertThat(job.server.devices().getFirst().lastSeen())
        .isEqualTo(Instant.ofEpochMilli(seen.toEpochMilli()));
  }

  @Test
  void whoShowsTheDevicesHearsOfEach() throws Exception {
    var changes = new AtomicInteger();
    try (var _ = job.server.listen(changes::incrementAndGet)) {
      var phone = job.paired(Role.ASSISTANT);
      assertThat(changes.get()).isEqualTo(1);
      job.server.unpair(phone.id);
      assertThat(changes.get()).isEqualTo(2);
    }
    job.paired(Role.ASSISTANT);
    assertThat(changes.get()).isEqualTo(2);
  }
}
