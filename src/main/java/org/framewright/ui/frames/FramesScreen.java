package org.framewright.ui.frames;

import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.Finder;
import org.framewright.ui.page.Screen;
import org.framewright.ui.session.JobSession;

/** The page of frames: what the job has, under the headings of its list. */
public final class FramesScreen implements Screen {
  /** The longest edge of a picture in the grid, in pixels. */
  static final int EDGE = 320;

  private static final int CLOSE_EDGE = 1600;
  private static final double HEADING_HEIGHT = 38;
  private static final double[] SIZES = {128, 176, 256};
  private static final String SIZE = "frames.size";
  private static final String HAND_OFF_PLACE = "handoff.place";

  private final Desk desk;
  private final Texts texts;
  private final FramePictures pictures;
  private final FramesModel model;
  private final HandOffModel handOff;
  private final ClientListModel clientList;

  private final PrintsPane prints;
  private final HBox node = new HBox();
  private final ListView<FrameHeading> headings = new ListView<>();
  private final TextField filter = new TextField();
  private final Button handOffButton = new Button();
  private final Subscription following;

  /**
   * @param pictures where the frames' pictures come from
   */
  public FramesScreen(Desk desk, JobSession session, FramePictures pictures) {
    this(
        desk,
        pictures,
        new FramesModel(
            session,
            desk.tasks(),
            desk.texts(),
            () -> System.getProperty("user.name", ""),
            desk::trouble),
        new HandOffModel(session, desk.tasks(), desk.texts(), desk::trouble),
        new ClientListModel(session, desk.tasks(), desk.texts(), desk::trouble));
    handOff.startAt(desk.preferences().path(HAND_OFF_PLACE));
  }

  private FramesScreen(
      Desk desk,
      FramePictures pictures,
      FramesModel model,
      HandOffModel handOff,
      ClientListModel clientList) {
    this.desk = desk;
    this.texts = desk.texts();
    this.pictures = pictures;
    this.model = model;
    this.handOff = handOff;
    this.clientList = clientList;
    this.prints =
        new PrintsPane(model.tiles(), model.selection(), pictures, texts, this::lookCloser);
    HBox.setHgrow(prints, Priority.ALWAYS);
    node.getStyleClass().add("frames");
    node.getChildren().addAll(prints, sheet());
    following =
        Subscription.combine(
            model.heading().subscribe(_ -> showHeading()),
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
    handOffButton.setOnAction(_ -> askHandOff());
    var byList = new Button(texts.get("frames.handOffByList"));
    byList.setId("hand-off-by-list");
    byList.setMaxWidth(Double.MAX_VALUE);
    byList.setOnAction(_ -> askForList());
    var column = new VBox(filter, headings, byList, handOffButton);
    column.getStyleClass().add("headings-sheet");
    return column;
  }

  private void size(double width) {
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
    prints.title(
        switch (heading.kind()) {
          case ALL -> texts.get("frames.titleAll", heading.frames(), heading.selects());
          case SELECTS -> texts.get("frames.titleSelects", heading.frames());
          case UNASSIGNED -> texts.get("frames.titleUnassigned", heading.frames());
          case SETUP, VIEW ->
              texts.get(
                  "frames.titleSetup",
                  heading.place().map(TileCell::shortly).orElse(""),
                  heading.title(),
                  heading.frames(),
                  heading.selects());
        });
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
                dialog::move));
  }

  private void askHandOff() {
    handOff.prepare(this::askWhereTo);
  }

  /** What the client wrote; then what would go of it. */
  private void askForList() {
    clientList.begin(
        () -> {
          var dialog = new ClientListDialog(clientList, desk);
          desk.dialogs()
              .show(
                  new DialogSpec(
                      texts.get("clientList.title"),
                      dialog.node(),
                      dialog.focus(),
                      texts.get("clientList.do"),
                      clientList.ready(),
                      () -> {
                        dialog.dispose();
                        clientList.named().ifPresent(it -> handOff.prepare(it, this::askWhereTo));
                      },
                      dialog::dispose));
        });
  }

  private void askWhereTo() {
    var plan = handOff.plan().get().orElseThrow();
    var dialog = new HandOffDialog(handOff, plan, desk);
    var title = texts.get("frames.handOffTitle");
    desk.dialogs()
        .show(
            plan.selects().isEmpty()
                ? DialogSpec.reading(title, dialog.node(), dialog.node())
                : DialogSpec.asking(
                    title,
                    dialog.node(),
                    dialog.focus(),
                    texts.get("frames.handOffDo", plan.selects().size(), plan.files()),
                    handOff.ready(),
                    this::deliver));
  }

  private void deliver() {
    Optional.ofNullable(handOff.place().get())
        .ifPresent(place -> desk.preferences().put(HAND_OFF_PLACE, place.toString()));
    handOff.deliver(
        ended -> {
          if (ended.done()) {
            clientList.clear();
            desk.say(ended.what());
          } else {
            var body = new VBox(WrappedText.of(ended.what()), WrappedText.of(ended.remedy()));
            body.getStyleClass().add("trouble");
            desk.dialogs().show(DialogSpec.reading(texts.get("frames.handOffNot"), body, body));
          }
        });
  }

  private void lookCloser() {
    model
        .current()
        .ifPresent(
            tile -> {
              var view = new ImageView();
              view.setPreserveRatio(true);
              view.fitWidthProperty().bind(node.widthProperty().multiply(0.85));
              view.fitHeightProperty().bind(node.heightProperty().multiply(0.75));
              pictures.show(tile.frame(), CLOSE_EDGE, view);
              var print = new StackPane(view);
              print.setMinSize(240, 160);
              desk.dialogs()
                  .show(
                      DialogSpec.reading(
                          tile.frame().stem()
                              + tile.place().map(p -> "  ·  " + TileCell.shortly(p)).orElse(""),
                          print,
                          print));
            });
  }

  @Override
  public String id() {
    return "frames";
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
    return List.of(
        command("select", KeyCode.S, model::toggleSelect),
        command("move", KeyCode.M, this::askMove),
        command("takeBack", KeyCode.BACK_SPACE, model::takeBackMove),
        command("handOff", KeyCode.H, this::askHandOff),
        command("handOffByList", KeyCode.N, this::askForList),
        command("closer", KeyCode.ENTER, this::lookCloser),
        command("find", KeyCode.SLASH, filter::requestFocus),
        command("grid", KeyCode.ESCAPE, prints.grid()::requestFocus),
        Command.of(
            "frames.all", text("all"), Keys.shortcut(KeyCode.A), () -> model.selection().all()),
        Command.of(
            "frames.nextHeading",
            text("nextHeading"),
            Keys.alt(KeyCode.DOWN),
            () -> model.turnHeading(1)),
        Command.of(
            "frames.headingBefore",
            text("headingBefore"),
            Keys.alt(KeyCode.UP),
            () -> model.turnHeading(-1)),
        command("small", KeyCode.DIGIT1, () -> size(SIZES[0])),
        command("middle", KeyCode.DIGIT2, () -> size(SIZES[1])),
        command("large", KeyCode.DIGIT3, () -> size(SIZES[2])));
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
    model.lookAtLoose();
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
    return new FramesScreen(desk, pictures, model, handOff, clientList);
  }

  @Override
  public void dispose() {
    leave();
    model.dispose();
  }

  private void leave() {
    following.unsubscribe();
    prints.dispose();
    filter.textProperty().unbindBidirectional(model.filter());
  }
}
