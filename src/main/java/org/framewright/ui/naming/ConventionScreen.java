package org.framewright.ui.naming;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;

/** The page on which a convention is written, with its proof beside it. */
public final class ConventionScreen implements Screen {
  private final Desk desk;
  private final Texts texts;
  private final ConventionModel model;
  private final Runnable whenEmpty;
  private final Runnable fromNames;
  private final WritingPane writing;
  private final ProofPane proof;
  private final HBox node;
  private final Subscription following;

  /**
   * @param saved gets the file that was written
   * @param whenEmpty asked to open a convention when the page is shown without one
   * @param fromNames shows the page on which one is proposed from names in use
   */
  public ConventionScreen(Desk desk, Consumer<Path> saved, Runnable whenEmpty, Runnable fromNames) {
    this(
        desk,
        new ConventionModel(desk.tasks(), desk.texts(), desk::trouble, saved),
        whenEmpty,
        fromNames);
  }

  private ConventionScreen(
      Desk desk, ConventionModel model, Runnable whenEmpty, Runnable fromNames) {
    this.desk = desk;
    this.texts = desk.texts();
    this.model = model;
    this.whenEmpty = whenEmpty;
    this.fromNames = fromNames;
    this.writing = new WritingPane(model, texts, this::saveAs, fromNames);
    this.proof = new ProofPane(model, texts, writing::goTo);
    this.node = new HBox(writing, proof);
    node.getStyleClass().add("convention");
    HBox.setHgrow(writing, Priority.ALWAYS);
    following =
        model
            .checked()
            .subscribe(
                now -> {
                  proof.show(now);
                  writing.mark(now.findings());
                });
  }

  /**
   * Opens a convention's file. What is being written and not saved stays, and the page says so.
   *
   * @param asDraft whether a new one begins there, to be saved elsewhere
   */
  public void open(Path file, boolean asDraft) {
    model.open(file, asDraft);
  }

  /** Whether something is written that is not saved. */
  public boolean isUnsaved() {
    return model.changed().get();
  }

  private void saveAs() {
    desk.files()
        .save(
            texts.get("naming.saveAsTitle"),
            model.file().get().map(Path::getParent),
            model.file().get().map(file -> file.getFileName().toString()).orElse("convention.yaml"))
        .ifPresent(model::saveAs);
  }

  @Override
  public String id() {
    return "convention";
  }

  @Override
  public String title() {
    return texts.get("naming.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return writing.area();
  }

  @Override
  public void onShown() {
    if (model.text().get().isEmpty() && !model.changed().get()) {
      whenEmpty.run();
    }
  }

  @Override
  public List<Command> commands() {
    return List.of(
        new Command(
            "naming.save",
            texts.get("command.naming.save"),
            Keys.shortcut(KeyCode.S),
            model::save,
            model.canSave()),
        Command.of(
            "naming.saveAs", texts.get("command.naming.saveAs"), Keys.alt(KeyCode.S), this::saveAs),
        Command.of(
            "naming.next",
            texts.get("command.naming.next"),
            Keys.alt(KeyCode.DOWN),
            proof::nextFinding),
        Command.of(
            "naming.findings",
            texts.get("command.naming.findings"),
            Keys.shortcut(KeyCode.J),
            proof.findings()::requestFocus),
        Command.of(
            "naming.text",
            texts.get("command.naming.text"),
            Keys.shortcut(KeyCode.L),
            writing.area()::requestFocus),
        Command.of(
            "naming.fromNames",
            texts.get("command.naming.fromNames"),
            Keys.shortcut(KeyCode.N),
            fromNames));
  }

  @Override
  public Screen anew() {
    dispose();
    return new ConventionScreen(desk, model, whenEmpty, fromNames);
  }

  @Override
  public void dispose() {
    following.unsubscribe();
    writing.dispose();
  }
}
