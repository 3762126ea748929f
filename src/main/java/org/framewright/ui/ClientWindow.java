package org.framewright.ui;

import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import org.framewright.frames.FrameId;
import org.framewright.ui.client.ClientModel;
import org.framewright.ui.client.ClientView;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.Theme;
import org.framewright.ui.page.Dialogs;
import org.framewright.ui.page.ViewWords;
import org.framewright.ui.session.JobSession;

/** The client's window; on a second display it fills it, else it comes up where it was. */
final class ClientWindow {
  /** The size of letters in pixels, and the height of the window from which on it grows with it. */
  private static final double LETTERS = 15;

  private static final double USUAL_HEIGHT = 880;

  /** Letters change by so many pixels at a time: all is styled anew for each. */
  private static final double STEP = 0.5;

  /** Asks in a window, on a part of it, whose agreement it is to a setup. */
  @FunctionalInterface
  interface SignOff {
    /** Asks; {@code over} runs when the question is gone. */
    void ask(Dialogs dialogs, Region on, String code, Runnable over);
  }

  /** Hears scanners in a window. */
  @FunctionalInterface
  interface Scanned {
    /** Listens to a window until it is closed, and says in its dialogs what cannot be done now. */
    void listenTo(Stage window, DialogLayer dialogs);
  }

  private final Texts texts;
  private final Stage stage = new Stage();
  private final ClientModel model;
  private final ClientView view;
  private final DialogLayer dialogs;
  private final Scene scene;
  private final SignOff signOff;
  private final ChangeListener<Number> grown = (_, _, _) -> dress();
  private Theme look;
  private double letters;
  private boolean withdrawn;
  private boolean fills;

  /**
   * A window that is not shown yet.
   *
   * @param scans hears scanners in it
   * @param closed hears that somebody closed it
   */
  ClientWindow(
      JobSession session,
      FramePictures pictures,
      Texts texts,
      WindowPlace kept,
      Theme look,
      SignOff signOff,
      Scanned scans,
      Runnable closed) {
    this.texts = texts;
    this.signOff = signOff;
    this.look = look;
    model = new ClientModel(session.view());
    dialogs = new DialogLayer(texts);
    var pictureOnly = command("pictureOnly", Keys.plain(KeyCode.V), model::turnPictureOnly);
    var agree = command("agree", Keys.plain(KeyCode.A), this::ask);
    var newest = command("newest", Keys.plain(KeyCode.HOME), model.looked()::newest);
    view =
        new ClientView(
            model,
            texts,
            pictures,
            new ViewWords(session.job().convention())::word,
            new ClientView.Commands(agree, pictureOnly, newest));
    var root = new StackPane(view.root(), dialogs.node());
    root.getStyleClass().addAll("table", "client");
    scene = new Scene(root, kept.width(960), kept.height(640));
    var commands = new Commands();
    commands.app(
        List.of(
            agree,
            pictureOnly,
            newest,
            command("earlier", Keys.plain(KeyCode.RIGHT), model.looked()::earlier),
            command("later", Keys.plain(KeyCode.LEFT), model.looked()::later),
            command(
                "fullScreen",
                Keys.fullScreen().getFirst(),
                () -> stage.setFullScreen(!stage.isFullScreen())),
            command("close", Keys.shift(KeyCode.C), stage::close)));
    commands.listenTo(scene, dialogs.open()::get);
    stage.setScene(scene);
    scans.listenTo(stage, dialogs);
    stage.setTitle(texts.get("client.window"));
    stage.setMinWidth(640);
    stage.setMinHeight(440);
    // The picture is what is shown, not how one leaves it; Escape dismisses the question.
    stage.setFullScreenExitHint("");
    stage.setFullScreenExitKeyCombination(KeyCombination.NO_MATCH);
    stage.setOnHiding(_ -> kept.keep(stage, scene));
    stage.setOnHidden(
        _ -> {
          if (!withdrawn) {
            closed.run();
          }
        });
    scene.heightProperty().addListener(grown);
    dress();
  }

  private Command command(String id, KeyCodeCombination key, Runnable action) {
    return Command.of("client." + id, texts.get("command.client." + id), key, action);
  }

  private void ask() {
    if (model.shown().get().canAgree()) {
      model.ask();
      signOff.ask(dialogs, view.asking(), model.shown().get().code(), model::answered);
    }
  }

  /** Turns to a frame, if it is one of the last of what is shown. */
  void lookAt(FrameId frame) {
    model.looked().turnTo(frame);
  }

  void turnPictureOnly() {
    model.turnPictureOnly();
  }

  ReadOnlyBooleanProperty showing() {
    return stage.showingProperty();
  }

  Stage stage() {
    return stage;
  }

  Scene scene() {
    return scene;
  }

  /** Takes another look; its size goes by its own height. */
  void dress(Theme next) {
    look = next;
    letters = 0;
    dress();
  }

  private void dress() {
    var wanted = LETTERS * Math.max(1, scene.getHeight() / USUAL_HEIGHT);
    var rounded = Math.round(wanted / STEP) * STEP;
    if (rounded != letters) {
      letters = rounded;
      look.dressInPixels(scene, rounded);
    }
  }

  void show() {
    withdrawn = false;
    stage.show();
    // Not before: a window is filled on the display that it is on, and a busy window manager takes
    // one that is not there yet for one on the first display.
    stage.setFullScreen(fills);
  }

  /** It fills a display when it is shown. */
  void fill(Rectangle2D display) {
    stage.setX(display.getMinX());
    stage.setY(display.getMinY());
    fills = true;
  }

  /** Goes out of sight until it is shown again. */
  void withdraw() {
    withdrawn = true;
    stage.hide();
    stage.setFullScreen(false);
    fills = false;
  }

  void dispose() {
    withdrawn = true;
    dialogs.dismiss();
    scene.heightProperty().removeListener(grown);
    stage.close();
    view.dispose();
  }
}
