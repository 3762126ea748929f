package org.framewright.cli;

import java.util.Locale;
import org.framewright.base.Problem;
import org.framewright.base.Text;
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
    return switch (Studio.read(Places.usual().preferences())) {
      case Studio.Reading.Faulty faulty ->
          throw new CommandFailure(
              ExitStatus.BAD_INPUT,
              new Problem(
                  faulty.problem().fault(),
                  faulty.problem().where(),
                  Text.of("Correct it on the page of settings.")));
      case Studio.Reading.Sound sound ->
          switch (Letterhead.of(sound.studio())) {
            case Letterhead.Reading.Sound known -> known.letterhead();
            case Letterhead.Reading.Faulty faulty ->
                throw new CommandFailure(ExitStatus.BAD_INPUT, faulty.problem());
          };
    };
  }
}
