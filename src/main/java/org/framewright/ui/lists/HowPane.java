package org.framewright.ui.lists;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.framewright.base.PlainText;
import org.framewright.shotlist.Encodings;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** Which file it is, how it was read as a whole, and what is so with it. */
final class HowPane extends VBox {
  private final ListModel model;
  private final Texts texts;
  private final WrappedText name = new WrappedText("sheet-title");
  private final WrappedText form = new WrappedText("remedy");
  private final ComboBox<String> sheet = new ComboBox<>();
  private final ComboBox<String> encoding = new ComboBox<>();
  private final ComboBox<String> oneSetupPer = new ComboBox<>();
  private final Node sheetChoice;
  private final Node encodingChoice;
  private final Node oneSetupPerChoice;
  private final WrappedText before = new WrappedText();
  private final Button afresh = new Button();
  private final HBox beforeLine = new HBox(before, afresh);
  private final WrappedText verdict = new WrappedText("verdict-of-list");
  private boolean showing;

  /**
   * @param another asks for another file
   * @param menuGone runs when a list of choices is closed, whatever came of it
   */
  HowPane(ListModel model, Texts texts, Runnable another, Runnable menuGone) {
    this.model = model;
    this.texts = texts;
    name.setMostLines(1);
    name.setId("list-name");
    form.setMostLines(1);
    HBox.setHgrow(form, Priority.ALWAYS);
    var file = new Button(texts.get("lists.another"));
    file.setId("another");
    file.setMinWidth(Region.USE_PREF_SIZE);
    file.setOnAction(_ -> another.run());
    var again = new Button(texts.get("lists.again"));
    again.setId("again");
    again.setMinWidth(Region.USE_PREF_SIZE);
    again.setOnAction(_ -> model.readAgain());
    var head = new HBox(name, form, again, file);
    head.getStyleClass().add("in-line");
    sheetChoice = choice("sheet", sheet, PlainText::line, model::chooseSheet);
    encodingChoice =
        choice(
            "encoding",
            encoding,
            this::encodingWords,
            one -> model.chooseEncoding(Optional.of(one).filter(text -> !text.isEmpty())));
    oneSetupPerChoice =
        choice(
            "oneSetupPer",
            oneSetupPer,
            this::oneSetupPerWords,
            one -> model.chooseOneSetupPer(Optional.of(one).filter(text -> !text.isEmpty())));
    for (var combo : List.of(sheet, encoding, oneSetupPer)) {
      combo.setOnHidden(_ -> menuGone.run());
    }
    var choices = new FlowPane(sheetChoice, encodingChoice, oneSetupPerChoice);
    choices.getStyleClass().add("list-choices");
    afresh.setId("afresh");
    afresh.setText(texts.get("lists.afresh"));
    afresh.setMinWidth(Region.USE_PREF_SIZE);
    afresh.setOnAction(_ -> model.readAfresh());
    before.setId("before");
    before.setMostLines(2);
    before.setPrefWidth(1);
    HBox.setHgrow(before, Priority.ALWAYS);
    beforeLine.getStyleClass().add("in-line");
    verdict.setId("list-verdict");
    getStyleClass().add("how-part");
    getChildren().addAll(head, choices, beforeLine, verdict);
  }

  ComboBox<String> sheet() {
    return sheet;
  }

  ComboBox<String> encoding() {
    return encoding;
  }

  ComboBox<String> oneSetupPer() {
    return oneSetupPer;
  }

  private Node choice(
      String key, ComboBox<String> combo, Function<String, String> words, Consumer<String> then) {
    var word = new Label(texts.get("lists." + key));
    word.setLabelFor(combo);
    word.setMinWidth(Region.USE_PREF_SIZE);
    word.getStyleClass().add("field-word");
    combo.setId("choose-" + key);
    combo.setAccessibleText(texts.get("lists." + key));
    combo.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(String one) {
            return one == null ? "" : words.apply(one);
          }

          @Override
          public String fromString(String text) {
            return text;
          }
        });
    combo.setButtonCell(new ChosenCell(words));
    combo
        .valueProperty()
        .addListener(
            (_, _, now) -> {
              if (!showing && now != null) {
                then.accept(now);
              }
            });
    var box = new HBox(word, combo);
    box.getStyleClass().add("in-line");
    return box;
  }

  private String encodingWords(String one) {
    if (one.isEmpty()) {
      var found = model.encoding().map(Encodings::name).orElse("");
      return texts.get("lists.encoding.found", found);
    }
    var language = "lists.encoding." + one;
    return texts.has(language)
        ? texts.get("lists.encoding.of", Encodings.name(one), texts.get(language))
        : Encodings.name(one);
  }

  private String oneSetupPerWords(String one) {
    return one.isEmpty()
        ? texts.get("lists.oneSetupPer.line")
        : texts.get("lists.oneSetupPer.of", PlainText.line(one));
  }

  /** Shows the list as it is looked at now. */
  void show() {
    var looked = model.looked().get();
    showing = true;
    try {
      name.setText(
          looked.file().map(file -> PlainText.line(file.getFileName().toString())).orElse(""));
      form.setText(looked.understood().map(understood -> texts.say(understood.form())).orElse(""));
      fill(sheet, sheetChoice, model.sheets(), model.sheet());
      var encodings = new ArrayList<String>();
      if (model.encoding().isPresent()) {
        encodings.add("");
        encodings.addAll(Encodings.common());
        looked
            .options()
            .encoding()
            .filter(one -> !encodings.contains(one))
            .ifPresent(encodings::add);
      }
      fill(encoding, encodingChoice, encodings, looked.options().encoding().orElse(""));
      var headings = new ArrayList<String>();
      if (model.mayBeOneSetup()) {
        headings.add("");
        looked
            .reading()
            .ifPresent(reading -> reading.columns().forEach(one -> headings.add(one.heading())));
        model.oneSetupPer().filter(one -> !headings.contains(one)).ifPresent(headings::add);
      }
      fill(oneSetupPer, oneSetupPerChoice, headings, model.oneSetupPer().orElse(""));
      var earlier = model.asBefore();
      before.setText(earlier.map(what -> texts.get("lists.before", what)).orElse(""));
      beforeLine.setVisible(earlier.isPresent());
      beforeLine.setManaged(earlier.isPresent());
      verdict.setText(model.verdict());
      verdict.setStyleClasses("verdict-of-list", model.needsAPerson() ? "needs" : "fine");
    } finally {
      showing = false;
    }
  }

  private static void fill(ComboBox<String> combo, Node choice, List<String> items, String value) {
    choice.setVisible(!items.isEmpty());
    choice.setManaged(!items.isEmpty());
    if (!combo.getItems().equals(items)) {
      combo.getItems().setAll(items);
    }
    if (!Objects.equals(combo.getValue(), value)) {
      combo.setValue(value);
    }
    if (combo.getButtonCell() instanceof ChosenCell chosen) {
      chosen.say(value);
    }
  }

  /** What is chosen, in words that may change while it stays. */
  private static final class ChosenCell extends ListCell<String> {
    private final Function<String, String> words;

    ChosenCell(Function<String, String> words) {
      this.words = words;
    }

    private void say(String one) {
      setText(one == null ? "" : words.apply(one));
    }

    @Override
    protected void updateItem(String one, boolean empty) {
      super.updateItem(one, empty);
      say(empty ? null : one);
    }
  }
}
