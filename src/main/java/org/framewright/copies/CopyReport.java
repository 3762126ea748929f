package org.framewright.copies;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;

/**
 * What a run did.
 *
 * @param from the folder that was copied
 * @param files the files that were to be copied
 * @param targets what became of them, one for each target
 * @param unreadable files of the source that could not be read, or changed while they were
 * @param remarks what else a person should know
 */
public record CopyReport(
    Path from, int files, List<Target> targets, List<Problem> unreadable, List<Problem> remarks) {

  public CopyReport {
    targets = List.copyOf(targets);
    unreadable = List.copyOf(unreadable);
    remarks = List.copyOf(remarks);
  }

  /**
   * One target.
   *
   * @param folder as asked for, absolute
   * @param device the disk that it lies on, in words
   * @param copied files that were written and read back
   * @param bytes their bytes
   * @param alreadyThere files that lay there with the same content
   * @param unsure of both, how many were read back from memory, as far as one can tell
   * @param blocked files whose name is taken there by another content
   * @param failed files that could not be written, and why the target was given up
   * @param list the list of checksums that was written
   * @param mhl the list that was added to the ASC MHL there
   * @param seconds how long it was written to and read back from
   */
  public record Target(
      Path folder,
      String device,
      int copied,
      long bytes,
      int alreadyThere,
      int unsure,
      List<Problem> blocked,
      List<Problem> failed,
      Optional<Path> list,
      Optional<Path> mhl,
      double seconds) {

    public Target {
      blocked = List.copyOf(blocked);
      failed = List.copyOf(failed);
    }

    /** Files that are there now, whole and compared. */
    public int verified() {
      return copied + alreadyThere;
    }
  }

  /** Whether every file is on every target. */
  public boolean isWhole() {
    return unreadable.isEmpty() && targets.stream().allMatch(one -> one.verified() == files);
  }
}
