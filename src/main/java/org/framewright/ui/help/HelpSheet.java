package org.framewright.ui.help;

import java.util.List;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.command.KeyList;
import org.framewright.ui.command.Keys;
import org.framewright.ui.help.GuideSearch.Hit;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;

/** Help for where one is: what can be done there, with its key, and the guide. */
public final class HelpSheet {
  private static final KeyCodeCombination BACK = Keys.alt(KeyCode.LEFT);
  private static final KeyCodeCombination FORWARD = Keys.alt(KeyCode.RIGHT);

  /** Of the height of what is seen: as far as one key turns. */
  private static final double TURN = 0.85;

  private final Texts texts;
  private final KeyList keys;
  private final boolean hasKeys;
  private final TextField search = new TextField();
  private final ListView<Hit> hits = new ListView<>();
  private final WrappedText keysTitle = new WrappedText("help-heading");
  private final WrappedText found = new WrappedText("help-heading");
  private final ScrollPane scroll = new ScrollPane();
  private final HBox node = new HBox();
  private final ReadOnlyBooleanWrapper canDo = new ReadOnlyBooleanWrapper(false);
  private final HBox turns = new HBox();
  private GuideModel model;
  private boolean choosing;

  /**
   * @param commands what can be done where one is; empty while a question is open
   */
  public HelpSheet(List<Command> commands, Texts texts) {
    this.texts = texts;
    keys = new KeyList(commands, texts);
    hasKeys = !commands.isEmpty();
    search.setId("help-search");
    search.setPromptText(texts.get("help.search"));
    search.setAccessibleText(texts.get("help.search"));
    search.textProperty().addListener((_, _, typed) -> type(typed));
    keys.onChosen(this::keyChosen);
    found.setMinHeight(Region.USE_PREF_SIZE);
    keysTitle.setText(texts.get("keys.title"));
    keysTitle.setMinHeight(Region.USE_PREF_SIZE);
    keys.node().getStyleClass().add("help-keys");
    hits.setId("help-hits");
    hits.setFocusTraversable(false);
    hits.setAccessibleText(texts.get("help.guide"));
    hits.setCellFactory(_ -> new HitCell());
    hits.setPlaceholder(WrappedText.of(texts.get("help.nothing"), "quiet"));
    hits.getSelectionModel().selectedItemProperty().addListener((_, _, hit) -> hitChosen(hit));
    var left = new VBox(search);
    if (hasKeys) {
      left.getChildren().addAll(keysTitle, keys.node());
      VBox.setVgrow(keys.node(), Priority.ALWAYS);
    }
    left.getChildren().addAll(found, hits);
    VBox.setVgrow(hits, Priority.ALWAYS);
    left.getStyleClass().add("help-left");
    scroll.setId("help-page");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    turns.getStyleClass().add("help-turns");
    var right = new BorderPane(scroll);
    right.setTop(turns);
    right.getStyleClass().add("help-right");
    // Where there is little room, the page keeps what it needs before the lists do.
    HBox.setHgrow(left, Priority.SOMETIMES);
    HBox.setHgrow(right, Priority.ALWAYS);
    node.getChildren().setAll(left, right);
    node.getStyleClass().add("help-sheet");
    node.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
  }

  /** The guide was read: it opens at what it says of a topic. */
  public void read(Guide guide, String topic) {
    model = new GuideModel(guide, topic);
    var back = turn("help.back", BACK, model::back);
    back.disableProperty().bind(Bindings.not(model.canGoBack()));
    var forward = turn("help.forward", FORWARD, model::forward);
    forward.disableProperty().bind(Bindings.not(model.canGoForward()));
    var contents = new Button(texts.get("help.contents"));
    contents.setId("help-contents");
    contents.setMinWidth(Region.USE_PREF_SIZE);
    contents.setOnAction(_ -> model.contents());
    turns.getChildren().setAll(back, forward, contents);
    model.hits().subscribe(this::showHits);
    model.place().subscribe(place -> place.ifPresentOrElse(this::show, () -> missing(guide)));
    type(search.getText());
  }

  private void missing(Guide guide) {
    scroll.setContent(
        WrappedText.of(texts.get("help.missing", guide.folder().toString()), "guide-page"));
  }

  private Button turn(String word, KeyCodeCombination key, Runnable action) {
    var button = new Button(texts.get(word));
    button.setId(word.replace('.', '-'));
    var cap = new KeyCap();
    cap.setText(Keys.text(key, texts));
    button.setGraphic(cap);
    button.setContentDisplay(ContentDisplay.RIGHT);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(_ -> action.run());
    return button;
  }

  /** The question over the page: a command that is chosen is done when it is answered. */
  public DialogSpec spec() {
    var title = texts.get("help.title");
    return hasKeys
        ? DialogSpec.asking(title, node, search, texts.get("keys.do"), canDo(), this::fire)
        : DialogSpec.reading(title, node, search);
  }

  private ReadOnlyBooleanProperty canDo() {
    return canDo.getReadOnlyProperty();
  }

  private void fire() {
    keys.chosen().ifPresent(Command::fire);
  }

  private void type(String typed) {
    keys.type(typed);
    // What has nothing to show leaves its room to the guide.
    for (var part : List.of(keysTitle, keys.node())) {
      part.setVisible(keys.size() > 0);
      part.setManaged(keys.size() > 0);
    }
    if (model != null) {
      model.type(typed);
    }
    if (typed.isBlank()) {
      choose(-1);
    } else {
      choose(0);
      // What fits best is shown beside the keys, too.
      if (model != null && keys.at() >= 0 && !hits.getItems().isEmpty()) {
        model.glanceAt(hits.getItems().getFirst());
      }
    }
  }

  private void showHits(List<Hit> list) {
    hits.getStyleClass().removeAll("one-line", "two-lines");
    hits.getStyleClass().add(search.getText().isBlank() ? "one-line" : "two-lines");
    hits.getItems().setAll(list);
    found.setText(
        search.getText().isBlank()
            ? texts.get("help.guide")
            : texts.get("help.found", list.size()));
  }

  private int keyCount() {
    return hasKeys ? keys.size() : 0;
  }

  private int at() {
    var hit = hits.getSelectionModel().getSelectedIndex();
    return hit >= 0 ? keyCount() + hit : keys.at();
  }

  private void choose(int at) {
    choosing = true;
    int key = at < keyCount() ? at : -1;
    int hit = at < keyCount() ? -1 : at - keyCount();
    keys.choose(key);
    if (hit >= 0 && hit < hits.getItems().size()) {
      hits.getSelectionModel().select(hit);
      hits.scrollTo(Math.max(0, hit - 2));
    } else {
      hits.getSelectionModel().clearSelection();
    }
    choosing = false;
    canDo.set(keys.at() >= 0);
  }

  private void keyChosen() {
    if (!choosing && keys.at() >= 0) {
      choosing = true;
      hits.getSelectionModel().clearSelection();
      choosing = false;
    }
    canDo.set(keys.at() >= 0);
  }

  private void hitChosen(Hit hit) {
    if (hit == null) {
      return;
    }
    if (choosing) {
      model.glanceAt(hit);
    } else {
      keys.choose(-1);
      model.turnTo(hit);
    }
  }

  private void show(GuideModel.Place place) {
    var view = new PageView(place.page(), model.guide().folder(), texts, model::follow);
    scroll.setContent(view.node());
    scroll.setVvalue(0);
    // In a turn of its own: where its headings are is known once it is laid out.
    Platform.runLater(
        () -> {
          if (scroll.getScene() == null) {
            return;
          }
          scroll.applyCss();
          scroll.layout();
          var room = view.node().getHeight() - scroll.getViewportBounds().getHeight();
          var target = view.at(place.anchor());
          if (room > 0 && !target.equals(view.node())) {
            scroll.setVvalue(Math.clamp(target.getBoundsInParent().getMinY() / room, 0, 1));
          }
        });
  }

  private void key(KeyEvent event) {
    var code = event.getCode();
    if (BACK.match(event)) {
      turned(event, model == null ? null : model::back);
    } else if (FORWARD.match(event)) {
      turned(event, model == null ? null : model::forward);
    } else if (code == KeyCode.PAGE_DOWN || code == KeyCode.PAGE_UP) {
      turned(event, () -> scrollBy(code == KeyCode.PAGE_DOWN ? TURN : -TURN));
    } else if (search.isFocused() && (code == KeyCode.DOWN || code == KeyCode.UP)) {
      int most = keyCount() + hits.getItems().size() - 1;
      turned(
          event,
          () -> choose(Math.clamp(at() + (code == KeyCode.DOWN ? 1 : -1), 0, Math.max(0, most))));
    }
  }

  private static void turned(KeyEvent event, Runnable action) {
    if (action != null) {
      action.run();
    }
    event.consume();
  }

  private void scrollBy(double share) {
    if (scroll.getContent() instanceof Region page) {
      var seen = scroll.getViewportBounds().getHeight();
      var room = page.getHeight() - seen;
      if (room > 0) {
        scroll.setVvalue(Math.clamp(scroll.getVvalue() + share * seen / room, 0, 1));
      }
    }
  }

  /** Where one types. */
  Node focus() {
    return search;
  }

  private final class HitCell extends LineCell<Hit> {
    private final Label title = new Label();
    private final Label says = new Label();
    private final Label here = new Label();
    private final HBox first = new HBox(title, here);
    private final VBox box = new CellBox(first, says);

    HitCell() {
      here.getStyleClass().add("quiet");
      here.setMinWidth(Region.USE_PREF_SIZE);
      first.getStyleClass().add("help-hit-line");
      box.getStyleClass().add("help-hit-box");
      title.getStyleClass().add("help-hit");
      says.getStyleClass().add("quiet");
      says.setMinWidth(0);
      title.setMinWidth(0);
      setPrefWidth(0);
    }

    @Override
    protected void showLine(Hit hit) {
      title.setText(hit.title());
      here.setText(model.isAboutHere(hit) ? texts.get("help.here") : "");
      says.setText(hit.says());
      says.setManaged(!hit.says().isEmpty());
      setAccessibleText(texts.apart(hit.title(), here.getText(), hit.says()));
      setGraphic(box);
    }
  }
}
