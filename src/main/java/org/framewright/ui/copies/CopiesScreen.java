package org.framewright.ui.copies;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.base.Problem;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;
import org.framewright.ui.session.JobSession;

/** The page of copies: the places, whether a card may be cleared, and copying. */
public final class CopiesScreen implements Screen {
  /** Its id. */
  public static final String ID = "copies";

  /** Of the page's width. */
  private static final double PLACES = 0.34;

  /** In pixels: text that is broken to no width at all would be as high as it has letters. */
  private static final double NARROW = 400;

  private final Desk desk;
  private final Texts texts;
  private final CopiesModel model;
  private final VBox node = new VBox();
  private final Label title = new Label();
  private final Label summary = new Label();
  private final WrappedText why = new WrappedText("notice-what");
  private final WrappedText remedy = new WrappedText("remedy");
  private final VBox refused = new VBox(why, remedy);
  private final PlacesPane places;
  private final StackPane right = new StackPane();
  private final BeforePane before;
  private final FilesPane files;
  private final AnswersPane answers;
  private final CopiedPane copied;
  private final WorkPane work;
  private final List<Command> commands;
  private final Subscription following;

  /**
   * @param disks of this computer
   */
  public CopiesScreen(Desk desk, JobSession session, Disks disks) {
    this(
        desk,
        new CopiesModel(
            session.job(),
            () -> session.view().get().scan().frames(),
            disks,
            desk.preferences(),
            desk.tasks(),
            desk.texts(),
            desk.clock(),
            desk::trouble));
  }

  private CopiesScreen(Desk desk, CopiesModel model) {
    this.desk = desk;
    this.texts = desk.texts();
    this.model = model;
    this.places = new PlacesPane(model, texts);
    this.files = new FilesPane(model, texts);
    this.commands = makeCommands();
    this.before = new BeforePane(texts);
    files.offer(command("waive"));
    this.answers = new AnswersPane(model, texts, files, command("say"));
    this.copied = new CopiedPane(texts, command("compare"), command("copy"));
    this.work = new WorkPane(texts, command("stop"));
    places.lay(
        command("add"),
        List.of(command("turn"), command("remove")),
        command("compare"),
        command("copy"),
        command("measure"));
    title.setId("copies-title");
    title.getStyleClass().add("grid-title");
    title.setMinWidth(Region.USE_PREF_SIZE);
    summary.getStyleClass().add("copies-summary");
    var promise = new Label(texts.get("copies.promise"));
    promise.getStyleClass().addAll("quiet", "copies-promise");
    promise.setMinWidth(Region.USE_PREF_SIZE);
    var head = new FlowPane(title, summary, promise);
    head.getStyleClass().add("copies-head");
    refused.getStyleClass().addAll("paper-sheet", "notice", "needs");
    // The places keep their width whatever stands beside them.
    places.prefWidthProperty().bind(node.widthProperty().multiply(PLACES));
    right.setMinWidth(0);
    right.prefWidthProperty().bind(Bindings.max(NARROW, node.widthProperty().multiply(1 - PLACES)));
    HBox.setHgrow(right, Priority.ALWAYS);
    var middle = new HBox(places, right);
    middle.getStyleClass().add("copies-middle");
    VBox.setVgrow(middle, Priority.ALWAYS);
    node.getStyleClass().add("copies");
    node.getChildren().addAll(head, refused, middle);
    following =
        Subscription.combine(
            model.outcome().subscribe(_ -> show()),
            model.doing().subscribe(_ -> show()),
            model.again().subscribe(_ -> show()),
            model.way().subscribe(work::show),
            model.refused().subscribe(this::showRefused));
  }

  private Command command(String word) {
    return Commands.named(ID + "." + word, commands);
  }

  private void show() {
    var doing = model.doing().get();
    switch (model.outcome().get()) {
      case Outcome.Before now -> {
        before.show(now);
        title.setText(texts.get("copies.title.before"));
        summary.setText("");
        lay(before);
      }
      case Outcome.Answered now -> {
        answers.show(now);
        // No answer that does not hold any more is said so large.
        title.setText(
            now.answers().stream().noneMatch(model::isPast)
                ? heading(now)
                : texts.get("copies.title.before"));
        summary.setText(now.summary());
        lay(answers);
      }
      case Outcome.Copied now -> {
        copied.show(now);
        title.setText(texts.get("copies.title.copied"));
        summary.setText("");
        lay(copied);
      }
    }
    if (doing == CopiesModel.Doing.COMPARING || doing == CopiesModel.Doing.COPYING) {
      // What was answered before is not so any more, or not yet known to be.
      title.setText(texts.get("copies.title.before"));
      summary.setText("");
      lay(work);
    }
  }

  private void lay(Node part) {
    if (!right.getChildren().equals(List.of(part))) {
      right.getChildren().setAll(part);
    }
  }

  /** {@code 3 cards: 1 not yet, 2 may be cleared}. */
  private String heading(Outcome.Answered now) {
    var counts = new ArrayList<String>();
    for (var answer : Answer.values()) {
      long count = now.answers().stream().filter(one -> one.answer() == answer).count();
      if (count > 0) {
        counts.add(texts.get("copies.count." + answer.word(), count));
      }
    }
    return now.answers().size() < 2
        ? texts.get("copies.title.answered", now.answers().size())
        : texts.get(
            "copies.title.answers",
            now.answers().size(),
            texts.apart(counts.toArray(String[]::new)));
  }

  private void showRefused(Optional<Problem> problem) {
    refused.setVisible(problem.isPresent());
    refused.setManaged(problem.isPresent());
    why.setText(problem.map(texts::sentence).orElse(""));
    remedy.setText(problem.map(texts::remedy).orElse(""));
  }

  // What can be done

  private List<Command> makeCommands() {
    var all = new ArrayList<Command>();
    all.add(
        new Command(
            "copies.compare",
            text("compare"),
            Keys.shortcut(KeyCode.ENTER),
            model::compare,
            model.canCompare()));
    all.add(
        new Command(
            "copies.seal",
            text("seal"),
            Keys.shortcutShift(KeyCode.ENTER),
            model::compareAndSeal,
            model.canSeal()));
    all.add(
        Command.of(
            "copies.needed",
            text("needed"),
            Keys.plain(KeyCode.N),
            () -> places.needed().requestFocus()));
    all.add(
        new Command(
            "copies.stop",
            text("stop"),
            Keys.plain(KeyCode.ESCAPE),
            model::stop,
            model.idle().not()));
    all.add(
        new Command(
            "copies.copy", text("copy"), Keys.plain(KeyCode.C), this::ask, model.canCopy()));
    all.add(
        new Command(
            "copies.add", text("add"), Keys.plain(KeyCode.INSERT), this::add, model.idle()));
    all.add(
        new Command(
            "copies.turn",
            text("turn"),
            Keys.plain(KeyCode.K),
            this::turn,
            when(() -> model.canTurn(places.chosen()))));
    all.add(
        new Command(
            "copies.remove",
            text("remove"),
            Keys.plain(KeyCode.DELETE),
            () -> model.remove(places.chosen()),
            when(() -> model.canRemove(places.chosen()))));
    all.add(
        new Command(
            "copies.say",
            text("say"),
            Keys.plain(KeyCode.S),
            this::copySentence,
            Bindings.createBooleanBinding(
                () -> model.chosen().get() != null && !model.isPast(model.chosen().get()),
                model.chosen(),
                model.again())));
    all.add(
        new Command(
            "copies.waive",
            text("waive"),
            Keys.plain(KeyCode.W),
            this::waive,
            Bindings.createBooleanBinding(
                () -> model.canWaive(files.chosen()),
                files.list().getSelectionModel().selectedItemProperty(),
                model.idle())));
    all.add(
        new Command(
            "copies.measure",
            text("measure"),
            Keys.plain(KeyCode.M),
            model::measure,
            model.idle()));
    all.add(
        new Command("copies.look", text("look"), Keys.plain(KeyCode.L), model::look, model.idle()));
    all.add(
        Command.of(
            "copies.places",
            text("places"),
            Keys.plain(KeyCode.P),
            () -> places.list().requestFocus()));
    all.add(
        Command.of(
            "copies.answers",
            text("answers"),
            Keys.plain(KeyCode.A),
            () -> answers.focus().requestFocus()));
    all.add(Command.of("copies.files", text("files"), Keys.plain(KeyCode.F), files::takeKeys));
    all.add(
        Command.of(
            "copies.filter",
            text("filter"),
            Keys.plain(KeyCode.SLASH),
            () -> files.filter().requestFocus()));
    all.add(
        Command.of(
            "copies.all", text("all"), Keys.digit(0), () -> model.only().set(Optional.empty())));
    var states = List.of(FileLine.State.values());
    for (int i = 0; i < states.size(); i++) {
      var state = states.get(i);
      all.add(
          Command.of(
              "copies.only-" + state.word(),
              texts.get("command.copies.only", texts.get("copies.state." + state.word())),
              Keys.digit(i + 1),
              () -> files.turn(state)));
    }
    return List.copyOf(all);
  }

  private BooleanBinding when(BooleanSupplier holds) {
    return Bindings.createBooleanBinding(
        holds::getAsBoolean,
        places.list().getSelectionModel().selectedItemProperty(),
        model.idle(),
        model.places());
  }

  private String text(String word) {
    return texts.get("command.copies." + word);
  }

  private void add() {
    desk.files().folder(texts.get("copies.addTitle"), Optional.empty()).ifPresent(model::add);
  }

  private void ask() {
    var question = model.question();
    desk.dialogs().show(new CopyDialog(question, desk).spec(() -> model.copy(question)));
  }

  private void turn() {
    var place = places.chosen();
    if (!model.needsWord(place)) {
      model.turn(place);
    } else if (model.canAskForWord(place)) {
      desk.dialogs().show(BackupQuestion.spec(place, texts, () -> model.sayBackup(place)));
    }
  }

  private void waive() {
    var line = files.chosen();
    if (line.waivedBy().isPresent()) {
      model.keep(line);
    } else {
      var question = new WaiveDialog(line, model.waivedLastBy(), texts);
      desk.dialogs().show(question.spec(person -> model.waive(line, person)));
    }
  }

  private void copySentence() {
    Optional.ofNullable(model.chosen().get())
        .ifPresent(
            answer -> {
              Clipboard.getSystemClipboard()
                  .setContent(Map.of(DataFormat.PLAIN_TEXT, answer.sentence()));
              desk.say(texts.get("copies.said"));
            });
  }

  /** Brings a card that was put in to the page, to be asked about. */
  public void take(Path card) {
    model.add(card);
    desk.show(ID);
  }

  @Override
  public String id() {
    return ID;
  }

  @Override
  public String title() {
    return texts.get("copies.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return model.outcome().get() instanceof Outcome.Answered ? answers.focus() : places.list();
  }

  @Override
  public List<Command> commands() {
    return commands;
  }

  @Override
  public void onShown() {
    model.look();
  }

  @Override
  public Screen anew() {
    unsubscribe();
    return new CopiesScreen(desk, model);
  }

  @Override
  public void dispose() {
    unsubscribe();
    model.close();
  }

  private void unsubscribe() {
    following.unsubscribe();
    places.dispose();
    answers.dispose();
  }
}
