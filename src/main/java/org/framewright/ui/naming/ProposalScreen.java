package org.framewright.ui.naming;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;

/** The page on which a convention is proposed from names that a studio already uses. */
public final class ProposalScreen implements Screen {
  /** What other parts of the app call this page by. */
  public static final String ID = "proposal";

  private final Desk desk;
  private final Texts texts;
  private final ProposalModel model;
  private final Runnable startJob;
  private final GivenPane given;
  private final QuestionLine question;
  private final ExamplesPane examples;
  private final ProposedPane proposed;
  private final HBox node;
  private final Subscription following;

  /**
   * @param saved gets the file of the convention that was saved
   * @param startJob shows the page on which a job is started
   */
  public ProposalScreen(Desk desk, Consumer<Path> saved, Runnable startJob) {
    this(desk, new ProposalModel(desk.tasks(), desk.texts(), desk::trouble, saved), startJob);
  }

  private ProposalScreen(Desk desk, ProposalModel model, Runnable startJob) {
    this.desk = desk;
    this.texts = desk.texts();
    this.model = model;
    this.startJob = startJob;
    this.given = new GivenPane(model, texts);
    this.question = new QuestionLine(model, texts);
    this.examples = new ExamplesPane(model, texts);
    this.proposed = new ProposedPane(model, texts, then());
    var word = new Label(texts.get("proposal.examples"));
    word.getStyleClass().add("table-word");
    VBox.setVgrow(examples, Priority.ALWAYS);
    VBox.setVgrow(proposed, Priority.ALWAYS);
    var made = new VBox(word, examples, question, proposed);
    made.getStyleClass().add("proposal-made");
    made.setMinWidth(0);
    HBox.setHgrow(made, Priority.ALWAYS);
    this.node = new HBox(given, made);
    node.getStyleClass().add("proposal");
    following =
        model
            .proposed()
            .subscribe(
                now -> {
                  examples.show(now);
                  question.show(now);
                });
  }

  private ProposedPane.Then then() {
    return new ProposedPane.Then() {
      @Override
      public void save() {
        ProposalScreen.this.save();
      }

      @Override
      public void startJob() {
        startJob.run();
      }
    };
  }

  private void save() {
    desk.files()
        .save(texts.get("naming.saveAsTitle"), Optional.empty(), model.suggestedFile())
        .ifPresent(model::save);
  }

  private void nextUnread() {
    var list = examples.names();
    var items = list.getItems();
    int from = list.getSelectionModel().getSelectedIndex();
    for (int i = 1; i <= items.size(); i++) {
      int at = Math.floorMod(from + i, items.size());
      if (items.get(at).unread().isPresent()) {
        list.getSelectionModel().select(at);
        list.scrollTo(at);
        list.requestFocus();
        return;
      }
    }
  }

  @Override
  public String id() {
    return ID;
  }

  @Override
  public String title() {
    return texts.get("proposal.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return given.names();
  }

  @Override
  public List<Command> commands() {
    return List.of(
        new Command(
            "proposal.save",
            texts.get("command.proposal.save"),
            Keys.shortcut(KeyCode.S),
            this::save,
            model.canSave()),
        Command.of(
            "proposal.names",
            texts.get("command.proposal.names"),
            Keys.shortcut(KeyCode.L),
            given.names()::requestFocus),
        Command.of(
            "proposal.pieces",
            texts.get("command.proposal.pieces"),
            Keys.shortcut(KeyCode.P),
            examples::goToPieces),
        Command.of(
            "proposal.forget",
            texts.get("command.proposal.forget"),
            Keys.shortcut(KeyCode.R),
            model::forget),
        Command.of(
            "proposal.next",
            texts.get("command.proposal.next"),
            Keys.alt(KeyCode.DOWN),
            this::nextUnread),
        Command.of(
            "proposal.findings",
            texts.get("command.proposal.findings"),
            Keys.shortcut(KeyCode.J),
            proposed.findings()::requestFocus));
  }

  @Override
  public Screen anew() {
    dispose();
    return new ProposalScreen(desk, model, startJob);
  }

  @Override
  public void dispose() {
    following.unsubscribe();
    given.dispose();
    examples.dispose();
    proposed.dispose();
  }
}
