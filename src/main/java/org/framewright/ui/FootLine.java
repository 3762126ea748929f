package org.framewright.ui;

import java.util.Optional;
import java.util.function.Predicate;
import javafx.animation.Animation;
import javafx.animation.PauseTransition;
import javafx.beans.binding.Bindings;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.util.Duration;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.look.Texts;
import org.framewright.ui.share.ShareModel;
import org.framewright.ui.task.Running;

/** The window's last line: what was just done, and what is under way. */
final class FootLine {
  private static final Duration PASSING = Duration.seconds(6);

  private final Label status = new Label();
  private final KeyCap offeredKey = new KeyCap();
  private final Button offered = new Button();
  private final Label doing = new Label();
  private final ProgressBar bar = new ProgressBar();
  private final Button stop = new Button();
  private final HBox work = new HBox(doing, bar, stop);
  private final Button devices = new Button();
  private final HBox node;
  private final PauseTransition passing = new PauseTransition(PASSING);
  private final Texts texts;
  private Optional<Command> onOffer = Optional.empty();
  private Subscription following = Subscription.EMPTY;

  FootLine(Texts texts) {
    this.texts = texts;
    status.getStyleClass().add("status");
    status.setId("status");
    status.setMinWidth(0);
    status.setAccessibleRole(AccessibleRole.TEXT);
    work.getStyleClass().add("work");
    doing.setMinWidth(Region.USE_PREF_SIZE);
    stop.setText(texts.get("shell.stop"));
    stop.setFocusTraversable(false);
    // Laid out with the window, unseen: the first time is long, and is else felt when a job opens.
    work.setOpacity(0);
    var keys = new Label(texts.get("shell.allKeys"));
    keys.getStyleClass().add("quiet");
    keys.setMinWidth(Region.USE_PREF_SIZE);
    offered.setId("offered");
    offered.getStyleClass().add("slight");
    offered.setGraphic(offeredKey);
    offered.setContentDisplay(ContentDisplay.RIGHT);
    offered.setMnemonicParsing(false);
    offered.setMinWidth(Region.USE_PREF_SIZE);
    offered.setFocusTraversable(false);
    // Its place is kept: the line has the same height with it and without.
    offered.setVisible(false);
    offered.setOnAction(_ -> onOffer.ifPresent(Command::fire));
    var said = new HBox(status, offered);
    said.getStyleClass().add("said-line");
    HBox.setHgrow(said, Priority.ALWAYS);
    devices.setId("devices");
    devices.getStyleClass().add("slight");
    devices.setMinWidth(Region.USE_PREF_SIZE);
    devices.setFocusTraversable(false);
    clearDevices();
    node = new HBox(said, work, devices, keys);
    node.getStyleClass().add("foot-line");
    passing.setOnFinished(_ -> status.setText(""));
  }

  Node node() {
    return node;
  }

  /** Says something; it passes by. */
  void say(String text) {
    show(text, Optional.empty());
    passing.playFromStart();
  }

  /** Says what was done, and offers a command; it stays. */
  void answer(String text, Optional<Command> next) {
    passing.stop();
    show(text, next);
  }

  /** Offers no longer what cannot be done on the page that came to the front. */
  void keepOffering(Predicate<Command> can) {
    offer(onOffer.filter(can));
  }

  /** What was answered is of a job that is no longer open. */
  void forgetAnswer() {
    if (passing.getStatus() != Animation.Status.RUNNING) {
      show("", Optional.empty());
    }
  }

  /**
   * Says how many devices are there while the job is on any.
   *
   * @param show opens what is about them
   */
  void followDevices(ShareModel sharing, Runnable show) {
    following.unsubscribe();
    devices.setOnAction(_ -> show.run());
    following =
        Subscription.combine(
            sharing.state().subscribe(_ -> showDevices(sharing)),
            sharing.devices().subscribe(_ -> showDevices(sharing)));
  }

  /** There is no job any more. */
  void clearDevices() {
    following.unsubscribe();
    devices.setVisible(false);
    devices.setManaged(false);
  }

  private void showDevices(ShareModel sharing) {
    devices.setVisible(sharing.isOn());
    devices.setManaged(sharing.isOn());
    devices.setText(texts.get("share.foot", sharing.connected()));
  }

  private void show(String text, Optional<Command> next) {
    status.setText(text);
    status.setAccessibleText(text);
    offer(next);
  }

  private void offer(Optional<Command> next) {
    onOffer = next;
    offered.setVisible(next.isPresent());
    next.ifPresent(
        command -> {
          offered.setText(texts.get("offer." + command.word()));
          offered.setAccessibleText(command.text());
          offeredKey.show(command, texts);
        });
  }

  /**
   * Shows what is under way, if anything is. The controls stay and change: new ones would have to
   * be styled each time.
   */
  void showWork(Optional<Running> now) {
    work.setOpacity(1);
    work.setVisible(now.isPresent());
    work.setManaged(now.isPresent());
    bar.progressProperty().unbind();
    bar.visibleProperty().unbind();
    stop.setOnAction(null);
    now.ifPresent(
        running -> {
          doing.setText(running.title());
          // No bar that runs to and fro: it would have the window drawn all the while, and take the
          // processors from what it waits for.
          bar.progressProperty().bind(Bindings.max(0, running.progress()));
          bar.visibleProperty().bind(running.progress().greaterThanOrEqualTo(0));
          bar.setAccessibleText(running.title());
          stop.setOnAction(_ -> running.cancel());
        });
  }
}
