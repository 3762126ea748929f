package org.framewright.ui.handoff;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.base.PlainText;
import org.framewright.handoff.PastHandOffs.Past;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The hand-offs so far, and of the one that is chosen what one tells of it. */
final class EarlierPane extends HBox {
  private final EarlierModel model;
  private final Texts texts;
  private final ListView<Past> list = new ListView<>();
  private final RemarkBox problem = new RemarkBox();
  private final WrappedText number = new WrappedText("sheet-title");
  private final VBox facts = new VBox();
  private final WrappedText sentence = new WrappedText("sentence");
  private final VBox said = new VBox(sentence);
  private final Subscription following;

  EarlierPane(EarlierModel model, Texts texts, Command say, Command show, Command check) {
    this.model = model;
    this.texts = texts;
    list.setId("earlier");
    list.setItems(model.all());
    list.setCellFactory(_ -> new Cell());
    list.setPlaceholder(WrappedText.of(texts.get("handoff.earlier.none"), "quiet"));
    list.setAccessibleText(texts.get("handoff.earlier.list"));
    list.getStyleClass().add("two-lines");
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (_, _, now) -> {
              if (now != null) {
                model.chosen().set(now);
              }
            });
    VBox.setVgrow(list, Priority.ALWAYS);
    var left = new VBox(problem, list);
    left.getStyleClass().addAll("paper-sheet", "earlier-sheet");
    number.setId("earlier-number");
    facts.getStyleClass().add("earlier-facts");
    sentence.setId("earlier-sentence");
    said.getStyleClass().add("say-line");
    said.setMinHeight(Region.USE_PREF_SIZE);
    var copy = CommandControls.button(say, texts.get("handoff.act.say"), texts);
    copy.getStyleClass().addAll("act", "does-it");
    copy.disableProperty().bind(Bindings.not(say.enabled()));
    var shows = CommandControls.button(show, texts.get("handoff.act.show"), texts);
    shows.getStyleClass().add("act");
    shows.disableProperty().bind(Bindings.not(show.enabled()));
    var checks = CommandControls.button(check, texts.get("handoff.act.check"), texts);
    checks.setId("earlier-check");
    checks.getStyleClass().add("act");
    checks.disableProperty().bind(Bindings.not(check.enabled()));
    var row = new FlowPane(copy, shows, checks);
    row.getStyleClass().addAll("in-lines", "handed-actions");
    row.setMinHeight(Region.USE_PREF_SIZE);
    var inside = new VBox(number, facts);
    inside.getStyleClass().add("handed-inside");
    var scroll = new ScrollPane(inside);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    var right = new VBox(scroll, said, row);
    right.getStyleClass().addAll("paper-sheet", "handed-sheet");
    right.visibleProperty().bind(Bindings.isNotEmpty(model.all()));
    right.setMinWidth(0);
    HBox.setHgrow(right, Priority.ALWAYS);
    getChildren().addAll(left, right);
    getStyleClass().add("hand-middle");
    following =
        Subscription.combine(
            model.chosen().subscribe(this::show), model.problem().subscribe(problem::show));
  }

  private void show(Past one) {
    if (one == null) {
      return;
    }
    if (!one.equals(list.getSelectionModel().getSelectedItem())) {
      list.getSelectionModel().select(one);
    }
    number.setText(texts.get("handoff.earlier.number", String.valueOf(one.number())));
    facts
        .getChildren()
        .setAll(
            fact("handoff.earlier.to", to(one)),
            fact("handoff.earlier.at", at(one)),
            fact("handoff.earlier.chosen", PlainText.line(texts.say(one.chosenBy()))),
            fact("handoff.earlier.much", much(one)),
            fact("handoff.earlier.state", state(one)));
    sentence.setText(model.sentence());
    if (sentence.getText().isEmpty()) {
      facts.getChildren().add(fact("handoff.earlier.folder", PlainText.line(one.folder()), "code"));
    }
    said.setVisible(!sentence.getText().isEmpty());
    said.setManaged(said.isVisible());
  }

  private Region fact(String key, String value, String... styles) {
    var word = new Label(texts.get(key));
    word.getStyleClass().add("field-word");
    word.setMinWidth(Region.USE_PREF_SIZE);
    var box = new VBox(word, WrappedText.of(value, styles));
    box.getStyleClass().add("earlier-fact");
    return box;
  }

  private String at(Past one) {
    Function<Instant, String> words =
        at -> texts.formats().dayAndTime(LocalDateTime.ofInstant(at, ZoneId.systemDefault()));
    return one.at().map(words).orElse("–");
  }

  private String much(Past one) {
    return texts.apart(
        texts.get(
            "handoff.earlier.selects",
            one.selects(),
            one.files(),
            texts.formats().size(one.bytes())),
        one.again() == 0 ? "" : texts.get("handoff.earlier.again", one.again()));
  }

  private String to(Past one) {
    return texts.get(one.toTheClient() ? "handoff.earlier.client" : "handoff.earlier.retoucher");
  }

  private String state(Past one) {
    return switch (one.state()) {
      case OUT -> texts.get("handoff.earlier.out");
      case INTERRUPTED -> texts.get("handoff.earlier.interrupted");
      case GIVEN_UP -> texts.get("handoff.earlier.givenUp");
    };
  }

  ListView<Past> list() {
    return list;
  }

  void dispose() {
    following.unsubscribe();
    list.setItems(null);
  }

  private final class Cell extends LineCell<Past> {
    private final Label what = new Label();
    private final Label more = new Label();
    private final CellBox box = new CellBox(what, more);

    Cell() {
      what.getStyleClass().add("field-word");
      what.setMinWidth(0);
      more.getStyleClass().addAll("quiet", "line-more");
      more.setMinWidth(0);
      box.getStyleClass().add("two-line-words");
    }

    @Override
    protected void showLine(Past one) {
      what.setText(texts.apart(texts.get("handoff.earlier.number", "" + one.number()), at(one)));
      more.setText(
          switch (one.state()) {
            case OUT ->
                texts.apart(
                    one.toTheClient() ? to(one) : "",
                    much(one),
                    PlainText.line(texts.say(one.chosenBy())));
            case INTERRUPTED, GIVEN_UP -> state(one);
          });
      setGraphic(box);
      setAccessibleText(texts.apart(what.getText(), more.getText()));
    }
  }
}
