package org.framewright.ui.scan;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.framewright.ui.scan.Stroke.Kind;
import org.framewright.ui.scan.Stroke.Role;

/**
 * Keys pressed at times of a fake clock, and an interface thread that hears of them and of the end
 * of a silence at once, or when it is no longer held up.
 */
final class FakeKeyboard {
  /** What a held-up thread hears of first. */
  enum First {
    KEYS,
    TIMER
  }

  private record Waiting(Stroke<String> stroke) {}

  private final ScanWatch<String> watch;
  private final List<Waiting> waiting = new ArrayList<>();
  private First first = First.KEYS;
  private long now;
  private long heldUpUntil = -1;

  /** What went on its way, in order. */
  final List<String> sent = new ArrayList<>();

  /** All that was done to keys. */
  final List<String> done = new ArrayList<>();

  final List<String> scans = new ArrayList<>();

  FakeKeyboard(Predicate<String> known) {
    this.watch = new ScanWatch<>(known);
  }

  FakeKeyboard() {
    this(_ -> false);
  }

  /** Holds the interface thread up. */
  void holdUp(int millis, First hears) {
    heldUpUntil = now + TimeUnit.MILLISECONDS.toNanos(millis);
    first = hears;
  }

  void pass(int millis) {
    var until = now + TimeUnit.MILLISECONDS.toNanos(millis);
    if (heldUpUntil >= 0 && heldUpUntil <= until) {
      now = heldUpUntil;
      heldUpUntil = -1;
      if (first == First.TIMER) {
        timer();
      }
      waiting.forEach(one -> become(watch.stroke(one.stroke(), now), one.stroke().event()));
      waiting.clear();
    }
    while (heldUpUntil < 0 && watch.due().isPresent() && watch.due().getAsLong() <= until) {
      now = Math.max(now, watch.due().getAsLong());
      timer();
    }
    now = until;
  }

  private void timer() {
    if (watch.due().isPresent() && watch.due().getAsLong() <= now) {
      become(watch.silence(now), "");
    }
  }

  private void become(Verdict<String> verdict, String event) {
    switch (verdict) {
      case Verdict.Pass<String> _ -> sent.add(event);
      case Verdict.Held<String> _ -> {}
      case Verdict.Typing<String>(var events) -> sent.addAll(events);
      case Verdict.Scan<String>(var text, var others) -> {
        scans.add(text);
        sent.addAll(others);
      }
    }
  }

  private void stroke(Kind kind, Role role, String key, String text) {
    var event = kind + " " + (kind == Kind.TYPED ? text : key);
    done.add(event);
    var stroke = new Stroke<>(kind, role, key, text, event);
    if (heldUpUntil >= 0) {
      waiting.add(new Waiting(stroke));
    } else {
      become(watch.stroke(stroke, now), event);
    }
  }

  void press(Role role, String key) {
    stroke(Kind.PRESSED, role, key, "");
  }

  void write(String text) {
    stroke(Kind.TYPED, Role.WRITES, "", text);
  }

  void release(Role role, String key) {
    stroke(Kind.RELEASED, role, key, "");
  }

  /** A key that writes itself, pressed and let go. */
  void key(char c) {
    press(Role.WRITES, "" + c);
    write("" + c);
    release(Role.WRITES, "" + c);
  }

  /** A key that writes nothing that counts. */
  void key(Role role, String key) {
    press(role, key);
    write("\r");
    release(role, key);
  }

  /** Keys one after the other, that time apart, and after the last one as well. */
  void keys(String text, int apart) {
    for (int i = 0; i < text.length(); i++) {
      key(text.charAt(i));
      pass(apart);
    }
  }

  void enter() {
    key(Role.ENDS, "ENTER");
  }

  void leave() {
    become(watch.leave(), "");
  }

  boolean isHolding() {
    return watch.due().isPresent();
  }
}
