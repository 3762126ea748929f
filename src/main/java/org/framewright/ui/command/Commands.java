package org.framewright.ui.command;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination.ModifierValue;
import javafx.scene.input.KeyEvent;
import javafx.stage.Window;

/** The registry of commands: the app's and those of the screen in front. */
public final class Commands {
  private List<Command> app = List.of();
  private List<Command> screen = List.of();
  private final Set<KeyCode> held = EnumSet.noneOf(KeyCode.class);

  /** Those of them that did something when they went down. */
  private final Set<KeyCode> acted = EnumSet.noneOf(KeyCode.class);

  private boolean fired;

  /** Replaces the commands that work on every screen. */
  public void app(List<Command> commands) {
    app = List.copyOf(commands);
    refuseDoubles();
  }

  /** Replaces the commands of the screen in front. */
  public void screen(List<Command> commands) {
    screen = List.copyOf(commands);
    refuseDoubles();
  }

  /** All that can be done now and here: the screen's first, then the app's. */
  public List<Command> all() {
    var all = new ArrayList<>(screen);
    all.addAll(app);
    return all;
  }

  /** The one of that id among commands that have it. */
  public static Command named(String id, List<Command> commands) {
    return commands.stream().filter(command -> command.id().equals(id)).findFirst().orElseThrow();
  }

  /** The command of that id, if it can be done here. */
  public Optional<Command> find(String id) {
    return all().stream().filter(command -> command.id().equals(id)).findFirst();
  }

  /**
   * Listens to a scene's keys before any control does. Typing stays with text fields, and Space and
   * Enter with a focused button.
   *
   * @param silent while true, every key passes by: a dialog is open and reads its own
   */
  public void listenTo(Scene scene, BooleanSupplier silent) {
    scene.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          boolean again = !held.add(event.getCode());
          boolean over = again && acted.contains(event.getCode());
          var command =
              silent.getAsBoolean()
                  ? Optional.<Command>empty()
                  : meant(event, scene.getFocusOwner());
          // A key that is held down a moment too long ticks one setup, not ten, and writes nothing
          // into the field or the dialog that it opened.
          boolean asBefore = command.map(one -> again && !one.repeats()).orElse(over);
          fired = asBefore || command.filter(Command::fire).isPresent();
          if (fired) {
            acted.add(event.getCode());
            event.consume();
          }
        });
    // The letter of a key that did something is not written into the field that it opened.
    scene.addEventFilter(
        KeyEvent.KEY_TYPED,
        event -> {
          if (fired) {
            event.consume();
          }
        });
    scene.addEventFilter(
        KeyEvent.KEY_RELEASED,
        event -> {
          fired = false;
          held.remove(event.getCode());
          acted.remove(event.getCode());
        });
    // What is let go in another window is not heard here.
    scene.windowProperty().flatMap(Window::focusedProperty).addListener(_ -> forget());
  }

  private void forget() {
    held.clear();
    acted.clear();
  }

  private Optional<Command> meant(KeyEvent event, Node focus) {
    return all().stream()
        .filter(
            command ->
                command.keys().stream().anyMatch(key -> key.match(event) && !belongsTo(focus, key)))
        .findFirst();
  }

  private static boolean belongsTo(Node focus, KeyCodeCombination key) {
    return switch (focus) {
      case TextInputControl _ -> Keys.isTyping(key) || Keys.isUndoing(key);
      case ComboBoxBase<?> _ -> Keys.isTyping(key);
      case ButtonBase _ ->
          key.getShortcut() != ModifierValue.DOWN
              && (key.getCode() == KeyCode.SPACE || key.getCode() == KeyCode.ENTER);
      case null, default -> false;
    };
  }

  private void refuseDoubles() {
    var taken = new HashMap<KeyCodeCombination, Command>();
    for (var command : all()) {
      for (var key : command.keys()) {
        var other = taken.put(key, command);
        if (other != null) {
          throw new IllegalArgumentException(
              "%s and %s share the key %s".formatted(other.id(), command.id(), key.getName()));
        }
      }
    }
  }
}
