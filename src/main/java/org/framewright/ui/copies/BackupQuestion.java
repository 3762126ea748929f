package org.framewright.ui.copies;

import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;

/** Asks whether a folder that looks like a card is a backup, and says what hangs on that. */
final class BackupQuestion {
  private BackupQuestion() {}

  /** The question about a place. */
  static DialogSpec spec(PlaceLine place, Texts texts, Runnable answer) {
    var folder = new Label(place.folder().toString());
    folder.getStyleClass().add("code");
    folder.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
    folder.setMinWidth(0);
    var body =
        new VBox(
            folder,
            WrappedText.of(texts.get("copies.backup.looks", place.found().device())),
            WrappedText.of(texts.get("copies.backup.counts")),
            WrappedText.of(texts.get("copies.backup.never"), "field-word"),
            WrappedText.of(texts.get("copies.backup.holds"), "quiet"));
    body.getStyleClass().add("word-dialog");
    return DialogSpec.asking(
        texts.get("copies.backup.title", place.name()),
        body,
        body,
        texts.get("copies.backup.do"),
        answer);
  }
}
