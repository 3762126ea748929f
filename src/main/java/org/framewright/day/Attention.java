package org.framewright.day;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.framewright.base.Durations;
import org.framewright.base.Text;
import org.framewright.frames.CameraClock;
import org.framewright.frames.ImplausibleClock;
import org.framewright.frames.SlateDoubt;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.SlateSays;
import org.framewright.frames.Tally;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** Something that a person should look at. */
public sealed interface Attention {
  /** A setup is to be shot again. */
  record Pickup(Setup setup, Optional<String> reason) implements Attention {}

  /** A setup was dropped. */
  record Dropped(Setup setup, Optional<String> reason) implements Attention {}

  /** A setup got frames after its sign-off. */
  record Changed(Setup setup) implements Attention {}

  /**
   * A setup that was shot has no frame of some wanted views.
   *
   * @param views at least one
   */
  record ViewsMissing(Setup setup, List<View> views) implements Attention {
    public ViewsMissing {
      views = List.copyOf(views);
    }
  }

  /** Frames belong to no setup yet. */
  record Unassigned(int frames) implements Attention {}

  /** A slate contradicts what a person put on set. */
  record SlateInDoubt(SlateDoubt doubt) implements Attention {}

  /** A slate of another job, or one whose code the list does not have. */
  record SlateUnclear(SlateFrame slate) implements Attention {}

  /** Frames are not complete. */
  record Incomplete(int frames) implements Attention {}

  /** The clock of a body is off. */
  record ClockOff(CameraClock clock) implements Attention {}

  /** The times of a body's frames cannot be right. */
  record Implausible(ImplausibleClock clock) implements Attention {}

  /** All that there is: setups in the order of the list, then frames, then clocks. */
  static List<Attention> of(ShotList list, JobState state, Tally tally) {
    var attention = new ArrayList<Attention>();
    for (var setup : list.setups()) {
      var status = state.of(setup.code());
      switch (status.state()) {
        case PICKUP -> attention.add(new Pickup(setup, status.reason()));
        case DROPPED -> attention.add(new Dropped(setup, status.reason()));
        case SHOT, SIGNED_OFF -> {
          if (status.changedSinceSignOff()) {
            attention.add(new Changed(setup));
          }
          var missing = missing(setup, tally);
          if (!missing.isEmpty()) {
            attention.add(new ViewsMissing(setup, missing));
          }
        }
        case TO_SHOOT, ON_SET -> {}
      }
    }
    tally.slates().doubts().stream().map(SlateInDoubt::new).forEach(attention::add);
    tally.slates().frames().stream()
        .filter(slate -> !(slate.slate().says() instanceof SlateSays.OfSetup))
        .map(SlateUnclear::new)
        .forEach(attention::add);
    if (!tally.unassigned().isEmpty()) {
      attention.add(new Unassigned(tally.unassigned().size()));
    }
    if (!tally.incomplete().isEmpty()) {
      attention.add(new Incomplete(tally.incomplete().size()));
    }
    tally.cameras().stream().filter(CameraClock::isOff).map(ClockOff::new).forEach(attention::add);
    tally.implausible().stream().map(Implausible::new).forEach(attention::add);
    return List.copyOf(attention);
  }

  /** The wanted views without a frame; nothing is said where frames have no views at all. */
  private static List<View> missing(Setup setup, Tally tally) {
    var counted = tally.bySetup().get(setup.code());
    if (counted == null) {
      return List.of();
    }
    var have = new TreeMap<String, Integer>(String.CASE_INSENSITIVE_ORDER);
    have.putAll(counted.byView());
    if (have.keySet().stream().allMatch(String::isEmpty)) {
      return List.of();
    }
    return setup.views().stream().filter(view -> have.getOrDefault(view.code(), 0) == 0).toList();
  }

  /** A list of which nobody reads more. */
  int MOST_SAID = 100;

  /**
   * All of them in words, a sentence each.
   *
   * @param plain makes text of other people fit to be shown
   * @param view says what a view's code stands for
   */
  static List<Text> said(
      List<Attention> attention, UnaryOperator<String> plain, UnaryOperator<String> view) {
    return attention.stream().flatMap(one -> one.said(plain, view).stream()).toList();
  }

  /** The first of very many, and how many more there are. */
  static List<Text> shortened(List<Text> said) {
    if (said.size() <= MOST_SAID) {
      return List.copyOf(said);
    }
    var first = new ArrayList<>(said.subList(0, MOST_SAID));
    first.add(Text.of("and {0} more", said.size() - MOST_SAID));
    return List.copyOf(first);
  }

  /** In words; what lacks several views is a sentence for each. */
  default List<Text> said(UnaryOperator<String> plain, UnaryOperator<String> view) {
    return switch (this) {
      case Pickup(var setup, var reason) ->
          List.of(
              reason.isPresent()
                  ? Text.of(
                      "{0} is to be shot again: {1}",
                      plain.apply(setup.code()), plain.apply(reason.get()))
                  : Text.of("{0} is to be shot again", plain.apply(setup.code())));
      case Dropped(var setup, var reason) ->
          List.of(
              reason.isPresent()
                  ? Text.of(
                      "{0} was dropped: {1}", plain.apply(setup.code()), plain.apply(reason.get()))
                  : Text.of("{0} was dropped", plain.apply(setup.code())));
      case Changed(var setup) ->
          List.of(Text.of("{0} got frames after its sign-off", plain.apply(setup.code())));
      case ViewsMissing(var setup, var views) ->
          views.stream()
              .map(
                  one ->
                      Text.of(
                          "{0} has no frame of the view {1}",
                          plain.apply(setup.code()), plain.apply(view.apply(one.code()))))
              .toList();
      case Unassigned(int frames) ->
          List.of(
              Text.counted(
                  "{0} frame belongs to no setup yet",
                  "{0} frames belong to no setup yet", frames));
      case SlateInDoubt(var doubt) -> List.of(doubt.said(plain));
      case SlateUnclear(var slate) ->
          List.of(slate.slate().says().wrong(slate.frame().stem(), plain));
      case Incomplete(int frames) ->
          List.of(Text.counted("{0} frame is not whole", "{0} frames are not whole", frames));
      case ClockOff(var clock) -> List.of(said(clock, plain));
      case Implausible(var clock) ->
          List.of(
              Text.counted(
                  "the time of {0} frame of {1} cannot be right",
                  "the times of {0} frames of {1} cannot be right",
                  clock.frames(),
                  clock.camera().isPresent()
                      ? plain.apply(clock.camera().get().model())
                      : Text.of("an unknown body")));
    };
  }

  private static Text said(CameraClock clock, UnaryOperator<String> plain) {
    double toAdd = clock.offsetSeconds().orElseThrow();
    var off =
        clock.wholeHours().isPresent()
            ? Text.of("{0} h", Math.abs(clock.wholeHours().getAsInt()))
            : Durations.said(Duration.ofSeconds(Math.round(Math.abs(toAdd))));
    var body = plain.apply(clock.camera().model());
    return toAdd < 0
        ? Text.of("the clock of {0} is {1} fast", body, off)
        : Text.of("the clock of {0} is {1} slow", body, off);
  }
}
