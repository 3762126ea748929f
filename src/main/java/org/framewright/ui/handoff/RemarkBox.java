package org.framewright.ui.handoff;

import java.util.Optional;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.WrappedText;

/** What is in the way, and what can be done about it; not there where nothing is. */
final class RemarkBox extends VBox {
  private final WrappedText what = new WrappedText("notice-what");
  private final WrappedText remedy = new WrappedText("remedy");

  RemarkBox() {
    getChildren().addAll(what, remedy);
    getStyleClass().addAll("notice", "needs", "remark-box");
    setMinHeight(USE_PREF_SIZE);
    show(Optional.empty());
  }

  void show(Optional<Remark> remark) {
    what.setText(remark.map(Remark::what).orElse(""));
    remedy.setText(remark.map(Remark::remedy).orElse(""));
    remedy.setVisible(!remedy.getText().isEmpty());
    remedy.setManaged(remedy.isVisible());
    setVisible(!what.getText().isEmpty());
    setManaged(isVisible());
  }
}
