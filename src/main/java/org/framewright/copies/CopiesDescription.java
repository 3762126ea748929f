package org.framewright.copies;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.ByteSizes;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.job.ComparedAt;
import org.framewright.job.ComparedCopies;
import org.framewright.job.Job;

/** Comparisons of copies in words, as the command line prints them and the app may show them. */
public final class CopiesDescription {
  private static final int MOST_SHOWN = 10;
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private CopiesDescription() {}

  /** All of a comparison, a line each: what is different first, the answers last. */
  public static List<String> lines(Compared compared, ZoneId zone) {
    var lines = new ArrayList<String>();
    compared.places().forEach(place -> lines.addAll(place(place)));
    lines.add(frames(compared));
    if (compared.sidecarsOnce() > 0) {
      lines.add(
          PlainText.counted(compared.sidecarsOnce(), "sidecar")
              + (compared.sidecarsOnce() == 1 ? " has" : " have")
              + " no copy on another disk");
    }
    for (var card : compared.cards()) {
      lines.add("");
      lines.addAll(card(card, compared.at(), zone));
    }
    return List.copyOf(lines);
  }

  private static String frames(Compared compared) {
    int frames = compared.frames().frames();
    int once = compared.frames().once();
    return frames == 0
        ? "The job has no frames"
        : once == 0
            ? "Each of the job's "
                + PlainText.counted(frames, "frame")
                + " is on two disks at the least"
            : once + " of the job's " + PlainText.counted(frames, "frame") + " on one disk only";
  }

  /** How one place stands. */
  public static List<String> place(Compared.PlaceCompared place) {
    var lines = new ArrayList<String>();
    lines.add(
        (place.isJob() ? "Job " : "")
            + PlainText.line(place.folder().toString())
            + " ("
            + PlainText.line(place.device())
            + "): "
            + counts(place));
    some(place.different().stream().map(pair -> "different: " + pair(pair)).toList(), lines);
    some(
        place.samePicture().stream()
            .map(pair -> "same picture, other description, which is no copy: " + pair(pair))
            .toList(),
        lines);
    some(place.missing().stream().map(file -> "missing: " + text(file)).toList(), lines);
    place.mhl().ifPresent(list -> lines.add("  ASC MHL: " + text(list)));
    some(place.troubles().stream().map(Problem::sentence).map(PlainText::line).toList(), lines);
    return lines;
  }

  private static String counts(Compared.PlaceCompared place) {
    return place.identical()
        + " identical, "
        + place.samePicture().size()
        + " with another description, "
        + place.different().size()
        + " different, "
        + place.missing().size()
        + " missing, "
        + place.extra().size()
        + " here only";
  }

  private static String pair(Compared.Pair pair) {
    return text(pair.file())
        + ", here "
        + PlainText.line(pair.here())
        + (pair.why().isEmpty() ? "" : " (" + PlainText.line(pair.why()) + ")");
  }

  /** The answer about a card, its reasons with what mends them, and the sentence to repeat. */
  public static List<String> card(Compared.CardCompared card, Instant at, ZoneId zone) {
    var lines = new ArrayList<String>();
    lines.add(answer(card.verdict()) + ": card " + card.name() + " (" + state(card.state()) + ")");
    for (var reason : card.verdict().why()) {
      lines.add("  " + reason.rule().number() + ". " + PlainText.line(reason.message()));
      lines.add("     " + PlainText.line(reason.remedy()));
    }
    if (!card.litter().isEmpty()) {
      lines.add(
          "  Not counted, made by computers: "
              + PlainText.counted(card.litter().size(), "file or folder"));
    }
    if (card.verdict() instanceof Verdict.MayClear clear) {
      for (var waiver : clear.waived()) {
        lines.add(
            "  "
                + PlainText.line(waiver.path())
                + " need not be kept, says "
                + PlainText.line(waiver.by()));
      }
    }
    lines.add("  Say: \"" + sentence(card, at, zone) + "\"");
    afterClearing(card.verdict()).ifPresent(line -> lines.add("  " + line));
    return lines;
  }

  /** The answer in the words of a large sign. */
  public static String answer(Verdict verdict) {
    return switch (verdict) {
      case Verdict.MayClear _ -> "MAY BE CLEARED";
      case Verdict.NotYet _ -> "NOT YET";
      case Verdict.CannotTell _ -> "CANNOT TELL";
    };
  }

  /** What one can repeat to the photographer. */
  public static String sentence(Compared.CardCompared card, Instant at, ZoneId zone) {
    return switch (card.verdict()) {
      case Verdict.MayClear clear ->
          "Card "
              + card.name()
              + " may be cleared as it was at "
              + at.atZone(zone).format(TIME)
              + ": "
              + kept(clear)
              + ". If anything was shot on it since, ask again.";
      case Verdict.NotYet notYet ->
          "Do not clear card "
              + card.name()
              + ": "
              + PlainText.line(notYet.why().getFirst().message())
              + ".";
      case Verdict.CannotTell cannot ->
          "Do not clear card "
              + card.name()
              + ", nobody can tell: "
              + PlainText.line(cannot.why().getFirst().message())
              + ".";
    };
  }

  private static String kept(Verdict.MayClear clear) {
    var on =
        clear.kept() == 0
            ? ""
            : PlainText.counted(clear.kept(), "file")
                + " on "
                + and(clear.by().stream().map(one -> witness(one, clear)).toList());
    if (clear.waived().isEmpty()) {
      return on;
    }
    return on
        + (on.isEmpty() ? "" : "; ")
        + PlainText.counted(clear.waived().size(), "file")
        + " need not be kept, according to "
        + and(clear.waived().stream().map(Waiver::by).map(PlainText::line).distinct().toList());
  }

  private static String witness(Witness one, Verdict.MayClear clear) {
    return name(one.folder())
        + (one.files() == clear.kept() ? "" : " (" + one.files() + " of them)");
  }

  /**
   * That fewer copies are left than people who keep pictures ask for, where that is so. Source:
   * US-CERT, "Data Backup Options": three copies, on two kinds of media, one of them elsewhere.
   */
  public static Optional<String> afterClearing(Verdict verdict) {
    if (!(verdict instanceof Verdict.MayClear clear) || clear.kept() == 0) {
      return Optional.empty();
    }
    int left = clear.copies();
    boolean elsewhere =
        clear.by().stream().anyMatch(one -> one.remote() && one.files() == clear.kept());
    return left >= 3 && elsewhere
        ? Optional.empty()
        : Optional.of(
            "Once it is cleared, "
                + (left < 3
                    ? PlainText.counted(left, "place") + (left == 1 ? " is" : " are") + " left: "
                    : "")
                + "3-2-1 (three copies, two kinds of media, one of them elsewhere) is not met"
                + (left < 3 ? "." : " unless one of the disks is kept elsewhere."));
  }

  private static String state(CardState state) {
    return PlainText.counted(state.files(), "file")
        + ", "
        + ByteSizes.words(state.bytes())
        + (state.digest().isEmpty() ? "" : ", state " + state.digest().substring(0, 12));
  }

  /** What a job's log says of each card that was ever asked about, the last answer of each. */
  public static List<String> last(Job job, ZoneId zone) {
    var lines = new ArrayList<String>();
    var today = LocalDate.ofInstant(job.now(), zone);
    for (var answer : lastAnswers(job)) {
      lines.add(last(answer.at(), answer.card(), zone, today));
    }
    if (lines.isEmpty()) {
      lines.add("No card was asked about yet; framewright copies JOB FOLDER... asks.");
    }
    return lines;
  }

  /**
   * The last answer about one card.
   *
   * @param at the comparison
   */
  public record LastAnswer(ComparedAt at, ComparedCopies.Card card) {}

  /** Of each card that was ever asked about, the last answer, in the order in which they came. */
  public static List<LastAnswer> lastAnswers(Job job) {
    var last = new LinkedHashMap<String, LastAnswer>();
    for (var run : job.comparisons()) {
      for (var card : run.found().cards()) {
        last.remove(card.folder());
        last.put(card.folder(), new LastAnswer(run, card));
      }
    }
    return List.copyOf(last.values());
  }

  private static String last(
      ComparedAt run, ComparedCopies.Card card, ZoneId zone, LocalDate today) {
    var at = run.at().atZone(zone);
    var answer =
        switch (card.answer()) {
          case "may-be-cleared" -> "was clear";
          case "not-yet" -> "was not yet clear";
          default -> "could not be told";
        };
    return "Card "
        + PlainText.line(card.name())
        + " "
        + answer
        + " at "
        + at.format(at.toLocalDate().equals(today) ? TIME : DAY_AND_TIME)
        + (run.found().by().isBlank() ? "" : ", by " + PlainText.line(run.found().by()))
        + ", "
        + PlainText.counted(card.files(), "file")
        + (card.on().isEmpty()
            ? ""
            : " on " + and(card.on().stream().map(CopiesDescription::name).toList()));
  }

  /** How many frames are in one place only, in one line. */
  public static String line(FramesOnce once, ZoneId zone) {
    return "In one place only: "
        + once.once()
        + " of "
        + PlainText.counted(once.frames(), "frame")
        + (once.notCompared() > 0 ? ", " + once.notCompared() + " not compared" : "")
        + " (compared "
        + once.at().atZone(zone).format(DAY_AND_TIME)
        + ")";
  }

  private static String name(String folder) {
    var last = Path.of(folder).getFileName();
    return PlainText.line(last == null ? folder : last.toString());
  }

  private static String and(List<String> names) {
    return names.size() < 2
        ? String.join("", names)
        : String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.getLast();
  }

  private static String text(Path path) {
    return PlainText.line(path.toString());
  }

  private static void some(List<String> all, List<String> into) {
    all.stream().limit(MOST_SHOWN).forEach(line -> into.add("  " + line));
    if (all.size() > MOST_SHOWN) {
      into.add("  and " + (all.size() - MOST_SHOWN) + " more such");
    }
  }
}
