package org.framewright.ui.day;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.day.Forecast;
import org.framewright.day.KindPace;
import org.framewright.day.Supplies;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.look.Formats;
import org.framewright.ui.look.Texts;

/** The figures of the day, and what is said beneath them. */
final class DayFigures {
  private static final Duration SECONDS = Duration.ofSeconds(8);
  private static final int FEWEST_FRAMES = 30;
  private static final int MOST_KINDS = 6;

  private final DaySummary summary;
  private final Supplies supplies;
  private final Texts texts;
  private final Formats formats;
  private final ZoneId zone;

  DayFigures(DayNow now, Texts texts) {
    this.summary = now.summary();
    this.supplies = now.supplies();
    this.texts = texts;
    this.formats = texts.formats();
    this.zone = summary.hours().zone();
  }

  List<Figure> all() {
    return List.of(shot(), pace(), finish(), time(), space());
  }

  private int count(SetupState state) {
    return summary.setups().getOrDefault(state, 0);
  }

  /** What is left of this day where the list has days, else of the job. */
  private Forecast ahead() {
    return summary.today().filter(today -> today.setups() > 0).orElse(summary.all());
  }

  private Figure shot() {
    int all = summary.setups().values().stream().mapToInt(Integer::intValue).sum();
    int pickups = count(SetupState.PICKUP);
    var signedOff = texts.get("day.shot.signedOff", count(SetupState.SIGNED_OFF));
    return new Figure(
        "shot",
        texts.get("day.shot"),
        texts.get(
            "day.shot.of",
            count(SetupState.SHOT) + count(SetupState.SIGNED_OFF),
            all - count(SetupState.DROPPED)),
        pickups == 0 ? signedOff : texts.apart(signedOff, texts.get("day.shot.pickups", pickups)),
        false);
  }

  private Figure pace() {
    var pace = summary.pace();
    if (pace.recent().isEmpty() || pace.mean().isEmpty()) {
      return new Figure(
          "pace", texts.get("day.pace"), texts.get("day.none"), texts.get("day.tooEarly"), false);
    }
    return new Figure(
        "pace",
        texts.get("day.pace"),
        formats.workingTime(pace.recent().get()),
        texts.get("day.pace.mean", formats.workingTime(pace.mean().get())),
        false);
  }

  private Figure finish() {
    var ahead = ahead();
    var word = texts.get("day.finish");
    if (ahead.setups() == 0) {
      return new Figure(
          "finish", word, texts.get("day.none"), texts.get("day.finish.nothingLeft"), false);
    }
    if (ahead.finish().isEmpty()) {
      return new Figure("finish", word, texts.get("day.none"), noForecast(ahead), false);
    }
    return new Figure("finish", word, near(ahead.finish().get()), range(ahead), late(ahead));
  }

  private String noForecast(Forecast ahead) {
    return ahead.work().isEmpty()
        ? texts.get("day.tooEarly")
        : texts.get("day.finish.tooFar", DayHours.MOST_DAYS);
  }

  /** The likely range in words, or why there is none. */
  private String range(Forecast ahead) {
    if (ahead.earliest().isPresent() && ahead.latest().isPresent()) {
      var earliest = near(ahead.earliest().get());
      var latest = near(ahead.latest().get());
      return earliest.equals(latest) ? "" : texts.get("day.finish.likely", earliest, latest);
    }
    return ahead.whyNoRange().map(texts::say).orElse("");
  }

  /** Only what is planned for this day can be late. */
  private boolean late(Forecast ahead) {
    return summary.today().filter(ahead::equals).isPresent()
        && ahead.finish().filter(at -> at.isAfter(endOfDay())).isPresent();
  }

  private Instant endOfDay() {
    return summary.at().atZone(zone).with(summary.hours().until()).toInstant();
  }

  private Figure time() {
    var left = summary.hours().between(summary.at(), endOfDay());
    var until = texts.get("day.time.until", formats.time(summary.hours().until()));
    var each = ahead().takt().filter(takt -> !takt.isZero()).filter(_ -> ahead().setups() > 0);
    return new Figure(
        "time",
        texts.get("day.time"),
        formats.workingTime(left),
        each.map(
                takt ->
                    texts.apart(
                        until,
                        texts.get("day.time.each", formats.workingTime(takt), ahead().setups())))
            .orElse(until),
        false);
  }

  Figure space() {
    var space = summary.space();
    return new Figure(
        "space",
        texts.get("day.space"),
        formats.size(space.free()),
        !space.enough()
            ? texts.get(
                "day.space.notEnough",
                space.planned().orElseThrow(),
                formats.size(space.needed().orElseThrow()))
            : space.bytesPerFrame() == 0
                ? texts.get("day.space.noFrame")
                : texts.get("day.space.fits", space.free() / space.bytesPerFrame()),
        !space.enough());
  }

  /**
   * What is left of the whole job where the figures are of this day, kinds, what seconds cost, and
   * how long disks and battery last.
   */
  List<String> said() {
    var said = new ArrayList<String>();
    var all = summary.all();
    if (!ahead().equals(all) && all.setups() > 0) {
      said.add(
          all.finish()
              .map(at -> texts.get("day.said.all", all.setups(), near(at)))
              .orElseGet(() -> texts.get("day.said.allLeft", all.setups(), noForecast(all))));
    }
    if (summary.kinds().size() > 1) {
      said.add(
          texts.get(
              "day.said.kinds",
              formats.list(summary.kinds().stream().limit(MOST_KINDS).map(this::kind).toList())));
    }
    long planned = summary.space().planned().orElse(0);
    if (planned >= FEWEST_FRAMES) {
      said.add(
          texts.get(
              "day.said.seconds",
              SECONDS.toSeconds(),
              formats.workingTime(SECONDS.multipliedBy(planned)),
              planned));
    }
    var speed = supplies.speed().stream().map(texts::say).toList();
    if (!speed.isEmpty()) {
      said.add(texts.sentence(String.join("; ", speed)));
    }
    supplies.power().map(texts::say).map(texts::sentence).ifPresent(said::add);
    return said;
  }

  private String kind(KindPace kind) {
    var name = PlainText.line(kind.kind());
    return kind.mean()
        .map(mean -> texts.get("day.said.kind", name, formats.workingTime(mean), kind.left()))
        .orElseGet(() -> texts.get("day.said.kindNotYet", name, kind.left()));
  }

  /** A time of this day, or of another with that day. */
  private String near(Instant at) {
    var then = LocalDateTime.ofInstant(at, zone);
    return then.toLocalDate().equals(LocalDate.ofInstant(summary.at(), zone))
        ? formats.time(then)
        : formats.soon(then);
  }
}
