package org.framewright.ready;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.job.Job;
import org.framewright.job.ReadyAt;

/** An answer in lines, for the command line. */
public final class ReadyDescription {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private ReadyDescription() {}

  /** The answer in a sentence, without what is missing. */
  public static Text headline(Answer answer) {
    int missing = answer.missing().size();
    return switch (answer.kind()) {
      case READY -> answer.wrap() ? Text.of("The day is wrapped.") : Text.of("Ready.");
      case BUT_FOR ->
          answer.wrap()
              ? Text.counted("Wrapped but for {0} thing:", "Wrapped but for {0} things:", missing)
              : Text.counted("Ready but for {0} thing:", "Ready but for {0} things:", missing);
      case NOT_READY ->
          answer.wrap()
              ? Text.counted("Not wrapped: {0} thing.", "Not wrapped: {0} things.", missing)
              : Text.counted("Not ready: {0} thing.", "Not ready: {0} things.", missing);
    };
  }

  /** An answer in lines. */
  public static List<String> lines(Answer answer, ZoneId zone) {
    var lines = new ArrayList<String>();
    lines.add(headline(answer).english());
    for (var missing : answer.missing()) {
      lines.add((missing.stops() ? "  stops the day: " : "  ") + sentence(missing.what()));
      if (!missing.remedy().isEmpty()) {
        lines.add("    " + missing.remedy().english());
      }
    }
    section("Measured, and as it should be:", answer, Outcome.Fine.class, lines);
    section("Not to be told from here:", answer, Outcome.CannotTell.class, lines);
    items(answer, zone, lines);
    return List.copyOf(lines);
  }

  private static void section(
      String heading, Answer answer, Class<? extends Outcome> kind, List<String> lines) {
    var these = answer.measured().stream().filter(one -> kind.isInstance(one.outcome())).toList();
    if (!these.isEmpty()) {
      lines.add(heading);
      for (var one : these) {
        lines.add("  " + sentence(one.outcome().said()));
      }
    }
  }

  private static void items(Answer answer, ZoneId zone, List<String> lines) {
    if (answer.checklist().isEmpty() || answer.items().isEmpty()) {
      return;
    }
    lines.add("Looked after by people (" + answer.checklist().get().title() + "):");
    int widest = answer.items().stream().mapToInt(item -> item.id().length()).max().orElse(0);
    for (var item : answer.items()) {
      lines.add(
          "  "
              + (item.tick().isPresent() ? "[x] " : "[ ] ")
              + item.id()
              + " ".repeat(widest - item.id().length())
              + "  "
              + (item.item().caution() ? "Caution: " : "")
              + item.item().text()
              + item.tick()
                  .map(
                      tick ->
                          " ("
                              + PlainText.line(tick.by())
                              + ", "
                              + TIME.format(tick.at().atZone(zone))
                              + ")")
                  .orElse(""));
    }
    if (answer.items().stream().anyMatch(item -> item.item().caution())) {
      lines.add("  " + Checklist.CAUTION.english());
    }
  }

  /** What the last answer of a job was, and why it no longer holds; nothing without one. */
  public static List<String> last(Job job, Answer now) {
    var lines = new ArrayList<String>();
    var last = job.readiness().said(now.wrap());
    var changed = now.changedSince(job);
    if (last.isPresent() && !changed.isEmpty()) {
      lines.add("The answer of " + at(last.get(), job.zone()) + " no longer holds:");
      changed.forEach(text -> lines.add("  " + sentence(text)));
    }
    return List.copyOf(lines);
  }

  private static String at(ReadyAt last, ZoneId zone) {
    return DAY_AND_TIME.format(last.at().atZone(zone));
  }

  /** As a sentence of its own. */
  private static String sentence(Text text) {
    var words = text.english();
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
