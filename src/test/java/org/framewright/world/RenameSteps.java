package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.job.JobException;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.PlannedRename;
import org.framewright.renaming.Recovery;
import org.framewright.renaming.Renamer;
import org.framewright.renaming.Status;

/** Renames, what takes them back, and what brings them to an end. */
final class RenameSteps {
  private final Stage stage;

  /** Whether an earlier batch may not have come to its end. */
  private boolean openBatch;

  RenameSteps(Stage stage) {
    this.stage = stage;
  }

  enum Renaming {
    FORWARD,
    UNDO,
    REDO
  }

  void rename(Desk desk, Renaming kind) throws IOException, JobException {
    var before = stage.contents.of(stage.framesFolder());
    var planned = new TreeMap<String, String>();
    var outcome = new Outcome[1];
    if (openBatch && stage.trouble == null) {
      recover(desk);
      openBatch = false;
    }
    stage.amidRenames = true;
    var end =
        stage.act(
            desk,
            List.of(),
            false,
            job -> {
              job.refresh();
              var renamer = Renamer.in(job.folder(), desk.clock);
              if (kind == Renaming.FORWARD) {
                var names = job.frameNames(job.scan());
                names.leftOut().forEach(left -> Stage.told(new Problem(left.why(), left.remedy())));
                var plan = renamer.plan(names.requests());
                for (var one : plan.renames()) {
                  if (one.status() == Status.READY) {
                    planned.put(inFrames(one.from()), inFrames(one.to()));
                  }
                }
                outcome[0] = renamer.apply(plan, Progress.NONE);
              } else {
                var batch = kind == Renaming.UNDO ? renamer.nextUndo() : renamer.nextRedo();
                if (batch.isPresent()) {
                  for (var one : renamer.renames(batch.get().id())) {
                    planned.put(inFrames(one.to()), inFrames(one.from()));
                  }
                  outcome[0] = renamer.undo(batch.get().id(), Progress.NONE);
                }
              }
            });
    stage.amidRenames = false;
    openBatch |= stage.trouble != null;
    var after = stage.contents.of(stage.framesFolder());
    boolean halted = outcome[0] instanceof Outcome.Halted;
    if (end == Stage.End.DIED || end == Stage.End.FAILED || halted) {
      recover(desk);
      after = stage.contents.of(stage.framesFolder());
      var whole = renamed(before, planned);
      if (kind == Renaming.FORWARD) {
        Wrong.unless(
            after.equals(before) || after.equals(whole),
            "after the recovery the names are neither old nor new: "
                + differences(before, whole, after));
      } else {
        Wrong.unlessSame(sorted(after), sorted(before), "what is in the frames");
      }
      stage.comparing.check(desk);
      return;
    }
    stage.comparing.check(desk);
    switch (outcome[0]) {
      case null -> Wrong.unlessSame(after, before, "the names");
      case Outcome.Applied applied -> {
        var done = new TreeMap<String, String>();
        for (var one : applied.renames()) {
          if (one.status() == Status.DONE) {
            done.put(inFrames(one.from()), inFrames(one.to()));
          }
          toldOf(one);
        }
        Wrong.unlessSame(after, renamed(before, done), "the names after " + kind);
        if (kind == Renaming.FORWARD) {
          Wrong.unlessSame(done, planned, "what was renamed");
          named(desk);
        }
      }
      case Outcome.Refused(var problem) -> {
        Stage.told(problem);
        Wrong.unlessSame(after, before, "the names after a refusal");
        Wrong.unless(stage.trouble != null, "the renames were refused: " + problem.sentences());
      }
      case Outcome.RolledBack back -> {
        Stage.told(back.problem());
        Wrong.unlessSame(after, before, "the names after it was rolled back");
        Wrong.unless(stage.trouble != null, "the renames were rolled back: " + back.why());
      }
      case Outcome.Nothing _, Outcome.Cancelled _ ->
          Wrong.unlessSame(after, before, "the names after nothing");
      case Outcome.Halted _ -> throw new AssertionError();
    }
  }

  private static void toldOf(PlannedRename one) {
    if (one.status() == Status.BLOCKED || one.status() == Status.SKIPPED) {
      Stage.told(new Problem(one.said(), one.fix()));
    }
  }

  private static String inFrames(Path path) {
    return path.subpath(1, path.getNameCount()).toString();
  }

  private static Map<String, String> renamed(
      Map<String, String> before, Map<String, String> names) {
    var after = new TreeMap<String, String>();
    before.forEach((path, sha256) -> after.put(names.getOrDefault(path, path), sha256));
    return after;
  }

  private static List<String> sorted(Map<String, String> found) {
    return found.values().stream().sorted().toList();
  }

  private static String differences(
      Map<String, String> before, Map<String, String> whole, Map<String, String> after) {
    var odd = new ArrayList<String>();
    after.forEach(
        (path, sha256) -> {
          if (!sha256.equals(whole.get(path)) || !sha256.equals(before.get(path))) {
            odd.add(
                path
                    + (sha256.equals(whole.get(path))
                        ? " new"
                        : sha256.equals(before.get(path)) ? " old" : " neither"));
          }
        });
    return odd.toString();
  }

  private void recover(Desk desk) throws IOException, JobException {
    var job = desk.open();
    var renamer = Renamer.in(job.folder(), desk.clock);
    for (int i = 0; i < 10; i++) {
      switch (renamer.recover()) {
        case Recovery.Nothing _ -> {
          return;
        }
        case Recovery.RolledBack _, Recovery.Finished _ -> {}
        case Recovery.Stuck(var batch, var files) ->
            throw new Wrong("the recovery of " + batch + " is stuck: " + files);
        case Recovery.Refused(var problem)
            when Files.deleteIfExists(
                stage.real(stage.main).resolve(".framewright/renames/lock.owner")) ->
            Stage.told(problem);
        case Recovery.Refused(var problem) ->
            throw new Wrong("the recovery was refused: " + problem.sentences());
      }
    }
    throw new Wrong("the recovery does not end");
  }

  /** After a rename each frame that has a place has a name that says so, and no two share one. */
  private void named(Desk desk) throws IOException, JobException {
    var model = stage.model(desk.folder());
    var stems = new HashMap<String, String>();
    var paths = stage.complete();
    stage
        .places
        .places(model)
        .forEach(
            (id, belongs) -> {
              var path = paths.get(id).getFirst();
              var read = Names.read(stage.start.template(), path);
              if (!belongs.clear() || belongs.key().isEmpty()) {
                return;
              }
              Wrong.unless(read.isPresent(), path + " has no name by the convention");
              Wrong.unlessSame(read.get().key(), belongs.key().get(), path + " says");
              if (stage.start.template() != 2) {
                Wrong.unlessSame(read.get().view(), belongs.view(), path + " says the view");
              }
              var other = stems.put(Names.stem(path).toLowerCase(Locale.ROOT), path);
              Wrong.unless(other == null, path + " has the name of " + other);
            });
  }
}
