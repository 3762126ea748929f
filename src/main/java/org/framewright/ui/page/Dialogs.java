package org.framewright.ui.page;

import javafx.beans.value.ObservableBooleanValue;

/** The layer over the page where one question at a time is asked. */
public interface Dialogs {
  /** Lays a dialog over the page; one that lies there is dismissed first. */
  void show(DialogSpec dialog);

  /** Takes the dialog away without an answer. */
  void dismiss();

  /** Whether one lies there. */
  ObservableBooleanValue open();
}
