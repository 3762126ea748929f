package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;

/** Takes a folder that is dropped on a part of the page. */
final class FolderDrop {
  private FolderDrop() {}

  static void on(Node node, Consumer<Path> then) {
    node.setOnDragOver(
        event -> {
          if (event.getDragboard().hasFiles()) {
            event.acceptTransferModes(TransferMode.COPY);
          }
          event.consume();
        });
    node.setOnDragDropped(event -> dropped(event, then));
  }

  private static void dropped(DragEvent event, Consumer<Path> then) {
    var files = event.getDragboard().getFiles();
    if (files != null && !files.isEmpty()) {
      then.accept(files.getFirst().toPath());
      event.setDropCompleted(true);
    }
    event.consume();
  }
}
