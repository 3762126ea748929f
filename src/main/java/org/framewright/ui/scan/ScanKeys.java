package org.framewright.ui.scan;

import java.util.Objects;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import javafx.event.Event;
import javafx.event.EventDispatchChain;
import javafx.event.EventDispatcher;
import javafx.event.EventTarget;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Window;
import javafx.util.Subscription;
import org.framewright.ui.scan.Stroke.Kind;
import org.framewright.ui.scan.Stroke.Role;

/**
 * Stands before all that hears the keys of a window, and before the menus that lie over it: keeps a
 * scan from them, and sends on what was typing in the order in which it came.
 */
public final class ScanKeys implements AutoCloseable {
  private static final Set<KeyCode> ENDING = Set.of(KeyCode.ENTER, KeyCode.TAB);

  /** They write nothing, and are none of the keys that the toolkit sorts. */
  private static final Set<KeyCode> NOT_WRITING =
      Set.of(
          KeyCode.ESCAPE,
          KeyCode.BACK_SPACE,
          KeyCode.DELETE,
          KeyCode.INSERT,
          KeyCode.CANCEL,
          KeyCode.CLEAR,
          KeyCode.PAUSE,
          KeyCode.PRINTSCREEN,
          KeyCode.CONTEXT_MENU,
          KeyCode.COMPOSE,
          KeyCode.HELP);

  private static final Set<KeyCode> LOCKS =
      Set.of(KeyCode.CAPS, KeyCode.NUM_LOCK, KeyCode.SCROLL_LOCK);

  /** A stroke, and where the keys went when it came. */
  private record Sent(KeyEvent event, EventTarget target, Node focus) {}

  private final Window window;
  private final EventDispatcher before;
  private final Executor ui;
  private final LongSupplier nanos;
  private final Consumer<String> scanned;
  private final Consumer<Throwable> trouble;
  private final ScanWatch<Sent> watch;
  private Subscription focus = Subscription.EMPTY;
  private boolean sending;
  private boolean waiting;

  private ScanKeys(
      Window window,
      Executor ui,
      LongSupplier nanos,
      Predicate<String> known,
      Consumer<String> scanned,
      Consumer<Throwable> trouble) {
    this.window = window;
    this.before = window.getEventDispatcher();
    this.ui = ui;
    this.nanos = nanos;
    this.scanned = scanned;
    this.trouble = trouble;
    this.watch = new ScanWatch<>(known);
  }

  /**
   * Listens to a window from now on.
   *
   * @param ui the interface thread's queue
   * @param nanos a clock that only goes forward
   * @param known whether a text that no key ended is a scan
   * @param scanned hears what was scanned
   * @param trouble hears what typing that was held up threw
   */
  public static ScanKeys of(
      Window window,
      Executor ui,
      LongSupplier nanos,
      Predicate<String> known,
      Consumer<String> scanned,
      Consumer<Throwable> trouble) {
    var keys = new ScanKeys(window, ui, nanos, known, scanned, trouble);
    window.setEventDispatcher(keys::dispatch);
    keys.focus =
        window
            .focusedProperty()
            .subscribe(
                focused -> {
                  if (!focused) {
                    keys.become(keys.watch.leave());
                  }
                });
    return keys;
  }

  /** Listens no more. */
  @Override
  public void close() {
    focus.unsubscribe();
    become(watch.leave());
    window.setEventDispatcher(before);
  }

  /** Whether keys are held that may still become a scan. */
  public boolean isHolding() {
    return watch.due().isPresent();
  }

  private Event dispatch(Event event, EventDispatchChain tail) {
    if (sending || !(event instanceof KeyEvent key)) {
      return before.dispatchEvent(event, tail);
    }
    var scene = window.getScene();
    var sent = new Sent(key, key.getTarget(), scene == null ? null : scene.getFocusOwner());
    var verdict = watch.stroke(stroke(key, sent), nanos.getAsLong());
    if (verdict instanceof Verdict.Pass) {
      return before.dispatchEvent(event, tail);
    }
    become(verdict);
    return null;
  }

  private void become(Verdict<Sent> verdict) {
    switch (verdict) {
      case Verdict.Pass<Sent> _, Verdict.Held<Sent> _ -> {}
      case Verdict.Typing<Sent>(var events) -> events.forEach(this::send);
      case Verdict.Scan<Sent>(var text, var others) -> {
        others.forEach(this::send);
        scanned.accept(text);
      }
    }
    await();
  }

  private void await() {
    if (!waiting && watch.due().isPresent()) {
      waiting = true;
      var delay = Math.max(0, watch.due().getAsLong() - nanos.getAsLong());
      // Through the queue twice: keys that wait in it are heard before.
      CompletableFuture.delayedExecutor(delay, TimeUnit.NANOSECONDS, ui)
          .execute(() -> ui.execute(this::silence));
    }
  }

  private void silence() {
    waiting = false;
    become(watch.silence(nanos.getAsLong()));
  }

  /** Where a stroke before it took the keys elsewhere, it goes there, as it would have. */
  private void send(Sent sent) {
    var scene = window.getScene();
    if (scene == null) {
      return;
    }
    var focus = scene.getFocusOwner();
    var moved = focus == null ? scene : focus;
    boolean inPlace =
        Objects.equals(focus, sent.focus())
            && (!(sent.target() instanceof Node node) || scene.equals(node.getScene()));
    sending = true;
    try {
      Event.fireEvent(inPlace ? sent.target() : moved, sent.event());
    } catch (RuntimeException e) {
      trouble.accept(e);
    } finally {
      sending = false;
    }
  }

  private static Stroke<Sent> stroke(KeyEvent event, Sent sent) {
    if (event.getEventType() == KeyEvent.KEY_TYPED) {
      return new Stroke<>(Kind.TYPED, Role.WRITES, "", event.getCharacter(), sent);
    }
    return new Stroke<>(
        event.getEventType() == KeyEvent.KEY_PRESSED ? Kind.PRESSED : Kind.RELEASED,
        role(event),
        event.getCode().name(),
        "",
        sent);
  }

  private static Role role(KeyEvent event) {
    var code = event.getCode();
    if (code.isModifierKey() || LOCKS.contains(code)) {
      return Role.SHIFTS;
    }
    // Both are down where AltGr is.
    boolean shortcut = event.isControlDown() != event.isAltDown() || event.isMetaDown();
    if (shortcut) {
      return event.isControlDown() && !event.isMetaDown() ? Role.SEPARATES : Role.OTHER;
    }
    if (code == KeyCode.F8) {
      return Role.SEPARATES;
    }
    if (ENDING.contains(code)) {
      return event.isShiftDown() ? Role.OTHER : Role.ENDS;
    }
    return code.isNavigationKey()
            || code.isArrowKey()
            || code.isFunctionKey()
            || code.isMediaKey()
            || NOT_WRITING.contains(code)
        ? Role.OTHER
        : Role.WRITES;
  }
}
