package org.framewright.ui.copies;

import java.util.List;
import org.framewright.base.Problem;
import org.framewright.copies.Compared;

/** What the page has to say. */
sealed interface Outcome {
  /**
   * Nothing was asked yet since the job was opened.
   *
   * @param answers the last ones, the newest first
   */
  record Before(List<Earlier> answers) implements Outcome {}

  /**
   * The last answer about a card, from the log.
   *
   * @param sentence when, by whom, how much of it, on what
   */
  record Earlier(Answer answer, String sentence) {}

  /**
   * A comparison.
   *
   * @param answers one a card, the worst first
   * @param summary how many of the job's frames are on one disk only
   */
  record Answered(Compared compared, List<CardAnswer> answers, String summary) implements Outcome {}

  /**
   * A copy.
   *
   * @param stopUsing whether the card fails
   * @param whole whether every file is on every target
   * @param what what became of it
   * @param remedy what to do; may be empty
   * @param targets what became of each target, a line each
   * @param problems what is wrong, by file
   */
  record Copied(
      boolean stopUsing,
      boolean whole,
      String what,
      String remedy,
      List<String> targets,
      List<Problem> problems)
      implements Outcome {}
}
