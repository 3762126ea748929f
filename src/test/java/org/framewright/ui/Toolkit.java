package org.framewright.ui;

import java.util.concurrent.TimeoutException;
import org.testfx.api.FxToolkit;

/** The toolkit, which one process may start only once. */
final class Toolkit {
  private Toolkit() {}

  /** Starts it, or finds it started by a test that runs at the same time. */
  static synchronized void start() throws TimeoutException {
    FxToolkit.registerPrimaryStage();
  }
}
