package org.framewright.report;

import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.report.chart.Chart;

/**
 * The frame of every report: the head of the page, who sends it, the title, the style sheet. The
 * same markup is a page for a browser and, a little different in what no reader sees, for print.
 */
final class Page {
  /** Where the style sheet for print has the families of fonts; no text can hold it. */
  static final String FAMILIES = "&families;";

  /** The number of the logo among the pictures. */
  private static final String LOGO = "logo";

  private static final double LOGO_HIGH = 13;
  private static final double LOGO_WIDE = 60;

  /** A line that stands in for a picture. */
  private static final double NONE_HIGH = 4;

  /** Where pictures come from, as far as a page knows. */
  interface Pictures {
    /** The address of a picture of a frame, and its size; nothing if there is none. */
    Optional<Shown> of(Frame frame);
  }

  /** A picture as a page shows it. */
  record Shown(String address, int width, int height) {}

  private final Html html;
  private final Words words;
  private final boolean print;
  private final Pictures pictures;

  Page(Html html, Words words, boolean print, Pictures pictures) {
    this.html = html;
    this.words = words;
    this.print = print;
    this.pictures = pictures;
  }

  Html html() {
    return html;
  }

  Words words() {
    return words;
  }

  String say(Text text) {
    return words.say(text);
  }

  /** Opens the page; {@link #end} closes it. */
  void begin(JobFacts facts, ReportOptions options, Text subtitle) {
    begin(facts.job().name(), options.kind(), options.stationery(), subtitle);
  }

  /** The same of what is known of a job by other ways. */
  void begin(String job, ReportKind told, Stationery stationery, Text subtitle) {
    var kind = say(told.title());
    var title = say(Text.of("{0}: {1}", kind, Html.line(job)));
    var language = words.locale().getLanguage();
    html.documentType();
    if (print) {
      html.open("html", "lang", language, "xml:lang", language);
    } else {
      html.open("html", "lang", language);
    }
    html.open("head");
    html.empty("meta", "charset", "utf-8");
    html.element("title", title);
    if (print) {
      html.empty("meta", "name", "subject", "content", title);
    } else {
      html.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    }
    html.style(
        print ? Style.forPrint(stationery.paper(), Html.line(job), kind) : Style.forScreen());
    html.end();
    html.open("body");
    letterhead(stationery.letterhead(), kind);
    if (!print) {
      html.open("main");
    }
    html.wordsIn("h1", job);
    html.element("p", say(subtitle), "class", "subtitle");
  }

  private void letterhead(Letterhead letterhead, String kind) {
    // The tags of a PDF know no regions of a page.
    html.open(print ? "div" : "header", "class", "letterhead");
    html.element("p", kind, "class", "kind");
    letterhead
        .logo()
        .ifPresent(
            logo -> {
              double scale = Math.min(LOGO_HIGH / logo.height(), LOGO_WIDE / logo.width());
              html.open("p", "class", "sender");
              html.empty(
                  "img",
                  "src",
                  print
                      ? Press.SCHEME + ":" + LOGO
                      : "data:image/png;base64,"
                          + Base64.getEncoder().encodeToString(logo.png().bytes()),
                  "alt",
                  letterhead.studio().isEmpty()
                      ? say(Text.of("The studio’s logo"))
                      : Html.line(letterhead.studio()),
                  "style",
                  size(logo.width() * scale, logo.height() * scale));
              html.end();
            });
    if (letterhead.logo().isEmpty() && !letterhead.studio().isEmpty()) {
      html.wordsIn("p", letterhead.studio(), "class", "sender");
    }
    if (!letterhead.contact().isEmpty()) {
      html.wordsIn("p", letterhead.contact(), "class", "contact");
    }
    html.end();
  }

  /** Whether an address is that of the logo. */
  static boolean isLogo(String name) {
    return name.equals(LOGO);
  }

  private static String size(double width, double height) {
    return "width:%smm;height:%smm".formatted(mm(width), mm(height));
  }

  static String mm(double millimetres) {
    return Double.toString(Math.round(millimetres * 100) / 100.0);
  }

  void end() {
    if (!print) {
      html.end();
    }
    html.end();
    html.end();
  }

  void heading(Text text) {
    html.element("h2", say(text));
  }

  void paragraph(Text text) {
    html.element("p", say(text));
  }

  /** A large number with what it counts below. */
  void figure(String number, String label) {
    html.open("div", "class", "figure");
    html.element("p", number, "class", "number");
    html.element("p", label, "class", "label");
    html.end();
  }

  /** A box to tick by hand; nothing to those who hear the page. */
  void box() {
    html.open("span", "class", "box").text("\u00a0").close();
  }

  /** The head of a table, with the width of each column in hundredths. */
  void headings(List<Text> headings, int... widths) {
    html.open("thead").open("tr");
    for (int i = 0; i < headings.size(); i++) {
      html.element("th", say(headings.get(i)), "scope", "col", "style", "width:" + widths[i] + "%");
    }
    html.close().close();
  }

  void chart(Chart chart, double wide) {
    ChartSvg.write(chart, html, print, wide);
  }

  /**
   * A frame's picture in a square of that many millimetres, or a square that says there is none.
   */
  void picture(Frame frame, String said, double square) {
    var shown = pictures.of(frame);
    if (shown.isPresent()) {
      double scale = square / Math.max(shown.get().width(), shown.get().height());
      double width = shown.get().width() * scale;
      double height = shown.get().height() * scale;
      square(square, height);
      html.empty("img", "src", shown.get().address(), "alt", said, "style", size(width, height));
    } else {
      square(square, NONE_HIGH);
      html.element("p", say(Text.of("no preview")), "class", "none");
    }
    html.close();
  }

  /** Opens a square with something of that height in its middle. */
  private void square(double square, double height) {
    html.open(
        "div",
        "class",
        "square",
        "style",
        size(square, height) + ";padding:" + mm((square - height) / 2) + "mm 0");
  }
}
