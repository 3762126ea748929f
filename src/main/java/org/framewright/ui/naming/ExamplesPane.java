package org.framewright.ui.naming;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import javafx.util.Subscription;
import org.framewright.base.PlainText;
import org.framewright.naming.Proposal;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/**
 * The names taken apart, one below the other: a menu over each column, and at a name that is not
 * read back, where it begins to differ and why.
 */
final class ExamplesPane extends ScrollPane {
  /** Of a column, in widths of the page's letters; what is longer ends in dots. */
  private static final double NARROWEST = 8.4;

  private static final double WIDEST = 24;

  private final ProposalModel model;
  private final Texts texts;
  private final VBox content;

  /** Has the size of the page's letters. */
  private final Label sized = new Label();

  private final Text measure = new Text();
  private final HBox heads = new HBox();
  private final ListView<Proposal.Example> names = new ListView<>();
  private final List<PieceHead> shownHeads = new ArrayList<>();
  private final Subscription following;
  private List<Double> widths = List.of();

  ExamplesPane(ProposalModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    names.setId("examples");
    names.setItems(model.rows());
    names.setCellFactory(_ -> new ExampleCell());
    names.setAccessibleText(texts.get("proposal.examples"));
    names.setPlaceholder(WrappedText.of(texts.get("proposal.noNames"), "no-names"));
    heads.getStyleClass().add("piece-heads");
    VBox.setVgrow(names, Priority.ALWAYS);
    sized.setVisible(false);
    sized.setManaged(false);
    content = new VBox(heads, names, sized);
    content.getStyleClass().add("taken-apart");
    setContent(content);
    following = sized.fontProperty().subscribe(_ -> fit(model.proposed().get()));
    setFitToHeight(true);
    setFitToWidth(true);
    setFocusTraversable(false);
    setVbarPolicy(ScrollBarPolicy.NEVER);
    getStyleClass().addAll("paper-sheet", "examples-sheet");
  }

  ListView<Proposal.Example> names() {
    return names;
  }

  /** The menu over the first column, if there is one. */
  void goToPieces() {
    shownHeads.stream().findFirst().ifPresent(head -> head.menu().requestFocus());
  }

  void show(Proposed now) {
    while (shownHeads.size() > now.columns().size()) {
      shownHeads.removeLast();
    }
    while (shownHeads.size() < now.columns().size()) {
      shownHeads.add(new PieceHead(shownHeads.size() + 1, texts, model::say));
    }
    for (int i = 0; i < shownHeads.size(); i++) {
      shownHeads.get(i).show(now.columns().get(i));
    }
    if (!heads.getChildren().equals(shownHeads)) {
      heads.getChildren().setAll(shownHeads);
    }
    fit(now);
  }

  /** Columns are as wide as their texts; again when the page's letters have another size. */
  private void fit(Proposed now) {
    if (now.columns().size() != shownHeads.size()) {
      return;
    }
    double letter = sized.getFont().getSize();
    measure.setFont(Font.font("monospace", FontWeight.BOLD, letter));
    widths = now.columns().stream().map(column -> width(column.widest(), letter)).toList();
    for (int i = 0; i < widths.size(); i++) {
      var head = shownHeads.get(i);
      head.setMinWidth(widths.get(i));
      head.setPrefWidth(widths.get(i));
      head.setMaxWidth(widths.get(i));
    }
    content.setMinWidth(widths.stream().mapToDouble(Double::doubleValue).sum() + 2 * letter);
    names.refresh();
  }

  private double width(String text, double letter) {
    measure.setText(PlainText.line(text));
    return Math.clamp(
        Math.ceil(measure.getLayoutBounds().getWidth() + letter),
        NARROWEST * letter,
        WIDEST * letter);
  }

  void dispose() {
    following.unsubscribe();
    names.setItems(null);
  }

  /** A name in its columns, or as it stands with where it differs. */
  private final class ExampleCell extends ListCell<Proposal.Example> {
    private final Region stroke = new Region();
    private final HBox pieces = new HBox();
    private final WrappedText why = new WrappedText("why");
    private final VBox said = new VBox(pieces, why);
    private final HBox line = new HBox(stroke, said);

    ExampleCell() {
      stroke.getStyleClass().add("stroke");
      pieces.getStyleClass().add("pieces");
      why.setMostLines(3);
      why.managedProperty().bind(why.visibleProperty());
      said.setMinWidth(0);
      HBox.setHgrow(said, Priority.ALWAYS);
      line.setPrefWidth(1);
      line.setMinWidth(0);
    }

    @Override
    protected double computePrefHeight(double width) {
      return getGraphic() == null
          ? super.computePrefHeight(width)
          : snappedTopInset() + snappedBottomInset() + line.prefHeight(width);
    }

    @Override
    protected void updateItem(Proposal.Example example, boolean empty) {
      super.updateItem(example, empty);
      pieces.getChildren().clear();
      if (empty || example == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      var unread = example.unread();
      line.getStyleClass().setAll("finding", unread.isPresent() ? "error" : "read");
      if (example.texts().size() == widths.size()) {
        columns(example);
      } else {
        whole(example);
      }
      why.setVisible(unread.isPresent());
      why.setText(
          unread.map(it -> texts.get("proposal.doesNotFit", texts.say(it.said()))).orElse(""));
      setGraphic(line);
      setAccessibleText(texts.apart(example.name(), why.getText()));
    }

    private void columns(Proposal.Example example) {
      var columns = model.proposed().get().columns();
      for (int i = 0; i < widths.size() && i < columns.size(); i++) {
        var text = example.texts().get(i);
        var before = text.isPresent() && i > 0 ? columns.get(i).piece().before() : "";
        var piece = new HBox(text(before, "between"), text(text.orElse("–"), "value"));
        piece.setMinWidth(widths.get(i));
        piece.setPrefWidth(widths.get(i));
        piece.setMaxWidth(widths.get(i));
        pieces.getChildren().add(piece);
      }
    }

    private void whole(Proposal.Example example) {
      int at = example.unread().map(it -> it.at().orElse(0)).orElse(example.name().length());
      at = Math.clamp(at, 0, example.name().length());
      pieces
          .getChildren()
          .setAll(
              text(example.name().substring(0, at), "value"),
              text(example.name().substring(at), "differs"));
    }

    private static Label text(String text, String styleClass) {
      var label = new Label(PlainText.line(text));
      label.getStyleClass().addAll("code", styleClass);
      label.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
      if (styleClass.equals("between")) {
        label.setMinWidth(USE_PREF_SIZE);
      }
      return label;
    }
  }
}
