package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Tally;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.naming.Reserved;

/**
 * Hands a job's selects to the retoucher. The frames are copied and never touched; the package
 * appears in its place whole or not at all.
 */
public final class HandOff {
  /** The kind of name that a select gets. */
  static final String SELECT = Reserved.SELECT;

  private final Job job;
  private final FrameScan scan;
  private final Tally tally;

  private HandOff(Job job, FrameScan scan, Tally tally) {
    this.job = job;
    this.scan = scan;
    this.tally = tally;
  }

  /**
   * A hand-off from the frames of a scan.
   *
   * @throws JobException where the job's convention has no names for selects
   */
  public static HandOff of(Job job, FrameScan scan, Tally tally) throws JobException {
    if (!job.convention().kinds().containsKey(SELECT)) {
      throw new JobException(
          Text.of("the convention of this job has no names of the kind \"select\""),
          job.folder().toString(),
          Text.of("Start the next job from a convention with a select under names."));
    }
    return new HandOff(job, scan, tally);
  }

  /** The frames that somebody rated this high or higher. */
  public HandOffPlan rated(int atLeast) throws IOException {
    return planner().plan(Selection.rated(job, scan, atLeast));
  }

  /** The frames that were marked as selects in the job. */
  public HandOffPlan selects() throws IOException {
    return planner().plan(Selection.selects(job, scan));
  }

  /**
   * Reads a client's list of the frames wanted, as people write one; see {@link
   * org.framewright.handoff.names}.
   *
   * @param file a text, the text of a mail, or a table in CSV
   * @throws JobException where the file is no text, or no list of this job's frames
   */
  public ClientNames names(Path file) throws IOException, JobException {
    return lists().read(file);
  }

  /** What reads clients' lists, one after the other, against the names that there are now. */
  public ClientListReader lists() throws IOException {
    return ClientListReader.of(job, scan);
  }

  /** The frames that a list names without a doubt. */
  public HandOffPlan named(ClientNames names) throws IOException {
    return planner().plan(Selection.named(names));
  }

  private SelectPlanner planner() throws IOException {
    return new SelectPlanner(job, scan, tally);
  }

  /**
   * Writes the package. What an earlier hand-off of this job left half-done is brought to an end
   * first. The same hand-off to the same place a second time writes nothing: it compares what is
   * there and says that it is delivered.
   *
   * @param target the package's folder; it must not exist
   * @param progress gets a step after each file
   */
  public Delivery deliver(HandOffPlan plan, Path target, Progress progress) {
    return DeliveryRun.run(job, plan, target, progress);
  }

  /**
   * The name that the first retouched version of a select has by the job's convention, without
   * ending; none where the convention has no such names.
   */
  public Optional<String> retouchedName(Select select) {
    return PackagePapers.retouched(job.convention(), select);
  }

  /** The number that the job's next hand-off gets. */
  public static int nextNumber(Job job) throws IOException {
    return HandOffRecords.of(job).read().nextNumber();
  }
}
