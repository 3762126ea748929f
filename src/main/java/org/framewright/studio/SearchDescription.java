package org.framewright.studio;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;
import org.framewright.shotlist.SetupState;

/** Hits of a search in words, as the command line prints them. */
public final class SearchDescription {
  private SearchDescription() {}

  /** Two lines a hit: where it is, and what was found. */
  public static List<String> lines(List<SearchHit> hits, int most) {
    var lines = new ArrayList<String>();
    if (hits.isEmpty()) {
      lines.add("Nothing was found.");
    }
    for (var hit : hits) {
      lines.add(
          hit.day()
              + "  "
              + hit.name()
              + hit.setup()
                  .map(code -> "  " + code + (hit.title().isBlank() ? "" : " " + hit.title()))
                  .orElse("  of no setup")
              + hit.state().map(SetupState::label).map(state -> "  " + state).orElse(""));
      lines.add("    " + String.join("; ", hit.matched()));
    }
    if (hits.size() == most) {
      lines.add("There may be more: give more words, or a higher --limit.");
    }
    return lines.stream().map(PlainText::line).toList();
  }
}
