package org.framewright.ui.naming;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javafx.beans.InvalidationListener;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.TextArea;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.paint.Paint;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import org.framewright.naming.Finding;
import org.framewright.naming.Severity;

/**
 * The margin of the text: line numbers, and at a line with a finding a stroke as heavy as the
 * finding. It follows the text area's own text, wherever that scrolls.
 */
final class Gutter extends Pane {
  private static final double WIDTH = 56;

  private final TextArea area;
  private final Canvas canvas = new Canvas(WIDTH, 1);
  private final Map<Integer, Severity> marks = new TreeMap<>();
  private final InvalidationListener redraw = _ -> requestLayout();
  private final Styled ink = new Styled("gutter-ink");
  private final Styled needs = new Styled("gutter-needs");
  private Text text;

  /** Carries a colour of the stylesheet to the canvas. */
  private static final class Styled extends Text {
    Styled(String styleClass) {
      super("0");
      getStyleClass().setAll(styleClass);
      setVisible(false);
      setManaged(false);
    }

    Color color() {
      return getFill() instanceof Color color ? color : Color.BLACK;
    }
  }

  Gutter(TextArea area) {
    this.area = area;
    getStyleClass().add("gutter");
    setMinWidth(WIDTH);
    setPrefWidth(WIDTH);
    setMaxWidth(WIDTH);
    setMinHeight(0);
    getChildren().addAll(canvas, ink, needs);
    setAccessibleText("");
    area.scrollTopProperty().addListener(redraw);
    area.textProperty().addListener(redraw);
    area.heightProperty().addListener(redraw);
    ink.fillProperty().addListener(redraw);
    area.fontProperty().addListener(redraw);
  }

  /** Marks the lines of findings; the heaviest of a line counts. */
  void mark(List<Finding> findings) {
    marks.clear();
    for (var finding : findings) {
      if (finding.line() > 0) {
        marks.merge(finding.line(), finding.severity(), (a, b) -> a.compareTo(b) <= 0 ? a : b);
      }
    }
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    canvas.setHeight(getHeight());
    var pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, WIDTH, getHeight());
    if (text == null) {
      text = (Text) area.lookup(".content .text");
    }
    if (text == null || area.getText() == null) {
      return;
    }
    var lines = Math.max(1, area.getParagraphs().size());
    var height = text.getLayoutBounds().getHeight() / lines;
    var top = sceneToLocal(text.localToScene(0, text.getLayoutBounds().getMinY())).getY();
    pen.setFont(area.getFont());
    pen.setTextAlign(TextAlignment.RIGHT);
    pen.setTextBaseline(VPos.CENTER);
    var first = (int) Math.max(0, Math.floor(-top / height));
    for (var line = first; line < lines && top + line * height < getHeight(); line++) {
      var middle = top + (line + 0.5) * height;
      var severity = marks.get(line + 1);
      var paint = severity == Severity.ERROR ? needs.color() : ink.color();
      pen.setFill(paint);
      pen.fillText(String.valueOf(line + 1), WIDTH - 18, middle);
      if (severity != null) {
        stroke(paint, severity, middle, height);
      }
    }
  }

  private void stroke(Paint paint, Severity severity, double middle, double height) {
    var pen = canvas.getGraphicsContext2D();
    pen.setFill(paint);
    var half = height * 0.42;
    switch (severity) {
      case ERROR -> pen.fillRect(WIDTH - 11, middle - half, 7, 2 * half);
      case WARNING -> {
        pen.fillRect(WIDTH - 10, middle - half, 4, half * 0.7);
        pen.fillRect(WIDTH - 10, middle + half * 0.3, 4, half * 0.7);
      }
      case NOTE -> pen.fillRect(WIDTH - 9, middle - half, 2, 2 * half);
    }
  }

  void dispose() {
    area.scrollTopProperty().removeListener(redraw);
    area.textProperty().removeListener(redraw);
    area.heightProperty().removeListener(redraw);
    area.fontProperty().removeListener(redraw);
  }
}
