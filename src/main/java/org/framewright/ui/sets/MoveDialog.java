package org.framewright.ui.sets;

import java.util.List;
import java.util.function.BiConsumer;
import javafx.beans.binding.Bindings;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.SelectionMode;
import javafx.scene.layout.VBox;
import org.framewright.studio.Moves;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;

/** Asks which setups of a set are to be shot by which other one. */
final class MoveDialog {
  private final Texts texts;
  private final ListView<Moves.ToShoot> setups = new ListView<>();
  private final ComboBox<SetLine> sets = new ComboBox<>();
  private final VBox node = new VBox();

  /**
   * @param others the sets that may shoot them
   */
  MoveDialog(List<Moves.ToShoot> toShoot, List<SetLine> others, Texts texts) {
    this.texts = texts;
    setups.setId("move-setups");
    setups.getItems().setAll(toShoot);
    setups.getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
    setups.setCellFactory(_ -> new SetupCell());
    setups.setPlaceholder(WrappedText.of(texts.get("sets.move.none"), "quiet"));
    setups.setAccessibleText(texts.get("sets.move.which"));
    setups.getStyleClass().add("copy-targets");
    setups.getSelectionModel().selectFirst();
    sets.setId("move-to");
    sets.getItems().setAll(others);
    sets.setCellFactory(_ -> new SetNameCell());
    sets.setButtonCell(new SetNameCell());
    sets.setMaxWidth(Double.MAX_VALUE);
    // None is chosen beforehand: a setup must not go to a set that nobody named.
    sets.setAccessibleText(texts.get("sets.move.to"));
    node.getStyleClass().add("copy-dialog");
    node.getChildren()
        .addAll(
            word("sets.move.which"),
            setups,
            word("sets.move.to"),
            sets,
            WrappedText.of(texts.get("sets.move.what"), "quiet"));
  }

  private Label word(String key) {
    var word = new Label(texts.get(key));
    word.getStyleClass().add("field-word");
    return word;
  }

  /** The question; the answer is the codes and the set. */
  DialogSpec spec(String from, BiConsumer<List<String>, SetLine> answer) {
    var chosen = setups.getSelectionModel().getSelectedItems();
    return DialogSpec.asking(
        texts.get("sets.move.title", from),
        node,
        setups,
        texts.get("sets.move.do"),
        Bindings.isNotEmpty(chosen).and(sets.valueProperty().isNotNull()),
        () -> answer.accept(chosen.stream().map(Moves.ToShoot::code).toList(), sets.getValue()));
  }

  private final class SetupCell extends ListCell<Moves.ToShoot> {
    @Override
    protected void updateItem(Moves.ToShoot setup, boolean empty) {
      super.updateItem(setup, empty);
      setText(empty || setup == null ? "" : texts.apart(setup.code(), setup.title()));
    }
  }

  private static final class SetNameCell extends ListCell<SetLine> {
    @Override
    protected void updateItem(SetLine set, boolean empty) {
      super.updateItem(set, empty);
      setText(empty || set == null ? "" : set.name());
    }
  }
}
