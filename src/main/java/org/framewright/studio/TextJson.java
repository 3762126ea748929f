package org.framewright.studio;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import org.framewright.base.PlainText;
import org.framewright.base.Text;

/**
 * Texts in the store: the English pattern, of which each reader has the translation, and what
 * stands in it, as {@code {"many": "{0} frames are not whole", "one": "{0} frame is not whole",
 * "values": [3]}}. A text without values is its English alone, and so is what older programs told.
 */
final class TextJson {
  /** In characters, of a text in English. */
  private static final int LONGEST = 400;

  private static final int MOST_VALUES = 10;

  /** Texts stand in texts, such as a duration in a sentence; none so deep is ours. */
  private static final int DEEPEST = 3;

  private TextJson() {}

  /** A text as it may be told: one that is too long is cut, and is in English then. */
  static Text bounded(Text text) {
    var english = PlainText.line(text.english());
    return english.length() > LONGEST ? plain(english) : text;
  }

  static JsonNode of(Text text) {
    if (text.values().isEmpty()) {
      return TextNode.valueOf(text.many());
    }
    var json = JsonNodeFactory.instance.objectNode();
    json.put("many", text.many());
    if (!text.one().equals(text.many())) {
      json.put("one", text.one());
    }
    text.values().stream().map(TextJson::value).forEach(json.putArray("values")::add);
    return json;
  }

  private static JsonNode value(Object value) {
    var json = JsonNodeFactory.instance;
    return switch (value) {
      case Text text -> json.objectNode().set("text", of(text));
      case Text.Grouped grouped -> json.objectNode().put("grouped", grouped.number());
      case Text.Size size ->
          json.objectNode().put("bytes", size.bytes()).put("inMegabytes", size.inMegabytes());
      case Number number -> json.numberNode(number.longValue());
      default -> json.textNode(value.toString());
    };
  }

  /** What the store has; it may come from anybody. */
  static Text read(JsonNode json) {
    return read(json, 0);
  }

  private static Text read(JsonNode json, int depth) {
    if (!(json instanceof ObjectNode) || depth > DEEPEST) {
      return plain(json.asText());
    }
    var many = PlainText.line(json.path("many").asText());
    var one = json.has("one") ? PlainText.line(json.path("one").asText()) : many;
    List<Object> values =
        json.path("values")
            .valueStream()
            .limit(MOST_VALUES)
            .map(value -> readValue(value, depth))
            .toList();
    return isOurs(many) && isOurs(one) ? bounded(new Text(one, many, values)) : plain(many);
  }

  /** Texts with many texts in them, and these with many more, would take very long to say. */
  private static boolean isOurs(String pattern) {
    return pattern.length() <= LONGEST
        && pattern.chars().filter(sign -> sign == '{').count() <= MOST_VALUES;
  }

  private static Object readValue(JsonNode json, int depth) {
    if (json.isIntegralNumber()) {
      return json.asLong();
    }
    if (json.has("text")) {
      return read(json.path("text"), depth + 1);
    }
    if (json.has("grouped")) {
      return new Text.Grouped(json.path("grouped").asLong());
    }
    if (json.has("bytes")) {
      return new Text.Size(
          Math.max(0, json.path("bytes").asLong()), json.path("inMegabytes").asBoolean());
    }
    return cut(json.asText());
  }

  private static Text plain(String english) {
    return Text.of(cut(english));
  }

  private static String cut(String text) {
    return PlainText.start(PlainText.line(text), LONGEST);
  }
}
