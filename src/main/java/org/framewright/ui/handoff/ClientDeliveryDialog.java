package org.framewright.ui.handoff;

import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;

/** Which of what came back goes to the client under which name, what does not, and where to. */
final class ClientDeliveryDialog {
  private final ClientDeliveryModel model;
  private final Texts texts;
  private final VBox node = new VBox();
  private final WrappedText title = new WrappedText("field-word");
  private final ListView<GoingLine> list = new ListView<>();
  private final RemarkBox why = new RemarkBox();
  private final CheckBox onlyNew = new CheckBox();
  private final CheckBox withFindings = new CheckBox();
  private final CheckBox sheet = new CheckBox();
  private final CheckBox table = new CheckBox();
  private final WrappedText target = new WrappedText("code");
  private final TextField name = new TextField();
  private final Subscription following;

  ClientDeliveryDialog(ClientDeliveryModel model, Desk desk) {
    this.model = model;
    this.texts = desk.texts();
    title.setId("client-going");
    list.setId("client-lines");
    list.setItems(model.lines());
    list.setCellFactory(_ -> new GoingCell(texts));
    list.setAccessibleText(texts.get("handoff.going.list"));
    list.setPlaceholder(WrappedText.of(texts.get("handoff.client.none"), "quiet"));
    list.getStyleClass().add("two-lines");
    why.setId("client-why");
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (_, _, now) -> why.show(Optional.ofNullable(now).flatMap(one -> one.inFull(texts))));
    onlyNew.setId("client-new");
    onlyNew.setText(texts.get("handoff.choice.new"));
    onlyNew.setMinWidth(Region.USE_PREF_SIZE);
    onlyNew.selectedProperty().bindBidirectional(model.onlyNew());
    withFindings.setId("client-findings");
    withFindings.setText(texts.get("handoff.client.findings"));
    withFindings.setMinWidth(Region.USE_PREF_SIZE);
    withFindings.selectedProperty().bindBidirectional(model.withFindings());
    sheet.setId("client-sheet");
    sheet.setText(texts.get("handoff.choice.sheet"));
    sheet.setMinWidth(Region.USE_PREF_SIZE);
    sheet.selectedProperty().bindBidirectional(model.sheet());
    table.setId("client-table");
    table.setText(texts.get("handoff.choice.table"));
    table.setMinWidth(Region.USE_PREF_SIZE);
    table.selectedProperty().bindBidirectional(model.table());
    var how = new FlowPane(onlyNew, withFindings, sheet, table);
    how.getStyleClass().add("in-lines");
    var choose = new Button(texts.get("handoff.act.place"));
    choose.setId("client-place");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    choose.setOnAction(
        _ ->
            desk.files()
                .folder(texts.get("handoff.placeTitle"), Optional.ofNullable(model.place().get()))
                .ifPresent(model.place()::set));
    target.setId("client-target");
    target.setMinWidth(0);
    HBox.setHgrow(target, Priority.ALWAYS);
    var where = new HBox(target, choose);
    where.getStyleClass().add("in-line");
    var called = new Label(texts.get("handoff.client.name"));
    called.getStyleClass().add("field-word");
    called.setMinWidth(Region.USE_PREF_SIZE);
    name.setId("client-name");
    name.setAccessibleText(texts.get("handoff.client.name"));
    name.textProperty().bindBidirectional(model.name());
    HBox.setHgrow(name, Priority.ALWAYS);
    var naming = new HBox(called, name);
    naming.getStyleClass().add("in-line");
    node.getStyleClass().add("rename-question");
    node.getChildren().addAll(title, list, why, how, naming, where);
    following = model.planned().subscribe(now -> now.ifPresent(this::show));
  }

  private void show(ClientDeliveryModel.Planned now) {
    title.setText(
        texts.apart(
            texts.get(
                "handoff.client.going",
                now.plan().files(),
                texts.formats().size(now.plan().bytes())),
            now.plan().withheld().isEmpty()
                ? ""
                : texts.get("handoff.going.withheld", now.plan().withheld().size()),
            now.plan().left() == 0
                ? ""
                : texts.get("handoff.going.stay", (int) now.plan().left())));
    name.setPromptText(now.usualName());
    target.setText(
        now.target().map(Object::toString).orElseGet(() -> texts.get("handoff.problem.name")));
  }

  /** The question. */
  DialogSpec spec(Runnable answer) {
    return new DialogSpec(
        texts.get("handoff.client.title"),
        node,
        list,
        texts.get("handoff.client.do"),
        model.ready(),
        () -> {
          dispose();
          answer.run();
        },
        this::dispose);
  }

  private void dispose() {
    following.unsubscribe();
    onlyNew.selectedProperty().unbindBidirectional(model.onlyNew());
    withFindings.selectedProperty().unbindBidirectional(model.withFindings());
    sheet.selectedProperty().unbindBidirectional(model.sheet());
    table.selectedProperty().unbindBidirectional(model.table());
    name.textProperty().unbindBidirectional(model.name());
    list.setItems(null);
  }
}
