package org.framewright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/** What is typed while a command does something else. */
final class TypedLines {
  private TypedLines() {}

  /** Each line as it comes; nothing at the end of the input. */
  static BlockingQueue<Optional<String>> of(BufferedReader input) {
    var typed = new LinkedBlockingQueue<Optional<String>>();
    Thread.ofPlatform().daemon().name("input").start(() -> read(input, typed));
    return typed;
  }

  private static void read(BufferedReader input, BlockingQueue<Optional<String>> typed) {
    try {
      for (var line = input.readLine(); line != null; line = input.readLine()) {
        typed.add(Optional.of(line));
      }
    } catch (IOException _) {
      // The input is gone, which is its end.
    }
    typed.add(Optional.empty());
  }
}
