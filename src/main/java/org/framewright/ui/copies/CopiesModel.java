package org.framewright.ui.copies;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.transformation.FilteredList;
import org.framewright.base.Problem;
import org.framewright.copies.Burst;
import org.framewright.copies.Compared;
import org.framewright.copies.Comparison;
import org.framewright.copies.Copier;
import org.framewright.copies.CopiesDescription;
import org.framewright.copies.CopiesException;
import org.framewright.copies.CopiesRequest;
import org.framewright.copies.CopyPlan;
import org.framewright.copies.FoundPlace;
import org.framewright.copies.PlaceProgress;
import org.framewright.copies.WaivedFile;
import org.framewright.copies.WriteSpeed;
import org.framewright.copies.device.MountIdentity;
import org.framewright.frames.Frame;
import org.framewright.job.ComparedAt;
import org.framewright.job.Job;
import org.framewright.live.Latest;
import org.framewright.ui.command.TypedWords;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/**
 * The places of a job's copies, what was established of them, and the work on them: one piece at a
 * time. Nothing here writes on a card.
 */
final class CopiesModel {
  /** Folders of backups that were used lately, for the next job too. */
  static final String BACKUPS = "copies.backups";

  /** Who asked last. */
  static final String BY = "copies.by";

  /** On how many disks besides the card each file has to be. */
  static final String NEEDED = "copies.needed";

  private static final Duration SOON = Duration.ofMinutes(1);

  /** What a pace is worth before that, nobody knows. */
  private static final Duration TOO_EARLY = Duration.ofSeconds(2);

  /** A file takes some time whatever its size. */
  private static final long WEIGHT_OF_A_FILE = 1 << 18;

  /** What is under way. */
  enum Doing {
    NOTHING,
    COMPARING,
    COPYING,
    MEASURING
  }

  /**
   * The disk that frames arrive on.
   *
   * @param words what is known of its speed; empty where that is nothing
   * @param slower whether the camera is faster
   */
  record DiskSpeed(String words, boolean slower) {}

  /** What was found in the background. */
  private record Looked(
      List<FoundPlace> places,
      List<Outcome.Earlier> earlier,
      Map<Path, Instant> asked,
      Optional<Burst> burst) {}

  /** What came of a question: an answer, or why it cannot be asked; neither if it was stopped. */
  private record Asked(
      Optional<Outcome.Answered> answered, List<FileLine> lines, Optional<Problem> problem) {
    static final Asked NOTHING = new Asked(Optional.empty(), List.of(), Optional.empty());

    static Asked refused(Problem problem) {
      return new Asked(Optional.empty(), List.of(), Optional.of(problem));
    }
  }

  private final Job job;
  private final Supplier<? extends Collection<Frame>> frames;
  private final Disks disks;
  private final Preferences preferences;
  private final Tasks tasks;
  private final Texts texts;
  private final Clock clock;
  private final Consumer<Throwable> trouble;

  private final ObservableList<PlaceLine> places = FXCollections.observableArrayList();
  private final ReadOnlyObjectWrapper<Doing> doing = new ReadOnlyObjectWrapper<>(Doing.NOTHING);
  private final ReadOnlyObjectWrapper<Way> way = new ReadOnlyObjectWrapper<>(Way.NONE);
  private final ReadOnlyObjectWrapper<Outcome> outcome =
      new ReadOnlyObjectWrapper<>(new Outcome.Before(List.of()));
  private final ReadOnlyObjectWrapper<Optional<Problem>> refused =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<CardAnswer> chosen = new SimpleObjectProperty<>();
  private final ObservableList<FileLine> all = FXCollections.observableArrayList();
  private final FilteredList<FileLine> lines = new FilteredList<>(all);
  private final ReadOnlyObjectWrapper<Map<FileLine.State, Integer>> counts =
      new ReadOnlyObjectWrapper<>(Map.of());
  private final ObjectProperty<Optional<FileLine.State>> only =
      new SimpleObjectProperty<>(Optional.empty());
  private final StringProperty filter = new SimpleStringProperty("");
  private final StringProperty by = new SimpleStringProperty("");
  private final ObjectProperty<Integer> needed =
      new SimpleObjectProperty<>(CopiesRequest.USUALLY_NEEDED);
  private final ReadOnlyStringWrapper again = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<DiskSpeed> diskSpeed =
      new ReadOnlyObjectWrapper<>(new DiskSpeed("", false));
  private final BooleanBinding idle;
  private final BooleanBinding canCompare;
  private final BooleanBinding canSeal;
  private final BooleanBinding canCopy;

  private final Map<Path, PlaceProgress> progress = new LinkedHashMap<>();

  private Map<Path, Instant> asked = Map.of();
  private Optional<Burst> burst = Optional.empty();
  private Optional<WriteSpeed> writeSpeed = Optional.empty();
  private Optional<Running> running = Optional.empty();
  private Instant begun = Instant.EPOCH;
  private Optional<Path> copiedLast = Optional.empty();
  private List<WaivedFile> waived = List.of();
  private Optional<Basis> basis = Optional.empty();
  private boolean mhlLast;

  /**
   * @param frames those that the job has now
   */
  CopiesModel(
      Job job,
      Supplier<? extends Collection<Frame>> frames,
      Disks disks,
      Preferences preferences,
      Tasks tasks,
      Texts texts,
      Clock clock,
      Consumer<Throwable> trouble) {
    this.job = job;
    this.frames = frames;
    this.disks = disks;
    this.preferences = preferences;
    this.tasks = tasks;
    this.texts = texts;
    this.clock = clock;
    this.trouble = trouble;
    by.set(preferences.get(BY).orElseGet(() -> System.getProperty("user.name", "")));
    needed.set(neededLast());
    needed.addListener(
        (_, _, now) -> {
          preferences.put(NEEDED, now);
          showAgain();
        });
    only.addListener(_ -> narrow());
    filter.addListener(_ -> narrow());
    chosen.addListener(_ -> showPlaces());
    idle = Bindings.createBooleanBinding(() -> doing.get() == Doing.NOTHING, doing);
    canCompare =
        Bindings.createBooleanBinding(
            () -> idle.get() && places.stream().anyMatch(CopiesModel::isAsked), idle, places);
    canSeal =
        Bindings.createBooleanBinding(
            () -> canCompare.get() && !folders(PlaceLine.Kind.BACKUP).isEmpty(),
            canCompare,
            places);
    canCopy =
        Bindings.createBooleanBinding(
            () -> idle.get() && places.stream().anyMatch(place -> place.found().there()),
            idle,
            places);
  }

  private int neededLast() {
    double kept = preferences.number(NEEDED, CopiesRequest.USUALLY_NEEDED);
    return kept == Math.rint(kept) && kept >= 1 && kept <= CopiesRequest.MOST_NEEDED
        ? (int) kept
        : CopiesRequest.USUALLY_NEEDED;
  }

  private static boolean isAsked(PlaceLine place) {
    return place.kind() != PlaceLine.Kind.JOB && place.found().there();
  }

  /** The places: the cards, the job, the backups. */
  ObservableList<PlaceLine> places() {
    return places;
  }

  /** What is under way. */
  ReadOnlyObjectProperty<Doing> doing() {
    return doing.getReadOnlyProperty();
  }

  /** Whether nothing is. */
  BooleanBinding idle() {
    return idle;
  }

  /** How far it is. */
  ReadOnlyObjectProperty<Way> way() {
    return way.getReadOnlyProperty();
  }

  /** What there is to say. */
  ReadOnlyObjectProperty<Outcome> outcome() {
    return outcome.getReadOnlyProperty();
  }

  /** Why the last question could not be asked. */
  ReadOnlyObjectProperty<Optional<Problem>> refused() {
    return refused.getReadOnlyProperty();
  }

  /** The card whose answer is read just now; null while there is none. */
  ObjectProperty<CardAnswer> chosen() {
    return chosen;
  }

  /** The files of the last comparison that are let through. */
  ObservableList<FileLine> lines() {
    return lines;
  }

  /** How many files there are of each state. */
  ReadOnlyObjectProperty<Map<FileLine.State, Integer>> counts() {
    return counts.getReadOnlyProperty();
  }

  /** The one state whose files are shown; all of them if there is none. */
  ObjectProperty<Optional<FileLine.State>> only() {
    return only;
  }

  /** Words that a file has to have. */
  StringProperty filter() {
    return filter;
  }

  /** Who asks. */
  StringProperty by() {
    return by;
  }

  /** On how many disks besides the card each file has to be, from 1 to 9. */
  ObjectProperty<Integer> needed() {
    return needed;
  }

  /** Why the answers that are shown do not hold any more; empty while they do. */
  ReadOnlyStringProperty again() {
    return again.getReadOnlyProperty();
  }

  /** How fast the disk is that frames arrive on. */
  ReadOnlyObjectProperty<DiskSpeed> diskSpeed() {
    return diskSpeed.getReadOnlyProperty();
  }

  /** Whether the places can be compared now. */
  BooleanBinding canCompare() {
    return canCompare;
  }

  /** Whether there are backups that can get a generation of their ASC MHL as well. */
  BooleanBinding canSeal() {
    return canSeal;
  }

  /** Whether something can be copied now. */
  BooleanBinding canCopy() {
    return canCopy;
  }

  // The places

  /** Looks which places are there, and what the log says; nothing in them is read. */
  void look() {
    var listed = places.stream().map(PlaceLine::folder).toList();
    var kept = preferences.recentPaths(BACKUPS);
    var now = List.copyOf(frames.get());
    tasks.quietly(() -> looked(listed, kept, now), this::show, trouble);
  }

  private Looked looked(List<Path> listed, List<Path> kept, List<Frame> now) {
    var comparisons = job.comparisons();
    var last =
        comparisons.isEmpty() ? Optional.<ComparedAt>empty() : Optional.of(comparisons.getLast());
    var folders = new LinkedHashSet<>(listed);
    folders.add(job.folder());
    last.ifPresent(run -> run.found().places().forEach(place -> folders.add(Path.of(place))));
    var found = new ArrayList<FoundPlace>();
    for (var folder : folders) {
      var place = FoundPlace.of(folder, disks.volumes());
      // A card that is gone is not missed; a backup that was compared before is.
      if (place.there() || listed.contains(folder) || !isCardOf(last, folder)) {
        found.add(place);
      }
    }
    kept.stream()
        .filter(folder -> !folders.contains(folder))
        .map(folder -> FoundPlace.of(folder, disks.volumes()))
        .filter(place -> place.there() && !place.looksLikeCard())
        .forEach(found::add);
    var when = new HashMap<Path, Instant>();
    for (var run : comparisons) {
      run.found().places().forEach(place -> when.put(Path.of(place), run.at()));
    }
    return new Looked(List.copyOf(found), earlier(), Map.copyOf(when), Burst.fastest(now));
  }

  private static boolean isCardOf(Optional<ComparedAt> run, Path folder) {
    return run.stream()
        .flatMap(one -> one.found().cards().stream())
        .anyMatch(card -> Path.of(card.folder()).equals(folder));
  }

  private void show(Looked looked) {
    asked = looked.asked();
    burst = looked.burst();
    for (var place : looked.places()) {
      line(place.folder()).ifPresentOrElse(line -> line.look(place), () -> places.add(line(place)));
    }
    sort();
    if (outcome.get() instanceof Outcome.Before) {
      outcome.set(new Outcome.Before(looked.earlier()));
    }
    showPlaces();
    showAgain();
    showSpeed();
  }

  private Optional<PlaceLine> line(Path folder) {
    return places.stream().filter(line -> line.folder().equals(folder)).findFirst();
  }

  private PlaceLine line(FoundPlace place) {
    var kind =
        place.folder().equals(job.folder())
            ? PlaceLine.Kind.JOB
            : place.looksLikeCard() ? PlaceLine.Kind.CARD : PlaceLine.Kind.BACKUP;
    return new PlaceLine(place, kind);
  }

  private void sort() {
    var sorted = new ArrayList<>(places);
    sorted.sort(Comparator.comparing(PlaceLine::kind).thenComparing(PlaceLine::name));
    if (!sorted.equals(List.copyOf(places))) {
      places.setAll(sorted);
    }
  }

  /** One more place; it is a card if it has a card's folder at its top. */
  void add(Path folder) {
    tasks.quietly(
        () -> FoundPlace.of(folder, disks.volumes()),
        found -> {
          if (line(folder).isEmpty()) {
            var line = line(found);
            places.add(line);
            if (line.kind() == PlaceLine.Kind.BACKUP) {
              preferences.remember(BACKUPS, folder.toString());
            }
            sort();
          }
          showPlaces();
        },
        trouble);
  }

  /** Whether a place can be taken off the list. */
  boolean canRemove(PlaceLine place) {
    return place != null && idle.get() && place.kind() != PlaceLine.Kind.JOB;
  }

  /** Takes a place off the list; nothing happens to the folder. */
  void remove(PlaceLine place) {
    if (canRemove(place)) {
      places.remove(place);
      var kept = new ArrayList<>(preferences.recent(BACKUPS));
      if (kept.remove(place.folder().toString())) {
        preferences.put(BACKUPS, kept);
      }
    }
  }

  /** Whether a person may say whether a place is a card. */
  boolean canTurn(PlaceLine place) {
    return canRemove(place);
  }

  /** Whether a place looks like a card, so that it is a backup by a person's word only. */
  boolean needsWord(PlaceLine place) {
    return place.kind() == PlaceLine.Kind.CARD && place.found().looksLikeCard();
  }

  /** Makes a card of a backup, or the other way round; what looks like a card stays one. */
  void turn(PlaceLine place) {
    if (canTurn(place) && !needsWord(place)) {
      place.turnTo(
          place.kind() == PlaceLine.Kind.CARD ? PlaceLine.Kind.BACKUP : PlaceLine.Kind.CARD);
      turned();
    }
  }

  /** Whether a person can be asked for that word; where not, it is told why. */
  boolean canAskForWord(PlaceLine place) {
    refused.set(place.found().noBackup());
    return canTurn(place) && needsWord(place) && place.found().noBackup().isEmpty();
  }

  /**
   * Takes a person's word that a place is a backup although it looks like a card.
   *
   * <p>A card must never vouch for another one, and what a person says cannot be checked. So the
   * core refuses it at the top of a disk that looks like a card, and a place on the disk of a card
   * that is asked about never counts. Here the word holds for the volume that it was said of and
   * for as long as that stays connected: never for the next card in the same reader, nor in the
   * next run. What is left is a folder with a copied card in it, or a person who is wrong about a
   * folder inside a card; the question warns of that, and the answer names what it rests on.
   */
  void sayBackup(PlaceLine place) {
    if (canAskForWord(place)) {
      place.sayBackup();
      turned();
    }
  }

  private void turned() {
    sort();
    showPlaces();
    showAgain();
  }

  // Comparing

  /** Compares what is there, in the background. */
  void compare() {
    compare(false);
  }

  /** The same, and each backup gets a generation of its ASC MHL. */
  void compareAndSeal() {
    if (canSeal.get()) {
      compare(true);
    }
  }

  private void compare(boolean mhl) {
    if (!canCompare.get()) {
      return;
    }
    preferences.put(BY, by.get().strip());
    var said = new LinkedHashMap<Path, MountIdentity>();
    places.stream()
        .filter(place -> place.isSaidBackup() && place.found().there())
        .forEach(place -> said.put(place.folder(), place.said().orElseThrow()));
    var request =
        new CopiesRequest(
            folders(PlaceLine.Kind.BACKUP).stream()
                .filter(folder -> !said.containsKey(folder))
                .toList(),
            folders(PlaceLine.Kind.CARD),
            List.copyOf(said.keySet()),
            needed.get(),
            waived,
            by.get().strip(),
            mhl);
    var asking = now();
    var hears = newProgress();
    begin(
        Doing.COMPARING,
        texts.get("copies.comparing"),
        steps -> {
          for (var one : said.entrySet()) {
            var now = FoundPlace.of(one.getKey(), disks.volumes());
            if (!PlaceLine.isAsSaid(one.getValue(), now)) {
              return Asked.refused(another(now));
            }
          }
          try {
            return new Comparison(job, disks.volumes())
                .run(request, steps, hears)
                .map(compared -> answered(compared, Set.copyOf(said.keySet())))
                .orElse(Asked.NOTHING);
          } catch (CopiesException e) {
            return Asked.refused(e.problem());
          }
        },
        result -> show(result, asking));
  }

  /** Something else lies there by now than what a person called a backup. */
  private Problem another(FoundPlace place) {
    return new Problem(
        texts.get("copies.backup.another"),
        place.folder().toString(),
        texts.get("copies.backup.another.remedy"));
  }

  private List<Path> folders(PlaceLine.Kind kind) {
    return places.stream()
        .filter(place -> place.kind() == kind && place.found().there())
        .map(PlaceLine::folder)
        .toList();
  }

  private Asked answered(Compared compared, Set<Path> said) {
    var answers =
        compared.cards().stream()
            .map(card -> CardAnswer.of(card, compared.at(), said, clock.getZone(), texts))
            .sorted(Comparator.comparing(CardAnswer::answer))
            .toList();
    var summary = texts.get("copies.summary", compared.frames().once(), compared.frames().frames());
    return new Asked(
        Optional.of(new Outcome.Answered(compared, answers, summary)),
        FileLine.of(compared, texts),
        Optional.empty());
  }

  private void show(Asked result, Basis asking) {
    refused.set(result.problem());
    result
        .answered()
        .ifPresent(
            answered -> {
              var numbers = new EnumMap<FileLine.State, Integer>(FileLine.State.class);
              result.lines().forEach(line -> numbers.merge(line.state(), 1, Integer::sum));
              counts.set(numbers);
              all.setAll(result.lines().stream().map(line -> line.waived(waived)).toList());
              basis = Optional.of(new Basis(asking.needed(), lapsed(asking), asking.waived()));
              only.set(Optional.empty());
              outcome.set(answered);
              chosen.set(answered.answers().isEmpty() ? null : answered.answers().getFirst());
            });
    sort();
    showAgain();
    look();
  }

  /** What places are taken for, once words that hold for one comparison have lapsed. */
  private Map<Path, PlaceLine.Kind> lapsed(Basis asking) {
    var kinds = new HashMap<>(asking.kinds());
    places.stream()
        .filter(PlaceLine::isSaidOnce)
        .forEach(
            place -> {
              place.turnTo(PlaceLine.Kind.CARD);
              kinds.put(place.folder(), PlaceLine.Kind.CARD);
            });
    return Map.copyOf(kinds);
  }

  // What need not be kept

  /** Whether a person may say that a file need not be kept, or take that back. */
  boolean canWaive(FileLine line) {
    return line != null && idle.get() && line.canBeWaived();
  }

  /**
   * From the next comparison on, this very file need not be kept: neither whole, nor in another
   * place. It is its content that is meant; another file of that name, on a card that comes later,
   * is asked for as ever.
   */
  void waive(FileLine line, String person) {
    if (canWaive(line) && !person.isBlank()) {
      var file = line.damaged().orElseThrow();
      var all = new ArrayList<>(waived);
      all.removeIf(line::isAbout);
      all.add(new WaivedFile(file.file(), file.sha256(), person.strip()));
      waived = List.copyOf(all);
      showWaived();
    }
  }

  /** Takes that back. */
  void keep(FileLine line) {
    if (canWaive(line)) {
      waived = waived.stream().filter(one -> !line.isAbout(one)).toList();
      showWaived();
    }
  }

  private void showWaived() {
    for (int i = 0; i < all.size(); i++) {
      var now = all.get(i).waived(waived);
      if (!now.equals(all.get(i))) {
        all.set(i, now);
      }
    }
    showAgain();
  }

  /** Who said so last. */
  String waivedLastBy() {
    return waived.isEmpty() ? "" : waived.getLast().by();
  }

  /** An answer holds for what was asked, and not for what a person has said since. */
  private void showAgain() {
    again.set(
        basis
            .filter(_ -> outcome.get() instanceof Outcome.Answered)
            .map(then -> String.join("\n", then.changes(now(), texts)))
            .orElse(""));
  }

  /** Whether an answer does not hold any more. */
  boolean isPast(CardAnswer answer) {
    return basis.filter(then -> then.isPast(answer.folder(), now())).isPresent();
  }

  private Basis now() {
    return new Basis(
        needed.get(),
        places.stream().collect(Collectors.toMap(PlaceLine::folder, PlaceLine::kind)),
        waived);
  }

  // Copying

  /** What can be copied and where to, as one would ask first. */
  CopyQuestion question() {
    var cards = new ArrayList<>(places.stream().filter(place -> place.found().there()).toList());
    var first = Optional.ofNullable(chosen.get()).map(CardAnswer::folder).or(() -> copiedLast);
    cards.sort(
        Comparator.comparing((PlaceLine line) -> !first.equals(Optional.of(line.folder())))
            .thenComparing(PlaceLine::kind));
    var question =
        new CopyQuestion(
            cards,
            places.stream()
                .filter(place -> place.kind() == PlaceLine.Kind.BACKUP && place.found().there())
                .filter(place -> !place.found().looksLikeCard())
                .map(PlaceLine::folder)
                .toList(),
            LocalDate.ofInstant(clock.instant(), clock.getZone()));
    question.mhl().set(mhlLast);
    return question;
  }

  /** Copies, in the background. What is copied is only read. */
  void copy(CopyQuestion question) {
    if (!canCopy.get() || !question.ready().get()) {
      return;
    }
    var from = question.from().get();
    var to = question.targets();
    copiedLast = Optional.of(from.folder());
    mhlLast = question.mhl().get();
    var plain = new Copier(disks.volumes());
    var copier = mhlLast ? plain.withMhl() : plain;
    question.disks().stream().filter(disk -> line(disk).isEmpty()).forEach(this::add);
    var hears = newProgress();
    begin(
        Doing.COPYING,
        texts.get("copies.copying", from.name()),
        steps -> {
          var plan = CopyPlan.of(from.folder(), to);
          return new CopyWords(texts).of(plan, copier.copy(job, plan, steps, hears));
        },
        result -> {
          chosen.set(null);
          refused.set(Optional.empty());
          outcome.set(result);
          showAgain();
          look();
        });
  }

  // The disk that frames arrive on

  /** Measures how fast the disk writes that frames arrive on. */
  void measure() {
    if (!idle.get()) {
      return;
    }
    begin(
        Doing.MEASURING,
        texts.get("copies.measuring"),
        steps -> WriteSpeed.measure(job, steps),
        result -> {
          writeSpeed = result.or(() -> writeSpeed);
          showSpeed();
        });
  }

  private void showSpeed() {
    var words = new ArrayList<String>();
    boolean slower =
        burst.isPresent() && writeSpeed.filter(one -> one.isSlowerThan(burst.get())).isPresent();
    writeSpeed
        .map(one -> texts.get("copies.disk.writes", CopyWords.speed(texts, one.bytesPerSecond())))
        .or(() -> burst.map(_ -> texts.get("copies.disk.notMeasured")))
        .ifPresent(words::add);
    burst
        .map(one -> texts.get("copies.disk.burst", CopyWords.speed(texts, one.bytesPerSecond())))
        .ifPresent(words::add);
    if (slower) {
      words.add(texts.get("copies.disk.slower"));
    }
    diskSpeed.set(new DiskSpeed(String.join("\n", words), slower));
  }

  // The work

  /** Asks the work under way to stop. */
  void stop() {
    running.ifPresent(Running::cancel);
  }

  /** Work that goes on while nobody looks is told to stop: the job is closed. */
  void close() {
    stop();
  }

  private Consumer<PlaceProgress> newProgress() {
    progress.clear();
    begun = clock.instant();
    var latest = new Latest<Map<Path, PlaceProgress>>(tasks.ui(), this::hear);

    var heard = new LinkedHashMap<Path, PlaceProgress>();
    return one -> {
      synchronized (heard) {
        heard.put(one.folder(), one);
        latest.offer(new LinkedHashMap<>(heard));
      }
    };
  }

  private void hear(Map<Path, PlaceProgress> now) {
    if (idle.get()) {
      return; // What comes late is of work that is over.
    }
    progress.clear();
    progress.putAll(now);
    showWay();
    showPlaces();
  }

  private void showWay() {
    int files = 0;
    int ofFiles = 0;
    long bytes = 0;
    long ofBytes = 0;
    for (var one : progress.values()) {
      files += one.files();
      ofFiles += one.ofFiles();
      bytes += one.bytes();
      ofBytes += one.ofBytes();
    }
    boolean copying = doing.get() == Doing.COPYING;
    // All targets are at the same file: it is counted once.
    int share = copying ? Math.max(1, progress.size()) : 1;
    var left = left(bytes + files * WEIGHT_OF_A_FILE, ofBytes + ofFiles * WEIGHT_OF_A_FILE);
    way.set(
        new Way(
            way.get().what(),
            figure(files / share, ofFiles / share, bytes / share, ofBytes / share),
            left,
            ofBytes == 0 ? -1 : (double) bytes / ofBytes,
            copying ? progress.values().stream().map(this::target).toList() : List.of()));
  }

  private Way.Target target(PlaceProgress one) {
    return new Way.Target(
        one.folder().toString(),
        texts.apart(
            texts.get("copies.of", one.files(), one.ofFiles()),
            one.bytesPerSecond() >= 1 ? CopyWords.speed(texts, one.bytesPerSecond()) : "",
            left(one)),
        one.ofBytes() == 0 ? 0 : (double) one.bytes() / one.ofBytes());
  }

  private String figure(int files, int ofFiles, long bytes, long ofBytes) {
    return texts.get(
        "copies.figure",
        files,
        ofFiles,
        texts.formats().size(bytes),
        texts.formats().size(ofBytes));
  }

  private String left(PlaceProgress one) {
    return left(
        one.bytes() + one.files() * WEIGHT_OF_A_FILE,
        one.ofBytes() + one.ofFiles() * WEIGHT_OF_A_FILE);
  }

  private String left(long bytes, long ofBytes) {
    var passed = Duration.between(begun, clock.instant());
    if (bytes <= 0 || passed.compareTo(TOO_EARLY) < 0) {
      return "";
    }
    var left =
        Duration.ofMillis(Math.round((double) passed.toMillis() * (ofBytes - bytes) / bytes));
    return left.compareTo(SOON) < 0
        ? texts.get("copies.leftSoon")
        : texts.get("copies.left", texts.formats().workingTime(left));
  }

  private <T> void begin(Doing what, String title, Tasks.Work<T> work, Consumer<? super T> then) {
    doing.set(what);
    way.set(new Way(title, "", "", -1, List.of()));
    refused.set(Optional.empty());
    var task =
        tasks.run(
            title,
            work,
            result -> {
              ended();
              then.accept(result);
            },
            failure -> {
              ended();
              trouble.accept(failure);
              look();
            });
    if (!task.finished().get()) {
      running = Optional.of(task);
    }
  }

  private void ended() {
    running = Optional.empty();
    progress.clear();
    doing.set(Doing.NOTHING);
    way.set(Way.NONE);
    showPlaces();
  }

  // Words

  private void narrow() {
    var words = TypedWords.of(filter.get()).words();
    var state = only.get();
    lines.setPredicate(
        words.isEmpty() && state.isEmpty()
            ? null
            : line -> state.filter(one -> one != line.state()).isEmpty() && line.has(words));
  }

  private void showPlaces() {
    places.forEach(place -> place.show(shown(place)));
    canCompare.invalidate();
    canSeal.invalidate();
    canCopy.invalidate();
  }

  private PlaceLine.Shown shown(PlaceLine place) {
    var found = place.found();
    if (!found.there()) {
      return new PlaceLine.Shown(
          place.kind(),
          found.name(),
          found.folder().toString(),
          texts.get("copies.away"),
          "",
          "",
          -1,
          true);
    }
    var size =
        found.total() == 0
            ? ""
            : texts.get(
                "copies.size",
                texts.formats().size(found.total()),
                texts.formats().size(found.free()));
    var now = progress.get(place.folder());
    if (now != null && doing.get() == Doing.COMPARING) {
      return new PlaceLine.Shown(
          place.kind(),
          found.name(),
          found.device(),
          texts.apart(
              texts.get(
                  "copies.bytes",
                  texts.formats().size(now.bytes()),
                  texts.formats().size(now.ofBytes())),
              left(now)),
          "",
          texts.get("copies.of", now.files(), now.ofFiles()),
          now.ofBytes() == 0 ? 1 : (double) now.bytes() / now.ofBytes(),
          false);
    }
    return standing(place, size);
  }

  private PlaceLine.Shown standing(PlaceLine place, String size) {
    var name = place.name();
    var device = place.found().device();
    var when =
        Optional.ofNullable(asked.get(place.folder()))
            .or(() -> Optional.ofNullable(asked.get(place.folder().toAbsolutePath().normalize())))
            .map(at -> texts.get("copies.compared", time(at)))
            .orElseGet(() -> texts.get("copies.notCompared"));
    var compared = compared(place);
    if (compared.isEmpty()) {
      return new PlaceLine.Shown(place.kind(), name, device, when, size, "", -1, false);
    }
    var troubles = compared.get().troubles().size();
    int have = held(compared.get());
    int of = have + lacking(compared.get());
    return new PlaceLine.Shown(
        place.kind(),
        name,
        device,
        texts.apart(
            when,
            compared.get().mhl().isPresent() ? texts.get("copies.mhl") : "",
            troubles == 0 ? "" : texts.get("copies.troubles", troubles)),
        size,
        of == 0 ? "" : texts.get("copies.of", have, of),
        of == 0 ? -1 : (double) have / of,
        troubles > 0);
  }

  private Optional<Compared.PlaceCompared> compared(PlaceLine place) {
    return outcome.get() instanceof Outcome.Answered answered
        ? answered.compared().places().stream()
            .filter(one -> one.folder().equals(place.folder()))
            .findFirst()
        : Optional.empty();
  }

  /** Of the card that is read about, else of all cards and the job. */
  private int held(Compared.PlaceCompared place) {
    return (int) place.same().stream().map(Compared.Pair::file).filter(this::isOfChosen).count();
  }

  private int lacking(Compared.PlaceCompared place) {
    return (int)
        (place.missing().stream().filter(this::isOfChosen).count()
            + place.different().stream().map(Compared.Pair::file).filter(this::isOfChosen).count()
            + place.samePicture().stream()
                .map(Compared.Pair::file)
                .filter(this::isOfChosen)
                .count());
  }

  private boolean isOfChosen(Path file) {
    return chosen.get() == null || file.startsWith(chosen.get().folder());
  }

  private List<Outcome.Earlier> earlier() {
    return CopiesDescription.lastAnswers(job).reversed().stream()
        .map(
            last -> {
              var answer = Answer.of(last.card().answer());
              var on = last.card().on().stream().map(CardAnswer::lastName).toList();
              return new Outcome.Earlier(
                  answer,
                  texts.get(
                      "copies.last." + answer.word(),
                      last.card().name(),
                      time(last.at().at()),
                      last.at().found().by().isBlank()
                          ? last.at().station()
                          : last.at().found().by(),
                      last.card().files(),
                      texts.formats().list(on)));
            })
        .toList();
  }

  /** The time of day; the day too where it is another. */
  private String time(Instant at) {
    var local = LocalDateTime.ofInstant(at, clock.getZone());
    return local.toLocalDate().equals(LocalDate.ofInstant(clock.instant(), clock.getZone()))
        ? texts.formats().time(local)
        : texts.formats().dayAndTime(local);
  }
}
