package org.framewright.ui.handoff;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;

/** How many lines there are of each kind; pressed, only those are shown, or all again. */
final class KindTotals<K extends Enum<K>> extends FlowPane {
  private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");

  private final Map<K, Button> buttons = new LinkedHashMap<>();

  /**
   * @param id what the ids of the buttons begin with
   */
  KindTotals(
      String id,
      K[] kinds,
      Function<K, String> word,
      Function<K, Node> mark,
      ObjectProperty<Optional<K>> only) {
    getStyleClass().add("file-totals");
    setMinWidth(0);
    setMinHeight(USE_PREF_SIZE);
    for (var kind : kinds) {
      var button = new Button("", mark.apply(kind));
      button.setId(id + word.apply(kind));
      button.getStyleClass().addAll("total", word.apply(kind));
      button.setMinWidth(Region.USE_PREF_SIZE);
      button.setOnAction(
          _ ->
              only.set(
                  only.get().equals(Optional.of(kind)) ? Optional.empty() : Optional.of(kind)));
      buttons.put(kind, button);
      getChildren().add(button);
    }
  }

  /**
   * Shows how many there are.
   *
   * @param words of a kind and its count
   */
  void show(Map<K, Integer> counts, Optional<K> only, Words<K> words) {
    buttons.forEach(
        (kind, button) -> {
          int count = counts.getOrDefault(kind, 0);
          button.setText(words.of(kind, count));
          button.setVisible(count > 0);
          button.setManaged(count > 0);
          button.pseudoClassStateChanged(CHOSEN, only.equals(Optional.of(kind)));
        });
  }

  /** A count in words. */
  @FunctionalInterface
  interface Words<K> {
    String of(K kind, int count);
  }
}
