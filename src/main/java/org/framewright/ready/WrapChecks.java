package org.framewright.ready;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.ready.Outcome.CannotTell;
import org.framewright.ready.Outcome.Fine;
import org.framewright.ready.Outcome.Remark;
import org.framewright.ready.Outcome.Stops;
import org.framewright.shotlist.SetupState;

/** What is measured after the last frame: each check a function of the facts. */
final class WrapChecks {
  private WrapChecks() {}

  /** All of them, in the order in which a person looks after them. */
  static List<Measured> of(WrapFacts facts) {
    var all = new ArrayList<Measured>();
    all.add(new Measured(Topic.SETUPS, setups(facts)));
    all.add(new Measured(Topic.SIGN_OFFS, signOffs(facts)));
    all.add(new Measured(Topic.COPIES, copies(facts)));
    all.add(new Measured(Topic.CARDS, cards(facts)));
    all.add(new Measured(Topic.NAMES, names(facts)));
    for (var left : facts.halfWay()) {
      all.add(new Measured(Topic.LEFT_HALF_WAY, new Stops(left.said(), left.remedy())));
    }
    all.add(new Measured(Topic.REPORT, report(facts)));
    return List.copyOf(all);
  }

  private static int count(WrapFacts facts, SetupState state) {
    return facts.setups().getOrDefault(state, 0);
  }

  private static Outcome setups(WrapFacts facts) {
    int onSet = count(facts, SetupState.ON_SET);
    int open = count(facts, SetupState.TO_SHOOT) + onSet + count(facts, SetupState.PICKUP);
    if (open == 0) {
      return new Fine(Text.of("no setup of the list is open"));
    }
    var said =
        Text.of(
            "{0} to shoot, {1} on set, {2} to be shot again",
            count(facts, SetupState.TO_SHOOT), onSet, count(facts, SetupState.PICKUP));
    return new Remark(
        said,
        onSet > 0
            ? Text.of("Tick what is on set, and tell the client which setups are left.")
            : Text.of("Tell the client which setups are left, and when they are shot."));
  }

  private static Outcome signOffs(WrapFacts facts) {
    int shot = count(facts, SetupState.SHOT);
    return shot == 0
        ? new Fine(Text.of("every setup that was shot is signed off"))
        : new Remark(
            Text.counted(
                "{0} setup was shot and is not signed off",
                "{0} setups were shot and are not signed off", shot),
            Text.of("Show them to the client while the set still stands."));
  }

  private static Outcome copies(WrapFacts facts) {
    if (facts.frames() == 0) {
      return new Fine(Text.of("there are no frames to be copied"));
    }
    var copy = Text.of("Copy the job to another disk, then compare: framewright copies JOB PLACE.");
    if (facts.once().isEmpty()) {
      return new Stops(
          Text.counted(
              "no copies were compared, so the only known place of {0} frame is this disk",
              "no copies were compared, so the only known place of {0} frames is this disk",
              facts.frames()),
          copy);
    }
    var once = facts.once().get();
    int alone = once.once() + once.notCompared();
    return alone == 0
        ? new Fine(
            Text.counted(
                "{0} frame lies on two disks or more",
                "all {0} frames lie on two disks or more", once.frames()))
        : new Stops(
            Text.of(
                "{0} of {1} frames are in one place only, or came since copies were compared",
                alone, once.frames()),
            copy);
  }

  private static Outcome cards(WrapFacts facts) {
    var full = facts.cards().stream().filter(card -> !card.mayClear()).toList();
    if (facts.cards().isEmpty()) {
      return new CannotTell(Text.of("no card was asked about"));
    }
    return full.isEmpty()
        ? new Fine(
            Text.counted(
                "{0} card may be cleared", "{0} cards may be cleared", facts.cards().size()))
        : new Remark(
            Text.of(
                "not to be cleared yet: {0}",
                full.stream()
                    .map(card -> PlainText.line(card.name()))
                    .reduce((one, next) -> one + ", " + next)
                    .orElse("")),
            Text.of("Keep them apart from the empty ones until their frames lie on two disks."));
  }

  private static Outcome names(WrapFacts facts) {
    return facts.unnamed() == 0
        ? new Fine(Text.of("every frame has its name"))
        : new Remark(
            Text.counted(
                "{0} frame has not got its name yet",
                "{0} frames have not got their names yet", facts.unnamed()),
            Text.of("Give them their names: framewright rename JOB --preview."));
  }

  private static Outcome report(WrapFacts facts) {
    if (facts.report().isEmpty()) {
      return new CannotTell(Text.of("the convention has no folder for paper to look in"));
    }
    return facts.report().get()
        ? new Fine(Text.of("a report of today is in the folder for paper"))
        : new Remark(
            Text.of("no report of today is in the folder for paper"),
            Text.of("Write it: framewright report JOB --to FILE."));
  }
}
