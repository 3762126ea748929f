package org.framewright.ui;

import javafx.beans.value.ObservableBooleanValue;

/** The layer over the page where one question at a time is asked. */
public interface Slips {
  /** Lays a slip over the page; one that lies there is dismissed first. */
  void show(Slip slip);

  /** Takes the slip away without an answer. */
  void dismiss();

  /** Whether one lies there. */
  ObservableBooleanValue open();
}
