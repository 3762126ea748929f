package org.framewright.ui.board;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;

/** What stands over the list: how far the job is, in words and as a ruler, and the search. */
final class SheetHead extends VBox {
  private final Texts texts;
  private final Label agreed = label("sheet-agreed");
  private final Label totals = label("totals");
  private final Label pace = label("totals");
  private final Label grouped = label("grouped");
  private final Button phones;
  private final JobRuler ruler;
  private final HBox line;
  private final HBox numbers;
  private final TextField filter = new TextField();

  /**
   * Over an empty list.
   *
   * @param chosen hears which setup was clicked on the ruler
   * @param importList opens the page for a list of the client's
   * @param share opens what is about phones and tablets
   */
  SheetHead(Texts texts, Consumer<SetupRow> chosen, Runnable importList, Runnable share) {
    this.texts = texts;
    this.ruler =
        new JobRuler(
            row ->
                texts.get(
                    "board.ruler.tip",
                    row.code(),
                    row.setup().title(),
                    texts.get("state." + row.state().word())),
            chosen);
    filter.setId("filter");
    filter.setPromptText(texts.get("board.filter"));
    filter.setAccessibleText(texts.get("board.filter"));
    grouped.setMinWidth(Region.USE_PREF_SIZE);
    agreed.setMinWidth(Region.USE_PREF_SIZE);
    totals.setMinWidth(0);
    pace.setId("pace");
    pace.setMinWidth(0);
    // Where there is no room for both side by side, the pace stands below.
    var told = new FlowPane(totals, pace);
    told.getStyleClass().add("told");
    told.setMinWidth(0);
    totals.maxWidthProperty().bind(told.widthProperty());
    pace.maxWidthProperty().bind(told.widthProperty());
    HBox.setHgrow(told, Priority.ALWAYS);
    HBox.setHgrow(filter, Priority.ALWAYS);
    phones = slight("phones", texts.get("board.share"), share);
    var mark = new Region();
    mark.getStyleClass().add("phone-mark");
    phones.setGraphic(mark);
    phones.setAccessibleText(texts.get("share.title"));
    phones.setTooltip(new Tooltip(texts.get("share.title")));
    line = new HBox(agreed, filter, phones);
    line.getStyleClass().add("sheet-line");
    var newList = slight("new-list", texts.get("board.newList"), importList);
    numbers = new HBox(told, grouped, newList);
    numbers.getStyleClass().add("sheet-line");
    getStyleClass().add("sheet-head");
    setMinWidth(0);
    getChildren().setAll(line, ruler, numbers);
  }

  private static Button slight(String id, String word, Runnable action) {
    var button = new Button(word);
    button.setId(id);
    button.getStyleClass().add("slight");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setFocusTraversable(false);
    button.setOnAction(_ -> action.run());
    return button;
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    return label;
  }

  /** Takes out what stands in it, to come back line by line. */
  void takeApart(ComingParts parts) {
    List.of(this, line, numbers).forEach(parts::takeFrom);
  }

  /** Whether there is room for a word beside the mark. */
  void showWords(boolean shown) {
    phones.setContentDisplay(shown ? ContentDisplay.LEFT : ContentDisplay.GRAPHIC_ONLY);
  }

  TextField filter() {
    return filter;
  }

  void show(BoardModel.Standing standing) {
    var numbers = standing.totals();
    agreed.setText(texts.get("board.agreed", numbers.signedOff(), numbers.setups()));
    totals.setText(
        texts.get(
            "board.totals",
            numbers.shot(),
            numbers.toShoot(),
            numbers.pickups(),
            numbers.dropped()));
    ruler.showRows(standing.rows(), texts.apart(agreed.getText(), totals.getText()));
  }

  void show(Optional<Outlook> outlook) {
    pace.setText(outlook.map(this::words).orElse(""));
    pace.setTooltip(outlook.isEmpty() ? null : new Tooltip(texts.get("board.pace.tip")));
  }

  private String words(Outlook outlook) {
    var formats = texts.formats();
    var perSetup = formats.workingTime(outlook.perSetup());
    return outlook
        .finish()
        .map(
            at ->
                texts.get(
                    outlook.endsToday() ? "board.pace.today" : "board.pace.later",
                    perSetup,
                    outlook.endsToday() ? formats.time(at) : formats.soon(at)))
        .orElseGet(() -> texts.get("board.pace", perSetup));
  }

  void show(Grouping grouping) {
    // The running order is what a list is in anyhow.
    grouped.setVisible(grouping != Grouping.NONE);
    grouped.setManaged(grouped.isVisible());
    grouped.setText(texts.get("board.grouped." + grouping.name().toLowerCase(Locale.ROOT)));
  }
}
