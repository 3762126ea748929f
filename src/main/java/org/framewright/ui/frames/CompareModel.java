package org.framewright.ui.frames;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.util.Subscription;
import org.framewright.frames.FrameId;
import org.framewright.ui.look.Spot;

/**
 * One frame looked at closely, from which one walks to the next; or two to four side by side, one
 * of which is the current one. Which frames there are to walk through is settled when it begins, so
 * that none goes from under one's eyes because it is no select any more.
 */
final class CompareModel {
  /** So many stand side by side. */
  static final int MOST = 4;

  /**
   * What is seen.
   *
   * @param tiles one, or two to four side by side
   * @param current which of them marks and ratings are about; -1 if there are none
   * @param left how many more were chosen than stand side by side
   */
  record Shown(List<Tile> tiles, int current, int left) {
    static final Shown NOTHING = new Shown(List.of(), -1, 0);

    Optional<Tile> currentTile() {
      return current < 0 ? Optional.empty() : Optional.of(tiles.get(current));
    }

    boolean sideBySide() {
      return tiles.size() > 1;
    }

    /** All but the current one. */
    List<Tile> others() {
      var others = new ArrayList<>(tiles);
      currentTile().ifPresent(others::remove);
      return others;
    }
  }

  private final FramesModel frames;
  private final ReadOnlyObjectWrapper<Shown> shown = new ReadOnlyObjectWrapper<>(Shown.NOTHING);
  private final ReadOnlyObjectWrapper<Optional<Spot>> fullSize =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private List<FrameId> walk = List.of();
  private List<FrameId> compared = List.of();
  private int current = -1;
  private int left;
  private Subscription following = Subscription.EMPTY;

  CompareModel(FramesModel frames) {
    this.frames = frames;
  }

  ReadOnlyObjectProperty<Shown> shown() {
    return shown.getReadOnlyProperty();
  }

  /** Around which spot all pictures are seen at full size; empty where they are seen whole. */
  ReadOnlyObjectProperty<Optional<Spot>> fullSize() {
    return fullSize.getReadOnlyProperty();
  }

  /** Begins with what is chosen in the grid, the frame that the keys are on if that is one. */
  void begin() {
    var selection = frames.selection();
    walk = selection.order();
    var chosen = selection.inOrder();
    var at = frames.current().map(tile -> tile.frame().id());
    if (chosen.size() < 2) {
      compared = at.or(() -> chosen.stream().findFirst()).stream().toList();
      left = 0;
    } else {
      var from = Math.min(at.map(chosen::indexOf).orElse(0), chosen.size() - MOST);
      compared = chosen.stream().skip(Math.max(0, from)).limit(MOST).toList();
      left = chosen.size() - compared.size();
    }
    current = Math.max(at.map(compared::indexOf).orElse(0), compared.isEmpty() ? -1 : 0);
    fullSize.set(Optional.empty());
    show();
  }

  /** Shows what is marked and rated, from now on. */
  void follow() {
    following.unsubscribe();
    following = frames.groups().subscribe(_ -> show());
  }

  /** Until {@link #follow}. */
  void pause() {
    following.unsubscribe();
  }

  private void show() {
    var tiles = new ArrayList<Tile>();
    for (var id : compared) {
      tile(id).ifPresent(tiles::add);
    }
    shown.set(
        tiles.isEmpty()
            ? Shown.NOTHING
            : new Shown(List.copyOf(tiles), Math.clamp(current, 0, tiles.size() - 1), left));
  }

  /** The frame as it is now; as it was, if it is not there at the moment. */
  private Optional<Tile> tile(FrameId id) {
    return frames.groups().get().tiles().stream()
        .filter(tile -> tile.frame().id().equals(id))
        .findFirst()
        .or(
            () ->
                shown.get().tiles().stream()
                    .filter(tile -> tile.frame().id().equals(id))
                    .findFirst());
  }

  /** On to the next frame, or to the next of those side by side. */
  void step(int by) {
    if (compared.size() > 1) {
      choose(Math.floorMod(current + by, compared.size()));
    } else if (!compared.isEmpty()) {
      var to = Math.clamp((long) walk.indexOf(compared.getFirst()) + by, 0, walk.size() - 1);
      compared = List.of(walk.get(to));
      frames.selection().goTo(walk.get(to));
      show();
    }
  }

  /** One of those side by side becomes the current one. */
  void choose(int which) {
    if (which >= 0 && which < compared.size() && which != current) {
      current = which;
      show();
    }
  }

  /** Takes the current one away; the last one stays. */
  void takeAway() {
    if (compared.size() < 2) {
      return;
    }
    var rest = new ArrayList<>(compared);
    rest.remove(current);
    compared = List.copyOf(rest);
    current = Math.min(current, compared.size() - 1);
    show();
  }

  /** The current one is a select, or none any more. */
  void toggleSelect() {
    shown.get().currentTile().ifPresent(tile -> frames.toggleSelect(List.of(tile)));
  }

  /** Of those side by side the current one is the select, the others are not. */
  void selectOnly() {
    var now = shown.get();
    if (now.sideBySide()) {
      frames.selectOnly(now.currentTile().orElseThrow(), now.others());
    }
  }

  /** Rates the current one. */
  void rate(int rating) {
    shown.get().currentTile().ifPresent(tile -> frames.rate(rating, List.of(tile)));
  }

  /** Sees all pictures at full size, or whole again. */
  void turnFullSize() {
    fullSize.set(fullSize.get().isPresent() ? Optional.empty() : Optional.of(Spot.MIDDLE));
  }

  /** Turns to full size around a spot, or whole again. */
  void turnFullSize(Spot spot) {
    fullSize.set(fullSize.get().isPresent() ? Optional.empty() : Optional.of(spot));
  }

  /** Sees that spot, where pictures are seen at full size. */
  void look(Spot spot) {
    if (fullSize.get().filter(now -> !Objects.equals(now, spot)).isPresent()) {
      fullSize.set(Optional.of(spot));
    }
  }

  /** Moves what is seen at full size by a step. */
  void pan(int right, int down) {
    fullSize.get().ifPresent(now -> look(now.moved(right, down)));
  }
}
