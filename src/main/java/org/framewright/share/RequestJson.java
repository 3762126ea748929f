package org.framewright.share;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;

/** Reads what pages send; members that are not known are passed over. */
final class RequestJson {
  /** The most events of one request. */
  static final int MOST_EVENTS = 100;

  private static final int LONGEST_CODE = 200;
  private static final int LONGEST_TEXT = 2000;

  private static final JsonMapper JSON =
      JsonMapper.builder(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(4)
                          .maxNumberLength(20)
                          .maxNameLength(100)
                          .maxStringLength(LONGEST_TEXT)
                          .build())
                  .disable(JsonFactory.Feature.CANONICALIZE_FIELD_NAMES)
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private RequestJson() {}

  /** A wish to pair. */
  record Pairing(String device, String name) {}

  /**
   * What somebody did on a page.
   *
   * @param number its place in the device's log, from 1
   * @param at when, by this computer's clock as the page reckons it
   */
  record Sent(long number, Instant at, Did did) {}

  /** What it was. */
  sealed interface Did {
    /** A setup came into a state; its word may be none of ours. */
    record Tick(String setup, Optional<SetupState> state, MarkDetails details) implements Did {}

    /**
     * Somebody said something of a setup.
     *
     * @param picture the token of the frame that it is said of
     */
    record Comment(String setup, Optional<String> picture, String text, String by) implements Did {}

    /** An event of the same device is taken back. */
    record TakeBack(long of) implements Did {}

    /** A later version of the page may know more than this computer does. */
    record Other() implements Did {}
  }

  static Pairing pairing(byte[] body) throws MalformedRequest {
    var json = object(tree(body));
    return new Pairing(text(json, "device", 40), text(json, "name", LONGEST_TEXT));
  }

  static String typed(byte[] body) throws MalformedRequest {
    return text(object(tree(body)), "typed", LONGEST_CODE);
  }

  static List<Sent> events(byte[] body) throws MalformedRequest {
    var json = tree(body);
    if (!json.isArray() || json.size() > MOST_EVENTS) {
      throw new MalformedRequest("no list of events");
    }
    var events = new ArrayList<Sent>();
    for (var one : json) {
      events.add(event(object(one)));
    }
    return events;
  }

  private static Sent event(JsonNode json) throws MalformedRequest {
    long number = number(json, "number");
    if (number < 1) {
      throw new MalformedRequest("number");
    }
    var at = Instant.ofEpochMilli(number(json, "at"));
    return new Sent(number, at, did(json));
  }

  private static Did did(JsonNode json) throws MalformedRequest {
    return switch (text(json, "do", 40)) {
      case "tick" ->
          new Did.Tick(
              text(json, "setup", LONGEST_CODE),
              SetupState.of(text(json, "state", 40)),
              new MarkDetails(
                  optional(json, "by"), optional(json, "view"), optional(json, "reason")));
      case "comment" ->
          new Did.Comment(
              text(json, "setup", LONGEST_CODE),
              optional(json, "picture"),
              text(json, "text", LONGEST_TEXT),
              optional(json, "by").orElse(""));
      case "take-back" -> new Did.TakeBack(number(json, "of"));
      default -> new Did.Other();
    };
  }

  private static JsonNode tree(byte[] body) throws MalformedRequest {
    try {
      return JSON.readTree(body);
    } catch (JsonProcessingException e) {
      throw new MalformedRequest("no JSON");
    } catch (IOException e) {
      throw new UncheckedIOException(e); // Of bytes that are here, nothing is read.
    }
  }

  private static JsonNode object(JsonNode json) throws MalformedRequest {
    if (!json.isObject()) {
      throw new MalformedRequest("no object");
    }
    return json;
  }

  private static long number(JsonNode json, String name) throws MalformedRequest {
    var number = json.path(name);
    if (!number.isIntegralNumber() || !number.canConvertToLong()) {
      throw new MalformedRequest(name);
    }
    return number.asLong();
  }

  private static String text(JsonNode json, String name, int longest) throws MalformedRequest {
    var text = json.path(name);
    if (!text.isTextual() || text.asText().length() > longest) {
      throw new MalformedRequest(name);
    }
    return text.asText();
  }

  private static Optional<String> optional(JsonNode json, String name) throws MalformedRequest {
    return json.path(name).isMissingNode() || json.path(name).isNull()
        ? Optional.empty()
        : Optional.of(text(json, name, LONGEST_TEXT)).filter(text -> !text.isBlank());
  }
}
