package org.framewright.share;

import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Predicate;

/**
 * The invitations of this run, each for one device and ten minutes. A restarted server knows none
 * of them. Not safe for several threads by itself.
 */
final class Invitations {
  static final Duration HOLDS = Duration.ofMinutes(10);

  /** What is older is told from what was never there by nothing, and need not be. */
  private static final int MOST_KEPT = 64;

  /** What became of a device's wish to pair. */
  sealed interface Found {
    /** It was invited. */
    record Open(Role role, Secret secret) implements Found {}

    /** Another device was faster. */
    record Spent() implements Found {}

    /** The time is up, or this run made no such invitation. */
    record Old() implements Found {}
  }

  private record Made(Secret secret, Role role, Instant until, boolean spent) {}

  private final SecureRandom random;
  private final Deque<Made> made = new ArrayDeque<>();

  Invitations(SecureRandom random) {
    this.random = random;
  }

  Secret invite(Role role, Instant until) {
    var secret = Secret.random(random);
    made.addFirst(new Made(secret, role, until, false));
    while (made.size() > MOST_KEPT) {
      made.removeLast();
    }
    return secret;
  }

  /** The invitation whose secret a request was signed with. */
  Found find(String device, Predicate<byte[]> signed, Instant now) {
    for (var one : made) {
      var key = one.secret().key(device);
      if (signed.test(key)) {
        return one.spent()
            ? new Found.Spent()
            : now.isAfter(one.until()) ? new Found.Old() : new Found.Open(one.role(), one.secret());
      }
    }
    return new Found.Old();
  }

  boolean holds(String text, Instant now) {
    return made.stream()
        .anyMatch(
            one -> !one.spent() && !now.isAfter(one.until()) && one.secret().text().equals(text));
  }

  void spend(Secret secret) {
    var all = made.stream().toList();
    made.clear();
    for (var one : all) {
      made.addLast(
          one.secret() == secret ? new Made(one.secret(), one.role(), one.until(), true) : one);
    }
  }

  /** It holds no longer, as if its time were up. */
  void withdraw(String text) {
    var all = made.stream().toList();
    made.clear();
    for (var one : all) {
      made.addLast(
          one.secret().text().equals(text)
              ? new Made(one.secret(), one.role(), Instant.MIN, one.spent())
              : one);
    }
  }
}
