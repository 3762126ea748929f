package org.framewright.ui;

import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import javafx.application.Platform;

/** Work on the interface thread, for programs without a test's robot. */
final class OnInterface {
  private OnInterface() {}

  static <T> T onInterface(Callable<T> work) throws Exception {
    if (Platform.isFxApplicationThread()) {
      return work.call();
    }
    var result = new CompletableFuture<T>();
    Platform.runLater(
        () -> {
          try {
            result.complete(work.call());
          } catch (Exception | Error e) {
            result.completeExceptionally(e);
          }
        });
    return result.get();
  }
}
