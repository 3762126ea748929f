package org.framewright.shotlist;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.SequencedMap;
import java.util.Set;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/** Makes a setup of its line, or of its lines. */
final class SetupMaker {
  /** A number, maybe with what it counts. */
  private static final Pattern NUMBER = Pattern.compile("(\\d{1,4})\\s*\\p{L}{0,8}\\.?");

  private static final char REPLACEMENT = '\uFFFD';

  private final ListColumns columns;
  private final ListNotes notes;

  /** What each column is called in a setup. */
  private final List<String> names;

  /** The views that several columns have. */
  private final Set<String> severalColumns = new HashSet<>();

  SetupMaker(ListColumns columns, ListNotes notes) {
    this.columns = columns;
    this.notes = notes;
    this.names = columns.names();
    var seen = new HashSet<String>();
    columns
        .views()
        .values()
        .forEach(
            view -> {
              if (!seen.add(key(view))) {
                severalColumns.add(key(view));
              }
            });
  }

  /** What one line says. */
  private static final class Parts {
    private String title = "";
    private final SequencedMap<String, View> views = new LinkedHashMap<>();
    private final SequencedMap<String, String> columns = new LinkedHashMap<>();
    private OptionalInt frames = OptionalInt.empty();
    private String framesText = "";
    private int framesColumn = -1;
  }

  private Setup ofLine(String code, List<Cell> row) {
    var parts = parts(row);
    if (!parts.framesText.isEmpty()) {
      putInPlace(parts, parts.framesText);
    }
    return new Setup(
        code, parts.title, List.copyOf(parts.views.values()), parts.frames, parts.columns);
  }

  /** Makes one setup of several lines: what they agree on once, what differs in their order. */
  Setup make(String code, List<List<Cell>> rows) {
    if (rows.size() == 1) {
      return ofLine(code, rows.getFirst());
    }
    var all = rows.stream().map(this::parts).toList();
    var title = "";
    var titles = new HashSet<String>();
    var views = new LinkedHashMap<String, View>();
    var texts = new LinkedHashMap<String, Texts>();
    var frames = new LinkedHashSet<Integer>();
    var framesTexts = new Texts();
    boolean ofViews = all.stream().allMatch(one -> one.views.size() == 1);
    for (var one : all) {
      title = title.isEmpty() ? one.title : title;
      titles.add(one.title);
      for (var view : one.views.values()) {
        boolean counts = ofViews && view.frames().isEmpty() && one.frames.isPresent();
        var counted = counts ? new View(view.code(), one.frames) : view;
        views.merge(key(view.code()), counted, SetupMaker::more);
      }
      if (!ofViews && one.frames.isPresent()) {
        frames.add(one.frames.getAsInt());
        framesTexts.add("" + one.frames.getAsInt());
      }
      framesTexts.add(one.framesText);
      one.columns.forEach((name, text) -> texts.computeIfAbsent(name, _ -> new Texts()).add(text));
    }
    titles.remove("");
    if (titles.size() > 1) {
      notes.remarkOnce(
          rows.getFirst().getFirst(),
          Text.of("the lines of a setup have different titles; the first one's was taken"),
          Text.NONE);
    }
    var joined = new LinkedHashMap<String, String>();
    texts.forEach((name, distinct) -> joined.put(name, distinct.joined()));
    var wanted = OptionalInt.empty();
    if (frames.size() == 1 && framesTexts.size() == 1) {
      wanted = OptionalInt.of(frames.getFirst());
    } else if (framesTexts.size() > 0) {
      joined.put(columns.headings().get(columns.of(Heading.FRAMES)), framesTexts.joined());
      notes.remarkOnce(
          rows.getFirst().getFirst(),
          Text.of("the lines of a setup want different numbers of frames; they are kept as text"),
          Text.of("Give each setup one number, or each view its own."));
    }
    return new Setup(code, title, List.copyOf(views.values()), wanted, joined);
  }

  /** Different texts in the order in which they came. */
  private static final class Texts {
    private final SequencedMap<String, Integer> texts = new LinkedHashMap<>();
    private int length;

    void add(String text) {
      if (!text.isEmpty() && length + text.length() + 2 <= Limits.CELL) {
        if (texts.putIfAbsent(text, 1) == null) {
          length += text.length() + 2;
        }
      }
    }

    int size() {
      return texts.size();
    }

    String joined() {
      return String.join(", ", texts.keySet());
    }
  }

  private static View more(View one, View other) {
    if (one.frames().isEmpty() || other.frames().isEmpty()) {
      return one.frames().isPresent() ? one : other;
    }
    int frames = Math.min(9_999, one.frames().getAsInt() + other.frames().getAsInt());
    return new View(one.code(), OptionalInt.of(frames));
  }

  private static String key(String view) {
    return view.toLowerCase(Locale.ROOT);
  }

  /** A number of frames in words is kept where its column stands. */
  private void putInPlace(Parts parts, String text) {
    var before = new LinkedHashMap<>(parts.columns);
    parts.columns.clear();
    for (int i = 0; i < columns.headings().size(); i++) {
      var name = names.get(i);
      if (i == parts.framesColumn) {
        parts.columns.put(columns.headings().get(i), text);
      } else if (before.containsKey(name)) {
        parts.columns.put(name, before.get(name));
      }
    }
  }

  private Parts parts(List<Cell> row) {
    var parts = new Parts();
    for (int i = 0; i < columns.headings().size(); i++) {
      var cell = i < row.size() ? row.get(i) : new Cell("", row.getFirst().line(), i + 1);
      if (columns.meanings().get(i) == Heading.UNUSED) {
        continue;
      }
      look(cell);
      switch (columns.meanings().get(i)) {
        case SETUP, FROM_JOB, UNUSED -> {}
        case TITLE -> parts.title = cell.plain();
        case VIEWS -> ViewsText.read(cell.text()).forEach(view -> add(cell, view, parts.views));
        case VIEW -> viewInColumn(columns.views().get(i), cell, parts.views);
        case FRAMES -> {
          parts.framesColumn = i;
          parts.frames = number(cell);
          if (parts.frames.isEmpty() && isWords(cell)) {
            parts.framesText = cell.text().strip();
          }
        }
        case DAY, RACK, MODEL, NOTE, OTHER, KEPT -> {
          if (columns.isHeaded(i) || !cell.blank()) {
            parts.columns.put(names.get(i), cell.text().strip());
          }
        }
      }
    }
    return parts;
  }

  private void look(Cell cell) {
    if (cell.text().indexOf(REPLACEMENT) >= 0) {
      notes.remark(
          cell,
          Text.of("a letter of \"{0}\" could not be read", cell.brief()),
          Text.of("Save the list as UTF-8 or .xlsx and import it again."));
    }
    if (cell.kind() == Cell.Kind.NO_VALUE) {
      notes.remarkOnce(
          cell,
          Text.of("this formula was saved without its value; the cell counts as blank"),
          Text.of("Open the list in a spreadsheet program, save it, and import it again."));
    } else if (cell.kind() == Cell.Kind.ERROR) {
      notes.remarkOnce(
          cell,
          Text.of("this cell shows the error {0}; it is kept as text", cell.brief()),
          Text.NONE);
    }
  }

  private static boolean isWords(Cell cell) {
    return !cell.blank() && !cell.plain().equals("-") && !NUMBER.matcher(cell.plain()).matches();
  }

  private OptionalInt number(Cell cell) {
    if (cell.blank() || cell.plain().equals("-")) {
      return OptionalInt.empty();
    }
    var number = NUMBER.matcher(cell.plain());
    if (number.matches()) {
      int frames = Integer.parseInt(number.group(1));
      return frames > 0 ? OptionalInt.of(frames) : OptionalInt.empty();
    }
    notes.remark(
        cell,
        Text.of("\"{0}\" is no number of frames; it is kept as text", cell.brief()),
        Text.of("Write a number such as 12."));
    return OptionalInt.empty();
  }

  private void viewInColumn(String view, Cell cell, Map<String, View> views) {
    if (cell.blank() || Vocabulary.WORDS.isUnwanted(cell.plain())) {
      return;
    }
    var number = NUMBER.matcher(cell.plain());
    boolean isNumber = number.matches();
    int frames = isNumber ? Integer.parseInt(number.group(1)) : 1;
    if (frames == 0) {
      return;
    }
    if (severalColumns.contains(key(view))) {
      // The first cross is a view; one more is one more frame of it.
      var there = views.get(key(view));
      int before = there == null ? 0 : there.frames().orElse(1);
      boolean isCounted = isNumber || before > 0;
      views.put(
          key(view), isCounted ? new View(view, OptionalInt.of(before + frames)) : new View(view));
    } else {
      add(cell, isNumber ? new View(view, OptionalInt.of(frames)) : new View(view), views);
    }
  }

  private void add(Cell cell, View view, Map<String, View> views) {
    if (views.putIfAbsent(key(view.code()), view) != null) {
      notes.remark(
          cell, Text.of("the view {0} is named twice", Cell.brief(view.code())), Text.NONE);
    }
  }
}
