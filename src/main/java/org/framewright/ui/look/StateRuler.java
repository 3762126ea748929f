package org.framewright.ui.look;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import javafx.geometry.Rectangle2D;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Region;
import javafx.scene.shape.ClosePath;
import javafx.scene.shape.HLineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.VLineTo;
import org.framewright.shotlist.SetupState;

/**
 * A whole list as a ruler: a tick a setup in running order, by its height how far it is. Signed off
 * is tall, shot and pickup half as tall, to shoot a low line, on set overtops all, and dropped is a
 * gap.
 *
 * <p>All ticks of a state are one shape, since a shape of its own for each of hundreds of setups
 * would have to be styled.
 */
public class StateRuler extends Region {
  private static final double WIDEST = 18;
  private static final double GAP = 0.2;

  private final Map<SetupState, Path> ticks = new EnumMap<>(SetupState.class);
  private List<SetupState> states = List.of();

  /** A ruler without ticks. */
  public StateRuler() {
    getStyleClass().add("job-ruler");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    for (var state : SetupState.values()) {
      var path = new Path();
      path.getStyleClass().add("tick");
      path.setManaged(false);
      path.setMouseTransparent(true);
      StateMark.style(path, state);
      ticks.put(state, path);
    }
    getChildren().setAll(ticks.values());
  }

  /**
   * Shows how far each setup is.
   *
   * @param spoken the same in words
   */
  public final void show(List<SetupState> now, String spoken) {
    setAccessibleText(spoken);
    if (!now.equals(states)) {
      states = List.copyOf(now);
      requestLayout();
    }
  }

  private double step() {
    return Math.min(WIDEST, getWidth() / Math.max(1, states.size()));
  }

  /** Which tick is there, counted from 0. */
  protected final OptionalInt at(double x) {
    int place = (int) Math.floor(x / step());
    return place >= 0 && place < states.size() ? OptionalInt.of(place) : OptionalInt.empty();
  }

  @Override
  protected void layoutChildren() {
    ticks.values().forEach(path -> path.getElements().clear());
    double step = step();
    var last = new EnumMap<SetupState, Integer>(SetupState.class);
    for (int i = 0; i < states.size(); i++) {
      var state = states.get(i);
      // Of thousands of setups several share a pixel, which one tick of a state fills.
      int pixel = (int) (i * step);
      if (Objects.equals(last.put(state, pixel), pixel)) {
        continue;
      }
      place(state, i * step, step)
          .ifPresent(
              box ->
                  ticks
                      .get(state)
                      .getElements()
                      .addAll(
                          new MoveTo(box.getMinX(), box.getMinY()),
                          new HLineTo(box.getMaxX()),
                          new VLineTo(box.getMaxY()),
                          new HLineTo(box.getMinX()),
                          new ClosePath()));
    }
  }

  private Optional<Rectangle2D> place(SetupState state, double x, double step) {
    double part =
        switch (state) {
          case ON_SET -> 1;
          case SIGNED_OFF -> 0.7;
          case SHOT, PICKUP -> 0.45;
          case TO_SHOOT -> 0.15;
          case DROPPED -> 0;
        };
    double gap = step < 3 ? 0 : Math.max(1, step * GAP);
    double height = Math.round(getHeight() * part);
    return part == 0
        ? Optional.empty()
        : Optional.of(new Rectangle2D(x, getHeight() - height, Math.max(0.8, step - gap), height));
  }
}
