package org.framewright.ui;

import java.util.List;
import java.util.function.BiConsumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.StackPane;
import javafx.stage.Screen;
import javafx.stage.Stage;
import org.framewright.ui.client.ClientModel;
import org.framewright.ui.client.ClientView;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.Theme;
import org.framewright.ui.page.Dialogs;
import org.framewright.ui.session.JobSession;

/** The client's window; on a second display it fills it, else it comes up where it was. */
final class ClientWindow {
  private final Stage stage = new Stage();
  private final ClientModel model;
  private final ClientView view;
  private final DialogLayer dialogs;
  private final Scene scene;

  /**
   * A window that is not shown yet.
   *
   * @param agrees asks on the given layer whose agreement it is to the setup of the given code
   */
  ClientWindow(
      JobSession session,
      FramePictures pictures,
      Texts texts,
      Stage beside,
      WindowPlace kept,
      BiConsumer<Dialogs, String> agrees) {
    model = new ClientModel(session.view());
    dialogs = new DialogLayer(texts);
    view = new ClientView(model, texts, pictures, code -> agrees.accept(dialogs, code));
    scene =
        new Scene(new StackPane(view.root(), dialogs.node()), kept.width(960), kept.height(640));
    var commands = new Commands();
    commands.app(
        List.of(
            Command.of(
                "client.agree",
                texts.get("command.client.agree"),
                Keys.plain(KeyCode.A),
                () -> {
                  if (model.shown().get().canAgree()) {
                    agrees.accept(dialogs, model.shown().get().code());
                  }
                }),
            Command.of(
                "client.fullScreen",
                texts.get("command.app.fullScreen"),
                Keys.plain(KeyCode.F11),
                () -> stage.setFullScreen(!stage.isFullScreen())),
            Command.of(
                "client.close",
                texts.get("command.client.close"),
                Keys.plain(KeyCode.C),
                stage::close)));
    commands.listenTo(scene, dialogs.open()::get);
    stage.setScene(scene);
    stage.setTitle(texts.get("client.window"));
    place(beside, kept);
    stage.setOnHiding(_ -> kept.keep(stage, scene));
  }

  private void place(Stage beside, WindowPlace kept) {
    var window =
        new Rectangle2D(
            beside.getX(),
            beside.getY(),
            Math.max(1, beside.getWidth()),
            Math.max(1, beside.getHeight()));
    Displays.beside(Screen.getScreens().stream().map(Screen::getBounds).toList(), window)
        .ifPresentOrElse(
            display -> {
              stage.setX(display.getMinX());
              stage.setY(display.getMinY());
              stage.setFullScreen(true);
            },
            () -> kept.find(stage, scene));
  }

  ReadOnlyBooleanProperty showing() {
    return stage.showingProperty();
  }

  Scene scene() {
    return scene;
  }

  void dress(Theme look, double scale) {
    look.dress(scene, scale);
  }

  void show() {
    stage.show();
  }

  void dispose() {
    stage.close();
    view.dispose();
  }
}
