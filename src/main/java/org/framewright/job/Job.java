package org.framewright.job;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.framewright.base.Progress;
import org.framewright.frames.Attribution;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameMove;
import org.framewright.frames.FrameScan;
import org.framewright.frames.FrameScanner;
import org.framewright.frames.FrameWatcher;
import org.framewright.frames.Missing;
import org.framewright.frames.Tally;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;
import org.framewright.naming.Rule;
import org.framewright.naming.Severity;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/** A job, opened from its folder. Safe for several threads; what it hands out never changes. */
public final class Job {
  private static final String OURS = ".framewright";
  private static final String CONVENTION = "convention.yaml";
  private static final String LOG = "log";
  private static final String FRAMES = Reserved.FRAMES;
  private static final String JOB = Reserved.JOB;

  private final Path folder;
  private final Clock clock;
  private final Convention convention;
  private final EventLog log;
  private final List<Entry> entries = new ArrayList<>();
  private final Set<FrameId> present = new HashSet<>();
  private final FrameScanner scanner;
  private final SequencedMap<String, Path> folders = new LinkedHashMap<>();
  private final SequencedMap<String, String> values;
  private final List<String> remarks = new ArrayList<>();
  private volatile Fold fold;
  private volatile List<String> warnings = List.of();
  private volatile Optional<Tally> counted = Optional.empty();
  private volatile JobState state;
  private volatile FrameNaming naming;
  private volatile Optional<Elsewhere> elsewhere = Optional.empty();

  /** The setups that got a frame after their sign-off, as of the last count. */
  private volatile Set<String> changed = Set.of();

  private Job(Path folder, Convention convention, Clock clock, EventLog log)
      throws IOException, JobException {
    this.folder = folder;
    this.convention = convention;
    this.clock = clock;
    this.log = log;
    this.fold = Fold.of(entries);
    this.state = fold.state();
    refresh();
    this.values = fold.values().isEmpty() ? valuesFromName() : fold.values();
    for (var role : convention.folders().keySet()) {
      folders.put(role, inside(folder, role, values));
    }
    this.scanner = new FrameScanner(framesFolder());
    warn();
  }

  /**
   * Makes the job's folder below {@code parent}, named by the convention's kind {@code job}, with
   * the convention, the folders of its roles, and the values in it.
   *
   * @throws JobException if there is a file or folder of that name already
   */
  public static Started start(
      Convention convention, Path parent, Map<String, String> values, Clock clock)
      throws IOException, JobException {
    return start(convention, parent, values, clock, Station.here());
  }

  /** The same, as a given station. */
  public static Started start(
      Convention convention, Path parent, Map<String, String> values, Clock clock, Station station)
      throws IOException, JobException {
    var faults =
        new ArrayList<>(
            convention.check(0).stream()
                .filter(finding -> finding.severity() == Severity.ERROR)
                .toList());
    for (var name : values.keySet()) {
      if (!convention.fields().containsKey(name)) {
        faults.add(
            new Finding(
                Rule.UNKNOWN_FIELD,
                Severity.ERROR,
                name,
                0,
                0,
                "the convention has no field \"" + name + "\"",
                Optional.empty(),
                Optional.of(
                    "Its fields are " + String.join(", ", convention.fields().keySet()) + ".")));
      }
    }
    for (var kind : List.of(JOB, FrameNaming.KIND)) {
      if (!convention.kinds().containsKey(kind)) {
        throw new JobException(
            "the convention has no names." + kind,
            convention.source(),
            "Give it a pattern for " + kind + "; see the conventions in templates.");
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
    if (!faults.isEmpty() || !(built instanceof Built.Name name)) {
      return new Started.Refused(faults);
    }
    if (!Files.isDirectory(parent)) {
      throw new JobException(
          "there is no such folder", parent.toString(), "Make it first, or give another one.");
    }
    var folder = parent.toAbsolutePath().normalize().resolve(name.text());
    create(convention, folder, values);
    var log = new FileEventLog(folder.resolve(OURS).resolve(LOG), station, clock);
    log.append(new Event.Began(new LinkedHashMap<>(values)));
    return new Started.Opened(open(folder, clock, station));
  }

  private static void create(Convention convention, Path folder, Map<String, String> values)
      throws IOException, JobException {
    try {
      Files.createDirectory(folder);
    } catch (FileAlreadyExistsException e) {
      throw new JobException(
          Files.exists(folder.resolve(OURS).resolve(CONVENTION))
              ? "this job exists already"
              : "something of this name is there already and is no job",
          folder.toString(),
          "Open it, move it away, or give the job other values; nothing was changed.");
    }
    for (var role : convention.folders().keySet()) {
      Files.createDirectories(inside(folder, role, convention, values));
    }
    var ours = Files.createDirectories(folder.resolve(OURS));
    Files.createDirectories(ours.resolve(LOG));
    // The convention comes last: a folder without it is no job.
    write(ours.resolve(CONVENTION), convention.yaml().getBytes(StandardCharsets.UTF_8));
    FileEventLog.sync(ours);
    FileEventLog.sync(folder);
    FileEventLog.sync(folder.getParent());
  }

  private static void write(Path file, byte[] bytes) throws IOException {
    var temporary = file.resolveSibling(file.getFileName() + ".tmp");
    Files.write(temporary, bytes);
    try (var channel = FileChannel.open(temporary, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(temporary, file, StandardCopyOption.ATOMIC_MOVE);
  }

  /** Opens a job from its folder. */
  public static Job open(Path folder, Clock clock) throws IOException, JobException {
    return open(folder, clock, Station.here());
  }

  /** The same, as a given station. */
  public static Job open(Path folder, Clock clock, Station station)
      throws IOException, JobException {
    var absolute = folder.toAbsolutePath().normalize();
    var file = absolute.resolve(OURS).resolve(CONVENTION);
    Convention.Parsed parsed;
    try {
      parsed = Convention.read(file);
    } catch (NoSuchFileException | java.nio.file.NotDirectoryException e) {
      throw new JobException(
          Files.isDirectory(absolute) ? "this is no job folder" : "there is no such folder",
          folder.toString(),
          "Give the folder that a job was started in; it holds a folder " + OURS + ".");
    }
    return switch (parsed) {
      case Convention.Parsed.Sound sound ->
          new Job(
              absolute,
              sound.convention(),
              clock,
              new FileEventLog(absolute.resolve(OURS).resolve(LOG), station, clock));
      case Convention.Parsed.Faulty faulty -> {
        var first = faulty.findings().getFirst();
        throw new JobException(
            "the job's convention cannot be read: " + first.message(),
            file + ", line " + first.line() + ", column " + first.column(),
            first.remedy().orElse("Put the convention back as it was when the job began."));
      }
    };
  }

  private SequencedMap<String, String> valuesFromName() throws JobException {
    if (convention.kinds().containsKey(JOB)
        && convention.read(name(), JOB) instanceof Reading.One one) {
      remarks.add(
          "The log does not say with which values this job began; they were read from the folder's"
              + " name.");
      return Collections.unmodifiableSequencedMap(new LinkedHashMap<>(one.fields()));
    }
    throw new JobException(
        "the log does not say with which values this job began, and the folder's name does not"
            + " either",
        folder.toString(),
        "Give the folder its first name again, or bring the files of "
            + OURS
            + "/"
            + LOG
            + " back from a copy.");
  }

  private Path inside(Path folder, String role, Map<String, String> values) throws JobException {
    return inside(folder, role, convention, values);
  }

  private static Path inside(
      Path folder, String role, Convention convention, Map<String, String> values)
      throws JobException {
    return switch (convention.buildFolder(role, values)) {
      case Built.Name name -> {
        var path = folder.resolve(name.text()).normalize();
        if (!path.startsWith(folder)) {
          throw new JobException(
              "the folder for " + role + " lies outside of the job: " + name.text(),
              folder.toString(),
              "Fix folders." + role + " in the convention.");
        }
        yield path;
      }
      case Built.Refused refused ->
          throw new JobException(
              "the folder for " + role + " has no name: " + refused.findings().getFirst().message(),
              folder.toString(),
              refused.findings().getFirst().remedy().orElse("Fix the convention."));
    };
  }

  /** The job's folder, absolute. */
  public Path folder() {
    return folder;
  }

  /** The job's name, which is its folder's. */
  public String name() {
    return folder.getFileName().toString();
  }

  /** Where frames arrive, absolute. */
  public Path framesFolder() {
    return folder(FRAMES);
  }

  /**
   * The folder of a role of the convention, absolute.
   *
   * @throws IllegalArgumentException if the convention has no such role
   */
  public Path folder(String role) {
    var path = folders.get(role);
    if (path == null) {
      throw new IllegalArgumentException("the convention has no folder for " + role);
    }
    return path;
  }

  /** The convention, as it was when the job began. */
  public Convention convention() {
    return convention;
  }

  /** The values that the job was started with, by field. */
  public SequencedMap<String, String> values() {
    return values;
  }

  /** The setups, in the order in which they are planned. */
  public ShotList shotList() {
    return fold.list();
  }

  /** The state as it was read or written last. */
  public JobState state() {
    return state;
  }

  /** What a person should know of this folder: a torn line, a clock that is off. */
  public List<String> warnings() {
    return warnings;
  }

  /** What another station did to the list last, of what was read so far. */
  public Optional<Elsewhere> elsewhere() {
    return elsewhere;
  }

  /** The job's time: this station's clock, unless another station's was found to be ahead of it. */
  public Instant now() {
    return log.now();
  }

  /** Reads what other stations wrote; true if there was anything. */
  public synchronized boolean refresh() throws IOException {
    var news = log.news();
    if (!news.isEmpty()) {
      news.stream()
          .filter(entry -> !entry.stamp().station().equals(log.station()))
          .filter(entry -> Elsewhere.tells(entry.event()))
          .max(Comparator.comparing(Entry::stamp))
          .ifPresent(entry -> elsewhere = Optional.of(Elsewhere.of(entry)));
      entries.addAll(news);
      entries.sort(Comparator.comparing(Entry::stamp));
      fold = Fold.of(entries);
      show();
    }
    warn();
    return !news.isEmpty();
  }

  private void warn() {
    var all = new ArrayList<>(log.warnings());
    all.addAll(fold.remarks());
    all.addAll(remarks);
    warnings = List.copyOf(all);
  }

  private void append(Event event) throws IOException {
    log.append(event);
    refresh();
  }

  /**
   * Ticks a setup; the tick is on the disk when this returns. Putting a setup on set takes the one
   * before it off, which falls back to the state that it had before.
   */
  public synchronized JobState mark(String setup, SetupState to, MarkDetails details)
      throws IOException, JobException {
    refresh();
    var found = setup(setup);
    if (to == SetupState.SIGNED_OFF && details.by().isEmpty()) {
      throw new JobException(
          "a sign-off needs the name of who signs off",
          "setup " + found.code(),
          "Say who it is, with --by NAME on the command line.");
    }
    var view = Optional.<String>empty();
    if (details.view().isPresent()) {
      view = Optional.of(view(found, details.view().get()));
    }
    append(
        new Event.Marked(found.code(), to, new MarkDetails(details.by(), view, details.reason())));
    return state;
  }

  private Setup setup(String code) throws JobException {
    var found = fold.list().setup(code);
    if (found.isPresent()) {
      return found.get();
    }
    var codes = fold.list().codes();
    throw new JobException(
        "there is no setup \"" + code + "\" in the shot list",
        name(),
        codes.isEmpty()
            ? "The list is empty; import one first."
            : "Its setups go from " + codes.getFirst() + " to " + codes.getLast() + ".");
  }

  private String view(Setup setup, String view) throws JobException {
    var wanted = setup.view(view);
    if (wanted.isPresent()) {
      return wanted.get().code();
    }
    var field = convention.fields().get(FrameNaming.VIEW);
    var known = new LinkedHashSet<String>();
    setup.views().forEach(one -> known.add(one.code()));
    if (field != null) {
      for (var choice : field.choices().entrySet()) {
        known.add(choice.getKey());
        if (choice.getKey().equalsIgnoreCase(view) || choice.getValue().equalsIgnoreCase(view)) {
          var same = setup.view(choice.getKey()).or(() -> setup.view(choice.getValue()));
          return same.isPresent() ? same.get().code() : choice.getKey();
        }
      }
    }
    if (known.isEmpty()) {
      return view.strip();
    }
    throw new JobException(
        "there is no view \"" + view + "\"",
        "setup " + setup.code(),
        "Its views are " + String.join(", ", known) + ".");
  }

  /** The tick that {@link #takeBack} would take back. */
  public synchronized Optional<Tick> lastTick() {
    return last(event -> event instanceof Event.Marked)
        .map(
            entry -> {
              var marked = (Event.Marked) entry.event();
              return new Tick(
                  marked.setup(), marked.state(), marked.details(), entry.stamp().instant());
            });
  }

  private Optional<Entry> last(Predicate<Event> wanted) {
    var takenBack = new HashSet<Stamp>();
    for (var entry : entries.reversed()) {
      if (entry.event() instanceof Event.TakenBack taken) {
        takenBack.add(taken.event());
      } else if (wanted.test(entry.event())
          && entry.stamp().station().equals(log.station())
          && !takenBack.contains(entry.stamp())) {
        return Optional.of(entry);
      }
    }
    return Optional.empty();
  }

  /** Takes this station's last tick back: the state is as if it had never been. */
  public synchronized JobState takeBack() throws IOException, JobException {
    return takeBack(event -> event instanceof Event.Marked, "tick");
  }

  private JobState takeBack(Predicate<Event> wanted, String what) throws IOException, JobException {
    refresh();
    var last = last(wanted);
    if (last.isEmpty()) {
      throw new JobException(
          "this computer made no " + what + " that could be taken back",
          name(),
          "What other computers did is taken back there.");
    }
    append(new Event.TakenBack(last.get().stamp()));
    return state;
  }

  /** What importing this list would change; nothing is written. */
  public ListChange previewImport(ShotList incoming) throws IOException {
    tally();
    synchronized (this) {
      refresh();
      return change(incoming);
    }
  }

  private ListChange change(ShotList incoming) {
    var worked = fold.worked();
    var framed =
        counted.stream()
            .flatMap(tally -> tally.bySetup().keySet().stream())
            .map(Setup::canonicalKey)
            .collect(Collectors.toSet());
    return ListChange.between(
        fold.list(),
        incoming,
        setup -> {
          var key = Setup.canonicalKey(setup.code());
          return worked.contains(key) || framed.contains(key);
        });
  }

  /**
   * Imports a list. Ticks, sign-offs and frames stay; setups that the list no longer has stay too
   * if they were worked on.
   *
   * @return what changed
   */
  public ListChange importList(ShotList incoming) throws IOException {
    tally();
    synchronized (this) {
      refresh();
      return put(change(incoming), incoming);
    }
  }

  /**
   * Imports those lines of a list that were accepted, by their setups' codes: a new setup comes, a
   * changed one changes, a missing one goes only if its code is among them.
   */
  public ListChange importList(ShotList incoming, Set<String> acceptedCodes) throws IOException {
    tally();
    synchronized (this) {
      refresh();
      var accepted = acceptedCodes.stream().map(Setup::canonicalKey).collect(Collectors.toSet());
      var before = byKey(fold.list());
      var after = new ArrayList<Setup>();
      for (var setup : incoming.setups()) {
        var key = Setup.canonicalKey(setup.code());
        if (accepted.contains(key)) {
          after.add(setup);
        } else if (before.containsKey(key)) {
          after.add(before.get(key));
        }
      }
      var there = new HashSet<>(byKey(incoming).keySet());
      var staying =
          fold.list().setups().stream()
              .filter(setup -> !there.contains(Setup.canonicalKey(setup.code())))
              .filter(setup -> !accepted.contains(Setup.canonicalKey(setup.code())))
              .toList();
      var merged = merge(after, staying);
      return put(change(merged), merged);
    }
  }

  private ListChange put(ListChange change, ShotList incoming) throws IOException {
    if (change.isEmpty()) {
      return change;
    }
    var put = new ArrayList<>(change.added());
    change.changed().forEach(changed -> put.add(changed.after()));
    append(
        new Event.ListChanged(
            put,
            change.removed().stream().map(Setup::code).toList(),
            merge(incoming.setups(), change.kept()).codes()));
    return change;
  }

  private static Map<String, Setup> byKey(ShotList list) {
    return list.setups().stream()
        .collect(Collectors.toMap(setup -> Setup.canonicalKey(setup.code()), setup -> setup));
  }

  /** The new setups with those that stay, each behind the one that it stood behind before. */
  private ShotList merge(List<Setup> incoming, List<Setup> staying) {
    var merged = new ArrayList<>(incoming);
    var stays = staying.stream().map(Setup::code).collect(Collectors.toSet());
    var before = fold.list().setups();
    for (int i = 0; i < before.size(); i++) {
      if (stays.contains(before.get(i).code())) {
        int place = 0;
        for (int j = i - 1; j >= 0 && place == 0; j--) {
          place = place(merged, before.get(j).code()) + 1;
        }
        merged.add(place, before.get(i));
      }
    }
    return new ShotList(merged);
  }

  private static int place(List<Setup> setups, String code) {
    var key = Setup.canonicalKey(code);
    for (int i = 0; i < setups.size(); i++) {
      if (Setup.canonicalKey(setups.get(i).code()).equals(key)) {
        return i;
      }
    }
    return -1;
  }

  /** Puts the setups in another order; codes left out keep their order behind the others. */
  public synchronized void reorder(List<String> codes) throws IOException, JobException {
    refresh();
    var order = new LinkedHashSet<String>();
    for (var code : codes) {
      order.add(setup(code).code());
    }
    order.addAll(fold.list().codes());
    if (!List.copyOf(order).equals(fold.list().codes())) {
      append(new Event.ListChanged(List.of(), List.of(), List.copyOf(order)));
    }
  }

  /**
   * Says that these frames lay there already when somebody began to watch, so that nobody knows
   * when they arrived; their capture time then says where they belong. Not written to the log.
   */
  public synchronized void foundPresent(FrameScan scan) {
    scan.frames().forEach(frame -> present.addAll(frame.knownAs()));
  }

  /** Records that the complete frames of this scan that are new arrived now. */
  public synchronized void recordArrivals(FrameScan scan) throws IOException {
    refresh();
    var arrivals = fold.state().arrivals();
    var arrived = new ArrayList<FrameId>();
    for (var frame : scan.frames()) {
      if (frame.complete()
          && frame.knownAs().stream()
              .noneMatch(id -> arrivals.containsKey(id) || present.contains(id))) {
        arrived.add(frame.id());
      }
    }
    if (!arrived.isEmpty()) {
      append(new Event.Arrived(List.copyOf(arrived)));
    }
  }

  /** Moves frames to a setup, whatever their names and times say. */
  public synchronized JobState moveFrames(
      List<FrameId> frames, String setup, Optional<String> view, String by)
      throws IOException, JobException {
    refresh();
    var found = setup(setup);
    var wanted = Optional.<String>empty();
    if (view.isPresent()) {
      wanted = Optional.of(view(found, view.get()));
    }
    if (!frames.isEmpty()) {
      append(new Event.Moved(List.copyOf(frames), found.code(), wanted, by));
    }
    return state;
  }

  /** Takes this station's last move of frames back; the log keeps the trace of both. */
  public synchronized JobState takeBackMove() throws IOException, JobException {
    return takeBack(event -> event instanceof Event.Moved, "move of frames");
  }

  /** Chooses frames for retouching, or chooses them no longer. */
  public synchronized JobState select(List<FrameId> frames, boolean selected, String by)
      throws IOException {
    if (!frames.isEmpty()) {
      append(new Event.Selected(List.copyOf(frames), selected, by));
    }
    return state;
  }

  /** Scans the frames folder; what was read before is not read again. */
  public FrameScan scan() throws IOException {
    return scanner.scan();
  }

  /**
   * Scans the frames folder, and tells how far it is.
   *
   * @return nothing if it was stopped
   */
  public Optional<FrameScan> scan(Progress progress) throws IOException {
    return scanner.scan(progress);
  }

  /** A watcher of the frames folder, not started yet; what a scan read it does not read again. */
  public FrameWatcher watcher(Consumer<FrameScan> listener) {
    return new FrameWatcher(scanner, listener);
  }

  /** Scans and counts. */
  public Tally tally() throws IOException {
    return tally(scan());
  }

  /** Counts; {@link #state} then knows which setups changed since their sign-off. */
  public Tally tally(FrameScan scan) {
    var now = fold;
    var naming = naming(now.list());
    var tally =
        Attribution.assign(
            scan.frames(),
            now.state().arrivals(),
            now.state().spans(),
            now.state().moves(),
            naming::place,
            onlyViews(now.list()),
            clock.getZone());
    synchronized (this) {
      counted = Optional.of(tally);
      changed = changed(scan, tally);
      show();
    }
    return tally;
  }

  private FrameNaming naming(ShotList list) {
    var known = naming;
    if (known == null || !known.list().equals(list)) {
      known = new FrameNaming(convention, values, list);
      naming = known;
    }
    return known;
  }

  /** The view of each setup of which only one is wanted. */
  private static Function<String, Optional<String>> onlyViews(ShotList list) {
    var only = new HashMap<String, String>();
    for (var setup : list.setups()) {
      if (setup.views().size() == 1) {
        only.put(setup.code(), setup.views().getFirst().code());
      }
    }
    return code -> Optional.ofNullable(only.get(code));
  }

  /** The frames of a scan in the order in which they were taken, each body's clock put right. */
  public List<Frame> inOrder(FrameScan scan) {
    var times = new FrameTimes(clock.getZone(), fold.state().arrivals(), tally(scan).cameras());
    return scan.frames().stream()
        .sorted(Comparator.comparing(times::order).thenComparing(Frame::stem))
        .toList();
  }

  /** The setups that got a frame after their sign-off. */
  private Set<String> changed(FrameScan scan, Tally tally) {
    var latest = new HashMap<String, Instant>();
    var times = new FrameTimes(clock.getZone(), fold.state().arrivals(), tally.cameras());
    var moved = new HashMap<FrameId, FrameMove>();
    fold.state().moves().forEach(move -> moved.put(move.frame(), move));
    for (var frame : scan.frames()) {
      var place = tally.places().get(frame.id());
      if (place == null) {
        continue;
      }
      times.seen(frame).ifPresent(time -> latest.merge(place.setup(), time, Job::later));
      for (var id : frame.knownAs()) {
        var move = moved.get(id);
        if (move != null && move.setup().equals(place.setup())) {
          latest.merge(place.setup(), move.at(), Job::later);
        }
      }
    }
    var changed = new HashSet<String>();
    latest.forEach(
        (setup, time) -> {
          if (fold.state().of(setup).signedOffAt().map(time::isAfter).orElse(false)) {
            changed.add(setup);
          }
        });
    return Set.copyOf(changed);
  }

  private static Instant later(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }

  private void show() {
    var pure = fold.state();
    var setups = new LinkedHashMap<>(pure.setups());
    for (var setup : changed) {
      setups.computeIfPresent(
          setup, (code, status) -> status.signedOffAt().isPresent() ? status.changed() : status);
    }
    state =
        new JobState(
            Collections.unmodifiableSequencedMap(setups),
            pure.spans(),
            pure.moves(),
            pure.arrivals(),
            pure.selects(),
            pure.onSet(),
            pure.pickups());
  }

  /**
   * The names that the frames of a scan are to have by the convention's kind {@code frame},
   * numbered in the order in which they were taken, each body's clock put right. A name that is
   * right already stays; numbers that exist are not used again.
   */
  public FrameNames frameNames(FrameScan scan) {
    var tally = tally(scan);
    var now = fold;
    var times = new FrameTimes(clock.getZone(), now.state().arrivals(), tally.cameras());
    return naming(now.list()).names(folder, scan, tally, times);
  }

  /** What a setup still lacks, in words: {@code back: none of 2}. */
  public List<String> missing(Setup setup, Tally tally) {
    return Missing.of(setup, Optional.ofNullable(tally.bySetup().get(setup.code()))).stream()
        .map(missing -> missing.words(this::label))
        .toList();
  }

  private String label(String view) {
    var field = convention.fields().get(FrameNaming.VIEW);
    return field == null ? view : field.choices().getOrDefault(view, view);
  }

  /** The frames that people chose, as far as a scan has them. */
  public List<Frame> selects(FrameScan scan) {
    var chosen = fold.state().selects();
    return scan.frames().stream()
        .filter(frame -> frame.knownAs().stream().anyMatch(chosen::contains))
        .toList();
  }
}
