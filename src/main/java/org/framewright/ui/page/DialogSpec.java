package org.framewright.ui.page;

import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;

/**
 * A question over the page. Enter answers it (from a text field or a list too), Escape dismisses
 * it.
 *
 * @param title what is asked
 * @param body the question's controls
 * @param focus which of them has the keys first
 * @param confirm the button's words, which say what it does; empty for a dialog that is only read
 * @param ready whether it can be answered now
 * @param answer runs after the dialog is gone
 * @param dismissed runs when it was dismissed without an answer
 */
public record DialogSpec(
    String title,
    Node body,
    Node focus,
    String confirm,
    ObservableBooleanValue ready,
    Runnable answer,
    Runnable dismissed) {

  /** A question that can be answered at any time. */
  public static DialogSpec asking(
      String title, Node body, Node focus, String confirm, Runnable answer) {
    return new DialogSpec(title, body, focus, confirm, always(), answer, () -> {});
  }

  /** A question that can be answered while {@code ready}. */
  public static DialogSpec asking(
      String title,
      Node body,
      Node focus,
      String confirm,
      ObservableBooleanValue ready,
      Runnable answer) {
    return new DialogSpec(title, body, focus, confirm, ready, answer, () -> {});
  }

  /** Something to read. */
  public static DialogSpec reading(String title, Node body, Node focus) {
    return new DialogSpec(title, body, focus, "", always(), () -> {}, () -> {});
  }

  private static ObservableBooleanValue always() {
    return Bindings.createBooleanBinding(() -> true);
  }
}
