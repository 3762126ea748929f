package org.framewright.ui.lists;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.base.PlainText;
import org.framewright.naming.Severity;
import org.framewright.shotlist.ListProblem;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.FindingLine;

/**
 * What comes of a list: setup by setup what it changes, each with a tick, and what was found; or
 * ways to read it, and what is wrong at which line.
 */
final class ResultsPane extends VBox {
  /**
   * All lines are of one height, so that a long list scrolls at once: what a line has no room for
   * is said below, of the one that is chosen.
   */
  private static final double CHANGE_EMS = 3.3;

  /** Three lines of text. */
  private static final double FINDING_EMS = 4.5;

  /** The size of the title's letters, as the style sheet has it. */
  private static final double TITLE_EMS = 1.1;

  private final ListModel model;
  private final Texts texts;
  private final Label title = new Label();
  private final CheckBox all = new CheckBox();
  private final ListView<ResultLine> list = new ListView<>();
  private final WrappedText says = new WrappedText("says");

  ResultsPane(ListModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    title.getStyleClass().add("part-title");
    all.setId("all");
    all.setText(texts.get("lists.all"));
    all.setOnAction(
        _ -> {
          model.takeAll(all.isSelected());
          list.refresh();
        });
    list.setId("results");
    list.setCellFactory(_ -> new ResultCell());
    list.setAccessibleText(texts.get("lists.results"));
    list.setPlaceholder(new Label(texts.get("lists.noResults")));
    list.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    VBox.setVgrow(list, Priority.ALWAYS);
    getStyleClass().add("results-part");
    setMinWidth(0);
    list.getSelectionModel().selectedItemProperty().addListener((_, _, now) -> says(now));
    says.setId("result-says");
    says.setMostLines(3);
    says.getStyleClass().add("says-result");
    getChildren().addAll(title, all, list, says);
    model.accepted().addListener(_ -> tickAll());
  }

  @Override
  protected void layoutChildren() {
    var em = title.getFont().getSize() / TITLE_EMS;
    list.setFixedCellSize(Math.ceil(em * (model.needsAPerson() ? FINDING_EMS : CHANGE_EMS)));
    super.layoutChildren();
  }

  private void says(ResultLine line) {
    says.setText(
        switch (line) {
          case null -> "";
          case ResultLine.Way way -> PlainText.line(texts.say(way.way().said()));
          case ResultLine.Found found ->
              texts.get(
                  "lists.found.says",
                  where(found.problem()),
                  PlainText.line(texts.remedy(found.problem().problem())));
          case ResultLine.Difference one ->
              PlainText.line(one.code())
                  + " "
                  + Stream.of(one.title(), detail(one))
                      .filter(part -> !part.isEmpty())
                      .collect(Collectors.joining(" · "));
        });
  }

  private String where(ListProblem problem) {
    var said = PlainText.line(texts.what(problem.problem()));
    return problem.line() > 0 ? texts.get("lists.at", String.valueOf(problem.line()), said) : said;
  }

  private String detail(ResultLine.Difference one) {
    return one.kind() == ResultLine.Kind.KEPT
        ? texts.get("lists.kept.why")
        : PlainText.line(texts.say(one.detail()));
  }

  ListView<ResultLine> list() {
    return list;
  }

  void showTitle(boolean shown) {
    title.setVisible(shown);
    title.setManaged(shown);
  }

  /** Shows what comes of the list now. */
  void show() {
    requestLayout();
    title.setText(texts.get(model.needsAPerson() ? "lists.wrong" : "lists.results"));
    var lines = model.results();
    if (!list.getItems().equals(lines)) {
      list.getItems().setAll(lines);
      if (!lines.isEmpty()) {
        list.getSelectionModel().select(0);
        list.scrollTo(0);
      }
    }
    tickAll();
  }

  private void tickAll() {
    int most = model.takeable().orElse(0);
    int now = model.accepted().get();
    all.setVisible(most > 1);
    all.setManaged(most > 1);
    all.setSelected(now == most);
    all.setIndeterminate(now > 0 && now < most);
  }

  private void key(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    var line = list.getSelectionModel().getSelectedItem();
    if (event.getCode() == KeyCode.SPACE && line instanceof ResultLine.Difference difference) {
      model.take(difference, !model.isTaken(difference));
      list.refresh();
      event.consume();
    } else if ((event.getCode() == KeyCode.ENTER || event.getCode() == KeyCode.SPACE)
        && line instanceof ResultLine.Way way) {
      model.choose(way.way());
      event.consume();
    }
  }

  private final class ResultCell extends LineCell<ResultLine> {
    private final FindingLine wrong = FindingLine.low(texts, 2);
    private final FindingLine told = FindingLine.low(texts, 1);
    private final Button way = new Button();
    private final CheckBox taken = new CheckBox();
    private final Label kind = new Label();
    private final WrappedText code = new WrappedText("line-code");
    private final WrappedText what = new WrappedText();
    private final WrappedText detail = new WrappedText("remedy");
    private final CellBox difference;
    private final CellBox found = new CellBox();
    private final CellBox ways = new CellBox(way);

    ResultCell() {
      setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
      found.setAlignment(Pos.CENTER_LEFT);
      ways.setAlignment(Pos.CENTER_LEFT);
      taken.setFocusTraversable(false);
      taken.setOnAction(
          _ -> {
            if (getItem() instanceof ResultLine.Difference line) {
              list.getSelectionModel().select(getIndex());
              model.take(line, taken.isSelected());
            }
          });
      kind.getStyleClass().add("difference-kind");
      kind.setMinWidth(Region.USE_PREF_SIZE);
      code.getStyleClass().add("difference-code");
      code.setMostLines(1);
      what.setMostLines(1);
      detail.setMostLines(1);
      var said = new VBox(what, detail);
      said.setMinWidth(0);
      said.setPrefWidth(1);
      HBox.setHgrow(said, Priority.ALWAYS);
      var row = new HBox(taken, kind, code, said);
      row.getStyleClass().add("difference");
      difference = new CellBox(row);
      difference.setAlignment(Pos.CENTER_LEFT);
      way.setFocusTraversable(false);
      way.setMnemonicParsing(false);
      way.getStyleClass().add("way");
      way.setOnAction(
          _ -> {
            if (getItem() instanceof ResultLine.Way chosen) {
              model.choose(chosen.way());
            }
          });
    }

    @Override
    protected void showLine(ResultLine line) {
      switch (line) {
        case ResultLine.Way one -> show(one);
        case ResultLine.Found one -> show(one);
        case ResultLine.Difference one -> show(one);
      }
    }

    private void show(ResultLine.Way one) {
      way.setText(texts.get("lists.way", PlainText.line(texts.say(one.way().said()))));
      setGraphic(ways);
      setAccessibleText(way.getText());
    }

    private void show(ResultLine.Found one) {
      var finding = one.stops() ? wrong : told;
      found.getChildren().setAll(finding);
      finding.show(
          one.stops() ? Severity.ERROR : Severity.NOTE,
          where(one.problem()),
          PlainText.line(texts.remedy(one.problem().problem())));
      setGraphic(found);
      setAccessibleText(finding.getAccessibleText());
    }

    private void show(ResultLine.Difference one) {
      var word = texts.get("lists." + one.kind().name().toLowerCase(Locale.ROOT));
      taken.setDisable(!one.canBeTaken());
      taken.setSelected(model.isTaken(one));
      kind.setText(word);
      kind.getStyleClass()
          .setAll("label", "difference-kind", one.kind().name().toLowerCase(Locale.ROOT));
      code.setText(PlainText.line(one.code()));
      what.setText(one.title());
      detail.setText(detail(one));
      detail.setManaged(!detail.getText().isEmpty());
      setGraphic(difference);
      setAccessibleText(texts.apart(word, one.code(), one.title(), detail.getText()));
    }
  }
}
