package org.framewright.ui.copies;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.framewright.copies.Compared;
import org.framewright.copies.CopiesDescription;
import org.framewright.copies.Reason;
import org.framewright.copies.Verdict;
import org.framewright.copies.Waiver;
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

  /**
   * In words.
   *
   * @param said the folders that count as backups because a person said so
   */
  static CardAnswer of(
      Compared.CardCompared card, Instant at, Set<Path> said, ZoneId zone, Texts texts) {
    var state =
        texts.get("copies.files", card.state().files(), texts.formats().size(card.state().bytes()));
    return new CardAnswer(
        card.folder(),
        Answer.of(card.verdict()),
        card.name(),
        state,
        why(card, said, texts),
        sentence(card, texts.formats().time(at.atZone(zone)), texts));
  }

  private static List<Why> why(Compared.CardCompared card, Set<Path> said, Texts texts) {
    if (!(card.verdict() instanceof Verdict.MayClear clear)) {
      return card.verdict().why().stream().map(reason -> why(reason, texts)).toList();
    }
    var all = new ArrayList<Why>();
    all.add(
        new Why(
            texts.get(
                clear.waived().isEmpty() ? "copies.why.clear" : "copies.why.kept",
                clear.kept(),
                clear.copies()),
            CopiesDescription.afterClearing(clear).isEmpty()
                ? texts.get("copies.why.lapses")
                : texts.get("copies.why.after", clear.copies())));
    if (!clear.waived().isEmpty()) {
      all.add(
          new Why(
              texts.get("copies.why.waived", clear.waived().size(), persons(clear, texts)),
              texts.formats().list(clear.waived().stream().map(Waiver::path).toList())));
    }
    clear.by().stream()
        .filter(one -> said.contains(Path.of(one.folder())))
        .map(one -> new Why(texts.get("copies.why.said", lastName(one.folder())), one.folder()))
        .forEach(all::add);
    return List.copyOf(all);
  }

  private static String persons(Verdict.MayClear clear, Texts texts) {
    return texts.formats().list(clear.waived().stream().map(Waiver::by).distinct().toList());
  }

  /** What the command line advises is done on the page by other means. */
  private static Why why(Reason reason, Texts texts) {
    var own = "copies.remedy." + reason.rule().word();
    return new Why(
        texts.say(reason.said()), texts.has(own) ? texts.get(own) : texts.say(reason.fix()));
  }

  private static String sentence(Compared.CardCompared card, String time, Texts texts) {
    return switch (card.verdict()) {
      case Verdict.MayClear clear ->
          texts.get(
              clear.waived().isEmpty() ? "copies.say.may-be-cleared" : "copies.say.waived",
              card.name(),
              time,
              clear.kept(),
              texts
                  .formats()
                  .list(clear.by().stream().map(one -> witness(one, clear, texts)).toList()),
              clear.waived().size(),
              persons(clear, texts));
      case Verdict.NotYet notYet ->
          texts.get("copies.say.not-yet", card.name(), texts.say(notYet.why().getFirst().said()));
      case Verdict.CannotTell cannot ->
          texts.get(
              "copies.say.cannot-tell", card.name(), texts.say(cannot.why().getFirst().said()));
    };
  }

  private static String witness(Witness one, Verdict.MayClear clear, Texts texts) {
    var name = lastName(one.folder());
    return one.files() == clear.kept() ? name : texts.get("copies.say.some", name, one.files());
  }

  /** The last name of a folder; the folder itself where it is the root of a disk. */
  static String lastName(String folder) {
    var last = Path.of(folder).getFileName();
    return last == null ? folder : last.toString();
  }
}
