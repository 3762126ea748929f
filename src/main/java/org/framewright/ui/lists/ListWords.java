package org.framewright.ui.lists;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;
import org.framewright.ui.look.Texts;

/**
 * What is shown of a list, in words.
 *
 * @param uses what a column may be
 */
record ListWords(Texts texts, List<Use> uses) {

  /** The columns of the file. */
  List<ColumnLine> columns(Looked shown) {
    var lines = new ArrayList<ColumnLine>();
    if (shown.reading().isEmpty()) {
      return lines;
    }
    var reading = shown.reading().get();
    for (var column : reading.columns()) {
      var said = Use.said(shown.options(), column.heading());
      // While it is read again, what was said is shown.
      var use = shown.isRead() ? Use.of(column) : said.orElseGet(() -> Use.of(column));
      lines.add(
          new ColumnLine(
              PlainText.line(column.heading()),
              use,
              words(use),
              said.isPresent(),
              reading.as().table().lines().stream()
                  .map(line -> PlainText.line(line.cell(column)))
                  .toList()));
    }
    return lines;
  }

  private String words(String use) {
    return uses.stream()
        .filter(one -> one.id().equals(use))
        .map(Use::words)
        .findFirst()
        .orElseGet(() -> texts.has("lists.use." + use) ? texts.get("lists.use." + use) : use);
  }

  /** What is so, in a sentence. */
  String verdict(Looked shown) {
    if (shown.file().isEmpty()) {
      return "";
    }
    if (!shown.isRead()) {
      return texts.get("lists.reading");
    }
    if (shown.reading().isEmpty()) {
      return texts.get("lists.failed");
    }
    if (shown.refused().isPresent()) {
      return texts.get("lists.refused", shown.refused().get().problems().size());
    }
    var change = shown.change().orElseThrow();
    if (change.isEmpty()) {
      return texts.get("lists.same");
    }
    return texts.get(
            "lists.changes",
            change.added().size(),
            change.changed().size(),
            change.removed().size() + change.kept().size(),
            shown.asBefore())
        + (change.reordered() ? " " + texts.get("lists.reordered") : "");
  }
}
