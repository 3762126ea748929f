package org.framewright.job;

import org.framewright.base.Problem;

/**
 * What became of an event that a device sent. Whoever receives numbered events answers by the
 * number alone, so that nothing is lost or doubled, however often it is sent.
 */
public sealed interface Receipt {
  /** The number of the last event of the device that is kept; 0 before the first. */
  long last();

  /** It is on the disk. */
  record Kept(long last) implements Receipt {}

  /** It was on the disk already. */
  record Had(long last) implements Receipt {}

  /** Events before it are missing; they come first. */
  record Gap(long last) implements Receipt {}

  /** Another event is kept under its number: two wrote as one device, and a person decides. */
  record Clash(long last) implements Receipt {}

  /** It cannot be done; nothing is kept under its number. */
  record Refused(long last, Problem why) implements Receipt {}
}
