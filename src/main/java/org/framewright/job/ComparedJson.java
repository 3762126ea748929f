package org.framewright.job;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** The members of an event {@code compared}. */
final class ComparedJson {
  /** Names that lead nowhere else than into the folder of evidence. */
  private static final Pattern FILE = Pattern.compile("[A-Za-z0-9][A-Za-z0-9.-]{0,99}");

  private static final Pattern SHA256 = Pattern.compile("[0-9a-f]{64}");

  private ComparedJson() {}

  static void write(ComparedCopies found, ObjectNode json) {
    json.put("evidence", found.evidence());
    json.put("sha256", found.sha256());
    json.put("by", EventCodec.text(found.by()));
    var places = json.putArray("places");
    found.places().forEach(place -> places.add(EventCodec.text(place)));
    json.put("frames", found.frames().frames());
    json.put("once", found.frames().once());
    var cards = json.putArray("cards");
    for (var card : found.cards()) {
      var one = cards.addObject();
      one.put("folder", EventCodec.text(card.folder()));
      one.put("name", EventCodec.text(card.name()));
      one.put("answer", card.answer());
      one.put("files", card.files());
      one.put("bytes", card.bytes());
      one.put("digest", card.digest());
      var on = one.putArray("on");
      card.on().forEach(label -> on.add(EventCodec.text(label)));
    }
  }

  /** Nothing where a member that must be there is not, or is not what it must be. */
  static Optional<ComparedCopies> read(JsonNode json) {
    var evidence = json.path("evidence").asText();
    var sha256 = json.path("sha256").asText();
    int frames = number(json, "frames");
    int once = number(json, "once");
    if (!FILE.matcher(evidence).matches()
        || !SHA256.matcher(sha256).matches()
        || frames < 0
        || once < 0
        || !json.path("cards").isArray()) {
      return Optional.empty();
    }
    var cards = new ArrayList<ComparedCopies.Card>();
    for (var card : json.path("cards")) {
      var bytes = card.path("bytes");
      int files = number(card, "files");
      if (files < 0 || !bytes.canConvertToLong() || bytes.asLong() < 0) {
        return Optional.empty();
      }
      cards.add(
          new ComparedCopies.Card(
              text(card, "folder"),
              text(card, "name"),
              text(card, "answer"),
              files,
              bytes.asLong(),
              text(card, "digest"),
              texts(card.path("on"))));
    }
    return Optional.of(
        new ComparedCopies(
            evidence,
            sha256,
            text(json, "by"),
            texts(json.path("places")),
            new FramesCompared(frames, once),
            cards));
  }

  private static int number(JsonNode json, String name) {
    var number = json.path(name);
    return number.isInt() ? number.asInt() : -1;
  }

  private static String text(JsonNode json, String name) {
    return EventCodec.text(json.path(name).asText());
  }

  private static List<String> texts(JsonNode nodes) {
    var texts = new ArrayList<String>();
    nodes.forEach(node -> texts.add(EventCodec.text(node.asText())));
    return texts;
  }
}
