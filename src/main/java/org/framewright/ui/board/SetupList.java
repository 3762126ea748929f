package org.framewright.ui.board;

import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.collections.ListChangeListener;
import javafx.event.EventTarget;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.skin.VirtualFlow;
import javafx.scene.input.ContextMenuEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.Region;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;

/**
 * The lines of the list, with the model's choice among them. The list comes to the page unrolled, a
 * line in each pulse, so that no pulse holds the interface for long.
 */
final class SetupList extends ListView<Line> {
  private final BoardModel model;
  private final Texts texts;
  private final Label noLines = new Label();
  private final ListChangeListener<Line> linesChange = _ -> choosing = true;
  private final ListChangeListener<Line> linesChanged = _ -> showChoice();
  private Subscription following = Subscription.EMPTY;
  private boolean choosing;
  private boolean front;

  SetupList(BoardModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    setId("setups");
    // Heard before the list itself, which chooses another line where lines were replaced.
    model.lines().addListener(linesChange);
    setItems(model.lines());
    setAccessibleText(texts.get("board.list"));
    setAccessibleRole(AccessibleRole.LIST_VIEW);
    setPlaceholder(noLines);
    setMaxHeight(0);
  }

  /**
   * Lets a person do things with the chosen line by mouse.
   *
   * @param commands those of its menu; a double click does the first
   */
  void offer(List<Command> commands) {
    var menu = new ContextMenu();
    commands.forEach(command -> menu.getItems().add(CommandControls.item(command)));
    setContextMenu(menu);
    // The menu is of the line that it is asked for on.
    addEventFilter(
        ContextMenuEvent.CONTEXT_MENU_REQUESTED,
        event -> lineAt(event.getTarget()).ifPresent(getSelectionModel()::clearAndSelect));
    setOnMouseClicked(
        event -> {
          if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
            commands.getFirst().fire();
          }
        });
  }

  private static Optional<Integer> lineAt(EventTarget target) {
    for (var at = target instanceof Node node ? node : null; at != null; at = at.getParent()) {
      if (at instanceof ListCell<?> cell && !cell.isEmpty()) {
        return Optional.of(cell.getIndex());
      }
    }
    return Optional.empty();
  }

  void show(BoardModel.Now now) {
    noLines.setText(texts.get(now.noList() ? "board.list.none" : "board.list.empty"));
  }

  void follow() {
    model.lines().addListener(linesChanged);
    following =
        Subscription.combine(
            model.selected().subscribe(_ -> showChoice()),
            getSelectionModel().selectedItemProperty().subscribe(this::chosen),
            // There are no lines to scroll to before the list was laid out at that height.
            heightProperty().subscribe((_, _) -> Platform.runLater(this::showChoiceInFront)));
  }

  /** Whether its page is the one in front. */
  void front(boolean now) {
    front = now;
  }

  boolean isUnrolled() {
    return getMaxHeight() == Region.USE_COMPUTED_SIZE;
  }

  /** One line more; as many as there is room for once there is none for another. */
  void unroll() {
    setMaxHeight(
        getHeight() >= getMaxHeight()
            ? getMaxHeight() + Math.max(1, getFixedCellSize())
            : Region.USE_COMPUTED_SIZE);
  }

  void dispose() {
    following.unsubscribe();
    model.lines().removeListener(linesChange);
    model.lines().removeListener(linesChanged);
    setItems(null);
  }

  /** From the model to the list; a choice made there while lines are replaced is no person's. */
  void showChoice() {
    var at = model.selectedIndex();
    var selection = getSelectionModel();
    if (at >= 0
        && selection.getSelectedIndex() == at
        && getFocusModel().isFocused(at)
        && model.lines().get(at).equals(selection.getSelectedItem())) {
      choosing = false;
      reveal(at);
      return;
    }
    choosing = true;
    try {
      if (at >= 0) {
        selection.clearAndSelect(at);
        getFocusModel().focus(at);
        reveal(at);
      } else {
        selection.clearSelection();
      }
    } finally {
      choosing = false;
    }
  }

  /** By its turn, another page may be in front and this one away from its styles. */
  private void showChoiceInFront() {
    if (front) {
      showChoice();
    }
  }

  /**
   * A list that grows moves its lines in proportion: while it unrolls, it is set each time which is
   * at its top.
   */
  private void reveal(int at) {
    if (lookup(".virtual-flow") instanceof VirtualFlow<?> cells) {
      var first = cells.getFirstVisibleCell();
      var last = cells.getLastVisibleCell();
      if (!isUnrolled()
          || first == null
          || last == null
          || at <= first.getIndex()
          || at >= last.getIndex()) {
        scrollTo(Math.max(0, at - 2));
      }
    }
  }

  private void chosen(Line line) {
    if (!choosing && line instanceof SetupRow row) {
      model.select(row);
    }
  }
}
