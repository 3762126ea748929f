package org.framewright.ui.day;

import java.util.List;
import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The figures of the day, as many side by side as there is room for. */
final class FiguresPane extends FlowPane {
  private static final PseudoClass NEEDS = PseudoClass.getPseudoClass("needs");
  private static final int MOST_LINES = 3;

  private final Texts texts;

  FiguresPane(Texts texts) {
    this.texts = texts;
    getStyleClass().add("day-figures");
    setMinWidth(0);
    setMinHeight(USE_PREF_SIZE);
  }

  void show(List<Figure> figures) {
    while (getChildren().size() > figures.size()) {
      getChildren().removeLast();
    }
    while (getChildren().size() < figures.size()) {
      getChildren().add(new Shown());
    }
    for (int i = 0; i < figures.size(); i++) {
      if (getChildren().get(i) instanceof Shown shown) {
        shown.show(figures.get(i), texts);
      }
    }
  }

  /** One of them. */
  private static final class Shown extends VBox {
    private final Label word = new Label();
    private final Label number = new Label();
    private final WrappedText below = new WrappedText("day-below");

    Shown() {
      getStyleClass().add("day-figure");
      word.getStyleClass().add("day-word");
      word.setMinWidth(Region.USE_PREF_SIZE);
      number.getStyleClass().add("day-number");
      number.setMinWidth(Region.USE_PREF_SIZE);
      below.setMostLines(MOST_LINES);
      getChildren().addAll(word, number, below);
    }

    void show(Figure figure, Texts texts) {
      setId("day-" + figure.id());
      word.setText(figure.word());
      number.setText(figure.number());
      below.setText(figure.below());
      below.setId("day-" + figure.id() + "-below");
      pseudoClassStateChanged(NEEDS, figure.needs());
      setAccessibleText(texts.apart(figure.word(), figure.number(), figure.below()));
    }
  }
}
