package org.framewright.ui.board;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import org.framewright.day.DaySummary;
import org.framewright.day.OrderOfWork;
import org.framewright.job.Comment;
import org.framewright.job.Standing;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Dialogs;
import org.framewright.ui.page.Finder;
import org.framewright.ui.page.Screen;
import org.framewright.ui.page.StepWords;
import org.framewright.ui.page.ViewWords;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.settings.WorkingHours;

/** Run the list: the page on which the day is spent. */
public final class BoardScreen implements Screen {
  private static final String GROUPING = "board.grouping";

  private final Desk desk;
  private final Texts texts;
  private final JobSession session;
  private final BoardModel model;
  private final SetupQuestions questions;
  private final OutlookModel outlook;
  private final BoardView view;
  private final NextNameModel nextName;
  private final ClientScreen clientScreen;
  private final FramePictures pictures;
  private final Runnable importList;
  private final Runnable showLoose;
  private final Runnable share;
  private final List<Command> commands;
  private boolean inFront;

  /**
   * The board of a job.
   *
   * @param clientScreen what is shown on it, if it is there
   * @param importList asks for a list of the client's and shows what it is
   * @param showLoose brings the frames of no setup to the front
   * @param share opens what is about phones and tablets
   */
  public BoardScreen(
      Desk desk,
      JobSession session,
      FramePictures pictures,
      ClientScreen clientScreen,
      Runnable importList,
      Runnable showLoose,
      Runnable share) {
    this(desk, session, pictures, clientScreen, importList, showLoose, share, model(desk, session));
    desk.preferences()
        .get(GROUPING)
        .flatMap(BoardScreen::grouping)
        .ifPresent(model.grouping()::set);
  }

  private static OutlookModel outlook(Desk desk, JobSession session) {
    return new OutlookModel(
        view ->
            Outlook.of(
                DaySummary.of(
                    session.job(),
                    view.scan(),
                    new Standing(view.tally(), view.state()),
                    WorkingHours.kept(desk.preferences(), desk.clock().getZone()).value())),
        desk.tasks(),
        // What keeps the folder from being read is said elsewhere.
        _ -> {});
  }

  /** What is done is answered in words, with how it is undone. */
  private static BoardModel model(Desk desk, JobSession session) {
    var comments =
        new CommentsModel(
            session.job().station(),
            new SeenComments(desk.preferences(), session.job().identity()),
            desk.clock().getZone(),
            desk.texts(),
            new ViewWords(session.job().convention())::word);
    return new BoardModel(
        session.view(),
        session,
        desk.texts(),
        comments,
        comment -> desk.say(said(desk.texts(), comment)),
        StepWords.answering(desk, session, "board"),
        desk::trouble);
  }

  private static String said(Texts texts, Comment comment) {
    return texts.get(
        "elsewhere.comment",
        comment.who().orElseGet(() -> texts.get("elsewhere.other")),
        comment.setup(),
        comment.text());
  }

  private BoardScreen(
      Desk desk,
      JobSession session,
      FramePictures pictures,
      ClientScreen clientScreen,
      Runnable importList,
      Runnable showLoose,
      Runnable share,
      BoardModel model) {
    this.desk = desk;
    this.texts = desk.texts();
    this.session = session;
    this.pictures = pictures;
    this.clientScreen = clientScreen;
    this.importList = importList;
    this.showLoose = showLoose;
    this.share = share;
    this.model = model;
    var views = new ViewWords(session.job().convention());
    this.questions = new SetupQuestions(desk, session, model, views, this::sheet);
    this.nextName = nextName(desk, session, views);
    this.commands = makeCommands();
    this.outlook = outlook(desk, session);
    this.view =
        new BoardView(
            model,
            texts,
            pictures,
            views::word,
            () -> session.job().now(),
            outlook,
            nextName,
            at -> look(() -> model.looked().turnTo(at)),
            new PictureLine(texts, command("copyNext"), onPicture()),
            new SetActions(
                texts,
                command("next"),
                List.of(command("agree"), command("pickup"), command("drop"))),
            onLine(),
            importList,
            command("loose"),
            command("followSlate"),
            command("seen"),
            share);
  }

  private static NextNameModel nextName(Desk desk, JobSession session, ViewWords views) {
    return new NextNameModel(
        session.view(),
        session.job().framesFolder(),
        session.job()::nextName,
        desk.texts(),
        views::word,
        desk.tasks(),
        name -> Clipboard.getSystemClipboard().setContent(Map.of(DataFormat.PLAIN_TEXT, name)),
        desk::say,
        desk::trouble);
  }

  @Override
  public String id() {
    return "board";
  }

  @Override
  public String title() {
    return texts.get("board.title");
  }

  @Override
  public Node node() {
    return view.node();
  }

  @Override
  public Node focus() {
    return view.focus();
  }

  /** The model, for whoever shows the same list elsewhere. */
  public BoardModel model() {
    return model;
  }

  /** From now on the page is in parts, which come one by one when it is shown. */
  public void takeApart() {
    view.takeApart();
  }

  @Override
  public Finder finder() {
    var setups = session.view().get().list().setups();
    return (typed, most) ->
        Stream.concat(
                setups.stream().filter(setup -> typed.are(setup.code())),
                setups.stream()
                    .filter(setup -> !typed.are(setup.code()))
                    .filter(setup -> typed.areIn(setup.code() + " " + setup.title())))
            .limit(most)
            .map(
                setup ->
                    new Finder.Found(
                        setup.code() + "  " + setup.title(),
                        setup.rack().orElse(""),
                        () -> goTo(setup.code())))
            .toList();
  }

  /** Turns to a setup on the list. */
  public void goTo(String code) {
    desk.show(id());
    model.goTo(code);
  }

  @Override
  public List<Command> commands() {
    return commands;
  }

  private List<Command> makeCommands() {
    return List.of(
        chosen("putOnSet", KeyCode.ENTER, model::putOnSet),
        always("next", KeyCode.SPACE, model::shotAndNext),
        new Command(
            "board.shot", text("shot"), Keys.shift(KeyCode.SPACE), model::shot, model.chosen()),
        chosen("agree", KeyCode.A, questions::whoAgrees),
        chosen("pickup", KeyCode.R, questions::whyAgain),
        chosen("drop", KeyCode.DELETE, questions::whyNot),
        chosen("toShoot", KeyCode.T, model::toShoot),
        always("undo", KeyCode.BACK_SPACE, model::undo).orBy(Keys.shortcut(KeyCode.Z)),
        Command.of("board.redo", text("redo"), Keys.shortcutShift(KeyCode.Z), model::redo)
            .orBy(Keys.shortcut(KeyCode.Y)),
        always("add", KeyCode.INSERT, () -> questions.setup(SetupDraft.Kind.ADDED))
            .orBy(Keys.plain(KeyCode.I)),
        chosen("edit", KeyCode.E, () -> questions.setup(SetupDraft.Kind.CHANGED)),
        new Command(
            "board.duplicate",
            text("duplicate"),
            Keys.shortcut(KeyCode.D),
            () -> questions.setup(SetupDraft.Kind.DUPLICATE),
            model.chosen()),
        always("viewNext", KeyCode.RIGHT, () -> model.turnView(1)),
        always("viewBefore", KeyCode.LEFT, () -> model.turnView(-1)),
        always("down", KeyCode.DOWN, () -> model.step(1)).repeating(),
        always("up", KeyCode.UP, () -> model.step(-1)).repeating(),
        always("farDown", KeyCode.PAGE_DOWN, () -> model.step(10)).repeating(),
        always("farUp", KeyCode.PAGE_UP, () -> model.step(-10)).repeating(),
        always("goOnSet", KeyCode.HOME, model::selectOnSet),
        chosen("bringNext", KeyCode.N, model::bringNext),
        new Command(
            "board.later",
            text("later"),
            Keys.alt(KeyCode.DOWN),
            () -> model.move(1),
            model.chosen()),
        new Command(
            "board.earlier",
            text("earlier"),
            Keys.alt(KeyCode.UP),
            () -> model.move(-1),
            model.chosen()),
        always("order", KeyCode.W, this::proposeOrder),
        always("find", KeyCode.SLASH, this::find),
        always("group", KeyCode.G, model::regroup),
        always("importList", KeyCode.L, importList),
        new Command(
            "board.loose",
            text("loose"),
            Keys.plain(KeyCode.U),
            showLoose,
            Bindings.createBooleanBinding(
                () -> model.standing().get().loose() > 0, model.standing())),
        new Command(
            "board.followSlate",
            text("followSlate"),
            Keys.plain(KeyCode.K),
            model::followSlate,
            Bindings.createBooleanBinding(
                () -> model.standing().get().doubt().isPresent(), model.standing())),
        chosen("comment", KeyCode.M, questions::comment),
        new Command(
            "board.commentFrame",
            text("commentFrame"),
            Keys.shift(KeyCode.M),
            questions::commentFrame,
            isFrameLookedAt()),
        new Command(
            "board.seen",
            text("seen"),
            Keys.plain(KeyCode.S),
            model::seeComments,
            Bindings.createBooleanBinding(() -> model.said().get().isAnyNew(), model.said())),
        always("copyNext", KeyCode.C, nextName::copy),
        new Command(
            "board.show",
            text("show"),
            Keys.plain(KeyCode.O),
            this::showInFileManager,
            isFrameLookedAt()),
        look("lookEarlier", KeyCode.RIGHT, model.looked()::earlier),
        look("lookLater", KeyCode.LEFT, model.looked()::later),
        look("lookNewest", KeyCode.HOME, model.looked()::newest),
        always("pictureOnly", KeyCode.V, this::turnPictureOnly),
        Command.of("board.client", text("client"), Keys.shift(KeyCode.C), clientScreen::turn));
  }

  private ObservableBooleanValue isFrameLookedAt() {
    return Bindings.createBooleanBinding(
        () -> model.looked().look().get().frame().isPresent(), model.looked().look());
  }

  private Command look(String id, KeyCode key, Runnable turn) {
    return Command.of("board." + id, text(id), Keys.shift(key), () -> look(turn));
  }

  /** What one goes back to here, the client's screen shows, too. */
  private void look(Runnable turn) {
    turn.run();
    model.looked().look().get().frame().ifPresent(frame -> clientScreen.lookAt(frame.id()));
  }

  private void showInFileManager() {
    model
        .looked()
        .look()
        .get()
        .frame()
        .ifPresent(frame -> desk.showInFileManager(frame.primary().path()));
  }

  /** On the client's screen where it is there, else here. */
  private void turnPictureOnly() {
    if (clientScreen.isShown()) {
      clientScreen.turnPictureOnly();
    } else if (view.turnPictureOnly()) {
      desk.say(texts.get("board.pictureOnly"));
    }
  }

  /** Looks for an order of what is left in which less is changed, and shows it. */
  private void proposeOrder() {
    var view = session.view().get();
    var hours = WorkingHours.kept(desk.preferences(), desk.clock().getZone()).value();
    desk.tasks()
        .run(
            texts.get("order.working"),
            _ -> OrderOfWork.of(session.job(), view.scan(), view.state(), hours, Set.of()),
            found -> {
              if (inFront) {
                questions.order(ProposedOrder.of(found, texts));
              }
            },
            desk::trouble);
  }

  private Command command(String id) {
    return Commands.named("board." + id, commands);
  }

  /** What can be done with a line by mouse: a double click is the first. */
  private List<Command> onLine() {
    return Stream.of(
            "putOnSet",
            "bringNext",
            "agree",
            "pickup",
            "drop",
            "toShoot",
            "shot",
            "comment",
            "edit",
            "duplicate",
            "add",
            "order")
        .map(this::command)
        .toList();
  }

  /** What can be done on the pictures by mouse. */
  private List<Command> onPicture() {
    return Stream.of("copyNext", "commentFrame", "show", "lookNewest", "pictureOnly", "client")
        .map(this::command)
        .toList();
  }

  private Command always(String id, KeyCode key, Runnable action) {
    return new Command(
        "board." + id,
        text(id),
        Keys.plain(key),
        action,
        Bindings.createBooleanBinding(() -> true));
  }

  private Command chosen(String id, KeyCode key, Runnable action) {
    return new Command("board." + id, text(id), Keys.plain(key), action, model.chosen());
  }

  private String text(String id) {
    return texts.get("command.board." + id);
  }

  private void find() {
    view.filter().requestFocus();
  }

  private Region sheet() {
    return view.sheet();
  }

  /**
   * Asks in another window whose agreement it is, and ticks the sign-off.
   *
   * @param dialogs that window's
   * @param on the part of it that the question lies on
   * @param over runs when the question is gone, answered or not
   */
  public void askWhoAgrees(Dialogs dialogs, Region on, String code, Runnable over) {
    questions.whoAgrees(dialogs, on, code, over);
  }

  @Override
  public void onShown() {
    inFront = true;
    outlook.workAgain();
    view.run();
  }

  /** Does something once the page is there, or gives way to another before it is. */
  public void whenThere(Runnable action) {
    view.whenThere(action);
  }

  private static Optional<Grouping> grouping(String word) {
    return List.of(Grouping.values()).stream()
        .filter(grouping -> word(grouping).equals(word))
        .findFirst();
  }

  private static String word(Grouping grouping) {
    return grouping.name().toLowerCase(Locale.ROOT);
  }

  @Override
  public void onHidden() {
    inFront = false;
    desk.preferences().put(GROUPING, word(model.grouping().get()));
    view.pause();
  }

  @Override
  public Screen anew() {
    nextName.dispose();
    view.dispose();
    return new BoardScreen(
        desk, session, pictures, clientScreen, importList, showLoose, share, model);
  }

  @Override
  public void dispose() {
    nextName.dispose();
    view.dispose();
    model.dispose();
  }
}
