package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.handoff.Extent;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.handoff.Asked.Basis;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What goes, how much of it, and where to: the answers that a person gives. */
final class ChoicePane extends VBox {
  private static final List<Integer> RATINGS = List.of(1, 2, 3, 4, 5);

  private final HandOffModel model;
  private final Texts texts;
  private final VBox form = new VBox();
  private final Map<Basis, RadioButton> bases = new EnumMap<>(Basis.class);
  private final ComboBox<Integer> rating = new ComboBox<>();
  private final ComboBox<String> label = new ComboBox<>();
  private final WrappedText listSays = new WrappedText("quiet");
  private final TextField setups = new TextField();
  private final ComboBox<Extent.Pictures> pictures = new ComboBox<>();
  private final CheckBox onlyNew = new CheckBox();
  private final CheckBox slates = new CheckBox();
  private final ComboBox<MetadataMode> metadata = new ComboBox<>();
  private final CheckBox overwrite = new CheckBox();
  private final CheckBox sheet = new CheckBox();
  private final CheckBox table = new CheckBox();
  private final TextField split = new TextField();
  private final WrappedText place = new WrappedText("code");
  private final TextField name = new TextField();
  private final Subscription following;

  ChoicePane(HandOffModel model, Texts texts, Command list, Command choosePlace) {
    this.model = model;
    this.texts = texts;
    form.getStyleClass().add("choice-form");
    frames(list);
    extent();
    data();
    target(choosePlace);
    var scroll = new ScrollPane(form);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().add(scroll);
    getStyleClass().addAll("paper-sheet", "choice-sheet");
    following =
        Subscription.combine(
            model.basis().subscribe(now -> bases.get(now).setSelected(true)),
            model.rating().subscribe(now -> rating.setValue(now.intValue())),
            model.list().subscribe(this::showList),
            model.place().subscribe(this::showPlace),
            model.looked().subscribe(now -> now.ifPresent(this::show)),
            model.hasSlates().subscribe(slates::setVisible),
            model.metadata().subscribe(now -> overwrite.setDisable(now == MetadataMode.NONE)));
    setups.textProperty().bindBidirectional(model.setups());
    pictures.valueProperty().bindBidirectional(model.pictures());
    onlyNew.selectedProperty().bindBidirectional(model.onlyNew());
    slates.selectedProperty().bindBidirectional(model.slates());
    metadata.valueProperty().bindBidirectional(model.metadata());
    overwrite.selectedProperty().bindBidirectional(model.overwrite());
    sheet.selectedProperty().bindBidirectional(model.sheet());
    table.selectedProperty().bindBidirectional(model.table());
    split.textProperty().bindBidirectional(model.split());
    name.textProperty().bindBidirectional(model.name());
  }

  private void frames(Command list) {
    form.getChildren().add(title("handoff.choice.frames"));
    var group = new ToggleGroup();
    for (var basis : Basis.values()) {
      var button = new RadioButton(texts.get("handoff.basis." + basis.word()));
      button.setId("basis-" + basis.word());
      button.setToggleGroup(group);
      button.setMinWidth(Region.USE_PREF_SIZE);
      button
          .selectedProperty()
          .addListener(
              (_, _, on) -> {
                if (on) {
                  model.basis().set(basis);
                }
              });
      bases.put(basis, button);
    }
    rating.setId("hand-off-rating");
    rating.getItems().setAll(RATINGS);
    WordCell.in(rating, number -> texts.get("handoff.basis.rated.at", number));
    rating.setAccessibleText(texts.get("handoff.basis.rated"));
    rating
        .valueProperty()
        .addListener(
            (_, _, now) -> {
              if (now != null && now != model.rating().get()) {
                model.rating().set(now);
                model.basis().set(Basis.RATED);
              }
            });
    label.setId("hand-off-label");
    WordCell.in(label, text -> text);
    label.setAccessibleText(texts.get("handoff.basis.labelled"));
    label.setMaxWidth(Double.MAX_VALUE);
    label.setMinWidth(0);
    label
        .valueProperty()
        .addListener(
            (_, _, now) -> {
              if (now != null && !now.equals(model.label().get())) {
                model.label().set(now);
                model.basis().set(Basis.LABELLED);
              }
            });
    var open = CommandControls.button(list, texts.get("handoff.act.list"), texts);
    open.setId("hand-off-by-list");
    open.getStyleClass().add("act");
    form.getChildren()
        .addAll(
            bases.get(Basis.SELECTS),
            line(bases.get(Basis.RATED), rating),
            line(bases.get(Basis.LABELLED), label),
            line(bases.get(Basis.LISTED), open),
            listSays,
            bases.get(Basis.EVERY));
  }

  private void extent() {
    setups.setId("hand-off-setups");
    setups.setPromptText(texts.get("handoff.choice.setups.prompt"));
    pictures.setId("hand-off-pictures");
    pictures.getItems().setAll(Extent.Pictures.values());
    pictures.setMaxWidth(Double.MAX_VALUE);
    WordCell.in(
        pictures,
        one ->
            switch (one) {
              case ALL -> texts.get("handoff.pictures.all");
              case RAW -> texts.get("handoff.pictures.raw");
              case JPEG -> texts.get("handoff.pictures.jpeg");
            });
    onlyNew.setId("hand-off-new");
    onlyNew.setText(texts.get("handoff.choice.new"));
    onlyNew.setMinWidth(Region.USE_PREF_SIZE);
    slates.setId("hand-off-slates");
    slates.setText(texts.get("handoff.choice.slates"));
    slates.setMinWidth(Region.USE_PREF_SIZE);
    slates.setTooltip(new Tooltip(texts.get("handoff.choice.slates.what")));
    slates.managedProperty().bind(slates.visibleProperty());
    form.getChildren()
        .addAll(
            title("handoff.choice.setups"),
            named(setups, "handoff.choice.setups"),
            title("handoff.choice.pictures"),
            named(pictures, "handoff.choice.pictures"),
            onlyNew,
            slates);
  }

  private void data() {
    metadata.setId("hand-off-metadata");
    metadata.getItems().setAll(MetadataMode.values());
    metadata.setMaxWidth(Double.MAX_VALUE);
    WordCell.in(
        metadata,
        one ->
            switch (one) {
              case NONE -> texts.get("handoff.metadata.none");
              case SIDECAR -> texts.get("handoff.metadata.sidecar");
              case EMBED -> texts.get("handoff.metadata.embed");
            });
    overwrite.setId("hand-off-overwrite");
    overwrite.setText(texts.get("handoff.choice.overwrite"));
    overwrite.setMinWidth(Region.USE_PREF_SIZE);
    overwrite.setTooltip(new Tooltip(texts.get("handoff.choice.overwrite.what")));
    sheet.setId("hand-off-sheet");
    sheet.setText(texts.get("handoff.choice.sheet"));
    sheet.setMinWidth(Region.USE_PREF_SIZE);
    table.setId("hand-off-table");
    table.setText(texts.get("handoff.choice.table"));
    table.setMinWidth(Region.USE_PREF_SIZE);
    form.getChildren()
        .addAll(
            title("handoff.choice.metadata"),
            named(metadata, "handoff.choice.metadata"),
            overwrite,
            title("handoff.choice.papers"),
            sheet,
            table);
  }

  private void target(Command choosePlace) {
    split.setId("hand-off-split");
    split.setPromptText(texts.get("handoff.choice.split.prompt"));
    var choose = CommandControls.button(choosePlace, texts.get("handoff.act.place"), texts);
    choose.setId("hand-off-place");
    choose.getStyleClass().add("act");
    place.setId("hand-off-at");
    place.setMostLines(3);
    name.setId("hand-off-name");
    form.getChildren()
        .addAll(
            title("handoff.choice.split"),
            named(split, "handoff.choice.split"),
            title("handoff.choice.place"),
            place,
            choose,
            title("handoff.choice.name"),
            named(name, "handoff.choice.name"));
  }

  private Label title(String key) {
    var title = new Label(texts.get(key));
    title.getStyleClass().addAll("field-word", "choice-word");
    title.setMinWidth(Region.USE_PREF_SIZE);
    return title;
  }

  private Node named(Control control, String key) {
    control.setAccessibleText(texts.get(key));
    return control;
  }

  private static FlowPane line(Node... parts) {
    var line = new FlowPane(parts);
    line.getStyleClass().add("in-lines");
    return line;
  }

  private void showList(Optional<ClientListModel.Named> list) {
    listSays.setText(
        list.map(
                named ->
                    texts.get(
                        "handoff.basis.listed.frames",
                        named.names().file(),
                        named.names().frames().size()))
            .orElse(""));
    listSays.setVisible(list.isPresent());
    listSays.setManaged(list.isPresent());
  }

  private void showPlace(Path now) {
    place.setText(now == null ? "" : now.toString());
  }

  private void show(Looked now) {
    name.setPromptText(now.usualName());
    if (!label.getItems().equals(now.labels())) {
      label.getItems().setAll(now.labels());
    }
    if (now.labels().contains(model.label().get())) {
      label.setValue(model.label().get());
    }
    label.setDisable(now.labels().isEmpty());
    bases.get(Basis.LABELLED).setDisable(now.labels().isEmpty());
  }

  /** Where the keys go: to what is chosen. */
  Node focus() {
    return bases.get(model.basis().get());
  }

  void dispose() {
    following.unsubscribe();
    setups.textProperty().unbindBidirectional(model.setups());
    pictures.valueProperty().unbindBidirectional(model.pictures());
    onlyNew.selectedProperty().unbindBidirectional(model.onlyNew());
    slates.selectedProperty().unbindBidirectional(model.slates());
    metadata.valueProperty().unbindBidirectional(model.metadata());
    overwrite.selectedProperty().unbindBidirectional(model.overwrite());
    sheet.selectedProperty().unbindBidirectional(model.sheet());
    table.selectedProperty().unbindBidirectional(model.table());
    split.textProperty().unbindBidirectional(model.split());
    name.textProperty().unbindBidirectional(model.name());
  }
}
