package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameScan;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.job.Job;

/**
 * One hand-off, from the plan to the package in its place.
 *
 * <p>The order of writes is what makes a kill harmless: the record says that it is begun, and where
 * its draft is; the draft is written and flushed; the record says what the package holds and that
 * it is about to take its place; it takes its place by one rename; the draft's folder goes; the
 * record says that it is delivered.
 */
final class DeliveryRun {
  private static final int MOST_NUMBERS = 100;

  private final Job job;
  private final HandOffPlan plan;
  private final Target target;
  private final Addressee addressee;
  private final MetadataMode metadata;
  private final JobData data;
  private final Progress progress;
  private final HandOffRecords records;
  private final List<Problem> remarks = new ArrayList<>();
  private final List<Path> madeFolders = new ArrayList<>();
  private Leftovers leftovers = new Leftovers();

  private DeliveryRun(
      Job job,
      HandOffPlan plan,
      Target target,
      Addressee addressee,
      MetadataMode metadata,
      JobData data,
      Progress progress) {
    this.addressee = addressee;
    this.job = job;
    this.plan = plan;
    this.target = target;
    this.metadata = metadata;
    this.data = data;
    this.progress = progress;
    this.records = HandOffRecords.of(job);
  }

  /** The hand-off is over before its package took its place. */
  private static final class Stopped extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient Delivery outcome;

    Stopped(Delivery outcome) {
      super(outcome.toString(), null, false, false);
      this.outcome = outcome;
    }
  }

  /**
   * Writes parts of a plan, a package each. Before the first, the disk must have room for all that
   * are not there yet; one that is not delivered ends it.
   *
   * @return how each ended, in order
   */
  static List<Delivery> run(
      Job job,
      FrameScan scan,
      List<HandOffPlan> parts,
      List<Path> asked,
      Addressee addressee,
      MetadataOptions metadata,
      Progress progress) {
    var runs = new ArrayList<DeliveryRun>();
    int total = parts.stream().mapToInt(part -> ExtraPaper.steps(addressee.papers(), part)).sum();
    int before = 0;
    try {
      for (int i = 0; i < parts.size(); i++) {
        var part = parts.get(i);
        if (part.selects().isEmpty()) {
          return List.of(new Delivery.Refused(addressee.nothing(part), List.of()));
        }
        var target = Target.of(asked.get(i));
        var data = JobData.of(job, scan, part, addressee, metadata);
        var problem = target.problem(job, addressee.notIn()).or(data::problem);
        if (problem.isPresent()) {
          return List.of(new Delivery.Refused(problem.get(), List.of()));
        }
        runs.add(
            new DeliveryRun(
                job,
                part,
                target,
                addressee,
                metadata.mode(),
                data,
                behind(progress, before, total)));
        before += ExtraPaper.steps(addressee.papers(), part);
      }
      return held(job, runs);
    } catch (IOException e) {
      return List.of(new Delivery.Failed(FileProblems.of(e), List.of()));
    }
  }

  /** The progress of one piece of work among several. */
  private static Progress behind(Progress whole, int before, int total) {
    return new Progress() {
      @Override
      public void step(int done, int ofThis) {
        whole.step(before + done, total);
      }

      @Override
      public boolean cancelled() {
        return whole.cancelled();
      }
    };
  }

  /** One hand-off of a job at a time: the next one's number and what is left tell of this one. */
  private static List<Delivery> held(Job job, List<DeliveryRun> runs) throws IOException {
    var records = HandOffRecords.of(job);
    var held = records.hold();
    if (held.isEmpty()) {
      return List.of(
          new Delivery.Refused(
              new Problem(
                  "another hand-off of this job is being written",
                  job.folder().toString(),
                  "Wait until it has ended, then hand off again."),
              List.of()));
    }
    var first = runs.getFirst();
    var ended = new ArrayList<Delivery>();
    try (var _ = held.get()) {
      var unfinished = new Unfinished(job, records);
      try {
        first.finish(unfinished);
        var missing = runs.stream().filter(run -> !run.target.isTaken()).toList();
        unfinished.leftovers().keep(missing.stream().map(run -> run.plan).toList());
        var lack = lack(missing, unfinished.leftovers());
        if (lack.isPresent()) {
          ended.add(first.refused(lack.get()));
        } else {
          writeAll(runs, unfinished.leftovers(), ended);
        }
      } catch (IOException e) {
        ended.add(new Delivery.Failed(first.shown(e), first.remarks));
      } finally {
        var last = runs.get(Math.max(0, ended.size() - 1));
        last.removeLeftovers(unfinished.leftovers());
      }
    }
    for (int i = 0; i < ended.size(); i++) {
      ended.set(i, runs.get(i).withRemarks(ended.get(i)));
    }
    return List.copyOf(ended);
  }

  private static void writeAll(List<DeliveryRun> runs, Leftovers leftovers, List<Delivery> ended) {
    for (var run : runs) {
      run.leftovers = leftovers;
      ended.add(run.one());
      if (!(ended.getLast() instanceof Delivery.Delivered)) {
        return;
      }
    }
  }

  /** What is missing of the room that several packages need; one by itself is looked at alone. */
  private static Optional<Problem> lack(List<DeliveryRun> missing, Leftovers leftovers)
      throws IOException {
    if (missing.size() < 2) {
      return Optional.empty();
    }
    var plans = missing.stream().map(run -> run.plan).toList();
    var first = missing.getFirst();
    return room(plans, first.target, first.metadata, first.addressee.papers())
        .but(plans.stream().mapToLong(leftovers::bytes).sum())
        .lack();
  }

  /** The room that packages need, and that there is, of those that are not there yet. */
  static Room room(
      List<HandOffPlan> parts, List<Path> folders, MetadataMode metadata, List<ExtraPaper> papers)
      throws IOException {
    var missing = new ArrayList<HandOffPlan>();
    for (int i = 0; i < parts.size(); i++) {
      if (!Target.of(folders.get(i)).isTaken()) {
        missing.add(parts.get(i));
      }
    }
    return room(missing, Target.of(folders.getFirst()), metadata, papers);
  }

  private static Room room(
      List<HandOffPlan> missing, Target target, MetadataMode metadata, List<ExtraPaper> papers)
      throws IOException {
    return target
        .room(HandOffPlan.joined(missing), metadata)
        .and(missing.stream().mapToLong(part -> ExtraPaper.room(papers, part)).sum());
  }

  private Delivery one() {
    try {
      return target.isTaken() ? taken() : checkedRoom();
    } catch (Stopped e) {
      return e.outcome;
    } catch (IOException e) {
      return new Delivery.Failed(shown(e), remarks);
    }
  }

  private void finish(Unfinished unfinished) throws IOException {
    try {
      unfinished.finish(target.folder().getParent());
    } finally {
      remarks.addAll(unfinished.remarks());
    }
  }

  private void removeLeftovers(Leftovers left) {
    try {
      left.close();
    } catch (IOException e) {
      remarks.add(notRemoved(e, target.folder().getParent()));
    }
  }

  private static Problem notRemoved(IOException why, Path where) {
    return new Problem(
        Text.of("the unfinished package could not be removed: {0}", FileProblems.of(why).fault()),
        where.toString(),
        "The next hand-off removes it.");
  }

  private Delivery checkedRoom() throws IOException {
    var papers = ExtraPaper.room(addressee.papers(), plan);
    var room = target.roomProblem(plan, metadata, papers, leftovers.bytes(plan));
    return room.isPresent() ? refused(room.get()) : begin();
  }

  private Delivery refused(Problem problem) {
    return new Delivery.Refused(problem, remarks);
  }

  private Delivery exists() {
    return refused(
        new Problem(
            "this is there already",
            target.folder().toString(),
            "Choose another name, or move that one away."));
  }

  /** The same hand-off asked for again, perhaps because it was killed, is done already. */
  private Delivery taken() throws IOException, Stopped {
    for (var one : records.read().usable().values()) {
      if (one.state() == HandOffRecord.State.DELIVERED
          && one.folder().equals(target.folder().toString())
          && one.digest().isPresent()
          && one.to() == addressee.to()
          && one.isOf(plan)
          && one.metadata().equals(data.mark())
          && Bag.isAt(target.folder(), one.digest().get())
          && isStillTheSame(one)
          && hasThePapers()
          && OpenPackage.check(target.folder()).map(PackageCheck::whole).orElse(false)) {
        remarks.add(
            new Problem(
                "this package was there already; it was compared again and is whole",
                one.folder(),
                ""));
        return new Delivery.Delivered(
            one.number(),
            target.folder(),
            plan.pictures(),
            plan.slates(),
            one.files(),
            one.bytes(),
            Delivery.Described.NOT,
            remarks);
      }
    }
    return exists();
  }

  private boolean hasThePapers() {
    return addressee.papers().stream()
        .map(paper -> target.folder().resolve(paper.name()))
        .allMatch(paper -> Files.isRegularFile(paper, LinkOption.NOFOLLOW_LINKS));
  }

  /** Whether the frames are what the package was made from. */
  private boolean isStillTheSame(HandOffRecord one) throws IOException, Stopped {
    var sums = new HashMap<String, String>();
    one.selects().stream()
        .flatMap(entry -> entry.files().stream())
        .forEach(copy -> sums.put(copy.name(), copy.source()));
    int done = 0;
    for (var select : plan.selects()) {
      for (int i = 0; i < select.files().size(); i++) {
        var file = select.frame().files().get(i).path();
        checkCancelled();
        if (!Checksum.of(file).equals(sums.get(select.files().get(i)))) {
          return false;
        }
        progress.step(++done, steps());
      }
    }
    return true;
  }

  private Delivery begin() throws IOException {
    var draft = Draft.beside(target.folder());
    var record = begun(draft);
    Delivery outcome;
    try {
      makeFolders(target.folder().getParent());
      outcome = inDraft(record, draft);
    } catch (IOException e) {
      outcome = new Delivery.Failed(shown(e), remarks);
    } catch (RuntimeException e) {
      giveUp(record, draft);
      throw e;
    }
    if (!(outcome instanceof Delivery.Delivered)) {
      giveUp(record, draft);
    }
    return withRemarks(outcome);
  }

  private Delivery inDraft(HandOffRecord record, Path folder) throws IOException {
    try (var draft = Draft.create(folder, Draft.note(job.name(), record.number(), folder))) {
      boolean placed = false;
      Delivery outcome;
      try {
        outcome = write(record, draft);
        placed = true;
      } catch (Stopped e) {
        outcome = e.outcome;
      } catch (FileAlreadyExistsException e) {
        outcome = target.isTaken() ? exists() : new Delivery.Failed(shown(e), remarks);
      } catch (IOException e) {
        outcome = new Delivery.Failed(shown(e), remarks);
      } catch (RuntimeException e) {
        discard(draft, folder);
        throw e;
      }
      if (!placed) {
        discard(draft, folder);
      }
      return outcome;
    }
  }

  private void discard(Draft draft, Path folder) {
    try {
      draft.discard();
    } catch (IOException e) {
      remarks.add(notRemoved(e, folder));
    }
  }

  /** Takes back what was prepared for a hand-off that came to nothing. */
  private void giveUp(HandOffRecord record, Path draft) {
    if (Files.exists(draft, LinkOption.NOFOLLOW_LINKS)) {
      return; // Its record stays, so that the next hand-off can remove it.
    }
    try {
      records.remove(record.number());
      for (var folder : madeFolders) {
        Files.deleteIfExists(folder);
      }
    } catch (IOException e) {
      // The next hand-off gives the number up; an empty folder does no harm.
    }
  }

  private HandOffRecord begun(Path draft) throws IOException {
    int first = records.read().nextNumber();
    for (int number = first; number < first + MOST_NUMBERS; number++) {
      var record =
          HandOffRecord.begun(
                  number,
                  job.now().toString(),
                  target.folder().toString(),
                  draft.toString(),
                  plan.chosenBy())
              .addressed(addressee.to())
              .saying(data.mark());
      try {
        records.begin(record);
        return record;
      } catch (FileAlreadyExistsException e) {
        // Another computer took the number, on a volume that knows no locks.
      }
    }
    throw new FileSystemException(
        records.file(first).toString(), null, "no number is free for the hand-off");
  }

  private void makeFolders(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      makeFolders(folder.getParent());
      Files.createDirectory(folder);
      madeFolders.addFirst(folder);
      DurableFiles.syncFolder(folder.getParent());
    }
  }

  private Delivery write(HandOffRecord begun, Draft draft) throws IOException, Stopped {
    var bag = new Bag(draft.packageFolder());
    copy(bag);
    remarks.addAll(data.remarks());
    var zone = ZoneId.systemDefault();
    var entries = entries(bag);
    bag.tag("index.csv", addressee.index(plan, entries, zone));
    bag.tag("README.txt", addressee.readme(plan, entries, begun.number()));
    enclose(bag);
    var digest = bag.close(addressee.about(plan, begun.number(), zone));
    var placing = begun.placing(digest, entries);
    records.update(placing);
    place(draft, digest);
    finish(placing, draft);
    return new Delivery.Delivered(
        begun.number(),
        target.folder(),
        plan.pictures(),
        plan.slates(),
        plan.files(),
        bag.octets(),
        data.described(),
        remarks);
  }

  private void place(Draft draft, String digest) throws IOException {
    try {
      draft.place(target.folder());
    } catch (IOException e) {
      // A failed rename may have been done.
      if (!Bag.isAt(target.folder(), digest)) {
        throw e;
      }
    }
  }

  private void copy(Bag bag) throws IOException, Stopped {
    int done = 0;
    for (var select : plan.selects()) {
      for (int i = 0; i < select.files().size(); i++) {
        checkCancelled();
        var file = select.frame().files().get(i);
        var name = select.files().get(i);
        if (!isTakenOver(bag, file, name) && !bag.add(file.path(), name)) {
          throw failed(
              Text.of("the copy is not what was read from {0}", select.original()),
              target.folder().resolve("data").resolve(name),
              "Check this drive; the frames themselves were only read.");
        }
        if (!isAsScanned(file)) {
          throw failed(
              Text.of("this frame changed while it was handed off"),
              file.path(),
              "Let the camera's software and the raw converter finish, then hand off again.");
        }
        progress.step(++done, steps());
      }
      if (!data.describe(select, bag)) {
        throw failed(
            Text.of("what was written of {0} is not what was read again", select.name()),
            target.folder(),
            "Check this drive; the frames themselves were only read.");
      }
    }
  }

  private int steps() {
    return ExtraPaper.steps(addressee.papers(), plan);
  }

  /** Makes the other papers. */
  private void enclose(Bag bag) throws IOException, Stopped {
    int done = plan.files();
    for (var paper : addressee.papers()) {
      checkCancelled();
      var itsOwn = behind(progress, done, steps());
      try {
        if (!bag.tag(paper.name(), out -> paper.write(plan, out, itsOwn))) {
          throw failed(
              Text.of("what was written of {0} is not what was read again", paper.name()),
              target.folder(),
              "Check this drive; the frames themselves were only read.");
        }
      } catch (CancellationException e) {
        throw new Stopped(new Delivery.Cancelled(remarks));
      }
      done += paper.steps(plan);
    }
  }

  private boolean isTakenOver(Bag bag, FrameFile file, String name) throws IOException {
    var leftover = leftovers.take(name);
    return leftover.isPresent() && bag.takeOver(leftover.get(), file.path(), name);
  }

  private void checkCancelled() throws Stopped {
    if (progress.cancelled()) {
      throw new Stopped(new Delivery.Cancelled(remarks));
    }
  }

  private static boolean isAsScanned(FrameFile file) throws IOException {
    return Files.size(file.path()) == file.size()
        && Files.getLastModifiedTime(file.path(), LinkOption.NOFOLLOW_LINKS)
            .toInstant()
            .equals(file.modified());
  }

  private Stopped failed(Text what, Path where, String remedy) {
    return new Stopped(new Delivery.Failed(new Problem(what, where.toString(), remedy), remarks));
  }

  private List<HandOffRecord.Entry> entries(Bag bag) {
    return plan.selects().stream()
        .map(
            select ->
                new HandOffRecord.Entry(
                    select.name(),
                    select.place().setup(),
                    select.original(),
                    select.files().stream().map(bag::copy).toList(),
                    data.added(select),
                    select.slate()))
        .toList();
  }

  /** The package is in its place: whatever fails from here on, it is handed off. */
  private void finish(HandOffRecord placing, Draft draft) {
    try {
      DurableFiles.syncFolder(target.folder().getParent());
      draft.discard();
      records.update(placing.delivered());
    } catch (IOException e) {
      var said = FileProblems.of(e);
      remarks.add(
          new Problem(
              Text.of(
                  "the package is whole and in its place, but its record could not be completed:"
                      + " {0}",
                  said.fault()),
              said.where(),
              Text.of("The next hand-off completes it. {0}", said.fix())));
    }
  }

  private Delivery withRemarks(Delivery outcome) {
    return switch (outcome) {
      case Delivery.Delivered done ->
          new Delivery.Delivered(
              done.number(),
              done.folder(),
              done.selects(),
              done.slates(),
              done.files(),
              done.bytes(),
              done.described(),
              remarks);
      case Delivery.Cancelled _ -> new Delivery.Cancelled(remarks);
      case Delivery.Refused refused -> new Delivery.Refused(refused.problem(), remarks);
      case Delivery.Failed failed -> new Delivery.Failed(failed.problem(), remarks);
    };
  }

  /** What a disk refused; in place of the draft, which is gone by then, the package is named. */
  private Problem shown(IOException failure) {
    var said = FileProblems.of(failure);
    var where =
        Optional.of(said.where())
            .filter(text -> !text.isBlank())
            .map(text -> text.replaceAll("\\.framewright-[0-9a-f-]{36}(/package)?", ""))
            .orElse(target.folder().toString());
    return said.at(where);
  }
}
