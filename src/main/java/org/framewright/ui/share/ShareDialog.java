package org.framewright.ui.share;

import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.base.PlainText;
import org.framewright.share.Invitation;
import org.framewright.share.PairedDevice;
import org.framewright.share.QrCode;
import org.framewright.share.Role;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.CellRow;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.task.Repeating;

/** Turns the page for phones and tablets on and off, shows a code, and who is there. */
public final class ShareDialog {
  private final ShareModel model;
  private final Texts texts;
  private final Clock clock;
  private final WrappedText how = new WrappedText("share-how");
  private final Label address = new Label();
  private final WrappedText caution = new WrappedText("quiet");
  private final Button turn = new Button();
  private final Map<Role, ToggleButton> roles = new EnumMap<>(Role.class);
  private final WrappedText may = new WrappedText("quiet");
  private final StackPane place = new StackPane();
  private final Button show = new Button();
  private final WrappedText until = new WrappedText("quiet");
  private final TextField link = new TextField();
  private final HBox linkLine = new HBox();
  private final ListView<PairedDevice> devices = new ListView<>();
  private final Button unpair = new Button();
  private final HBox middle = new HBox();
  private final VBox node = new VBox();
  private final Repeating time =
      new Repeating(Duration.ofSeconds(1), Platform::runLater, this::look);
  private boolean choosing;

  /** Over the model as it is. */
  public ShareDialog(ShareModel model, Texts texts, Clock clock) {
    this.model = model;
    this.texts = texts;
    this.clock = clock;
    how.setId("share-how");
    turn.setId("share-turn");
    turn.getStyleClass().add("does-it");
    turn.setMinWidth(Region.USE_PREF_SIZE);
    turn.setOnAction(_ -> model.turn());
    address.setId("share-address");
    address.getStyleClass().add("share-address");
    address.setMinWidth(Region.USE_PREF_SIZE);
    var words = new VBox(how, address);
    HBox.setHgrow(words, Priority.ALWAYS);
    var head = new HBox(words, turn);
    head.getStyleClass().add("share-head");
    middle.getStyleClass().add("share-middle");
    middle.getChildren().setAll(codeSide(), roleAndDevices());
    layLink();
    node.getStyleClass().add("share-dialog");
    node.getChildren().setAll(head, caution, middle, linkLine);
    // In a small window the list gives way, not what one has to know.
    for (var told : List.of(how, caution, may, until)) {
      told.setMinHeight(Region.USE_PREF_SIZE);
    }
  }

  private Region codeSide() {
    show.setId("share-show");
    show.getStyleClass().add("act");
    show.setText(texts.get("share.show"));
    show.setOnAction(_ -> showCode());
    place.getStyleClass().add("share-code-place");
    place.setMinSize(QrPicture.LEAST, QrPicture.LEAST);
    place.setMaxWidth(Region.USE_PREF_SIZE);
    until.setMostLines(2);
    var side = new VBox(place, until);
    side.getStyleClass().add("share-code-side");
    return side;
  }

  /** What is typed where there is no camera, as on a television. */
  private void layLink() {
    var word = new Label(texts.get("share.link"));
    word.getStyleClass().add("field-word");
    word.setMinWidth(Region.USE_PREF_SIZE);
    word.setLabelFor(link);
    link.setId("share-link");
    link.getStyleClass().add("code");
    link.setEditable(false);
    link.setAccessibleText(word.getText());
    HBox.setHgrow(link, Priority.ALWAYS);
    linkLine.getStyleClass().add("share-head");
    linkLine.getChildren().setAll(word, link);
  }

  private Region roleAndDevices() {
    var word = new Label(texts.get("share.next"));
    word.getStyleClass().add("field-word");
    may.setMostLines(2);
    var side = new VBox(word, roleRow(), may, devicesPart());
    side.getStyleClass().add("share-devices-side");
    VBox.setVgrow(side.getChildren().getLast(), Priority.ALWAYS);
    HBox.setHgrow(side, Priority.ALWAYS);
    return side;
  }

  private Region roleRow() {
    var group = new ToggleGroup();
    var row = new HBox();
    row.getStyleClass().add("share-roles");
    for (var role : Role.values()) {
      var button = new ToggleButton(texts.get("share.role." + role.word()));
      button.setId("share-role-" + role.word());
      button.setToggleGroup(group);
      button.setMaxWidth(Double.MAX_VALUE);
      button.setMinWidth(Region.USE_PREF_SIZE);
      HBox.setHgrow(button, Priority.ALWAYS);
      button.setOnAction(
          _ -> {
            model.role().set(role);
            showRole(role);
          });
      roles.put(role, button);
      row.getChildren().add(button);
    }
    return row;
  }

  private Region devicesPart() {
    var word = new Label(texts.get("share.devices"));
    word.getStyleClass().add("field-word");
    devices.setId("share-devices");
    devices.setAccessibleText(word.getText());
    devices.setPlaceholder(WrappedText.of(texts.get("share.nobody"), "quiet"));
    devices.setCellFactory(_ -> new DeviceCell());
    devices.setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.DELETE || event.getCode() == KeyCode.BACK_SPACE) {
            model.unpair();
            event.consume();
          }
        });
    devices
        .getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (_, _, now) -> {
              if (!choosing) {
                model.chosen().set(now == null ? "" : now.id());
              }
            });
    VBox.setVgrow(devices, Priority.ALWAYS);
    unpair.setId("share-unpair");
    unpair.getStyleClass().add("act");
    var key = new KeyCap();
    key.setText(Keys.text(Keys.plain(KeyCode.DELETE), texts));
    unpair.setGraphic(key);
    unpair.setContentDisplay(ContentDisplay.RIGHT);
    unpair.setMnemonicParsing(false);
    unpair.setMinWidth(0);
    unpair.setMaxWidth(Double.MAX_VALUE);
    unpair.setOnAction(_ -> model.unpair());
    unpair.disableProperty().bind(Bindings.isEmpty(model.chosen()));
    var part = new VBox(word, devices, unpair);
    part.getStyleClass().add("share-devices-part");
    return part;
  }

  /** The dialog; with it the code goes. */
  public DialogSpec spec() {
    var following =
        Subscription.combine(
            model.state().subscribe(this::show),
            model.role().subscribe(this::showRole),
            model.code().subscribe(this::show),
            model.devices().subscribe(this::show),
            model.chosen().subscribe(_ -> showChosen()));
    look();
    time.start();
    return new DialogSpec(
            texts.get("share.title"),
            node,
            model.isOn() ? show : turn,
            "",
            Bindings.createBooleanBinding(() -> true),
            () -> {},
            () -> {
              time.stop();
              following.unsubscribe();
              model.putCodeAway();
            })
        .about("share");
  }

  private void look() {
    model.lookAtTheTime(clock.instant());
    devices.refresh();
  }

  private void show(ShareModel.State state) {
    boolean on = state instanceof ShareModel.State.On;
    how.setText(
        switch (state) {
          case ShareModel.State.Off _ -> texts.get("share.off");
          case ShareModel.State.Starting _ -> texts.get("share.starting");
          case ShareModel.State.On _ -> texts.get("share.on");
          case ShareModel.State.Failed(var why) -> texts.sentences(why);
        });
    how.setStyleClasses(state instanceof ShareModel.State.Failed ? "warning" : "share-how");
    address.setText(state instanceof ShareModel.State.On(var at) ? at.toString() : "");
    address.setVisible(on);
    address.setManaged(on);
    caution.setText(caution(state));
    turn.setText(texts.get(on ? "share.turnOff" : "share.turnOn"));
    middle.setVisible(on);
    middle.setManaged(on);
    linkLine.setManaged(on);
    if (on && turn.isFocused()) {
      show.requestFocus();
    }
  }

  private String caution(ShareModel.State state) {
    return state instanceof ShareModel.State.On(URI at) && "https".equals(at.getScheme())
        ? texts.get("share.encrypted")
        : texts.get("share.plain");
  }

  private void showRole(Role role) {
    roles.forEach((each, button) -> button.setSelected(each == role));
    may.setText(texts.get("share.may." + role.word()));
  }

  /** A code that was used or is out of date gives way to the button that makes another. */
  private void show(Optional<Invitation> code) {
    code.ifPresentOrElse(
        one -> {
          var picture = new QrPicture(QrCode.of(one.link().toString()));
          picture.setId("share-code");
          picture.setAccessibleText(texts.get("share.code.spoken"));
          place.getChildren().setAll(picture);
          until.setText(texts.get("share.until", time(one.until())));
          link.setText(one.link().toString());
        },
        () -> {
          boolean keys = link.isFocused();
          place.getChildren().setAll(show);
          until.setText(texts.get("share.onlyOnce"));
          link.clear();
          if (keys) {
            show.requestFocus();
          }
        });
    linkLine.setVisible(code.isPresent());
  }

  private void showCode() {
    model.showCode();
    link.requestFocus();
    link.selectAll();
  }

  private void show(List<PairedDevice> now) {
    choosing = true;
    try {
      devices.getItems().setAll(now);
    } finally {
      choosing = false;
    }
    showChosen();
  }

  private void showChosen() {
    choosing = true;
    try {
      model
          .chosenDevice()
          .ifPresentOrElse(
              devices.getSelectionModel()::select, devices.getSelectionModel()::clearSelection);
    } finally {
      choosing = false;
    }
    unpair.setText(
        model
            .chosenDevice()
            .map(device -> texts.get("share.unpair", PlainText.line(device.name())))
            .orElseGet(() -> texts.get("share.unpair.none")));
  }

  private String time(Instant at) {
    return texts.formats().time(LocalDateTime.ofInstant(at, clock.getZone()));
  }

  /** The dialog's controls, for a test. */
  Node node() {
    return node;
  }

  private final class DeviceCell extends LineCell<PairedDevice> {
    private final Region mark = new Region();
    private final Label name = new Label();
    private final Label role = new Label();
    private final Label seen = new Label();
    private final CellRow row = new CellRow(mark, name, role, seen);

    DeviceCell() {
      mark.getStyleClass().add("device-mark");
      name.getStyleClass().add("device-name");
      name.setMinWidth(0);
      name.setMaxWidth(Double.MAX_VALUE);
      HBox.setHgrow(name, Priority.ALWAYS);
      role.setMinWidth(Region.USE_PREF_SIZE);
      seen.setMinWidth(Region.USE_PREF_SIZE);
      seen.getStyleClass().add("quiet");
      row.getStyleClass().add("device-row");
    }

    @Override
    protected void showLine(PairedDevice device) {
      mark.getStyleClass().setAll("device-mark", device.connected() ? "there" : "away");
      name.setText(PlainText.line(device.name()));
      role.setText(texts.get("share.role." + device.role().word()));
      seen.setText(
          device.connected()
              ? texts.get("share.connected")
              : texts.get("share.seen", time(device.lastSeen())));
      setAccessibleText(texts.apart(name.getText(), role.getText(), seen.getText()));
      setGraphic(row);
    }
  }
}
