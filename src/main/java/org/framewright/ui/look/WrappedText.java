package org.framewright.ui.look;

import java.util.List;
import java.util.stream.Stream;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.geometry.Orientation;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import javafx.scene.text.TextBoundsType;

/**
 * A label of several lines that breaks them itself. The toolkit must not: its shaper keeps a run's
 * text from before the run was split at the end of a line, so that right-to-left text throws while
 * it is laid out, and Thai or Devanagari is painted twice (OpenJFX 26, PangoGlyphLayout). Lines
 * with right-to-left text are painted piece by piece, see {@link VisualOrder}.
 *
 * <p>Style classes are those of the label inside. Where there is less height than it needs, the
 * last line that is shown ends in dots.
 */
public final class WrappedText extends Region {
  private final StringProperty text = new SimpleStringProperty("");
  private final Label label = new Label();
  private final Pane pieces = new Pane();
  private final Text measure = new Text();
  private final LineBreaks breaks = new LineBreaks(this::width);
  private int mostLines = Integer.MAX_VALUE - 1;
  private Broken broken = new Broken("", 0, 0, List.of());

  private record Broken(String text, double room, int most, List<String> lines) {}

  /** Without text. */
  public WrappedText(String... styleClasses) {
    label.setMinWidth(0);
    label.setTextOverrun(OverrunStyle.CLIP);
    label.setAlignment(Pos.CENTER_LEFT);
    label.getStyleClass().addAll(styleClasses);
    label.fontProperty().addListener(_ -> renew());
    label.insetsProperty().addListener(_ -> renew());
    // A label draws its lines so; by other bounds they are lower, and its last one would be cut.
    measure.setBoundsType(TextBoundsType.LOGICAL_VERTICAL_CENTER);
    pieces.setManaged(false);
    pieces.setMouseTransparent(true);
    getChildren().addAll(label, pieces);
    text.addListener(_ -> renew());
  }

  /** With a text. */
  public static WrappedText of(String text, String... styleClasses) {
    var wrapped = new WrappedText(styleClasses);
    wrapped.setText(text);
    return wrapped;
  }

  /** The whole text, however much of it is shown. */
  public StringProperty textProperty() {
    return text;
  }

  public String getText() {
    return text.get();
  }

  /** Shows another text; null is none. */
  public void setText(String next) {
    text.set(next == null ? "" : next);
  }

  /** Shows so many lines at most. */
  public void setMostLines(int lines) {
    mostLines = lines;
    renew();
  }

  /** Gives the label other style classes. */
  public void setStyleClasses(String... styleClasses) {
    label
        .getStyleClass()
        .setAll(Stream.concat(Stream.of("label"), Stream.of(styleClasses)).toList());
  }

  private void renew() {
    broken = new Broken("", 0, 0, List.of());
    label.setAccessibleText(text.get());
    requestLayout();
  }

  private double width(String part) {
    measure.setText(part);
    return Math.ceil(measure.getLayoutBounds().getWidth());
  }

  private double height(int lines) {
    measure.setText("Hg" + "\nHg".repeat(Math.max(1, lines) - 1));
    return measure.getLayoutBounds().getHeight();
  }

  private List<String> lines(double room, int most) {
    if (!broken.text().equals(text.get()) || broken.room() != room || broken.most() != most) {
      measure.setFont(label.getFont());
      broken = new Broken(text.get(), room, most, breaks.of(text.get(), room, most));
    }
    return broken.lines();
  }

  /** What is around the lines from side to side. */
  private double sides() {
    return snappedLeftInset()
        + snappedRightInset()
        + label.snappedLeftInset()
        + label.snappedRightInset();
  }

  private double aboveAndBelow() {
    return snappedTopInset()
        + snappedBottomInset()
        + label.snappedTopInset()
        + label.snappedBottomInset();
  }

  /** Styles come before the layout of a pulse; where they come later, the font asks for another. */
  private void measureByFont() {
    measure.setFont(label.getFont());
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computeMinWidth(double height) {
    measureByFont();
    return sides() + 3 * label.getFont().getSize();
  }

  @Override
  protected double computePrefWidth(double height) {
    measureByFont();
    return text.get().lines().mapToDouble(this::width).max().orElse(0) + 1 + sides();
  }

  @Override
  protected double computeMinHeight(double width) {
    measureByFont();
    return Math.ceil(height(1)) + aboveAndBelow();
  }

  @Override
  protected double computePrefHeight(double width) {
    measureByFont();
    var room = width < 0 ? computePrefWidth(-1) - sides() : width - sides();
    var shown = lines(room, mostLines);
    // Other scripts may be taller than the font's own letters.
    measure.setText(String.join("\n", shown));
    var own = measure.getLayoutBounds().getHeight();
    return Math.ceil(Math.max(own, height(shown.size()))) + aboveAndBelow();
  }

  @Override
  protected double computeMaxWidth(double height) {
    return Double.MAX_VALUE;
  }

  @Override
  public double getBaselineOffset() {
    return snappedTopInset() + label.getBaselineOffset();
  }

  @Override
  protected void layoutChildren() {
    measureByFont();
    var room = getWidth() - sides();
    var high = getHeight() - snappedTopInset() - snappedBottomInset();
    var shown = lines(room, mostLines);
    if (prefHeight(getWidth()) > getHeight() + 1) {
      var one = height(2) - height(1);
      var fitting =
          (int) Math.max(1, 1 + Math.floor((getHeight() - aboveAndBelow() - height(1)) / one));
      shown = lines(room, Math.min(mostLines, fitting));
    }
    label.setText(String.join("\n", shown));
    label.resizeRelocate(
        snappedLeftInset(),
        snappedTopInset(),
        getWidth() - snappedLeftInset() - snappedRightInset(),
        high);
    var cut = !shown.isEmpty() && shown.getLast().endsWith(LineBreaks.MORE);
    label.setTooltip(cut ? new Tooltip(text.get()) : null);
    var visual = shown.stream().anyMatch(VisualOrder::matters);
    label.setOpacity(visual ? 0 : 1);
    pieces.getChildren().clear();
    if (visual) {
      paint(shown, room, high);
    }
  }

  private void paint(List<String> shown, double room, double high) {
    var fromTheRight = VisualOrder.fromTheRight(text.get());
    measure.setText(String.join("\n", shown));
    var block = measure.getLayoutBounds().getHeight();
    var one = block / shown.size();
    var y =
        label.snappedTopInset()
            + Math.max(
                0, (high - label.snappedTopInset() - label.snappedBottomInset() - block) / 2);
    for (var line : shown) {
      var parts = VisualOrder.pieces(line, fromTheRight).stream().map(this::piece).toList();
      var wide = parts.stream().mapToDouble(part -> part.getLayoutBounds().getWidth()).sum();
      var x = label.snappedLeftInset() + (fromTheRight ? Math.max(0, room - wide) : 0);
      for (var part : parts) {
        part.relocate(x, y);
        x += part.getLayoutBounds().getWidth();
      }
      pieces.getChildren().addAll(parts);
      y += one;
    }
    pieces.resizeRelocate(label.getLayoutX(), label.getLayoutY(), label.getWidth(), high);
  }

  private Text piece(String part) {
    var piece = new Text(part);
    piece.setTextOrigin(VPos.TOP);
    piece.fontProperty().bind(label.fontProperty());
    piece.fillProperty().bind(label.textFillProperty());
    piece.underlineProperty().bind(label.underlineProperty());
    return piece;
  }
}
