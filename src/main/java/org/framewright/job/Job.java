package org.framewright.job;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
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
import java.util.UUID;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.Attribution;
import org.framewright.frames.CameraNumber;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.FrameScanner;
import org.framewright.frames.FrameWatcher;
import org.framewright.frames.Missing;
import org.framewright.frames.PlausibleTimes;
import org.framewright.frames.SlateDoubt;
import org.framewright.frames.SlateSays;
import org.framewright.frames.SlateTally;
import org.framewright.frames.Tally;
import org.framewright.frames.slate.JobKey;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.ListFile;
import org.framewright.shotlist.ListFit;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/**
 * A job, opened from its folder: its log, and what people do with it. Safe for several threads;
 * what it hands out never changes, and no question changes the answer to another.
 */
public final class Job {
  private static final String FRAMES = Reserved.FRAMES;

  /** A slate that is read later than this moves nothing on set any more. Judgement, no source. */
  private static final Duration JUST_NOW = Duration.ofMinutes(10);

  private final Path folder;
  private final Clock clock;
  private final Convention convention;
  private final EventLog log;
  private final SequencedMap<String, String> values;
  private final SequencedMap<String, Path> folders;
  private final FrameScanner scanner;
  private final ViewCodes views;
  private final List<Text> remarks = new ArrayList<>();

  /** Touched under the lock only. */
  private final Folding folding = new Folding();

  /** Touched under the lock only: the frames that lay there when somebody began to watch. */
  private final Set<FrameId> present = new HashSet<>();

  /** Touched under the lock only: what people call each station, by its name, and who said so. */
  private final Map<String, Entry> called = new HashMap<>();

  /** What this station is to be called; nothing where nobody said. */
  private volatile Optional<String> ownName = Optional.empty();

  private volatile Fold fold = folding.fold();
  private volatile List<Text> warnings = List.of();
  private volatile Optional<Elsewhere> elsewhere = Optional.empty();
  private volatile Optional<Instant> began = Optional.empty();
  private volatile Instant latest = Instant.MIN;
  private volatile Optional<FrameNaming> naming = Optional.empty();

  private Job(Path folder, Convention convention, Clock clock, EventLog log)
      throws IOException, JobException {
    this.folder = folder;
    this.convention = convention;
    this.clock = clock;
    this.log = log;
    this.views = new ViewCodes(convention);
    refresh();
    this.values = fold.values().isEmpty() ? valuesFromName() : fold.values();
    this.folders = RoleFolders.of(folder, convention, values);
    this.scanner = new FrameScanner(framesFolder());
    warn();
  }

  /**
   * Makes the job's folder below {@code parent}, named by the convention's kind {@code job}, with
   * the convention, the folders of its roles, and the values in it. The folder appears whole or not
   * at all.
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
    return switch (JobStart.check(convention, values)) {
      case Built.Refused refused -> new Started.Refused(refused.findings());
      case Built.Name name ->
          new Started.Opened(
              open(
                  JobStart.create(convention, parent, name.text(), values, clock, station),
                  clock,
                  station));
    };
  }

  /** Opens a job from its folder. */
  public static Job open(Path folder, Clock clock) throws IOException, JobException {
    return open(folder, clock, Station.here());
  }

  /** The same, as a given station. */
  public static Job open(Path folder, Clock clock, Station station)
      throws IOException, JobException {
    return open(folder, clock, station, JobLogs.inFolder());
  }

  /** The same with another kind of log. */
  public static Job open(Path folder, Clock clock, Station station, JobLogs logs)
      throws IOException, JobException {
    var layout = new JobLayout(folder.toAbsolutePath().normalize());
    var convention = layout.readConvention();
    return new Job(layout.root(), convention, clock, logs.open(layout, station, clock));
  }

  /**
   * Makes the folder of a job that a store has, below {@code parent}, and named as it was named
   * when the job began. It appears whole or not at all; frames are not in it.
   *
   * @param convention the job's, as the store has it
   * @throws JobException if the store has no beginning of the job, or there is a file or folder of
   *     that name already
   */
  public static Path bring(
      Convention convention, Path parent, NumberedLogs store, Clock clock, Station station)
      throws IOException, JobException {
    return JobStart.bring(convention, parent, store, clock, station);
  }

  /**
   * Opens a job of a store whose folder is not here. It has no frames, and what is done to it is in
   * the store alone.
   *
   * @param convention the job's, as the store has it
   * @throws JobException if the store has no beginning of the job
   */
  public static Job stored(Convention convention, NumberedLogs store, Clock clock, Station station)
      throws IOException, JobException {
    var nowhere = Path.of(JobStart.name(convention, store, clock, station)).toAbsolutePath();
    return new Job(nowhere, convention, clock, new StoredEventLog(store, station, clock));
  }

  private SequencedMap<String, String> valuesFromName() throws JobException {
    if (convention.kinds().containsKey(JobStart.JOB)
        && convention.read(name(), JobStart.JOB) instanceof Reading.One one) {
      remarks.add(
          Text.of(
              "The log does not say with which values this job began; they were read from the"
                  + " folder's name."));
      return Collections.unmodifiableSequencedMap(new LinkedHashMap<>(one.fields()));
    }
    throw new JobException(
        Text.of(
            "the log does not say with which values this job began, and the folder's name does not"
                + " either"),
        folder.toString(),
        Text.of(
            "Give the folder its first name again, or bring the files of {0} back from a copy.",
            new JobLayout(folder).log()));
  }

  // What it is

  /** The job's folder, absolute. */
  public Path folder() {
    return folder;
  }

  /** The job's name, which is its folder's. */
  public String name() {
    return String.valueOf(folder.getFileName());
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

  /**
   * What tells this job from every other one, wherever its folder lies: letters, digits and
   * hyphens, of when and where its log began, else its name.
   */
  public synchronized String identity() {
    return folding
        .first(event -> event instanceof Event.Began)
        .map(Entry::stamp)
        .map(stamp -> stamp.station() + "-" + stamp.millis() + "-" + stamp.count())
        .orElseGet(this::name);
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

  /**
   * The state of the log as it was read or written last. What frames add to it, {@link #standing}
   * says.
   */
  public JobState state() {
    return fold.state();
  }

  /** What a person should know of this folder: a torn line, a clock that is off; one line each. */
  public List<Text> told() {
    return warnings;
  }

  /** The same in English. */
  public List<String> warnings() {
    return warnings.stream().map(Text::english).map(PlainText::line).toList();
  }

  /** How many events of all stations were read so far. */
  public synchronized long events() {
    return folding.size();
  }

  /** What another station did to the list last, of what was read so far. */
  public Optional<Elsewhere> elsewhere() {
    return elsewhere;
  }

  /** The name of this computer in the job. */
  public String station() {
    return log.station();
  }

  /** When something was done to the job last, of what was read so far; nothing for an empty log. */
  Optional<Instant> latest() {
    var at = latest;
    return at.equals(Instant.MIN) ? Optional.empty() : Optional.of(at);
  }

  /**
   * The job's time: this station's clock, unless another station's was found to be ahead of it, by
   * 30 days at most.
   */
  public Instant now() {
    return log.now();
  }

  /** Where the shoot's clocks are: this computer's zone. */
  public ZoneId zone() {
    return clock.getZone();
  }

  // The log

  /**
   * Reads what other stations wrote; true if there was anything.
   *
   * @throws IOException if the log cannot be read, or is not there: the job was moved away, or its
   *     drive is gone
   */
  public synchronized boolean refresh() throws IOException {
    var news = log.news();
    if (!news.isEmpty()) {
      for (var entry : news) {
        if (entry.event() instanceof Event.Named) {
          called.merge(
              entry.stamp().station(),
              entry,
              (one, other) -> one.stamp().compareTo(other.stamp()) > 0 ? one : other);
        }
      }
      news.stream()
          .filter(entry -> !entry.stamp().station().equals(log.station()))
          .filter(entry -> Elsewhere.concerns(entry.event()))
          .max(Comparator.comparing(Entry::stamp))
          .ifPresent(entry -> elsewhere = Optional.of(Elsewhere.of(entry)));
      elsewhere = elsewhere.map(did -> did.called(called(did.station())));
      for (var entry : news) {
        var time = entry.time();
        latest = time.isAfter(latest) ? time : latest;
        if (entry.event() instanceof Event.Began && began.filter(time::isAfter).isEmpty()) {
          began = Optional.of(time);
        }
      }
      folding.add(news);
      fold = folding.fold();
    }
    warn();
    return !news.isEmpty();
  }

  private void warn() {
    var all = new ArrayList<>(log.told());
    all.addAll(fold.remarks());
    all.addAll(remarks);
    var lines = List.copyOf(all);
    if (!lines.equals(warnings)) {
      warnings = lines;
    }
  }

  /**
   * Says what people call this computer. Nothing is written for it alone: it goes into the log
   * before what this computer does next, if the log does not say so yet.
   *
   * <p>Returns at once, whoever writes just now.
   *
   * @param name one line; empty where it is called nothing
   */
  public void callThisStation(String name) {
    ownName = Optional.of(PlainText.line(name.strip()));
  }

  /** What people call a station; empty where nobody said. */
  private Optional<String> called(String station) {
    return Optional.ofNullable(called.get(station))
        .map(entry -> PlainText.line(((Event.Named) entry.event()).name()))
        .filter(name -> !name.isBlank());
  }

  private Stamp write(Event event) throws IOException {
    var name = ownName;
    if (name.isPresent() && !name.get().equals(called(log.station()).orElse(""))) {
      log.append(new Event.Named(name.get()));
      refresh();
    }
    return log.append(event);
  }

  /**
   * The keys that slates of this job have; empty before the first ones are printed. Mostly one:
   * there are several where two computers printed the first ones at the same time, and then the
   * slates of both hold.
   */
  public List<JobKey> slateKeys() {
    return fold.slateKeys();
  }

  /**
   * The key that slates of this job are printed with. A job that has none gets one, which is on the
   * disk when this returns.
   */
  public synchronized JobKey slateKey() throws IOException {
    refresh();
    if (slateKeys().isEmpty()) {
      append(new Event.SlatesKeyed(JobKey.random(ThreadLocalRandom.current())));
    }
    return slateKeys().getFirst();
  }

  /** Writes down that a card or the job was copied; it is on the disk when this returns. */
  public synchronized void record(CopyRecord copy) throws IOException {
    refresh();
    append(new Event.Copied(copy));
  }

  private JobState append(Event event) throws IOException {
    write(event);
    refresh();
    return state();
  }

  // Ticks

  /**
   * Ticks a setup; the tick is on the disk when this returns. Putting a setup on set takes the one
   * before it off, which falls back to the state that it had before.
   */
  public JobState mark(String setup, SetupState to, MarkDetails details)
      throws IOException, JobException {
    return mark(List.of(setup), to, details);
  }

  /**
   * Ticks several setups alike, a tick each.
   *
   * @throws JobException if one of them cannot be ticked; then none is
   */
  public synchronized JobState mark(List<String> setups, SetupState to, MarkDetails details)
      throws IOException, JobException {
    refresh();
    var ticks = new ArrayList<Event>();
    for (var setup : setups) {
      ticks.add(tick(setup, to, details));
    }
    for (var tick : ticks) {
      write(tick);
    }
    refresh();
    return state();
  }

  private Event tick(String setup, SetupState to, MarkDetails details) throws JobException {
    var found = setup(setup);
    if (to == SetupState.SIGNED_OFF && details.by().isEmpty()) {
      throw new JobException(
          Text.of("a sign-off needs the name of who signs off"),
          "setup " + found.code(),
          Text.of("Say who signs off."));
    }
    var view = view(found, details.view());
    return new Event.Marked(
        found.code(), to, new MarkDetails(details.by(), view, details.reason()));
  }

  /**
   * The setup that a person means, see {@link ShotList#setup}.
   *
   * @throws JobException if the list has none
   */
  public Setup setup(String code) throws JobException {
    var found = fold.index().setup(code);
    if (found.isPresent()) {
      return found.get();
    }
    var given = fold.moves().given(code);
    if (given.isPresent()) {
      throw new JobException(
          new MoveRefusal(
                  MoveRefusal.Why.GIVEN, given.get().setup().code(), given.get().to().name())
              .problem(name()));
    }
    var setups = fold.list().setups();
    throw new JobException(
        Text.of("there is no setup \"{0}\" in the shot list", code),
        name(),
        setups.isEmpty()
            ? Text.of("The list is empty; import one first.")
            : Text.of(
                "Its setups go from {0} to {1}.",
                setups.getFirst().code(), setups.getLast().code()));
  }

  private Optional<String> view(Setup setup, Optional<String> view) throws JobException {
    return view.isPresent() ? Optional.of(views.code(setup, view.get())) : Optional.empty();
  }

  /** The tick that {@link #takeBack} would take back. */
  public synchronized Optional<Tick> lastTick() {
    return folding
        .last(log.station(), event -> event instanceof Event.Marked)
        .map(
            entry -> {
              var marked = (Event.Marked) entry.event();
              return new Tick(marked.setup(), marked.state(), marked.details(), entry.time());
            });
  }

  /** Takes this station's last tick back: the state is as if it had never been. */
  public synchronized JobState takeBack() throws IOException, JobException {
    return takeBack(
        event -> event instanceof Event.Marked,
        Text.of("this computer made no tick that could be taken back"));
  }

  private JobState takeBack(Predicate<Event> wanted, Text none) throws IOException, JobException {
    refresh();
    var last = folding.last(log.station(), wanted);
    if (last.isEmpty()) {
      throw new JobException(
          none, name(), Text.of("What other computers did is taken back there."));
    }
    return append(new Event.TakenBack(last.get().stamp()));
  }

  // Devices

  /**
   * Keeps what a person did on a device, under the same checks as what is done at this computer. It
   * is on the disk when the answer says so.
   *
   * @throws IOException if it is not certain that it was kept; the device sends it again
   */
  public synchronized Receipt receive(Device device, Numbered numbered) throws IOException {
    while (true) {
      refresh();
      long last = log.last(device.name());
      if (numbered.number() > last + 1) {
        return new Receipt.Gap(last);
      }
      if (numbered.number() <= last) {
        // Where its line was damaged since, nobody can tell another one from it.
        var kept = folding.numbered(device.name(), numbered.number());
        return kept.map(entry -> DeviceLog.isSame(entry, numbered)).orElse(true)
            ? new Receipt.Had(last)
            : new Receipt.Clash(last);
      }
      Event event;
      try {
        event = event(device, numbered.asked());
      } catch (JobException e) {
        return new Receipt.Refused(last, e.problem());
      }
      var before = folding.numbered(device.name(), last).map(Entry::stamp);
      var stamp = DeviceLog.stamp(device, numbered.at(), now(), before);
      if (log.append(new Entry(numbered.number(), stamp, numbered.at(), event))) {
        refresh();
        return new Receipt.Kept(numbered.number());
      }
    }
  }

  /** The number of a device's last event that is kept, as far as the log was read; 0 for none. */
  public long last(Device device) {
    return log.last(device.name());
  }

  private Event event(Device device, Asked asked) throws JobException {
    return switch (asked) {
      case Asked.Named(var name) -> new Event.Named(shortened(name));
      case Asked.Ticked(var setup, var state, var details) -> tick(setup, state, details);
      case Asked.Commented(var setup, var frames, var text, var by) ->
          commented(setup, frames, text, by);
      case Asked.TakenBack(var number) -> new Event.TakenBack(own(device, number));
    };
  }

  private Stamp own(Device device, long number) throws JobException {
    return folding
        .numbered(device.name(), number)
        .filter(
            entry ->
                entry.event() instanceof Event.Marked || entry.event() instanceof Event.Commented)
        .filter(entry -> !folding.isTakenBack(entry))
        .map(Entry::stamp)
        .orElseThrow(
            () ->
                new JobException(
                    Text.of("there is nothing of this device that could be taken back"),
                    name(),
                    Text.of("What was done elsewhere is taken back there.")));
  }

  // Comments

  /** What people said of setups and frames, in the order in which they did. */
  public synchronized List<Comment> comments() {
    return fold.comments().stream()
        .map(comment -> comment.shown(called(comment.station())))
        .toList();
  }

  /**
   * Writes down what somebody says of a setup, or of a frame of it; it is on the disk when this
   * returns.
   *
   * @param frames the frame, by each identity that it is known by; empty where it is of the setup
   * @param text what is said, {@link Comment#LONGEST} letters at most
   * @param by who says it; may be empty
   * @throws JobException if the list has no such setup, or nothing is said
   */
  public synchronized Undo comment(String setup, List<FrameId> frames, String text, String by)
      throws IOException, JobException {
    refresh();
    return undoable(commented(setup, frames, text, by));
  }

  private Event commented(String setup, List<FrameId> frames, String text, String by)
      throws JobException {
    var found = setup(setup);
    var line = Comment.line(text);
    if (line.isBlank()) {
      throw new JobException(
          Text.of("a comment needs words"),
          "setup " + found.code(),
          Text.of("Write what is to be said."));
    }
    if (line.length() > Comment.LONGEST) {
      throw new JobException(
          Text.of("a comment has at most {0} letters", Comment.LONGEST),
          "setup " + found.code(),
          Text.of("Say it in two."));
    }
    return new Event.Commented(found.code(), List.copyOf(frames), line, shortened(by));
  }

  private static String shortened(String name) {
    return PlainText.start(PlainText.line(name.strip()), Asked.LONGEST_NAME);
  }

  // The list

  /**
   * Reads a client's list for this job: each setup is tried as its frames will be named, and what
   * was chosen for an earlier list with the same headings holds again, as far as the log was read.
   * From any thread.
   *
   * @param options what a person says about how to read it
   */
  public ListReading readList(Path file, ListOptions options) {
    return readList(file, options, fold.listsRead());
  }

  /** The same without what was chosen before. From any thread. */
  public ListReading readListAnew(Path file, ListOptions options) {
    return readList(file, options, new LinkedHashMap<>());
  }

  private ListReading readList(
      Path file, ListOptions options, SequencedMap<ListForm, KeptOptions> kept) {
    return switch (ListFile.of(file)) {
      case ListFile.Content content ->
          FamiliarList.read(content, options, ConventionFit.of(convention, values), kept);
      case ListFile.Unreadable unreadable -> unreadable.refused();
    };
  }

  /** Imports a list that was read, and keeps what was chosen for it. */
  public ListChange importList(ListReading.Understood reading) throws IOException {
    var change = importList(reading.list());
    keepChoices(reading);
    return change;
  }

  /** Keeps what was chosen for a list, for the next one with the same headings. */
  public synchronized void keepChoices(ListReading.Understood reading) throws IOException {
    for (var event : FamiliarList.event(reading, fold.listsRead())) {
      append(event);
    }
  }

  /**
   * What of a setup a client's list may say for the names of frames: the label that people see, by
   * the field of the convention.
   */
  public SequencedMap<String, String> listFields() {
    return ConventionFit.labels(convention, values);
  }

  /**
   * What importing this list would change, as far as the log was read; nothing is written or looked
   * at. From any thread.
   *
   * @param counted the frames, as they were counted last
   */
  public ListChange previewImport(ShotList incoming, Tally counted) {
    var framed = framed(counted);
    synchronized (this) {
      return ListMerge.of(fold.list(), planned(incoming), isWorkedOn(framed)).change();
    }
  }

  /** What importing this list would change; nothing is written. */
  public ListChange previewImport(ShotList incoming) throws IOException {
    var framed = framed();
    synchronized (this) {
      refresh();
      return ListMerge.of(fold.list(), planned(incoming), isWorkedOn(framed)).change();
    }
  }

  /**
   * Imports a list. Ticks, sign-offs and frames stay; setups that the list no longer has stay too
   * if they were worked on.
   *
   * @return what changed
   */
  public ListChange importList(ShotList incoming) throws IOException {
    var framed = framed();
    synchronized (this) {
      refresh();
      return put(ListMerge.of(fold.list(), planned(incoming), isWorkedOn(framed)));
    }
  }

  /**
   * Imports those lines of a list that were accepted, by their setups' codes: a new setup comes, a
   * changed one changes, a missing one goes only if its code is among them.
   */
  public ListChange importList(ShotList incoming, Set<String> acceptedCodes) throws IOException {
    var framed = framed();
    synchronized (this) {
      refresh();
      return put(ListMerge.of(fold.list(), planned(incoming), isWorkedOn(framed), acceptedCodes));
    }
  }

  /** The setups that have frames, by their canonical keys. */
  private Set<String> framed() throws IOException {
    return framed(tally());
  }

  private static Set<String> framed(Tally counted) {
    return counted.bySetup().keySet().stream().map(Setup::canonicalKey).collect(Collectors.toSet());
  }

  /** What came from another job is in no list of this one's client, and stays too. */
  private Predicate<String> isWorkedOn(Set<String> framed) {
    var came =
        fold.moves().came().keySet().stream().map(Setup::canonicalKey).collect(Collectors.toSet());
    return key -> folding.isWorkedOn(key) || framed.contains(key) || came.contains(key);
  }

  /** A list without the setups that were given to other jobs. */
  private ShotList planned(ShotList incoming) {
    var moves = fold.moves();
    return moves.given().isEmpty()
        ? incoming
        : new ShotList(
            incoming.setups().stream()
                .filter(
                    setup -> fold.index().setup(setup.code()).isPresent() || !moves.isAway(setup))
                .toList());
  }

  private ListChange put(ListMerge merge) throws IOException {
    var event = merge.event();
    if (event.isPresent()) {
      append(event.get());
    }
    return merge.change();
  }

  /**
   * Puts the setups in another order; codes left out keep their order behind the others.
   *
   * @return how it is undone; nothing if they are in this order already
   */
  public synchronized Optional<Undo> reorder(List<String> codes) throws IOException, JobException {
    refresh();
    var order = new LinkedHashSet<String>();
    for (var code : codes) {
      order.add(setup(code).code());
    }
    order.addAll(fold.list().codes());
    return List.copyOf(order).equals(fold.list().codes())
        ? Optional.empty()
        : Optional.of(change(List.of(), List.copyOf(order)));
  }

  /**
   * Takes this station's last change of the list back, where that was another order of its setups.
   */
  public synchronized JobState takeBackOrder() throws IOException, JobException {
    refresh();
    var last = folding.last(log.station(), event -> event instanceof Event.ListChanged);
    if (last.isEmpty() || !isOrder(last.get().event())) {
      throw new JobException(
          Text.of("the last change that this computer made to the list is no change of its order"),
          name(),
          Text.of("What other computers did is taken back there."));
    }
    return append(new Event.TakenBack(last.get().stamp()));
  }

  private static boolean isOrder(Event event) {
    return event instanceof Event.ListChanged(var put, var removed, _)
        && put.isEmpty()
        && removed.isEmpty();
  }

  /**
   * What keeps the frames of such a setup from being named, and what their names would say of it.
   * From any thread.
   */
  public ListFit.Made tryNames(Setup setup) {
    return ConventionFit.of(convention, values).make(setup);
  }

  /**
   * Adds a setup to the list.
   *
   * @param behind the setup that it comes right behind; at the end if empty
   * @throws JobException if the list has one of that code, or its frames could not be named
   */
  public synchronized Undo addSetup(Setup setup, Optional<String> behind)
      throws IOException, JobException {
    refresh();
    var there = fold.index().setup(setup.code());
    if (there.isPresent()) {
      throw new JobException(
          Text.of("the list has a setup {0} already", there.get().code()),
          name(),
          Text.of("Give the new one another number."));
    }
    var given = fold.moves().given(setup.code());
    if (given.isPresent()) {
      throw new JobException(
          Text.of(
              "setup {0} was given to {1}", given.get().setup().code(), given.get().to().name()),
          name(),
          Text.of("Give the new one another number."));
    }
    requireNames(setup);
    var order = new ArrayList<>(fold.list().codes());
    order.add(
        behind.isPresent() ? order.indexOf(setup(behind.get()).code()) + 1 : order.size(),
        setup.code());
    return change(List.of(setup), List.copyOf(order));
  }

  /**
   * Changes what the list says of a setup. Its code stays, and so do its ticks and frames.
   *
   * @return how it is undone; nothing if the list says so already
   * @throws JobException if the list has no setup of that code, or its frames could not be named
   */
  public synchronized Optional<Undo> changeSetup(Setup setup) throws IOException, JobException {
    refresh();
    var before = setup(setup.code());
    if (!before.code().equals(setup.code())) {
      throw new JobException(
          Text.of("setup {0} cannot be called {1} from now on", before.code(), setup.code()),
          name(),
          Text.of("Its ticks and frames go by its number; keep that."));
    }
    if (before.saysTheSameAs(setup)) {
      return Optional.empty();
    }
    requireNames(setup);
    return Optional.of(change(List.of(setup), fold.list().codes()));
  }

  private void requireNames(Setup setup) throws JobException {
    var misfits = tryNames(setup).misfits();
    if (!misfits.isEmpty()) {
      var first = misfits.getFirst();
      throw new JobException(first.what(), "setup " + setup.code(), first.remedy());
    }
  }

  private Undo change(List<Setup> put, List<String> order) throws IOException {
    return undoable(new Event.ListChanged(put, List.of(), order));
  }

  private Undo undoable(Event event) throws IOException {
    var stamp = write(event);
    refresh();
    return () -> {
      synchronized (this) {
        append(new Event.TakenBack(stamp));
      }
    };
  }

  // Before the first frame and after the last

  /** What people ticked, and what was answered last. */
  public Readiness readiness() {
    return fold.readiness();
  }

  /**
   * Writes down that somebody looked after an item of a checklist, or that this no longer holds; it
   * is on the disk when this returns.
   *
   * @param item its id in the checklist
   * @throws JobException if nobody is named
   */
  public synchronized Undo tickItem(String item, boolean ticked, String by)
      throws IOException, JobException {
    var name = shortened(by);
    if (name.isBlank()) {
      throw new JobException(
          Text.of("a tick of a checklist needs the name of who looked"),
          name(),
          Text.of("Say who looked."));
    }
    refresh();
    return undoable(new Event.ItemTicked(item, ticked, name));
  }

  /** Writes down what was answered; it is on the disk when this returns. */
  public synchronized void record(ReadyRecord said) throws IOException {
    refresh();
    append(new Event.ReadyAsked(said));
  }

  // Moves to other jobs and from there

  /** The setups that went from this job to another one and came from one. */
  public SetupMoves moves() {
    return fold.moves();
  }

  /**
   * What keeps a setup from being given to another job, as far as the log was read.
   *
   * @param scan of the frames folder
   */
  public Optional<MoveRefusal> whyNotGiven(String code, FrameScan scan) {
    var now = fold;
    return Giving.refusal(code, now, standing(now, scan), scan);
  }

  /**
   * Gives a setup to another job; it is not shot here from then on, and by nobody until the other
   * job takes it. Given again under the same move, it stays as it is.
   *
   * @param move what tells this move from every other one
   * @param by who asked for it; may be empty
   * @param here what the store calls this job
   * @return why it stays; empty where it is given
   */
  public Optional<MoveRefusal> give(
      UUID move, String code, OtherJob to, String by, UUID here, FrameScan scan)
      throws IOException {
    synchronized (this) {
      refresh();
      if (moves().given(move).isPresent() || moves().ended().contains(move)) {
        return Optional.empty();
      }
      var refusal = whyNotGiven(code, scan);
      if (refusal.isPresent()) {
        return refusal;
      }
      var setup = fold.index().setup(code).orElseThrow();
      give(move, Giving.moved(setup, fold, here), to, by);
      return Optional.empty();
    }
  }

  /** Writes down that a setup was given, where the log lost it. */
  public synchronized void give(UUID move, MovedSetup what, OtherJob to, String by)
      throws IOException {
    append(new Event.Given(move, what, to, shortened(by)));
  }

  /**
   * Writes down what became of a setup that was given away.
   *
   * @param arrived whether the other job took it; it stays here if not
   */
  public synchronized void endGive(UUID move, boolean arrived) throws IOException {
    refresh();
    if (!moves().ended().contains(move)) {
      append(new Event.GiveEnded(move, arrived));
    }
  }

  /**
   * How a setup of another job would come into the list: under the code that it had here once, else
   * under its own, else under one that is free.
   *
   * @param here what the store calls this job
   */
  public synchronized Entering entering(MovedSetup what, UUID here) {
    var codes = new LinkedHashSet<String>();
    Optional.ofNullable(what.codes().get(here)).filter(this::isGiven).ifPresent(codes::add);
    var own = what.setup().code();
    if (fold.index().setup(own).isEmpty() && !isGiven(own)) {
      codes.add(own);
    }
    codes.add(nextCode());
    var why = Text.NONE;
    for (var code : codes) {
      var setup = what.as(code);
      var misfits = tryNames(setup).misfits();
      if (misfits.isEmpty()) {
        return new Entering.As(setup);
      }
      why = why.isEmpty() ? misfits.getFirst().what() : why;
    }
    return new Entering.Refused(
        new MoveRefusal(MoveRefusal.Why.NAMES, own, PlainText.line(why.english())));
  }

  private boolean isGiven(String code) {
    return fold.moves().given(code).isPresent();
  }

  /** A code for one more setup; none that a setup had which was given away. */
  public String nextCode() {
    return fold.list().nextCode(this::isGiven);
  }

  /**
   * Takes a setup of another job into the list. Taken again under the same move, it stays as it is.
   *
   * @param code as {@link #entering} said
   */
  public synchronized void take(UUID move, String code, MovedSetup what, OtherJob from)
      throws IOException {
    refresh();
    if (!moves().taken().contains(move)) {
      append(new Event.Taken(move, code, what, from));
    }
  }

  // Copies

  /** Records what a comparison of copies found; its evidence is on the disk before. */
  public synchronized void recordCompared(ComparedCopies found) throws IOException {
    refresh();
    append(new Event.Compared(found));
  }

  /** The comparisons of copies of all stations in the order in which they were made. */
  public List<ComparedAt> comparisons() {
    return fold.comparisons();
  }

  /** The copies of cards and of the job of all stations in the order in which they were made. */
  public List<CopyRecord> copies() {
    return fold.copies();
  }

  // Sign-offs

  /** The sign-offs that hold, in the order in which they were given, with the frames of a scan. */
  public List<SignOff> signOffs(FrameScan scan) throws IOException {
    var now = fold;
    var standing = standing(now, scan);
    return SignOffs.of(
        now,
        scan,
        standing.tally(),
        unmoved(now, scan, standing),
        times(standing),
        LogProofs.of(new JobLayout(folder)));
  }

  /** Where frames would be had nobody moved any, by their names, and by their times alone. */
  private SignOffs.Unmoved unmoved(Fold now, FrameScan scan, Standing standing) {
    var state = now.state();
    if (state.moves().isEmpty()) {
      return new SignOffs.Unmoved(standing.tally(), standing.tally());
    }
    var zone = clock.getZone();
    var plausible = plausibleTimes();
    var byTimes =
        Attribution.of(
            scan.frames(),
            state.arrivals(),
            state.spans(),
            List.of(),
            _ -> Optional.empty(),
            ViewCodes.onlyOnes(now.list()),
            zone,
            state.slates().among(naming(now.list()).slates()));
    return new SignOffs.Unmoved(
        Standing.attribution(state.withoutMoves(), scan, naming(now.list()), zone).tally(plausible),
        byTimes.tally(plausible));
  }

  /** The log of each station as it is now, with its checksum. */
  public List<LogProof> logProofs() throws IOException {
    return LogProofs.of(new JobLayout(folder)).files();
  }

  /** The shot list as it stood at a time, in the light of all that was taken back since. */
  public synchronized ShotList listAt(Instant time) {
    return folding.at(time).list();
  }

  /** When each setup of the list came to be done, while it is: ticked shot, or the next on set. */
  public SequencedMap<String, Instant> finished() {
    return Finished.of(fold.state(), clock.getZone());
  }

  // Frames

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

  // Slates

  /**
   * The complete frames whose pictures were not searched for slates yet, each once; none before
   * slates of this job are printed, so that a job without slates costs nobody a moment.
   */
  public List<Frame> notLookedAt(FrameScan scan) {
    var known = fold.state().slates();
    if (known.keys().isEmpty()) {
      return List.of();
    }
    return scan.distinct().stream()
        .filter(frame -> frame.complete() && !known.isLookedAt(frame))
        .toList();
  }

  /**
   * Records that pictures were searched for slates.
   *
   * @param found the frames, each with the text of the slate that it shows
   * @return the frames that show a slate which was not known before
   */
  public synchronized Set<FrameId> recordLooks(Map<Frame, Optional<String>> found)
      throws IOException {
    refresh();
    var known = fold.state().slates();
    var looks = new ArrayList<FrameLook>();
    var slates = new HashSet<FrameId>();
    Optional<FormerNames> former = Optional.empty();
    for (var one : found.entrySet()) {
      var frame = one.getKey();
      var slate = one.getValue().filter(_ -> !known.read().containsKey(frame.id()));
      if (known.isLookedAt(frame) && slate.isEmpty()) {
        continue;
      }
      var name = frame.stem();
      if (CameraNumber.of(name).isEmpty()) {
        if (former.isEmpty()) {
          former = Optional.of(FormerNames.of(this));
        }
        name = former.get().first(frame);
      }
      looks.add(new FrameLook(frame.id(), name, slate));
      slate.ifPresent(_ -> slates.add(frame.id()));
    }
    if (!looks.isEmpty()) {
      append(new Event.LookedAt(List.copyOf(looks)));
    }
    return slates;
  }

  /**
   * Puts the setup on set whose slate came just now, unless a person put something else there,
   * which the slate then contradicts.
   *
   * @param slates the frames that were found to show one
   * @return the setup that is on set thereby
   */
  public synchronized Optional<String> putOnSetBySlate(Set<FrameId> slates, FrameScan scan)
      throws IOException {
    refresh();
    var recent = now().minus(JUST_NOW);
    var opened =
        standing(scan).tally().slates().frames().stream()
            .filter(one -> one.frame().knownAs().stream().anyMatch(slates::contains))
            .filter(one -> one.opened().filter(recent::isBefore).isPresent())
            .max(Comparator.comparing(one -> one.opened().get()));
    if (opened.isEmpty() || !(opened.get().slate().says() instanceof SlateSays.OfSetup says)) {
      return Optional.empty();
    }
    var state = state();
    boolean overtaken =
        !state.spans().isEmpty()
            && state.spans().getLast().from().isAfter(opened.get().opened().get());
    if (overtaken || state.onSet().map(OnSet::setup).equals(Optional.of(says.setup()))) {
      return Optional.empty();
    }
    append(
        new Event.Marked(
            says.setup(),
            SetupState.ON_SET,
            MarkDetails.NONE,
            opened.get().frame().knownAs().stream()
                .filter(state.arrivals()::containsKey)
                .findFirst()));
    return Optional.of(says.setup());
  }

  /**
   * Writes down what a person says of a slate.
   *
   * @param frame the frame that shows it, or that is said to
   * @param scan the scan that it is of
   * @throws JobException if that cannot be said of this frame
   */
  public synchronized Undo saySlate(Frame frame, SlateWord word, String by, FrameScan scan)
      throws IOException, JobException {
    refresh();
    var checked = checked(frame, word, standing(scan).tally().slates());
    return undoable(new Event.SlateSaid(List.copyOf(frame.knownAs()), checked, by));
  }

  private SlateWord checked(Frame frame, SlateWord word, SlateTally slates) throws JobException {
    if (word instanceof SlateWord.OfSetup(var code)) {
      return new SlateWord.OfSetup(setup(code).code());
    }
    if (slates.of(frame).isEmpty()) {
      throw new JobException(
          Text.of("{0} shows no slate, as far as is known", frame.stem()),
          name(),
          Text.of("Say which setup it is the slate of, if it is one."));
    }
    return switch (word) {
      case SlateWord.Follow _ -> {
        var doubt = doubt(frame, slates);
        if (!(doubt.says() instanceof SlateSays.OfSetup says)) {
          throw new JobException(
              Text.of("slate {0} names no setup of the list", frame.stem()),
              name(),
              Text.of("Say which setup it is the slate of."));
        }
        yield new SlateWord.Follow(doubt.lasts() ? Optional.of(says.setup()) : Optional.empty());
      }
      case SlateWord.Stay stay -> {
        doubt(frame, slates);
        yield stay;
      }
      default -> word;
    };
  }

  private SlateDoubt doubt(Frame frame, SlateTally slates) throws JobException {
    return slates.doubts().stream()
        .filter(one -> one.frame().id().equals(frame.id()))
        .findFirst()
        .orElseThrow(
            () ->
                new JobException(
                    Text.of("slate {0} contradicts nothing that was on set", frame.stem()),
                    name(),
                    Text.of("Move its frames, if they belong to another setup.")));
  }

  /**
   * Moves frames to a setup, whatever their names and times say.
   *
   * @return how it is undone; nothing if there are no frames
   */
  public synchronized Optional<Undo> moveFrames(
      List<FrameId> frames, String setup, Optional<String> view, String by)
      throws IOException, JobException {
    refresh();
    var found = setup(setup);
    var requested = view(found, view);
    return undoableOf(
        frames, () -> new Event.Moved(List.copyOf(frames), found.code(), requested, by));
  }

  /**
   * Takes back what this station said last of where frames belong, a move or a word about a slate;
   * the log keeps the trace of both.
   */
  public synchronized JobState takeBackMove() throws IOException, JobException {
    return takeBack(
        event -> event instanceof Event.Moved || event instanceof Event.SlateSaid,
        Text.of("this computer made no move of frames that could be taken back"));
  }

  /**
   * Chooses frames for retouching, or chooses them no longer.
   *
   * @param frames for a frame that is known by several identities, each of them
   * @return how it is undone; nothing if there are no frames
   */
  public synchronized Optional<Undo> select(List<FrameId> frames, boolean selected, String by)
      throws IOException {
    refresh();
    return undoableOf(frames, () -> new Event.Selected(List.copyOf(frames), selected, by));
  }

  /**
   * Rates frames, whatever their files say.
   *
   * @param rating from 0, not rated, to {@link JobState#MOST_RATED}
   * @return how it is undone; nothing if there are no frames
   */
  public synchronized Optional<Undo> rate(List<FrameId> frames, int rating, String by)
      throws IOException {
    if (rating < 0 || rating > JobState.MOST_RATED) {
      throw new IllegalArgumentException("a rating of " + rating);
    }
    refresh();
    return undoableOf(frames, () -> new Event.Rated(List.copyOf(frames), rating, by));
  }

  private Optional<Undo> undoableOf(List<FrameId> frames, Supplier<Event> event)
      throws IOException {
    return frames.isEmpty() ? Optional.empty() : Optional.of(undoable(event.get()));
  }

  /** Scans the frames folder; what was read before is not read again. */
  public FrameScan scan() throws IOException {
    return scanner.scan();
  }

  /**
   * Scans the frames folder, and says how far it is.
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

  /** Scans, and counts the frames. */
  public Tally tally() throws IOException {
    return tally(scan());
  }

  /** Counts the frames of a scan. */
  public Tally tally(FrameScan scan) {
    return standing(scan).tally();
  }

  /** Scans, and says where the job stands. */
  public Standing standing() throws IOException {
    return standing(scan());
  }

  /** Where the job stands with the frames of a scan: their counts, and the state of each setup. */
  public Standing standing(FrameScan scan) {
    return standing(fold, scan);
  }

  private Standing standing(Fold now, FrameScan scan) {
    return Standing.of(now.state(), scan, naming(now.list()), clock.getZone(), plausibleTimes());
  }

  /** What happened in the job cannot lie in the future, whatever this computer's clock says. */
  private PlausibleTimes plausibleTimes() {
    var now = log.now();
    return PlausibleTimes.of(began, now.isBefore(latest) ? latest : now);
  }

  /** Learning the names of a list's setups takes a while; the same list is not learnt twice. */
  private FrameNaming naming(ShotList list) {
    var known = naming.filter(one -> one.list().equals(list));
    if (known.isEmpty()) {
      known = Optional.of(new FrameNaming(convention, values, list));
      naming = known;
    }
    return known.get();
  }

  /** The frames of a scan in the order in which they were taken, each body's clock put right. */
  public List<Frame> inOrder(FrameScan scan) {
    return inOrder(scan, times(standing(scan)));
  }

  private static List<Frame> inOrder(FrameScan scan, FrameTimes times) {
    return scan.frames().stream()
        .sorted(Comparator.comparing(times::order).thenComparing(Frame::stem))
        .toList();
  }

  /** Every frame of a scan with how it came to its setup, in the order in which they were taken. */
  public List<FrameLine> frameLines(FrameScan scan) {
    return frameLines(scan, standing(scan));
  }

  /** The same, where it is known already how the job stands with them. */
  public List<FrameLine> frameLines(FrameScan scan, Standing standing) {
    var times = times(standing);
    return FrameLine.all(inOrder(scan, times), standing.state(), standing.tally(), times);
  }

  private FrameTimes times(Standing standing) {
    return new FrameTimes(clock.getZone(), standing.state().arrivals(), standing.tally().cameras());
  }

  /**
   * The names that the frames of a scan are to have by the convention's kind {@code frame},
   * numbered in the order in which they were taken, each body's clock put right. A name that is
   * right already stays; numbers that exist are not used again.
   */
  public FrameNames frameNames(FrameScan scan) {
    var now = fold;
    var standing = standing(now, scan);
    return naming(now.list()).names(folder, scan, standing.tally(), times(standing));
  }

  /**
   * The name that the next frame of a setup is to have when it is taken now: the one that {@link
   * #frameNames} gives it once it is there, after all frames of a scan.
   *
   * @param view the view that is before the camera
   * @param folder where it will lie; what a convention reads from folders is read from this one
   * @throws JobException if the list has no setup of that code
   */
  public NextName nextName(String setup, Optional<String> view, Path folder, FrameScan scan)
      throws JobException {
    var now = fold;
    var standing = standing(now, scan);
    var of = setup(setup);
    var naming = naming(now.list());
    return naming.next(
        this.folder,
        scan,
        standing.tally(),
        times(standing),
        of,
        view.or(() -> ViewCodes.onlyOnes(naming.list()).apply(of.code())),
        folder,
        LocalDateTime.ofInstant(now(), clock.getZone()));
  }

  /** What a view's code stands for by the convention, such as {@code back} for {@code B}. */
  public String viewLabel(String code) {
    return views.label(code);
  }

  /** What a setup still lacks, in words: {@code back: none of 2}. */
  public List<String> missing(Setup setup, Tally tally) {
    return Missing.of(setup, Optional.ofNullable(tally.bySetup().get(setup.code()))).stream()
        .map(missing -> missing.words(views::label))
        .toList();
  }

  /** The frames that people chose, as far as a scan has them, each once. */
  public List<Frame> selects(FrameScan scan) {
    var state = fold.state();
    return scan.distinct().stream().filter(state::isSelect).toList();
  }
}
