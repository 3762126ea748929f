package org.framewright.ui.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javafx.geometry.Orientation;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import org.framewright.ui.help.Run.Face;

/**
 * Text with keys, code and links in it, broken into lines between its words. The guide is written
 * in Latin letters alone, so each word is a node of its own, and nothing has to be put in order.
 */
final class FlowText extends Region {
  /** Of the size of letters: the room between words, and between lines. */
  private static final double BLANK = 0.27;

  private static final double LEADING = 0.32;

  /** What is never taken apart: a word, and what stands against it without a blank. */
  private final List<List<Node>> words = new ArrayList<>();

  private final Text measure = new Text();
  private final UnaryOperator<String> keys;
  private boolean joins;

  /**
   * @param keys writes a key as the keyboards of the language have it
   * @param follow goes where a link leads
   */
  FlowText(List<Run> runs, UnaryOperator<String> keys, Consumer<String> follow, String... classes) {
    this.keys = keys;
    getStyleClass().addAll(classes);
    getStyleClass().add("guide-text");
    measure.setManaged(false);
    measure.setVisible(false);
    getChildren().add(measure);
    for (int i = 0; i < runs.size(); i++) {
      var run = runs.get(i);
      if (run.leads()) {
        var text = new StringBuilder(run.text());
        while (i + 1 < runs.size() && runs.get(i + 1).link().equals(run.link())) {
          text.append(runs.get(++i).text());
        }
        put(link(text.toString(), run.link(), follow));
      } else {
        put(run);
      }
    }
    words.forEach(word -> getChildren().addAll(word));
    setAccessibleRole(AccessibleRole.TEXT);
    setAccessibleText(Run.plain(runs));
  }

  private void put(Run run) {
    if (run.face() == Face.KEY) {
      var cap = new Label(keys.apply(run.text()));
      cap.getStyleClass().addAll("key-cap", "guide-key");
      put(cap);
      return;
    }
    var text = run.text();
    if (!text.isEmpty() && Character.isWhitespace(text.charAt(0))) {
      joins = false;
    }
    for (var word : text.strip().split("\\s+", -1)) {
      if (!word.isEmpty()) {
        put(word(word, run.face()));
        joins = false;
      }
    }
    joins =
        !text.isBlank()
            ? !Character.isWhitespace(text.charAt(text.length() - 1))
            : joins && text.isEmpty();
  }

  private static Node word(String word, Face face) {
    var text = new Text(word);
    text.getStyleClass().add("guide-word");
    if (face != Face.PLAIN) {
      text.getStyleClass().add("guide-" + face.name().toLowerCase(Locale.ROOT));
    }
    return text;
  }

  private static Node link(String words, String to, Consumer<String> follow) {
    var link = new Button(words);
    link.setMnemonicParsing(false);
    link.getStyleClass().add("guide-link");
    link.setAccessibleRole(AccessibleRole.HYPERLINK);
    link.setOnAction(_ -> follow.accept(to));
    return link;
  }

  private void put(Node node) {
    if (joins && !words.isEmpty()) {
      words.getLast().add(node);
    } else {
      words.add(new ArrayList<>(List.of(node)));
    }
    joins = true;
  }

  /** Its links, from the first to the last. */
  List<Button> links() {
    return words.stream()
        .flatMap(List::stream)
        .filter(Button.class::isInstance)
        .map(Button.class::cast)
        .toList();
  }

  private static double wide(List<Node> word) {
    return word.stream().mapToDouble(node -> Math.ceil(node.prefWidth(-1))).sum();
  }

  /** Puts the words into lines of that width; says how high they are together. */
  private double flow(double width, boolean place) {
    double letters = measure.getFont().getSize();
    double blank = BLANK * letters;
    double y = 0;
    var line = new ArrayList<List<Node>>();
    double x = 0;
    for (var word : words) {
      double wide = wide(word);
      if (!line.isEmpty() && x + blank + wide > width) {
        y += end(line, y, blank, letters, place) + LEADING * letters;
        line.clear();
        x = 0;
      }
      x += (line.isEmpty() ? 0 : blank) + wide;
      line.add(word);
    }
    return line.isEmpty() ? y : y + end(line, y, blank, letters, place);
  }

  private double end(List<List<Node>> line, double y, double blank, double letters, boolean place) {
    double above = letters;
    double below = 0.3 * letters;
    for (var word : line) {
      for (var node : word) {
        above = Math.max(above, node.getBaselineOffset());
        below = Math.max(below, node.prefHeight(-1) - node.getBaselineOffset());
      }
    }
    if (place) {
      double x = 0;
      for (var word : line) {
        for (var node : word) {
          double wide = Math.ceil(node.prefWidth(-1));
          if (node.isResizable()) {
            node.resize(wide, node.prefHeight(-1));
          }
          node.relocate(
              snappedLeftInset() + x,
              snapPositionY(snappedTopInset() + y + above) - node.getBaselineOffset());
          x += wide;
        }
        x += blank;
      }
    }
    return Math.ceil(above + below);
  }

  private double sides() {
    return snappedLeftInset() + snappedRightInset();
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computeMinWidth(double height) {
    return sides() + 4 * measure.getFont().getSize();
  }

  @Override
  protected double computePrefWidth(double height) {
    double blank = BLANK * measure.getFont().getSize();
    return sides() + words.stream().mapToDouble(word -> wide(word) + blank).sum();
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computePrefHeight(double width) {
    double room = width < 0 ? Double.MAX_VALUE : width - sides();
    return flow(room, false) + snappedTopInset() + snappedBottomInset();
  }

  @Override
  protected double computeMaxHeight(double width) {
    return Double.MAX_VALUE;
  }

  @Override
  protected double computeMaxWidth(double height) {
    return Double.MAX_VALUE;
  }

  @Override
  protected void layoutChildren() {
    flow(getWidth() - sides(), true);
  }
}
