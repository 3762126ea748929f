package org.framewright.ui.board;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import org.framewright.frames.Frame;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.LookedAt;

/**
 * The line under the picture: the name of the frame looked at and when it was taken; and the name
 * that the next one will get, to be copied.
 */
final class PictureLine extends HBox {
  private final Texts texts;
  private final Label name = label("set-frame");
  private final Label time = label("set-frame-time");
  private final Button copy;

  /** The reason stands on what is around the button: one that cannot be pressed shows none. */
  private final StackPane around;

  private final Tooltip tip = new Tooltip();
  private final Command copyNext;
  private final List<Command> onPicture;

  /**
   * @param copyNext copies the next name, or says why there is none
   * @param onPicture what else can be done on the picture by mouse
   */
  PictureLine(Texts texts, Command copyNext, List<Command> onPicture) {
    this.texts = texts;
    this.copyNext = copyNext;
    this.onPicture = onPicture;
    this.copy = CommandControls.button(copyNext, texts.get("board.copyNext"), texts);
    this.around = new StackPane(copy);
    copy.setId("copy-next");
    copy.getStyleClass().add("slight");
    Tooltip.install(around, tip);
    around.setMinWidth(Region.USE_PREF_SIZE);
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    getStyleClass().add("set-frame-line");
    setAlignment(Pos.CENTER_LEFT);
    getChildren().addAll(name, time, gap, around);
    showObstacle(Optional.empty());
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    label.setMinWidth(0);
    return label;
  }

  void show(LookedAt.Look look) {
    name.setText(look.frame().map(SetPictures::name).orElse(""));
    time.setText(look.frame().flatMap(this::captured).orElse(""));
  }

  private Optional<String> captured(Frame frame) {
    return frame.capture().time().map(texts.formats()::timeToTheSecond);
  }

  /** Why no name can be copied; empty where one can. */
  void showObstacle(Optional<String> why) {
    copy.setDisable(why.isPresent());
    tip.setText(why.orElse(copyNext.text()));
    copy.setAccessibleHelp(why.orElse(""));
  }

  /** Whether there is room for the key. */
  void showKeys(boolean shown) {
    copy.setContentDisplay(shown ? ContentDisplay.RIGHT : ContentDisplay.TEXT_ONLY);
  }

  /** Offers on the pictures what can be done by mouse. */
  void offerOn(Node pictures) {
    var menu = new ContextMenu();
    for (var command : onPicture) {
      var item = CommandControls.item(command);
      item.setId("picture-" + command.id());
      item.setGraphic(new KeyCap(command, texts));
      menu.getItems().add(item);
    }
    pictures.setOnContextMenuRequested(
        event -> {
          menu.show(pictures, event.getScreenX(), event.getScreenY());
          event.consume();
        });
    pictures.addEventFilter(MouseEvent.MOUSE_PRESSED, _ -> menu.hide());
  }
}
