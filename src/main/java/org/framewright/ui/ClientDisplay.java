package org.framewright.ui;

import java.util.List;
import java.util.Optional;
import javafx.collections.ListChangeListener;
import javafx.geometry.Rectangle2D;
import javafx.stage.Screen;
import javafx.stage.Stage;
import org.framewright.frames.FrameId;
import org.framewright.ui.board.ClientScreen;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.page.Desk;
import org.framewright.ui.session.JobSession;

/** The client's window of a job: opened and closed, and brought back with its display. */
final class ClientDisplay implements ClientScreen {
  private final Desk desk;
  private final JobSession session;
  private final FramePictures pictures;
  private final Stage beside;
  private final Appearance appearance;
  private final ClientWindow.Scanned scans;
  private final ClientPlace place = new ClientPlace();
  private final ListChangeListener<Screen> changed = _ -> later(this::displaysChanged);
  private ClientWindow.SignOff signOff = (_, _, _, over) -> over.run();
  private Optional<ClientWindow> window = Optional.empty();

  /**
   * Made away from the interface; no window yet.
   *
   * @param beside the app's own window
   * @param scans hears scanners in the window
   */
  ClientDisplay(
      Desk desk,
      JobSession session,
      FramePictures pictures,
      Stage beside,
      Appearance appearance,
      ClientWindow.Scanned scans) {
    this.desk = desk;
    this.session = session;
    this.pictures = pictures;
    this.beside = beside;
    this.appearance = appearance;
    this.scans = scans;
  }

  /** Who asks for a sign-off. */
  void signOff(ClientWindow.SignOff asks) {
    signOff = asks;
  }

  private void later(Runnable action) {
    desk.tasks().ui().execute(action);
  }

  Optional<ClientWindow> window() {
    return window;
  }

  @Override
  public boolean isShown() {
    return window.filter(one -> one.showing().get()).isPresent();
  }

  @Override
  public void turn() {
    if (isShown()) {
      close();
    } else {
      open();
    }
  }

  @Override
  public void lookAt(FrameId frame) {
    window.ifPresent(one -> one.lookAt(frame));
  }

  @Override
  public void turnPictureOnly() {
    window.ifPresent(ClientWindow::turnPictureOnly);
  }

  /** Makes the window anew, if there is one. */
  void renew() {
    if (isShown()) {
      open();
    }
  }

  /** It takes the look that is chosen. */
  void dress() {
    window.ifPresent(one -> one.dress(appearance.theme()));
  }

  private void open() {
    close();
    var kept = new WindowPlace(desk.preferences(), "client");
    var made =
        new ClientWindow(
            session,
            pictures,
            desk.texts(),
            kept,
            appearance.theme(),
            signOff,
            scans,
            // Not before its window is wholly gone.
            () -> later(this::gone));
    place
        .begin(displays(), app())
        .ifPresentOrElse(made::fill, () -> kept.find(made.stage(), made.scene()));
    window = Optional.of(made);
    Screen.getScreens().addListener(changed);
    made.show();
  }

  /** Somebody closed it. */
  private void gone() {
    if (!isShown()) {
      close();
    }
  }

  private static List<Rectangle2D> displays() {
    return Screen.getScreens().stream().map(Screen::getBounds).toList();
  }

  private Rectangle2D app() {
    return new Rectangle2D(
        beside.getX(),
        beside.getY(),
        Math.max(1, beside.getWidth()),
        Math.max(1, beside.getHeight()));
  }

  private void displaysChanged() {
    if (window.isEmpty()) {
      return;
    }
    var one = window.get();
    switch (place.now(displays(), app(), one.stage().isFullScreen())) {
      case ClientPlace.Move.Stay _ -> {}
      case ClientPlace.Move.Wait _ -> {
        one.withdraw();
        desk.say(desk.texts().get("client.away"));
      }
      case ClientPlace.Move.Fill(var display) -> {
        one.withdraw();
        one.fill(display);
        one.show();
        desk.say(desk.texts().get("client.there"));
      }
    }
  }

  /** Takes the window away. */
  void close() {
    Screen.getScreens().removeListener(changed);
    window.ifPresent(ClientWindow::dispose);
    window = Optional.empty();
  }
}
