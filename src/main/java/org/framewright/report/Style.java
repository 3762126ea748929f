package org.framewright.report;

/** The style sheets: black on white, so that a report prints without colour. */
final class Style {
  /** What both have; lengths are those of paper. */
  private static final String COMMON =
      """
      body { color: #222222; background: #ffffff; font-size: 9.5pt; line-height: 1.35; }
      p { margin: 0; }
      h1 { font-size: 23pt; line-height: 1.15; margin: 0; font-weight: bold; }
      h2 { font-size: 12pt; margin: 7mm 0 2mm 0; font-weight: bold; }
      h3 { font-size: 10.5pt; margin: 0; font-weight: bold; }
      h1, h2, h3, td, p, li { word-wrap: break-word; overflow-wrap: anywhere; }
      .letterhead { border-bottom: 0.5mm solid #222222; padding-bottom: 2.5mm; margin-bottom: 6mm; }
      .kind { float: right; font-size: 12pt; font-weight: bold; }
      .sender { font-size: 12pt; font-weight: bold; }
      .contact { font-size: 8.5pt; color: #555555; }
      .letterhead:after { content: ""; display: block; clear: both; }
      .subtitle { font-size: 11pt; color: #555555; margin: 1.5mm 0 5mm 0; }
      .figures { margin: 0 0 1mm 0; border-bottom: 0.2mm solid #8a8a86; padding-bottom: 3mm; }
      .figure { display: inline-block; width: 19.4%; vertical-align: top; }
      .number { font-size: 23pt; font-weight: bold; line-height: 1.15; white-space: nowrap; }
      .label { font-size: 8.5pt; color: #555555; padding-right: 3mm; }
      .half { display: inline-block; width: 48%; vertical-align: top; }
      .half.first { margin-right: 3.4%; }
      .said { font-size: 8.5pt; color: #555555; margin-top: 1mm; }
      .lead { margin: 3mm 0 0 0; font-size: 10.5pt; }
      .keep { page-break-inside: avoid; break-inside: avoid; }
      svg { display: block; }
      table { width: 100%; border-collapse: collapse; table-layout: fixed; }
      th { text-align: left; vertical-align: bottom; font-size: 8pt; color: #555555; padding: 0 2.5mm 1mm 0;
           border-bottom: 0.4mm solid #222222; font-weight: bold; }
      td { text-align: left; vertical-align: top; padding: 1.3mm 2.5mm 1.3mm 0; border-bottom: 0.2mm solid #c4c4c0; }
      tr { page-break-inside: avoid; break-inside: avoid; }
      td.code, td.count { white-space: nowrap; }
      td.code { font-weight: bold; }
      td.break { color: #555555; background: #efefec; padding-left: 2mm; }
      .small { font-size: 8.5pt; color: #555555; }
      .changed { font-size: 8.5pt; border-left: 0.8mm solid #222222; padding-left: 1.5mm; margin-top: 0.8mm; }
      .look { list-style: none; margin: 0; padding: 0; }
      .look li { position: relative; margin: 0; padding: 0.8mm 0 0.8mm 6.5mm; }
      .look .box { position: absolute; left: 0; top: 1.3mm; }
      .box { display: inline-block; width: 3.2mm; height: 3.2mm; border: 0.3mm solid #222222; line-height: 3.2mm;
             vertical-align: -0.4mm; }
      .setup { border-top: 0.4mm solid #222222; padding-top: 1.5mm; margin: 0 0 1.5mm 0; }
      .setup h2 { margin: 0; }
      .row { page-break-inside: avoid; break-inside: avoid; margin: 0 0 2mm 0; }
      .frame { display: inline-block; width: 20%; vertical-align: top; }
      .square { background: #efefec; text-align: center; }
      .frame .square, .frame .square img { display: block; }
      .square img { display: block; margin-left: auto; margin-right: auto; }
      .none { font-size: 8pt; color: #555555; }
      .caption { width: 33mm; font-size: 7.5pt; line-height: 1.3; padding: 0.8mm 0 1mm 0; }
      .view { font-weight: bold; }
      .name { font-size: 6.6pt; color: #444444; }
      .marks { margin-top: 0.8mm; }
      .mark { border: 0.2mm solid #222222; padding: 0 0.8mm; font-weight: bold; }
      .approval { border-top: 0.2mm solid #8a8a86; padding: 2.5mm 0 2.5mm 0; page-break-inside: avoid; break-inside: avoid; }
      .approval .shown { float: left; width: 24mm; }
      .approval .told { margin-left: 28mm; }
      .approval:after { content: ""; display: block; clear: both; }
      .approved { font-size: 10.5pt; margin: 0.5mm 0 1mm 0; }
      .check { font-size: 8pt; color: #555555; margin: 0 0 4mm 0; }
      .names { font-size: 7.5pt; color: #444444; }
      .proof { font-size: 6.6pt; line-height: 1.4; color: #444444; margin-top: 1mm; }
      .sign { display: inline-block; width: 30%; margin: 16mm 3% 0 0; border-top: 0.3mm solid #222222; padding-top: 1mm;
              font-size: 8.5pt; color: #555555; }
      """;

  /** A table of which only the head has room on a page cannot be tagged, and reads badly. */
  private static final String PRINT =
      """
      body { font-family: &families;; margin: 0; }
      .proof { font-family: 'Source Code Pro', &families;; }
      table { -fs-table-paginate: paginate; }
      h2 { -fs-page-break-min-height: 40mm; }
      """;

  private static final String SCREEN =
      """
      body { font-family: 'Noto Sans', 'Noto Sans Arabic', system-ui, sans-serif; max-width: 190mm; margin: 8mm auto;
             padding: 0 4mm; }
      .proof { font-family: 'Source Code Pro', ui-monospace, monospace; }
      .row { display: flex; flex-wrap: wrap; }
      .frame { width: auto; margin: 0 3mm 2mm 0; }
      svg { max-width: 100%; height: auto; }
      @media (max-width: 600px) {
        .figure { width: 48%; }
        .half, .half.first { width: 100%; margin-right: 0; }
      }
      @media print {
        body { margin: 0; max-width: none; }
      }
      """;

  private Style() {}

  static String forScreen() {
    return COMMON + SCREEN;
  }

  static String forPrint(Paper paper, String job, String kind) {
    return "@page { size: "
        + paper.css()
        + "; margin: 15mm 15mm 17mm 15mm;\n"
        + "  @bottom-left { "
        + FOOT
        + " content: "
        + quoted(job + " \u00b7 " + kind)
        + "; }\n"
        + "  @bottom-right { "
        + FOOT
        + " content: counter(page) ' / ' counter(pages); } }\n"
        + COMMON
        + PRINT;
  }

  private static final String FOOT = "font-size: 7.5pt; color: #555555; font-family: &families;;";

  /** A text as a string of CSS, of which nothing but letters and digits stands as it is. */
  private static String quoted(String text) {
    var css = new StringBuilder("'");
    text.codePoints()
        .limit(80)
        .forEach(
            c -> {
              if (c < 0x80 && Character.isLetterOrDigit(c)) {
                css.append((char) c);
              } else if (c >= 0xA0 && Character.isLetterOrDigit(c)) {
                css.appendCodePoint(c);
              } else {
                css.append('\\').append(Integer.toHexString(c)).append(' ');
              }
            });
    return css.append('\'').toString();
  }
}
