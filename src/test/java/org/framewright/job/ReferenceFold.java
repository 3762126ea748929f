package org.framewright.job;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
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
import java.util.TreeMap;
import java.util.UUID;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameMove;
import org.framewright.frames.OnSetSpan;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/**
 * What a job's events make, folded all at once and from the beginning: the plain form of what
 * {@link Folding} comes to step by step.
 */
record ReferenceFold(
    ShotList list,
    JobState state,
    SequencedMap<String, String> values,
    Set<String> worked,
    List<ComparedAt> comparisons,
    List<Comment> comments,
    List<String> given,
    List<JobKey> slateKeys,
    Readiness readiness,
    List<String> remarks) {

  /**
   * How long frames still fall to a setup that was ticked shot when nothing else comes on set:
   * files are on their way, and the client asks for one more. Common practice, no source.
   */
  private static final Duration LINGERS = Duration.ofHours(1);

  /** Folds events, given in the order of their stamps. */
  static ReferenceFold of(Collection<Entry> entries) {
    var folding = new Folding();
    for (var entry : entries) {
      if (entry.event() instanceof Event.TakenBack taken) {
        folding.takenBack.add(taken.event());
      }
    }
    for (var entry : entries) {
      if (!folding.takenBack.contains(entry.stamp())) {
        folding.apply(entry);
      }
    }
    return folding.done();
  }

  private static final class Standing {
    private SetupState state = SetupState.TO_SHOOT;
    private Optional<Instant> since = Optional.empty();
    private Optional<Instant> shotAt = Optional.empty();
    private MarkDetails details = MarkDetails.NONE;

    SetupStatus status() {
      boolean signedOff = state == SetupState.SIGNED_OFF;
      return new SetupStatus(
          state,
          since,
          shotAt,
          signedOff ? details.by() : Optional.empty(),
          signedOff ? since : Optional.empty(),
          details.reason(),
          false);
    }
  }

  private record Span(
      String key,
      Optional<String> view,
      Instant from,
      Optional<Instant> until,
      Optional<Instant> shot,
      boolean bySlate) {}

  private static final class Folding {
    private final Set<Stamp> takenBack = new HashSet<>();
    private final SequencedMap<String, String> values = new LinkedHashMap<>();
    private final SequencedMap<String, Setup> setups = new LinkedHashMap<>();
    private final Set<String> removed = new HashSet<>();
    private List<String> order = List.of();
    private final Map<String, Standing> standings = new HashMap<>();
    private final SequencedMap<String, String> namesOfWorked = new LinkedHashMap<>();
    private final List<Span> spans = new ArrayList<>();
    private boolean onSet;
    private final List<FrameMove> moves = new ArrayList<>();
    private final Map<FrameId, Instant> arrivals = new HashMap<>();
    private final Map<FrameId, String> looked = new HashMap<>();
    private final Map<FrameId, String> slates = new HashMap<>();
    private final Map<FrameId, SlateWords> slateWords = new HashMap<>();
    private final Set<FrameId> selects = new LinkedHashSet<>();
    private final Map<FrameId, Integer> ratings = new HashMap<>();
    private final List<ComparedAt> comparisons = new ArrayList<>();
    private final List<Comment> comments = new ArrayList<>();
    private final Set<JobKey> slateKeys = new LinkedHashSet<>();
    private final Map<String, Integer> unknown = new TreeMap<>();
    private final Map<String, ItemTick> itemTicks = new HashMap<>();
    private Optional<ReadyAt> morning = Optional.empty();
    private Optional<ReadyAt> evening = Optional.empty();
    private final SequencedMap<UUID, Event.Given> given = new LinkedHashMap<>();
    private final Map<UUID, Instant> givenAt = new HashMap<>();
    private final Map<UUID, Boolean> ended = new HashMap<>();
    private final Set<UUID> taken = new HashSet<>();
    private final Set<UUID> open = new LinkedHashSet<>();

    void apply(Entry entry) {
      var time = entry.time();
      switch (entry.event()) {
        case Event.Began began -> began.values().forEach(values::putIfAbsent);
        case Event.SlatesKeyed keyed -> slateKeys.add(keyed.key());
        case Event.ListChanged changed -> {
          for (var setup : changed.put()) {
            setups.put(Setup.canonicalKey(setup.code()), setup);
            removed.remove(Setup.canonicalKey(setup.code()));
          }
          changed.removed().forEach(code -> removed.add(Setup.canonicalKey(code)));
          order = changed.order().stream().map(Setup::canonicalKey).toList();
        }
        case Event.Marked marked -> mark(marked, time);
        case Event.TakenBack _, Event.Copied _ -> {}
        case Event.Arrived arrived ->
            arrived.frames().forEach(frame -> arrivals.putIfAbsent(frame, time));
        case Event.Moved moved -> {
          worked(moved.setup());
          moved
              .frames()
              .forEach(frame -> moves.add(new FrameMove(frame, moved.setup(), moved.view(), time)));
        }
        case Event.LookedAt news -> {
          for (var look : news.frames()) {
            looked.putIfAbsent(look.frame(), look.name());
            look.slate().ifPresent(text -> slates.putIfAbsent(look.frame(), text));
          }
        }
        case Event.SlateSaid said -> {
          for (var frame : said.frames()) {
            slateWords.put(frame, slateWords.getOrDefault(frame, SlateWords.NONE).and(said.word()));
          }
          if (said.word() instanceof SlateWord.OfSetup(var setup)) {
            worked(setup);
          } else if (said.word() instanceof SlateWord.Follow(var setup) && setup.isPresent()) {
            putOnSet(
                worked(setup.get()), Optional.empty(), came(said.frames()).orElse(time), false);
          }
        }
        case Event.Selected selected -> {
          if (selected.selected()) {
            selects.addAll(selected.frames());
          } else {
            selected.frames().forEach(selects::remove);
          }
        }
        case Event.Rated rated ->
            rated.frames().forEach(frame -> ratings.put(frame, rated.rating()));
        case Event.ListRead _, Event.Named _ -> {}
        case Event.Commented(var setup, var frames, var text, var by) -> {
          var station = entry.stamp().station();
          comments.add(
              new Comment(
                  setup, frames, text, by, station, Optional.empty(), entry.number(), time));
        }
        case Event.ItemTicked(var item, var ticked, var by) -> {
          itemTicks.remove(item);
          if (ticked) {
            itemTicks.put(item, new ItemTick(by, entry.stamp().station(), time));
          }
        }
        case Event.ReadyAsked(var said) -> {
          var answer = Optional.of(new ReadyAt(time, entry.stamp().station(), said));
          morning = said.wrap() ? morning : answer;
          evening = said.wrap() ? answer : evening;
        }
        case Event.Compared compared ->
            comparisons.add(new ComparedAt(time, entry.stamp().station(), compared.found()));
        case Event.Given news -> {
          givenAt.putIfAbsent(news.move(), time);
          if (given.putIfAbsent(news.move(), news) == null
              && ended.getOrDefault(news.move(), true)) {
            open.add(news.move());
          }
        }
        case Event.GiveEnded(var move, var arrived) -> {
          if (ended.putIfAbsent(move, arrived) == null && !arrived) {
            open.remove(move);
          }
        }
        case Event.Taken news -> {
          if (taken.add(news.move())) {
            take(news);
          }
        }
        case Event.Unknown other -> unknown.merge(other.type(), 1, Integer::sum);
      }
    }

    private void take(Event.Taken news) {
      var code = news.code();
      for (int i = 2; isInUse(Setup.canonicalKey(code)); i++) {
        code = news.code() + "-" + i;
      }
      var key = Setup.canonicalKey(code);
      var line = news.what().setup();
      setups.put(
          key, new Setup(code, line.title(), line.views(), line.framesWanted(), line.columns()));
      removed.remove(key);
      open.removeIf(move -> key(move).equals(key));
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
    }

    private String key(UUID move) {
      return Setup.canonicalKey(given.get(move).what().setup().code());
    }

    private boolean isAway(String key) {
      return open.stream().anyMatch(move -> key(move).equals(key));
    }

    private boolean isInUse(String key) {
      boolean kept = setups.containsKey(key) && !removed.contains(key);
      return !isAway(key) && (kept || namesOfWorked.containsKey(key));
    }

    private boolean isToShoot(String key) {
      boolean now = onSet && spans.getLast().key().equals(key);
      var placed = new HashMap<FrameId, String>();
      moves.forEach(move -> placed.put(move.frame(), Setup.canonicalKey(move.setup())));
      return !now
          && !placed.containsValue(key)
          && (!standings.containsKey(key) || standings.get(key).state == SetupState.TO_SHOOT);
    }

    private String worked(String code) {
      var key = Setup.canonicalKey(code);
      namesOfWorked.putIfAbsent(key, code);
      return key;
    }

    private void mark(Event.Marked marked, Instant time) {
      var key = worked(marked.setup());
      if (marked.state() == SetupState.ON_SET) {
        if (marked.slate().isPresent()) {
          came(List.of(marked.slate().get()))
              .ifPresent(since -> putOnSet(key, Optional.empty(), since, true));
        } else {
          putOnSet(key, marked.details().view(), time, false);
        }
        return;
      }
      var standing = standings.computeIfAbsent(key, code -> new Standing());
      standing.state = marked.state();
      standing.since = Optional.of(time);
      standing.details = marked.details();
      if (marked.state() == SetupState.SHOT) {
        standing.shotAt = Optional.of(time);
      } else if (marked.state() != SetupState.SIGNED_OFF) {
        standing.shotAt = Optional.empty();
      }
      if (!spans.isEmpty() && spans.getLast().key().equals(key)) {
        boolean lasts = spans.getLast().until().map(time::isBefore).orElse(true);
        if (lasts) {
          boolean leaves =
              marked.state() == SetupState.TO_SHOOT || marked.state() == SetupState.DROPPED;
          until(leaves ? time : time.plus(LINGERS), leaves ? Optional.empty() : Optional.of(time));
        }
        onSet = false;
      }
    }

    private void putOnSet(String key, Optional<String> view, Instant since, boolean bySlate) {
      if (onSet
          && spans.getLast().key().equals(key)
          && spans.getLast().view().equals(view)
          && (bySlate || !spans.getLast().bySlate())) {
        return;
      }
      end(since);
      var standing = standings.get(key);
      if (standing != null) {
        standing.shotAt = Optional.empty();
      }
      spans.add(new Span(key, view, since, Optional.empty(), Optional.empty(), bySlate));
      onSet = true;
    }

    /** When frames came, if nothing has come on set since. */
    private Optional<Instant> came(List<FrameId> frames) {
      var first =
          frames.stream().filter(arrivals::containsKey).map(arrivals::get).min(Instant::compareTo);
      return first.filter(at -> spans.isEmpty() || !at.isBefore(spans.getLast().from()));
    }

    /** The last setup that was on set makes room at this time, if it has not done so before. */
    private void end(Instant time) {
      if (!spans.isEmpty() && spans.getLast().until().map(time::isBefore).orElse(true)) {
        until(time, spans.getLast().shot());
      }
    }

    private void until(Instant time, Optional<Instant> shot) {
      var last = spans.removeLast();
      if (time.isAfter(last.from())) {
        spans.add(
            new Span(
                last.key(), last.view(), last.from(), Optional.of(time), shot, last.bySlate()));
      } else {
        // It was there for no time at all; mark() still needs to know that it was the last.
        spans.add(
            new Span(
                last.key(),
                last.view(),
                last.from(),
                Optional.of(last.from()),
                shot,
                last.bySlate()));
      }
    }

    ReferenceFold done() {
      var remarks = new ArrayList<String>();
      var listed = list(remarks);
      var codes = new HashMap<String, String>();
      codes.putAll(namesOfWorked);
      setups.forEach((key, setup) -> codes.put(key, setup.code()));
      listed.forEach((key, setup) -> codes.put(key, setup.code()));
      var statuses = new LinkedHashMap<String, SetupStatus>();
      var pickups = new ArrayList<String>();
      for (var entry : listed.entrySet()) {
        var setup = entry.getValue();
        var standing = standings.get(entry.getKey());
        statuses.put(setup.code(), standing == null ? SetupStatus.TO_SHOOT : standing.status());
        if (standing != null && standing.state == SetupState.PICKUP) {
          pickups.add(setup.code());
        }
      }
      pickups.sort(Comparator.comparing(code -> statuses.get(code).since().orElse(Instant.MIN)));
      Optional<OnSet> now = Optional.empty();
      if (onSet) {
        var last = spans.getLast();
        var code = codes.get(last.key());
        now = Optional.of(new OnSet(code, last.view(), last.from()));
        var was = statuses.get(code);
        statuses.put(
            code,
            new SetupStatus(
                SetupState.ON_SET,
                Optional.of(last.from()),
                was.shotAt(),
                was.signedOffBy(),
                was.signedOffAt(),
                was.reason(),
                false));
      }
      var shownSpans =
          spans.stream()
              .filter(span -> !span.until().equals(Optional.of(span.from())))
              .map(
                  span ->
                      new OnSetSpan(
                          codes.get(span.key()),
                          span.view(),
                          span.from(),
                          span.until(),
                          span.shot(),
                          span.bySlate()))
              .toList();
      var shownMoves =
          moves.stream()
              .map(
                  move ->
                      new FrameMove(
                          move.frame(),
                          codes.get(Setup.canonicalKey(move.setup())),
                          move.view(),
                          move.at()))
              .toList();
      var shownWords = new HashMap<FrameId, SlateWords>();
      slateWords.forEach(
          (frame, words) ->
              shownWords.put(frame, words.of(setup -> codes.get(Setup.canonicalKey(setup)))));
      unknown.forEach(
          (type, count) ->
              remarks.add(
                  count
                      + (count == 1 ? " event" : " events")
                      + " of the kind \""
                      + type
                      + (count == 1 ? "\" comes" : "\" come")
                      + " from a newer version of the program: kept in the log, without"
                      + " effect here. Use that version on this computer too."));
      return new ReferenceFold(
          new ShotList(List.copyOf(listed.values())),
          new JobState(
              Collections.unmodifiableSequencedMap(statuses),
              shownSpans,
              shownMoves,
              Collections.unmodifiableMap(arrivals),
              Collections.unmodifiableSet(selects),
              Collections.unmodifiableMap(ratings),
              now,
              List.copyOf(pickups),
              new SlatesKnown(List.copyOf(slateKeys), looked, slates, shownWords)),
          Collections.unmodifiableSequencedMap(values),
          Set.copyOf(namesOfWorked.keySet()),
          List.copyOf(comparisons),
          List.copyOf(comments),
          open.stream()
              .sorted(
                  Comparator.<UUID, Instant>comparing(givenAt::get)
                      .thenComparing(Comparator.naturalOrder()))
              .map(move -> move + " " + ended.getOrDefault(move, false))
              .toList(),
          List.copyOf(slateKeys),
          new Readiness(itemTicks, morning, evening),
          List.copyOf(remarks));
    }

    private SequencedMap<String, Setup> list(List<String> remarks) {
      for (var worked : namesOfWorked.entrySet()) {
        if (!setups.containsKey(worked.getKey())) {
          setups.put(worked.getKey(), new Setup(worked.getValue(), ""));
          remarks.add(
              "Setup "
                  + worked.getValue()
                  + " was worked on and is in no list that could be read; it is kept. Import the"
                  + " client's list again.");
        } else if (removed.contains(worked.getKey())) {
          remarks.add(
              "Setup "
                  + setups.get(worked.getKey()).code()
                  + " is no longer in the client's list; it is kept, because it was worked on.");
        }
      }
      open.stream()
          .filter(move -> !isToShoot(key(move)))
          .sorted(
              Comparator.<UUID, Instant>comparing(givenAt::get)
                  .thenComparing(Comparator.naturalOrder()))
          .map(given::get)
          .forEach(
              away ->
                  remarks.add(
                      "Setup "
                          + away.what().setup().code()
                          + " was given to "
                          + away.to().name()
                          + ", and was worked on here at the same time. Agree with "
                          + away.to().name()
                          + " who shoots it; the frames that are here stay."));
      var keys = new LinkedHashSet<>(order);
      keys.addAll(setups.keySet());
      var listed = LinkedHashMap.<String, Setup>newLinkedHashMap(keys.size());
      for (var key : keys) {
        var setup = setups.get(key);
        if (setup != null
            && (!removed.contains(key) || namesOfWorked.containsKey(key))
            && (!isAway(key) || !isToShoot(key))) {
          listed.put(key, setup);
        }
      }
      return listed;
    }
  }
}
