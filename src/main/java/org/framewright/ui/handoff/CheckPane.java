package org.framewright.ui.handoff;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.base.PlainText;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.CellRow;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** Whether a package is whole, so large that it is read from a metre away, and what is wrong. */
final class CheckPane extends VBox {
  private final CheckModel model;
  private final Texts texts;
  private final WrappedText folder = new WrappedText("code", "asked-folder");
  private final VerdictPlate plate = new VerdictPlate("check-word");
  private final WrappedText what = new WrappedText("check-what");
  private final WrappedText remedy = new WrappedText("remedy");
  private final WrappedText by = new WrappedText("quiet");
  private final KindTotals<CheckLine.Kind> totals;
  private final ListView<CheckLine> list = new ListView<>();
  private final WrappedText sentence = new WrappedText("sentence");
  private final HBox saying;
  private final VBox sheet;
  private final WorkStrip work;
  private final VBox how;
  private final StackPane below = new StackPane();
  private final Subscription following;

  CheckPane(
      CheckModel model, Texts texts, Command choose, Command again, Command stop, Command say) {
    this.model = model;
    this.texts = texts;
    folder.setId("check-folder");
    folder.setMostLines(2);
    folder.setMinWidth(0);
    HBox.setHgrow(folder, Priority.ALWAYS);
    var choosing = CommandControls.button(choose, texts.get("handoff.act.folder"), texts);
    choosing.setId("check-choose");
    choosing.getStyleClass().add("act");
    var againButton = CommandControls.button(again, texts.get("handoff.act.again"), texts);
    againButton.setId("check-again");
    againButton.getStyleClass().add("act");
    againButton.visibleProperty().bind(again.enabled());
    againButton.managedProperty().bind(again.enabled());
    var from = new HBox(choosing, folder, againButton);
    from.getStyleClass().addAll("in-line", "asked-line");
    totals =
        new KindTotals<>(
            "check-",
            CheckLine.Kind.values(),
            CheckLine.Kind::word,
            kind -> {
              var mark = new LineMark();
              mark.show(kind);
              return mark;
            },
            model.only());
    list.setId("check-lines");
    list.setItems(model.lines());
    list.setCellFactory(_ -> new Cell());
    list.setAccessibleText(texts.get("handoff.check.list"));
    list.getStyleClass().add("one-line");
    VBox.setVgrow(list, Priority.ALWAYS);
    what.setId("check-what");
    var said = new VBox(what, remedy, by);
    said.getStyleClass().add("check-said");
    said.setMinHeight(Region.USE_PREF_SIZE);
    sentence.setId("check-sentence");
    sentence.setMinWidth(0);
    HBox.setHgrow(sentence, Priority.ALWAYS);
    var copy = CommandControls.button(say, texts.get("handoff.act.say"), texts);
    copy.setId("check-say");
    copy.getStyleClass().add("act");
    saying = new HBox(sentence, copy);
    saying.getStyleClass().add("say-line");
    saying.setMinHeight(Region.USE_PREF_SIZE);
    sheet = new VBox(plate, said, totals, list, saying);
    sheet.getStyleClass().addAll("paper-sheet", "check-sheet");
    work = new WorkStrip(texts, stop, texts.get("handoff.check.safe"));
    how =
        new VBox(
            WrappedText.of(texts.get("handoff.check.how"), "sheet-title"),
            WrappedText.of(texts.get("handoff.check.how.1")),
            WrappedText.of(texts.get("handoff.check.how.2")),
            WrappedText.of(texts.get("handoff.check.how.3"), "quiet"));
    how.getStyleClass().addAll("paper-sheet", "work-sheet");
    VBox.setVgrow(below, Priority.ALWAYS);
    below.setMinHeight(0);
    getChildren().addAll(from, below);
    getStyleClass().add("hand-part");
    FolderDrop.on(this, model::check);
    following =
        Subscription.combine(
            model.folder().subscribe(_ -> show()),
            model.answer().subscribe(_ -> show()),
            model.running().subscribe(_ -> show()),
            model.only().subscribe(_ -> show()));
  }

  private void show() {
    var path = model.folder().get();
    folder.setStyleClasses(path.isPresent() ? "code" : "quiet");
    folder.setText(
        path.map(it -> PlainText.line(it.toString()))
            .orElseGet(() -> texts.get("handoff.folder.none")));
    var running = model.running().get();
    work.show(running);
    var answer = model.answer().get();
    Node part = running.isPresent() ? work : answer.isPresent() ? sheet : how;
    if (!below.getChildren().contains(part)) {
      below.getChildren().setAll(part);
    }
    answer.ifPresent(this::show);
  }

  private void show(CheckModel.Answer answer) {
    plate.show(answer.verdict(), texts.get("handoff.check.verdict." + answer.verdict().word()));
    what.setText(answer.what().what());
    remedy.setText(answer.what().remedy());
    by.setText(answer.by());
    for (var one : List.of(remedy, by)) {
      shownIf(one, !one.getText().isEmpty());
    }
    totals.show(
        answer.counts(),
        model.only().get(),
        (kind, count) -> texts.get("handoff.check.total." + kind.word(), count));
    boolean any = !answer.counts().isEmpty();
    shownIf(totals, any);
    shownIf(list, any);
    sentence.setText(answer.sentence());
    shownIf(saying, !answer.sentence().isEmpty());
  }

  private static void shownIf(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }

  /** Where the keys go. */
  Node focus() {
    return model.answer().get().filter(it -> !it.counts().isEmpty()).isPresent() ? list : this;
  }

  ListView<CheckLine> list() {
    return list;
  }

  void dispose() {
    following.unsubscribe();
    work.dispose();
    list.setItems(null);
  }

  private final class Cell extends LineCell<CheckLine> {
    private final LineMark mark = new LineMark();
    private final Label state = new Label();
    private final Label file = new Label();
    private final Label more = new Label();
    private final CellRow box = new CellRow(mark, state, file, more);

    Cell() {
      state.getStyleClass().add("check-state");
      file.getStyleClass().addAll("code", "check-file");
      file.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
      file.setMinWidth(0);
      more.getStyleClass().add("quiet");
      more.setMinWidth(0);
      HBox.setHgrow(more, Priority.ALWAYS);
      box.getStyleClass().add("file-box");
    }

    @Override
    protected void showLine(CheckLine line) {
      mark.show(line.kind());
      state.setText(texts.get("handoff.check.state." + line.kind().word()));
      file.setText(line.file());
      more.setText(line.more());
      setGraphic(box);
      setTooltip(new Tooltip(texts.apart(line.file(), line.more())));
      setAccessibleText(texts.apart(state.getText(), line.file(), line.more()));
    }
  }
}
