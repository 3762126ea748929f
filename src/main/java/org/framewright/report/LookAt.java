package org.framewright.report;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.framewright.base.Durations;
import org.framewright.base.Text;
import org.framewright.day.Attention;
import org.framewright.frames.CameraClock;
import org.framewright.shotlist.Setup;

/** What somebody should look at before the job goes on, a sentence each. */
public final class LookAt {
  /** A page has room for some; of a list that lacks a view everywhere nobody reads more. */
  private static final int MOST = 100;

  private LookAt() {}

  static List<Text> of(JobFacts facts) {
    var look = new ArrayList<Text>();
    var standing = facts.standing();
    for (var one : Attention.of(facts.job().shotList(), standing.state(), standing.tally())) {
      look.addAll(words(one, facts.job()::viewLabel));
    }
    if (!facts.summary().space().enough()) {
      look.add(Text.of("the disk does not hold the frames that are still planned"));
    }
    copies(facts, look);
    if (look.size() > MOST) {
      int more = look.size() - MOST;
      look.subList(MOST, look.size()).clear();
      look.add(Text.of("and {0} more", more));
    }
    return List.copyOf(look);
  }

  private static void copies(JobFacts facts, List<Text> look) {
    facts
        .once()
        .ifPresent(
            once -> {
              if (once.once() > 0) {
                look.add(
                    Text.counted(
                        "{0} frame is on one disk only",
                        "{0} frames are on one disk only", once.once()));
              }
              if (once.notCompared() > 0) {
                look.add(
                    Text.counted(
                        "{0} frame was not compared with its copies",
                        "{0} frames were not compared with their copies", once.notCompared()));
              }
            });
  }

  /**
   * One of them in words; of a setup that lacks views, a sentence each.
   *
   * @param viewLabel what a view's code means
   */
  public static List<Text> words(Attention one, UnaryOperator<String> viewLabel) {
    return switch (one) {
      case Attention.Pickup(var setup, var reason) ->
          List.of(
              reason.isPresent()
                  ? Text.of("{0} is to be shot again: {1}", code(setup), Html.line(reason.get()))
                  : Text.of("{0} is to be shot again", code(setup)));
      case Attention.Dropped(var setup, var reason) ->
          List.of(
              reason.isPresent()
                  ? Text.of("{0} was dropped: {1}", code(setup), Html.line(reason.get()))
                  : Text.of("{0} was dropped", code(setup)));
      case Attention.Changed(var setup) ->
          List.of(Text.of("{0} got frames after its sign-off", code(setup)));
      case Attention.ViewsMissing(var setup, var views) ->
          views.stream()
              .map(
                  view ->
                      Text.of(
                          "{0} has no frame of the view {1}",
                          code(setup), Html.line(viewLabel.apply(view.code()))))
              .toList();
      case Attention.Unassigned(int frames) ->
          List.of(
              Text.counted(
                  "{0} frame belongs to no setup yet",
                  "{0} frames belong to no setup yet", frames));
      case Attention.Incomplete(int frames) ->
          List.of(Text.counted("{0} frame is not whole", "{0} frames are not whole", frames));
      case Attention.ClockOff(var clock) -> List.of(clockOff(clock));
      case Attention.Implausible(var clock) ->
          List.of(
              Text.counted(
                  "the time of {0} frame of {1} cannot be right",
                  "the times of {0} frames of {1} cannot be right",
                  clock.frames(),
                  clock.camera().isPresent()
                      ? Html.line(clock.camera().get().model())
                      : Text.of("an unknown body")));
    };
  }

  private static String code(Setup setup) {
    return Html.line(setup.code());
  }

  private static Text clockOff(CameraClock clock) {
    double toAdd = clock.offsetSeconds().orElseThrow();
    var off =
        clock.wholeHours().isPresent()
            ? Text.of("{0} h", Math.abs(clock.wholeHours().getAsInt()))
            : Durations.said(Duration.ofSeconds(Math.round(Math.abs(toAdd))));
    var body = Html.line(clock.camera().model());
    return toAdd < 0
        ? Text.of("the clock of {0} is {1} fast", body, off)
        : Text.of("the clock of {0} is {1} slow", body, off);
  }
}
