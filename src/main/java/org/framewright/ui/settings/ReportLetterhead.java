package org.framewright.ui.settings;

import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.Problem;
import org.framewright.handoff.metadata.Studio;
import org.framewright.handoff.metadata.Studio.Detail;
import org.framewright.report.Letterhead;

/** What the settings say of who sends a report. */
public final class ReportLetterhead {
  private ReportLetterhead() {}

  /** What came of it. */
  public sealed interface Reading {
    /** It can be printed. */
    record Sound(Letterhead letterhead) implements Reading {}

    /** Something in the settings cannot be used. */
    record Faulty(Problem problem) implements Reading {}
  }

  /** The studio's name, how to reach it and its logo, which is read from the disk. */
  public static Reading of(Studio.Reading read) {
    return switch (read) {
      case Studio.Reading.Faulty(var problem) -> new Reading.Faulty(Letterhead.toCorrect(problem));
      case Studio.Reading.Sound(var studio) -> of(studio);
    };
  }

  private static Reading of(Studio studio) {
    var plain =
        new Letterhead(
            studio.get(Detail.STUDIO).or(() -> studio.get(Detail.PHOTOGRAPHER)).orElse(""),
            Stream.of(Detail.MAIL, Detail.PHONE, Detail.WEBSITE)
                .flatMap(detail -> studio.get(detail).stream())
                .collect(Collectors.joining(" \u00b7 ")),
            Optional.empty());
    if (studio.get(Detail.LOGO).isEmpty()) {
      return new Reading.Sound(plain);
    }
    return switch (Letterhead.readLogo(Path.of(studio.get(Detail.LOGO).get()))) {
      case Letterhead.LogoReading.Sound(var logo) ->
          new Reading.Sound(new Letterhead(plain.studio(), plain.contact(), Optional.of(logo)));
      case Letterhead.LogoReading.Faulty(var problem) -> new Reading.Faulty(problem);
    };
  }
}
