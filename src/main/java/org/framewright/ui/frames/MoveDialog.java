package org.framewright.ui.frames;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.framewright.frames.Place;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.ListWalk;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** Asks where frames shall go: type of a setup, choose it or one of its views below. */
final class MoveDialog {
  private static final double LINE_HEIGHT = 32;

  private final FramesModel model;
  private final Texts texts;
  private final TextField typed = new TextField();
  private final ListView<Destination> list = new ListView<>();
  private final VBox node;

  private record Destination(Setup setup, Place place) {}

  MoveDialog(FramesModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    typed.setId("move-to");
    typed.setPromptText(texts.get("frames.moveTyped"));
    typed.setAccessibleText(texts.get("frames.moveTyped"));
    typed.textProperty().addListener(_ -> find());
    ListWalk.of(typed, list);
    list.setFixedCellSize(LINE_HEIGHT);
    list.setPrefHeight(LINE_HEIGHT * 8);
    list.setPrefWidth(520);
    list.setCellFactory(_ -> new DestinationCell());
    list.setAccessibleText(texts.get("frames.moveTyped"));
    var from = WrappedText.of(texts.get("frames.moveFrom", model.whereTheyAre()));
    node = new VBox(from, typed, list);
    node.getStyleClass().add("move-dialog");
    find();
  }

  Node node() {
    return node;
  }

  Node focus() {
    return typed;
  }

  /** Whether a place is chosen. */
  javafx.beans.binding.BooleanBinding ready() {
    return list.getSelectionModel().selectedItemProperty().isNotNull();
  }

  void move() {
    var chosen = list.getSelectionModel().getSelectedItem();
    if (chosen != null) {
      model.move(chosen.place());
    }
  }

  private void find() {
    var found = new ArrayList<Destination>();
    for (var setup : model.destinations(typed.getText())) {
      model.places(setup).forEach(place -> found.add(new Destination(setup, place)));
    }
    list.getItems().setAll(List.copyOf(found));
    list.getSelectionModel().selectFirst();
  }

  private final class DestinationCell extends ListCell<Destination> {
    @Override
    protected void updateItem(Destination to, boolean empty) {
      super.updateItem(to, empty);
      if (empty || to == null) {
        setText("");
        return;
      }
      setText(
          to.place()
              .view()
              .map(view -> texts.get("frames.moveView", to.setup().code(), view))
              .orElse(texts.get("frames.moveSetup", to.setup().code(), to.setup().title())));
    }
  }
}
