package org.framewright.cli;

import java.util.List;
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

  /**
   * The language that a person named, in this computer's country where that speaks it.
   *
   * @param named as typed; null where none was named, then it is the app's
   */
  static Locale language(String named) throws CommandFailure {
    if (named == null) {
      return language();
    }
    var wanted = named.strip().toLowerCase(Locale.ROOT);
    if (!List.of("en", "de", "fr").contains(wanted)) {
      throw CommandFailure.badInput(
          "no report is written in \"" + shortened(named) + "\"", "Say --language en, de or fr.");
    }
    var here = Locale.getDefault();
    return here.getLanguage().equals(wanted) ? here : Locale.of(wanted);
  }

  /** As much of what somebody typed as says what is meant. */
  static String shortened(String text) {
    return text.length() > 40 ? text.substring(0, 40) + "..." : text;
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
