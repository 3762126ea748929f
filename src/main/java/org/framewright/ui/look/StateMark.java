package org.framewright.ui.look;

import java.util.EnumMap;
import java.util.Map;
import javafx.css.PseudoClass;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.SVGPath;
import javafx.scene.shape.StrokeLineCap;
import org.framewright.shotlist.SetupState;

/**
 * A setup's state as a mark, drawn as with a pencil on the list or with tape on the floor: a tape T
 * waits for somebody to stand on it; somebody stands on it; a stroke for what is shot; the stroke
 * twice underlined when it is agreed; the proofreader's caret for what is to be put in again; the
 * proofreader's loop for what goes. The state's word stands beside it.
 */
public final class StateMark extends StackPane {
  private static final double BOX = 24;

  private static final Map<SetupState, PseudoClass> STATES = new EnumMap<>(SetupState.class);

  static {
    for (var state : SetupState.values()) {
      STATES.put(state, PseudoClass.getPseudoClass(state.word()));
    }
  }

  private final SVGPath path = new SVGPath();
  private final double scale;

  /**
   * A mark without state.
   *
   * @param pixels its width and height
   */
  public StateMark(double pixels) {
    scale = pixels / BOX;
    getStyleClass().add("state-mark");
    path.getStyleClass().add("mark");
    path.setStrokeLineCap(StrokeLineCap.BUTT);
    path.setScaleX(scale);
    path.setScaleY(scale);
    // An invisible box keeps every mark in the same place.
    var box = new Rectangle(BOX, BOX);
    box.setVisible(false);
    var group = new javafx.scene.Group(box, path);
    group.setScaleX(1);
    getChildren().add(group);
    box.setScaleX(scale);
    box.setScaleY(scale);
    setMinSize(pixels, pixels);
    setPrefSize(pixels, pixels);
    setMaxSize(pixels, pixels);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
  }

  /** Shows a state. */
  public void show(SetupState state) {
    path.setContent(drawing(state));
    style(path, state);
  }

  /**
   * Lets the stylesheet know in which state a node is. A style class would cost far more.
   *
   * @param state null for none
   */
  public static void style(Node node, SetupState state) {
    STATES.forEach((each, its) -> node.pseudoClassStateChanged(its, each == state));
  }

  private static String drawing(SetupState state) {
    return switch (state) {
      case TO_SHOOT -> "M4 6 H20 M12 6 V20";
      case ON_SET -> "M8 6 A4 4 0 1 0 16 6 A4 4 0 1 0 8 6 Z M3 15 H21 M12 15 V23";
      case SHOT -> "M6 21 L18 3";
      case SIGNED_OFF -> "M8 14 L16 2 M4 18 H20 M4 22 H20";
      case PICKUP -> "M5 19 L12 6 L19 19";
      case DROPPED -> "M2 14 H15 C21 14 21 5 16 5 C12 5 12 11 14 15 L17 21";
    };
  }
}
