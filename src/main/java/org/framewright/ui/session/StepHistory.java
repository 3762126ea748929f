package org.framewright.ui.session;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.SlateWord;
import org.framewright.job.Undo;

/** The steps of this run, and how they are undone and done again. For one thread. */
final class StepHistory {
  /**
   * A step that was taken.
   *
   * @param undoing what is left to undo of it, the first to be undone first
   */
  private record Taken(Step step, Deque<Undo> undoing) {}

  private final Job job;

  /** The latest first. */
  private final Deque<Taken> taken = new ArrayDeque<>();

  /** What was undone and can be done again, the latest first. */
  private final Deque<Step> undone = new ArrayDeque<>();

  StepHistory(Job job) {
    this.job = job;
  }

  /** Takes a step; it is on the disk when this returns. */
  void take(Step step) throws IOException, JobException {
    make(step);
    undone.clear();
  }

  /**
   * Undoes the last step, or the last tick of this station where none was taken in this run.
   *
   * @return the step; nothing if it is not known
   */
  Optional<Step> undo() throws IOException, JobException {
    if (taken.isEmpty()) {
      job.takeBack();
      return Optional.empty();
    }
    var last = taken.peek();
    while (!last.undoing().isEmpty()) {
      last.undoing().element().run();
      last.undoing().remove();
    }
    taken.pop();
    undone.push(last.step());
    return Optional.of(last.step());
  }

  /** Does again what was undone last; nothing if there is none. */
  Optional<Step> redo() throws IOException, JobException {
    if (undone.isEmpty()) {
      return Optional.empty();
    }
    var step = undone.peek();
    make(step);
    undone.pop();
    return Optional.of(step);
  }

  private void make(Step step) throws IOException, JobException {
    switch (step) {
      case Step.Ticked ticked -> tick(ticked);
      case Step.Moved moved -> job.reorder(moved.codes()).ifPresent(undo -> keep(step, undo));
      case Step.Ordered(var codes) -> job.reorder(codes).ifPresent(undo -> keep(step, undo));
      case Step.Added added -> keep(step, job.addSetup(added.setup(), added.behind()));
      case Step.Changed changed ->
          job.changeSetup(changed.setup()).ifPresent(undo -> keep(step, undo));
      case Step.Selected selected -> select(selected);
      case Step.Rated(var frames, var rating, var by) ->
          job.rate(frames.ids(), rating, by).ifPresent(undo -> keep(step, undo));
      case Step.Placed(var frames, var place, var by) ->
          job.moveFrames(frames.ids(), place.setup(), place.view(), by)
              .ifPresent(undo -> keep(step, undo));
      case Step.Commented(var setup, var frames, var text, var by) ->
          keep(step, job.comment(setup, frames.ids(), text, by));
      case Step.SaidOfSlate(var frame, var word, var by) ->
          keep(step, job.saySlate(frame, word, by, job.scan()));
      case Step.Followed(var doubt, var by) -> {
        var follow = new SlateWord.Follow(Optional.empty());
        keep(step, job.saySlate(doubt.frame(), follow, by, job.scan()));
      }
    }
  }

  /** Where one of several ticks fails, those before it are a step. */
  private void tick(Step.Ticked ticked) throws IOException, JobException {
    var made = new ArrayList<Step.Mark>();
    try {
      for (var mark : ticked.marks()) {
        job.mark(mark.setup(), mark.state(), mark.details());
        made.add(mark);
      }
    } finally {
      if (!made.isEmpty()) {
        keep(
            new Step.Ticked(made),
            made.stream().map(_ -> (Undo) job::takeBack).toArray(Undo[]::new));
      }
    }
  }

  /** Where the second half fails, the first one is a step. */
  private void select(Step.Selected step) throws IOException {
    var undoing = new ArrayDeque<Undo>();
    try {
      job.select(step.not().ids(), false, step.by()).ifPresent(undoing::addFirst);
      job.select(step.chosen().ids(), true, step.by()).ifPresent(undoing::addFirst);
    } finally {
      if (!undoing.isEmpty()) {
        taken.push(new Taken(step, undoing));
      }
    }
  }

  private void keep(Step step, Undo... undoing) {
    taken.push(new Taken(step, new ArrayDeque<>(List.of(undoing))));
  }
}
