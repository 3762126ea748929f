package org.framewright.job;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Tally;
import org.framewright.naming.Convention;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/** A job, opened from its folder. Safe for several threads; what it hands out never changes. */
@SuppressWarnings("DoNotCallSuggester")
public final class Job {
  private Job() {}

  /** Makes the job's folder below {@code parent}, named by the convention's kind {@code job}. */
  public static Started start(
      Convention convention, Path parent, Map<String, String> values, Clock clock)
      throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /** The same, as a station of another name than this computer's. */
  public static Started start(
      Convention convention, Path parent, Map<String, String> values, Clock clock, Station station)
      throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /** Opens a job from its folder. */
  public static Job open(Path folder, Clock clock) throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /** The same, as a station of another name than this computer's. */
  public static Job open(Path folder, Clock clock, Station station)
      throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /** The job's folder, absolute. */
  public Path folder() {
    throw new UnsupportedOperationException();
  }

  public String name() {
    throw new UnsupportedOperationException();
  }

  public Path framesFolder() {
    throw new UnsupportedOperationException();
  }

  /** The folder of a role of the convention, absolute. */
  public Path folder(String role) {
    throw new UnsupportedOperationException();
  }

  public Convention convention() {
    throw new UnsupportedOperationException();
  }

  /** The values that the job was started with. */
  public SequencedMap<String, String> values() {
    throw new UnsupportedOperationException();
  }

  public ShotList shotList() {
    throw new UnsupportedOperationException();
  }

  public JobState state() {
    throw new UnsupportedOperationException();
  }

  /** What a person should know of this folder: a torn line, a clock that is off. */
  public List<String> warnings() {
    throw new UnsupportedOperationException();
  }

  /** The job's time: this station's clock, unless another station's was found to be ahead of it. */
  public Instant now() {
    throw new UnsupportedOperationException();
  }

  /** Reads what other stations wrote; true if there was anything. */
  public boolean refresh() throws IOException {
    throw new UnsupportedOperationException();
  }

  /** Ticks a setup; the tick is on the disk when this returns. */
  public JobState mark(String setup, SetupState state, MarkDetails details)
      throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /** The tick that {@link #takeBack} would take back. */
  public Optional<Tick> lastTick() {
    throw new UnsupportedOperationException();
  }

  /** Takes this station's last tick back. */
  public JobState takeBack() throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /** What importing this list would change. */
  public ListChange previewImport(ShotList list) throws IOException {
    throw new UnsupportedOperationException();
  }

  /** Imports a list; setups that were worked on stay. */
  public ListChange importList(ShotList list) throws IOException {
    throw new UnsupportedOperationException();
  }

  /** Imports only those lines of a list that were accepted. */
  public ListChange importList(ShotList list, Set<String> acceptedCodes) throws IOException {
    throw new UnsupportedOperationException();
  }

  /** Puts the setups in another order; codes left out keep their order behind the others. */
  public void reorder(List<String> codes) throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /**
   * Says that these frames lay there already when somebody began to watch, so that nobody knows
   * when they arrived. Not written to the log.
   */
  public void foundPresent(FrameScan scan) {
    throw new UnsupportedOperationException();
  }

  /** Records that the complete frames of this scan that are new arrived now. */
  public void recordArrivals(FrameScan scan) throws IOException {
    throw new UnsupportedOperationException();
  }

  /** Moves frames to a setup. */
  public JobState moveFrames(List<FrameId> frames, String setup, Optional<String> view, String by)
      throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /** Takes this station's last move of frames back. */
  public JobState takeBackMove() throws IOException, JobException {
    throw new UnsupportedOperationException();
  }

  /** Chooses frames for retouching, or chooses them no longer. */
  public JobState select(List<FrameId> frames, boolean selected, String by) throws IOException {
    throw new UnsupportedOperationException();
  }

  /** Scans the frames folder. */
  public FrameScan scan() throws IOException {
    throw new UnsupportedOperationException();
  }

  /** Scans and counts. */
  public Tally tally() throws IOException {
    throw new UnsupportedOperationException();
  }

  /** Counts; {@link #state} then knows which setups changed since their sign-off. */
  public Tally tally(FrameScan scan) {
    throw new UnsupportedOperationException();
  }

  /** The names that the frames of a scan are to have. */
  public FrameNames frameNames(FrameScan scan) {
    throw new UnsupportedOperationException();
  }
}
