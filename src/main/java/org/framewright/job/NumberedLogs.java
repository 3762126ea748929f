package org.framewright.job;

import java.io.IOException;
import java.util.List;
import java.util.SequencedMap;

/**
 * The logs of one job in a store that many computers reach. Each writer, a station or a device, has
 * a log, and its events are numbered 1, 2, 3 and so on. Safe for several threads.
 */
public interface NumberedLogs {

  /** The number of the last event of each writer that has one. */
  SequencedMap<String, Long> heads() throws IOException;

  /**
   * Appends lines of one writer, with numbers that follow each other. What the store has already of
   * them it does not keep twice. All of them are kept or none.
   *
   * @return {@link Receipt.Kept} where some were new, {@link Receipt.Had} where all were there;
   *     {@link Receipt.Gap} where events before them are missing, {@link Receipt.Clash} where the
   *     store has other bytes under one of the numbers; each with the number of the last event that
   *     the store has of this writer then
   * @throws IOException if it is not certain what became of them; they may be sent again
   */
  Receipt append(String writer, List<SealedLine> lines) throws IOException;

  /**
   * The lines of a writer from a number on, as many as are good to be handled at once: at least one
   * where there is one. None of them was looked into.
   */
  List<byte[]> read(String writer, long from) throws IOException;
}
