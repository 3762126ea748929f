package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.security.SecureRandom;
import java.time.Instant;
import java.util.Arrays;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

class InvitationsTest {
  private static final Instant NOW = Instant.parse("2026-11-23T09:00:00Z");
  private static final String DEVICE = "page-0a1b2c3d";

  private final Invitations invitations = new Invitations(new SecureRandom());

  private static Predicate<byte[]> by(Secret secret) {
    return key -> Arrays.equals(key, secret.key(DEVICE));
  }

  private Invitations.Found find(Secret secret, Instant now) {
    return invitations.find(DEVICE, by(secret), now);
  }

  @Test
  void eachIsFoundByItsSecret() {
    var one = invitations.invite(Role.CLIENT, NOW);
    var other = invitations.invite(Role.VIEWER, NOW);
    assertThat(((Invitations.Found.Open) find(one, NOW)).role()).isEqualTo(Role.CLIENT);
    assertThat(((Invitations.Found.Open) find(other, NOW)).role()).isEqualTo(Role.VIEWER);
  }

  @Test
  void isSpentByOne() {
    var one = invitations.invite(Role.CLIENT, NOW);
    var other = invitations.invite(Role.CLIENT, NOW);
    assertThat(invitations.holds(one.text(), NOW)).isTrue();
    invitations.spend(one);
    assertThat(invitations.holds(one.text(), NOW)).isFalse();
    assertThat(find(one, NOW)).isEqualTo(new Invitations.Found.Spent());
    assertThat(find(other, NOW)).isInstanceOf(Invitations.Found.Open.class);
  }

  @Test
  void isOldWhenItsTimeIsUp() {
    var one = invitations.invite(Role.CLIENT, NOW);
    assertThat(invitations.holds(one.text(), NOW.plusMillis(1))).isFalse();
    assertThat(find(one, NOW.plusMillis(1))).isEqualTo(new Invitations.Found.Old());
  }

  @Test
  void isOldOnceItWasWithdrawn() {
    var one = invitations.invite(Role.CLIENT, NOW);
    var other = invitations.invite(Role.CLIENT, NOW);
    invitations.withdraw(one.text());
    assertThat(find(one, NOW)).isEqualTo(new Invitations.Found.Old());
    assertThat(find(other, NOW)).isInstanceOf(Invitations.Found.Open.class);
  }

  @Test
  void ofAnotherRunIsOld() {
    assertThat(find(Secret.random(new SecureRandom()), NOW)).isEqualTo(new Invitations.Found.Old());
  }

  @Test
  void theNewestAreRemembered() {
    var first = invitations.invite(Role.CLIENT, NOW);
    for (int i = 0; i < 63; i++) {
      invitations.invite(Role.CLIENT, NOW);
    }
    assertThat(find(first, NOW)).isInstanceOf(Invitations.Found.Open.class);
    invitations.invite(Role.CLIENT, NOW);
    assertThat(find(first, NOW)).isEqualTo(new Invitations.Found.Old());
  }
}
