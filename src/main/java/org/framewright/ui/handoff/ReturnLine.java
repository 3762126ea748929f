package org.framewright.ui.handoff;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.PlainText;
import org.framewright.handoff.Returns;
import org.framewright.ui.look.Texts;

/**
 * A select and what came of it, or a file that answers none.
 *
 * @param name the select, or the file
 * @param more which file and version came, or what a file likely is
 * @param said what is to be said of it besides, a line each
 * @param select the pictures of the frame in the job
 * @param came the files that came
 */
record ReturnLine(
    Kind kind, String name, String more, List<Remark> said, List<Path> select, List<Path> came) {

  ReturnLine {
    said = List.copyOf(said);
    select = List.copyOf(select);
    came = List.copyOf(came);
  }

  /** How it stands, what needs a person first. */
  enum Kind {
    /** It came, and is not as the client asked. */
    NOT_AS_ASKED,
    CHANGED,
    UNTOUCHED,
    MISSING,
    EXTRA,
    ANSWERED;

    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  static List<ReturnLine> of(Returns returns, Texts texts) {
    var lines = new ArrayList<ReturnLine>();
    var selects = new HashMap<String, List<Path>>();
    for (var answer : returns.answers()) {
      selects.put(answer.select(), answer.frame());
      lines.add(line(answer, returns, texts));
    }
    for (var extra : returns.extras()) {
      lines.add(
          line(
              extra,
              returns,
              extra
                  .likely()
                  .map(likely -> selects.getOrDefault(likely.select(), List.of()))
                  .orElse(List.of()),
              texts));
    }
    lines.sort(
        Comparator.comparing((ReturnLine line) -> line.kind()).thenComparing(ReturnLine::name));
    return lines;
  }

  private static ReturnLine line(Returns.Answer answer, Returns returns, Texts texts) {
    var said = new ArrayList<Remark>();
    for (var finding : answer.findings()) {
      said.add(Remark.of(finding.problem(), texts));
    }
    if (answer.state() == Returns.State.CHANGED) {
      said.add(
          new Remark(
              texts.get("handoff.returns.changed"), texts.get("handoff.returns.changed.remedy")));
    }
    var others =
        answer.versions().keySet().stream()
            .filter(version -> version != answer.newest().orElse(0))
            .map(String::valueOf)
            .toList();
    if (!others.isEmpty()) {
      said.add(
          new Remark(
              texts.get("handoff.returns.others", texts.formats().list(others), others.size()),
              ""));
    }
    if (!answer.missing().isEmpty()) {
      said.add(
          new Remark(
              texts.get(
                  "handoff.returns.gaps",
                  texts.formats().list(answer.missing().stream().map(String::valueOf).toList()),
                  answer.missing().size()),
              ""));
    }
    var files = answer.newestFiles();
    var more =
        texts.apart(
            answer.newest().isPresent()
                ? texts.get("handoff.returns.version", answer.newest().getAsInt())
                : "",
            files.isEmpty() ? "" : PlainText.line(files.getFirst()),
            files.size() < 2 ? "" : texts.get("handoff.returns.more", files.size() - 1));
    return new ReturnLine(
        kind(answer),
        answer.select(),
        more,
        said,
        answer.frame(),
        files.stream().flatMap(file -> path(returns, file).stream()).toList());
  }

  private static Kind kind(Returns.Answer answer) {
    return switch (answer.state()) {
      case ANSWERED -> answer.findings().isEmpty() ? Kind.ANSWERED : Kind.NOT_AS_ASKED;
      case CHANGED -> Kind.CHANGED;
      case UNTOUCHED -> Kind.UNTOUCHED;
      case MISSING -> Kind.MISSING;
    };
  }

  private static ReturnLine line(
      Returns.Extra extra, Returns returns, List<Path> select, Texts texts) {
    var said = new ArrayList<Remark>();
    said.add(new Remark(PlainText.line(texts.say(extra.said())), ""));
    extra
        .likely()
        .ifPresent(
            likely ->
                said.add(
                    new Remark(
                        texts.get(
                            "handoff.returns.likely",
                            likely.select(),
                            PlainText.line(texts.say(likely.said()))),
                        likely
                            .name()
                            .map(
                                name ->
                                    texts.get("handoff.returns.rightName", PlainText.line(name)))
                            .orElse(""))));
    return new ReturnLine(
        Kind.EXTRA,
        PlainText.line(extra.file()),
        extra
            .likely()
            .map(likely -> texts.get("handoff.returns.likelyOf", likely.select()))
            .orElse(""),
        said,
        select,
        path(returns, extra.file()).stream().toList());
  }

  /** A name from another system may be none here. */
  private static Optional<Path> path(Returns returns, String file) {
    try {
      return Optional.of(returns.path(file));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}
