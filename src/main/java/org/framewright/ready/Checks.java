package org.framewright.ready;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.ByteSizes;
import org.framewright.base.Durations;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.frames.CameraClock;
import org.framewright.ready.Outcome.CannotTell;
import org.framewright.ready.Outcome.Fine;
import org.framewright.ready.Outcome.Remark;
import org.framewright.ready.Outcome.Stops;

/** What is measured before the first frame: each check a function of the facts. */
final class Checks {
  /**
   * What a fast external disk writes, in bytes a second; a slower one is felt. Common practice, no
   * source.
   */
  private static final double FAST = 1e9;

  /** A wait that nobody notices. Judgement, no source. */
  private static final Duration UNNOTICED = Duration.ofMillis(500);

  /** Clocks that differ by less differ for nobody. */
  private static final Duration TOLERATED = Duration.ofSeconds(5);

  /** A battery below this does not last a morning. Judgement, no source. */
  private static final int LOW_BATTERY = 30;

  private static final int MOST_TOLD = 5;

  /** What a computer goes by that nobody told where it is. */
  private static final Set<String> NOWHERE = Set.of("UTC", "Z", "GMT", "Etc/UTC", "Etc/GMT");

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private Checks() {}

  /** All of them, in the order in which a person looks after them. */
  static List<Measured> of(Facts facts) {
    var all = new ArrayList<Measured>();
    all.add(new Measured(Topic.LIST, list(facts)));
    if (facts.setups() > 0) {
      all.add(new Measured(Topic.NAMES, names(facts)));
    }
    all.add(new Measured(Topic.CONVENTION, convention(facts)));
    if (facts.halfWay().isEmpty()) {
      all.add(
          new Measured(
              Topic.LEFT_HALF_WAY,
              new Fine(Text.of("no renames, copies or hand-off were left half-way"))));
    }
    for (var left : facts.halfWay()) {
      all.add(new Measured(Topic.LEFT_HALF_WAY, new Stops(left.said(), left.remedy())));
    }
    all.add(new Measured(Topic.SPACE, space(facts.space(), facts.speed().burst())));
    facts
        .speed()
        .measured()
        .ifPresent(measure -> all.add(new Measured(Topic.SPEED, speed(facts, measure))));
    places(facts).forEach(outcome -> all.add(new Measured(Topic.PLACES, outcome)));
    all.add(new Measured(Topic.POWER, power(facts.power())));
    all.add(new Measured(Topic.CLOCK, clock(facts.othersAhead())));
    all.add(new Measured(Topic.ZONE, zone(facts.at(), facts.zone())));
    bodies(facts.bodies()).forEach(outcome -> all.add(new Measured(Topic.BODIES, outcome)));
    fonts(facts.atHand()).ifPresent(outcome -> all.add(new Measured(Topic.FONTS, outcome)));
    facts
        .atHand()
        .display()
        .ifPresent(there -> all.add(new Measured(Topic.DISPLAY, display(there))));
    facts
        .atHand()
        .devices()
        .ifPresent(paired -> all.add(new Measured(Topic.DEVICES, devices(paired))));
    return List.copyOf(all);
  }

  private static Outcome list(Facts facts) {
    return facts.setups() == 0
        ? new Stops(
            Text.of("the shot list is empty, so nothing can be put on set"),
            Text.of("Import the client’s list."))
        : new Fine(
            Text.counted("the list has {0} setup", "the list has {0} setups", facts.setups()));
  }

  private static Outcome names(Facts facts) {
    if (facts.unnamed().isEmpty()) {
      return new Fine(Text.of("the frames of every setup can be named"));
    }
    var first = facts.unnamed().getFirst();
    return new Stops(
        Text.counted(
            "the frames of {0} setup could not be named; {1}: {2}",
            "the frames of {0} setups could not be named; the first is {1}: {2}",
            facts.unnamed().size(),
            PlainText.line(first.setup()),
            first.why()),
        first.remedy());
  }

  private static Outcome convention(Facts facts) {
    var errors = facts.convention().stream().filter(Facts.Fault::error).toList();
    if (!errors.isEmpty()) {
      return new Stops(errors.getFirst().said(), errors.getFirst().remedy());
    }
    if (!facts.convention().isEmpty()) {
      var first = facts.convention().getFirst();
      return new Remark(first.said(), first.remedy());
    }
    return new Fine(Text.of("nothing is wrong with the convention for the frames planned"));
  }

  static Outcome space(Facts.Space space, int burst) {
    var free = ByteSizes.of(space.free());
    var frame = ByteSizes.of(space.frame());
    var make = Text.of("Make room on it, or move the job to a larger disk.");
    if ((double) space.frame() * burst > space.free()) {
      return new Stops(
          Text.of("{0} are free, less than {1} frames of {2} need", free, burst, frame), make);
    }
    var needed = space.needed();
    if (needed.isEmpty()) {
      return new CannotTell(
          Text.of("{0} are free; the list does not say how many frames are wanted", free));
    }
    var planned = new Text.Grouped(space.planned().getAsLong());
    var said =
        space.bytesPerFrame() > 0
            ? Text.of(
                "{0} are free; the {1} frames planned need {2}, at {3} a frame of this job",
                free, planned, ByteSizes.of(needed.getAsLong()), frame)
            : Text.of(
                "{0} are free; the {1} frames planned need {2}, at the usual {3} a frame",
                free, planned, ByteSizes.of(needed.getAsLong()), frame);
    if (needed.getAsLong() > space.free()) {
      return new Stops(said, make);
    }
    return needed.getAsLong() > space.free() - space.free() / 10
        ? new Remark(said, Text.of("Make some room on it: a tenth of it should stay free."))
        : new Fine(said);
  }

  private static Outcome speed(Facts facts, Facts.Speed.Measure measure) {
    return switch (measure) {
      case Facts.Speed.Measure.NoRoom _ ->
          new CannotTell(Text.of("there is too little room to measure how fast the disk is"));
      case Facts.Speed.Measure.Refused(var why, var remedy) ->
          new Stops(Text.of("the disk takes no file: {0}", why), remedy);
      case Facts.Speed.Measure.Rates rates -> speed(facts, rates);
    };
  }

  private static Outcome speed(Facts facts, Facts.Speed.Measure.Rates rates) {
    var speed =
        rates.read().isPresent()
            ? Text.of(
                "it writes {0} and reads {1} a second",
                ByteSizes.inMegabytes(rates.written()),
                ByteSizes.inMegabytes(rates.read().getAsLong()))
            : Text.of("it writes {0} a second", ByteSizes.inMegabytes(rates.written()));
    var longer = longer(facts, rates.written());
    if (longer.compareTo(UNNOTICED) < 0) {
      return new Fine(
          Text.of("{0}: fast enough for bursts of {1} frames", speed, facts.speed().burst()));
    }
    return new Remark(
        Text.of(
            "{0}: {1} s longer for each burst of {2} frames than the camera or a fast disk; over"
                + " {3} setups about {4}",
            speed,
            seconds(longer),
            facts.speed().burst(),
            facts.setups(),
            Durations.words(longer.multipliedBy(bursts(facts)))),
        Text.of("Let the frames arrive on the computer’s own disk, or on a faster one."));
  }

  /** How much longer a burst takes than the camera sends it, or a fast disk takes it. */
  static Duration longer(Facts facts, long written) {
    double bytes = (double) facts.space().frame() * facts.speed().burst();
    var camera = facts.speed().camera();
    double sent = camera.isPresent() ? Math.min(FAST, (double) camera.getAsLong()) : FAST;
    double seconds = bytes / Math.max(1, written) - bytes / Math.max(1, sent);
    return Duration.ofMillis(Math.round(Math.max(0, Math.min(seconds, 1e9)) * 1000));
  }

  /** As many as the planned frames make, one a setup at the least. */
  private static long bursts(Facts facts) {
    long planned = facts.space().planned().orElse(0);
    return Math.max(facts.setups(), Math.ceilDiv(planned, facts.speed().burst()));
  }

  private static String seconds(Duration time) {
    return time.compareTo(Duration.ofSeconds(10)) < 0
        ? String.format(Locale.ROOT, "%.1f", time.toMillis() / 1000.0)
        : String.valueOf(Math.round(time.toMillis() / 1000.0));
  }

  private static List<Outcome> places(Facts facts) {
    if (facts.places().isEmpty()) {
      return List.of(
          new Remark(
              Text.of("no place for copies is known, so every frame will be in one place only"),
              Text.of("Connect a disk for copies, and name its folder here.")));
    }
    return facts.places().stream().map(place -> place(place, facts.space())).toList();
  }

  private static Outcome place(Facts.CopyPlace place, Facts.Space space) {
    var folder = PlainText.line(place.folder());
    if (!place.there()) {
      return new Remark(
          Text.of("{0} is not there", folder), Text.of("Connect its disk, or name another place."));
    }
    if (place.apart().isEmpty()) {
      return new CannotTell(
          Text.of(
              "{0} is there; whether it lies on another disk than the frames, nobody can tell",
              folder));
    }
    if (!place.apart().get()) {
      return new Remark(
          Text.of(
              "{0} lies on the same disk as the frames, and what breaks one breaks both", folder),
          Text.of("Name a folder on another disk."));
    }
    if (space.needed().isPresent() && space.needed().getAsLong() > place.free()) {
      return new Remark(
          Text.of(
              "{0} lies on another disk, and has {1} free for {2} of frames planned",
              folder, ByteSizes.of(place.free()), ByteSizes.of(space.needed().getAsLong())),
          Text.of("Make room on it, or name a larger disk."));
    }
    return new Fine(
        Text.of("{0} lies on another disk, {1} free", folder, ByteSizes.of(place.free())));
  }

  private static Outcome power(Facts.Power power) {
    return switch (power) {
      case Facts.Power.OnMains _ -> new Fine(Text.of("the computer does not run on a battery"));
      case Facts.Power.Unknown _ ->
          new CannotTell(Text.of("this system is not asked what the computer runs on"));
      case Facts.Power.OnBattery(var battery) -> {
        var said =
            battery
                .left()
                .map(
                    left ->
                        Text.of(
                            "the computer runs on its battery: {0} %, about {1} at the present draw",
                            battery.percent(), Durations.workingTime(left)))
                .orElseGet(
                    () -> Text.of("the computer runs on its battery: {0} %", battery.percent()));
        yield new Remark(
            said,
            battery.percent() < LOW_BATTERY
                ? Text.of("Plug it in before anything is shot.")
                : Text.of("Plug it in, or have a charged one at hand."));
      }
    };
  }

  private static Outcome clock(Duration ahead) {
    return ahead.compareTo(TOLERATED) > 0
        ? new Remark(
            Text.of(
                "another computer of this job was {0} ahead of this one’s clock",
                Durations.said(ahead)),
            Text.of("Let all computers set their clocks from the network."))
        : new Fine(Text.of("no other computer of this job is ahead of this one’s clock"));
  }

  static Outcome zone(Instant at, ZoneId zone) {
    var now = at.atZone(zone);
    if (NOWHERE.contains(zone.getId())) {
      return new Remark(
          Text.of("the computer goes by {0}, where it is {1}", zone.getId(), TIME.format(now)),
          Text.of("If it is another time at the set, tell the computer where it is."));
    }
    var said =
        zone instanceof ZoneOffset
            ? Text.of("it is {0}, {1}", TIME.format(now), offset(now.getOffset()))
            : Text.of(
                "it is {0} in {1}, {2}", TIME.format(now), zone.getId(), offset(now.getOffset()));
    return change(now)
        .<Outcome>map(
            when ->
                new Remark(
                    Text.of(
                        "{0}; clocks are changed there at {1}", said, DAY_AND_TIME.format(when)),
                    Text.of("See to it that computers and bodies change theirs alike.")))
        .orElseGet(() -> new Fine(said));
  }

  /** When clocks are changed, where that is within a day. */
  private static Optional<ZonedDateTime> change(ZonedDateTime now) {
    var next = now.getZone().getRules().nextTransition(now.minusDays(1).toInstant());
    return Optional.ofNullable(next)
        .map(one -> one.getInstant())
        .filter(when -> when.isBefore(now.plusDays(1).toInstant()))
        .map(when -> when.atZone(now.getZone()));
  }

  private static String offset(ZoneOffset offset) {
    return offset.equals(ZoneOffset.UTC) ? "UTC" : "UTC" + offset.getId();
  }

  private static List<Outcome> bodies(List<CameraClock> bodies) {
    var outcomes = new ArrayList<Outcome>();
    for (var body : bodies) {
      var name = PlainText.line((body.camera().model() + " " + body.camera().serial()).strip());
      if (body.isOff()) {
        outcomes.add(
            new Remark(
                off(name, body),
                Text.of("Set it right now; frames that were taken are put right anyway.")));
      } else if (body.offsetSeconds().isPresent()) {
        outcomes.add(new Fine(Text.of("the clock of {0} goes with this computer’s", name)));
      }
    }
    return outcomes.isEmpty()
        ? List.of(
            new CannotTell(
                Text.of("no frame was seen arriving yet, so no clock of a body is known")))
        : List.copyOf(outcomes.subList(0, Math.min(MOST_TOLD, outcomes.size())));
  }

  private static Text off(String name, CameraClock body) {
    if (body.isNeverSet()) {
      return Text.of("the clock of {0} was never set", name);
    }
    double toAdd = body.offsetSeconds().orElseThrow();
    var by =
        body.wholeHours().isPresent()
            ? Text.of("{0} h", Math.abs(body.wholeHours().getAsInt()))
            : Durations.said(Duration.ofSeconds(Math.round(toAdd)));
    return toAdd < 0
        ? Text.of("the clock of {0} is {1} fast", name, by)
        : Text.of("the clock of {0} is {1} slow", name, by);
  }

  private static Optional<Outcome> fonts(Facts.AtHand atHand) {
    if (atHand.scripts().isEmpty()) {
      return Optional.empty();
    }
    var scripts = String.join(", ", atHand.scripts());
    return Optional.of(
        atHand
            .noFont()
            .<Outcome>map(
                missing ->
                    missing.isEmpty()
                        ? new Fine(Text.of("there are fonts for what the list has: {0}", scripts))
                        : new Remark(
                            Text.of(
                                "the list has titles that no font is there for: {0}",
                                String.join(", ", missing)),
                            Text.of(
                                "Install a font that has these scripts, and start the app again.")))
            .orElseGet(
                () ->
                    new CannotTell(
                        Text.of(
                            "the list has {0}; only the app knows whether there are fonts for it",
                            scripts))));
  }

  private static Outcome display(boolean there) {
    return there
        ? new Fine(Text.of("a second display is there"))
        : new Remark(
            Text.of("no second display is there for the client"),
            Text.of("Connect it and switch it on, if the client is to see frames on one."));
  }

  private static Outcome devices(int paired) {
    return new Fine(
        paired == 0
            ? Text.of("no phone or tablet is paired")
            : Text.counted(
                "{0} phone or tablet is paired", "{0} phones and tablets are paired", paired));
  }
}
