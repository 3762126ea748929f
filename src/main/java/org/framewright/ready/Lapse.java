package org.framewright.ready;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.framewright.base.PlainText;
import org.framewright.base.Text;

/** What is no longer as it was when an answer was given. */
public final class Lapse {
  private static final int MOST_TOLD = 20;

  private Lapse() {}

  /**
   * What changed, a sentence each; nothing where the answer still holds.
   *
   * @param then what it rested on
   * @param now what it would rest on now
   */
  static List<Text> of(Map<String, String> then, Map<String, String> now) {
    var changed = new ArrayList<Text>();
    boolean knewBodies = then.keySet().stream().anyMatch(name -> name.startsWith(Rests.BODY));
    for (var one : now.entrySet()) {
      var name = one.getKey();
      var before = then.get(name);
      if (name.startsWith(Rests.BODY)) {
        if (before == null && knewBodies) {
          changed.add(
              Text.of(
                  "a body came that was not there: {0}",
                  PlainText.line(name.substring(Rests.BODY.length()))));
        }
      } else if (before != null && !before.equals(one.getValue())) {
        changed.add(said(name, PlainText.line(before), one.getValue()));
      }
    }
    return List.copyOf(changed.subList(0, Math.min(MOST_TOLD, changed.size())));
  }

  private static Text said(String name, String before, String now) {
    return switch (name) {
      case Rests.DAY -> Text.of("it was said on another day, {0}", before);
      case Rests.DISK -> Text.of("the frames arrive on another disk");
      case Rests.LIST -> Text.of("the shot list is another one");
      case Rests.CONVENTION -> Text.of("the convention is another one");
      case Rests.ZONE -> Text.of("the computer goes by another time zone, {0} before", before);
      default -> {
        var folder =
            PlainText.line(
                name.startsWith(Rests.PLACE) ? name.substring(Rests.PLACE.length()) : name);
        yield before.equals(Rests.AWAY)
            ? Text.of("the place for copies {0} is there now", folder)
            : now.equals(Rests.AWAY)
                ? Text.of("the place for copies {0} is gone", folder)
                : Text.of("another disk is at the place for copies {0}", folder);
      }
    };
  }
}
