package org.framewright.studio;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblemException;
import org.framewright.base.OwnFolder;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;

/**
 * The store that a person's computer goes by, its password, and the jobs of this computer that are
 * kept in it: a file in a folder of the user's settings that nobody else may look into.
 */
public final class StudioSettings {
  /** The variable that may hold the password. */
  public static final String PASSWORD = "FRAMEWRIGHT_STORE_PASSWORD";

  private static final int MOST = 1 << 20;
  private static final JsonMapper JSON = new JsonMapper();

  private final Path file;

  /** What is kept. The password is in no text of it. */
  public static final class Kept {
    private final StoreAddress store;
    private final String password;
    private final List<Path> jobs;

    private Kept(StoreAddress store, String password, List<Path> jobs) {
      this.store = store;
      this.password = password;
      this.jobs = List.copyOf(jobs);
    }

    public StoreAddress store() {
      return store;
    }

    String password() {
      return password;
    }

    /** The folders of the jobs that this computer keeps in the store. */
    public List<Path> jobs() {
      return jobs;
    }

    @Override
    public String toString() {
      return store + " with " + jobs.size() + " jobs";
    }
  }

  /**
   * @param settings the folder of the user's settings
   */
  public StudioSettings(Path settings) {
    this.file = settings.resolve("studio").resolve("store.json");
  }

  public Path file() {
    return file;
  }

  /** What is kept; nothing where no store was given yet. */
  public Optional<Kept> read() throws IOException {
    byte[] bytes;
    try {
      bytes = SmallFiles.read(file, MOST);
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
    try {
      var json = JSON.readTree(bytes);
      var jobs = new ArrayList<Path>();
      for (var job : json.path("jobs")) {
        jobs.add(Path.of(job.asText()));
      }
      return Optional.of(
          new Kept(
              StoreAddress.parse(json.path("store").asText()),
              json.path("password").asText(),
              jobs));
    } catch (JsonProcessingException | InvalidPathException | StoreException e) {
      // Without the cause, whose text may have a piece of the file in it.
      throw new FileProblemException(
          new Problem(
              "the settings of the store cannot be read",
              file.toString(),
              "Move this file away, and give the store again: framewright studio --store URL"));
    }
  }

  /** Keeps a store; the jobs stay. */
  public void keep(StoreAddress store, String password) throws IOException {
    List<Path> jobs;
    try {
      jobs = read().map(Kept::jobs).orElse(List.of());
    } catch (FileProblemException e) {
      jobs = List.of();
    }
    write(store, password, jobs);
  }

  /** Keeps that a job of this computer is in the store. */
  public void add(Kept kept, Path job) throws IOException {
    if (!kept.jobs().contains(job)) {
      var jobs = new ArrayList<>(kept.jobs());
      jobs.add(job);
      write(kept.store(), kept.password(), jobs);
    }
  }

  private void write(StoreAddress store, String password, List<Path> jobs) throws IOException {
    var json = JSON.createObjectNode();
    json.put("store", store.url());
    json.put("password", password);
    var list = json.putArray("jobs");
    jobs.forEach(job -> list.add(job.toString()));
    OwnFolder.createPrivate(file.getParent());
    DurableFiles.replace(file, JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(json));
  }
}
