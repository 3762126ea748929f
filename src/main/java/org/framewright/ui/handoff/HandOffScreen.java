package org.framewright.ui.handoff;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Spot;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;
import org.framewright.ui.session.JobSession;

/** The page of the hand-off: what goes, what went, whether it is whole, and what came back. */
public final class HandOffScreen implements Screen {
  /** Its id. */
  public static final String ID = "handoff";

  private final Desk desk;
  private final Texts texts;
  private final FramePictures pictures;
  private final HandOffModels models;
  private final HandOffActions actions;
  private final VBox node = new VBox();
  private final StackPane body = new StackPane();
  private final Map<Part, ToggleButton> words = new EnumMap<>(Part.class);
  private final List<Command> commands;
  private final ChoicePane choice;
  private final GoingPane going;
  private final HandedPane handed;
  private final StackPane outcome = new StackPane();
  private final WorkStrip handing;
  private final EarlierPane earlier;
  private final CheckPane check;
  private final ReturnsPane returns;
  private final Map<Part, Node> parts = new EnumMap<>(Part.class);
  private final Subscription following;

  /**
   * @param pictures of selects and of what came back; they go with the page
   */
  public HandOffScreen(Desk desk, JobSession session, FramePictures pictures) {
    this(desk, pictures, HandOffModels.of(desk, session));
    actions.startAtTheUsualPlace(true);
  }

  private HandOffScreen(Desk desk, FramePictures pictures, HandOffModels models) {
    this.desk = desk;
    this.texts = desk.texts();
    this.pictures = pictures;
    this.models = models;
    this.actions = new HandOffActions(desk, models, this::turnTo);
    this.commands = makeCommands();
    choice = new ChoicePane(models.handOff(), texts, command("list"), command("folder"));
    going = new GoingPane(models.handOff(), texts, command("main"));
    handed = new HandedPane(texts, command("say"), command("show"), command("next"));
    handing = new WorkStrip(texts, command("stop"), texts.get("handoff.handing.safe"));
    earlier =
        new EarlierPane(models.earlier(), texts, command("say"), command("show"), command("main"));
    check =
        new CheckPane(
            models.check(),
            texts,
            command("folder"),
            command("main"),
            command("stop"),
            command("say"));
    returns =
        new ReturnsPane(
            models.returns(),
            models.earlier().all(),
            texts,
            pictures,
            desk.tasks(),
            new ReturnsPane.Commands(
                command("folder"),
                command("main"),
                command("stop"),
                command("rename"),
                command("undo"),
                command("deliver"),
                command("fullSize"),
                command("show")));
    outcome.setMinWidth(0);
    HBox.setHgrow(outcome, Priority.ALWAYS);
    var goes = new HBox(choice, outcome);
    goes.getStyleClass().add("hand-middle");
    parts.put(Part.GOES, goes);
    parts.put(Part.WENT, earlier);
    parts.put(Part.CHECK, check);
    parts.put(Part.BACK, returns);
    VBox.setVgrow(body, Priority.ALWAYS);
    body.setMinHeight(0);
    node.getStyleClass().add("hand-page");
    node.setId("hand-off-page");
    node.getChildren().addAll(head(), body);
    following =
        Subscription.combine(
            models.part().subscribe(this::lay),
            models.handOff().running().subscribe(_ -> layOutcome()),
            models.handOff().ended().subscribe(this::ended));
  }

  private Region head() {
    var group = new ToggleGroup();
    var row = new FlowPane();
    row.getStyleClass().addAll("steps", "hand-parts");
    for (var part : Part.values()) {
      var word = new ToggleButton(texts.get("handoff.part." + part.word()));
      word.setId("hand-part-" + part.word());
      word.setToggleGroup(group);
      word.setMnemonicParsing(false);
      word.getStyleClass().addAll("step", "act");
      word.setGraphic(new KeyCap(command(part.word()), texts));
      word.setContentDisplay(ContentDisplay.RIGHT);
      word.setFocusTraversable(false);
      word.setMinWidth(Region.USE_PREF_SIZE);
      word.setOnAction(_ -> turnTo(part));
      words.put(part, word);
      row.getChildren().add(word);
    }
    return row;
  }

  // What can be done

  private List<Command> makeCommands() {
    var all = new ArrayList<Command>();
    for (var part : Part.values()) {
      all.add(
          Command.of(
              ID + "." + part.word(),
              text(part.word()),
              Keys.plain(part.key()),
              () -> turnTo(part)));
    }
    all.add(when("main", Keys.shortcut(KeyCode.ENTER), actions::main, actions::canMain));
    all.add(when("stop", Keys.plain(KeyCode.ESCAPE), actions::stop, () -> !actions.isIdle()));
    all.add(when("folder", Keys.plain(KeyCode.P), actions::choose, () -> part() != Part.WENT));
    all.add(when("say", Keys.plain(KeyCode.S), actions::say, () -> !actions.sentence().isEmpty()));
    all.add(when("show", Keys.plain(KeyCode.O), actions::show, () -> actions.shown().isPresent()));
    all.add(always("list", Keys.plain(KeyCode.N), actions::askForList));
    all.add(
        when(
            "next",
            Keys.plain(KeyCode.G),
            models.handOff()::putAway,
            () -> models.handOff().ended().get().isPresent()));
    all.add(
        when(
            "rename",
            Keys.plain(KeyCode.R),
            actions::askRename,
            () -> part() == Part.BACK && models.returns().canRename().get()));
    all.add(
        when(
                "undo",
                Keys.plain(KeyCode.BACK_SPACE),
                () -> models.returns().undo(actions::said),
                () -> part() == Part.BACK && models.returns().canUndo().get())
            .orBy(Keys.shortcut(KeyCode.Z)));
    all.add(
        when(
            "deliver",
            Keys.plain(KeyCode.D),
            actions::askDeliver,
            () -> part() == Part.BACK && models.returns().canDeliver().get()));
    all.add(
        when(
            "fullSize",
            Keys.plain(KeyCode.F),
            () -> models.returns().turnFullSize(Spot.MIDDLE),
            this::hasPictures));
    all.add(walking("forward", Keys.plain(KeyCode.RIGHT), () -> models.returns().step(1)));
    all.add(walking("before", Keys.plain(KeyCode.LEFT), () -> models.returns().step(-1)));
    all.add(walking("right", Keys.alt(KeyCode.RIGHT), () -> models.returns().pan(1, 0)));
    all.add(walking("left", Keys.alt(KeyCode.LEFT), () -> models.returns().pan(-1, 0)));
    all.add(walking("down", Keys.alt(KeyCode.DOWN), () -> models.returns().pan(0, 1)));
    all.add(walking("up", Keys.alt(KeyCode.UP), () -> models.returns().pan(0, -1)));
    all.add(always("lines", Keys.plain(KeyCode.A), () -> lines().requestFocus()));
    all.add(
        always(
            "choices",
            Keys.plain(KeyCode.C),
            () -> {
              turnTo(Part.GOES);
              choice.focus().requestFocus();
            }));
    return List.copyOf(all);
  }

  private Command always(String word, KeyCodeCombination key, Runnable action) {
    return Command.of(ID + "." + word, text(word), key, action);
  }

  private Command walking(String word, KeyCodeCombination key, Runnable action) {
    return when(word, key, action, this::hasPictures).repeating();
  }

  private Command when(
      String word, KeyCodeCombination key, Runnable action, BooleanSupplier holds) {
    return new Command(
        ID + "." + word,
        text(word),
        key,
        action,
        Bindings.createBooleanBinding(holds::getAsBoolean, models.observed()));
  }

  private Command command(String word) {
    return Commands.named(ID + "." + word, commands);
  }

  private String text(String word) {
    return texts.get("command.handoff." + word);
  }

  private Part part() {
    return models.part().get();
  }

  private boolean hasPictures() {
    return part() == Part.BACK && models.returns().answer().get().isPresent();
  }

  /** Comes to the front with the selects of the job. */
  public void handOffSelects() {
    models.handOff().askForSelects();
    models.part().set(Part.GOES);
    desk.show(ID);
  }

  /** Comes to the front and asks for the client's list. */
  public void handOffByList() {
    models.handOff().putAway();
    desk.show(ID);
    actions.askForList();
  }

  // What is shown

  private void turnTo(Part part) {
    models.part().set(part);
    words.get(part).setSelected(true);
    focus().requestFocus();
  }

  private void lay(Part part) {
    words.get(part).setSelected(true);
    body.getChildren().setAll(parts.get(part));
    if (part == Part.WENT || part == Part.BACK) {
      models.earlier().look();
    }
  }

  private void layOutcome() {
    var running = models.handOff().running().get();
    handing.show(running);
    var done = models.handOff().ended().get().filter(end -> !end.packages().isEmpty());
    Node part = running.isPresent() ? handing : done.isPresent() ? handed : going;
    if (!outcome.getChildren().contains(part)) {
      outcome.getChildren().setAll(part);
    }
    choice.setDisable(running.isPresent());
  }

  private void ended(Optional<Ended> end) {
    end.filter(it -> !it.packages().isEmpty()).ifPresent(handed::show);
    layOutcome();
    if (end.filter(Ended::isWhole).isPresent()) {
      models.list().clear();
    }
    models.earlier().look();
  }

  private Node lines() {
    return switch (part()) {
      case GOES -> going.list();
      case WENT -> earlier.list();
      case CHECK -> check.list();
      case BACK -> returns.list();
    };
  }

  @Override
  public String id() {
    return ID;
  }

  @Override
  public String topic() {
    return switch (part()) {
      case GOES, WENT -> ID;
      case CHECK -> "handoff-check";
      case BACK -> "handoff-back";
    };
  }

  @Override
  public String title() {
    return texts.get("handoff.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return switch (part()) {
      case GOES -> going.list();
      case WENT -> earlier.list();
      case CHECK -> check.focus();
      case BACK -> returns.focus();
    };
  }

  @Override
  public List<Command> commands() {
    return commands;
  }

  @Override
  public void onShown() {
    actions.startAtTheUsualPlace(false);
    models.handOff().follow();
    models.earlier().look();
  }

  @Override
  public void onHidden() {
    models.handOff().pause();
  }

  @Override
  public Screen anew() {
    leave();
    return new HandOffScreen(desk, pictures, models);
  }

  @Override
  public void dispose() {
    leave();
    models.close();
    pictures.close();
  }

  private void leave() {
    following.unsubscribe();
    choice.dispose();
    going.dispose();
    handing.dispose();
    earlier.dispose();
    check.dispose();
    returns.dispose();
  }
}
