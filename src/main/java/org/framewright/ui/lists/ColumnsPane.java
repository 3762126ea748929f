package org.framewright.ui.lists;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javafx.geometry.Insets;
import javafx.geometry.Orientation;
import javafx.geometry.Side;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.RadioMenuItem;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/**
 * The columns of the file, one a line, so that 30 of them need no scrolling sideways: a menu says
 * what each is. The first lines of the file stand beside, turned by a quarter.
 */
final class ColumnsPane extends VBox {
  /** So many lines are always shown, more where there is room. */
  private static final int FEWEST_LINES = 5;

  private static final int MOST_LINES = 10;

  /** What a heading, its menu and the scroll bar take, and what a cell should have, in ems. */
  private static final double BEFORE_CELLS_EMS = 26;

  private static final double CELL_EMS = 8;

  /** A heading of two lines fits. */
  private static final double ROW_EMS = 3.2;

  /** The size of the title's letters, as the style sheet has it. */
  private static final double TITLE_EMS = 1.1;

  private final ListModel model;
  private final Texts texts;
  private final Runnable menuGone;
  private final Label title = new Label();
  private final ColumnRow words;
  private final ListView<ColumnLine> list = new ListView<>();
  private final WrappedText says = new WrappedText("says");
  private int shownLines = FEWEST_LINES;

  /**
   * @param menuGone runs when a menu is closed, whatever came of it
   */
  ColumnsPane(ListModel model, Texts texts, Runnable menuGone) {
    this.model = model;
    this.texts = texts;
    this.menuGone = menuGone;
    title.setText(texts.get("lists.columns"));
    title.getStyleClass().add("part-title");
    var use = new Label(texts.get("lists.column.use"));
    use.getStyleClass().addAll("column-use", "column-word");
    words = new ColumnRow(use);
    words.getStyleClass().add("column-words");
    list.setId("columns");
    list.setCellFactory(_ -> new ColumnCell());
    list.setAccessibleText(texts.get("lists.columns"));
    list.setPlaceholder(new Label(texts.get("lists.noColumns")));
    list.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    list.getSelectionModel().selectedItemProperty().addListener((_, _, now) -> says(now));
    VBox.setVgrow(list, Priority.ALWAYS);
    says.setMostLines(2);
    says.getStyleClass().add("says-line");
    getStyleClass().add("columns-part");
    setMinWidth(0);
    getChildren().addAll(title, words, list, says);
    list.skinProperty().addListener(_ -> followBar());
  }

  @Override
  protected void layoutChildren() {
    fit();
    super.layoutChildren();
  }

  ListView<ColumnLine> list() {
    return list;
  }

  /** The title is said elsewhere where the parts lie one behind the other. */
  void showTitle(boolean shown) {
    title.setVisible(shown);
    title.setManaged(shown);
  }

  /** The words stand above their cells, with the list's bar for scrolling or without. */
  private void followBar() {
    for (var bar : list.lookupAll(".scroll-bar")) {
      if (bar instanceof ScrollBar scroll && scroll.getOrientation() == Orientation.VERTICAL) {
        bar.visibleProperty().subscribe(shown -> besideBar(shown ? scroll.prefWidth(-1) : 0));
      }
    }
  }

  private void besideBar(double width) {
    VBox.setMargin(words, new Insets(0, width, 0, 0));
  }

  /** As many lines of the file as there is room for. */
  private void fit() {
    var em = title.getFont().getSize() / TITLE_EMS;
    // Lines of one height need not be measured.
    list.setFixedCellSize(Math.ceil(ROW_EMS * em));
    int fitting = (int) ((getWidth() / em - BEFORE_CELLS_EMS) / CELL_EMS);
    int now = Math.clamp(fitting, FEWEST_LINES, MOST_LINES);
    if (now != shownLines) {
      shownLines = now;
      show();
      list.refresh();
    }
  }

  /** Shows the columns as they are now. */
  void show() {
    var numbers = model.looked().get().lineNumbers();
    words.show(
        texts.get("lists.column.heading"),
        numbers.stream()
            .limit(shownLines)
            .map(number -> texts.get("lists.column.line", String.valueOf(number)))
            .toList(),
        shownLines);
    var lines = model.columns();
    if (!list.getItems().equals(lines)) {
      var chosen = Math.max(0, list.getSelectionModel().getSelectedIndex());
      if (list.getItems().size() == lines.size()) {
        for (int i = 0; i < lines.size(); i++) {
          if (!list.getItems().get(i).equals(lines.get(i))) {
            list.getItems().set(i, lines.get(i));
          }
        }
      } else {
        list.getItems().setAll(lines);
      }
      if (!lines.isEmpty()) {
        list.getSelectionModel().select(Math.min(chosen, lines.size() - 1));
      }
    }
    says(list.getSelectionModel().getSelectedItem());
  }

  private void says(ColumnLine line) {
    says.setText(
        line == null
            ? ""
            : texts.get(
                "lists.says",
                line.heading(),
                String.join(
                    " · ", line.cells().stream().filter(cell -> !cell.isBlank()).toList())));
  }

  private void key(KeyEvent event) {
    var opens =
        event.getCode() == KeyCode.ENTER
            || event.getCode() == KeyCode.SPACE
            || event.getCode() == KeyCode.RIGHT;
    if (opens && !event.isShortcutDown() && !event.isAltDown()) {
      chosenCell().ifPresent(ColumnCell::open);
      event.consume();
    }
  }

  private Optional<ColumnCell> chosenCell() {
    return list.lookupAll(".list-cell").stream()
        .filter(ColumnCell.class::isInstance)
        .map(ColumnCell.class::cast)
        .filter(cell -> cell.isSelected() && cell.getItem() != null)
        .findFirst();
  }

  private List<MenuItem> items(int place, ColumnLine line) {
    var items = new ArrayList<MenuItem>();
    Use.Group group = null;
    for (var use : model.uses()) {
      if (group != null && group != use.group()) {
        items.add(new SeparatorMenuItem());
      }
      group = use.group();
      var item = new RadioMenuItem(use.words());
      item.setMnemonicParsing(false);
      item.setSelected(use.id().equals(line.use()));
      item.setOnAction(_ -> model.heading(place).ifPresent(name -> model.choose(name, use)));
      items.add(item);
    }
    if (line.chosen()) {
      items.add(new SeparatorMenuItem());
      var found = new MenuItem(texts.get("lists.column.found"));
      found.setOnAction(_ -> model.heading(place).ifPresent(model::letBeFound));
      items.add(found);
    }
    return items;
  }

  private final class ColumnCell extends LineCell<ColumnLine> {
    private final MenuButton menu = new MenuButton();
    private final ColumnRow row = new ColumnRow(menu);

    ColumnCell() {
      menu.getStyleClass().add("column-use");
      menu.setFocusTraversable(false);
      menu.setMnemonicParsing(false);
      menu.setPopupSide(Side.BOTTOM);
      // Made when it is looked at: a list may have a thousand columns.
      menu.getItems().setAll(new MenuItem());
      menu.setOnShowing(_ -> fill());
      menu.setOnHidden(
          _ -> {
            menuGone.run();
            list.requestFocus();
          });
      setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
    }

    private void fill() {
      if (getItem() != null) {
        list.getSelectionModel().select(getIndex());
        menu.getItems().setAll(items(getIndex(), getItem()));
      }
    }

    void open() {
      menu.show();
    }

    @Override
    protected void showLine(ColumnLine line) {
      row.show(line.heading(), line.cells(), shownLines);
      menu.setText(line.words());
      menu.getStyleClass().removeAll("chosen", "needless");
      if (line.chosen()) {
        menu.getStyleClass().add("chosen");
      }
      if (List.of("kept", "unused", "from-job").contains(line.use())) {
        menu.getStyleClass().add("needless");
      }
      if (!Objects.equals(getGraphic(), row)) {
        setGraphic(row);
      }
      var use = line.chosen() ? texts.get("lists.column.chosen", line.words()) : line.words();
      setAccessibleText(
          texts.get(
              "lists.column.spoken",
              line.heading(),
              use,
              texts.apart(line.cells().toArray(String[]::new))));
    }
  }
}
