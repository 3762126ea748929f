package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Tally;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
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
  private final Extent extent;
  private final List<ExtraPaper> papers;

  private HandOff(Job job, FrameScan scan, Tally tally, Extent extent, List<ExtraPaper> papers) {
    this.papers = List.copyOf(papers);
    this.job = job;
    this.scan = scan;
    this.tally = tally;
    this.extent = extent;
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
    return new HandOff(job, scan, tally, Extent.ALL, List.of());
  }

  /** The same frames, of which only so much is handed off. */
  public HandOff within(Extent limit) {
    return new HandOff(job, scan, tally, limit, papers);
  }

  /** The same, with more papers in each package. */
  public HandOff enclosing(List<ExtraPaper> more) {
    return new HandOff(job, scan, tally, extent, more);
  }

  /** The frames that somebody rated this high or higher. */
  public HandOffPlan rated(int atLeast) throws IOException {
    return plan(Selection.rated(job, scan, atLeast));
  }

  /** The frames that were marked as selects in the job. */
  public HandOffPlan selects() throws IOException {
    return plan(Selection.selects(job, scan));
  }

  /** The frames with this label, a text that a sidecar or the picture has; letter by letter. */
  public HandOffPlan labelled(String label) throws IOException {
    return plan(Selection.labelled(scan, label.strip()));
  }

  /** All frames. */
  public HandOffPlan every() throws IOException {
    return plan(Selection.every(scan, tally));
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
    return plan(Selection.named(names));
  }

  private HandOffPlan plan(Selection chosen) throws IOException {
    return new SelectPlanner(job, scan, tally, extent).plan(chosen.within(extent, job, tally));
  }

  /**
   * Writes the package. What an earlier hand-off of this job left half-done is brought to an end
   * first. The same hand-off to the same place a second time writes nothing: it compares what is
   * there and says that it is delivered.
   *
   * @param target the package's folder; it must not exist
   * @param metadata what of the job's data goes in, and where
   * @param progress gets a step after each file
   */
  public Delivery deliver(
      HandOffPlan plan, Path target, MetadataOptions metadata, Progress progress) {
    return deliver(List.of(plan), target, metadata, progress).getFirst();
  }

  /** The same, and the package says nothing of its selects. */
  public Delivery deliver(HandOffPlan plan, Path target, Progress progress) {
    return deliver(plan, target, MetadataOptions.NONE, progress);
  }

  /**
   * Writes parts of a plan, a package each: {@code FOLDER-1}, {@code FOLDER-2}; only {@code FOLDER}
   * where there is one part. Before the first, the disk must have room for all that are not there
   * yet. One that is not delivered ends it; the same again goes on behind those that are.
   *
   * @param progress gets a step after each file, of all parts
   * @return how each ended, in order
   */
  public List<Delivery> deliver(
      List<HandOffPlan> parts, Path target, MetadataOptions metadata, Progress progress) {
    return DeliveryRun.run(
        job,
        scan,
        parts,
        folders(parts, target),
        new Retoucher(job, metadata.mode(), papers),
        metadata,
        progress);
  }

  /**
   * The room that parts of a plan need and have, a package each, of those that are not there yet.
   * Nothing is written.
   *
   * @param target as for {@link #deliver(List, Path, MetadataOptions, Progress)}
   */
  public Room room(List<HandOffPlan> parts, Path target, MetadataMode metadata) throws IOException {
    return DeliveryRun.room(parts, folders(parts, target), metadata, papers);
  }

  /** Why no package may lie there; empty where it may. Nothing is written. */
  public Optional<Problem> problemAt(Path target) throws IOException {
    return Target.of(target).problem(job);
  }

  /** Where the packages of parts lie. */
  static List<Path> folders(List<HandOffPlan> parts, Path target) {
    return IntStream.rangeClosed(1, parts.size())
        .mapToObj(number -> parts.size() == 1 ? target : numbered(target, number))
        .toList();
  }

  private static Path numbered(Path target, int number) {
    return target.resolveSibling(target.getFileName() + "-" + number);
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
