package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.naming.Convention;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/** An invented set: a job of its own, on which ticks are played. */
final class TrialSet {
  /** What becomes of a set that is not like the others. */
  enum Story {
    /** Setups are shot and signed off, one after the other. */
    USUAL,
    /** Nobody signs off. */
    WAITS,
    /** Nothing is heard of it. */
    SILENT,
    /** A setup was dropped. */
    TROUBLE,
    /** A setup is to be shot again. */
    PICKUP
  }

  private static final int SETUPS = 24;
  private static final String ASSISTANT = "Timo";
  private static final String CLIENT = "Odette";
  private static final String[] GARMENTS = {
    "Wool coat", "Rain cape", "Linen shirt", "Pleated skirt", "Knitted vest", "Felt hat"
  };
  private static final String CONVENTION =
      """
      convention: Trial
      about: For invented sets.
      fields:
        set:   {type: number, label: Set, digits: 2, from: 1}
        setup: {type: number, label: Look, digits: 3, from: 1}
        take:  {type: counter, label: Frame, digits: 4, restarts: setup}
      names:
        job:   "set_{set}"
        frame: "set_{set}_{setup}_{take}"
      folders:
        frames: frames
      """;

  private final Job job;
  private final Clock clock;
  private final Station station;
  private final Story story;

  private TrialSet(Job job, Clock clock, Station station, Story story) {
    this.job = job;
    this.clock = clock;
    this.station = station;
    this.story = story;
  }

  /**
   * Makes a set that was worked on until now.
   *
   * @param parent where its job folder is made
   * @param number from 1 to 99; no two sets of a store have one
   */
  static TrialSet begin(Path parent, int number, Story story, Clock now)
      throws IOException, JobException {
    int done = 3 + 5 * number % 9;
    var before = Duration.ofMinutes(11L * done).plusSeconds(number);
    var clock = new TrialClock(now, before);
    var station = new Station("set-" + number);
    var job = start(parent, number, clock, station);
    job.importList(list(number));
    for (int setup = 1; setup <= done; setup++) {
      job.mark(code(setup), SetupState.ON_SET, MarkDetails.by(ASSISTANT));
      clock.pass(Duration.ofMinutes(9));
      job.mark(code(setup), SetupState.SHOT, MarkDetails.by(ASSISTANT));
      clock.pass(Duration.ofMinutes(1));
      end(job, setup, setup == done ? story : Story.USUAL);
      clock.pass(Duration.ofMinutes(1));
    }
    clock.pass(before);
    return new TrialSet(job, clock, station, story);
  }

  private static void end(Job job, int setup, Story story) throws IOException, JobException {
    switch (story) {
      case USUAL, SILENT -> job.mark(code(setup), SetupState.SIGNED_OFF, MarkDetails.by(CLIENT));
      case WAITS -> {}
      case TROUBLE ->
          job.mark(
              code(setup),
              SetupState.DROPPED,
              MarkDetails.by(ASSISTANT).andReason("the sample is torn"));
      case PICKUP ->
          job.mark(
              code(setup),
              SetupState.PICKUP,
              MarkDetails.by(CLIENT).andReason("creases at the back"));
    }
  }

  private static Job start(Path parent, int number, Clock clock, Station station)
      throws IOException, JobException {
    var values = new LinkedHashMap<String, String>();
    values.put("set", String.valueOf(number));
    return switch (Convention.parse(CONVENTION, "trial")) {
      case Convention.Parsed.Sound sound ->
          switch (Job.start(sound.convention(), parent, values, clock, station)) {
            case Started.Opened opened -> opened.job();
            case Started.Refused refused -> throw new IllegalStateException("" + refused);
          };
      case Convention.Parsed.Faulty faulty -> throw new IllegalStateException("" + faulty);
    };
  }

  private static ShotList list(int number) {
    return new ShotList(
        IntStream.rangeClosed(1, SETUPS)
            .mapToObj(setup -> new Setup(code(setup), GARMENTS[(setup + number) % GARMENTS.length]))
            .toList());
  }

  private static String code(int setup) {
    return String.format(Locale.ROOT, "%03d", setup);
  }

  /** The set as its computer keeps it in a store. */
  OwnSet add(Store store) throws IOException, JobException {
    var hours = DayHours.usual(clock.getZone());
    return OwnSet.open(store, job.folder(), hours, clock, station);
  }

  Job job() {
    return job;
  }

  Story story() {
    return story;
  }

  /**
   * The next tick: a setup goes on set, is shot, is signed off, then the next one.
   *
   * @param open the job, as whoever plays has it open
   * @return whether there was one left
   */
  boolean play(Job open) throws IOException, JobException {
    var onSet = open.state().onSet();
    if (onSet.isPresent()) {
      open.mark(onSet.get().setup(), SetupState.SHOT, MarkDetails.by(ASSISTANT));
      return true;
    }
    var shot = story == Story.WAITS ? Optional.<String>empty() : first(open, SetupState.SHOT);
    if (shot.isPresent()) {
      open.mark(shot.get(), SetupState.SIGNED_OFF, MarkDetails.by(CLIENT));
      return true;
    }
    var next = first(open, SetupState.TO_SHOOT);
    if (next.isPresent()) {
      open.mark(next.get(), SetupState.ON_SET, MarkDetails.by(ASSISTANT));
    }
    return next.isPresent();
  }

  private static Optional<String> first(Job open, SetupState state) {
    return open.shotList().setups().stream()
        .map(Setup::code)
        .filter(code -> open.state().of(code).state() == state)
        .findFirst();
  }
}
