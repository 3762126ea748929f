package org.framewright.ui;

import java.nio.file.Path;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.share.Sharing;

/** The network that devices are on, as far as the app knows it. */
@FunctionalInterface
interface Network {
  /**
   * How an open job comes to be on devices.
   *
   * @param settings where paired devices are kept
   */
  Sharing of(JobSession session, Path settings, Preferences preferences);
}
