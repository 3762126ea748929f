package org.framewright.share;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * An answer that is sent whole.
 *
 * @param status of RFC 9110, section 15
 * @param headers besides those that every answer has
 * @param body may be empty
 */
@SuppressWarnings("ArrayRecordComponent") // Never compared, and nobody changes it.
record Reply(int status, Map<String, String> headers, byte[] body) {
  private static final String TYPE = "Content-Type";

  static Reply of(int status, String type, byte[] body) {
    return new Reply(status, Map.of(TYPE, type), body);
  }

  static Reply json(int status, ObjectNode json) {
    return new Reply(
        status,
        Map.of(TYPE, "application/json", "Cache-Control", "no-store"),
        json.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** Nothing but what time it is here, by which a page puts its own clock right. */
  static Reply plain(int status, Instant now) {
    return json(status, told(now));
  }

  static ObjectNode told(Instant now) {
    return JsonNodeFactory.instance.objectNode().put("time", now.toEpochMilli());
  }

  Reply with(String header, String value) {
    var all = new LinkedHashMap<>(headers);
    all.put(header, value);
    return new Reply(status, all, body);
  }
}
