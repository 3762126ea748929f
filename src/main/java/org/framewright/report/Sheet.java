package org.framewright.report;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.job.SetupStatus;

/** Pictures in rows below a heading, each with a few words. */
final class Sheet {
  private static final int ACROSS = 5;
  private static final double SQUARE = 33;

  private Sheet() {}

  /**
   * A picture.
   *
   * @param said for those who hear the page
   * @param view its setup and view
   * @param chosen whether it is marked as chosen
   * @param marks what is known besides; may be empty
   */
  record Cell(Frame frame, String said, String view, String name, boolean chosen, String marks) {}

  /** A setup's code and title. */
  static String heading(String code, String title) {
    return title.isEmpty() ? code : code + "\u2002" + title;
  }

  /**
   * Writes rows.
   *
   * @param heading other people's words; none for pictures of no setup
   * @param under what stands below the heading
   * @param said what people said, a line each
   */
  static void write(
      Page page, Optional<String> heading, String under, List<String> said, List<Cell> cells) {
    var html = page.html();
    for (int i = 0; i < cells.size(); i += ACROSS) {
      html.open("div", "class", "row");
      if (i == 0) {
        html.open("div", "class", "setup");
        if (heading.isPresent()) {
          html.wordsIn("h2", heading.get());
        } else {
          page.heading(Text.of("Of no setup yet"));
        }
        html.element("p", under, "class", "small");
        for (var line : said) {
          html.wordsIn("p", line, "class", "small");
        }
        html.end();
      }
      cells.subList(i, Math.min(cells.size(), i + ACROSS)).forEach(cell -> write(page, cell));
      html.end();
    }
  }

  private static void write(Page page, Cell cell) {
    var html = page.html();
    html.open("div", "class", "frame");
    page.picture(cell.frame(), cell.said(), SQUARE);
    html.open("div", "class", "caption");
    html.open("p");
    html.wordsIn("span", cell.view(), "class", "view");
    html.close();
    html.wordsIn("p", cell.name(), "class", "name");
    if (cell.chosen() || !cell.marks().isEmpty()) {
      html.open("p", "class", "marks");
      if (cell.chosen()) {
        html.element("span", page.say(Text.of("chosen")), "class", "mark").text(" ");
      }
      html.text(cell.marks());
      html.close();
    }
    html.close().close();
  }

  /** How many frames a setup shows, and who approved it or what its state is. */
  static String under(SetupStatus status, int frames, Words words) {
    var count = words.frames(frames);
    return approval(status, words)
        .map(approved -> words.say(Text.of("{0}. Approved by {1}", count, approved)))
        .orElseGet(() -> words.say(Text.of("{0}. {1}", count, words.state(status.state()))));
  }

  /** Who approved a setup, and when. */
  static Optional<String> approval(SetupStatus status, Words words) {
    return status
        .signedOffBy()
        .flatMap(
            by ->
                status
                    .signedOffAt()
                    .map(
                        at -> words.say(Text.of("{0}, {1}", Html.line(by), words.dayAndTime(at)))));
  }

  static Optional<Text> rating(OptionalInt rating) {
    return rating.isEmpty()
        ? Optional.empty()
        : Optional.of(
            rating.getAsInt() < 0 ? Text.of("rejected") : Text.of("rated {0}", rating.getAsInt()));
  }
}
