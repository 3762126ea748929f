package org.framewright.ui.preferences;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.value.ChangeListener;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Finder;
import org.framewright.ui.page.Screen;
import org.framewright.ui.preferences.SettingsForm.Section;

/** The page on which a person sets what holds for all jobs on this computer. */
public final class SettingsScreen implements Screen {
  /** What other parts of the app call this page by. */
  public static final String ID = "settings";

  private static final String UNDO = "settings.undo";
  private static final String REDO = "settings.redo";

  private final Desk desk;
  private final Texts texts;
  private final SettingsModel model;
  private final Runnable back;
  private final Runnable about;
  private final SettingsForm form;
  private final ToggleGroup group = new ToggleGroup();
  private final Map<Section, ToggleButton> words = new EnumMap<>(Section.class);
  private final HBox node;
  private final ChangeListener<Node> keys =
      (_, _, now) -> form().sectionOf(now).ifPresent(this::mark);
  private Optional<Scene> heard = Optional.empty();

  /**
   * @param looks how the windows look
   * @param computerNamed hears what this computer is called from now on
   * @param back shows the page that was in front before
   * @param about tells what the program is
   */
  public SettingsScreen(
      Desk desk, Looks looks, Consumer<String> computerNamed, Runnable back, Runnable about) {
    this(
        desk,
        new SettingsModel(
            desk.preferences(),
            desk.tasks(),
            desk.texts(),
            desk.clock().getZone(),
            looks,
            answer ->
                desk.answer(
                    answer.text(), answer.offer() == SettingsModel.Offer.UNDO ? UNDO : REDO),
            computerNamed),
        back,
        about);
  }

  private SettingsScreen(Desk desk, SettingsModel model, Runnable back, Runnable about) {
    this.desk = desk;
    this.texts = desk.texts();
    this.model = model;
    this.back = back;
    this.about = about;
    this.form = new SettingsForm(model, texts, desk.files(), about);
    HBox.setHgrow(form, Priority.ALWAYS);
    this.node = new HBox(contents(), form);
    node.getStyleClass().add("settings");
  }

  private SettingsForm form() {
    return form;
  }

  private Node contents() {
    var title = new Label(texts.get("settings.title"));
    title.getStyleClass().add("grid-title");
    var column = new VBox(title);
    column.getStyleClass().add("settings-contents");
    for (var section : Section.values()) {
      var word = new ToggleButton(texts.get(section.key()));
      word.setId("section-" + section.name().toLowerCase(Locale.ROOT));
      word.getStyleClass().add("section-word");
      word.setToggleGroup(group);
      word.setMaxWidth(Double.MAX_VALUE);
      word.setOnAction(_ -> goTo(section));
      words.put(section, word);
      column.getChildren().add(word);
    }
    return column;
  }

  private void goTo(Section section) {
    mark(section);
    form.scrollTo(section);
    form.first(section).requestFocus();
  }

  private void mark(Section section) {
    words.get(section).setSelected(true);
  }

  /** The look or the size was changed elsewhere. */
  public void showLooks() {
    model.showLooks();
  }

  @Override
  public String id() {
    return ID;
  }

  @Override
  public String title() {
    return texts.get("settings.title");
  }

  /** It has no word and no key among the pages: one comes here seldom, and goes back. */
  @Override
  public Optional<String> within() {
    return Optional.of(ID);
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    // What lies in a pane that scrolls is in the window only once that has its skin.
    node.applyCss();
    return form.first(Section.NAMES);
  }

  @Override
  public Finder finder() {
    var all = model.entries().filter(entry -> texts.has("settings." + entry.id())).toList();
    return (typed, most) ->
        all.stream()
            .filter(entry -> typed.areIn(texts.get("settings." + entry.id())))
            .limit(most)
            .map(
                entry ->
                    new Finder.Found(
                        texts.get("settings." + entry.id()), "", () -> goTo(entry.id())))
            .toList();
  }

  private void goTo(String entry) {
    desk.show(ID);
    form.field(entry).ifPresent(Node::requestFocus);
  }

  @Override
  public List<Command> commands() {
    return List.of(
        Command.of(UNDO, texts.get("command.settings.undo"), Keys.shortcut(KeyCode.Z), model::undo),
        Command.of(
            REDO, texts.get("command.settings.redo"), Keys.shortcutShift(KeyCode.Z), model::redo),
        Command.of(
            "settings.back", texts.get("command.settings.back"), Keys.plain(KeyCode.ESCAPE), back));
  }

  @Override
  public void onShown() {
    heard = Optional.ofNullable(node.getScene());
    heard.ifPresent(scene -> scene.focusOwnerProperty().addListener(keys));
  }

  @Override
  public void onHidden() {
    heard.ifPresent(scene -> scene.focusOwnerProperty().removeListener(keys));
    heard = Optional.empty();
    model.entries().toList().forEach(Entry::commit);
  }

  @Override
  public Screen anew() {
    dispose();
    return new SettingsScreen(desk, model, back, about);
  }

  @Override
  public void dispose() {
    onHidden();
    form.dispose();
  }
}
