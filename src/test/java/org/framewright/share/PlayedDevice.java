package org.framewright.share;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.Closeable;
import java.io.IOException;
import java.net.URI;
import java.time.Instant;
import java.util.Map;

/** A phone for the tests of other rooms: it does what a person does on its page, one by one. */
public final class PlayedDevice implements AutoCloseable {
  private final Phone phone;
  private long last;
  private Closeable stream = () -> {};

  private PlayedDevice(Phone phone) {
    this.phone = phone;
  }

  /** Pairs by the link of a code, under a name; the answer must be 200. */
  public static PlayedDevice paired(URI link, String name) throws Exception {
    var device = new PlayedDevice(new Phone(URI.create(link.toString().replaceFirst("#.*", ""))));
    var answer = device.phone.pair(new Invitation(link, Role.ASSISTANT, Instant.MAX), name);
    device.last = well(answer).path("last").asLong();
    return device;
  }

  public String id() {
    return phone.id;
  }

  /** Begins to follow the job; it is connected from then on. */
  public void follow() throws Exception {
    stream = phone.live()::close;
  }

  /** Ticks a setup; the answer of the server. */
  public JsonNode tick(String setup, String state) throws Exception {
    return tick(setup, state, Map.of());
  }

  /**
   * The same with more.
   *
   * @param more {@code view}, {@code reason}, {@code by}
   */
  public JsonNode tick(String setup, String state, Map<String, String> more) throws Exception {
    var tick = event("tick").put("setup", setup).put("state", state);
    more.forEach(tick::put);
    return sent(tick);
  }

  /** Says something of a setup. */
  public JsonNode comment(String setup, String text, String by) throws Exception {
    return sent(event("comment").put("setup", setup).put("text", text).put("by", by));
  }

  private ObjectNode event(String does) {
    return Phone.JSON
        .createObjectNode()
        .put("number", last + 1)
        .put("at", System.currentTimeMillis())
        .put("do", does);
  }

  private JsonNode sent(ObjectNode event) throws Exception {
    var answer = well(phone.events(event.toString()));
    last = answer.path("last").asLong();
    return answer;
  }

  private static JsonNode well(Phone.Answer answer) throws IOException {
    if (answer.status() != 200) {
      throw new IOException("status " + answer.status() + " " + answer.json());
    }
    return answer.json();
  }

  @Override
  public void close() throws IOException {
    stream.close();
  }
}
