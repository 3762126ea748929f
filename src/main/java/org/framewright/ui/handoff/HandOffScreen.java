package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.Node;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.handoff.PastHandOffs;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Spot;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.Screen;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.settings.DefaultPlace;
import org.framewright.ui.settings.StudioDetail;

/** The page of the hand-off: what goes, what went, whether it is whole, and what came back. */
public final class HandOffScreen implements Screen {
  /** Its id. */
  public static final String ID = "handoff";

  private static final String PLACE = "handoff.place";

  /** The parts of the page, of which one is seen. */
  private enum Part {
    GOES(KeyCode.DIGIT1),
    WENT(KeyCode.DIGIT2),
    CHECK(KeyCode.DIGIT3),
    BACK(KeyCode.DIGIT4);

    private final KeyCode key;

    Part(KeyCode key) {
      this.key = key;
    }

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What lives as long as the job is open, whatever becomes of the page. */
  private record Models(
      HandOffModel handOff,
      EarlierModel earlier,
      CheckModel check,
      ReturnsModel returns,
      ClientDeliveryModel client,
      ClientListModel list,
      ObjectProperty<Part> part) {}

  private final Desk desk;
  private final Texts texts;
  private final FramePictures pictures;
  private final Models models;
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
    this(desk, pictures, models(desk, session));
    startAtTheUsualPlace(true);
  }

  private static Models models(Desk desk, JobSession session) {
    return new Models(
        new HandOffModel(
            session,
            desk.tasks(),
            desk.texts(),
            () -> StudioDetail.studio(desk.preferences()),
            desk::wayTo,
            desk::trouble),
        new EarlierModel(session, desk.tasks(), desk.texts(), desk::trouble),
        new CheckModel(desk.tasks(), desk.texts(), desk.clock(), desk::trouble),
        new ReturnsModel(session, desk.tasks(), desk.texts(), desk.clock(), desk::trouble),
        new ClientDeliveryModel(session, desk.tasks(), desk.texts(), desk::wayTo, desk::trouble),
        new ClientListModel(session, desk.tasks(), desk.texts(), desk::trouble),
        new SimpleObjectProperty<>(Part.GOES));
  }

  private HandOffScreen(Desk desk, FramePictures pictures, Models models) {
    this.desk = desk;
    this.texts = desk.texts();
    this.pictures = pictures;
    this.models = models;
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
              ID + "." + part.word(), text(part.word()), Keys.plain(part.key), () -> turnTo(part)));
    }
    all.add(when("main", Keys.shortcut(KeyCode.ENTER), this::main, this::canMain));
    all.add(when("stop", Keys.plain(KeyCode.ESCAPE), this::stop, () -> !isIdle()));
    all.add(when("folder", Keys.plain(KeyCode.P), this::choose, () -> part() != Part.WENT));
    all.add(when("say", Keys.plain(KeyCode.S), this::say, () -> !sentence().isEmpty()));
    all.add(when("show", Keys.plain(KeyCode.O), this::show, () -> shown().isPresent()));
    all.add(always("list", Keys.plain(KeyCode.N), this::askForList));
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
            this::askRename,
            () -> part() == Part.BACK && models.returns().canRename().get()));
    all.add(
        when(
                "undo",
                Keys.plain(KeyCode.BACK_SPACE),
                () -> models.returns().undo(this::said),
                () -> part() == Part.BACK && models.returns().canUndo().get())
            .orBy(Keys.shortcut(KeyCode.Z)));
    all.add(
        when(
            "deliver",
            Keys.plain(KeyCode.D),
            this::askDeliver,
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
    var depends =
        new Observable[] {
          models.part(),
          models.handOff().ready(),
          models.handOff().running(),
          models.handOff().ended(),
          models.earlier().chosen(),
          models.check().answer(),
          models.check().running(),
          models.check().folder(),
          models.returns().answer(),
          models.returns().running(),
          models.returns().folder(),
          models.returns().chosen(),
          models.returns().canDeliver(),
          models.returns().canRename(),
          models.returns().canUndo()
        };
    return new Command(
        ID + "." + word,
        text(word),
        key,
        action,
        Bindings.createBooleanBinding(holds::getAsBoolean, depends));
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

  private boolean isIdle() {
    return switch (part()) {
      case GOES -> models.handOff().running().get().isEmpty();
      case WENT -> true;
      case CHECK -> models.check().running().get().isEmpty();
      case BACK -> models.returns().running().get().isEmpty();
    };
  }

  private boolean canMain() {
    return switch (part()) {
      case GOES ->
          models.handOff().ready().get()
              && models.handOff().ended().get().filter(Ended::isWhole).isEmpty();
      case WENT -> chosenFolder().isPresent();
      case CHECK -> isIdle() && models.check().folder().get().isPresent();
      case BACK -> isIdle() && models.returns().folder().get().isPresent();
    };
  }

  /** What the page is for: hands off, checks, reads again. */
  private void main() {
    switch (part()) {
      case GOES -> deliver();
      case WENT ->
          chosenFolder()
              .ifPresent(
                  at -> {
                    models.check().check(at);
                    turnTo(Part.CHECK);
                  });
      case CHECK -> models.check().again();
      case BACK -> models.returns().again();
    }
  }

  private void deliver() {
    Optional.ofNullable(models.handOff().place().get())
        .ifPresent(place -> desk.preferences().put(PLACE, place.toString()));
    models.handOff().deliver();
  }

  private void stop() {
    switch (part()) {
      case GOES -> models.handOff().stop();
      case WENT -> {}
      case CHECK -> models.check().stop();
      case BACK -> models.returns().stop();
    }
  }

  private void choose() {
    switch (part()) {
      case GOES ->
          desk.files()
              .folder(
                  texts.get("handoff.placeTitle"),
                  Optional.ofNullable(models.handOff().place().get()))
              .ifPresent(models.handOff().place()::set);
      case WENT -> {}
      case CHECK ->
          desk.files()
              .folder(texts.get("handoff.check.title"), models.check().folder().get())
              .ifPresent(models.check()::check);
      case BACK ->
          desk.files()
              .folder(texts.get("handoff.returns.choose"), models.returns().folder().get())
              .ifPresent(models.returns()::read);
    }
  }

  private String sentence() {
    return switch (part()) {
      case GOES -> models.handOff().ended().get().map(Ended::sentence).orElse("");
      case WENT -> models.earlier().sentence();
      case CHECK -> models.check().answer().get().map(CheckModel.Answer::sentence).orElse("");
      case BACK -> "";
    };
  }

  private void say() {
    Clipboard.getSystemClipboard().setContent(Map.of(DataFormat.PLAIN_TEXT, sentence()));
    desk.say(texts.get("handoff.said"));
  }

  private Optional<Path> chosenFolder() {
    return Optional.ofNullable(models.earlier().chosen().get())
        .filter(one -> one.state() == PastHandOffs.State.OUT)
        .flatMap(PastHandOffs::folder);
  }

  private Optional<Path> shown() {
    return switch (part()) {
      case GOES -> models.handOff().folders().reduce((_, last) -> last);
      case WENT -> chosenFolder();
      case CHECK -> models.check().folder().get();
      case BACK ->
          Stream.ofNullable(models.returns().chosen().get())
              .flatMap(line -> line.came().stream())
              .findFirst()
              .or(() -> models.returns().folder().get());
    };
  }

  private void show() {
    shown().ifPresent(desk::showInFileManager);
  }

  private void said(String what) {
    desk.answer(what, ID + ".undo");
  }

  private void askRename() {
    models
        .returns()
        .askRenames(
            question -> {
              switch (question) {
                case ReturnsModel.Question.Names(var renames) ->
                    desk.dialogs()
                        .show(
                            new RenameDialog(renames, texts)
                                .spec(() -> models.returns().rename(renames, this::said)));
                case ReturnsModel.Question.Order(var left) -> {
                  var body = WrappedText.of(texts.get("handoff.order.what", left.renames()));
                  desk.dialogs()
                      .show(
                          DialogSpec.asking(
                              texts.get("handoff.order.title"),
                              body,
                              body,
                              texts.get("handoff.order.do"),
                              () -> models.returns().recover(this::said)));
                }
              }
            });
  }

  private void askDeliver() {
    models
        .returns()
        .answer()
        .get()
        .ifPresent(
            answer -> {
              models
                  .client()
                  .begin(
                      answer.returns(),
                      DefaultPlace.PACKAGES
                          .kept(desk.preferences())
                          .or(() -> desk.preferences().path(PLACE)));
              desk.dialogs()
                  .show(
                      new ClientDeliveryDialog(models.client(), desk).spec(this::deliverToClient));
            });
  }

  /** What was delivered stands among the hand-offs, with its sentence and its checks. */
  private void deliverToClient() {
    models
        .client()
        .planned()
        .get()
        .ifPresent(
            planned ->
                models
                    .returns()
                    .deliver(
                        planned,
                        StudioDetail.studio(desk.preferences()),
                        ended -> {
                          if (ended.isWhole()) {
                            models.earlier().chosen().set(null);
                            models.earlier().look();
                            turnTo(Part.WENT);
                          }
                        }));
  }

  private void askForList() {
    turnTo(Part.GOES);
    var list = models.list();
    list.begin(
        () -> {
          var dialog = new ClientListDialog(list, desk);
          desk.dialogs()
              .show(
                  new DialogSpec(
                      texts.get("clientList.title"),
                      dialog.node(),
                      dialog.focus(),
                      texts.get("clientList.do"),
                      list.ready(),
                      () -> {
                        dialog.dispose();
                        list.named().ifPresent(models.handOff()::askFor);
                      },
                      dialog::dispose));
        });
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
    askForList();
  }

  /** The settings may say another one since. */
  private void startAtTheUsualPlace(boolean first) {
    var usual = DefaultPlace.PACKAGES.kept(desk.preferences());
    if (first || usual.isPresent()) {
      models.handOff().startAt(usual.or(() -> desk.preferences().path(PLACE)));
    }
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
    startAtTheUsualPlace(false);
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
    models.handOff().pause();
    models.check().close();
    models.returns().close();
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
