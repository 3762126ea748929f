package org.framewright.ui.copies;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.framewright.copies.Compared;
import org.framewright.copies.CopiesDescription;
import org.framewright.copies.Reason;
import org.framewright.copies.Verdict;
import org.framewright.copies.Witness;
import org.framewright.ui.look.Texts;

/**
 * The answer about one card, in words.
 *
 * @param folder of the card, as it was given
 * @param name what it is called
 * @param state how many files are on it, and how much
 * @param why why not, with what mends it, or what the answer rests on
 * @param sentence what one says to the photographer
 */
record CardAnswer(
    Path folder, Answer answer, String name, String state, List<Why> why, String sentence) {

  /**
   * A reason.
   *
   * @param remedy what mends it; may be empty
   */
  record Why(String message, String remedy) {}

  static CardAnswer of(Compared.CardCompared card, Instant at, ZoneId zone, Texts texts) {
    var state =
        texts.get("copies.files", card.state().files(), texts.formats().size(card.state().bytes()));
    return new CardAnswer(
        card.folder(),
        Answer.of(card.verdict()),
        card.name(),
        state,
        why(card, texts),
        sentence(card, texts.formats().time(at.atZone(zone)), texts));
  }

  private static List<Why> why(Compared.CardCompared card, Texts texts) {
    if (!(card.verdict() instanceof Verdict.MayClear clear)) {
      return card.verdict().why().stream().map(reason -> why(reason, texts)).toList();
    }
    return List.of(
        new Why(
            texts.get("copies.why.clear", card.state().files(), clear.by().size()),
            CopiesDescription.afterClearing(clear).isEmpty()
                ? texts.get("copies.why.lapses")
                : texts.get("copies.why.after", clear.by().size())));
  }

  /** What the command line advises is done on the page by other means. */
  private static Why why(Reason reason, Texts texts) {
    var own = "copies.remedy." + reason.rule().word();
    return new Why(reason.message(), texts.has(own) ? texts.get(own) : reason.remedy());
  }

  private static String sentence(Compared.CardCompared card, String time, Texts texts) {
    return switch (card.verdict()) {
      case Verdict.MayClear clear ->
          texts.get(
              "copies.say.may-be-cleared",
              card.name(),
              time,
              card.state().files(),
              texts
                  .formats()
                  .list(clear.by().stream().map(one -> witness(one, card, texts)).toList()));
      case Verdict.NotYet notYet ->
          texts.get("copies.say.not-yet", card.name(), notYet.why().getFirst().message());
      case Verdict.CannotTell cannot ->
          texts.get("copies.say.cannot-tell", card.name(), cannot.why().getFirst().message());
    };
  }

  private static String witness(Witness one, Compared.CardCompared card, Texts texts) {
    var name = lastName(one.folder());
    return one.files() == card.state().files()
        ? name
        : texts.get("copies.say.some", name, one.files());
  }

  /** The last name of a folder; the folder itself where it is the root of a disk. */
  static String lastName(String folder) {
    var last = Path.of(folder).getFileName();
    return last == null ? folder : last.toString();
  }
}
