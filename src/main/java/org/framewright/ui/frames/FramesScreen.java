package org.framewright.ui.frames;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.frames.SlateModel.Word;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.Finder;
import org.framewright.ui.page.Screen;
import org.framewright.ui.page.SetupChoice;
import org.framewright.ui.page.StepWords;
import org.framewright.ui.session.JobSession;

/** The page of frames: what the job has, under the headings of its list. */
public final class FramesScreen implements Screen {
  static final String ID = "frames";

  /** The longest edge of a picture in the grid, in pixels. */
  static final int EDGE = 320;

  private static final double HEADING_HEIGHT = 38;
  private static final double[] SIZES = {110, 180, 250, 340};
  private static final String SIZE = "frames.size";

  private final Desk desk;
  private final Texts texts;
  private final FramePictures pictures;
  private final FramesModel model;
  private final HandOffs handOff;
  private final SidecarRatings sidecars;
  private final CompareModel compare;
  private final List<Command> common;
  private final List<Command> ratings;
  private final SequencedMap<Word, Command> slateWords;
  private final List<Command> commands;

  private final PrintsPane prints;
  private final WhyLine why;
  private final HBox node = new HBox();
  private final ListView<FrameHeading> headings = new ListView<>();
  private final TextField filter = new TextField();
  private final Button handOffButton = new Button();
  private final Subscription following;
  private double size;

  /**
   * @param pictures where the frames' pictures come from
   * @param handOff hands selects off, which is another page
   */
  public FramesScreen(Desk desk, JobSession session, FramePictures pictures, HandOffs handOff) {
    this(
        desk,
        pictures,
        model(desk, session),
        new SidecarRatings(session, desk.tasks(), desk.texts(), desk::say, desk::trouble),
        handOff);
  }

  /** What is done with the job's selects on another page. */
  public record HandOffs(Runnable selects, Runnable byList) {}

  /** What is done is answered in words, with how it is undone. */
  private static FramesModel model(Desk desk, JobSession session) {
    return new FramesModel(
        session,
        desk.tasks(),
        desk.texts(),
        () -> System.getProperty("user.name", ""),
        StepWords.answering(desk, session, ID),
        desk::trouble);
  }

  private FramesScreen(
      Desk desk,
      FramePictures pictures,
      FramesModel model,
      SidecarRatings sidecars,
      HandOffs handOff) {
    this(desk, pictures, model, sidecars, handOff, new CompareModel(model));
  }

  private FramesScreen(
      Desk desk,
      FramePictures pictures,
      FramesModel model,
      SidecarRatings sidecars,
      HandOffs handOff,
      CompareModel compare) {
    this.sidecars = sidecars;
    this.desk = desk;
    this.texts = desk.texts();
    this.pictures = pictures;
    this.model = model;
    this.handOff = handOff;
    this.compare = compare;
    this.prints =
        new PrintsPane(model.tiles(), model.selection(), pictures, texts, this::lookCloser);
    this.common =
        List.of(
            command("undo", KeyCode.BACK_SPACE, model::undo).orBy(Keys.shortcut(KeyCode.Z)),
            Command.of("frames.redo", text("redo"), Keys.shortcutShift(KeyCode.Z), model::redo)
                .orBy(Keys.shortcut(KeyCode.Y)));
    this.ratings = Ratings.commands(texts, ID, model::rate, someChosen());
    this.slateWords = slateWords();
    this.commands = makeCommands();
    this.why = new WhyLine(model.slates(), texts, command("toSlate"));
    prints.getChildren().addAll(why, actions());
    HBox.setHgrow(prints, Priority.ALWAYS);
    node.getStyleClass().add("frames");
    node.getChildren().addAll(prints, sheet());
    following =
        Subscription.combine(
            model.heading().subscribe(_ -> showHeading()),
            model.sorted().subscribe(_ -> showHeading()),
            model.groups().subscribe(_ -> showHandOff()));
    headings
        .getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (_, _, now) -> {
              if (now != null) {
                model.heading().set(now);
              }
            });
    size(desk.preferences().number(SIZE, SIZES[1]));
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
    headings.setCellFactory(_ -> new HeadingCell(texts, model::meaning));
    headings.setAccessibleText(texts.get("frames.headings"));
    VBox.setVgrow(headings, Priority.ALWAYS);
    handOffButton.setId("hand-off");
    handOffButton.getStyleClass().add("does-it");
    handOffButton.setMaxWidth(Double.MAX_VALUE);
    handOffButton.setOnAction(_ -> handOff.selects().run());
    var byList = new Button(texts.get("frames.handOffByList"));
    byList.setId("hand-off-by-list");
    byList.setMaxWidth(Double.MAX_VALUE);
    byList.setOnAction(_ -> handOff.byList().run());
    var column = new VBox(filter, headings, byList, handOffButton);
    column.getStyleClass().add("headings-sheet");
    return column;
  }

  private void resize(int by) {
    var at = 0;
    for (var i = 1; i < SIZES.length; i++) {
      at = Math.abs(SIZES[i] - size) < Math.abs(SIZES[at] - size) ? i : at;
    }
    size(SIZES[Math.clamp((long) at + by, 0, SIZES.length - 1)]);
  }

  private void size(double width) {
    size = width;
    prints.size(width);
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
    prints.none(texts.get(whyNone(heading)));
    prints.title(
        switch (heading.kind()) {
          case ALL -> texts.get("frames.titleAll", heading.frames(), heading.selects());
          case SELECTS -> texts.get("frames.titleSelects", heading.frames());
          case UNASSIGNED -> texts.get("frames.titleUnassigned", heading.frames());
          case SLATES -> texts.get("frames.titleSlates", heading.frames());
          case SETUP, VIEW ->
              texts.get(
                  "frames.titleSetup",
                  heading.place().map(TileCell::shortly).orElse(""),
                  heading.title(),
                  heading.frames(),
                  heading.selects());
        });
  }

  private String whyNone(FrameHeading heading) {
    if (!model.sorted().get()) {
      return "frames.sorting";
    }
    return heading.kind() == FrameHeading.Kind.SELECTS ? "frames.noSelect" : "frames.none";
  }

  private void showHandOff() {
    var selects = model.groups().get().headings().getFirst().selects();
    handOffButton.setText(texts.get("frames.handOff", selects));
    handOffButton.setDisable(selects == 0);
    showHeading();
  }

  private void askMove() {
    var count = model.selection().chosen().get().size();
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
                    dialog::move)
                .about("move"));
  }

  /** What a person says of a slate; where it cannot be said, why is answered. */
  private SequencedMap<Word, Command> slateWords() {
    var words = new LinkedHashMap<Word, Command>();
    words.put(Word.OF_SETUP, slateWord("slateOf", KeyCode.T, Word.OF_SETUP, this::askSlate));
    words.put(Word.NONE, slateWord("slateNone", KeyCode.I, Word.NONE));
    words.put(Word.BEFORE, slateWord("slateBefore", KeyCode.B, Word.BEFORE));
    words.put(Word.FOLLOW, slateWord("slateFollow", KeyCode.K, Word.FOLLOW));
    words.put(Word.STAY, slateWord("slateStay", KeyCode.J, Word.STAY));
    return words;
  }

  private Command slateWord(String id, KeyCode key, Word word) {
    return slateWord(id, key, word, () -> model.slates().say(word));
  }

  private Command slateWord(String id, KeyCode key, Word word, Runnable action) {
    return chosen(id, key, () -> model.slates().refusal(word).ifPresentOrElse(desk::say, action));
  }

  private void askSlate() {
    var slates = model.slates();
    var choice = SetupChoice.byTyping(slates.setups(), texts, texts.get("frames.slate.prompt"));
    var what = WrappedText.of(texts.get("frames.slate.what"));
    what.setMinHeight(Region.USE_PREF_SIZE);
    var body = new VBox(what, choice.node());
    body.getStyleClass().add("choice-question");
    VBox.setVgrow(choice.node(), Priority.ALWAYS);
    desk.dialogs()
        .show(
            DialogSpec.asking(
                    texts.get("frames.slate.title", slates.name()),
                    body,
                    choice.focus(),
                    texts.get("frames.slate.do"),
                    choice.ready(),
                    () -> choice.chosen().ifPresent(slates::sayOf))
                .about("slates"));
  }

  private void goToSlate() {
    model.slates().goToSlate().ifPresent(desk::say);
  }

  /** The frames that are chosen side by side; one alone as large as the page. */
  private void lookCloser() {
    if (model.current().isPresent()) {
      compare.begin();
      desk.show(CompareScreen.ID);
    }
  }

  private void askRatings() {
    sidecars.prepare(
        planned -> {
          var body = WrappedText.of(sidecars.question(planned));
          desk.dialogs()
              .show(
                  DialogSpec.asking(
                      texts.get("frames.ratingsTitle"),
                      body,
                      body,
                      texts.get("frames.ratingsWrite", planned.size()),
                      () -> sidecars.write(planned)));
        });
  }

  private void showInFileManager() {
    model.current().ifPresent(tile -> desk.showInFileManager(tile.frame().primary().path()));
  }

  @Override
  public String id() {
    return ID;
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
    return prints.grid();
  }

  @Override
  public List<Command> commands() {
    return commands;
  }

  private List<Command> makeCommands() {
    var made =
        new ArrayList<>(
            List.of(
                chosen("closer", KeyCode.ENTER, this::lookCloser),
                chosen("select", KeyCode.S, model::toggleSelect),
                chosen("move", KeyCode.M, this::askMove),
                chosen("show", KeyCode.O, this::showInFileManager),
                command("writeRatings", KeyCode.W, this::askRatings),
                command("handOff", KeyCode.H, handOff.selects()),
                command("handOffByList", KeyCode.N, handOff.byList()),
                command("find", KeyCode.SLASH, filter::requestFocus),
                command("grid", KeyCode.ESCAPE, prints.grid()::requestFocus),
                Command.of(
                    "frames.all",
                    text("all"),
                    Keys.shortcut(KeyCode.A),
                    () -> model.selection().all()),
                Command.of(
                        "frames.nextHeading",
                        text("nextHeading"),
                        Keys.alt(KeyCode.DOWN),
                        () -> model.turnHeading(1))
                    .repeating(),
                Command.of(
                        "frames.headingBefore",
                        text("headingBefore"),
                        Keys.alt(KeyCode.UP),
                        () -> model.turnHeading(-1))
                    .repeating(),
                command("larger", KeyCode.PLUS, () -> resize(1))
                    .orBy(Keys.plain(KeyCode.EQUALS))
                    .orBy(Keys.plain(KeyCode.ADD)),
                command("smaller", KeyCode.MINUS, () -> resize(-1))
                    .orBy(Keys.plain(KeyCode.SUBTRACT))));
    made.addAll(slateWords.values());
    made.add(chosen("toSlate", KeyCode.G, this::goToSlate));
    made.addAll(ratings);
    made.addAll(common);
    return List.copyOf(made);
  }

  /** What can be done with the chosen frames. */
  private FrameActions actions() {
    var actions = new FrameActions(texts);
    var closer = actions.add(command("closer"));
    closer.getStyleClass().add("does-it");
    closer
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> texts.get("frames.act.look", model.selection().chosen().get().size()),
                model.selection().chosen()));
    actions.add(command("select"));
    actions.addRatings(ratings);
    actions.add(command("move"));
    actions.addSlates(
        List.copyOf(slateWords.values()),
        command ->
            slateWords.entrySet().stream()
                .filter(one -> one.getValue().equals(command))
                .findFirst()
                .flatMap(one -> model.slates().refusal(one.getKey())));
    return actions;
  }

  private Command command(String word) {
    return Commands.named("frames." + word, commands);
  }

  private Command chosen(String id, KeyCode key, Runnable action) {
    return new Command("frames." + id, text(id), Keys.plain(key), action, someChosen());
  }

  private BooleanBinding someChosen() {
    return Bindings.createBooleanBinding(
        () -> !model.selection().chosen().get().isEmpty(), model.selection().chosen());
  }

  /** The page on which frames are looked at closely. */
  public Screen closer() {
    return new CompareScreen(desk, pictures, compare, common);
  }

  private Command command(String id, KeyCode key, Runnable action) {
    return Command.of("frames." + id, text(id), Keys.plain(key), action);
  }

  private String text(String id) {
    return texts.get("command.frames." + id);
  }

  @Override
  public Finder finder() {
    var frames = model.job().scan().distinct();
    var places = model.job().tally().places();
    return (typed, most) ->
        frames.stream()
            .filter(frame -> typed.areIn(frame.stem()))
            .limit(most)
            .map(
                frame ->
                    new Finder.Found(
                        frame.stem(),
                        Optional.ofNullable(places.get(frame.id())).map(Place::setup).orElse(""),
                        () -> goTo(frame.id())))
            .toList();
  }

  private void goTo(FrameId frame) {
    model.goTo(frame);
    desk.show(id());
  }

  /** Turns to the frames that no setup has. */
  public void lookAtLoose() {
    model.lookAt(FrameHeading.unassigned());
    desk.show(id());
  }

  /** Turns to the slates. */
  public void lookAtSlates() {
    model.lookAt(FrameHeading.slates());
    desk.show(id());
  }

  /** Turns to the frames of a setup, all of them. */
  public void lookAtSetup(String code) {
    model.lookAt(FrameHeading.ofSetup(code));
    desk.show(id());
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
  public Screen anew() {
    leave();
    return new FramesScreen(desk, pictures, model, sidecars, handOff, compare);
  }

  @Override
  public void dispose() {
    leave();
    model.dispose();
  }

  private void leave() {
    following.unsubscribe();
    prints.dispose();
    why.dispose();
    filter.textProperty().unbindBidirectional(model.filter());
  }
}
