package org.framewright.copies;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.copies.device.ChangedFileException;
import org.framewright.copies.device.Device;
import org.framewright.copies.device.MountIdentity;
import org.framewright.copies.device.Volumes;
import org.framewright.job.CopyRecord;
import org.framewright.job.Job;
import org.framewright.mhl.HashKind;
import org.framewright.mhl.MhlHistory;
import org.framewright.mhl.RunningHashes;

/**
 * Copies a folder to one or more places so that each copy can be trusted: each file is read once
 * and written to all targets under a temporary name, flushed, read back from the disk, compared,
 * and only then given its name, which never replaces anything.
 */
public final class Copier {
  private static final int TRIES = 3;

  /** In MiB, within one file. */
  private static final int BETWEEN_TOLD = 16;

  private static final int MOST_UNREADABLE_IN_A_ROW = 3;

  private final Volumes volumes;
  private final boolean mhl;

  /** A copier that reads by these volumes. */
  public Copier(Volumes volumes) {
    this(volumes, false);
  }

  private Copier(Volumes volumes, boolean mhl) {
    this.volumes = volumes;
    this.mhl = mhl;
  }

  /** One that adds a generation to the ASC MHL at the top of each target too. */
  public Copier withMhl() {
    return new Copier(volumes, true);
  }

  /**
   * Copies what a plan says, besides what the job keeps of itself. The source is only read.
   *
   * @param progress told of MiB that were read of all that are to be; a cancel removes the file
   *     that is half-made, and keeps those that are whole
   * @throws IOException if the folder of a target does not exist, or the job cannot be written to
   */
  public CopyOutcome copy(Job job, CopyPlan asked, Progress progress) throws IOException {
    return copy(job, asked, progress, _ -> {});
  }

  /**
   * The same.
   *
   * @param told how far each target is, and how fast it takes and gives back what it was given
   */
  public CopyOutcome copy(Job job, CopyPlan asked, Progress progress, Consumer<PlaceProgress> told)
      throws IOException {
    var plan = asked.besides(job);
    var runs = CopyRuns.of(job);
    var problem = CopyTargets.problem(job, plan, volumes, runs);
    if (problem.isPresent()) {
      return new CopyOutcome.Refused(problem.get());
    }
    var remarks = new ArrayList<>(runs.clear(plan.to()));
    var room = CopyTargets.roomProblem(plan);
    if (room.isPresent()) {
      return new CopyOutcome.Refused(room.get());
    }
    try (var run = runs.begin(plan.to())) {
      return new Work(job, plan, progress, told, run, remarks).copy();
    }
  }

  /** One run. */
  private final class Work {
    private final Job job;
    private final CopyPlan plan;
    private final SameFolder source;
    private final Progress progress;
    private final Consumer<PlaceProgress> told;
    private final CopyRuns.Run run;
    private final List<Problem> remarks;
    private final List<Problem> unreadable = new ArrayList<>();
    private final List<CopyTarget> targets = new ArrayList<>();
    private final List<MountIdentity> mounts = new ArrayList<>();
    private final List<Path> madeTargets = new ArrayList<>();
    private final int total;
    private long done;
    private int inARow;

    Work(
        Job job,
        CopyPlan plan,
        Progress progress,
        Consumer<PlaceProgress> told,
        CopyRuns.Run run,
        List<Problem> remarks)
        throws IOException {
      this.job = job;
      this.plan = plan;
      this.source = SameFolder.of(plan.from());
      this.progress = progress;
      this.told = told;
      this.run = run;
      this.remarks = remarks;
      this.total = mebibytes(plan.bytes());
    }

    CopyOutcome copy() throws IOException {
      Optional<Problem> stopped = Optional.empty();
      boolean clean = false;
      try {
        prepare();
        stopped = copyAll();
        clean = true;
      } catch (CancellationException e) {
        stopped =
            Optional.of(
                new Problem(
                    "cancelled; what was copied so far is whole",
                    "Copy again to the same places: only the rest is copied."));
        clean = true;
      } finally {
        if (clean) {
          targets.forEach(CopyTarget::end);
        }
      }
      var at = job.now();
      targets.forEach(target -> target.close(at, job.station()));
      boolean left = targets.stream().anyMatch(CopyTarget::isLeft);
      for (var made : madeTargets.reversed()) {
        CopyTarget.removeIfEmpty(made);
      }
      var report =
          new CopyReport(
              plan.from(),
              plan.files().size(),
              targets.stream().map(CopyTarget::report).toList(),
              unreadable,
              remarks);
      record(report);
      if (!left) {
        run.forget();
      }
      return stopped
          .<CopyOutcome>map(why -> new CopyOutcome.Stopped(why, report))
          .orElse(new CopyOutcome.Done(report));
    }

    private void prepare() throws IOException {
      var from = volumes.deviceOf(plan.from());
      var devices = new ArrayList<Device>();
      for (var target : plan.to()) {
        if (!Files.exists(target)) {
          Files.createDirectory(target);
          madeTargets.add(target);
          // Else a power cut could take the folder away with all that is whole in it.
          DurableFiles.syncFolder(target.toAbsolutePath().getParent());
        }
        var device = volumes.deviceOf(target);
        if (Device.compare(from, device) == Device.Sameness.SAME) {
          remarks.add(
              new Problem(
                  Text.of("this place is on the disk that is copied from ({0})", device.label()),
                  target.toString(),
                  "Copy to another disk too: what breaks one breaks both."));
        }
        if (devices.stream().anyMatch(o -> Device.compare(o, device) == Device.Sameness.SAME)) {
          remarks.add(
              new Problem(
                  Text.of("this place is on the same disk as another target ({0})", device.label()),
                  target.toString(),
                  "Copy to another disk too: what breaks one breaks both."));
        }
        devices.add(device);
        mounts.add(volumes.mountOf(target));
        var opened = new CopyTarget(target.toRealPath(), volumes, run.batch(), device.label());
        if (mhl) {
          opened.addMhl(job.now(), hasMhl(plan));
        }
        targets.add(opened);
      }
    }

    /**
     * Goes through all files; while one is read, the one before it is read back. Says why it ended
     * before its time.
     */
    private Optional<Problem> copyAll() throws IOException {
      try (var threads = Executors.newCachedThreadPool()) {
        int number = 0;
        tell(0, 0);
        for (var file : plan.files()) {
          if (progress.cancelled()) {
            throw new CancellationException();
          }
          var stopped = copy(file, ++number, threads);
          if (stopped.isPresent()) {
            return stopped;
          }
          tell(number, done);
        }
        targets.forEach(CopyTarget::settled);
        tell(number, done);
        return Optional.empty();
      }
    }

    private void tell(int files, long bytes) {
      for (var target : targets) {
        if (!target.isGivenUp()) {
          told.accept(
              new PlaceProgress(
                  target.folder(),
                  files,
                  plan.files().size(),
                  bytes,
                  plan.bytes(),
                  CopyDescription.bytesPerSecond(target.report())));
        }
      }
    }

    private Optional<Problem> copy(CopyFile file, int number, Executor threads) throws IOException {
      var open = targets.stream().filter(target -> !target.isGivenUp()).toList();
      if (open.isEmpty()) {
        return Optional.of(
            new Problem(
                Text.of("no place is left that could be copied to"),
                targets.getFirst().report().failed().getLast().fix()));
      }
      open.forEach(target -> target.begin(file, number));
      var read = read(file, number, open);
      if (read.isEmpty()) {
        open.forEach(CopyTarget::discard);
        if (!source.isThere()) {
          return Optional.of(gone());
        }
        return inARow >= MOST_UNREADABLE_IN_A_ROW ? Optional.of(failing()) : Optional.empty();
      }
      open.forEach(target -> target.settle(read.get(), threads));
      return Optional.empty();
    }

    private Problem gone() {
      return new Problem(
          Text.of("what is copied, {0}, is not connected any more", plan.from()),
          "Connect it and copy again to the same places: only the rest is copied.");
    }

    private Problem failing() {
      return new Problem(
          Text.of("{0} files in a row could not be read", MOST_UNREADABLE_IN_A_ROW),
          plan.from().toString(),
          "Stop using this card; copy what matters first, to another disk, and take another card.");
    }

    /** Reads a file, and writes it to the targets that wait for it. */
    private Optional<CopySource> read(CopyFile file, int number, List<CopyTarget> open)
        throws IOException {
      var path = plan.from().resolve(file.path());
      long before = done;
      Problem last = null;
      boolean failing = false;
      for (int attempt = 0; attempt < TRIES; attempt++) {
        if (attempt > 0) {
          open.forEach(CopyTarget::rewind);
        }
        try {
          var hashes = new RunningHashes(kinds(file, open));
          var reading =
              volumes.read(
                  path,
                  piece -> {
                    hashes.update(piece);
                    open.forEach(one -> one.write(piece.duplicate()));
                  },
                  of(before, number - 1));
          done = before + reading.bytes();
          inARow = 0;
          return Optional.of(new CopySource(reading, hashes.values()));
        } catch (NoSuchFileException | AccessDeniedException e) {
          last = FileProblems.of(e);
          break;
        } catch (ChangedFileException e) {
          last = FileProblems.of(e);
        } catch (FileSystemException e) {
          last = FileProblems.of(e);
          failing = true;
        }
      }
      done = before + file.size();
      inARow = failing ? inARow + 1 : 0;
      unreadable.add(last.at(path.toString()));
      return Optional.empty();
    }

    private Progress of(long before, int number) {
      return new Progress() {
        @Override
        public void step(int read, int ofThis) {
          progress.step(Math.min(total, mebibytes(before) + read), total);
          if (read > 0 && read % BETWEEN_TOLD == 0) {
            tell(number, before + ((long) read << 20));
          }
        }

        @Override
        public boolean cancelled() {
          return progress.cancelled();
        }
      };
    }

    private void record(CopyReport report) throws IOException {
      if (targets.stream().noneMatch(target -> target.report().verified() > 0)) {
        return;
      }
      var to = new ArrayList<CopyRecord.Target>();
      for (int i = 0; i < report.targets().size(); i++) {
        var target = report.targets().get(i);
        var identity = mounts.get(i);
        to.add(
            new CopyRecord.Target(
                target.folder().toString(),
                target.device(),
                identity.volume(),
                identity.mount(),
                identity.boot(),
                target.verified(),
                target.unsure()));
      }
      job.record(new CopyRecord(plan.from().toString(), report.files(), plan.bytes(), to));
    }
  }

  private static Set<HashKind> kinds(CopyFile file, List<CopyTarget> open) {
    var kinds = EnumSet.noneOf(HashKind.class);
    open.forEach(target -> kinds.addAll(target.kinds(file)));
    return kinds;
  }

  /** Whether what is copied brings an ASC MHL along, which a further generation would change. */
  private static boolean hasMhl(CopyPlan plan) {
    return plan.files().stream().anyMatch(file -> file.path().startsWith(MhlHistory.FOLDER));
  }

  private static int mebibytes(long bytes) {
    return (int) Math.min(Integer.MAX_VALUE, (bytes + (1 << 20) - 1) >> 20);
  }
}
