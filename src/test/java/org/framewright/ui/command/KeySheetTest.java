package org.framewright.ui.command;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.Locale;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.scene.input.KeyCode;
import org.framewright.ui.look.Texts;
import org.junit.jupiter.api.Test;

class KeySheetTest {
  private final Command pickup =
      Command.of("board.pickup", "Make the chosen setup a pickup", Keys.plain(KeyCode.P), () -> {});

  @Test
  void aCommandIsFoundByItsWordsInAnyOrder() {
    assertThat(KeyList.matches(pickup, "pick SETUP", Texts.in(Locale.ENGLISH))).isTrue();
    assertThat(KeyList.matches(pickup, "", Texts.in(Locale.ENGLISH))).isTrue();
    assertThat(KeyList.matches(pickup, "pick drop", Texts.in(Locale.ENGLISH))).isFalse();
  }

  @Test
  void aCommandIsFoundByItsKey() {
    assertThat(KeyList.matches(pickup, "P", Texts.in(Locale.ENGLISH))).isTrue();
    assertThat(KeyList.matches(pickup, "X", Texts.in(Locale.ENGLISH))).isFalse();
  }

  @Test
  void aCommandThatMakesNoSenseNowIsNotDone() {
    var enabled = new SimpleBooleanProperty(false);
    var done = new SimpleBooleanProperty(false);
    var command = new Command("x", "Do", Keys.plain(KeyCode.X), () -> done.set(true), enabled);
    assertThat(command.fire()).isFalse();
    enabled.set(true);
    assertThat(command.fire()).isTrue();
    assertThat(done.get()).isTrue();
  }

  @Test
  void twoCommandsMayNotShareAKey() {
    var commands = new Commands();
    commands.app(List.of(pickup));
    var other = Command.of("app.print", "Print", Keys.plain(KeyCode.P), () -> {});
    assertThatThrownBy(() -> commands.screen(List.of(other)))
        .hasMessageContaining("board.pickup")
        .hasMessageContaining("app.print");
  }

  @Test
  void writingAndMovingInATextStayWithTheText() {
    assertThat(Keys.isTyping(Keys.plain(KeyCode.P))).isTrue();
    assertThat(Keys.isTyping(Keys.plain(KeyCode.BACK_SPACE))).isTrue();
    assertThat(Keys.isTyping(Keys.shift(KeyCode.P))).isTrue();
    assertThat(Keys.isTyping(Keys.plain(KeyCode.F1))).isFalse();
    assertThat(Keys.isTyping(Keys.shortcut(KeyCode.P))).isFalse();
    assertThat(Keys.isTyping(Keys.plain(KeyCode.PAGE_DOWN))).isFalse();
  }
}
