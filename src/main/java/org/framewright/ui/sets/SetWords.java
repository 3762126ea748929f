package org.framewright.ui.sets;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.studio.SetNow;
import org.framewright.studio.SetRow;
import org.framewright.ui.command.TypedWords;
import org.framewright.ui.look.Texts;

/** Words each set, at a time. */
record SetWords(Texts texts, ZoneId zone, Instant now) {
  private static final int MOST_CODES = 8;

  /** A set; the store may have been told anything by anybody. */
  SetLine line(SetRow row, Optional<Path> folder) {
    var set = row.now();
    int done = set.map(SetNow::done).orElse(0);
    int planned = set.map(SetNow::planned).orElse(0);
    var onSet = set.flatMap(SetNow::onSet);
    return new SetLine(
        row.job(),
        PlainText.line(row.name()),
        row.need(),
        texts.get("sets.need." + row.need().name().toLowerCase(Locale.ROOT)),
        onSet.map(on -> PlainText.line(on.setup())).orElse(""),
        onSet
            .map(on -> PlainText.line(on.title()))
            .orElseGet(() -> texts.get(set.isPresent() ? "sets.nothingOnSet" : "sets.unknown")),
        onSet.map(on -> since(on.since())).orElse(""),
        done,
        planned,
        set.isPresent() ? texts.get("sets.done", done, planned) : "",
        set.map(one -> texts.get("sets.signedOff", one.signedOff())).orElse(""),
        set.map(this::forecast).orElse(""),
        set.flatMap(SetNow::pace).map(pace -> texts.get("sets.pace", time(pace))).orElse(""),
        set.map(this::matters).orElse(List.of()),
        heard(row),
        row.isSilent(),
        folder);
  }

  /** A time of today, or the day with it. */
  String moment(Instant at) {
    var there = at.atZone(zone);
    return there.toLocalDate().equals(now.atZone(zone).toLocalDate())
        ? texts.formats().time(there)
        : texts.formats().soon(there.toLocalDateTime());
  }

  private String since(Instant begun) {
    var span = Duration.between(begun, now);
    return texts.get("sets.since", moment(begun), time(span.isNegative() ? Duration.ZERO : span));
  }

  private String time(Duration time) {
    return texts.formats().workingTime(time);
  }

  private String forecast(SetNow set) {
    if (set.done() >= set.planned()) {
      return texts.get(set.planned() == 0 ? "sets.noList" : "sets.nothingLeft");
    }
    if (set.earliest().isPresent() && set.latest().isPresent()) {
      return texts.get("sets.range", moment(set.earliest().get()), moment(set.latest().get()));
    }
    return set.finish()
        .map(finish -> texts.get("sets.about", moment(finish)))
        .orElseGet(() -> texts.get(set.pace().isEmpty() ? "sets.tooEarly" : "sets.noForecast"));
  }

  private List<String> matters(SetNow set) {
    var all = new ArrayList<String>();
    set.urgent().forEach(one -> all.add(say(one)));
    if (!set.waiting().isEmpty()) {
      var codes = PlainText.line(codes(set.waiting()));
      all.add(
          set.waitingSince()
              .map(since -> texts.get("sets.waits", codes, moment(since)))
              .orElseGet(() -> texts.get("sets.waitsAlways", codes)));
    }
    if (set.pickups() > 0) {
      all.add(texts.get("sets.pickups", set.pickups()));
    }
    if (set.late()) {
      all.add(texts.get("sets.late"));
    }
    set.troubles().forEach(one -> all.add(say(one)));
    return List.copyOf(new LinkedHashSet<>(all));
  }

  private String codes(List<String> waiting) {
    var some = String.join(", ", waiting.stream().limit(MOST_CODES).toList());
    return waiting.size() > MOST_CODES
        ? texts.get("sets.codesMore", some, waiting.size() - MOST_CODES)
        : some;
  }

  private String say(Text text) {
    return texts.sentence(PlainText.line(texts.say(text)));
  }

  private String heard(SetRow row) {
    if (row.toldAt().isEmpty()) {
      return texts.get("sets.never");
    }
    var told =
        texts.get(
            row.isSilent() ? "sets.silent" : "sets.heard",
            moment(row.toldAt().get()),
            PlainText.line(row.toldBy().orElse("")));
    return row.behind() > 0 ? texts.apart(told, texts.get("sets.behind", row.behind())) : told;
  }

  /**
   * Whether a set has what was typed: in its name, what is on set, or what a person should know.
   */
  static boolean has(SetLine line, TypedWords typed) {
    return typed.areIn(
        String.join(
            " ",
            Stream.concat(
                    Stream.of(line.name(), line.code(), line.title()), line.matters().stream())
                .toList()));
  }
}
