package org.framewright.ui.start;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.naming.Finding;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.FindingLine;
import org.framewright.ui.start.StartModel.KnownConvention;

/** The form on which a job is started: its convention, a row for each field, and its place. */
final class StartForm extends VBox {
  private final StartModel model;
  private final Texts texts;
  private final ComboBox<KnownConvention> convention = new ComboBox<>();
  private final VBox fields = new VBox();
  private final VBox conventionFindings = new VBox();
  private final VBox refused = new VBox();
  private final List<FieldRow> rows = new ArrayList<>();
  private final InvalidationListener entriesChanged = _ -> showFields();
  private final Subscription following;

  /**
   * @param editConvention opens the convention in use for editing
   * @param proposeConvention shows where one is proposed from names in use
   * @param choosePlace asks where the job's folder is made
   */
  StartForm(
      StartModel model,
      Texts texts,
      Runnable editConvention,
      Runnable proposeConvention,
      Runnable choosePlace) {
    this.model = model;
    this.texts = texts;
    var title = new Label(texts.get("start.title"));
    title.getStyleClass().add("sheet-title");
    fields.getStyleClass().add("fields");
    conventionFindings.getStyleClass().add("findings");
    refused.getStyleClass().add("findings");
    var inside =
        new VBox(
            word("start.convention"),
            conventionRow(),
            rulesRow(editConvention, proposeConvention),
            conventionFindings,
            fields,
            word("start.place"),
            placeRow(choosePlace));
    inside.getStyleClass().add("start-form");
    var scroll = new ScrollPane(inside);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getStyleClass().addAll("paper-sheet", "start-sheet");
    getChildren().addAll(title, scroll, refused, start());
    model.entries().addListener(entriesChanged);
    following =
        Subscription.combine(
            model.conventionFindings().subscribe(now -> showFindings(conventionFindings, now)),
            model.refused().subscribe(this::showRefused));
    showFields();
  }

  private Region conventionRow() {
    convention.setId("convention");
    convention.setItems(model.conventions());
    convention.valueProperty().bindBidirectional(model.chosen());
    convention.setCellFactory(_ -> new ConventionCell());
    convention.setButtonCell(new ConventionCell());
    convention.setMaxWidth(Double.MAX_VALUE);
    convention.setAccessibleText(texts.get("start.convention"));
    return convention;
  }

  private Region rulesRow(Runnable edit, Runnable propose) {
    var change = new Button(texts.get("start.changeConvention"));
    change.setMinWidth(USE_PREF_SIZE);
    change.setOnAction(_ -> edit.run());
    change.disableProperty().bind(model.chosen().isNull());
    var names = new Button(texts.get("start.fromNames"));
    names.setId("from-names");
    names.setMinWidth(USE_PREF_SIZE);
    names.setOnAction(_ -> propose.run());
    var row = new HBox(change, names);
    row.getStyleClass().add("in-line");
    return row;
  }

  private Region placeRow(Runnable choosePlace) {
    var place = new Label();
    place.setId("place");
    place.getStyleClass().add("place");
    place.setMaxWidth(Double.MAX_VALUE);
    place.setMinWidth(0);
    place.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    place
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    model.place().get() == null
                        ? texts.get("start.noPlace")
                        : model.place().get().toString(),
                model.place()));
    HBox.setHgrow(place, Priority.ALWAYS);
    var choose = new Button(texts.get("start.choosePlace"));
    choose.setId("choose-place");
    choose.setMinWidth(USE_PREF_SIZE);
    choose.setOnAction(_ -> choosePlace.run());
    var row = new HBox(place, choose);
    row.getStyleClass().add("in-line");
    return row;
  }

  private Button start() {
    var start = new Button();
    start.setId("start");
    start.getStyleClass().add("does-it");
    // Names have underscores of their own.
    start.setMnemonicParsing(false);
    start.setMaxWidth(Double.MAX_VALUE);
    start.textProperty().bind(model.startText());
    start.disableProperty().bind(model.canStart().not());
    start.setOnAction(_ -> model.start());
    return start;
  }

  private Label word(String key) {
    var label = new Label(texts.get(key));
    label.getStyleClass().add("field-word");
    return label;
  }

  /** The first field that one types in. */
  Node focus() {
    return rows.stream()
        .filter(row -> row.lookup(".text-field") != null)
        .findFirst()
        .map(FieldRow::focus)
        .orElse(convention);
  }

  private void showFields() {
    var typing = typedIn();
    rows.forEach(FieldRow::dispose);
    rows.clear();
    fields.getChildren().clear();
    var later = false;
    for (var entry : model.entries()) {
      if (!entry.ofTheJob() && !later) {
        later = true;
        fields.getChildren().add(WrappedText.of(texts.get("start.later"), "field-group"));
      }
      var row = new FieldRow(entry, texts);
      rows.add(row);
      fields.getChildren().add(row);
    }
    typing.ifPresent(
        name ->
            rows.stream()
                .filter(row -> row.isOf(name))
                .findFirst()
                .ifPresentOrElse(FieldRow::goOnTyping, () -> focus().requestFocus()));
  }

  /** The field to which the keys go, whose row is about to be replaced. */
  private Optional<String> typedIn() {
    return rows.stream().filter(FieldRow::isTypedIn).map(FieldRow::name).findFirst();
  }

  /** Why the job cannot be started: found while one types, or when it was tried. */
  void showRefused(List<Finding> findings) {
    showFindings(refused, findings);
  }

  private void showFindings(VBox into, List<Finding> findings) {
    into.getChildren()
        .setAll(findings.stream().map(finding -> FindingLine.beside(texts, finding)).toList());
    into.setVisible(!findings.isEmpty());
    into.setManaged(!findings.isEmpty());
  }

  void dispose() {
    model.entries().removeListener(entriesChanged);
    following.unsubscribe();
    rows.forEach(FieldRow::dispose);
    convention.valueProperty().unbindBidirectional(model.chosen());
    convention.setItems(null);
  }

  /** A convention by its title. */
  private static final class ConventionCell extends ListCell<KnownConvention> {
    @Override
    protected void updateItem(KnownConvention convention, boolean empty) {
      super.updateItem(convention, empty);
      setText(empty || convention == null ? "" : convention.title());
    }
  }
}
