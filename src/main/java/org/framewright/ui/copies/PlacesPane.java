package org.framewright.ui.copies;

import java.util.List;
import java.util.stream.IntStream;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.copies.CopiesRequest;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The places, what is done with them, and the disk that frames arrive on. */
final class PlacesPane extends VBox {
  private final CopiesModel model;
  private final Texts texts;
  private final ListView<PlaceLine> list = new ListView<>();
  private final TextField by = new TextField();
  private final ComboBox<Integer> needed = new ComboBox<>();
  private final WrappedText speed = new WrappedText("disk-speed");
  private final Subscription following;

  PlacesPane(CopiesModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    list.setId("places");
    list.setItems(model.places());
    list.setCellFactory(_ -> new PlaceCell(texts));
    list.setPlaceholder(new Label(texts.get("copies.noPlaces")));
    list.setAccessibleText(texts.get("copies.places"));
    VBox.setVgrow(list, Priority.ALWAYS);
    getStyleClass().addAll("paper-sheet", "places-sheet");
    following = model.diskSpeed().subscribe(this::show);
  }

  /**
   * Lays out what is done, once the commands are there.
   *
   * @param about those about one place
   */
  void lay(Command add, List<Command> about, Command compare, Command copy, Command measure) {
    var title = new Label(texts.get("copies.places"));
    title.getStyleClass().add("part-title");
    title.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(title, Priority.ALWAYS);
    var head = new HBox(title, button(add));
    head.getStyleClass().add("in-line");
    var actions = new FlowPane();
    actions.getStyleClass().add("place-actions");
    about.forEach(command -> actions.getChildren().add(button(command)));
    by.setId("by");
    by.textProperty().bindBidirectional(model.by());
    by.setAccessibleText(texts.get("copies.by"));
    by.setMinWidth(0);
    HBox.setHgrow(by, Priority.ALWAYS);
    var asking = new HBox(word("copies.by"), by);
    asking.getStyleClass().add("in-line");
    var copies = word("copies.needed");
    copies.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(copies, Priority.ALWAYS);
    layNeeded();
    var needing = new HBox(copies, needed);
    needing.getStyleClass().add("in-line");
    var main = button(compare);
    main.getStyleClass().addAll("does-it", "act");
    main.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(main, Priority.ALWAYS);
    var copying = button(copy);
    copying.getStyleClass().add("act");
    var does = new HBox(main, copying);
    does.getStyleClass().add("in-line");
    var measuring = button(measure);
    measuring.getStyleClass().add("slight");
    speed.setMinWidth(0);
    HBox.setHgrow(speed, Priority.ALWAYS);
    var disk = new HBox(speed, measuring);
    disk.getStyleClass().addAll("in-line", "disk-line");
    disk.setMinHeight(USE_PREF_SIZE);
    getChildren().setAll(head, list, actions, asking, needing, does, disk);
  }

  private Label word(String key) {
    var word = new Label(texts.get(key));
    word.getStyleClass().add("field-word");
    word.setMinWidth(Region.USE_PREF_SIZE);
    return word;
  }

  private void layNeeded() {
    needed.setId("needed");
    needed.getItems().setAll(IntStream.rangeClosed(1, CopiesRequest.MOST_NEEDED).boxed().toList());
    needed.setVisibleRowCount(CopiesRequest.MOST_NEEDED);
    needed.valueProperty().bindBidirectional(model.needed());
    needed.setAccessibleText(texts.get("copies.needed.what"));
    needed.setTooltip(new Tooltip(texts.get("copies.needed.what")));
    needed.setMinWidth(Region.USE_PREF_SIZE);
    needed.disableProperty().bind(Bindings.not(model.idle()));
    needed.addEventHandler(
        KeyEvent.KEY_TYPED,
        event -> {
          var typed =
              needed.getItems().stream().filter(one -> event.getCharacter().equals("" + one));
          typed.findFirst().ifPresent(needed::setValue);
        });
  }

  private Button button(Command command) {
    var button = CommandControls.button(command, texts.get("copies.act." + command.word()), texts);
    button.setId("copies-" + command.word());
    button.disableProperty().bind(Bindings.not(command.enabled()));
    return button;
  }

  /** Where one says on how many disks each file has to be. */
  Node needed() {
    return needed;
  }

  ListView<PlaceLine> list() {
    return list;
  }

  /** The place that is chosen, if one is. */
  PlaceLine chosen() {
    return list.getSelectionModel().getSelectedItem();
  }

  private void show(CopiesModel.DiskSpeed now) {
    speed.setText(now.words());
    speed.setStyleClasses("disk-speed", now.slower() ? "needs" : "fine");
  }

  void dispose() {
    following.unsubscribe();
    by.textProperty().unbindBidirectional(model.by());
    needed.valueProperty().unbindBidirectional(model.needed());
    list.setItems(null);
  }
}
