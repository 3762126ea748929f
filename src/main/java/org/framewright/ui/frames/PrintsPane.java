package org.framewright.ui.frames;

import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.collections.ObservableList;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.control.skin.VirtualFlow;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.controlsfx.control.GridView;
import org.framewright.frames.FrameId;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The frames under a heading as a grid of pictures, walked by keys and clicks. */
final class PrintsPane extends VBox {
  private static final double GAP = 10;
  private static final double SCROLL_BAR = 20;

  /** The height of what stands under a print, by the letters of the title. */
  private static final double FOOT_EMS = 2.3;

  private final Texts texts;
  private final FramePictures pictures;
  private final FrameSelection<FrameId> selection;
  private final Runnable closer;
  private final GridView<Tile> grid = new GridView<>();
  private final Label title = new Label();
  private final WrappedText empty = new WrappedText("quiet");
  private final Label chosen = new Label();
  private final Subscription following;
  private double requested = 1;

  /**
   * @param closer looks closer at the tile that the keys are on
   */
  PrintsPane(
      ObservableList<Tile> tiles,
      FrameSelection<FrameId> selection,
      FramePictures pictures,
      Texts texts,
      Runnable closer) {
    this.texts = texts;
    this.pictures = pictures;
    this.selection = selection;
    this.closer = closer;
    title.getStyleClass().add("grid-title");
    title.setMinWidth(0);
    title.setMaxWidth(Double.MAX_VALUE);
    grid.setId("grid");
    grid.setItems(tiles);
    grid.setCellFactory(_ -> tile());
    grid.setHorizontalCellSpacing(GAP / 2);
    grid.setVerticalCellSpacing(GAP / 2);
    grid.widthProperty().addListener(_ -> spread());
    grid.setFocusTraversable(true);
    // Its inside would be one stop more on the way of the Tab key, where no key does anything.
    grid.skinProperty()
        .subscribe(
            _ ->
                Optional.ofNullable(grid.lookup(".virtual-flow"))
                    .ifPresent(inside -> inside.setFocusTraversable(false)));
    grid.setAccessibleRole(AccessibleRole.LIST_VIEW);
    grid.setAccessibleText(texts.get("frames.grid"));
    grid.addEventFilter(KeyEvent.KEY_PRESSED, this::walk);
    empty.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    empty.visibleProperty().bind(Bindings.isEmpty(tiles));
    var paper = new StackPane(grid, empty);
    VBox.setVgrow(paper, Priority.ALWAYS);

    chosen.getStyleClass().add("quiet");
    chosen.setId("chosen");
    var head = new HBox(title, chosen);
    head.getStyleClass().add("grid-head");
    HBox.setHgrow(title, Priority.ALWAYS);
    chosen.setMinWidth(Region.USE_PREF_SIZE);

    getChildren().addAll(head, paper);
    getStyleClass().add("grid-column");
    following =
        Subscription.combine(
            selection.chosen().subscribe(now -> showChosen(now.size())),
            selection.cursor().subscribe(_ -> reveal()));
  }

  GridView<Tile> grid() {
    return grid;
  }

  void title(String text) {
    title.setText(text);
  }

  /** Says why there are no pictures, where there are none. */
  void none(String why) {
    empty.setText(why);
  }

  void dispose() {
    following.unsubscribe();
  }

  private void showChosen(int frames) {
    chosen.setText(texts.get("frames.chosen", frames));
  }

  private TileCell tile() {
    var cell = new TileCell(pictures, texts, selection);
    cell.addEventHandler(MouseEvent.MOUSE_CLICKED, event -> clicked(event, cell));
    return cell;
  }

  private void clicked(MouseEvent event, TileCell cell) {
    if (event.getButton() != MouseButton.PRIMARY || cell.getItem() == null) {
      return;
    }
    grid.requestFocus();
    var at = cell.getIndex();
    if (event.isShiftDown()) {
      selection.stretch(at);
    } else if (event.isShortcutDown()) {
      selection.toggle(at);
    } else {
      selection.go(at);
    }
    if (event.getClickCount() == 2) {
      closer.run();
    }
  }

  /** As many columns as tiles of the requested width fit in, beside the scroll bar. */
  private int columns() {
    return Math.max(1, (int) Math.floor((grid.getWidth() - SCROLL_BAR) / (requested + GAP)));
  }

  /** The tiles share the width, so that no strip of table is left beside them. */
  private void spread() {
    if (grid.getWidth() > 0) {
      // A little less, so that rounding never costs the last column.
      var width = Math.floor((grid.getWidth() - SCROLL_BAR) / columns() - GAP) - 1;
      grid.setCellWidth(width);
      // Upright and lying pictures have the same room.
      grid.setCellHeight(width + FOOT_EMS * title.getFont().getSize());
    }
  }

  private int rows() {
    var height = grid.getCellHeight() + 2 * grid.getVerticalCellSpacing();
    return Math.max(1, (int) Math.floor(grid.getHeight() / height));
  }

  private void walk(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    var at = selection.cursor().get();
    var to =
        switch (event.getCode()) {
          case LEFT -> at - 1;
          case RIGHT -> at + 1;
          case UP -> at - columns() < 0 ? at : at - columns();
          case DOWN -> at + columns();
          case PAGE_UP -> at - columns() * rows();
          case PAGE_DOWN -> at + columns() * rows();
          case HOME -> 0;
          case END -> grid.getItems().size() - 1;
          default -> Integer.MIN_VALUE;
        };
    if (to == Integer.MIN_VALUE) {
      return;
    }
    if (event.isShiftDown()) {
      selection.stretch(to);
    } else {
      selection.go(to);
    }
    event.consume();
  }

  /** Scrolls so that the keys' tile is in sight. */
  private void reveal() {
    var at = selection.cursor().get();
    if (at >= 0 && grid.lookup(".virtual-flow") instanceof VirtualFlow<?> flow) {
      var row = at / columns();
      var first = flow.getFirstVisibleCell();
      var last = flow.getLastVisibleCell();
      if (first == null || last == null) {
        return;
      }
      if (row <= first.getIndex()) {
        flow.scrollTo(row);
      } else if (row >= last.getIndex()) {
        flow.scrollTo(Math.max(0, row - (last.getIndex() - first.getIndex()) + 1));
      }
    }
  }

  void size(double width) {
    requested = width;
    spread();
  }
}
