package org.framewright.ui.frames;

import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.skin.VirtualFlow;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.controlsfx.control.GridView;
import org.framewright.frames.Place;
import org.framewright.ui.Desk;
import org.framewright.ui.DialogSpec;
import org.framewright.ui.Screen;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;

/** The page of frames: what the job has, under the headings of its list. */
public final class FramesScreen implements Screen {
  /** The longest edge of a picture in the grid, in pixels. */
  static final int EDGE = 320;

  private static final int CLOSE_EDGE = 1600;
  private static final double HEADING_HEIGHT = 38;
  private static final double GAP = 10;
  private static final double SCROLL_BAR = 20;
  private static final double[] SIZES = {128, 176, 256};
  private static final String SIZE = "frames.size";
  private static final String HAND_OFF_PLACE = "handoff.place";

  private final Desk desk;
  private final Texts texts;
  private final FramePictures pictures;
  private final FramesModel model;
  private final HandOffModel handOff;

  private final HBox node = new HBox();
  private final ListView<Heading> headings = new ListView<>();
  private final GridView<Tile> grid = new GridView<>();
  private final TextField filter = new TextField();
  private final Label title = new Label();
  private final Label chosen = new Label();
  private final Button handOffButton = new Button();
  private double wished = SIZES[1];

  /**
   * @param pictures where the frames' pictures come from
   */
  public FramesScreen(Desk desk, JobSession session, FramePictures pictures) {
    this.desk = desk;
    this.texts = desk.texts();
    this.pictures = pictures;
    this.model =
        new FramesModel(
            session, desk.tasks(), texts, () -> System.getProperty("user.name", ""), desk::trouble);
    this.handOff = new HandOffModel(session, desk.tasks(), texts, desk::trouble);
    handOff.startAt(desk.preferences().get(HAND_OFF_PLACE));
    node.getStyleClass().add("frames");
    node.getChildren().addAll(prints(), sheet());
    model.heading().addListener(_ -> showHeading());
    model.choice().chosen().addListener(_ -> showChosen());
    model.choice().cursor().addListener(_ -> reveal());
    model.group().addListener(_ -> showHandOff());
    headings
        .getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (_, _, now) -> {
              if (now != null) {
                model.heading().set(now);
              }
            });
    showHeading();
    showChosen();
    showHandOff();
    size(desk.preferences().number(SIZE, SIZES[1]));
  }

  private Region prints() {
    title.getStyleClass().add("grid-title");
    title.setMinWidth(0);
    title.setMaxWidth(Double.MAX_VALUE);

    grid.setId("grid");
    grid.setItems(model.tiles());
    grid.setCellFactory(_ -> tile());
    grid.setHorizontalCellSpacing(GAP / 2);
    grid.setVerticalCellSpacing(GAP / 2);
    grid.widthProperty().addListener(_ -> spread());
    grid.setFocusTraversable(true);
    grid.setAccessibleRole(AccessibleRole.LIST_VIEW);
    grid.setAccessibleText(texts.get("frames.grid"));
    grid.addEventFilter(KeyEvent.KEY_PRESSED, this::walk);
    var empty = new Label(texts.get("frames.none"));
    empty.getStyleClass().add("quiet");
    empty.setWrapText(true);
    empty.visibleProperty().bind(Bindings.isEmpty(model.tiles()));
    var paper = new StackPane(grid, empty);
    VBox.setVgrow(paper, Priority.ALWAYS);

    chosen.getStyleClass().add("quiet");
    chosen.setId("chosen");
    var keys = new Label(texts.get("frames.keys"));
    keys.getStyleClass().add("quiet");
    keys.setMinWidth(0);
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    chosen.setMinWidth(Region.USE_PREF_SIZE);
    var foot = new HBox(chosen, gap, keys);
    foot.getStyleClass().add("in-line");

    var column = new VBox(title, paper, foot);
    column.getStyleClass().add("grid-column");
    HBox.setHgrow(column, Priority.ALWAYS);
    return column;
  }

  /** The paper beside the pictures, where it also lies on the page of the list. */
  private Region sheet() {
    filter.setId("filter");
    filter.setPromptText(texts.get("frames.filter"));
    filter.setAccessibleText(texts.get("frames.filter"));
    filter.textProperty().bindBidirectional(model.filter());
    headings.setId("headings");
    headings.setItems(model.headings());
    headings.setFixedCellSize(HEADING_HEIGHT);
    headings.setCellFactory(_ -> new HeadingCell());
    headings.setAccessibleText(texts.get("frames.headings"));
    VBox.setVgrow(headings, Priority.ALWAYS);
    handOffButton.setId("hand-off");
    handOffButton.getStyleClass().add("does-it");
    handOffButton.setMaxWidth(Double.MAX_VALUE);
    handOffButton.setOnAction(_ -> askHandOff());
    var column = new VBox(filter, headings, handOffButton);
    column.getStyleClass().add("headings-sheet");
    return column;
  }

  private TileCell tile() {
    var cell = new TileCell(pictures, texts, model.choice());
    cell.addEventHandler(MouseEvent.MOUSE_CLICKED, event -> clicked(event, cell));
    return cell;
  }

  private void clicked(MouseEvent event, TileCell cell) {
    if (event.getButton() != MouseButton.PRIMARY || cell.getItem() == null) {
      return;
    }
    grid.requestFocus();
    var at = cell.getIndex();
    if (event.isShiftDown()) {
      model.choice().stretch(at);
    } else if (event.isShortcutDown()) {
      model.choice().toggle(at);
    } else {
      model.choice().go(at);
    }
    if (event.getClickCount() == 2) {
      lookCloser();
    }
  }

  /** As many columns as tiles of the wished width fit in, beside the scroll bar. */
  private int columns() {
    return Math.max(1, (int) Math.floor((grid.getWidth() - SCROLL_BAR) / (wished + GAP)));
  }

  /** The tiles share the width, so that no strip of table is left beside them. */
  private void spread() {
    if (grid.getWidth() > 0) {
      // A little less, so that rounding never costs the last column.
      var width = Math.floor((grid.getWidth() - SCROLL_BAR) / columns() - GAP) - 1;
      grid.setCellWidth(width);
      grid.setCellHeight(width * 0.8 + 26);
    }
  }

  private int rows() {
    var height = grid.getCellHeight() + 2 * grid.getVerticalCellSpacing();
    return Math.max(1, (int) Math.floor(grid.getHeight() / height));
  }

  private void walk(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    var at = model.choice().cursor().get();
    var to =
        switch (event.getCode()) {
          case LEFT -> at - 1;
          case RIGHT -> at + 1;
          case UP -> at - columns() < 0 ? at : at - columns();
          case DOWN -> at + columns();
          case PAGE_UP -> at - columns() * rows();
          case PAGE_DOWN -> at + columns() * rows();
          case HOME -> 0;
          case END -> model.tiles().size() - 1;
          default -> Integer.MIN_VALUE;
        };
    if (to == Integer.MIN_VALUE) {
      return;
    }
    if (event.isShiftDown()) {
      model.choice().stretch(to);
    } else {
      model.choice().go(to);
    }
    event.consume();
  }

  /** Scrolls so that the keys' tile is in sight. */
  private void reveal() {
    var at = model.choice().cursor().get();
    if (at >= 0 && grid.lookup(".virtual-flow") instanceof VirtualFlow<?> flow) {
      var row = at / columns();
      var first = flow.getFirstVisibleCell();
      var last = flow.getLastVisibleCell();
      if (first == null || last == null) {
        return;
      }
      if (row <= first.getIndex()) {
        flow.scrollTo(row);
      } else if (row >= last.getIndex()) {
        flow.scrollTo(Math.max(0, row - (last.getIndex() - first.getIndex()) + 1));
      }
    }
  }

  private void size(double width) {
    wished = width;
    spread();
    desk.preferences().put(SIZE, width);
  }

  private void showHeading() {
    var heading = model.heading().get();
    if (heading == null) {
      return;
    }
    if (!heading.equals(headings.getSelectionModel().getSelectedItem())) {
      headings.getSelectionModel().select(heading);
      headings.scrollTo(Math.max(0, headings.getSelectionModel().getSelectedIndex() - 4));
    }
    title.setText(
        switch (heading.kind()) {
          case ALL -> texts.get("frames.titleAll", heading.frames(), heading.selects());
          case SELECTS -> texts.get("frames.titleSelects", heading.frames());
          case UNASSIGNED -> texts.get("frames.titleUnassigned", heading.frames());
          case SETUP, VIEW ->
              texts.get(
                  "frames.titleSetup",
                  heading.place().map(TileCell::shortly).orElse(""),
                  heading.title(),
                  heading.frames(),
                  heading.selects());
        });
  }

  private void showChosen() {
    chosen.setText(texts.get("frames.chosen", model.choice().chosen().get().size()));
  }

  private void showHandOff() {
    var selects = model.group().get().headings().getFirst().selects();
    handOffButton.setText(texts.get("frames.handOff", selects));
    handOffButton.setDisable(selects == 0);
    showHeading();
  }

  private void askMove() {
    var count = model.choice().chosen().get().size();
    if (count == 0) {
      return;
    }
    var dialog = new MoveDialog(model, texts);
    desk.dialogs()
        .show(
            DialogSpec.asking(
                texts.get("frames.moveTitle", count),
                dialog.node(),
                dialog.focus(),
                texts.get("frames.move", count),
                dialog.ready(),
                dialog::move));
  }

  private void askHandOff() {
    handOff.prepare(
        () -> {
          var plan = handOff.plan().get().orElseThrow();
          var dialog = new HandOffDialog(handOff, plan, desk);
          var title = texts.get("frames.handOffTitle");
          desk.dialogs()
              .show(
                  plan.selects().isEmpty()
                      ? DialogSpec.telling(title, dialog.node(), dialog.node())
                      : DialogSpec.asking(
                          title,
                          dialog.node(),
                          dialog.focus(),
                          texts.get("frames.handOffDo", plan.selects().size(), plan.files()),
                          handOff.ready(),
                          this::deliver));
        });
  }

  private void deliver() {
    Optional.ofNullable(handOff.place().get())
        .ifPresent(place -> desk.preferences().put(HAND_OFF_PLACE, place.toString()));
    handOff.deliver(
        told -> {
          if (told.done()) {
            desk.tell(told.what());
          } else {
            var what = new Label(told.what());
            what.setWrapText(true);
            var remedy = new Label(told.remedy());
            remedy.setWrapText(true);
            var body = new VBox(what, remedy);
            desk.dialogs().show(DialogSpec.telling(texts.get("frames.handOffNot"), body, body));
          }
        });
  }

  private void lookCloser() {
    model
        .current()
        .ifPresent(
            tile -> {
              var view = new ImageView();
              view.setPreserveRatio(true);
              view.fitWidthProperty().bind(node.widthProperty().multiply(0.85));
              view.fitHeightProperty().bind(node.heightProperty().multiply(0.75));
              pictures.show(tile.frame(), CLOSE_EDGE, view);
              var print = new StackPane(view);
              print.setMinSize(240, 160);
              desk.dialogs()
                  .show(
                      DialogSpec.telling(
                          tile.frame().stem()
                              + tile.place().map(p -> "  ·  " + TileCell.shortly(p)).orElse(""),
                          print,
                          print));
            });
  }

  @Override
  public String id() {
    return "frames";
  }

  @Override
  public String title() {
    return texts.get("frames.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return grid;
  }

  @Override
  public List<Command> commands() {
    return List.of(
        command("select", KeyCode.S, model::toggleSelect),
        command("move", KeyCode.M, this::askMove),
        command("takeBack", KeyCode.BACK_SPACE, model::takeBackMove),
        command("handOff", KeyCode.H, this::askHandOff),
        command("closer", KeyCode.ENTER, this::lookCloser),
        command("find", KeyCode.SLASH, filter::requestFocus),
        command("grid", KeyCode.ESCAPE, grid::requestFocus),
        Command.of("frames.all", text("all"), Keys.shortcut(KeyCode.A), () -> model.choice().all()),
        Command.of(
            "frames.nextHeading",
            text("nextHeading"),
            Keys.alt(KeyCode.DOWN),
            () -> model.turnHeading(1)),
        Command.of(
            "frames.headingBefore",
            text("headingBefore"),
            Keys.alt(KeyCode.UP),
            () -> model.turnHeading(-1)),
        command("small", KeyCode.DIGIT1, () -> size(SIZES[0])),
        command("middle", KeyCode.DIGIT2, () -> size(SIZES[1])),
        command("large", KeyCode.DIGIT3, () -> size(SIZES[2])));
  }

  private Command command(String id, KeyCode key, Runnable action) {
    return Command.of("frames." + id, text(id), Keys.plain(key), action);
  }

  private String text(String id) {
    return texts.get("command.frames." + id);
  }

  @Override
  public void onShown() {
    model.follow();
  }

  @Override
  public void onHidden() {
    model.pause();
  }

  @Override
  public void dispose() {
    model.dispose();
    filter.textProperty().unbindBidirectional(model.filter());
  }

  /** A heading: what it gathers, how many frames there are, and how many of them are selects. */
  private final class HeadingCell extends ListCell<Heading> {
    private final Label what = new Label();
    private final Label more = new Label();
    private final Label count = new Label();
    private final HBox box;

    HeadingCell() {
      what.getStyleClass().add("heading-what");
      what.setMinWidth(Region.USE_PREF_SIZE);
      more.getStyleClass().add("heading-more");
      more.setMinWidth(0);
      more.setMaxWidth(Double.MAX_VALUE);
      HBox.setHgrow(more, Priority.ALWAYS);
      count.getStyleClass().add("heading-count");
      count.setMinWidth(Region.USE_PREF_SIZE);
      box = new HBox(what, more, count);
      box.getStyleClass().add("heading-row");
      box.setMinWidth(0);
      box.setPrefWidth(1);
    }

    @Override
    protected void updateItem(Heading heading, boolean empty) {
      super.updateItem(heading, empty);
      getStyleClass().removeAll("view", "unassigned");
      if (empty || heading == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      what.setText(
          switch (heading.kind()) {
            case ALL -> texts.get("frames.all");
            case SELECTS -> texts.get("frames.selects");
            case UNASSIGNED -> texts.get("frames.unassigned");
            case SETUP -> heading.place().map(Place::setup).orElse("");
            case VIEW -> heading.place().flatMap(Place::view).orElse(texts.get("frames.noView"));
          });
      more.setText(
          switch (heading.kind()) {
            case SETUP -> heading.title();
            case VIEW -> heading.place().flatMap(Place::view).map(model::meaning).orElse("");
            case ALL, SELECTS, UNASSIGNED -> "";
          });
      count.setText(
          heading.selects() > 0 && heading.kind() != Heading.Kind.SELECTS
              ? texts.get("frames.countOf", heading.selects(), heading.frames())
              : String.valueOf(heading.frames()));
      switch (heading.kind()) {
        case VIEW -> getStyleClass().add("view");
        case UNASSIGNED -> getStyleClass().add("unassigned");
        case ALL, SELECTS, SETUP -> {}
      }
      setGraphic(box);
      setAccessibleText(
          texts.get(
              "frames.headingTold",
              what.getText() + " " + more.getText(),
              heading.frames(),
              heading.selects()));
    }
  }
}
