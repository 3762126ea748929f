package org.framewright.ui.preferences;

import javafx.beans.value.ChangeListener;
import javafx.scene.control.TextField;

/** Where one types a setting; what was written is looked at when the keys go elsewhere. */
final class EntryField extends TextField {
  private final Entry entry;
  private final ChangeListener<Boolean> leaving =
      (_, _, now) -> {
        if (!now) {
          commit();
        }
      };

  /**
   * @param spoken what the field is, for who does not see it
   */
  EntryField(Entry entry, String spoken) {
    this.entry = entry;
    setId("setting-" + entry.id().replace('.', '-'));
    setAccessibleText(spoken);
    textProperty().bindBidirectional(entry.text());
    focusedProperty().addListener(leaving);
    setOnAction(_ -> commit());
  }

  Entry entry() {
    return entry;
  }

  private void commit() {
    entry.commit();
  }

  void dispose() {
    focusedProperty().removeListener(leaving);
    textProperty().unbindBidirectional(entry.text());
  }
}
