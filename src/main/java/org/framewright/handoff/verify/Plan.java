package org.framewright.handoff.verify;

import java.util.List;
import java.util.OptionalLong;

/**
 * What is to be read of a package, and what is known before anything is read.
 *
 * @param readings by the names of the files
 * @param known what the lists and the names alone say
 */
record Plan(List<Reading> readings, PackageCheck known) {
  Plan {
    readings = List.copyOf(readings);
  }

  /**
   * A file to be read.
   *
   * @param size what its size has to be, where a list says that
   * @param sums what its content has to come to, each of them
   */
  record Reading(Listing.Found file, OptionalLong size, List<Sum> sums) {
    Reading {
      sums = List.copyOf(sums);
    }
  }

  long bytes() {
    return readings.stream().mapToLong(one -> one.file().bytes()).sum();
  }
}
