package org.framewright.cli;

import java.util.LinkedHashMap;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SequencedMap;
import org.framewright.frames.SetupTally;
import org.framewright.frames.Tally;
import org.framewright.job.Job;
import org.framewright.job.Standing;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.View;

/** How commands describe one setup. */
final class SetupDescription {
  private SetupDescription() {}

  /** The contract's document; what was counted only where it was. */
  static SequencedMap<String, Object> document(Job job, Setup setup, Optional<Standing> standing) {
    var status = standing.map(Standing::state).orElse(job.state()).of(setup.code());
    var document = new LinkedHashMap<String, Object>();
    document.put("setup", setup.code());
    document.put("title", setup.title());
    document.put("views", setup.views().stream().map(View::code).toList());
    document.put("state", status.state().word());
    standing
        .map(Standing::tally)
        .ifPresent(
            counted -> {
              var frames = Optional.ofNullable(counted.bySetup().get(setup.code()));
              document.put("frames", frames.map(SetupTally::frames).orElse(0));
              document.put("missing", job.missing(setup, counted));
            });
    document.put("framesWanted", number(setup.wanted()));
    var wanted = new LinkedHashMap<String, Object>();
    setup.views().forEach(view -> wanted.put(view.code(), number(view.frames())));
    document.put("framesWantedByView", wanted);
    document.put("signedOffBy", status.signedOffBy().orElse(null));
    document.put("signedOffAt", status.signedOffAt().map(Object::toString).orElse(null));
    document.put("changedSinceSignOff", status.changedSinceSignOff());
    document.put("reason", status.reason().orElse(null));
    document.put(
        "comments",
        job.comments().stream()
            .filter(comment -> comment.isOf(setup))
            .map(CommentDescription::document)
            .toList());
    document.put("columns", setup.columns());
    return document;
  }

  private static Integer number(OptionalInt number) {
    return number.isPresent() ? Integer.valueOf(number.getAsInt()) : null;
  }

  /** The columns that an exported list adds to the client's. */
  static SequencedMap<String, String> columns(Setup setup, Standing standing) {
    var status = standing.state().of(setup.code());
    var columns = new LinkedHashMap<String, String>();
    columns.put("State", status.state().label());
    columns.put("Frames so far", "" + frames(setup, standing.tally()));
    columns.put("Signed off by", status.signedOffBy().orElse(""));
    columns.put("Signed off at", status.signedOffAt().map(Object::toString).orElse(""));
    columns.put("Changed since sign-off", status.changedSinceSignOff() ? "yes" : "");
    columns.put("Reason", status.reason().orElse(""));
    return columns;
  }

  static int frames(Setup setup, Tally tally) {
    var counted = tally.bySetup().get(setup.code());
    return counted == null ? 0 : counted.frames();
  }
}
