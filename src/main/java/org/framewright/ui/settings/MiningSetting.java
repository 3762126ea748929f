package org.framewright.ui.settings;

import java.util.Optional;
import org.framewright.handoff.metadata.DataMining;
import org.framewright.handoff.metadata.Studio.Detail;

/** What those who gather pictures may use a person's for; nothing is said where nothing was set. */
public final class MiningSetting {
  private static final String KEY = Detail.MINING.key();

  private MiningSetting() {}

  /** What was set; empty where nothing was, or what is kept is none of these. */
  public static Optional<DataMining> kept(Preferences preferences) {
    return preferences.get(KEY).flatMap(DataMining::ofWord);
  }

  /** Keeps it. */
  public static void keep(Preferences preferences, Optional<DataMining> choice) {
    if (choice.isPresent()) {
      preferences.put(KEY, choice.get().word());
    } else {
      preferences.remove(KEY);
    }
  }
}
