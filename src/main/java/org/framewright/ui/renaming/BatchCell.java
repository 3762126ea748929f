package org.framewright.ui.renaming;

import java.time.Instant;
import java.util.Locale;
import java.util.function.Function;
import javafx.scene.control.Label;
import org.framewright.renaming.Batch;
import org.framewright.renaming.BatchState;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;

/** A batch of renames: when, how many files, and one of them. */
final class BatchCell extends LineCell<Batch> {
  private final Texts texts;
  private final Function<Instant, String> time;
  private final Label when = new Label();
  private final Label what = new Label();
  private final Label example = new Label();
  private final CellBox box = new CellBox(when, what, example);

  BatchCell(Texts texts, Function<Instant, String> time) {
    this.texts = texts;
    this.time = time;
    when.getStyleClass().add("batch-when");
    example.getStyleClass().add("batch-example");
  }

  @Override
  protected void showLine(Batch batch) {
    when.setText(time.apply(batch.at()));
    what.setText(describe(batch));
    example.setText(
        batch.state() == BatchState.UNREADABLE ? texts.say(batch.damage()) : batch.example());
    setGraphic(box);
    setAccessibleText(texts.apart(when.getText(), what.getText(), example.getText()));
  }

  private String describe(Batch batch) {
    if (batch.state() == BatchState.DONE && batch.undoes().isPresent()) {
      return texts.get("renaming.batch.undo", batch.renames());
    }
    if (batch.state() == BatchState.DONE && batch.undoneBy().isPresent()) {
      return texts.get("renaming.batch.undone", batch.renames());
    }
    return texts.get(
        "renaming.batch." + batch.state().name().toLowerCase(Locale.ROOT), batch.renames());
  }
}
