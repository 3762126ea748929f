package org.framewright.ui.handoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import javafx.collections.WeakListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ListView;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.base.PlainText;
import org.framewright.frames.FinishedPictures;
import org.framewright.handoff.PastHandOffs.Past;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.task.Tasks;

/** What came back: a line a select, and of the one that is looked at both pictures. */
final class ReturnsPane extends VBox {
  private final ReturnsModel model;
  private final Texts texts;
  private final WrappedText folder = new WrappedText("code", "asked-folder");
  private final ComboBox<Optional<Integer>> number = new ComboBox<>();
  private final RemarkBox problem = new RemarkBox();
  private final WrappedText title = new WrappedText("sheet-title");
  private final KindTotals<ReturnLine.Kind> totals;
  private final ListView<ReturnLine> list = new ListView<>();
  private final PairPrint select;
  private final PairPrint came;
  private final VBox said = new VBox();
  private final Button rename;
  private final HBox middle;
  private final FlowPane actions = new FlowPane();
  private final WorkStrip work;
  private final VBox how;
  private final StackPane below = new StackPane();
  private final ListChangeListener<Past> handOffs = this::numbered;
  private final Subscription following;

  /** What can be done here. */
  record Commands(
      Command choose,
      Command again,
      Command stop,
      Command rename,
      Command undo,
      Command deliver,
      Command fullSize,
      Command show) {}

  /**
   * @param past the hand-offs of the job
   */
  ReturnsPane(
      ReturnsModel model,
      ObservableList<Past> past,
      Texts texts,
      FramePictures pictures,
      Tasks tasks,
      Commands commands) {
    this.model = model;
    this.texts = texts;
    folder.setId("returns-folder");
    folder.setMostLines(2);
    folder.setMinWidth(0);
    HBox.setHgrow(folder, Priority.ALWAYS);
    var choosing = button(commands.choose(), "handoff.act.folder");
    choosing.setId("returns-choose");
    number.setId("returns-number");
    number.setAccessibleText(texts.get("handoff.returns.number"));
    WordCell.in(
        number,
        one ->
            one.map(it -> texts.get("handoff.earlier.number", it.toString()))
                .orElseGet(() -> texts.get("handoff.returns.all")));
    past.addListener(new WeakListChangeListener<>(handOffs));
    number(past);
    number
        .valueProperty()
        .addListener(
            (_, _, now) -> {
              if (now != null && !now.equals(model.number().get())) {
                model.number().set(now);
                model.again();
              }
            });
    var again = button(commands.again(), "handoff.act.again");
    again.setId("returns-again");
    again.visibleProperty().bind(commands.again().enabled());
    again.managedProperty().bind(commands.again().enabled());
    var from = new HBox(choosing, folder, number, again);
    from.getStyleClass().addAll("in-line", "asked-line");
    problem.setId("returns-problem");
    var notice = new VBox(problem);
    notice.getStyleClass().add("paper-sheet");
    notice.visibleProperty().bind(problem.visibleProperty());
    notice.managedProperty().bind(problem.visibleProperty());
    title.setId("returns-title");
    totals =
        new KindTotals<>(
            "returns-",
            ReturnLine.Kind.values(),
            ReturnLine.Kind::word,
            kind -> {
              var mark = new LineMark();
              mark.show(kind);
              return mark;
            },
            model.only());
    buildList();
    var left = new VBox(title, totals, list);
    left.getStyleClass().addAll("paper-sheet", "returns-sheet");
    select =
        new PairPrint(
            texts,
            texts.get("handoff.pair.select"),
            texts.get("handoff.pair.noSelect"),
            pictures,
            tasks,
            FinishedPictures::part,
            model);
    came =
        new PairPrint(
            texts,
            texts.get("handoff.pair.came"),
            texts.get("handoff.pair.nothing"),
            pictures,
            tasks,
            FinishedPictures::part,
            model);
    var both = new HBox(select, came);
    both.getStyleClass().add("pair");
    both.setMinHeight(0);
    VBox.setVgrow(both, Priority.ALWAYS);
    said.getStyleClass().add("pair-said");
    said.setMinHeight(Region.USE_PREF_SIZE);
    rename = button(commands.rename(), "");
    rename.setId("returns-rename");
    var undo = button(commands.undo(), "handoff.act.undo");
    undo.setId("returns-undo");
    undo.visibleProperty().bind(commands.undo().enabled());
    undo.managedProperty().bind(commands.undo().enabled());
    var delivers = button(commands.deliver(), "handoff.act.deliver");
    delivers.setId("returns-deliver");
    actions.getStyleClass().addAll("in-lines", "pair-actions");
    actions.setMinHeight(Region.USE_PREF_SIZE);
    actions
        .getChildren()
        .addAll(
            rename,
            undo,
            delivers,
            button(commands.fullSize(), "handoff.act.fullSize"),
            button(commands.show(), "handoff.act.show"));
    var right = new VBox(both, said, actions);
    right.getStyleClass().add("pair-part");
    right.setMinWidth(0);
    HBox.setHgrow(right, Priority.ALWAYS);
    middle = new HBox(left, right);
    middle.getStyleClass().add("hand-middle");
    work = new WorkStrip(texts, commands.stop(), texts.get("handoff.returns.safe"));
    how =
        new VBox(
            WrappedText.of(texts.get("handoff.returns.how"), "sheet-title"),
            WrappedText.of(texts.get("handoff.returns.how.1")),
            WrappedText.of(texts.get("handoff.returns.how.2")),
            WrappedText.of(texts.get("handoff.returns.how.3"), "quiet"));
    how.getStyleClass().addAll("paper-sheet", "work-sheet");
    VBox.setVgrow(below, Priority.ALWAYS);
    below.setMinHeight(0);
    getChildren().addAll(from, notice, below);
    getStyleClass().add("hand-part");
    FolderDrop.on(this, model::read);
    following =
        Subscription.combine(
            model.folder().subscribe(_ -> show()),
            model.answer().subscribe(_ -> show()),
            model.running().subscribe(_ -> show()),
            model.only().subscribe(_ -> showTotals()),
            model.problem().subscribe(_ -> showProblem()),
            model.chosen().subscribe(this::showChosen),
            model.pair().subscribe(_ -> showPair()),
            model.fullSize().subscribe(_ -> showPair()));
  }

  private Button button(Command command, String key) {
    var button = CommandControls.button(command, key.isEmpty() ? "" : texts.get(key), texts);
    button.getStyleClass().add("act");
    button.disableProperty().bind(Bindings.not(command.enabled()));
    return button;
  }

  private void buildList() {
    list.setId("returned");
    list.setItems(model.lines());
    list.setCellFactory(_ -> new Cell());
    list.setAccessibleText(texts.get("handoff.returns.list"));
    list.setPlaceholder(WrappedText.of(texts.get("handoff.returns.nothing"), "quiet"));
    list.getStyleClass().add("two-lines");
    VBox.setVgrow(list, Priority.ALWAYS);
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (_, _, now) -> {
              if (now != null) {
                model.chosen().set(now);
              }
            });
  }

  private void numbered(ListChangeListener.Change<? extends Past> change) {
    number(List.copyOf(change.getList()));
  }

  private void number(List<? extends Past> past) {
    var all = new ArrayList<Optional<Integer>>();
    all.add(Optional.empty());
    past.stream()
        .filter(one -> !one.toTheClient())
        .forEach(one -> all.add(Optional.of(one.number())));
    if (!number.getItems().equals(all)) {
      number.getItems().setAll(all);
    }
    number.setValue(model.number().get());
  }

  // What is shown

  private void show() {
    folder.setStyleClasses(model.folder().get().isPresent() ? "code" : "quiet");
    folder.setText(
        model
            .folder()
            .get()
            .map(it -> PlainText.line(it.toString()))
            .orElseGet(() -> texts.get("handoff.folder.none")));
    var running = model.running().get();
    work.show(running);
    var answer = model.answer().get();
    Node part = running.isPresent() ? work : answer.isPresent() ? middle : how;
    if (!below.getChildren().contains(part)) {
      below.getChildren().setAll(part);
    }
    answer.ifPresent(this::show);
    showTotals();
    showProblem();
  }

  private void show(ReturnsModel.Answer answer) {
    title.setText(texts.get("handoff.returns.title", answer.came(), answer.selects()));
    rename.setText(texts.get("handoff.act.rename", answer.renames()));
    rename.setVisible(answer.renames() > 0);
    rename.setManaged(rename.isVisible());
  }

  private void showTotals() {
    model
        .answer()
        .get()
        .ifPresent(
            answer ->
                totals.show(
                    answer.counts(),
                    model.only().get(),
                    (kind, count) -> texts.get("handoff.returns.total." + kind.word(), count)));
  }

  private void showProblem() {
    problem.show(
        model
            .problem()
            .get()
            .or(() -> model.answer().get().flatMap(it -> it.remarks().stream().findFirst())));
  }

  private void showChosen(ReturnLine line) {
    said.getChildren().clear();
    if (line == null) {
      list.getSelectionModel().clearSelection();
      return;
    }
    if (!line.equals(list.getSelectionModel().getSelectedItem())) {
      list.getSelectionModel().select(line);
      list.scrollTo(Math.max(0, list.getSelectionModel().getSelectedIndex() - 3));
    }
    var heading =
        WrappedText.of(
            texts.apart(line.name(), texts.get("handoff.returns.state." + line.kind().word())),
            "pair-name");
    heading.setMostLines(2);
    said.getChildren().add(heading);
    if (!line.more().isEmpty()) {
      said.getChildren().add(lines(line.more(), "quiet", 2));
    }
    // As much as leaves room for the pictures; the list's tooltip has it all.
    for (var remark : line.said().stream().limit(4).toList()) {
      said.getChildren().add(lines(remark.what(), "message", 2));
      if (!remark.remedy().isEmpty()) {
        said.getChildren().add(lines(remark.remedy(), "quiet", 2));
      }
    }
    int left = line.said().size() - 4;
    if (left > 0) {
      said.getChildren().add(lines(texts.get("handoff.returns.findingsMore", left), "quiet", 1));
    }
  }

  private static WrappedText lines(String text, String style, int most) {
    var wrapped = WrappedText.of(text, style);
    wrapped.setMostLines(most);
    return wrapped;
  }

  private void showPair() {
    var pair = model.pair().get();
    select.show(pair.select(), model.fullSize().get());
    came.show(pair.came(), model.fullSize().get());
  }

  /** Where the keys go. */
  Node focus() {
    return model.answer().get().isPresent() ? list : this;
  }

  ListView<ReturnLine> list() {
    return list;
  }

  void dispose() {
    following.unsubscribe();
    work.dispose();
    select.clear();
    came.clear();
    list.setItems(null);
  }

  private final class Cell extends LineCell<ReturnLine> {
    private final TwoLines shown = new TwoLines();

    @Override
    protected void showLine(ReturnLine line) {
      shown.mark().show(line.kind());
      shown.name().setText(line.name());
      var state = texts.get("handoff.returns.state." + line.kind().word());
      shown.more().setText(texts.apart(state, line.more()));

      setGraphic(shown.row());
      var all = new ArrayList<String>();
      all.add(line.name());
      line.said().forEach(one -> all.add(texts.apart(one.what(), one.remedy())));
      setTooltip(new Tooltip(String.join("\n", all)));
      setAccessibleText(texts.apart(line.name(), state, line.more()));
    }
  }
}
