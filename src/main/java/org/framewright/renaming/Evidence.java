package org.framewright.renaming;

import java.util.Optional;

/**
 * By what the files of a batch were recognised when it was taken back or recovered; the best first.
 */
public enum Evidence {
  /** They are the very files that were renamed, by the numbers that the volume gives its files. */
  SAME_FILES(""),
  /** The folder was copied; their sizes and the hashes of their first and last 64 KiB hold. */
  COPIES_BY_HASH("This folder was copied since; its files were recognised by name, size and hash."),
  /** The folder was copied; their sizes hold and, to two seconds, their times. */
  COPIES_BY_TIME("This folder was copied since; its files were recognised by name, size and time."),
  /** The folder was copied without the times of its files; their sizes hold. */
  COPIES_BY_SIZE(
      "This folder was copied since, without the times of its files; they were recognised by name"
          + " and size only. Look at some of them.");

  private final String words;

  Evidence(String words) {
    this.words = words;
  }

  /** What a person should know of it; empty if the files are the very ones. */
  public Optional<String> words() {
    return words.isEmpty() ? Optional.empty() : Optional.of(words);
  }
}
