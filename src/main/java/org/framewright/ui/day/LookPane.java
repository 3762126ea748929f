package org.framewright.ui.day;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.day.LookLine.Group;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What to look at before one wraps, as a list that one works off. */
final class LookPane extends VBox {
  private final DayModel model;
  private final Texts texts;
  private final ListView<LookLine> list = new ListView<>();
  private final WrappedText counts = new WrappedText("look-counts");
  private final ListChangeListener<LookLine> changed = _ -> showLines();
  private final Subscription following;
  private boolean choosing;

  /**
   * @param go goes where a line leads
   */
  LookPane(DayModel model, Texts texts, Consumer<LookLine> go) {
    this.model = model;
    this.texts = texts;
    var title = new WrappedText("sheet-title");
    title.setText(texts.get("day.look.title"));
    counts.setId("look-counts");
    list.setId("look-lines");
    list.getStyleClass().add("look-lines");
    list.setAccessibleText(texts.get("day.look.title"));
    var instead = new Label();
    // Before the day was worked out nobody knows that there is nothing.
    instead
        .textProperty()
        .bind(
            model
                .shown()
                .map(now -> texts.get(now.isEmpty() ? "day.look.working" : "day.look.none")));
    list.setPlaceholder(instead);
    list.setCellFactory(_ -> new LookCell(texts, model::turnLooked, go));
    list.setOnMouseClicked(
        event -> {
          if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
            Optional.ofNullable(list.getSelectionModel().getSelectedItem()).ifPresent(go);
          }
        });
    list.setItems(model.lines());
    VBox.setVgrow(list, Priority.ALWAYS);
    var head = new VBox(title, counts);
    head.getStyleClass().add("look-head");
    head.setMinHeight(USE_PREF_SIZE);
    getStyleClass().add("look-part");
    getChildren().addAll(head, list);
    model.lines().addListener(changed);
    following =
        Subscription.combine(
            model.chosen().subscribe(_ -> showChosen()),
            list.getSelectionModel().selectedItemProperty().subscribe(this::chosen));
    showLines();
  }

  private void chosen(LookLine line) {
    // A list that is filled anew chooses by itself; only what a person chose counts.
    if (!choosing && line != null) {
      model.chosen().set(Optional.of(line));
    }
  }

  private void showLines() {
    counts.setText(
        texts.apart(
            Arrays.stream(Group.values())
                .map(group -> count(group))
                .filter(Objects::nonNull)
                .toArray(String[]::new)));
    if (model.lookedAt() > 0) {
      counts.setText(
          texts.apart(counts.getText(), texts.get("day.count.looked", model.lookedAt())));
    }
    showChosen();
  }

  private String count(Group group) {
    int left = model.left(group);
    return left == 0 ? null : texts.get("day.count." + group.word(), left);
  }

  private void showChosen() {
    choosing = true;
    try {
      int at = model.chosen().get().map(line -> model.lines().indexOf(line)).orElse(-1);
      if (at < 0) {
        list.getSelectionModel().clearSelection();
      } else if (list.getSelectionModel().getSelectedIndex() != at) {
        list.getSelectionModel().clearAndSelect(at);
        list.getFocusModel().focus(at);
        list.scrollTo(Math.max(0, at - 1));
      }
    } finally {
      choosing = false;
    }
  }

  ListView<LookLine> list() {
    return list;
  }

  /** Gives the keys to the list, and the first line if none is chosen. */
  void takeKeys() {
    list.requestFocus();
    if (model.chosen().get().isEmpty() && !model.lines().isEmpty()) {
      model.chosen().set(Optional.of(model.lines().getFirst()));
    }
  }

  void dispose() {
    following.unsubscribe();
    model.lines().removeListener(changed);
    list.setItems(null);
  }
}
