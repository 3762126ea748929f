package org.framewright.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.animation.PauseTransition;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableValue;
import javafx.collections.ListChangeListener;
import javafx.geometry.Bounds;
import javafx.scene.AccessibleRole;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Notices.Notice;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/**
 * The window's inside: a head line with the job and the pages, the page in front, a foot line with
 * what was just done and what is under way, and the dialog layer over all of it.
 */
final class Shell {
  /** Page keys, in the order of the pages; F1 is the key sheet. */
  private static final List<KeyCode> PAGE_KEYS =
      List.of(KeyCode.F2, KeyCode.F3, KeyCode.F4, KeyCode.F5, KeyCode.F6, KeyCode.F7);

  private static final Duration PASSING = Duration.seconds(6);

  private final Texts texts;
  private final Commands commands;
  private final Tasks tasks;
  private final DialogLayer dialogs;
  private final StackPane root = new StackPane();
  private final BorderPane page = new BorderPane();
  private final Region bare = new Region();
  private final Label title = new Label();
  private final HBox words = new HBox();
  private final ToggleGroup group = new ToggleGroup();
  private final Label told = new Label();
  private final Label doing = new Label();
  private final ProgressBar bar = new ProgressBar();
  private final Button stop = new Button();
  private final HBox work = new HBox(doing, bar, stop);
  private final Label notice = new Label();
  private final Label noticeKey = new Label();
  private final HBox noticeLine = new HBox(notice, noticeKey);
  private Subscription noticing = Subscription.EMPTY;
  private final PauseTransition passing = new PauseTransition(PASSING);
  private final List<Screen> screens = new ArrayList<>();
  private final List<Command> pageCommands = new ArrayList<>();
  private final ReadOnlyObjectWrapper<Screen> front = new ReadOnlyObjectWrapper<>();
  private List<Command> appCommands = List.of();

  Shell(Texts texts, Commands commands, Tasks tasks) {
    this.texts = texts;
    this.commands = commands;
    this.tasks = tasks;
    this.dialogs = new DialogLayer(texts);

    title.getStyleClass().add("job-title");
    title.setMinWidth(0);
    HBox.setHgrow(title, Priority.SOMETIMES);
    title.setMaxWidth(Double.MAX_VALUE);
    words.getStyleClass().add("page-words");
    words.setMinWidth(Region.USE_PREF_SIZE);
    var head = new HBox(title, words);
    head.getStyleClass().add("head-line");

    told.getStyleClass().add("told");
    told.setId("told");
    told.setMaxWidth(Double.MAX_VALUE);
    told.setMinWidth(0);
    told.setAccessibleRole(AccessibleRole.TEXT);
    HBox.setHgrow(told, Priority.ALWAYS);
    work.getStyleClass().add("work");
    doing.setMinWidth(Region.USE_PREF_SIZE);
    stop.setText(texts.get("shell.stop"));
    stop.setFocusTraversable(false);
    // Laid out with the window, unseen: the first time is long, and is else felt when a job opens.
    work.setOpacity(0);
    var keys = new Label(texts.get("shell.allKeys"));
    keys.getStyleClass().add("quiet");
    keys.setMinWidth(Region.USE_PREF_SIZE);
    var foot = new HBox(told, work, keys);
    foot.getStyleClass().add("foot-line");

    notice.setId("notice");
    notice.setMinWidth(0);
    notice.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(notice, Priority.ALWAYS);
    noticeKey.setMinWidth(Region.USE_PREF_SIZE);
    noticeLine.getStyleClass().add("notice-line");
    noNotices();

    page.getStyleClass().add("page");
    page.setTop(head);
    page.setBottom(new VBox(noticeLine, foot));
    root.getStyleClass().add("table");
    root.getChildren().addAll(page, dialogs.node());
    passing.setOnFinished(_ -> told.setText(""));
    tasks.running().addListener((ListChangeListener<Running>) _ -> showWork());
  }

  Parent root() {
    return root;
  }

  Dialogs dialogs() {
    return dialogs;
  }

  ReadOnlyObjectProperty<Screen> front() {
    return front.getReadOnlyProperty();
  }

  /** Commands of the whole app; page keys are added to them. */
  void appCommands(List<Command> list) {
    appCommands = List.copyOf(list);
    commands.app(appCommands);
  }

  /**
   * Replaces the pages; the ones that go are disposed. Until one is shown, the window is as bare as
   * a table from which all was taken.
   */
  void pages(String heading, List<Screen> next) {
    if (front.get() != null) {
      front.get().onHidden();
      front.set(null);
    }
    screens.stream().filter(screen -> !next.contains(screen)).forEach(Screen::dispose);
    screens.clear();
    screens.addAll(next);
    title.setText(heading);
    group.getToggles().clear();
    pageCommands.clear();
    var pageWords = new ArrayList<ToggleButton>();
    for (var i = 0; i < next.size(); i++) {
      var turn = turnTo(next.get(i), PAGE_KEYS.get(i));
      pageCommands.add(turn);
      pageWords.add(word(next.get(i), turn));
    }
    words.getChildren().setAll(pageWords);
    var all = new ArrayList<>(appCommands);
    all.addAll(pageCommands);
    commands.screen(List.of());
    commands.app(all);
    page.setCenter(bare);
  }

  private Command turnTo(Screen screen, KeyCode key) {
    return Command.of(
        "page." + screen.id(),
        texts.get("shell.turnTo", screen.title()),
        Keys.plain(key),
        () -> show(screen));
  }

  private ToggleButton word(Screen screen, Command turn) {
    var word = new ToggleButton(screen.title());
    word.setId("page-" + screen.id());
    word.getStyleClass().add("page-word");
    word.setToggleGroup(group);
    word.setUserData(screen);
    word.setFocusTraversable(false);
    word.setTooltip(new Tooltip(turn.key().getDisplayText()));
    word.setOnAction(_ -> show(screen));
    return word;
  }

  List<String> pageIds() {
    return screens.stream().map(Screen::id).toList();
  }

  /** A page's word and its key; empty if there is no page of that id. */
  String wayTo(String id) {
    return screen(id)
        .map(
            page ->
                texts.get(
                    "shell.wayTo", page.title(), PAGE_KEYS.get(screens.indexOf(page)).getName()))
        .orElse("");
  }

  /** The page of that id, if the shell has it. */
  Optional<Screen> screen(String id) {
    return screens.stream().filter(screen -> screen.id().equals(id)).findFirst();
  }

  /** The room that a page has now. */
  Bounds pageSize() {
    return page.getCenter().getLayoutBounds();
  }

  /** Brings a page to the front. */
  void show(Screen screen) {
    group.getToggles().forEach(toggle -> toggle.setSelected(screen.equals(toggle.getUserData())));
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
    screen.onShown();
    screen.focus().requestFocus();
  }

  /** Tells something in the foot line; it passes by. */
  void tell(String text) {
    told.setText(text);
    told.setAccessibleText(text);
    passing.playFromStart();
  }

  /** One quiet line as long as there is something to know: the first of it, and how many. */
  void notices(ObservableValue<List<Notice>> all, String key) {
    noticing.unsubscribe();
    noticing = all.subscribe(now -> showNotices(now, key));
  }

  /** There is nothing to know any more. */
  void noNotices() {
    noticing.unsubscribe();
    showNotices(List.of(), "");
  }

  private void showNotices(List<Notice> now, String key) {
    noticeLine.setVisible(!now.isEmpty());
    noticeLine.setManaged(!now.isEmpty());
    if (now.isEmpty()) {
      notice.setText("");
      return;
    }
    notice.setText(
        texts.get("notice.line", now.getFirst().what(), now.getFirst().remedy()).strip());
    notice.setAccessibleText(notice.getText());
    noticeKey.setText(texts.get("notice.key", key, now.size()));
  }

  /**
   * Shows what is under way, if anything is. The controls stay and change: new ones would have to
   * be styled each time.
   */
  void showWork() {
    var now = tasks.running().stream().findFirst();
    work.setOpacity(1);
    work.setVisible(now.isPresent());
    work.setManaged(now.isPresent());
    bar.progressProperty().unbind();
    bar.visibleProperty().unbind();
    stop.setOnAction(null);
    now.ifPresent(
        running -> {
          doing.setText(running.title());
          // No bar that runs to and fro: it would have the window drawn all the while, and take the
          // processors from what it waits for.
          bar.progressProperty().bind(Bindings.max(0, running.progress()));
          bar.visibleProperty().bind(running.progress().greaterThanOrEqualTo(0));
          bar.setAccessibleText(running.title());
          stop.setOnAction(_ -> running.cancel());
        });
  }
}
