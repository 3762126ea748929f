package org.framewright.ui.renaming;

import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import javafx.util.Subscription;
import org.framewright.ui.look.Texts;

/** The plan of new names as a table, old to new. */
final class PlanTable extends TableView<PlanLine> {
  private static final double LINE_HEIGHT = 32;

  private final Texts texts;
  private final TextField sized;
  private final Subscription following;

  /**
   * @param sized a control of the page, which has the page's size of letters
   */
  PlanTable(RenamesModel model, Texts texts, TextField sized) {
    this.texts = texts;
    this.sized = sized;
    setId("plan");
    setFixedCellSize(LINE_HEIGHT);
    setItems(model.lines());
    setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_FLEX_LAST_COLUMN);
    setPlaceholder(new Label(texts.get("renaming.noLines")));
    setAccessibleText(texts.get("renaming.plan"));
    var from = column("renaming.column.from", 170, PlanLine::from, () -> new NameCell("from"));
    var way = column("renaming.column.way", 44, line -> line, MarkCell::new);
    var to = column("renaming.column.to", 290, PlanLine::to, () -> new NameCell("to"));
    var files =
        column("renaming.column.files", 130, PlanLine::together, () -> new NameCell("endings"));
    var state = column("renaming.column.state", 170, line -> line, StateCell::new);
    from.getStyleClass().add("from");
    way.setMinWidth(way.getPrefWidth());
    getColumns().setAll(List.of(from, way, to, files, state));
    Runnable fit =
        () -> {
          var longest = model.widest().get();
          fit(from, longest.from(), 0.25);
          fit(to, longest.to(), 0.5);
          fit(files, longest.endings(), 0.25);
        };
    following =
        Subscription.combine(
            model.widest().subscribe(fit),
            widthProperty().subscribe(fit),
            sized.fontProperty().subscribe(fit));
  }

  void dispose() {
    following.unsubscribe();
  }

  private <T> TableColumn<PlanLine, T> column(
      String title,
      double width,
      Function<PlanLine, T> value,
      Supplier<TableCell<PlanLine, T>> cell) {
    var column = new TableColumn<PlanLine, T>(texts.get(title));
    column.setPrefWidth(width);
    column.setCellValueFactory(
        line -> new ReadOnlyObjectWrapper<>(value.apply(line.getValue())).getReadOnlyProperty());
    column.setCellFactory(_ -> cell.get());
    column.setSortable(false);
    column.setReorderable(false);
    return column;
  }

  /** A column of names has room for its longest text, up to a share of the table's width. */
  private void fit(TableColumn<PlanLine, ?> column, String longest, double share) {
    var size = sized.getFont().getSize();
    var text = new Text(longest + "MM");
    text.setFont(Font.font("Source Code Pro", FontWeight.NORMAL, size));
    var room = Math.ceil(text.getLayoutBounds().getWidth());
    var least = Math.max(4 * size, Math.min(room, share * getWidth()));
    column.setMinWidth(least);
    column.setPrefWidth(least);
  }

  /** The mark between the name now and the name to be. */
  private static final class MarkCell extends TableCell<PlanLine, PlanLine> {
    private final StatusMark mark = new StatusMark();

    MarkCell() {
      getStyleClass().add("mark-cell");
    }

    @Override
    protected void updateItem(PlanLine line, boolean empty) {
      super.updateItem(line, empty);
      setGraphic(empty || line == null ? null : mark);
      if (line != null) {
        mark.show(line.state());
      }
    }
  }

  /** The state's word, and why it is so. */
  private final class StateCell extends TableCell<PlanLine, PlanLine> {
    StateCell() {
      getStyleClass().add("state-cell");
    }

    @Override
    protected void updateItem(PlanLine line, boolean empty) {
      super.updateItem(line, empty);
      getStyleClass().removeAll("blocked", "no-name", "skipped");
      if (empty || line == null) {
        setText("");
        return;
      }
      var word = line.state().word(texts);
      setText(line.why().isEmpty() ? word : texts.get("renaming.because", word, line.why()));
      getStyleClass().add(line.state().word());
    }
  }

  private static final class NameCell extends TableCell<PlanLine, String> {
    NameCell(String styleClass) {
      getStyleClass().addAll("name-cell", styleClass);
      setTextOverrun(
          styleClass.equals("from") ? OverrunStyle.LEADING_ELLIPSIS : OverrunStyle.CENTER_ELLIPSIS);
    }

    @Override
    protected void updateItem(String text, boolean empty) {
      super.updateItem(text, empty);
      setText(empty || text == null ? "" : text);
    }
  }
}
