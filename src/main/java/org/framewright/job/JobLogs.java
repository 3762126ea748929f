package org.framewright.job;

import java.time.Clock;

/** What kind of log a job is opened with. */
public final class JobLogs {
  @FunctionalInterface
  private interface Opening {
    EventLog open(JobLayout job, Station station, Clock clock);
  }

  private final boolean inFolder;
  private final Opening opening;

  private JobLogs(boolean inFolder, Opening opening) {
    this.inFolder = inFolder;
    this.opening = opening;
  }

  /** Logs in the job's folder, as every job has them. */
  public static JobLogs inFolder() {
    return new JobLogs(true, (job, station, clock) -> files(job, station, clock));
  }

  /** Logs in the job's folder, which a mirror keeps like those of a store. */
  static JobLogs mirrored(JobMirror mirror) {
    return new JobLogs(
        true, (job, station, clock) -> new MirroredEventLog(files(job, station, clock), mirror));
  }

  /** Logs in a store alone; of the job's folder only the convention is read. */
  public static JobLogs stored(NumberedLogs store) {
    return new JobLogs(false, (_, station, clock) -> new StoredEventLog(store, station, clock));
  }

  private static FileEventLog files(JobLayout job, Station station, Clock clock) {
    return new FileEventLog(job.log(), station, clock);
  }

  EventLog open(JobLayout job, Station station, Clock clock) throws JobException {
    if (inFolder) {
      job.requireLog();
    }
    return opening.open(job, station, clock);
  }
}
