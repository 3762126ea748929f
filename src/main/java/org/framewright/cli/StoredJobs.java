package org.framewright.cli;

import java.io.IOException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.framewright.base.FileProblems;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Station;
import org.framewright.studio.OwnSet;
import org.framewright.studio.Store;
import org.framewright.studio.StoreException;
import org.framewright.studio.StudioSettings;

/** Tells anew what the store is told of each of its jobs. */
record StoredJobs(Store store, StudioSettings.Kept kept, Output output) {
  private static final FrameScan NO_FRAMES = new FrameScan(List.of(), 0, List.of());

  /** What is told of an open job. */
  @FunctionalInterface
  interface Telling {
    void tell(Store store, Job job, FrameScan scan) throws IOException;
  }

  /**
   * All jobs: from the folders of this computer, and those of others from their events.
   *
   * @return whether all of them could be opened
   */
  ExitStatus tell(Telling telling) throws IOException {
    var clock = Clock.system(ZoneId.systemDefault());
    var done = new HashSet<UUID>();
    boolean whole = true;
    for (var folder : kept.jobs()) {
      try {
        var job = Job.open(folder, clock);
        if (store.has(OwnSet.id(job))) {
          telling.tell(store, job, job.scan());
          done.add(OwnSet.id(job));
        }
      } catch (StoreException e) {
        throw e;
      } catch (JobException e) {
        whole = note(e.problem().sentence());
      } catch (IOException e) {
        whole = note(FileProblems.of(e).sentence());
      }
    }
    for (var stored : store.all()) {
      if (!done.contains(stored.id())) {
        try {
          fromStore(stored, telling, clock);
          done.add(stored.id());
        } catch (JobException e) {
          whole = note(e.problem().sentence());
        } catch (CommandFailure e) {
          whole = note(e.problem().sentence());
        }
      }
    }
    if (output.json()) {
      output.write(Map.of("jobs", done.size()));
    } else {
      output.out().println("Jobs told anew: " + done.size());
    }
    return whole ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON;
  }

  private boolean note(String line) {
    output.err().println("Note: " + line);
    return false;
  }

  /** Of a job whose folder is not here nobody here knows the frames. */
  private void fromStore(Store.Kept stored, Telling telling, Clock clock)
      throws IOException, JobException, CommandFailure {
    var convention = StudioBringCommand.convention(stored);
    var job = Job.stored(convention, store.logs(stored.id()), clock, Station.here());
    telling.tell(store, job, NO_FRAMES);
  }
}
