package org.framewright.ui.board;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SequencedMap;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.SetupTally;
import org.framewright.frames.Tally;
import org.framewright.job.Comment;
import org.framewright.job.JobState;
import org.framewright.job.OnSet;
import org.framewright.job.SetupMoves;
import org.framewright.job.SetupStatus;
import org.framewright.live.JobView;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** Pictures of a job made by hand. */
public final class JobViews {
  /** Noon of an invented day. */
  public static final Instant NOON = Instant.parse("2026-11-23T12:00:00Z");

  private final List<Setup> setups = new ArrayList<>();
  private final Map<String, SetupStatus> statuses = new LinkedHashMap<>();
  private final SequencedMap<String, SetupTally> tallies = new LinkedHashMap<>();
  private final Map<FrameId, Place> places = new LinkedHashMap<>();
  private final Map<String, List<Frame>> latest = new LinkedHashMap<>();
  private final List<Frame> all = new ArrayList<>();
  private final List<Comment> comments = new ArrayList<>();
  private Optional<OnSet> onSet = Optional.empty();
  private SetupMoves moves = SetupMoves.NONE;
  private long revision;

  /** Setups 001, 002 ... to the given number, garments by name, two views each. */
  public static JobViews of(int setups) {
    var views = new JobViews();
    for (var i = 1; i <= setups; i++) {
      views.add("%03d".formatted(i), "Garment " + i, "day " + (i % 3 + 1), "F", "B");
    }
    return views;
  }

  public JobViews add(String code, String title, String day, String... views) {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Day", day);
    setups.add(
        new Setup(
            code,
            title,
            List.of(views).stream().map(view -> new View(view, OptionalInt.of(2))).toList(),
            OptionalInt.empty(),
            columns));
    return this;
  }

  public JobViews state(String code, SetupState state) {
    return status(
        code,
        new SetupStatus(
            state,
            Optional.of(NOON),
            state == SetupState.SIGNED_OFF ? Optional.of("I. Vance") : Optional.empty(),
            state == SetupState.SIGNED_OFF ? Optional.of(NOON) : Optional.empty(),
            Optional.empty(),
            false));
  }

  public JobViews status(String code, SetupStatus status) {
    onSet = onSet.filter(set -> !set.setup().equals(code));
    statuses.put(code, status);
    if (status.state() == SetupState.ON_SET) {
      onSet = Optional.of(new OnSet(code, Optional.empty(), NOON));
    }
    return this;
  }

  public JobViews view(String code) {
    onSet = onSet.map(set -> new OnSet(set.setup(), Optional.of(code), set.since()));
    return this;
  }

  public JobViews frames(String code, Map<String, Integer> byView) {
    var counts = new LinkedHashMap<>(new TreeMap<>(byView));
    tallies.put(
        code, new SetupTally(counts.values().stream().mapToInt(Integer::intValue).sum(), counts));
    return this;
  }

  /** Frames of a view of a setup, the newest first; they are among the last and counted. */
  public JobViews arrived(String code, String view, List<Frame> newestFirst) {
    newestFirst.forEach(frame -> places.put(frame.id(), new Place(code, Optional.of(view))));
    latest.put(code, newestFirst.stream().limit(JobView.LATEST).toList());
    all.removeIf(frame -> newestFirst.contains(frame));
    all.addAll(newestFirst);
    return frames(code, Map.of(view, newestFirst.size()));
  }

  /** Something that was said at noon, by whom and on what. */
  public JobViews said(String station, String code, String by, String text, FrameId... frames) {
    comments.add(
        new Comment(
            code,
            List.of(frames),
            text,
            by,
            station,
            Optional.of("Ada's tablet").filter(_ -> station.startsWith("page-")),
            comments.size() + 1,
            NOON.plusSeconds(comments.size())));
    return this;
  }

  /** What went to other jobs and came from there. */
  public JobViews moves(SetupMoves now) {
    moves = now;
    return this;
  }

  /** What was said last is taken back. */
  public JobViews takeBackComment() {
    comments.removeLast();
    return this;
  }

  public JobView build() {
    var states = new LinkedHashMap<String, SetupStatus>();
    setups.forEach(
        setup ->
            states.put(setup.code(), statuses.getOrDefault(setup.code(), SetupStatus.TO_SHOOT)));
    return new JobView(
        ++revision,
        "2026-11-23_NHL_autumn",
        new ShotList(setups),
        new JobState(states, List.of(), List.of(), Map.of(), Set.of(), Map.of(), onSet, List.of()),
        new Tally(
            new LinkedHashMap<>(tallies),
            List.of(),
            List.of(),
            List.of(),
            Map.copyOf(places),
            0,
            0),
        new FrameScan(List.copyOf(all), 0, List.of()),
        Map.copyOf(latest),
        List.copyOf(comments),
        moves,
        List.of(),
        NOON);
  }
}
