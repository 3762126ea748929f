package org.framewright.ui.frames;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javafx.beans.binding.Bindings;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.frames.PicturePart;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;

/** Frames looked at closely: one, or some side by side. Gives way to the page of frames. */
final class CompareScreen implements Screen {
  static final String ID = "compare";

  private final Desk desk;
  private final Texts texts;
  private final FramePictures pictures;
  private final CompareModel model;
  private final List<Command> common;
  private final List<Command> ratings;
  private final List<Command> commands;
  private final List<ComparedPrint> prints;
  private final HBox row = new HBox();
  private final Button only;
  private final Button takeAway;
  private final Label left = new Label();
  private final VBox node = new VBox();
  private final Subscription following;

  /**
   * @param common what is done here as on the page of frames: undo and redo
   */
  CompareScreen(Desk desk, FramePictures pictures, CompareModel model, List<Command> common) {
    this.desk = desk;
    this.texts = desk.texts();
    this.pictures = pictures;
    this.model = model;
    this.common = common;
    this.ratings =
        Ratings.commands(
            texts,
            ID,
            model::rate,
            Bindings.createBooleanBinding(
                () -> model.shown().get().currentTile().isPresent(), model.shown()));
    this.commands = makeCommands();
    this.prints =
        IntStream.range(0, CompareModel.MOST)
            .mapToObj(
                i -> new ComparedPrint(texts, pictures, desk.tasks(), PicturePart::of, model, i))
            .toList();
    row.getStyleClass().add("compared-row");
    row.setId("compared");
    row.setFocusTraversable(true);
    row.setAccessibleRole(AccessibleRole.PARENT);
    row.setMinHeight(0);
    VBox.setVgrow(row, Priority.ALWAYS);
    var actions = new FrameActions(texts);
    only = actions.add(command("only"));
    only.getStyleClass().add("does-it");
    only.setMinWidth(0);
    only.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(only, Priority.ALWAYS);
    left.getStyleClass().add("quiet");
    left.setMinWidth(0);
    var gap = new Region();
    HBox.setHgrow(gap, Priority.SOMETIMES);
    actions.getChildren().addAll(left, gap);
    actions.add(command("select"));
    actions.addRatings(ratings);
    takeAway = actions.add(command("takeAway"));
    actions.add(command("fullSize"));
    actions.add(command("back"));
    node.getStyleClass().add("compare");
    node.getChildren().addAll(row, actions);
    following =
        Subscription.combine(
            model.shown().subscribe(_ -> show()), model.fullSize().subscribe(_ -> show()));
  }

  private void show() {
    var shown = model.shown().get();
    for (int i = 0; i < prints.size(); i++) {
      if (i < shown.tiles().size()) {
        prints
            .get(i)
            .show(
                shown.tiles().get(i),
                shown.sideBySide() && i == shown.current(),
                model.fullSize().get());
      } else {
        prints.get(i).clear();
      }
    }
    var seen = prints.subList(0, shown.tiles().size());
    if (!row.getChildren().equals(seen)) {
      row.getChildren().setAll(seen);
    }
    shownIf(only, shown.sideBySide());
    shownIf(takeAway, shown.sideBySide());
    left.setText(shown.left() == 0 ? "" : texts.get("compare.left", shown.left()));
    shownIf(left, shown.left() > 0);
  }

  private static void shownIf(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }

  private List<Command> makeCommands() {
    var commands =
        new ArrayList<>(
            List.of(
                walking("next", Keys.plain(KeyCode.RIGHT), () -> model.step(1)),
                walking("before", Keys.plain(KeyCode.LEFT), () -> model.step(-1)),
                always("select", KeyCode.S, model::toggleSelect),
                sideBySide("only", KeyCode.ENTER, model::selectOnly),
                sideBySide("takeAway", KeyCode.MINUS, model::takeAway),
                always("fullSize", KeyCode.F, model::turnFullSize),
                walking("right", Keys.alt(KeyCode.RIGHT), () -> model.pan(1, 0)),
                walking("left", Keys.alt(KeyCode.LEFT), () -> model.pan(-1, 0)),
                walking("down", Keys.alt(KeyCode.DOWN), () -> model.pan(0, 1)),
                walking("up", Keys.alt(KeyCode.UP), () -> model.pan(0, -1)),
                always("back", KeyCode.ESCAPE, () -> desk.show(FramesScreen.ID))));
    commands.addAll(ratings);
    commands.addAll(common);
    return List.copyOf(commands);
  }

  private Command always(String word, KeyCode key, Runnable action) {
    return Command.of("compare." + word, text(word), Keys.plain(key), action);
  }

  private Command walking(String word, KeyCodeCombination key, Runnable action) {
    return Command.of("compare." + word, text(word), key, action).repeating();
  }

  private Command sideBySide(String word, KeyCode key, Runnable action) {
    return new Command(
        "compare." + word,
        text(word),
        Keys.plain(key),
        action,
        Bindings.createBooleanBinding(() -> model.shown().get().sideBySide(), model.shown()));
  }

  private Command command(String word) {
    return Commands.named("compare." + word, commands);
  }

  private String text(String word) {
    return texts.get("command.compare." + word);
  }

  @Override
  public String id() {
    return ID;
  }

  @Override
  public String title() {
    return texts.get("compare.page");
  }

  @Override
  public Optional<String> within() {
    return Optional.of(FramesScreen.ID);
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return row;
  }

  @Override
  public List<Command> commands() {
    return commands;
  }

  @Override
  public void onShown() {
    model.follow();
  }

  @Override
  public void onHidden() {
    model.pause();
    prints.forEach(ComparedPrint::clear);
  }

  @Override
  public Screen anew() {
    leave();
    return new CompareScreen(desk, pictures, model, common);
  }

  @Override
  public void dispose() {
    leave();
    model.pause();
  }

  private void leave() {
    following.unsubscribe();
    prints.forEach(ComparedPrint::clear);
  }
}
