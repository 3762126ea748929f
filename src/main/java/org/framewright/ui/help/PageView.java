package org.framewright.ui.help;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javafx.geometry.HPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** A page of the guide as it is read. */
final class PageView {
  /** The share of a table's columns goes by their letters, from so few to so many. */
  private static final int NARROW = 9;

  private static final int WIDE = 46;

  private final Path folder;
  private final Texts texts;
  private final UnaryOperator<String> keys;
  private final Consumer<String> follow;
  private final VBox box = new VBox();
  private final Map<String, Node> headings = new HashMap<>();

  /**
   * @param folder of the page's file; pictures are found from there
   * @param follow goes where a link leads
   */
  PageView(GuidePage page, Path folder, Texts texts, Consumer<String> follow) {
    this.folder = folder;
    this.texts = texts;
    this.keys = new KeyWords(texts)::written;
    this.follow = follow;
    box.getStyleClass().add("guide-page");
    page.blocks().forEach(block -> box.getChildren().addAll(nodes(block)));
  }

  VBox node() {
    return box;
  }

  /** The heading of that anchor; the page itself if there is none. */
  Node at(String anchor) {
    return headings.getOrDefault(anchor, box);
  }

  private List<Node> nodes(List<Block> blocks) {
    var nodes = new ArrayList<Node>();
    blocks.forEach(block -> nodes.addAll(nodes(block)));
    return nodes;
  }

  private List<Node> nodes(Block block) {
    return switch (block) {
      case Block.Heading(int level, var anchor, var text) -> {
        var heading = flow(text, "guide-heading", "guide-h" + Math.min(level, 3));
        headings.put(anchor, heading);
        yield List.of(heading);
      }
      case Block.Paragraph(var text) -> List.of(flow(text, "guide-paragraph"));
      case Block.Code(var text) -> List.of(code(text));
      case Block.Items(int from, var items) -> List.of(items(from, items));
      case Block.Quote(var inside) -> {
        var quote = new VBox();
        quote.getChildren().addAll(nodes(inside));
        quote.getStyleClass().add("guide-caution");
        yield List.of(quote);
      }
      case Block.Table(var head, var rows) -> List.of(table(head, rows));
      case Block.Picture(var file, var says) ->
          List.of(
              PagePicture.of(folder.resolve(file).normalize(), says),
              WrappedText.of(says, "quiet", "guide-caption"));
    };
  }

  private FlowText flow(List<Run> text, String... classes) {
    return new FlowText(text, keys, follow, classes);
  }

  private Node code(String text) {
    var lines = new VBox();
    text.lines().forEach(line -> lines.getChildren().add(WrappedText.of(line, "guide-code-line")));
    lines.setMinWidth(0);
    HBox.setHgrow(lines, Priority.ALWAYS);
    var copy = new Button(texts.get("help.copy"));
    copy.getStyleClass().add("guide-copy");
    copy.setMinWidth(Region.USE_PREF_SIZE);
    copy.setAccessibleText(texts.apart(texts.get("help.copy"), text));
    copy.setOnAction(
        _ -> {
          Clipboard.getSystemClipboard().setContent(Map.of(DataFormat.PLAIN_TEXT, text));
          copy.setText(texts.get("help.copied"));
        });
    var code = new HBox(lines, copy);
    code.getStyleClass().add("guide-code-block");
    return code;
  }

  private Node items(int from, List<List<Block>> items) {
    var list = new VBox();
    list.getStyleClass().add("guide-list");
    for (int i = 0; i < items.size(); i++) {
      var sign = new Label(from > 0 ? (from + i) + "." : "\u2022");
      sign.getStyleClass().add("guide-sign");
      sign.setMinWidth(Region.USE_PREF_SIZE);
      var inside = new VBox();
      inside.getChildren().addAll(nodes(items.get(i)));
      inside.getStyleClass().add("guide-item");
      inside.setMinWidth(0);
      HBox.setHgrow(inside, Priority.ALWAYS);
      list.getChildren().add(new HBox(sign, inside));
    }
    return list;
  }

  private Node table(List<List<Run>> head, List<List<List<Run>>> rows) {
    var grid = new GridPane();
    grid.getStyleClass().add("guide-table");
    var shares = new ArrayList<Double>();
    for (int column = 0; column < head.size(); column++) {
      int at = column;
      shares.add(
          rows.stream()
              .filter(row -> at < row.size())
              .mapToDouble(row -> Math.clamp(Run.plain(row.get(at)).length(), NARROW, WIDE))
              .average()
              .orElse(1));
    }
    var all = shares.stream().mapToDouble(Double::doubleValue).sum();
    for (var share : shares) {
      var column = new ColumnConstraints();
      column.setPercentWidth(100 * share / all);
      column.setHalignment(HPos.LEFT);
      column.setFillWidth(true);
      grid.getColumnConstraints().add(column);
    }
    for (int column = 0; column < head.size(); column++) {
      grid.add(flow(head.get(column), "guide-cell", "guide-column"), column, 0);
    }
    for (int row = 0; row < rows.size(); row++) {
      for (int column = 0; column < Math.min(head.size(), rows.get(row).size()); column++) {
        grid.add(flow(rows.get(row).get(column), "guide-cell"), column, row + 1);
      }
    }
    return grid;
  }
}
