package org.framewright.job;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.framewright.base.Text;

/**
 * Where the events of a job are kept: in files in the job folder, or in any other store that can
 * append durably.
 */
interface EventLog {

  /**
   * The events of every station that were not handed out before, in no particular order; each is
   * handed out once.
   */
  List<Entry> news() throws IOException;

  /**
   * Appends an event, with a stamp after all that were handed out. It is durable when this returns,
   * and is handed out by {@link #news} like any other.
   *
   * @return its stamp, by which it can be taken back
   * @throws IOException if it is not certain that the event was kept
   */
  Stamp append(Event event) throws IOException;

  /**
   * The number of a writer's last event, as far as it was read; 0 where it has none.
   *
   * @param writer a station or a device
   */
  long last(String writer);

  /**
   * Appends the next event of another writer, which makes its events elsewhere. It is durable when
   * this returns, and is handed out by {@link #news} like any other.
   *
   * @return false, and nothing is written, if its number is not the next one of its writer
   * @throws IOException if it is not certain that the event was kept
   */
  boolean append(Entry next) throws IOException;

  /** What a person should know of the log as it was read last. */
  List<Text> told();

  /** The same in English. */
  default List<String> warnings() {
    return told().stream().map(Text::english).toList();
  }

  /** Whose events {@link #append} makes. */
  String station();

  /** The station's clock, or what other stations wrote if that was found ahead of it. */
  Instant now();
}
