package org.framewright.ui.board;

import javafx.beans.property.StringProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/**
 * The form in which a setup is typed; below it what is wrong, or what its frames will be called.
 */
final class SetupForm extends VBox {
  private static final int PLACES = 2;

  private final SetupDraft draft;
  private final Texts texts;
  private final GridPane grid = new GridPane();
  private final TextField code;
  private final TextField title;
  private final WrappedText outcome = WrappedText.of("", "setup-outcome");
  private int places;

  /**
   * @param views what the codes of views mean, for people; empty where the convention does not say
   */
  SetupForm(SetupDraft draft, Texts texts, String views) {
    this.draft = draft;
    this.texts = texts;
    getStyleClass().add("setup-form");
    grid.getStyleClass().add("setup-grid");
    code = field("code", texts.get("setup.code"), draft.code(), 1);
    code.setEditable(draft.kind() != SetupDraft.Kind.CHANGED);
    code.setFocusTraversable(code.isEditable());
    title = field("title", texts.get("setup.title"), draft.title(), 1);
    field("views", texts.get("setup.views"), draft.views(), 1)
        .setPromptText(texts.get("setup.viewsPrompt"));
    field("frames", texts.get("setup.frames"), draft.frames(), 1);
    draft
        .columns()
        .forEach(
            (heading, text) ->
                field("column-" + places, heading, text, SetupDraft.isLong(heading) ? PLACES : 1));
    var scroll = new ScrollPane(grid);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().add(scroll);
    if (!views.isEmpty()) {
      getChildren().add(WrappedText.of(texts.get("setup.viewsAre", views), "quiet"));
    }
    getChildren().add(outcome);
    outcome.setId("setup-outcome");
    draft.finding().subscribe(_ -> show());
    draft.name().subscribe(_ -> show());
  }

  /** Where one types first. */
  Node focus() {
    return draft.kind() == SetupDraft.Kind.ADDED || draft.kind() == SetupDraft.Kind.DUPLICATE
        ? code
        : title;
  }

  private TextField field(String id, String word, StringProperty text, int wide) {
    var label = new Label(word);
    label.getStyleClass().add("field-word");
    label.setMinWidth(0);
    var field = new TextField();
    field.setId("setup-" + id);
    field.textProperty().bindBidirectional(text);
    field.setAccessibleText(word);
    label.setLabelFor(field);
    if (places % PLACES + wide > PLACES) {
      places++;
    }
    var box = new VBox(label, field);
    GridPane.setHgrow(box, Priority.ALWAYS);
    grid.add(box, places % PLACES, places / PLACES, wide, 1);
    places += wide;
    return field;
  }

  private void show() {
    var wrong = draft.finding().get();
    outcome.setText(
        !wrong.isEmpty()
            ? wrong
            : draft.name().get().isEmpty() ? "" : texts.get("setup.named", draft.name().get()));
    if (wrong.isEmpty()) {
      outcome.setStyleClasses("setup-outcome");
    } else {
      outcome.setStyleClasses("setup-outcome", "needs");
    }
  }
}
