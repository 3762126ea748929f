package org.framewright.share;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.framewright.base.Text;

/** What pages show, and what may be done by them. Safe from any thread. */
interface Content extends AutoCloseable {
  /** What it is called, for people. */
  String name();

  /** Whether a role may ask for this path; pictures are looked at one by one. */
  boolean allows(Role role, String path);

  /**
   * Keeps how a device is called that is about to be paired.
   *
   * @throws IOException if it is not certain that it was kept
   */
  void named(String device, String name) throws IOException, InterruptedException;

  /** The number of the last event of a device that is kept; 0 where there is none. */
  long last(String device);

  /** What a device hears from now on. */
  Hearing hearing(Devices.Known device, Function<Text, String> say);

  /** Lets all who wait to hear look at why they do. */
  void wake();

  /**
   * Keeps what was done on a page.
   *
   * @throws IOException if it is not certain of one whether it was kept; the device sends it again
   */
  Ticks.Answer receive(Devices.Known device, List<RequestJson.Sent> events)
      throws IOException, InterruptedException;

  /** What a scanned code finds. */
  ObjectNode code(String typed);

  /** A picture that a role may see just now; nothing where there is none of this token. */
  Optional<byte[]> picture(Role role, String token, int edge)
      throws IOException, InterruptedException;

  /**
   * Once a second, always from the same thread.
   *
   * @param watched whether any page is open
   */
  void beat(boolean watched);

  @Override
  void close();
}
