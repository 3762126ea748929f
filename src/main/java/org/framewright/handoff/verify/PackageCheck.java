package org.framewright.handoff.verify;

import java.util.List;
import java.util.Locale;
import org.framewright.base.Problem;

/**
 * What the lists of a package say of its files, and what its files are.
 *
 * @param kind which lists were read
 * @param lists the lists, by their names below the folder
 * @param closed whether the lists claim to name all that is there
 * @param files how many files were compared
 * @param missing files that a list names and that are not there
 * @param different files whose content is not what a list says
 * @param unlisted files that are there and that no list names
 * @param notFetched files that are not there, and of which the package says where to get them
 * @param faults what is wrong with the lists themselves, by file and line, or with a file that
 *     could not be read
 * @param warnings what is odd and breaks nothing
 */
public record PackageCheck(
    Kind kind,
    List<String> lists,
    boolean closed,
    int files,
    List<String> missing,
    List<String> different,
    List<String> unlisted,
    List<String> notFetched,
    List<Problem> faults,
    List<Problem> warnings) {
  public PackageCheck {
    lists = List.copyOf(lists);
    missing = List.copyOf(missing);
    different = List.copyOf(different);
    unlisted = List.copyOf(unlisted);
    notFetched = List.copyOf(notFetched);
    faults = List.copyOf(faults);
    warnings = List.copyOf(warnings);
  }

  /** By what a package is checked. */
  public enum Kind {
    /** A bag, RFC 8493. */
    BAGIT("BagIt"),
    /** Lists as {@code sha256sum} and its kin write and check them. */
    SHA256SUM("list of checksums"),
    /** Media hash lists of the American Society of Cinematographers. */
    MHL("ASC MHL");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** As a person calls it. */
    public String words() {
      return words;
    }

    /** The word of JSON. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Whether all files are there and are what they were, and, where the lists claim to name
   * everything, are all that is there.
   */
  public boolean whole() {
    return missing.isEmpty()
        && different.isEmpty()
        && notFetched.isEmpty()
        && faults.isEmpty()
        && (unlisted.isEmpty() || !closed);
  }
}
