package org.framewright.job;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;
import org.framewright.base.DurableFiles;
import org.framewright.base.OwnFolder;
import org.framewright.base.Text;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.naming.Reserved;
import org.framewright.naming.Rule;
import org.framewright.naming.Severity;

/**
 * Starts a job. Its folder is built whole beside where it is to be, under a hidden name, and gets
 * its own name as the last step: whatever happens before leaves no job, whatever happens after
 * leaves a whole one.
 *
 * <p>A hidden file of the same name is locked meanwhile. What a killed start left is removed by the
 * next one in that folder, once no process holds the lock.
 */
final class JobStart {
  private static final Pattern DRAFT = Pattern.compile("\\.framewright-[0-9a-f]{12}");
  private static final String LOCK = ".lock";

  /** The convention's kind of name that a job folder has. */
  static final String JOB = Reserved.JOB;

  private JobStart() {}

  /** What bars a job with these values, or its name. */
  static Built check(Convention convention, Map<String, String> values) throws JobException {
    var faults =
        new ArrayList<>(
            convention.check(0).stream()
                .filter(finding -> finding.severity() == Severity.ERROR)
                .toList());
    values.keySet().stream()
        .filter(name -> !convention.fields().containsKey(name))
        .map(name -> unknown(name, convention))
        .forEach(faults::add);
    for (var kind : List.of(JOB, FrameFields.KIND)) {
      if (!convention.kinds().containsKey(kind)) {
        throw new JobException(
            Text.of("the convention has no names.{0}", kind),
            convention.source(),
            Text.of("Give it a pattern for {0}; see the conventions in templates.", kind));
      }
    }
    var built = convention.build(JOB, values);
    if (built instanceof Built.Refused refused) {
      faults.addAll(refused.findings());
    }
    for (var role : convention.folders().keySet()) {
      if (convention.buildFolder(role, values) instanceof Built.Refused refused) {
        refused.findings().stream().filter(fault -> !faults.contains(fault)).forEach(faults::add);
      }
    }
    return faults.isEmpty() ? built : new Built.Refused(faults);
  }

  private static Finding unknown(String field, Convention convention) {
    return new Finding(
        Rule.UNKNOWN_FIELD,
        Severity.ERROR,
        field,
        0,
        0,
        Text.of("the convention has no field \"{0}\"", field),
        Optional.empty(),
        Optional.of(
            Text.of("Its fields are {0}.", String.join(", ", convention.fields().keySet()))));
  }

  /**
   * Makes the folder, with the convention, the folders of its roles, and a log that begins with the
   * values.
   *
   * @return the job's folder
   * @throws JobException if there is a file or folder of that name already
   */
  static Path create(
      Convention convention,
      Path parent,
      String name,
      Map<String, String> values,
      Clock clock,
      Station station)
      throws IOException, JobException {
    return make(
        parent,
        name,
        draft ->
            new FileEventLog(lay(convention, draft, values), station, clock)
                .append(new Event.Began(new LinkedHashMap<>(values))));
  }

  /**
   * Makes the folder of a job that a store has, for a computer that has none of it: the convention,
   * the folders of its roles, and the logs as the store has them.
   *
   * @return the job's folder
   * @throws JobException if the store has no beginning of the job, or there is a file or folder of
   *     that name already
   */
  static Path bring(
      Convention convention, Path parent, NumberedLogs store, Clock clock, Station station)
      throws IOException, JobException {
    var values = values(new StoredEventLog(store, station, clock));
    return make(
        parent,
        name(convention, values),
        draft -> {
          lay(convention, draft, values);
          JobMirror.of(draft, clock, station, store).exchange();
        });
  }

  /** The name that a job of a store had when it began. */
  static String name(Convention convention, NumberedLogs store, Clock clock, Station station)
      throws IOException, JobException {
    return name(convention, values(new StoredEventLog(store, station, clock)));
  }

  private static SequencedMap<String, String> values(StoredEventLog log)
      throws IOException, JobException {
    return log.news().stream()
        .filter(entry -> entry.event() instanceof Event.Began)
        .min(Comparator.comparing(Entry::stamp))
        .map(entry -> ((Event.Began) entry.event()).values())
        .orElseThrow(
            () ->
                new JobException(
                    Text.of("the store does not have the beginning of this job"),
                    "",
                    Text.of(
                        "Exchange it with the store on the computer that has the job's"
                            + " folder: framewright studio.")));
  }

  private static String name(Convention convention, Map<String, String> values)
      throws JobException {
    if (check(convention, values) instanceof Built.Name name) {
      return name.text();
    }
    throw new JobException(
        Text.of("the convention that the store has does not fit the beginning of this job"),
        "",
        Text.of("Copy the job's folder from a computer that has it."));
  }

  /** Puts into a folder what it is to hold. */
  @FunctionalInterface
  private interface Filling {
    void fill(Path draft) throws IOException, JobException;
  }

  private static Path make(Path parent, String name, Filling filling)
      throws IOException, JobException {
    if (!Files.isDirectory(parent)) {
      throw new JobException(
          Text.of("there is no such folder"),
          parent.toString(),
          Text.of("Make it first, or give another one."));
    }
    var within = parent.toAbsolutePath().normalize();
    var folder = within.resolve(name);
    if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      throw taken(folder);
    }
    clearDrafts(within);
    var draft = within.resolve(".framewright-" + random());
    var lock = draft.resolveSibling(draft.getFileName() + LOCK);
    try (var channel =
        FileChannel.open(
            lock,
            StandardOpenOption.CREATE_NEW,
            StandardOpenOption.WRITE,
            LinkOption.NOFOLLOW_LINKS)) {
      hold(channel);
      try {
        filling.fill(draft);
        for (var made : foldersDeepestFirst(draft)) {
          DurableFiles.syncFolder(made);
        }
        place(draft, folder);
        DurableFiles.syncFolder(within);
      } catch (IOException | JobException | RuntimeException e) {
        // Once it has its name there is no draft, and the job stays.
        removeQuietly(draft, e);
        removeQuietly(lock, e);
        throw e;
      }
    }
    try {
      Files.deleteIfExists(lock);
    } catch (IOException e) {
      // The job is there; the next start in this folder removes the lock.
    }
    return folder;
  }

  private static JobException taken(Path folder) {
    return new JobException(
        Files.exists(new JobLayout(folder).convention())
            ? Text.of("this job exists already")
            : Text.of("something of this name is there already and is no job"),
        folder.toString(),
        Text.of("Open it, move it away, or give the job other values; nothing was changed."));
  }

  /** Makes all of a job but what its log says; returns the folder of its logs. */
  private static Path lay(Convention convention, Path draft, Map<String, String> values)
      throws IOException, JobException {
    var layout = new JobLayout(draft);
    var roles = RoleFolders.of(draft, convention, values).sequencedValues();
    Files.createDirectory(draft);
    for (var role : roles) {
      Files.createDirectories(role);
    }
    Files.createDirectory(layout.own());
    Files.createDirectory(layout.log());
    DurableFiles.writeFlushed(
        layout.convention(), convention.yaml().getBytes(StandardCharsets.UTF_8));
    return layout.log();
  }

  private static List<Path> foldersDeepestFirst(Path root) throws IOException {
    try (var files = Files.walk(root)) {
      return files.filter(Files::isDirectory).sorted(Comparator.reverseOrder()).toList();
    }
  }

  /**
   * Gives the draft its name. A folder takes the place of an empty one at most, which the system
   * sees to; where there is more, nothing is changed.
   */
  private static void place(Path draft, Path folder) throws IOException, JobException {
    try {
      Files.move(draft, folder, StandardCopyOption.ATOMIC_MOVE);
    } catch (FileAlreadyExistsException | DirectoryNotEmptyException e) {
      throw taken(folder);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(draft, folder);
    } catch (IOException e) {
      if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
        throw taken(folder);
      }
      throw e;
    }
  }

  private static void hold(FileChannel channel) {
    try {
      channel.tryLock();
    } catch (IOException e) {
      // No locks on this volume; what a kill leaves then stays until somebody removes it.
    }
  }

  /** Removes what killed starts left in a folder. */
  private static void clearDrafts(Path parent) {
    var locks = new ArrayList<Path>();
    try (var names = Files.newDirectoryStream(parent, ".framewright-*" + LOCK)) {
      names.forEach(locks::add);
    } catch (IOException | DirectoryIteratorException e) {
      return; // Whoever may not look here finds out when the job is made.
    }
    for (var lock : locks) {
      var name = lock.getFileName().toString();
      var draft = lock.resolveSibling(name.substring(0, name.length() - LOCK.length()));
      if (DRAFT.matcher(draft.getFileName().toString()).matches()
          && Files.isRegularFile(lock, LinkOption.NOFOLLOW_LINKS)) {
        clear(draft, lock);
      }
    }
  }

  private static void clear(Path draft, Path lock) {
    try (var channel =
        FileChannel.open(lock, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS)) {
      if (channel.tryLock() != null) {
        OwnFolder.remove(draft);
        Files.deleteIfExists(lock);
      }
    } catch (IOException | OverlappingFileLockException e) {
      // It is in use, or there are no locks here, or it is somebody else's.
    }
  }

  private static void removeQuietly(Path path, Exception cause) {
    try {
      OwnFolder.remove(path);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
  }

  private static String random() {
    var bytes = new byte[6];
    ThreadLocalRandom.current().nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }
}
