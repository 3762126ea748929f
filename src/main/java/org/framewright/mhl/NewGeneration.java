package org.framewright.mhl;

import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * What a new list is to say.
 *
 * @param at when the work began
 * @param process what the work was
 * @param host the computer that did it
 * @param files each that was read and found whole
 */
public record NewGeneration(Instant at, Work process, String host, List<Sealed> files) {
  public NewGeneration {
    files = List.copyOf(files);
  }

  /** Why a list is made. */
  public enum Work {
    /** What lies there was looked at. */
    IN_PLACE("in-place"),
    /** It was copied there. */
    TRANSFER("transfer");

    private final String word;

    Work(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /**
   * A file.
   *
   * @param path below the folder, with {@code /} between the names
   * @param size in bytes
   * @param modified its time on the disk
   * @param hashes what it came to
   */
  public record Sealed(String path, long size, Instant modified, Map<HashKind, String> hashes) {}
}
