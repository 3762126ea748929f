package org.framewright.ui;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Screen;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/**
 * The window's inside: a head line with the job and the pages, the page in front, the lines below
 * it, and the dialog layer over all of it. The pages of the app live as long as the window; those
 * of a job go with the job.
 */
final class Shell {
  private final Texts texts;
  private final Commands commands;
  private final Tasks tasks;
  private final DialogLayer dialogs;
  private final Region bare = new Region();
  private final Label title = new Label();
  private final HBox words = new HBox();
  private final MenuButton menu = new MenuButton();
  private final Button find = new Button();
  private final Region between = new Region();
  private final HBox head = new HBox(title, words, between, find, menu);
  private final ToggleGroup group = new ToggleGroup();
  private final AlarmBand alarm;
  private final CardLine card;
  private final NoticeLine notices;
  private final FootLine foot;
  private final List<Screen> appPages = new ArrayList<>();
  private final List<Screen> jobPages = new ArrayList<>();

  /** Those that one can turn to now. */
  private final List<Screen> atHand = new ArrayList<>();

  /** Those that could not be laid out and have to be made anew. */
  private final Set<Screen> broken = new HashSet<>();

  private final ReadOnlyObjectWrapper<Screen> front = new ReadOnlyObjectWrapper<>();
  private StackPane root = new StackPane();
  private BorderPane page = new BorderPane();
  private List<Command> appCommands = List.of();

  Shell(Texts texts, Commands commands, Tasks tasks) {
    this.texts = texts;
    this.commands = commands;
    this.tasks = tasks;
    this.dialogs = new DialogLayer(texts, () -> commands.find("app.help").ifPresent(Command::fire));
    this.alarm = new AlarmBand(texts);
    this.card = new CardLine(texts);
    this.notices = new NoticeLine(texts);
    this.foot = new FootLine(texts);
    title.getStyleClass().add("job-title");
    title.setMinWidth(0);
    words.getStyleClass().add("page-words");
    words.setMinWidth(Region.USE_PREF_SIZE);
    head.getStyleClass().add("head-line");
    HBox.setHgrow(between, Priority.ALWAYS);
    find.setId("find");
    find.setText(texts.get("shell.find"));
    find.setMinWidth(Region.USE_PREF_SIZE);
    find.setFocusTraversable(false);
    find.setTooltip(new Tooltip(Keys.text(Keys.shortcut(KeyCode.F), texts)));
    find.setOnAction(_ -> commands.find("app.find").ifPresent(Command::fire));
    menu.setId("menu");
    menu.setText(texts.get("shell.menu"));
    menu.setMinWidth(Region.USE_PREF_SIZE);
    menu.setFocusTraversable(false);
    assemble(bare);
    tasks.running().addListener((ListChangeListener<Running>) _ -> showWork());
  }

  private void assemble(Node center) {
    page.getStyleClass().add("page");
    page.setTop(new VBox(head, alarm.node()));
    page.setCenter(center);
    page.setBottom(new VBox(card.node(), notices.node(), foot.node()));
    root.getStyleClass().add("table");
    root.getChildren().addAll(page, dialogs.node());
  }

  /**
   * Makes the window's containers anew, around the page in front. The toolkit never again lays out
   * a container whose layout an exception broke off.
   */
  void reassemble() {
    var center = page.getCenter();
    dialogs.renew();
    page.getChildren().clear();
    root.getChildren().clear();
    root = new StackPane();
    page = new BorderPane();
    assemble(center);
  }

  Parent root() {
    return root;
  }

  DialogLayer dialogs() {
    return dialogs;
  }

  AlarmBand alarm() {
    return alarm;
  }

  CardLine card() {
    return card;
  }

  FootLine foot() {
    return foot;
  }

  NoticeLine notices() {
    return notices;
  }

  ReadOnlyObjectProperty<Screen> front() {
    return front.getReadOnlyProperty();
  }

  /** Commands of the whole app; page keys are added to them. */
  void appCommands(List<Command> list) {
    appCommands = List.copyOf(list);
    commands.app(appCommands);
  }

  /** The pages that belong to no job, for as long as the window lives. */
  void appPages(List<Screen> pages) {
    appPages.addAll(pages);
  }

  /** The pages of a job, before those of the app; no page is in front yet. */
  void openJob(String heading, List<Screen> pages) {
    clear(heading);
    jobPages.addAll(pages);
    turnable(Stream.concat(jobPages.stream(), appPages.stream()).toList());
  }

  /** The pages of the app alone; no page is in front yet. */
  void withoutJob(String heading) {
    clear(heading);
    turnable(appPages);
  }

  /**
   * No page at all, while the next job is read: the window is as bare as a table from which all was
   * taken. The pages of the job that was open are disposed.
   */
  void clear(String heading) {
    if (front.get() != null) {
      front.get().onHidden();
      front.set(null);
    }
    foot.forgetAnswer();
    title.setText(heading);
    page.setCenter(bare);
    turnable(List.of());
    jobPages.forEach(Screen::dispose);
    broken.removeAll(jobPages);
    jobPages.clear();
  }

  /** Shows something on the bare table until a page comes. */
  void lay(Node card) {
    page.setCenter(card);
  }

  /** Disposes every page: the window goes. */
  void dispose() {
    clear("");
    appPages.forEach(Screen::dispose);
    appPages.clear();
  }

  private void turnable(List<Screen> pages) {
    atHand.clear();
    atHand.addAll(pages);
    group.getToggles().clear();
    words.getChildren().clear();
    var turns = new ArrayList<Command>();
    var ofTheApp = new ArrayList<Command>();
    var worded = worded();
    for (var i = 0; i < worded.size(); i++) {
      var turn = turnTo(worded.get(i), Keys.page(i));
      turns.add(turn);
      // With a job open, its pages are what one turns to all day.
      if (jobPages.isEmpty() || jobPages.contains(worded.get(i))) {
        words.getChildren().add(word(worded.get(i), turn));
      } else {
        ofTheApp.add(turn);
      }
    }
    fillMenu(ofTheApp);
    commands.screen(List.of());
    commands.app(Stream.concat(appCommands.stream(), turns.stream()).toList());
  }

  /** The pages that have no word in the head, then what can be done anywhere. */
  private void fillMenu(List<Command> turns) {
    menu.getItems().setAll(turns.stream().map(this::item).toList());
    if (!turns.isEmpty()) {
      menu.getItems().add(new SeparatorMenuItem());
    }
    menu.getItems().addAll(appCommands.stream().map(this::item).toList());
  }

  private MenuItem item(Command command) {
    var item = CommandControls.item(command);
    item.setId("menu-" + command.id());
    var key = new Label(Keys.text(command.key(), texts));
    key.getStyleClass().add("menu-key");
    item.setGraphic(key);
    return item;
  }

  /** Those that have a word and a key of their own. */
  private List<Screen> worded() {
    return atHand.stream().filter(screen -> screen.within().isEmpty()).toList();
  }

  private Command turnTo(Screen screen, List<KeyCodeCombination> keys) {
    var id = screen.id();
    var own = "shell.turnTo." + id;
    return Command.of(
        "page." + id,
        texts.has(own) ? texts.get(own) : texts.get("shell.turnTo", screen.title()),
        keys,
        () -> show(id));
  }

  private ToggleButton word(Screen screen, Command turn) {
    var word = new ToggleButton(screen.title());
    word.setId("page-" + screen.id());
    word.getStyleClass().add("page-word");
    word.setToggleGroup(group);
    word.setUserData(screen.id());
    word.setFocusTraversable(false);
    word.setTooltip(new Tooltip(Keys.text(turn.key(), texts)));
    word.setOnAction(_ -> turn.fire());
    return word;
  }

  /** Those that one can turn to now. */
  List<Screen> pages() {
    return List.copyOf(atHand);
  }

  List<String> pageIds() {
    return atHand.stream().map(Screen::id).toList();
  }

  /** A page's word and its key; empty if there is no page of that id. */
  String wayTo(String id) {
    return screen(id)
        .filter(screen -> screen.within().isEmpty())
        .map(
            screen ->
                texts.get(
                    "shell.wayTo",
                    screen.title(),
                    Keys.text(Keys.page(worded().indexOf(screen)).getFirst(), texts)))
        .orElse("");
  }

  private Optional<Screen> screen(String id) {
    return atHand.stream().filter(screen -> screen.id().equals(id)).findFirst();
  }

  /** Brings the page of that id to the front; nothing happens if there is none. */
  void show(String id) {
    screen(id).map(this::whole).ifPresent(this::show);
  }

  private void show(Screen screen) {
    group
        .getToggles()
        .forEach(
            toggle ->
                toggle.setSelected(
                    screen.within().orElse(screen.id()).equals(toggle.getUserData())));
    if (screen.equals(front.get())) {
      screen.focus().requestFocus();
      return;
    }
    if (front.get() != null) {
      front.get().onHidden();
    }
    front.set(screen);
    page.setCenter(screen.node());
    commands.screen(screen.commands());
    foot.keepOffering(command -> commands.find(command.id()).isPresent());
    screen.onShown();
    screen.focus().requestFocus();
  }

  /** The page itself, or where it could not be laid out, the same made anew. */
  private Screen whole(Screen screen) {
    if (!broken.remove(screen)) {
      return screen;
    }
    if (screen.equals(front.get())) {
      screen.onHidden();
      front.set(null);
    }
    var anew = screen.anew();
    for (var pages : List.of(atHand, appPages, jobPages)) {
      pages.replaceAll(one -> one.equals(screen) ? anew : one);
    }
    return anew;
  }

  /**
   * The page in front could not be laid out: a note takes its place, and a key that tries again.
   */
  void withhold() {
    var failed = front.get();
    if (failed == null || !broken.add(failed)) {
      page.setCenter(bare);
      return;
    }
    commands.screen(List.of());
    var again = new Button(texts.get("shell.again", failed.title()));
    again.setId("page-again");
    again.getStyleClass().add("does-it");
    again.setOnAction(_ -> show(failed.id()));
    var note = new VBox(WrappedText.of(texts.get("shell.notLaidOut")), again);
    note.getStyleClass().addAll("paper-sheet", "withheld");
    page.setCenter(note);
    again.requestFocus();
  }

  /** Says something in the foot line; it passes by. */
  void say(String text) {
    foot.say(text);
  }

  /** Says what was done, with a button for what can be done about it here. */
  void answer(String text, String offered) {
    foot.answer(text, commands.find(offered));
  }

  /** Shows what is under way, if anything is. */
  void showWork() {
    foot.showWork(tasks.running().stream().findFirst());
  }
}
