package org.framewright.copies.device;

import java.util.Set;

/**
 * A whole disk, as Linux shows it.
 *
 * @param name such as {@code sdb}
 * @param nature what it is made of
 * @param identities what it is known by: {@code disk:8:16}, {@code serial:...}
 * @param insertion the number of this appearance of it, see sysfs-block, {@code diskseq}: another
 *     one whenever it was plugged in, or its medium exchanged; empty where the kernel does not say
 * @param label what to call it before a person
 */
record Disk(String name, Nature nature, Set<String> identities, String insertion, String label) {

  /** What a disk is made of. */
  enum Nature {
    /** A drive or a card. */
    REAL,
    /** What a virtual machine is given; nobody here knows what lies below. */
    VIRTUAL,
    /** A disk of another computer that poses as one of this. */
    NETWORK,
    /** Memory. */
    MEMORY
  }
}
