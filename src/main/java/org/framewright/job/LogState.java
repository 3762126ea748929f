package org.framewright.job;

import java.time.Duration;
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
import java.util.Objects;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Consumer;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameMove;
import org.framewright.frames.OnSetSpan;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/**
 * The state while events are applied to it, one after the other. Each change says how to undo it;
 * what was undone in reverse order has never been. A fold of it makes anew only what changed since
 * the last one.
 */
final class LogState {
  static final Consumer<Runnable> NO_UNDOING = undo -> {};

  /**
   * How long frames still fall to a setup that was ticked shot when nothing else comes on set:
   * files are on their way, and the client asks for one more. Common practice, no source.
   */
  private static final Duration LINGERS = Duration.ofHours(1);

  private static final int MOST_REMARKS = 20;
  private static final int LONGEST_TYPE = 40;

  /** Where a setup stands when it is not on set. */
  private record Mark(
      SetupState state, Instant since, Optional<Instant> shotAt, MarkDetails details) {
    /**
     * @param before what was ticked before; null for nothing
     */
    static Mark of(Event.Marked marked, Instant time, Mark before) {
      var shotAt =
          switch (marked.state()) {
            case SHOT -> Optional.of(time);
            case SIGNED_OFF -> Optional.ofNullable(before).flatMap(Mark::shotAt);
            case TO_SHOOT, ON_SET, PICKUP, DROPPED -> Optional.<Instant>empty();
          };
      return new Mark(marked.state(), time, shotAt, marked.details());
    }

    /** This, had it not been ticked shot: it is on set again. */
    Mark again() {
      return new Mark(state, since, Optional.empty(), details);
    }

    SetupStatus status() {
      boolean signedOff = state == SetupState.SIGNED_OFF;
      return new SetupStatus(
          state,
          Optional.of(since),
          shotAt,
          signedOff ? details.by() : Optional.empty(),
          signedOff ? Optional.of(since) : Optional.empty(),
          details.reason(),
          false);
    }
  }

  /** As {@link OnSetSpan}, of a setup by its canonical key. */
  private record Span(
      String key,
      Optional<String> view,
      Instant from,
      Optional<Instant> until,
      Optional<Instant> shot,
      boolean bySlate) {
    boolean lastsAt(Instant time) {
      return until.map(time::isBefore).orElse(true);
    }

    /** One that was there for no time at all is not shown. */
    boolean isShown() {
      return !until.equals(Optional.of(from));
    }
  }

  /** A setup that was given away, and when. */
  private record Gift(Event.Given given, Instant at) {
    String key() {
      return Setup.canonicalKey(given.what().setup().code());
    }
  }

  // What the events say.
  private final SequencedMap<String, String> values = new LinkedHashMap<>();
  private final SequencedMap<String, Setup> setups = new LinkedHashMap<>();
  private final Set<String> removed = new HashSet<>();
  private List<String> order = List.of();
  private final Map<String, Mark> marks = new HashMap<>();
  private final SequencedMap<String, String> namesOfWorked = new LinkedHashMap<>();
  private final List<Span> spans = new ArrayList<>();
  private boolean onSet;
  private final List<FrameMove> moves = new ArrayList<>();
  private final GrowingMap<FrameId, Instant> arrivals = new GrowingMap<>();
  private final GrowingMap<FrameId, String> looked = new GrowingMap<>();
  private final GrowingMap<FrameId, String> slates = new GrowingMap<>();
  private final Map<FrameId, SlateWords> slateWords = new HashMap<>();
  private final Set<FrameId> selects = new HashSet<>();
  private final Map<FrameId, Integer> ratings = new HashMap<>();
  private final SequencedMap<ListForm, KeptOptions> listsRead = new LinkedHashMap<>();
  private final GrowingList<ComparedAt> comparisons = new GrowingList<>();
  private final GrowingList<CopyRecord> copies = new GrowingList<>();
  private final GrowingList<Comment> comments = new GrowingList<>();
  private final List<JobKey> slateKeys = new ArrayList<>();
  private final Map<String, Integer> unknown = new TreeMap<>();
  private final Set<String> pickups = new HashSet<>();
  private final Map<String, ItemTick> itemTicks = new HashMap<>();

  /** The last one of the morning, and of the evening. */
  private final Map<Boolean, ReadyAt> answers = new HashMap<>();

  private final Map<UUID, Gift> gifts = new HashMap<>();
  private final Map<UUID, Boolean> giftsEnded = new HashMap<>();
  private final Set<UUID> taken = new HashSet<>();
  private final Map<String, SetupMoves.Came> came = new HashMap<>();

  /**
   * The moves that took a setup away and did not bring it back, by its canonical key: mostly one;
   * two where two stations gave it away at the same time, until one of them is told that it lost.
   */
  private final Map<String, List<UUID>> away = new HashMap<>();

  // What was made of it for the last fold, and what of it no longer holds.
  private boolean listChanged = true;
  private ListIndex index = new ListIndex(ShotList.empty());
  private List<Text> listRemarks = List.of();
  private final Set<String> touched = new HashSet<>();
  private Statuses statuses = Statuses.of(index, new SetupStatus[0]);
  private final GrowingList<OnSetSpan> shownSpans = new GrowingList<>();

  /** For each span but the last that was shown: how many were shown before it. */
  private final List<Integer> shownBefore = new ArrayList<>();

  private final GrowingList<FrameMove> shownMoves = new GrowingList<>();
  private Optional<Map<FrameId, SlateWords>> shownSlateWords = Optional.empty();
  private Optional<Set<FrameId>> shownSelects = Optional.empty();
  private Optional<Map<FrameId, Integer>> shownRatings = Optional.empty();
  private Optional<List<String>> shownPickups = Optional.empty();
  private List<SetupMoves.Given> givenAway = List.of();
  private SetupMoves setupMoves = SetupMoves.NONE;

  /** Applies an event that comes after all that were applied. */
  void apply(Entry entry, Consumer<Runnable> undo) {
    var time = entry.time();
    switch (entry.event()) {
      case Event.Began began ->
          began
              .values()
              .forEach(
                  (name, value) -> {
                    if (!values.containsKey(name)) {
                      put(values, name, value, undo);
                    }
                  });
      case Event.SlatesKeyed keyed -> keyed(keyed.key(), undo);
      case Event.ListChanged changed -> list(changed, undo);
      case Event.Marked marked -> mark(marked, time, undo);
      case Event.TakenBack _, Event.Named _ -> {}
      case Event.Arrived arrived -> {
        int before = arrivals.size();
        undo.accept(() -> arrivals.cut(before));
        arrived.frames().forEach(frame -> arrivals.putIfAbsent(frame, time));
      }
      case Event.LookedAt news -> look(news.frames(), undo);
      case Event.SlateSaid said -> said(said, time, undo);
      case Event.Moved moved -> {
        worked(moved.setup(), undo);
        int before = moves.size();
        undo.accept(() -> cutMoves(before));
        if (!away.isEmpty()) {
          both(() -> listChanged = true, undo);
        }
        for (var frame : moved.frames()) {
          moves.add(new FrameMove(frame, moved.setup(), moved.view(), time));
        }
      }
      case Event.Selected selected -> {
        for (var frame : selected.frames()) {
          change(selects, frame, selected.selected(), undo);
        }
        both(() -> shownSelects = Optional.empty(), undo);
      }
      case Event.Rated rated -> {
        for (var frame : rated.frames()) {
          put(ratings, frame, rated.rating(), undo);
        }
        both(() -> shownRatings = Optional.empty(), undo);
      }
      case Event.ListRead read ->
          put(
              listsRead,
              ListForm.of(read.headings()),
              new KeptOptions(read.options(), read.list()),
              undo);
      case Event.Copied copied -> {
        int before = copies.size();
        undo.accept(() -> copies.cut(before));
        copies.add(copied.copy());
      }
      case Event.Commented said -> {
        int before = comments.size();
        undo.accept(() -> comments.cut(before));
        comments.add(
            new Comment(
                said.setup(),
                said.frames(),
                said.text(),
                said.by(),
                entry.stamp().station(),
                Optional.empty(),
                entry.number(),
                time));
      }
      case Event.ItemTicked(var item, var ticked, var by) -> {
        if (ticked) {
          put(itemTicks, item, new ItemTick(by, entry.stamp().station(), time), undo);
        } else if (itemTicks.containsKey(item)) {
          var before = itemTicks.remove(item);
          undo.accept(() -> itemTicks.put(item, before));
        }
      }
      case Event.ReadyAsked(var said) ->
          put(answers, said.wrap(), new ReadyAt(time, entry.stamp().station(), said), undo);
      case Event.Compared compared -> {
        int before = comparisons.size();
        undo.accept(() -> comparisons.cut(before));
        comparisons.add(new ComparedAt(time, entry.stamp().station(), compared.found()));
      }
      case Event.Given given -> give(given, time, undo);
      case Event.GiveEnded ended -> endGive(ended, undo);
      case Event.Taken news -> take(news, entry, undo);
      case Event.Unknown other ->
          put(unknown, other.type(), unknown.getOrDefault(other.type(), 0) + 1, undo);
    }
  }

  private static <K, V> void put(Map<K, V> map, K key, V value, Consumer<Runnable> undo) {
    var before = map.put(key, value);
    undo.accept(
        () -> {
          if (before == null) {
            map.remove(key);
          } else {
            map.put(key, before);
          }
        });
  }

  private static <E> void change(Set<E> set, E item, boolean in, Consumer<Runnable> undo) {
    if (in ? set.add(item) : set.remove(item)) {
      undo.accept(
          () -> {
            if (in) {
              set.remove(item);
            } else {
              set.add(item);
            }
          });
    }
  }

  /** Does something now and when it is undone. */
  private static void both(Runnable change, Consumer<Runnable> undo) {
    change.run();
    undo.accept(change);
  }

  private void keyed(JobKey key, Consumer<Runnable> undo) {
    if (!slateKeys.contains(key)) {
      slateKeys.add(key);
      undo.accept(slateKeys::removeLast);
    }
  }

  private void list(Event.ListChanged changed, Consumer<Runnable> undo) {
    for (var setup : changed.put()) {
      var key = Setup.canonicalKey(setup.code());
      put(setups, key, setup, undo);
      change(removed, key, false, undo);
    }
    for (var code : changed.removed()) {
      change(removed, Setup.canonicalKey(code), true, undo);
    }
    var before = order;
    undo.accept(() -> order = before);
    order = changed.order().stream().map(Setup::canonicalKey).toList();
    both(() -> listChanged = true, undo);
  }

  /** A move is told once; its end may be read before its beginning, from another station. */
  private void give(Event.Given given, Instant time, Consumer<Runnable> undo) {
    if (gifts.containsKey(given.move())) {
      return;
    }
    var gift = new Gift(given, time);
    put(gifts, given.move(), gift, undo);
    if (giftsEnded.getOrDefault(given.move(), true)) {
      var moves = new ArrayList<>(away.getOrDefault(gift.key(), List.of()));
      moves.add(given.move());
      put(away, gift.key(), List.copyOf(moves), undo);
    }
    both(() -> listChanged = true, undo);
  }

  private void endGive(Event.GiveEnded ended, Consumer<Runnable> undo) {
    if (giftsEnded.containsKey(ended.move())) {
      return;
    }
    put(giftsEnded, ended.move(), ended.arrived(), undo);
    var gift = gifts.get(ended.move());
    if (gift != null && !ended.arrived() && away.containsKey(gift.key())) {
      var others =
          away.get(gift.key()).stream().filter(move -> !move.equals(ended.move())).toList();
      if (others.isEmpty()) {
        remove(away, gift.key(), undo);
      } else {
        put(away, gift.key(), others, undo);
      }
    }
    both(() -> listChanged = true, undo);
  }

  private void take(Event.Taken news, Entry entry, Consumer<Runnable> undo) {
    if (taken.contains(news.move())) {
      return;
    }
    var code = freeCode(news.code());
    var key = Setup.canonicalKey(code);
    change(taken, news.move(), true, undo);
    put(setups, key, news.what().as(code), undo);
    change(removed, key, false, undo);
    remove(away, key, undo);
    put(
        came,
        key,
        new SetupMoves.Came(
            news.move(),
            news.from().shown(),
            news.what().setup().code(),
            news.what().codes(),
            entry.time()),
        undo);
    int before = comments.size();
    undo.accept(() -> comments.cut(before));
    for (var note : news.what().notes()) {
      comments.add(
          new Comment(
              code,
              List.of(),
              note.text(),
              note.by(),
              note.station(),
              Optional.empty(),
              0,
              note.at()));
    }
    both(() -> listChanged = true, undo);
  }

  /**
   * The code under which a setup comes: as its event says, unless another station gave that code to
   * another setup at the same time.
   */
  private String freeCode(String code) {
    var free = code;
    for (int i = 2; isListed(Setup.canonicalKey(free)); i++) {
      free = code + "-" + i;
    }
    return free;
  }

  private boolean isListed(String key) {
    return !away.containsKey(key)
        && ((setups.containsKey(key) && !removed.contains(key)) || namesOfWorked.containsKey(key));
  }

  private static <K, V> void remove(Map<K, V> map, K key, Consumer<Runnable> undo) {
    var before = map.remove(key);
    if (before != null) {
      undo.accept(() -> map.put(key, before));
    }
  }

  private String worked(String code, Consumer<Runnable> undo) {
    var key = Setup.canonicalKey(code);
    if (!namesOfWorked.containsKey(key)) {
      put(namesOfWorked, key, code, undo);
      if (!setups.containsKey(key) || removed.contains(key)) {
        both(() -> listChanged = true, undo);
      }
    }
    return key;
  }

  private void look(List<FrameLook> looks, Consumer<Runnable> undo) {
    int lookedBefore = looked.size();
    int slatesBefore = slates.size();
    undo.accept(
        () -> {
          looked.cut(lookedBefore);
          slates.cut(slatesBefore);
        });
    for (var look : looks) {
      looked.putIfAbsent(look.frame(), look.name());
      look.slate().ifPresent(text -> slates.putIfAbsent(look.frame(), text));
    }
  }

  private void said(Event.SlateSaid said, Instant time, Consumer<Runnable> undo) {
    for (var frame : said.frames()) {
      put(slateWords, frame, words(frame).and(said.word()), undo);
    }
    both(() -> shownSlateWords = Optional.empty(), undo);
    switch (said.word()) {
      case SlateWord.OfSetup(var setup) -> worked(setup, undo);
      case SlateWord.Follow(var onSet) when onSet.isPresent() -> {
        var key = worked(onSet.get(), undo);
        touch(key, undo);
        var came = came(said.frames());
        putOnSet(key, Optional.empty(), came.orElse(time), false, undo);
      }
      default -> {}
    }
  }

  private SlateWords words(FrameId frame) {
    return slateWords.getOrDefault(frame, SlateWords.NONE);
  }

  /**
   * When the first of these frames arrived, unless something else came on set since: a slate puts
   * its setup on set from then on.
   */
  private Optional<Instant> came(List<FrameId> frames) {
    return frames.stream()
        .flatMap(frame -> arrivals.get(frame).stream())
        .min(Comparator.naturalOrder())
        .filter(at -> spans.isEmpty() || !at.isBefore(spans.getLast().from()));
  }

  private void touch(String key, Consumer<Runnable> undo) {
    both(() -> touched.add(key), undo);
    if (away.containsKey(key)) {
      // Whether it is in the list is a matter of where it stands.
      both(() -> listChanged = true, undo);
    }
  }

  private void mark(Event.Marked marked, Instant time, Consumer<Runnable> undo) {
    var key = worked(marked.setup(), undo);
    touch(key, undo);
    if (marked.state() == SetupState.ON_SET) {
      if (marked.slate().isEmpty()) {
        putOnSet(key, marked.details().view(), time, false, undo);
      } else {
        // Where something else came on set since, the slate comes too late.
        came(marked.slate().stream().toList())
            .ifPresent(since -> putOnSet(key, Optional.empty(), since, true, undo));
      }
      return;
    }
    put(marks, key, Mark.of(marked, time, marks.get(key)), undo);
    change(pickups, key, marked.state() == SetupState.PICKUP, undo);
    both(() -> shownPickups = Optional.empty(), undo);
    if (!spans.isEmpty() && spans.getLast().key().equals(key)) {
      if (spans.getLast().lastsAt(time)) {
        boolean leaves =
            marked.state() == SetupState.TO_SHOOT || marked.state() == SetupState.DROPPED;
        end(
            leaves ? time : time.plus(LINGERS),
            leaves ? Optional.empty() : Optional.of(time),
            undo);
      }
      setOnSet(false, undo);
    }
  }

  private void putOnSet(
      String key, Optional<String> view, Instant time, boolean bySlate, Consumer<Runnable> undo) {
    if (!spans.isEmpty()) {
      var last = spans.getLast();
      boolean same = last.key().equals(key) && last.view().equals(view);
      if (onSet && same && (bySlate || !last.bySlate())) {
        return;
      }
      touch(last.key(), undo);
      if (last.lastsAt(time)) {
        end(time, last.shot(), undo);
      }
    }
    var mark = marks.get(key);
    if (mark != null && mark.shotAt().isPresent()) {
      put(marks, key, mark.again(), undo);
    }
    undo.accept(
        () -> {
          spans.removeLast();
          hideSpans();
        });
    spans.add(new Span(key, view, time, Optional.empty(), Optional.empty(), bySlate));
    setOnSet(true, undo);
  }

  private void setOnSet(boolean now, Consumer<Runnable> undo) {
    var before = onSet;
    undo.accept(() -> onSet = before);
    onSet = now;
  }

  /** The last span ends; where that is before its begin it was there for no time at all. */
  private void end(Instant time, Optional<Instant> shot, Consumer<Runnable> undo) {
    var last = spans.removeLast();
    undo.accept(
        () -> {
          spans.removeLast();
          spans.add(last);
        });
    var until = time.isAfter(last.from()) ? time : last.from();
    spans.add(
        new Span(last.key(), last.view(), last.from(), Optional.of(until), shot, last.bySlate()));
  }

  /** Spans that are no longer before the last one may change again. */
  private void hideSpans() {
    while (shownBefore.size() > Math.max(spans.size() - 1, 0)) {
      shownSpans.cut(shownBefore.removeLast());
    }
  }

  private void cutMoves(int size) {
    moves.subList(size, moves.size()).clear();
    shownMoves.cut(size);
  }

  /** Whether work was done on a setup, by its canonical key. */
  boolean isWorkedOn(String key) {
    return namesOfWorked.containsKey(key);
  }

  /** What the events make so far. */
  Fold fold() {
    if (listChanged) {
      makeList();
    } else if (!touched.isEmpty()) {
      var changes = new HashMap<Integer, SetupStatus>();
      for (var key : touched) {
        int place = index.place(key);
        if (place >= 0) {
          changes.put(place, status(key));
        }
      }
      statuses = statuses.with(changes);
    }
    touched.clear();
    return new Fold(
        index,
        new JobState(
            statuses,
            shownSpans(),
            shownMoves(),
            arrivals.snapshot(),
            shownSelects(),
            shownRatings(),
            onSet(),
            shownPickups(),
            new SlatesKnown(
                List.copyOf(slateKeys), looked.snapshot(), slates.snapshot(), shownSlateWords())),
        Collections.unmodifiableSequencedMap(new LinkedHashMap<>(values)),
        Collections.unmodifiableSequencedMap(new LinkedHashMap<>(listsRead)),
        comparisons.snapshot(),
        copies.snapshot(),
        comments.snapshot(),
        setupMoves,
        List.copyOf(slateKeys),
        new Readiness(
            itemTicks,
            Optional.ofNullable(answers.get(false)),
            Optional.ofNullable(answers.get(true))),
        remarks());
  }

  private void makeList() {
    var remarks = new ArrayList<Text>();
    var worked = workedOnAway();
    givenAway = givenAway(worked);
    index = new ListIndex(new ShotList(listed(worked, remarks)));
    listRemarks = firstOf(remarks);
    listChanged = false;
    statuses =
        Statuses.of(
            index,
            index.setups().stream()
                .map(setup -> status(Setup.canonicalKey(setup.code())))
                .toArray(SetupStatus[]::new));
    // The list may have other codes for them now.
    shownBefore.clear();
    shownSpans.cut(0);
    shownMoves.cut(0);
    shownSlateWords = Optional.empty();
    shownPickups = Optional.empty();
    setupMoves = setupMoves();
  }

  /** The setups that are on set or ticked here, or have frames, though they were given away. */
  private Set<String> workedOnAway() {
    var worked = new HashSet<String>();
    if (!away.isEmpty()) {
      var last = new HashMap<FrameId, String>();
      moves.forEach(move -> last.put(move.frame(), Setup.canonicalKey(move.setup())));
      worked.addAll(last.values());
      worked.retainAll(away.keySet());
      away.keySet().stream()
          .filter(key -> status(key).state() != SetupState.TO_SHOOT)
          .forEach(worked::add);
    }
    return worked;
  }

  private List<SetupMoves.Given> givenAway(Set<String> worked) {
    return away.values().stream()
        .flatMap(List::stream)
        .map(gifts::get)
        .map(gift -> shown(gift, worked.contains(gift.key())))
        .sorted(Comparator.comparing(SetupMoves.Given::at).thenComparing(SetupMoves.Given::move))
        .toList();
  }

  private SetupMoves setupMoves() {
    if (gifts.isEmpty() && taken.isEmpty()) {
      return SetupMoves.NONE;
    }
    var here = new LinkedHashMap<String, SetupMoves.Came>();
    for (var setup : index.setups()) {
      var from = came.get(Setup.canonicalKey(setup.code()));
      if (from != null) {
        here.put(setup.code(), from);
      }
    }
    return new SetupMoves(givenAway, here, taken, giftsEnded.keySet());
  }

  private SetupMoves.Given shown(Gift gift, boolean workedOn) {
    var given = gift.given();
    return new SetupMoves.Given(
        given.move(),
        given.what(),
        given.to().shown(),
        PlainText.line(given.by()),
        gift.at(),
        giftsEnded.getOrDefault(given.move(), false),
        workedOn);
  }

  private static List<Text> firstOf(List<Text> remarks) {
    if (remarks.size() <= MOST_REMARKS) {
      return List.copyOf(remarks);
    }
    var first = new ArrayList<>(remarks.subList(0, MOST_REMARKS));
    first.add(Text.of("The same holds for {0} more setups.", remarks.size() - MOST_REMARKS));
    return List.copyOf(first);
  }

  private List<Setup> listed(Set<String> workedOnAway, List<Text> remarks) {
    var unlisted = new LinkedHashMap<String, Setup>();
    for (var worked : namesOfWorked.entrySet()) {
      var setup = setups.get(worked.getKey());
      if (setup == null) {
        unlisted.put(worked.getKey(), new Setup(worked.getValue(), ""));
        remarks.add(
            Text.of(
                "Setup {0} was worked on and is in no list that could be read; it is kept. Import"
                    + " the client's list again.",
                worked.getValue()));
      } else if (removed.contains(worked.getKey())) {
        remarks.add(
            Text.of(
                "Setup {0} is no longer in the client's list; it is kept, because it was worked"
                    + " on.",
                setup.code()));
      }
    }
    for (var given : givenAway) {
      if (given.workedOn()) {
        remarks.add(
            Text.of(
                "Setup {0} was given to {1}, and was worked on here at the same time. Agree with"
                    + " {1} who shoots it; the frames that are here stay.",
                given.setup().code(), given.to().name()));
      }
    }
    var keys = new LinkedHashSet<>(order);
    keys.addAll(setups.keySet());
    keys.addAll(unlisted.keySet());
    return keys.stream()
        .filter(key -> !removed.contains(key) || namesOfWorked.containsKey(key))
        .filter(key -> !away.containsKey(key) || workedOnAway.contains(key))
        .map(key -> setups.getOrDefault(key, unlisted.get(key)))
        .filter(Objects::nonNull)
        .toList();
  }

  private SetupStatus status(String key) {
    var mark = marks.get(key);
    var status = mark == null ? SetupStatus.TO_SHOOT : mark.status();
    if (!onSet || !spans.getLast().key().equals(key)) {
      return status;
    }
    return new SetupStatus(
        SetupState.ON_SET,
        Optional.of(spans.getLast().from()),
        status.shotAt(),
        status.signedOffBy(),
        status.signedOffAt(),
        status.reason(),
        false);
  }

  private String code(String key) {
    // One that was given away is not in the list.
    return index
        .code(key)
        .orElseGet(
            () ->
                setups.containsKey(key)
                    ? setups.get(key).code()
                    : namesOfWorked.getOrDefault(key, key));
  }

  private Optional<OnSet> onSet() {
    if (!onSet) {
      return Optional.empty();
    }
    var last = spans.getLast();
    return Optional.of(new OnSet(code(last.key()), last.view(), last.from()));
  }

  private List<OnSetSpan> shownSpans() {
    while (shownBefore.size() < spans.size() - 1) {
      var span = spans.get(shownBefore.size());
      shownBefore.add(shownSpans.size());
      if (span.isShown()) {
        shownSpans.add(shown(span));
      }
    }
    return spans.isEmpty() || !spans.getLast().isShown()
        ? shownSpans.snapshot()
        : shownSpans.snapshotWith(shown(spans.getLast()));
  }

  private OnSetSpan shown(Span span) {
    return new OnSetSpan(
        code(span.key()), span.view(), span.from(), span.until(), span.shot(), span.bySlate());
  }

  private Map<FrameId, SlateWords> shownSlateWords() {
    if (shownSlateWords.isEmpty()) {
      var shown = new HashMap<FrameId, SlateWords>();
      slateWords.forEach((frame, words) -> shown.put(frame, words.of(this::codeOf)));
      shownSlateWords = Optional.of(Collections.unmodifiableMap(shown));
    }
    return shownSlateWords.get();
  }

  private String codeOf(String setup) {
    return code(Setup.canonicalKey(setup));
  }

  private List<FrameMove> shownMoves() {
    while (shownMoves.size() < moves.size()) {
      var move = moves.get(shownMoves.size());
      shownMoves.add(
          new FrameMove(
              move.frame(), code(Setup.canonicalKey(move.setup())), move.view(), move.at()));
    }
    return shownMoves.snapshot();
  }

  private Set<FrameId> shownSelects() {
    if (shownSelects.isEmpty()) {
      shownSelects = Optional.of(Collections.unmodifiableSet(new HashSet<>(selects)));
    }
    return shownSelects.get();
  }

  private Map<FrameId, Integer> shownRatings() {
    if (shownRatings.isEmpty()) {
      shownRatings = Optional.of(Collections.unmodifiableMap(new HashMap<>(ratings)));
    }
    return shownRatings.get();
  }

  private List<String> shownPickups() {
    if (shownPickups.isEmpty()) {
      shownPickups =
          Optional.of(
              pickups.stream()
                  .filter(key -> index.place(key) >= 0)
                  .sorted(
                      Comparator.comparing((String key) -> marks.get(key).since())
                          .thenComparingInt(index::place))
                  .map(this::code)
                  .toList());
    }
    return shownPickups.get();
  }

  private List<Text> remarks() {
    if (unknown.isEmpty()) {
      return listRemarks;
    }
    var remarks = new ArrayList<>(listRemarks);
    unknown.entrySet().stream()
        .limit(MOST_REMARKS)
        .forEach(type -> remarks.add(newer(type.getKey(), type.getValue())));
    if (unknown.size() > MOST_REMARKS) {
      remarks.add(Text.of("The same holds for {0} more kinds.", unknown.size() - MOST_REMARKS));
    }
    return List.copyOf(remarks);
  }

  private static Text newer(String type, int count) {
    var name =
        PlainText.line(
            type.length() <= LONGEST_TYPE ? type : type.substring(0, LONGEST_TYPE) + "...");
    return Text.counted(
        "{0} event of the kind \"{1}\" comes from a newer version of the program: kept in the log,"
            + " without effect here. Use that version on this computer too.",
        "{0} events of the kind \"{1}\" come from a newer version of the program: kept in the log,"
            + " without effect here. Use that version on this computer too.",
        count,
        name);
  }
}
