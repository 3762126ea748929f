package org.framewright.ui.board;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The order of now and another one beside it; in each line what is changed before it. */
final class OrderForm extends VBox {
  private final Texts texts;
  private final ListView<OrderLine> focus;

  OrderForm(ProposedOrder order, Texts texts) {
    this.texts = texts;
    getStyleClass().add("order-form");
    var now = list("order-now", texts.get("order.nowList"), order.linesNow());
    var halves = new HBox(half(order.now(), now));
    halves.getStyleClass().add("order-halves");
    VBox.setVgrow(halves, Priority.ALWAYS);
    if (order.isBetter()) {
      var then = list("order-then", texts.get("order.thenList"), order.linesThen());
      halves.getChildren().add(half(order.then(), then));
      focus = then;
    } else {
      focus = now;
    }
    var reasons = WrappedText.of(order.reasons(), "quiet");
    reasons.setId("order-reasons");
    reasons.setMinHeight(Region.USE_PREF_SIZE);
    getChildren().addAll(halves, reasons);
  }

  /** Where the keys go: they move through the list. */
  Node focus() {
    return focus;
  }

  private static VBox half(String heading, ListView<OrderLine> list) {
    var half = new VBox(WrappedText.of(heading, "order-heading"), list);
    half.getStyleClass().add("order-half");
    half.setMinWidth(0);
    half.setPrefWidth(1);
    HBox.setHgrow(half, Priority.ALWAYS);
    VBox.setVgrow(list, Priority.ALWAYS);
    return half;
  }

  private ListView<OrderLine> list(String id, String name, List<OrderLine> lines) {
    var list = new ListView<OrderLine>();
    list.setId(id);
    list.setAccessibleText(name);
    list.setCellFactory(_ -> new OrderCell());
    list.getItems().setAll(lines);
    list.getSelectionModel().selectFirst();
    return list;
  }

  private final class OrderCell extends LineCell<OrderLine> {
    private final Label code = new Label();
    private final WrappedText title = new WrappedText();
    private final Label changes = new Label();
    private final HBox row = new HBox(code, title, changes);

    OrderCell() {
      code.getStyleClass().add("line-code");
      code.setMinWidth(Region.USE_PREF_SIZE);
      title.setMostLines(1);
      title.setMinWidth(0);
      title.setPrefWidth(1);
      HBox.setHgrow(title, Priority.ALWAYS);
      changes.getStyleClass().add("order-change");
      changes.setMinWidth(Region.USE_PREF_SIZE);
      row.getStyleClass().add("order-line");
      row.setAlignment(Pos.CENTER_LEFT);
      setPrefWidth(1);
    }

    @Override
    protected void showLine(OrderLine line) {
      code.setText(line.code());
      title.setText(line.title());
      changes.setText(line.changes());
      setGraphic(row);
      setAccessibleText(texts.apart(line.code(), line.title(), line.changes()));
    }
  }
}
