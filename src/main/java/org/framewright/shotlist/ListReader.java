package org.framewright.shotlist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads the lists that clients send. */
public final class ListReader {
  private ListReader() {}

  /** Reads a list from a file. */
  public static ListReading read(Path file) throws IOException {
    return read(Files.readAllBytes(file), file.getFileName().toString());
  }

  /**
   * Reads a list from bytes.
   *
   * @param sourceName what faults call it
   */
  public static ListReading read(byte[] bytes, String sourceName) {
    return new ListReading.Refused(
        java.util.List.of(new Fault(sourceName, 0, 0, bytes.length + " bytes not read", "")));
  }
}
