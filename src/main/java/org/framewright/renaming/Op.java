package org.framewright.renaming;

import java.nio.file.Path;

/**
 * One rename of a batch. Folders are indices into the batch's folders; names are plain names.
 *
 * @param temp the name between the two, in the first folder; empty if the file goes straight
 * @param seen what the file looks like, under whichever name
 * @param hash the hash of its edges where the volume's numbers cannot be relied on; else empty
 */
record Op(int in, Path from, int into, Path to, String temp, String group, Seen seen, String hash) {
  /** Whether its names meet those of another rename, so that it must go through a third name. */
  boolean conflicted() {
    return !temp.isEmpty();
  }
}
