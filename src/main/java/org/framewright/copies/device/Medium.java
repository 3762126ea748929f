package org.framewright.copies.device;

/** Whether bytes that were read demonstrably came from where they are kept. */
public enum Medium {
  /** A direct read, during which the disk delivered at least as many bytes. */
  READ,
  /** They may have come from memory, which can be right while the disk is wrong. */
  UNSURE
}
