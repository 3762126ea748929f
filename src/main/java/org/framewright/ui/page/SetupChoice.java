package org.framewright.ui.page;

import java.util.List;
import java.util.Optional;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.shotlist.Setup;
import org.framewright.ui.command.TypedWords;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.ListWalk;
import org.framewright.ui.look.Texts;

/** One setup is chosen of several: by the arrow keys or a click, and of many by typing. */
public final class SetupChoice {
  private static final double LINE = 2.4;

  private final List<Setup> all;
  private final ListView<Setup> list = new ListView<>();
  private final TextField typed = new TextField();
  private final VBox box = new VBox();
  private final Node focus;

  private SetupChoice(List<Setup> all, Texts texts, String what, boolean byTyping) {
    this.all = List.copyOf(all);
    list.setId("setup-choices");
    list.setAccessibleText(what);
    list.setCellFactory(_ -> new Row(texts));
    list.getItems().setAll(all);
    box.getStyleClass().add("setup-choice");
    VBox.setVgrow(list, Priority.ALWAYS);
    typed.fontProperty().subscribe(font -> list.setFixedCellSize(LINE * font.getSize()));
    if (byTyping) {
      typed.setId("setup-typed");
      typed.setPromptText(what);
      typed.setAccessibleText(what);
      typed.textProperty().subscribe(this::find);
      ListWalk.of(typed, list);
      list.setFocusTraversable(false);
      box.getChildren().add(typed);
    } else {
      list.getSelectionModel().selectFirst();
    }
    box.getChildren().add(list);
    focus = byTyping ? typed : list;
  }

  /** Of few: the first one is chosen. */
  public static SetupChoice among(List<Setup> few, Texts texts, String what) {
    return new SetupChoice(few, texts, what, false);
  }

  /** Of many: none is chosen until a person types or clicks. */
  public static SetupChoice byTyping(List<Setup> all, Texts texts, String what) {
    return new SetupChoice(all, texts, what, true);
  }

  public Node node() {
    return box;
  }

  public Node focus() {
    return focus;
  }

  public ObservableBooleanValue ready() {
    return list.getSelectionModel().selectedItemProperty().isNotNull();
  }

  public Optional<Setup> chosen() {
    return Optional.ofNullable(list.getSelectionModel().getSelectedItem());
  }

  private void find(String text) {
    var words = TypedWords.of(text);
    list.getSelectionModel().clearSelection();
    list.getItems()
        .setAll(
            all.stream()
                .filter(setup -> words.areIn(setup.code() + " " + setup.title()))
                .sorted((a, b) -> Boolean.compare(words.are(b.code()), words.are(a.code())))
                .toList());
    if (!words.isEmpty()) {
      list.getSelectionModel().selectFirst();
    }
    list.scrollTo(0);
  }

  private static final class Row extends LineCell<Setup> {
    private final Texts texts;
    private final Label code = new Label();
    private final Label title = new Label();
    private final HBox row = new HBox(code, title);

    Row(Texts texts) {
      this.texts = texts;
      row.getStyleClass().add("setup-choice-row");
      code.getStyleClass().add("setup-choice-code");
      code.setMinWidth(Region.USE_PREF_SIZE);
      title.setMinWidth(0);
      title.setMaxWidth(Double.MAX_VALUE);
      HBox.setHgrow(title, Priority.ALWAYS);
      setPrefWidth(0);
    }

    @Override
    protected void showLine(Setup setup) {
      code.setText(setup.code());
      title.setText(setup.title());
      setAccessibleText(texts.apart(setup.code(), setup.title()));
      setGraphic(row);
    }
  }
}
