package org.framewright.live;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Tally;
import org.framewright.job.Comment;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.job.SetupMoves;
import org.framewright.job.Standing;
import org.framewright.shotlist.ShotList;

/**
 * The job at one moment.
 *
 * @param revision larger for a later picture
 * @param name the job folder's name
 * @param list the shot list
 * @param state where each setup stands
 * @param tally the frames counted
 * @param scan the frames themselves
 * @param latest the complete frames of each setup that came last, newest first, at most {@link
 *     #LATEST} of a setup
 * @param comments what people said of setups and frames, in the order in which they did
 * @param moves setups that went to other jobs or came from there
 * @param warnings what a person should know of the folder
 * @param at the job's time
 */
public record JobView(
    long revision,
    String name,
    ShotList list,
    JobState state,
    Tally tally,
    FrameScan scan,
    Map<String, List<Frame>> latest,
    List<Comment> comments,
    SetupMoves moves,
    List<Text> warnings,
    Instant at) {

  /** How many frames of a setup are at hand as its latest. */
  public static final int LATEST = 8;

  static JobView of(long revision, Job job, FrameScan scan) {
    var standing = job.standing(scan);
    var tally = standing.tally();
    var state = standing.state();
    return new JobView(
        revision,
        job.name(),
        job.shotList(),
        state,
        tally,
        scan,
        LatestFrames.of(scan, tally, state.arrivals()),
        job.comments(),
        job.moves(),
        job.told(),
        job.now());
  }

  /** Whether the job is still as in this picture, but for its frames and the time. */
  boolean isOf(Job job) {
    return stateOf(job).equals(state)
        && job.shotList().equals(list)
        && job.comments().equals(comments)
        && job.moves().equals(moves)
        && job.told().equals(warnings);
  }

  /** The job as it is now, with the frames as they were counted before. */
  JobView withListOf(long next, Job job) {
    return new JobView(
        next,
        job.name(),
        job.shotList(),
        stateOf(job),
        tally,
        scan,
        latest,
        job.comments(),
        job.moves(),
        job.told(),
        job.now());
  }

  private JobState stateOf(Job job) {
    return new Standing(tally, state).with(job.state()).state();
  }
}
