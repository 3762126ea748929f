package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.OwnFolder;
import org.framewright.job.JobException;

/**
 * Many sets to look at: a store of its own on this computer with ten invented sets, all of it in
 * one temporary folder. The user's settings are neither read nor written. For one thread.
 */
public final class Trial implements AutoCloseable {
  private static final List<TrialSet.Story> STORIES =
      List.of(
          TrialSet.Story.WAITS,
          TrialSet.Story.USUAL,
          TrialSet.Story.TROUBLE,
          TrialSet.Story.USUAL,
          TrialSet.Story.SILENT,
          TrialSet.Story.USUAL,
          TrialSet.Story.PICKUP,
          TrialSet.Story.USUAL,
          TrialSet.Story.USUAL,
          TrialSet.Story.USUAL);

  private static final int MINUTES_OF_SILENCE = 25;

  private final ServerPrograms programs;
  private final Path folder;
  private final List<Played> played = new ArrayList<>();
  private TrialServer server;
  private Store store;
  private int next;

  private record Played(TrialSet story, OwnSet own) {}

  private Trial(ServerPrograms programs, Path folder) {
    this.programs = programs;
    this.folder = folder;
  }

  /**
   * Starts the server of an installed PostgreSQL on a database of its own, and ten sets.
   *
   * @param clock of which the sets' mornings are reckoned back
   * @throws StoreException if there is no PostgreSQL, or it does not run; nothing is left then
   */
  public static Trial begin(Clock clock) throws IOException, JobException {
    var programs = ServerPrograms.find(ServerPlaces.here());
    return begin(programs, Files.createTempDirectory("framewright-try-"), clock);
  }

  /**
   * @param folder an empty one, which is removed at the end
   */
  static Trial begin(ServerPrograms programs, Path folder, Clock clock)
      throws IOException, JobException {
    var trial = new Trial(programs, folder);
    try {
      trial.fill(clock);
      return trial;
    } catch (IOException | JobException | RuntimeException e) {
      try {
        trial.close();
      } catch (IOException more) {
        e.addSuppressed(more);
      }
      throw e;
    }
  }

  private void fill(Clock clock) throws IOException, JobException {
    server = TrialServer.begin(programs, folder);
    store = server.store();
    var parent = Files.createTempDirectory(folder, "sets");
    for (int i = 0; i < STORIES.size(); i++) {
      var set = TrialSet.begin(parent, i + 1, STORIES.get(i), clock);
      var own = set.add(store);
      own.follow();
      if (set.story() == TrialSet.Story.SILENT) {
        server.silence(own.id(), MINUTES_OF_SILENCE);
      } else {
        played.add(new Played(set, own));
      }
    }
  }

  /** The version of PostgreSQL and the folder of its programs, as a person reads it. */
  public String server() {
    return "PostgreSQL " + programs.version() + " in " + programs.folder();
  }

  /** Where all of it is. */
  public Path folder() {
    return folder;
  }

  /** All sets. */
  public Overview overview() throws IOException {
    return Overview.of(store);
  }

  /**
   * The next tick, on one set after the other.
   *
   * @return whether one was left to play
   */
  public boolean play() throws IOException, JobException {
    for (int tried = 0; tried < played.size(); tried++) {
      var set = played.get(next);
      next = (next + 1) % played.size();
      boolean isPlayed = set.story().play(set.own().job());
      set.own().follow();
      if (isPlayed) {
        return true;
      }
    }
    return false;
  }

  /** Ends the server, and removes all of it. */
  @Override
  public void close() throws IOException {
    try {
      if (store != null) {
        store.close();
      }
      if (server != null) {
        server.close();
      }
    } finally {
      OwnFolder.remove(folder);
    }
  }
}
