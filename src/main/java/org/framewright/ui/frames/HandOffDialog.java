package org.framewright.ui.frames;

import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Select;
import org.framewright.handoff.Withheld;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;

/** Shows what would be handed off under which name, what would not and why, and asks where to. */
final class HandOffDialog {
  private static final double LINE_HEIGHT = 28;
  private static final double WITHHELD_HEIGHT = 48;

  private final VBox node = new VBox();
  private final Desk desk;
  private Node focus = node;

  HandOffDialog(HandOffModel model, HandOffPlan plan, Desk desk) {
    this.desk = desk;
    var texts = desk.texts();
    node.getStyleClass().add("hand-off");
    var choose = new Button(texts.get("frames.handOffPlace"));
    choose.setId("hand-off-place");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    choose.setOnAction(
        _ ->
            desk.files()
                .folder(
                    texts.get("frames.handOffPlaceTitle"), Optional.ofNullable(model.place().get()))
                .ifPresent(model.place()::set));
    var target = new WrappedText();
    target.setMinWidth(0);
    target.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(target, Priority.ALWAYS);
    target
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> model.target().get().map(Object::toString).orElse(""), model.target()));
    var where = new HBox(target, choose);
    where.getStyleClass().add("in-line");

    if (!plan.withheld().isEmpty()) {
      var held = new Label(texts.get("frames.withheld", plan.withheld().size()));
      held.getStyleClass().addAll("field-word", "needs");
      var list = new ListView<Withheld>();
      list.getItems().setAll(plan.withheld());
      list.setFixedCellSize(WITHHELD_HEIGHT);
      list.setPrefHeight(WITHHELD_HEIGHT * Math.min(3, plan.withheld().size()) + 4);
      list.setPrefWidth(560);
      list.setCellFactory(_ -> new WithheldCell());
      node.getChildren().addAll(held, list);
    }
    if (!plan.selects().isEmpty()) {
      var going =
          new Label(
              texts.get(
                  "frames.going",
                  plan.selects().size(),
                  plan.files(),
                  desk.texts().formats().size(plan.bytes())));
      going.getStyleClass().add("field-word");
      var list = new ListView<Select>();
      list.getItems().setAll(plan.selects());
      list.setFixedCellSize(LINE_HEIGHT);
      list.setPrefHeight(LINE_HEIGHT * Math.min(7, plan.selects().size()) + 4);
      list.setPrefWidth(560);
      list.setCellFactory(_ -> new SelectCell());
      focus = list;
      node.getChildren().addAll(going, list, where);
    }
  }

  Node node() {
    return node;
  }

  Node focus() {
    return focus;
  }

  private static final class SelectCell extends ListCell<Select> {
    SelectCell() {
      getStyleClass().add("code");
    }

    @Override
    protected void updateItem(Select select, boolean empty) {
      super.updateItem(select, empty);
      setText(empty || select == null ? "" : select.original() + "  →  " + select.name());
    }
  }

  /** The remedy, and on which page of the app. */
  private String remedy(Withheld held) {
    var page =
        switch (held.tool()) {
          case NONE -> "";
          case RENAMING -> desk.wayTo("names");
          case CHECKING -> desk.wayTo("convention");
        };
    return page.isEmpty()
        ? desk.texts().remedy(held.problem())
        : desk.texts().get("frames.remedyOn", desk.texts().remedy(held.problem()), page);
  }

  private final class WithheldCell extends ListCell<Withheld> {
    private final Label what = new Label();
    private final Label remedy = new Label();
    private final CellBox box = new CellBox(what, remedy);

    WithheldCell() {
      remedy.getStyleClass().add("remedy");
      box.setAlignment(Pos.CENTER_LEFT);
    }

    @Override
    protected void updateItem(Withheld held, boolean empty) {
      super.updateItem(held, empty);
      if (empty || held == null) {
        setGraphic(null);
        return;
      }
      what.setText(desk.texts().sentence(held.problem()));
      remedy.setText(remedy(held));
      setGraphic(box);
      setAccessibleText(what.getText() + " " + remedy.getText());
    }
  }
}
