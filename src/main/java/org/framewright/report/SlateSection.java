package org.framewright.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.framewright.base.Text;
import org.framewright.frames.slate.Slate;
import org.framewright.shotlist.Setup;

/**
 * Cards that are held into the first picture of each setup: its code, large, what it is, and the
 * symbol that the frames are read by, with a strip below it that a hand may cover. What is said
 * stands above the symbol, so that nothing but the hand is beside it.
 */
record SlateSection(String job, List<Card> cards, SlateSize size, Stationery stationery)
    implements Section {
  /** A millimetre in points. */
  private static final double POINT = 72 / 25.4;

  /** Capital letters and digits of Noto Sans are as high as this part of its size. */
  private static final double CAPITALS = 0.714;

  /** From here on letters are of other scripts than our own font for headings has all of. */
  private static final int FOREIGN = 0x250;

  /** Codes of which no sign reaches above capitals or below their base line. */
  private static final Pattern PLAIN = Pattern.compile("[0-9A-Z.-]+");

  /** How high the others' capitals are by these, and how much of the rest is above them. */
  private static final double SMALLER = 0.6;

  private static final double ABOVE = 0.42;

  /** By how much round digits may reach over straight ones, in millimetres. */
  private static final double OVER = 1.5;

  /** How high a line is in any of the fonts, by its size. */
  private static final double HIGHEST_LINE = 1.7;

  private static final double LINE = 1.25;

  /** Less is nothing to hold a card by. */
  private static final double STRIP = 10;

  /** Between the code and what is said below it. */
  private static final double GAP = 3;

  private static final double CUT = 5;

  /** A card. */
  record Card(Setup setup, Slate slate) {}

  SlateSection {
    cards = List.copyOf(cards);
  }

  @Override
  public void write(Page page) {
    var html = page.html();
    var language = page.words().locale().getLanguage();
    var title = page.say(Text.of("Slates: {0}", Html.line(job)));
    html.documentType();
    html.open("html", "lang", language, "xml:lang", language);
    html.open("head");
    html.empty("meta", "charset", "utf-8");
    html.element("title", title);
    html.empty("meta", "name", "subject", "content", title);
    html.style(style());
    html.end();
    html.open("body");
    try (var fonts = new Fonts()) {
      for (int i = 0; i < cards.size(); i += size.perPage()) {
        sheet(page, fonts, cards.subList(i, Math.min(cards.size(), i + size.perPage())));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    html.end();
    html.end();
  }

  private String style() {
    var paper = stationery.paper();
    return """
    @page { size: %s; margin: 0; }
    body { font-family: %s; margin: 0; color: #000000; background: #ffffff; text-align: center; }
    h1, p { margin: 0; }
    .sheet { position: relative; width: %smm; height: %smm; page-break-inside: avoid; }
    .next { page-break-before: always; }
    .card { position: absolute; width: %smm; height: %smm; overflow: hidden; }
    .code, .told, .symbol, .hold { position: absolute; left: %smm; width: %smm; overflow: hidden; }
    .code { height: %smm; font-weight: bold; line-height: 1; word-wrap: break-word; }
    .told { font-size: %spt; line-height: %s; word-wrap: break-word; }
    .title { font-size: %spt; font-weight: bold; overflow: hidden; }
    .line { height: %spt; overflow: hidden; white-space: nowrap; }
    .typed { font-family: 'Source Code Pro', %s; }
    svg { display: block; margin: 0 auto; }
    .hold { font-size: 6.5pt; color: #555555; }
    .cut { position: absolute; background: #8a8a86; font-size: 0; line-height: 0; }
    """
        .formatted(
            paper.css(),
            Page.FAMILIES,
            Page.mm(paper.width()),
            Page.mm(paper.height() - 1),
            Page.mm(size.width(paper)),
            Page.mm(size.height(paper) - 1), // what reaches over the sheet would go to the next
            Page.mm(size.margin()),
            Page.mm(width()),
            Page.mm(size.digits() + 2 * OVER),
            Page.mm(size.smallSize()),
            LINE,
            Page.mm(size.titleSize()),
            Page.mm(size.smallSize() * LINE),
            Page.FAMILIES);
  }

  /** How wide what is said may be. */
  private double width() {
    return size.width(stationery.paper()) - 2 * size.margin();
  }

  private void sheet(Page page, Fonts fonts, List<Card> shown) {
    var html = page.html();
    var paper = stationery.paper();
    boolean first = shown.getFirst().equals(cards.getFirst());
    html.open("div", "class", first ? "sheet" : "sheet next");
    for (int i = 0; i < shown.size(); i++) {
      int row = i / 2;
      card(page, fonts, shown.get(i), i % 2 * size.width(paper), row * size.height(paper));
    }
    if (size == SlateSize.FOUR) {
      cuts(html);
    }
    html.end();
  }

  private void card(Page page, Fonts fonts, Card card, double left, double top) {
    var html = page.html();
    html.open("div", "class", "card", "style", place(left, top));
    code(html, fonts, card.setup().code());
    told(page, card);
    double symbol = symbolTop();
    html.open(
        "div",
        "class",
        "symbol",
        "style",
        "top:"
            + Page.mm(symbol)
            + "mm;left:0;width:"
            + Page.mm(size.width(stationery.paper()))
            + "mm");
    SlateDrawing.write(
        html,
        size.symbol(card.slate()),
        size.whole(),
        page.say(Text.of("The code of setup {0}", Html.line(card.setup().code()))));
    html.end();
    html.open(
        "p",
        "class",
        "hold",
        "style",
        "top:" + Page.mm(size.height(stationery.paper()) - size.margin() - 3) + "mm");
    html.text(page.say(Text.of("Hold the card here, turned a little away from the light.")));
    html.close();
    html.end();
  }

  private static String place(double left, double top) {
    return "left:" + Page.mm(left) + "mm;top:" + Page.mm(top) + "mm";
  }

  /**
   * The code with its digits as high as they should be, or as its length allows. It is drawn, so
   * that it stands where it should; as text it stands before the title.
   */
  private void code(Html html, Fonts fonts, String setup) {
    var code = Html.line(setup);
    if (code.chars().anyMatch(c -> c >= FOREIGN)) {
      foreign(html, code);
      return;
    }
    // Other letters have accents above and parts below, which need room, too.
    double high = PLAIN.matcher(code).matches() ? 1 : SMALLER;
    double wanted = size.digits() * high / CAPITALS;
    double fits = Math.min(1, width() / fonts.outline(code, wanted, true).width());
    double above = (size.digits() - size.digits() * high) * ABOVE;
    double baseLine = OVER + above + size.digits() * high * (1 + fits) / 2;
    var wide = Page.mm(width());
    var tall = Page.mm(size.digits() + 2 * OVER);
    html.open("div", "class", "code", "style", place(size.margin(), size.margin() - OVER));
    html.open(
        "svg",
        "viewBox",
        "0 0 " + wide + " " + tall,
        "alt",
        code,
        "style",
        "width:" + wide + "mm;height:" + tall + "mm");
    html.element(
        "text",
        code,
        "x",
        Page.mm(width() / 2),
        "y",
        Page.mm(baseLine),
        "font-size",
        Double.toString(wanted * fits),
        "font-weight",
        "bold",
        "text-anchor",
        "middle",
        "fill",
        "#000000");
    html.close();
    html.end();
  }

  /** A code in other letters than ours, as large as any font of them fits. */
  private void foreign(Html html, String code) {
    double most = size.digits() / HIGHEST_LINE;
    double shown = Math.min(most, width() / Math.max(1, code.codePointCount(0, code.length())));
    html.open(
        "div",
        "class",
        "code",
        "style",
        place(size.margin(), size.margin())
            + ";font-size:"
            + Page.mm(Math.max(shown, most / 4) * POINT)
            + "pt");
    html.wordsIn("p", code);
    html.end();
  }

  private double symbolTop() {
    // As low as leaves a strip to hold; what is said has the rest.
    return size.height(stationery.paper()) - size.whole() - strip();
  }

  /** On higher paper the strip is higher, too. */
  private double strip() {
    double spare =
        size.height(stationery.paper()) - size.margin() - size.digits() - size.whole() - told(2);
    return Math.max(STRIP, spare);
  }

  /** How high what is said is with so many lines of the title. */
  private double told(int lines) {
    return GAP + (lines * size.titleSize() + 3 * size.smallSize()) * LINE / POINT;
  }

  private void told(Page page, Card card) {
    var html = page.html();
    double top = size.margin() + size.digits() + GAP;
    double room = symbolTop() - top;
    int lines = 2;
    while (lines > 1 && told(lines) - GAP > room + 0.01) {
      lines--;
    }
    html.open(
        "div",
        "class",
        "told",
        "style",
        "top:" + Page.mm(top) + "mm;height:" + Page.mm(room) + "mm");
    html.open(
        "h1",
        "class",
        "title",
        "style",
        "max-height:" + Page.mm(lines * size.titleSize() * LINE) + "pt");
    html.words(card.setup().code());
    if (!card.setup().title().isBlank()) {
      html.text("\u2002").words(card.setup().title());
    }
    html.close();
    var views =
        card.setup().views().stream().map(view -> view.code()).collect(Collectors.joining(" "));
    if (!views.isBlank()) {
      html.wordsIn("p", page.say(Text.of("Views: {0}", Html.line(views))), "class", "line");
    }
    html.wordsIn("p", job, "class", "line");
    html.wordsIn("p", card.slate().grouped(), "class", "line typed");
    html.end();
  }

  /** Where four cards are cut apart: at the edges and in the middle, away from every symbol. */
  private void cuts(Html html) {
    var paper = stationery.paper();
    double x = paper.width() / 2;
    double y = paper.height() / 2;
    cut(html, x, 0, false);
    cut(html, x, y - CUT / 2, false);
    cut(html, x, paper.height() - 1 - CUT, false);
    cut(html, 0, y, true);
    cut(html, x - CUT / 2, y, true);
    cut(html, paper.width() - CUT, y, true);
  }

  private static void cut(Html html, double x, double y, boolean across) {
    html.open(
        "div",
        "class",
        "cut",
        "style",
        place(across ? x : x - 0.1, across ? y - 0.1 : y)
            + ";width:"
            + Page.mm(across ? CUT : 0.2)
            + "mm;height:"
            + Page.mm(across ? 0.2 : CUT)
            + "mm");
    html.close();
  }

  @Override
  public List<Table> tables(Words words) {
    var rows = new ArrayList<List<String>>();
    for (var card : cards) {
      rows.add(List.of(card.setup().code(), card.setup().title(), card.slate().print()));
    }
    return List.of(
        new Table(
            Text.of("Slates"), List.of(Text.of("Setup"), Text.of("What"), Text.of("Code")), rows));
  }
}
