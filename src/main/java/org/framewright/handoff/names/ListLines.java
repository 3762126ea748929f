package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.framewright.base.NameKey;

/** Says of each line of a list what it is for: a mail quotes older ones, a table has headings. */
final class ListLines {
  /** The line that some mail programs put before the mail that is answered. Common usage. */
  private static final Pattern OLDER_MAIL =
      Pattern.compile(
          "\\s*[-_*]{3,}.{0,40}(original message|forwarded message|ursprüngliche nachricht"
              + "|message d'origine|mensaje original|messaggio originale|mensagem original"
              + "|oorspronkelijk bericht|wiadomość oryginalna).{0,40}",
          Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

  private static final Pattern WROTE =
      Pattern.compile(
          ".{0,200}\\b(wrote|schrieb.{0,80}|a écrit|escribió|ha scritto|escreveu|schreef.{0,80}"
              + "|napisał\\(?a?\\)?|pisze)\\s*:\\s*",
          Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

  private static final Pattern HEAD =
      Pattern.compile(
          "(from|to|cc|bcc|subject|date|sent|reply-to|message-id|mime-version|received"
              + "|return-path|content-type|x-[a-z-]{1,40}|von|an|betreff|datum|gesendet|de|à|objet"
              + "|envoyé|para|asunto|enviado|da|oggetto|inviato|assunto|aan|onderwerp|verzonden"
              + "|od|do|temat|wysłano)\\s?:\\s.*",
          Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

  private static final Pattern UNTICKED = Pattern.compile("\\s*(?:[-*•]\\s+)?(?:\\[ ?]|☐)\\s*\\S");
  private static final Pattern TICKED =
      Pattern.compile("\\s*(?:[-*•]\\s+)?(?:\\[[xX✓✔]]|☑|☒|✓|✔|✅)\\s*\\S");

  /** What it takes to be the head of a mail, of which one line might be a person's own. */
  private static final int FEWEST_OF_A_HEAD = 2;

  private ListLines() {}

  static List<ListLine> of(String text) {
    var raw = split(text);
    var table = Table.in(raw);
    return table.isPresent() ? table.get().lines(raw) : ofText(raw);
  }

  /** Lines end in line feed, carriage return or both, or at Unicode's line separators. */
  private static List<String> split(String text) {
    return Arrays.asList(text.split("\r\n|[\n\r\u2028\u2029\u000B\f]", -1));
  }

  private static List<ListLine> ofText(List<String> raw) {
    boolean ticks = raw.stream().anyMatch(line -> TICKED.matcher(line).lookingAt());
    var lines = new ArrayList<ListLine>();
    ListLine.Kind rest = null;
    int i = 0;
    while (i < raw.size()) {
      var line = raw.get(i);
      int head = rest == null ? headFrom(raw, i) : 0;
      if (head > 0) {
        // A head behind something else begins the mail that was answered.
        boolean older = lines.stream().anyMatch(before -> before.kind() != ListLine.Kind.EMPTY);
        for (int end = i + head; i < end; i++) {
          lines.add(line(i, raw.get(i), ListLine.Kind.MAIL_HEAD));
        }
        rest = older ? ListLine.Kind.QUOTED : null;
        continue;
      }
      if (rest == null && isShort(line) && OLDER_MAIL.matcher(line).matches()) {
        rest = ListLine.Kind.QUOTED;
      }
      if (rest == null && isShort(line) && WROTE.matcher(line).matches()) {
        lines.add(line(i++, line, ListLine.Kind.QUOTED));
        rest = quotesNext(raw, i) ? null : ListLine.Kind.QUOTED;
        continue;
      }
      if (rest == null && (line.equals("-- ") || line.equals("--"))) {
        rest = ListLine.Kind.SIGNATURE;
      }
      lines.add(line(i++, line, rest == null ? kind(line, ticks) : rest));
    }
    return lines;
  }

  private static boolean isShort(String line) {
    return line.length() <= 400;
  }

  private static ListLine line(int at, String text, ListLine.Kind kind) {
    return new ListLine(at + 1, text, text, text.isBlank() ? ListLine.Kind.EMPTY : kind);
  }

  private static ListLine.Kind kind(String line, boolean ticks) {
    if (line.stripLeading().startsWith(">")) {
      return ListLine.Kind.QUOTED;
    }
    return ticks && UNTICKED.matcher(line).lookingAt()
        ? ListLine.Kind.NOT_CHOSEN
        : ListLine.Kind.ASKS;
  }

  /** How many lines from here on are the head of a mail. */
  private static int headFrom(List<String> raw, int from) {
    int to = from;
    while (to < raw.size() && isHead(raw.get(to))) {
      to++;
    }
    return to - from >= FEWEST_OF_A_HEAD ? to - from : 0;
  }

  private static boolean isHead(String line) {
    return HEAD.matcher(line.replace("*", "").strip()).matches();
  }

  /** Whether the mail that was answered stands behind signs of quotation. */
  private static boolean quotesNext(List<String> raw, int from) {
    return raw.subList(from, raw.size()).stream()
        .filter(line -> !line.isBlank())
        .findFirst()
        .filter(line -> line.stripLeading().startsWith(">"))
        .isPresent();
  }

  /**
   * A table with headings, of which one is that of names of files.
   *
   * @param separator between cells
   * @param head the index of the line of headings
   */
  private record Table(char separator, int head, int names, OptionalInt chosen) {
    /** A table, if the first line with anything in it says so. */
    static Optional<Table> in(List<String> raw) {
      int first =
          IntStream.range(0, raw.size()).filter(i -> !raw.get(i).isBlank()).findFirst().orElse(-1);
      if (first < 0) {
        return Optional.empty();
      }
      for (char separator : new char[] {'\t', ';', ',', '|'}) {
        var headings = cells(raw.get(first), separator);
        int names = column(headings, ListWords.NAME_HEADINGS);
        if (headings.size() > 1 && names >= 0) {
          int chosen = column(headings, ListWords.CHOSEN_HEADINGS);
          return Optional.of(
              new Table(
                  separator,
                  first,
                  names,
                  chosen < 0 ? OptionalInt.empty() : OptionalInt.of(chosen)));
        }
      }
      return Optional.empty();
    }

    private static int column(List<String> headings, Set<String> words) {
      return IntStream.range(0, headings.size())
          .filter(i -> words.contains(NameKey.of(headings.get(i).replaceAll("[\\s_.-]", ""))))
          .findFirst()
          .orElse(-1);
    }

    List<ListLine> lines(List<String> raw) {
      var lines = new ArrayList<ListLine>();
      for (int i = 0; i < raw.size(); i++) {
        var text = raw.get(i);
        if (i <= head || text.isBlank()) {
          lines.add(line(i, text, ListLine.Kind.HEADINGS));
          continue;
        }
        var cells = cells(text, separator);
        var name = cell(cells, names);
        boolean wanted = chosen.isEmpty() || !isNo(cell(cells, chosen.getAsInt()));
        lines.add(
            new ListLine(
                i + 1,
                text,
                name,
                name.isBlank()
                    ? ListLine.Kind.EMPTY
                    : wanted ? ListLine.Kind.ASKS : ListLine.Kind.NOT_CHOSEN));
      }
      return lines;
    }

    /** A line may end before its empty cells. */
    private static String cell(List<String> cells, int column) {
      return column < cells.size() ? cells.get(column) : "";
    }

    private static boolean isNo(String cell) {
      var plain = NameKey.of(cell.strip());
      return plain.isEmpty() || plain.equals("-") || ListWords.NO.contains(plain);
    }
  }

  /** The cells of a line of a table (RFC 4180, but that no cell goes on in the next line). */
  static List<String> cells(String line, char separator) {
    var cells = new ArrayList<String>();
    var cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
        cell.append(c);
        i++;
      } else if (c == '"' && (quoted || cell.isEmpty())) {
        quoted = !quoted;
      } else if (c == separator && !quoted) {
        cells.add(cell.toString().strip());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString().strip());
    return cells;
  }
}
