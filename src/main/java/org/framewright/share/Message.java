package org.framewright.share;

import com.fasterxml.jackson.databind.node.TextNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.framewright.base.Text;

/** A moment as one device gets it: all of it at first, then what changed. */
final class Message {
  private Message() {}

  /**
   * The JSON of a moment.
   *
   * @param before what the device has already; nothing where it is to get all
   * @param device its name
   * @param last the number of its last event that is kept
   * @param say says a text in the device's language
   */
  static String of(
      Optional<Fold> before,
      Fold now,
      String device,
      long last,
      Instant time,
      Function<Text, String> say) {
    var moment = now.moment();
    var text = new StringBuilder();
    text.append("{\"revision\":").append(moment.number());
    text.append(",\"full\":").append(before.isEmpty());
    text.append(",\"time\":").append(time.toEpochMilli());
    text.append(",\"seen\":").append(moment.view().at().toEpochMilli());
    text.append(",\"last\":").append(last);
    text.append(",\"role\":").append(quoted(now.role().word()));
    text.append(",\"job\":").append(quoted(moment.view().name()));
    text.append(",\"lost\":").append(moment.lost());
    text.append(",\"onSet\":").append(now.onSet());
    if (before.filter(one -> one.order().equals(now.order())).isEmpty()) {
      text.append(",\"order\":").append(now.order());
    }
    text.append(",\"setups\":[").append(String.join(",", changed(before, now))).append(']');
    text.append(",\"client\":").append(now.client());
    if (before.filter(one -> one.comments().equals(now.comments())).isEmpty()) {
      text.append(",\"comments\":").append(comments(now, device));
    }
    text.append(",\"day\":").append(day(now, say));
    return text.append('}').toString();
  }

  private static List<String> changed(Optional<Fold> before, Fold now) {
    if (before.isEmpty()) {
      return List.copyOf(now.setups().values());
    }
    var had = before.get().setups();
    var changed = new ArrayList<String>();
    now.setups()
        .forEach(
            (code, json) -> {
              if (!json.equals(had.get(code))) {
                changed.add(json);
              }
            });
    return changed;
  }

  private static String comments(Fold now, String device) {
    var text = new StringBuilder("[");
    for (var one : now.comments()) {
      // What came with a setup of another set is in no log of this one: its number is 0.
      boolean own = one.station().equals(device) && one.number() > 0;
      text.append(text.length() > 1 ? "," : "").append(one.json()).append(",\"own\":").append(own);
      if (own) {
        text.append(",\"number\":").append(one.number());
      }
      text.append('}');
    }
    return text.append(']').toString();
  }

  private static String day(Fold now, Function<Text, String> say) {
    if (now.day().equals("null")) {
      return now.day();
    }
    var why = now.moment().day().why().map(say).map(Message::quoted).orElse("null");
    return now.day() + ",\"why\":" + why + "}";
  }

  private static String quoted(String text) {
    return TextNode.valueOf(text).toString();
  }
}
