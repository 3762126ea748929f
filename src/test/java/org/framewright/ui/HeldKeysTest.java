package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.util.ArrayList;
import java.util.List;
import javafx.event.Event;
import javafx.event.EventType;
import javafx.scene.Scene;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class HeldKeysTest {
  private final List<String> done = new ArrayList<>();
  private final Commands commands = new Commands();
  private Pane root;
  private boolean silent;

  @BeforeEach
  void aSceneWithACommandAndOneThatRepeats() throws Exception {
    Toolkit.start();
    commands.screen(
        List.of(
            Command.of("tick", "Tick", Keys.plain(KeyCode.SPACE), () -> done.add("tick")),
            Command.of("walk", "Walk", Keys.plain(KeyCode.DOWN), () -> done.add("walk"))
                .repeating()));
    root =
        onInterface(
            () -> {
              var pane = new Pane();
              commands.listenTo(new Scene(pane), () -> silent);
              return pane;
            });
  }

  private void key(EventType<KeyEvent> type, KeyCode key) throws Exception {
    onInterface(
        () -> {
          Event.fireEvent(root, new KeyEvent(type, "", "", key, false, false, false, false));
          return key;
        });
  }

  private void pressed(KeyCode key) throws Exception {
    key(KeyEvent.KEY_PRESSED, key);
  }

  private void released(KeyCode key) throws Exception {
    key(KeyEvent.KEY_RELEASED, key);
  }

  @Test
  void aKeyThatIsHeldDownTicksOnce() throws Exception {
    pressed(KeyCode.SPACE);
    pressed(KeyCode.SPACE);
    pressed(KeyCode.SPACE);
    assertThat(done).containsExactly("tick");
    released(KeyCode.SPACE);
    pressed(KeyCode.SPACE);
    assertThat(done).containsExactly("tick", "tick");
  }

  @Test
  void aKeyThatIsHeldDownWalksOn() throws Exception {
    pressed(KeyCode.DOWN);
    pressed(KeyCode.DOWN);
    assertThat(done).containsExactly("walk", "walk");
  }

  @Test
  void aKeyIsHeldDownByItself() throws Exception {
    pressed(KeyCode.DOWN);
    pressed(KeyCode.SPACE);
    released(KeyCode.DOWN);
    pressed(KeyCode.SPACE);
    assertThat(done).containsExactly("walk", "tick");
  }

  @Test
  void aKeyThatAnsweredAQuestionDoesNothingMoreWhileItIsHeldDown() throws Exception {
    silent = true;
    pressed(KeyCode.SPACE);
    silent = false;
    pressed(KeyCode.SPACE);
    assertThat(done).isEmpty();
    released(KeyCode.SPACE);
    pressed(KeyCode.SPACE);
    assertThat(done).containsExactly("tick");
  }

  @Test
  void aKeyThatOpenedAFieldWritesNothingIntoItWhileItIsHeldDown() throws Exception {
    var field = onInterface(TextField::new);
    commands.screen(
        List.of(Command.of("find", "Find", Keys.plain(KeyCode.SLASH), field::requestFocus)));
    onInterface(() -> root.getChildren().add(field));
    var written = new ArrayList<String>();
    onInterface(
        () -> {
          root.addEventHandler(KeyEvent.KEY_TYPED, event -> written.add(event.getCharacter()));
          return root;
        });
    for (int i = 0; i < 3; i++) {
      pressed(KeyCode.SLASH);
      onInterface(
          () -> {
            Event.fireEvent(
                root,
                new KeyEvent(
                    KeyEvent.KEY_TYPED, "/", "/", KeyCode.UNDEFINED, false, false, false, false));
            return root;
          });
    }
    assertThat(onInterface(() -> root.getScene().getFocusOwner())).isEqualTo(field);
    assertThat(written).isEmpty();
  }

  @Test
  void aKeyThatOpenedADialogDoesNothingInItWhileItIsHeldDown() throws Exception {
    var heard = new ArrayList<KeyCode>();
    onInterface(
        () -> {
          root.addEventHandler(KeyEvent.KEY_PRESSED, event -> heard.add(event.getCode()));
          return root;
        });
    pressed(KeyCode.SPACE);
    silent = true;
    pressed(KeyCode.SPACE);
    assertThat(heard).isEmpty();
    released(KeyCode.SPACE);
    pressed(KeyCode.SPACE);
    assertThat(heard).containsExactly(KeyCode.SPACE);
  }
}
