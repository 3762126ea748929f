package org.framewright.ui.handoff;

import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.handoff.Room;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What would go under which name, what would not and why, and the room that it needs. */
final class GoingPane extends VBox {
  private final HandOffModel model;
  private final Texts texts;
  private final WrappedText title = new WrappedText("sheet-title");
  private final WrappedText before = new WrappedText("quiet");
  private final ListView<GoingLine> list = new ListView<>();
  private final RemarkBox why = new RemarkBox();
  private final WrappedText target = new WrappedText("code");
  private final WrappedText room = new WrappedText("quiet");
  private final RemarkBox problem = new RemarkBox();
  private final RemarkBox ended = new RemarkBox();
  private final Button does;
  private final Subscription following;

  GoingPane(HandOffModel model, Texts texts, Command main) {
    this.model = model;
    this.texts = texts;
    title.setId("hand-off-going");
    list.setId("going");
    list.setItems(model.lines());
    list.setCellFactory(_ -> new GoingCell(texts));
    list.setPlaceholder(WrappedText.of(texts.get("handoff.going.none"), "quiet", "nothing-goes"));
    list.setAccessibleText(texts.get("handoff.going.list"));
    list.getStyleClass().add("two-lines");
    list.getSelectionModel().selectedItemProperty().addListener((_, _, now) -> why(now));
    VBox.setVgrow(list, Priority.ALWAYS);
    before.setId("hand-off-before");
    why.setId("hand-off-why");
    target.setId("hand-off-target");
    target.setMostLines(2);
    room.setId("hand-off-room");
    problem.setId("hand-off-problem");
    ended.setId("hand-off-ended");
    does = CommandControls.button(main, "", texts);
    does.setId("hand-off");
    does.getStyleClass().addAll("does-it", "act");
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    var row = new HBox(gap, does);
    row.getStyleClass().addAll("in-line", "does-row");
    getChildren().addAll(ended, title, before, list, why, problem, target, room, row);
    getStyleClass().addAll("paper-sheet", "going-sheet");
    following =
        Subscription.combine(
            model.looked().subscribe(_ -> show()),
            model.current().subscribe(_ -> show()),
            model.ready().subscribe(now -> does.setDisable(!now)),
            model
                .ended()
                .subscribe(
                    end -> ended.show(end.filter(one -> !one.isWhole()).map(Ended::whyInFull))));
  }

  private void show() {
    var now = model.looked().get();
    boolean current = model.current().get();
    title.setText(now.map(this::counted).orElseGet(() -> texts.get("handoff.going.looking")));
    title.setStyleClasses("sheet-title", current ? "current" : "quiet");
    before.setText(now.map(this::before).orElse(""));
    shownIf(before, !before.getText().isEmpty());
    problem.show(now.flatMap(Looked::problem));
    target.setText(
        now.filter(Looked::isSound)
            .flatMap(Looked::target)
            .map(path -> path.toString() + numbers(now.orElseThrow()))
            .orElse(""));
    shownIf(target, !target.getText().isEmpty());
    room.setText(now.flatMap(Looked::room).map(this::words).orElse(""));
    shownIf(room, !room.getText().isEmpty());
    does.setText(texts.get("handoff.do", now.map(Looked::selects).orElse(0)));
  }

  private void why(GoingLine line) {
    why.show(Optional.ofNullable(line).flatMap(one -> one.inFull(texts)));
  }

  private static String numbers(Looked now) {
    return now.parts().size() < 2 ? "" : "-1 … -" + now.parts().size();
  }

  private String counted(Looked now) {
    return texts.apart(
        texts.get("handoff.going", now.selects(), now.files(), texts.formats().size(now.bytes())),
        now.slates() == 0 ? "" : texts.get("handoff.going.slates", now.slates()),
        now.parts().size() < 2 ? "" : texts.get("handoff.going.parts", now.parts().size()));
  }

  private String before(Looked now) {
    var went =
        now.again() == 0
            ? ""
            : texts.get(
                "handoff.going.again", now.selects() + now.slates() - now.again(), now.again());
    return texts.apart(
        now.withheld() == 0 ? "" : texts.get("handoff.going.withheld", now.withheld()),
        now.stay() > 0 ? texts.get("handoff.going.stay", now.stay()) : went);
  }

  private String words(Room now) {
    var needed = texts.formats().size(now.needed());
    return now.free().isPresent()
        ? texts.get("handoff.room", needed, texts.formats().size(now.free().getAsLong()))
        : texts.get("handoff.room.unknown", needed);
  }

  private static void shownIf(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }

  ListView<GoingLine> list() {
    return list;
  }

  void dispose() {
    following.unsubscribe();
    list.setItems(null);
  }
}
