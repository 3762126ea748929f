package org.framewright.ui.preferences;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.value.ChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import javafx.util.Subscription;
import org.framewright.handoff.metadata.DataMining;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.Theme;
import org.framewright.ui.page.FileChoosers;
import org.framewright.ui.settings.DefaultPlace;
import org.framewright.ui.settings.Language;
import org.framewright.ui.settings.StudioDetail;

/** The settings on one sheet, section below section. */
final class SettingsForm extends VBox {
  /** The sections, from top to bottom. */
  enum Section {
    NAMES,
    PLACES,
    HOURS,
    LOOKS,
    COMPUTER;

    String key() {
      return "settings.section." + name().toLowerCase(Locale.ROOT);
    }
  }

  /** A field that a notice may show; braces in a text of the bundles would be values. */
  private static final String YEAR = "{day.year}";

  private final SettingsModel model;
  private final Texts texts;
  private final FileChoosers files;
  private final Runnable about;
  private final List<SettingRow> rows = new ArrayList<>();
  private final List<SettingRow> breakRows = new ArrayList<>();
  private final Map<Section, VBox> sections = new EnumMap<>(Section.class);
  private final Map<Section, Node> firsts = new EnumMap<>(Section.class);
  private final VBox inside = new VBox();
  private final ScrollPane scroll = new ScrollPane(inside);
  private final ChangeListener<String> breaksChanged = (_, _, _) -> showBreaks();
  private Subscription following = Subscription.EMPTY;
  private Subscription followingMining = Subscription.EMPTY;

  /**
   * @param about tells what the program is
   */
  SettingsForm(SettingsModel model, Texts texts, FileChoosers files, Runnable about) {
    this.model = model;
    this.texts = texts;
    this.files = files;
    this.about = about;
    names();
    places();
    hours();
    looks();
    computer();
    inside.getStyleClass().add("settings-form");
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getStyleClass().addAll("paper-sheet", "settings-sheet");
    getChildren().add(scroll);
    addEventFilter(KeyEvent.KEY_PRESSED, this::undoFromAField);
    model.hours().breaks().forEach(pause -> pause.begin().text().addListener(breaksChanged));
    showBreaks();
  }

  /** A field takes the keys for what was typed in it; where nothing was, they are for settings. */
  private void undoFromAField(KeyEvent event) {
    if (event.getTarget() instanceof EntryField field) {
      if (Keys.shortcut(KeyCode.Z).match(event) && !field.isUndoable()) {
        model.undo();
        event.consume();
      } else if (Keys.shortcutShift(KeyCode.Z).match(event) && !field.isRedoable()) {
        model.redo();
        event.consume();
      }
    }
  }

  /** What is typed or pressed first in a section. */
  Node first(Section section) {
    return firsts.get(section);
  }

  /** The field of a setting. */
  Optional<EntryField> field(String id) {
    return lookupAll(".text-field").stream()
        .filter(EntryField.class::isInstance)
        .map(EntryField.class::cast)
        .filter(field -> field.entry().id().equals(id))
        .findFirst();
  }

  /** The section that a node stands in. */
  Optional<Section> sectionOf(Node node) {
    for (var at = node; at != null; at = at.getParent()) {
      for (var section : sections.entrySet()) {
        if (section.getValue().equals(at)) {
          return Optional.of(section.getKey());
        }
      }
    }
    return Optional.empty();
  }

  /** Brings a section to the top, as far as the sheet goes. */
  void scrollTo(Section section) {
    scrollTo(sections.get(section).getBoundsInParent().getMinY());
  }

  private void scrollTo(double y) {
    var room = inside.getHeight() - scroll.getViewportBounds().getHeight();
    scroll.setVvalue(room <= 0 ? 0 : Math.clamp(y / room, 0, 1));
  }

  /** Brings a node of the form into sight. */
  void reveal(Node node) {
    var bounds = inside.sceneToLocal(node.localToScene(node.getLayoutBounds()));
    var room = inside.getHeight() - scroll.getViewportBounds().getHeight();
    var top = scroll.getVvalue() * Math.max(0, room);
    var height = scroll.getViewportBounds().getHeight();
    var margin = 2 * bounds.getHeight();
    if (bounds.getMinY() - margin < top) {
      scrollTo(bounds.getMinY() - margin);
    } else if (bounds.getMaxY() + margin > top + height) {
      scrollTo(bounds.getMaxY() + margin - height);
    }
  }

  private void names() {
    var list = new ArrayList<SettingRow>();
    for (var detail : StudioDetail.values()) {
      list.add(line(model.studio(detail)));
    }
    var mining = mining();
    list.add(
        row(
            texts.get("settings.studio.mining"),
            List.of(mining),
            List.of(),
            texts.get("settings.studio.mining.what")));
    followingMining = model.mining().subscribe(mining::setValue);
    add(Section.NAMES, list);
  }

  private ComboBox<Optional<DataMining>> mining() {
    var choices = new ArrayList<Optional<DataMining>>(List.of(Optional.empty()));
    for (var choice : DataMining.values()) {
      choices.add(Optional.of(choice));
    }
    return choice(
        "mining", texts.get("settings.studio.mining"), choices, model::words, model::takeMining);
  }

  private SettingRow line(Entry entry) {
    var word = texts.get("settings." + entry.id());
    var field = field(entry, word);
    HBox.setHgrow(field, Priority.ALWAYS);
    return row(
        word, List.of(field), List.of(field), texts.get("settings." + entry.id() + ".what", YEAR));
  }

  private void places() {
    var list = new ArrayList<SettingRow>();
    for (var place : DefaultPlace.values()) {
      var entry = model.place(place);
      var word = texts.get("settings." + entry.id());
      var field = field(entry, word);
      HBox.setHgrow(field, Priority.ALWAYS);
      var choose = new Button(texts.get("settings.choose"));
      choose.setId("choose-" + entry.id().replace('.', '-'));
      choose.setAccessibleText(texts.apart(word, texts.get("settings.choose")));
      choose.setMinWidth(Region.USE_PREF_SIZE);
      choose.setOnAction(_ -> choose(place, word));
      list.add(
          row(
              word,
              List.of(field, choose),
              List.of(field),
              texts.get("settings." + entry.id() + ".what")));
    }
    add(Section.PLACES, list);
  }

  private void choose(DefaultPlace place, String word) {
    var entry = model.place(place);
    var now = entry.written();
    files
        .folder(
            word,
            DefaultPlace.fault(now).isPresent() ? Optional.empty() : Optional.of(Path.of(now)))
        .ifPresent(
            folder -> {
              entry.text().set(folder.toString());
              entry.commit();
            });
  }

  private void hours() {
    var hours = model.hours();
    var list = new ArrayList<SettingRow>();
    var day = texts.get("settings.hours");
    var from = brief(hours.from(), texts.get("settings.hours.from"));
    var until = brief(hours.until(), texts.get("settings.hours.until"));
    list.add(
        row(
            day,
            List.of(from, word("settings.hours.to"), until),
            List.of(from, until),
            texts.get("settings.hours.what")));
    for (int i = 0; i < hours.breaks().size(); i++) {
      var pause = hours.breaks().get(i);
      var begin = brief(pause.begin(), texts.get("settings.break.begin", i + 1));
      var minutes = brief(pause.minutes(), texts.get("settings.break.minutes", i + 1));
      var one =
          row(
              texts.get("settings.break." + (i + 1)),
              List.of(begin, word("settings.break.for"), minutes, word("settings.break.unit")),
              List.of(begin, minutes),
              i == 0 ? texts.get("settings.break.what") : " ");
      breakRows.add(one);
      list.add(one);
    }
    add(Section.HOURS, list);
  }

  private EntryField brief(Entry entry, String spoken) {
    var field = field(entry, spoken);
    field.getStyleClass().add("brief");
    return field;
  }

  private Label word(String key) {
    var label = new Label(texts.get(key));
    label.setMinWidth(Region.USE_PREF_SIZE);
    return label;
  }

  /** Each break is there once the one before is written. */
  private void showBreaks() {
    var breaks = model.hours().breaks();
    for (int i = 1; i < breaks.size(); i++) {
      var there = !breaks.get(i).isEmpty() || !breaks.get(i - 1).isEmpty();
      breakRows.get(i).setVisible(there);
      breakRows.get(i).setManaged(there);
    }
  }

  private void looks() {
    var group = new ToggleGroup();
    var themes = new ArrayList<Node>();
    for (var theme : Theme.values()) {
      var button = new ToggleButton(texts.get("look." + theme.word()));
      button.setId("theme-" + theme.word());
      button.setMinWidth(Region.USE_PREF_SIZE);
      button.setToggleGroup(group);
      button.setUserData(theme);
      button.setOnAction(
          _ -> {
            button.setSelected(true);
            model.take(theme);
          });
      themes.add(button);
    }
    var smaller = new Button(texts.get("settings.smaller"));
    smaller.setId("smaller");
    smaller.setMinWidth(Region.USE_PREF_SIZE);
    smaller.setOnAction(_ -> model.takeScale(model.scale().get() - Looks.STEP));
    var larger = new Button(texts.get("settings.larger"));
    larger.setId("larger");
    larger.setMinWidth(Region.USE_PREF_SIZE);
    larger.setOnAction(_ -> model.takeScale(model.scale().get() + Looks.STEP));
    var size = new Label();
    size.setId("size");
    size.getStyleClass().add("setting-size");
    var languages = languages();
    following =
        Subscription.combine(
            model
                .theme()
                .subscribe(
                    now ->
                        group.getToggles().stream()
                            .filter(toggle -> now.equals(toggle.getUserData()))
                            .forEach(toggle -> toggle.setSelected(true))),
            model.scale().subscribe(now -> size.setText(model.percent(now))),
            model.language().subscribe(languages::setValue));
    add(
        Section.LOOKS,
        List.of(
            row(texts.get("settings.theme"), themes, List.of(), texts.get("settings.theme.what")),
            row(
                texts.get("settings.scale"),
                List.of(smaller, size, larger),
                List.of(),
                texts.get("settings.scale.what")),
            row(
                texts.get("settings.language"),
                List.of(languages),
                List.of(),
                texts.get("settings.language.what"))));
    firsts.put(Section.LOOKS, themes.getFirst());
  }

  private ComboBox<Language> languages() {
    return choice(
        "language",
        texts.get("settings.language"),
        List.of(Language.values()),
        model::words,
        model::take);
  }

  private static <T> ComboBox<T> choice(
      String id, String spoken, List<T> choices, Function<T, String> words, Consumer<T> taken) {
    var box = new ComboBox<T>();
    box.setId(id);
    box.setAccessibleText(spoken);
    box.getItems().setAll(choices);
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(T one) {
            return one == null ? "" : words.apply(one);
          }

          @Override
          public T fromString(String shown) {
            return box.getValue();
          }
        });
    box.setMinWidth(Region.USE_PREF_SIZE);
    box.valueProperty().addListener((_, _, now) -> taken.accept(now));
    return box;
  }

  private void computer() {
    var open = new Button(texts.get("settings.about.open"));
    open.setId("about");
    open.setMinWidth(Region.USE_PREF_SIZE);
    open.setOnAction(_ -> about.run());
    add(
        Section.COMPUTER,
        List.of(
            line(model.computer()),
            row(
                texts.get("settings.about"),
                List.of(open),
                List.of(),
                texts.get("settings.about.what"))));
  }

  private EntryField field(Entry entry, String spoken) {
    var field = new EntryField(entry, spoken);
    field
        .focusedProperty()
        .addListener(
            (_, _, now) -> {
              if (now) {
                reveal(field);
              }
            });
    return field;
  }

  private SettingRow row(String word, List<Node> controls, List<EntryField> fields, String what) {
    var row = new SettingRow(texts, word, controls, fields, what);
    rows.add(row);
    return row;
  }

  private void add(Section section, List<SettingRow> its) {
    var title = new Label(texts.get(section.key()));
    title.getStyleClass().add("settings-title");
    var box = new VBox(title);
    box.getStyleClass().add("settings-section");
    box.getChildren().addAll(its);
    sections.put(section, box);
    its.getFirst().fields().stream().findFirst().ifPresent(field -> firsts.put(section, field));
    inside.getChildren().add(box);
  }

  void dispose() {
    following.unsubscribe();
    followingMining.unsubscribe();
    model.hours().breaks().forEach(pause -> pause.begin().text().removeListener(breaksChanged));
    rows.forEach(SettingRow::dispose);
  }
}
