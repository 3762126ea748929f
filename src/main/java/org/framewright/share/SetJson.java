package org.framewright.share;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.studio.SetNow;
import org.framewright.studio.SetRow;

/** One set for a page: times in milliseconds, durations in seconds, null for what nobody knows. */
final class SetJson {
  private SetJson() {}

  /**
   * A set.
   *
   * @param say how its sentences are said
   */
  static ObjectNode of(SetRow row, Function<Text, String> say) {
    var json = JsonNodeFactory.instance.objectNode();
    json.put("id", row.job().toString());
    json.put("name", row.name());
    json.put("need", row.need().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    json.put("silent", row.isSilent());
    json.put("told", millis(row.toldAt()));
    json.put("toldBy", row.toldBy().orElse(null));
    json.put("behind", row.behind());
    json.put("known", row.now().isPresent());
    row.now().ifPresent(set -> put(set, json, say));
    return json;
  }

  private static void put(SetNow set, ObjectNode json, Function<Text, String> say) {
    set.onSet()
        .ifPresentOrElse(
            on ->
                json.putObject("onSet")
                    .put("code", on.setup())
                    .put("title", on.title())
                    .put("since", on.since().toEpochMilli()),
            () -> json.putNull("onSet"));
    json.put("planned", set.planned());
    json.put("done", set.done());
    json.put("signedOff", set.signedOff());
    json.put("pickups", set.pickups());
    set.waiting().forEach(json.putArray("waiting")::add);
    json.put("waitingSince", millis(set.waitingSince()));
    json.put("frames", set.frames());
    json.put("pace", set.pace().map(Duration::toSeconds).orElse(null));
    json.put("finish", millis(set.finish()));
    json.put("from", millis(set.earliest()));
    json.put("to", millis(set.latest()));
    json.put("late", set.late());
    said(set.urgent(), say).forEach(json.putArray("urgent")::add);
    said(set.troubles(), say).forEach(json.putArray("troubles")::add);
  }

  private static Long millis(Optional<Instant> time) {
    return time.map(Instant::toEpochMilli).orElse(null);
  }

  private static List<String> said(List<Text> texts, Function<Text, String> say) {
    return texts.stream().map(say).map(PlainText::line).toList();
  }
}
