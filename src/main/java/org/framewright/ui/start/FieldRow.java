package org.framewright.ui.start;

import java.util.ArrayList;
import java.util.stream.Collectors;
import javafx.beans.value.ChangeListener;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.framewright.naming.FieldType;
import org.framewright.ui.command.KeyFocus;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.FindingLine;

/** One field of the form: its word, where one types, and below it what stands beside the field. */
final class FieldRow extends VBox {
  private final FieldEntry entry;
  private final Texts texts;
  private final Control input;
  private final VBox below = new VBox();
  private final ChangeListener<FieldEntry.Beside> listener = (_, _, now) -> show(now);

  FieldRow(FieldEntry entry, Texts texts) {
    this.entry = entry;
    this.texts = texts;
    getStyleClass().add("field-row");
    var word = new Label(entry.label());
    word.getStyleClass().add("field-word");
    var need = new Label(texts.get(entry.needed() ? "start.needed" : "start.mayBeEmpty"));
    need.getStyleClass().add("field-need");
    input = input();
    input.setId("field-" + entry.name());
    input.setMaxWidth(Double.MAX_VALUE);
    input.setAccessibleText(
        texts.apart(entry.label(), need.getText(), texts.get("start.type." + typeKey())));
    word.setLabelFor(input);
    below.getStyleClass().add("field-below");
    getChildren().addAll(new HBox(word, need), input, below);
    ((HBox) getChildren().getFirst()).getStyleClass().add("field-head");
    entry.beside().addListener(listener);
    show(entry.beside().get());
  }

  Control input() {
    return switch (entry.type()) {
      case CHOICE -> choice();
      case CODE, WORDS, PERSON -> entry.recent().isEmpty() ? typed() : recent();
      case DATE, NUMBER, COUNTER, GTIN, FIXED -> typed();
    };
  }

  Node focus() {
    return input;
  }

  String name() {
    return entry.name();
  }

  boolean isOf(String name) {
    return entry.name().equals(name);
  }

  boolean isTypedIn() {
    return KeyFocus.isWithin(input);
  }

  /** Takes the keys, behind what was typed before. */
  void goOnTyping() {
    // A field that gets its skin while it has the keys chooses all that it holds.
    applyCss();
    input.requestFocus();
    switch (input) {
      case TextField field -> field.end();
      case ComboBox<?> combo when combo.isEditable() -> combo.getEditor().end();
      default -> {}
    }
  }

  void dispose() {
    entry.beside().removeListener(listener);
    if (input instanceof TextField field) {
      field.textProperty().unbindBidirectional(entry.text());
    } else if (input instanceof ComboBox<?> combo && combo.isEditable()) {
      combo.getEditor().textProperty().unbindBidirectional(entry.text());
    }
  }

  private TextField typed() {
    var field = new TextField();
    field.setPromptText(texts.get("start.example", entry.example()));
    field.textProperty().bindBidirectional(entry.text());
    return field;
  }

  private ComboBox<String> recent() {
    var combo = new ComboBox<String>();
    combo.setEditable(true);
    combo.getItems().setAll(entry.recent());
    combo.setPromptText(texts.get("start.example", entry.example()));
    combo.getEditor().textProperty().bindBidirectional(entry.text());
    return combo;
  }

  private ComboBox<String> choice() {
    var combo = new ComboBox<String>();
    var values = new ArrayList<String>();
    if (!entry.needed()) {
      values.add("");
    }
    values.addAll(entry.choices().sequencedKeySet());
    combo.getItems().setAll(values);
    combo.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(String value) {
            return value == null || value.isEmpty()
                ? ""
                : value + "  " + entry.choices().getOrDefault(value, "");
          }

          @Override
          public String fromString(String shown) {
            throw new UnsupportedOperationException("a choice is not typed");
          }
        });
    combo.setValue(entry.text().get());
    combo.valueProperty().addListener((_, _, now) -> entry.text().set(now == null ? "" : now));
    return combo;
  }

  private String typeKey() {
    return entry.type() == FieldType.GTIN ? "gtin" : entry.type().word();
  }

  private void show(FieldEntry.Beside now) {
    below.getChildren().clear();
    for (var finding : now.findings()) {
      below.getChildren().add(FindingLine.beside(texts, finding));
    }
    if (!now.became().isEmpty()) {
      var became = WrappedText.of(texts.get("start.became", now.became()), "became");
      var how =
          WrappedText.of(
              now.rules().stream().map(texts::say).collect(Collectors.joining(" · ")),
              "became-how");
      below.getChildren().addAll(became, how);
    }
  }
}
