package org.framewright.ui.frames;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.Tally;
import org.framewright.frames.Unassigned;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.command.TypedWords;
import org.framewright.ui.frames.FrameHeading.Kind;

/**
 * The frames of a job in the order of its list, under their headings: by setup, then by view, then
 * by the time they were made. Frames that no setup claims come first, because somebody must look.
 *
 * @param headings all frames, the selects, the unassigned if there are any, then the setups that
 *     have frames, each with its views where it has more than one, then the slates
 * @param tiles the complete frames
 */
record GroupedFrames(List<FrameHeading> headings, List<Tile> tiles) {
  static final GroupedFrames EMPTY =
      new GroupedFrames(List.of(new FrameHeading(Kind.ALL, Optional.empty(), "", 0, 0)), List.of());

  /** The frames under a heading. */
  List<Tile> under(FrameHeading heading) {
    return heading.kind() == Kind.ALL ? tiles : tiles.stream().filter(heading::holds).toList();
  }

  /** Sorts the frames of a scan. */
  static GroupedFrames of(List<Frame> frames, Tally tally, ShotList list, JobState state) {
    var setupOrder = new HashMap<String, Integer>();
    var titles = new HashMap<String, String>();
    var viewOrder = new HashMap<Place, Integer>();
    for (var setup : list.setups()) {
      setupOrder.put(setup.code(), setupOrder.size());
      titles.put(setup.code(), setup.title());
      for (var i = 0; i < setup.views().size(); i++) {
        viewOrder.put(new Place(setup.code(), Optional.of(setup.views().get(i).code())), i);
      }
    }
    var likely = new HashMap<FrameId, String>();
    var whyNone = new HashMap<FrameId, Text>();
    for (Unassigned unassigned : tally.unassigned()) {
      unassigned.likely().ifPresent(code -> likely.put(unassigned.frame().id(), code));
      whyNone.put(unassigned.frame().id(), unassigned.said());
    }
    var slates = new HashMap<FrameId, SlateFrame>();
    tally.slates().frames().forEach(one -> slates.put(one.frame().id(), one));
    var tiles = new ArrayList<Tile>(frames.size());
    for (var frame : frames) {
      if (frame.complete()) {
        tiles.add(
            new Tile(
                frame,
                Optional.ofNullable(tally.places().get(frame.id())),
                Optional.ofNullable(likely.get(frame.id())),
                Optional.ofNullable(tally.placed().get(frame.id())),
                Optional.ofNullable(whyNone.get(frame.id())),
                Optional.ofNullable(slates.get(frame.id())),
                state.isSelect(frame),
                state.rating(frame)));
      }
    }
    tiles.sort(
        Comparator.comparingInt((Tile tile) -> rank(tile, setupOrder))
            .thenComparing(tile -> tile.place().map(Place::setup).orElse(""))
            .thenComparingInt(tile -> tile.place().map(p -> viewRank(p, viewOrder)).orElse(0))
            .thenComparing(tile -> tile.place().flatMap(Place::view).orElse(""))
            .thenComparing(tile -> tile.frame().capture().time().orElse(LocalDateTime.MAX))
            .thenComparing(tile -> tile.frame().folder())
            .thenComparing(tile -> tile.frame().stem()));
    return new GroupedFrames(headings(tiles, titles), List.copyOf(tiles));
  }

  private static int rank(Tile tile, Map<String, Integer> order) {
    if (tile.slate().isPresent()) {
      return Integer.MAX_VALUE;
    }
    return tile.place().map(p -> order.getOrDefault(p.setup(), Integer.MAX_VALUE)).orElse(-1);
  }

  /** Frames without a view come after those with one. */
  private static int viewRank(Place place, Map<Place, Integer> order) {
    return place.view().isEmpty()
        ? Integer.MAX_VALUE
        : order.getOrDefault(place, Integer.MAX_VALUE - 1);
  }

  private static List<FrameHeading> headings(List<Tile> tiles, Map<String, String> titles) {
    var selects = 0;
    var unassigned = 0;
    var slates = 0;
    var bySetup = new LinkedHashMap<String, LinkedHashMap<Place, int[]>>();
    for (var tile : tiles) {
      selects += tile.select() ? 1 : 0;
      if (tile.slate().isPresent()) {
        slates++;
        continue;
      }
      if (tile.place().isEmpty()) {
        unassigned++;
        continue;
      }
      var place = tile.place().get();
      var counts =
          bySetup
              .computeIfAbsent(place.setup(), _ -> new LinkedHashMap<>())
              .computeIfAbsent(place, _ -> new int[2]);
      counts[0]++;
      counts[1] += tile.select() ? 1 : 0;
    }
    var headings = new ArrayList<FrameHeading>();
    headings.add(new FrameHeading(Kind.ALL, Optional.empty(), "", tiles.size() - slates, selects));
    headings.add(new FrameHeading(Kind.SELECTS, Optional.empty(), "", selects, selects));
    if (unassigned > 0) {
      headings.add(new FrameHeading(Kind.UNASSIGNED, Optional.empty(), "", unassigned, 0));
    }
    bySetup.forEach(
        (setup, byPlace) -> {
          var title = titles.getOrDefault(setup, "");
          headings.add(
              new FrameHeading(
                  Kind.SETUP,
                  Optional.of(new Place(setup, Optional.empty())),
                  title,
                  byPlace.values().stream().mapToInt(counts -> counts[0]).sum(),
                  byPlace.values().stream().mapToInt(counts -> counts[1]).sum()));
          if (byPlace.size() > 1) {
            byPlace.forEach(
                (place, counts) ->
                    headings.add(
                        new FrameHeading(
                            Kind.VIEW, Optional.of(place), title, counts[0], counts[1])));
          }
        });
    if (slates > 0) {
      headings.add(new FrameHeading(Kind.SLATES, Optional.empty(), "", slates, 0));
    }
    return List.copyOf(headings);
  }

  /** The setups of a list whose code or title holds every typed word. */
  static List<Setup> matching(ShotList list, String typed) {
    var words = TypedWords.of(typed);
    return list.setups().stream()
        .filter(setup -> words.areIn(setup.code() + " " + setup.title()))
        .toList();
  }
}
