package org.framewright.ui;

import com.sun.javafx.tk.TKClipboard;
import java.lang.reflect.Proxy;
import java.util.Map;
import java.util.Set;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.input.DataFormat;
import javafx.scene.input.DragEvent;
import javafx.scene.input.Dragboard;
import javafx.scene.input.PickResult;
import javafx.scene.input.TransferMode;

/** Something dragged over a node and dropped there; a headless display drags nothing by itself. */
final class Dropped {
  private Dropped() {}

  /** Drags {@code what} over a node, at a height within it, and drops it if the node takes it. */
  static boolean on(Node node, double y, DataFormat format, Object what) throws Exception {
    var board = board(Map.of(format, what));
    var over = event(DragEvent.DRAG_OVER, board, node, y);
    Event.fireEvent(node, over);
    if (over.getAcceptedTransferMode() == null) {
      return false;
    }
    Event.fireEvent(node, event(DragEvent.DRAG_DROPPED, board, node, y));
    return true;
  }

  private static DragEvent event(
      javafx.event.EventType<DragEvent> type, Dragboard board, Node node, double y) {
    var at = node.localToScene(5, y);
    return new DragEvent(
        type,
        board,
        at.getX(),
        at.getY(),
        at.getX(),
        at.getY(),
        TransferMode.MOVE,
        null,
        node,
        new PickResult(node, at.getX(), at.getY()));
  }

  private static Dragboard board(Map<DataFormat, Object> contents) throws Exception {
    var clipboard =
        (TKClipboard)
            Proxy.newProxyInstance(
                TKClipboard.class.getClassLoader(),
                new Class<?>[] {TKClipboard.class},
                (_, method, arguments) ->
                    switch (method.getName()) {
                      case "getContentTypes" -> contents.keySet();
                      case "hasContent" -> contents.containsKey(arguments[0]);
                      case "getContent" -> contents.get(arguments[0]);
                      case "getTransferModes" -> Set.of(TransferMode.values());
                      default -> null;
                    });
    var constructor = Dragboard.class.getDeclaredConstructor(TKClipboard.class);
    constructor.setAccessible(true);
    return constructor.newInstance(clipboard);
  }
}
