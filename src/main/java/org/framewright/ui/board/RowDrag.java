package org.framewright.ui.board;

import javafx.css.PseudoClass;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.skin.VirtualFlow;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.DataFormat;
import javafx.scene.input.DragEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.TransferMode;

/** Lets a line be dragged to another place of the running order: above or below another line. */
final class RowDrag {
  /** What is dragged: a setup's code. */
  static final DataFormat SETUP = new DataFormat("application/x-framewright-setup");

  private static final PseudoClass ABOVE = PseudoClass.getPseudoClass("drop-above");
  private static final PseudoClass BELOW = PseudoClass.getPseudoClass("drop-below");
  private static final double EDGE = 30;
  private static final double SCROLL = 12;

  /** Moves a setup right before or right behind another. */
  @FunctionalInterface
  interface Move {
    void move(String code, String beside, boolean behind);
  }

  private final ListCell<Line> cell;
  private final Move move;

  private RowDrag(ListCell<Line> cell, Move move) {
    this.cell = cell;
    this.move = move;
  }

  /** The cell, whose line can be dragged and takes others above or below it. */
  static ListCell<Line> on(ListCell<Line> cell, Move move) {
    var drag = new RowDrag(cell, move);
    cell.setOnDragDetected(drag::lift);
    cell.setOnDragOver(drag::over);
    cell.setOnDragExited(_ -> drag.show(false, false));
    cell.setOnDragDropped(drag::drop);
    return cell;
  }

  private void lift(MouseEvent event) {
    if (cell.getItem() instanceof SetupRow row) {
      var content = new ClipboardContent();
      content.put(SETUP, row.code());
      cell.startDragAndDrop(TransferMode.MOVE).setContent(content);
      event.consume();
    }
  }

  private void over(DragEvent event) {
    if (event.getDragboard().getContent(SETUP) instanceof String code) {
      scrollNearTheEdge(cell.getListView(), event);
      if (cell.getItem() instanceof SetupRow row && !row.code().equals(code)) {
        event.acceptTransferModes(TransferMode.MOVE);
        show(!behind(event), behind(event));
      }
      event.consume();
    }
  }

  private void drop(DragEvent event) {
    if (event.getDragboard().getContent(SETUP) instanceof String code
        && cell.getItem() instanceof SetupRow row
        && !row.code().equals(code)) {
      move.move(code, row.code(), behind(event));
      event.setDropCompleted(true);
      event.consume();
    }
    show(false, false);
  }

  private boolean behind(DragEvent event) {
    return event.getY() > cell.getHeight() / 2;
  }

  private void show(boolean above, boolean below) {
    cell.pseudoClassStateChanged(ABOVE, above);
    cell.pseudoClassStateChanged(BELOW, below);
  }

  private static void scrollNearTheEdge(ListView<Line> list, DragEvent event) {
    var y = list.sceneToLocal(event.getSceneX(), event.getSceneY()).getY();
    if (list.lookup(".virtual-flow") instanceof VirtualFlow<?> lines) {
      if (y < EDGE) {
        lines.scrollPixels(-SCROLL);
      } else if (y > list.getHeight() - EDGE) {
        lines.scrollPixels(SCROLL);
      }
    }
  }
}
