package org.framewright.frames.slate;

import java.util.Optional;
import java.util.random.RandomGenerator;

/**
 * By what the slates of one job are told from those of another: 20 random bits.
 *
 * @param text four digits and letters of Crockford's base 32
 */
public record JobKey(String text) {
  static final int LENGTH = 4;
  private static final int BITS = 20;

  public JobKey {
    if (text.length() != LENGTH || !Base32.holds(text)) {
      throw new IllegalArgumentException("no key of a job: " + text);
    }
  }

  /** A new one. */
  public static JobKey random(RandomGenerator random) {
    return new JobKey(Base32.digits(random.nextInt(1 << BITS), LENGTH));
  }

  /** The key that is written so; none where it is none. */
  public static Optional<JobKey> of(String text) {
    return text.length() == LENGTH && Base32.holds(text)
        ? Optional.of(new JobKey(text))
        : Optional.empty();
  }
}
