package org.framewright.handoff.verify;

/** What became of reading a package. */
public sealed interface Verified {
  /** It was read to its end. */
  record Read(PackageCheck check) implements Verified {}

  /** Somebody stopped it; nothing is known of what was not read. */
  record Cancelled() implements Verified {}
}
