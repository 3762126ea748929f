package org.framewright.job;

import java.util.List;

/**
 * What the log keeps of a copy of a card or of the job.
 *
 * @param from the folder that was copied
 * @param files the files that it had
 * @param bytes their bytes
 * @param to the places
 */
public record CopyRecord(String from, int files, long bytes, List<Target> to) {
  public CopyRecord {
    to = List.copyOf(to);
  }

  /**
   * One place that was copied to.
   *
   * @param folder the folder
   * @param device the disk that it was on, in words
   * @param volume the volume's own id; empty where it was not known, as the next two
   * @param mount which insertion of the disk it was
   * @param boot which run of the system it was
   * @param verified files that were there at the end, read and compared
   * @param unsure of these, how many may have been read from memory
   */
  public record Target(
      String folder,
      String device,
      String volume,
      String mount,
      String boot,
      int verified,
      int unsure) {}
}
