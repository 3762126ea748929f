package org.framewright.report;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.framewright.base.Durations;
import org.framewright.base.Text;
import org.framewright.shotlist.Setup;

/** What somebody should look at before the job goes on, a sentence each. */
final class LookAt {
  /** A page has room for some; of a list that lacks a view everywhere nobody reads more. */
  private static final int MOST = 100;

  private LookAt() {}

  static List<Text> of(JobFacts facts) {
    var look = new ArrayList<Text>();
    var state = facts.standing().state();
    var tally = facts.standing().tally();
    for (var setup : facts.setups()) {
      var status = state.of(setup.code());
      var code = Html.line(setup.code());
      switch (status.state()) {
        case PICKUP ->
            look.add(
                status.reason().isPresent()
                    ? Text.of(
                        "{0} is to be shot again: {1}", code, Html.line(status.reason().get()))
                    : Text.of("{0} is to be shot again", code));
        case DROPPED ->
            look.add(
                status.reason().isPresent()
                    ? Text.of("{0} was dropped: {1}", code, Html.line(status.reason().get()))
                    : Text.of("{0} was dropped", code));
        case SHOT, SIGNED_OFF -> {
          if (status.changedSinceSignOff()) {
            look.add(Text.of("{0} got frames after its sign-off", code));
          }
          missingViews(facts, setup, look);
        }
        case TO_SHOOT, ON_SET -> {}
      }
    }
    if (!tally.unassigned().isEmpty()) {
      look.add(
          Text.counted(
              "{0} frame belongs to no setup yet",
              "{0} frames belong to no setup yet", tally.unassigned().size()));
    }
    if (!tally.incomplete().isEmpty()) {
      look.add(
          Text.counted(
              "{0} frame is not whole", "{0} frames are not whole", tally.incomplete().size()));
    }
    for (var clock : tally.cameras()) {
      if (clock.isOff()) {
        double toAdd = clock.offsetSeconds().orElseThrow();
        var off =
            clock.wholeHours().isPresent()
                ? Text.of("{0} h", Math.abs(clock.wholeHours().getAsInt()))
                : Durations.said(Duration.ofSeconds(Math.round(Math.abs(toAdd))));
        var body = Html.line(clock.camera().model());
        look.add(
            toAdd < 0
                ? Text.of("the clock of {0} is {1} fast", body, off)
                : Text.of("the clock of {0} is {1} slow", body, off));
      }
    }
    for (var clock : tally.implausible()) {
      look.add(
          Text.counted(
              "the time of {0} frame of {1} cannot be right",
              "the times of {0} frames of {1} cannot be right",
              clock.frames(),
              clock.camera().isPresent()
                  ? Html.line(clock.camera().get().model())
                  : Text.of("an unknown body")));
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

  private static void missingViews(JobFacts facts, Setup setup, List<Text> look) {
    var counted = facts.standing().tally().bySetup().get(setup.code());
    if (counted == null) {
      return;
    }
    var have = new TreeMap<String, Integer>(String.CASE_INSENSITIVE_ORDER);
    have.putAll(counted.byView());
    if (have.keySet().stream().allMatch(String::isEmpty)) {
      return;
    }
    for (var view : setup.views()) {
      if (have.getOrDefault(view.code(), 0) == 0) {
        look.add(
            Text.of(
                "{0} has no frame of the view {1}",
                Html.line(setup.code()), Html.line(facts.job().viewLabel(view.code()))));
      }
    }
  }
}
