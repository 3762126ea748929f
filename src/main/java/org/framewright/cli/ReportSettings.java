package org.framewright.cli;

import java.util.Locale;
import org.framewright.handoff.metadata.Studio;
import org.framewright.report.Letterhead;
import org.framewright.ui.settings.Language;
import org.framewright.ui.settings.Places;
import org.framewright.ui.settings.Preferences;

/** What the app's page of settings says of reports. */
final class ReportSettings {
  private ReportSettings() {}

  /** The app's language. */
  static Locale language() {
    return Language.kept(Preferences.read(Places.usual().preferences(), Runnable::run, _ -> {}))
        .on(Locale.getDefault());
  }

  /** Who sends them. */
  static Letterhead letterhead() throws CommandFailure {
    return switch (Letterhead.of(Studio.read(Places.usual().preferences()))) {
      case Letterhead.Reading.Sound(var letterhead) -> letterhead;
      case Letterhead.Reading.Faulty(var problem) ->
          throw new CommandFailure(ExitStatus.BAD_INPUT, problem);
    };
  }
}
