package org.framewright.ui.page;

import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.layout.Region;

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
 * @param on the part of the page that it lies on, at its foot, and leaves the rest to be seen; in
 *     the middle of the page if empty
 * @param topic what help on it is about; empty where that is the page's
 */
public record DialogSpec(
    String title,
    Node body,
    Node focus,
    String confirm,
    ObservableBooleanValue ready,
    Runnable answer,
    Runnable dismissed,
    Optional<Region> on,
    String topic) {

  /** A question on a part of the page, or in the middle of it. */
  public DialogSpec(
      String title,
      Node body,
      Node focus,
      String confirm,
      ObservableBooleanValue ready,
      Runnable answer,
      Runnable dismissed,
      Optional<Region> on) {
    this(title, body, focus, confirm, ready, answer, dismissed, on, "");
  }

  /** A question in the middle of the page. */
  public DialogSpec(
      String title,
      Node body,
      Node focus,
      String confirm,
      ObservableBooleanValue ready,
      Runnable answer,
      Runnable dismissed) {
    this(title, body, focus, confirm, ready, answer, dismissed, Optional.empty());
  }

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

  /** The same on a part of the page, which keeps the rest to be seen. */
  public DialogSpec on(Region part) {
    return new DialogSpec(
        title, body, focus, confirm, ready, answer, dismissed, Optional.of(part), topic);
  }

  /** The same, with help of its own. */
  public DialogSpec about(String helpTopic) {
    return new DialogSpec(title, body, focus, confirm, ready, answer, dismissed, on, helpTopic);
  }

  private static ObservableBooleanValue always() {
    return Bindings.createBooleanBinding(() -> true);
  }
}
