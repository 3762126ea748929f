package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.List;

/**
 * How a hand-off ended.
 *
 * @param packages those that are in their place
 * @param why why it did not go on; empty words where everything went
 * @param remarks what a person should know besides
 * @param sentence for the retoucher; empty where nothing is in its place
 */
record Ended(List<Handed> packages, Remark why, List<String> remarks, String sentence) {
  Ended {
    packages = List.copyOf(packages);
    remarks = List.copyOf(remarks);
  }

  /** A package in its place. */
  record Handed(int number, Path folder, int selects, int files, long bytes, String digest) {}

  boolean isWhole() {
    return why.what().isEmpty();
  }
}
