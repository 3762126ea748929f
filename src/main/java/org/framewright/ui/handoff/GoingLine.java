package org.framewright.ui.handoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Withheld;
import org.framewright.ui.look.Texts;

/**
 * A frame that would go, or that cannot.
 *
 * @param from its name in the job
 * @param to its name in the package; empty where it does not go
 * @param more how much it is, or why it does not go
 * @param remedy what can be done where it does not go
 */
record GoingLine(Kind kind, String from, String to, String more, String remedy) {

  /** Whether it goes. */
  enum Kind {
    HELD,
    AGAIN,
    GOES;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * The lines of packages, what cannot go first.
   *
   * @param pages how one gets to the page of a tool, in words
   */
  static List<GoingLine> of(
      List<HandOffPlan> parts, Texts texts, Map<Withheld.Tool, String> pages) {
    var lines = new ArrayList<GoingLine>();
    for (var part : parts) {
      part.withheld().forEach(held -> lines.add(held(held, texts, pages)));
    }
    for (int i = 0; i < parts.size(); i++) {
      var part = parts.get(i);
      for (var select : part.selects()) {
        var before = part.before().get(select.name());
        var much =
            texts.get(
                "handoff.line.much", select.files().size(), texts.formats().size(select.bytes()));
        lines.add(
            new GoingLine(
                before == null ? Kind.GOES : Kind.AGAIN,
                select.original(),
                select.name(),
                texts.apart(
                    much,
                    select.slate() ? texts.get("handoff.line.slate") : "",
                    before == null ? "" : texts.get("handoff.line.before", before),
                    parts.size() == 1 ? "" : texts.get("handoff.line.part", i + 1)),
                ""));
      }
    }
    return lines;
  }

  /** Of a frame that stays, all that there is to say: its line may be too short for it. */
  Optional<Remark> inFull(Texts texts) {
    return kind == Kind.HELD
        ? Optional.of(new Remark(texts.get("problem.at", from, more), remedy))
        : Optional.empty();
  }

  private static GoingLine held(Withheld held, Texts texts, Map<Withheld.Tool, String> pages) {
    var page = pages.getOrDefault(held.tool(), "");
    var remedy = texts.remedy(held.problem());
    return new GoingLine(
        Kind.HELD,
        held.problem().where(),
        "",
        texts.what(held.problem()),
        page.isEmpty() ? remedy : texts.get("handoff.remedyOn", remedy, page));
  }
}
