package org.framewright.ui;

import javafx.scene.Node;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.settings.Explanation;

/** Says what went wrong, and its remedy; the detail is a key away. */
final class TroubleDialog {
  private TroubleDialog() {}

  static DialogSpec of(Explanation explained, Texts texts) {
    var box =
        new VBox(
            WrappedText.of(texts.sentence(explained.problem())),
            WrappedText.of(texts.remedy(explained.problem())));
    box.getStyleClass().add("trouble");
    Node keys = box;
    if (!explained.detail().isEmpty()) {
      var more = new TitledPane(texts.get("trouble.detail"), WrappedText.of(explained.detail()));
      more.setExpanded(false);
      more.setAnimated(false);
      box.getChildren().add(more);
      keys = more;
    }
    return DialogSpec.reading(texts.get("trouble.title"), box, keys).about("trouble");
  }
}
