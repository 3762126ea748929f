package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ListView;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextFormatter;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.handoff.HandOffDescription;
import org.framewright.ui.command.KeyFocus;
import org.framewright.ui.handoff.ListReading.Row;
import org.framewright.ui.handoff.ListReading.State;
import org.framewright.ui.look.TallCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;

/**
 * Asks for the client's list, a file or a pasted text, and shows what each part of it was taken
 * for; where that is unclear, with the frames among which a person chooses.
 */
final class ClientListDialog {
  /** Frames that are offered for one part; the list names one of more than that too vaguely. */
  private static final int MOST_OFFERED = 30;

  private final ClientListModel model;
  private final Desk desk;
  private final Texts texts;
  private final VBox node = new VBox();
  private final TextArea text = new TextArea();
  private final WrappedText file = new WrappedText();
  private final WrappedText problem = new WrappedText("needs");
  private final WrappedText counted = new WrappedText("field-word");
  private final CheckBox onlyUnclear = new CheckBox();
  private final Button leaveOut = new Button();
  private final ListView<Row> rows = new ListView<>();
  private final Subscription following;

  ClientListDialog(ClientListModel model, Desk desk) {
    this.model = model;
    this.desk = desk;
    this.texts = desk.texts();
    buildText();
    buildRows();
    problem.setId("client-list-problem");
    counted.setId("client-list-counted");
    counted.setMinHeight(Region.USE_PREF_SIZE);
    onlyUnclear.setId("only-unclear");
    onlyUnclear.setText(texts.get("clientList.onlyUnclear"));
    onlyUnclear.setMinWidth(Region.USE_PREF_SIZE);
    onlyUnclear.selectedProperty().bindBidirectional(model.onlyUnclear());
    leaveOut.setId("leave-out-rest");
    leaveOut.setMinWidth(Region.USE_PREF_SIZE);
    leaveOut.setOnAction(_ -> model.leaveOutTheRest());
    var below = new HBox(onlyUnclear, leaveOut);
    below.getStyleClass().add("in-line");
    node.getStyleClass().add("client-list");
    node.getChildren()
        .setAll(
            from(),
            text,
            problem,
            counted,
            rows,
            WrappedText.of(texts.get("clientList.keys"), "client-list-keys"),
            below);
    following =
        Subscription.combine(
            model.reading().subscribe(this::show),
            model.file().subscribe(this::showFile),
            model.tooLong().subscribe(_ -> showProblem()));
  }

  Node node() {
    return node;
  }

  Node focus() {
    return text;
  }

  void dispose() {
    following.unsubscribe();
    text.textProperty().unbindBidirectional(model.text());
    onlyUnclear.selectedProperty().unbindBidirectional(model.onlyUnclear());
    rows.setItems(null);
  }

  private HBox from() {
    var load = new Button(texts.get("clientList.load"));
    load.setId("load-client-list");
    load.setMinWidth(Region.USE_PREF_SIZE);
    load.setOnAction(
        _ ->
            desk.files()
                .file(texts.get("clientList.loadTitle"), Optional.empty(), List.of())
                .ifPresent(model::load));
    file.setId("client-list-file");
    file.setMinWidth(0);
    HBox.setHgrow(file, Priority.ALWAYS);
    var row = new HBox(load, file);
    row.getStyleClass().add("in-line");
    return row;
  }

  private void buildText() {
    text.setId("client-list-text");
    text.setPrefRowCount(4);
    text.setMinHeight(Region.USE_PREF_SIZE);
    text.setPromptText(texts.get("clientList.prompt"));
    text.setAccessibleText(texts.get("clientList.text"));
    text.setTextFormatter(new TextFormatter<>(this::bounded));
    text.textProperty().bindBidirectional(model.text());
    KeyFocus.leaveByTab(text);
  }

  /** A part of a client's list would be another list: too much is refused, not cut. */
  private TextFormatter.Change bounded(TextFormatter.Change change) {
    boolean fits = change.getControlNewText().length() <= ClientListModel.MOST_CHARACTERS;
    if (!fits) {
      model.tooLong().set(true);
    }
    return fits ? change : null;
  }

  private void buildRows() {
    rows.setId("client-list-rows");
    rows.setItems(model.rows());
    rows.setCellFactory(_ -> new RowCell());
    rows.setAccessibleText(texts.get("clientList.rows"));
    rows.setPlaceholder(WrappedText.of(texts.get("clientList.nothing"), "no-names"));
    rows.setOnKeyPressed(this::key);
    VBox.setVgrow(rows, Priority.ALWAYS);
  }

  /** A digit chooses the frame of that number, nought leaves the part out. */
  private void key(KeyEvent event) {
    var row = rows.getSelectionModel().getSelectedItem();
    if (event.isAltDown() && event.getCode() == KeyCode.DOWN) {
      nextUnclear();
      event.consume();
    } else if (row != null && event.getCode().isDigitKey() && row.isAsked()) {
      int digit = digit(event.getCode());
      if (digit == 0) {
        model.leaveOut(row);
      } else if (digit <= row.candidates().size()) {
        model.choose(row, row.candidates().get(digit - 1));
      }
      event.consume();
    }
  }

  private static int digit(KeyCode key) {
    var name = key.getName();
    return name.charAt(name.length() - 1) - '0';
  }

  private void nextUnclear() {
    int from = rows.getSelectionModel().getSelectedIndex();
    int size = rows.getItems().size();
    for (int i = 1; i <= size; i++) {
      int at = Math.floorMod(from + i, size);
      if (rows.getItems().get(at).state() == State.UNCLEAR) {
        rows.getSelectionModel().clearAndSelect(at);
        rows.scrollTo(at);
        return;
      }
    }
  }

  private void show(ListReading now) {
    counted.setText(now.settled().map(HandOffDescription::counted).orElse(""));
    onlyUnclear.setVisible(now.asks());
    leaveOut.setText(texts.get("clientList.leaveOutRest", now.unclear()));
    leaveOut.setVisible(now.unclear() > 0);
    showProblem();
  }

  private void showFile(Optional<Path> now) {
    file.setText(
        now.map(path -> texts.get("clientList.file", path.toString()))
            .orElse(texts.get("clientList.orPaste")));
  }

  private void showProblem() {
    var now = model.reading().get();
    var remarks = now.settled().map(names -> names.remarks()).orElse(List.of());
    var said =
        Stream.concat(now.problem().stream(), remarks.stream()).map(texts::sentences).toList();
    problem.setText(
        model.tooLong().get()
            ? texts.get("clientList.tooLong", ClientListModel.MOST_CHARACTERS)
            : String.join("\n", said));
    problem.setVisible(!problem.getText().isEmpty());
    problem.setManaged(problem.isVisible());
  }

  /** A part of a line: the line, what the part was taken for, and the frames to choose from. */
  private final class RowCell extends TallCell<Row> {
    private final Region stroke = new Region();
    private final WrappedText heading = new WrappedText("row-heading");
    private final WrappedText said = new WrappedText("row-said");
    private final FlowPane choices = new FlowPane();
    private final VBox inside = new VBox(heading, said, choices);
    private final HBox line = new HBox(stroke, inside);

    RowCell() {
      stroke.getStyleClass().add("stroke");
      choices.getStyleClass().add("answers");
      heading.setMostLines(3);
      said.setMostLines(6);
      inside.setMinWidth(0);
      HBox.setHgrow(inside, Priority.ALWAYS);
      line.setPrefWidth(1);
      line.setMinWidth(0);
    }

    @Override
    protected void showNone() {
      choices.getChildren().clear();
    }

    @Override
    protected void showLine(Row row) {
      choices.getChildren().clear();
      line.getStyleClass().setAll("finding", row.state() == State.UNCLEAR ? "error" : "read");
      set(heading, row.heading());
      set(said, row.said());
      said.setStyleClasses(row.state() == State.UNCLEAR ? "needs" : "row-said");
      if (row.isAsked()) {
        offer(row);
      }
      choices.setVisible(row.isAsked());
      choices.setManaged(row.isAsked());
      setGraphic(line);
      setAccessibleText(row.heading() + " " + row.said());
    }

    private static void set(WrappedText label, String text) {
      label.setText(text);
      label.setVisible(!text.isEmpty());
      label.setManaged(!text.isEmpty());
    }

    private void offer(Row row) {
      int number = 0;
      for (var candidate : row.candidates().stream().limit(MOST_OFFERED).toList()) {
        number++;
        var choice =
            toggle(
                number < 10
                    ? texts.get("clientList.choice", number, candidate.called())
                    : candidate.called(),
                row.chosen().contains(candidate.frame()));
        choice.setOnAction(_ -> model.choose(row, candidate));
      }
      var none = toggle(texts.get("clientList.leaveOut"), row.isLeftOut());
      none.setOnAction(_ -> model.leaveOut(row));
    }

    private ToggleButton toggle(String words, boolean on) {
      var toggle = new ToggleButton(words);
      toggle.setMnemonicParsing(false);
      toggle.setSelected(on);
      toggle.setFocusTraversable(false);
      choices.getChildren().add(toggle);
      return toggle;
    }
  }
}
