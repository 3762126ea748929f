package org.framewright.ui.board;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.framewright.base.Problem;
import org.framewright.shotlist.Heading;
import org.framewright.shotlist.ListFit;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * A setup as it is typed: what stands in each field, and what is wrong with it. Whether its frames
 * can be named is worked out in the background as one types.
 */
final class SetupDraft {
  /** So many of the list's setups say which columns it has. */
  private static final int MOST_SETUPS = 200;

  /** What a setup has a column for where the list has none yet. */
  private static final List<String> USUAL = List.of("rack", "model", "note");

  /** Which setup is typed. */
  enum Kind {
    ADDED,
    DUPLICATE,
    CHANGED
  }

  private final Kind kind;
  private final Texts texts;
  private final ShotList list;
  private final StringProperty code = new SimpleStringProperty("");
  private final StringProperty title = new SimpleStringProperty("");
  private final StringProperty views = new SimpleStringProperty("");
  private final StringProperty frames = new SimpleStringProperty("");
  private final Map<String, StringProperty> columns = new LinkedHashMap<>();
  private final ReadOnlyStringWrapper finding = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper name = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper ready = new ReadOnlyBooleanWrapper();
  private final Newest<Setup, Tried> trials;

  /** What is wrong with a text; its words are its message. */
  private static final class Unclear extends Exception {
    private static final long serialVersionUID = 1L;

    Unclear(String message) {
      super(message);
    }
  }

  private record Tried(Setup setup, ListFit.Made made) {}

  /**
   * A draft.
   *
   * @param from the setup that is changed, or that the new one is like; empty for a new one
   * @param labels what else names need of a setup, as people call it
   * @param fit tries its frames' names; called in the background
   */
  SetupDraft(
      Kind kind,
      Optional<Setup> from,
      ShotList list,
      List<String> labels,
      Newest.Work<Setup, ListFit.Made> fit,
      Tasks tasks,
      Texts texts) {
    this.kind = kind;
    this.texts = texts;
    this.list = list;
    this.trials =
        new Newest<>(
            tasks,
            setup -> new Tried(setup, fit.of(setup)),
            this::show,
            failure -> finding.set(String.valueOf(failure.getMessage())));
    code.set(kind == Kind.CHANGED ? from.map(Setup::code).orElse("") : list.nextCode());
    from.ifPresent(
        setup -> {
          title.set(setup.title());
          views.set(setup.viewsText());
          frames.set(
              setup.framesWanted().isPresent()
                  ? String.valueOf(setup.framesWanted().getAsInt())
                  : "");
        });
    for (var heading : headings(from, labels)) {
      var text = from.map(setup -> setup.columns().getOrDefault(heading, "")).orElse("");
      columns.put(heading, new SimpleStringProperty(text));
    }
    List.of(code, title, views, frames).forEach(text -> text.subscribe(_ -> check()));
    columns.values().forEach(text -> text.subscribe(_ -> check()));
  }

  /** The columns of the list, and what names need that none of them says. */
  private Set<String> headings(Optional<Setup> from, List<String> labels) {
    var headings = new LinkedHashSet<String>();
    from.ifPresent(setup -> headings.addAll(setup.columns().keySet()));
    list.setups().stream()
        .limit(MOST_SETUPS)
        .forEach(setup -> headings.addAll(setup.columns().keySet()));
    if (headings.isEmpty()) {
      USUAL.forEach(column -> headings.add(texts.get("setup.column." + column)));
    }
    for (var label : labels) {
      if (headings.stream().noneMatch(label::equalsIgnoreCase)) {
        headings.add(label);
      }
    }
    return headings;
  }

  /** Which setup is typed. */
  Kind kind() {
    return kind;
  }

  /** What it is called by; it stays where a setup is changed. */
  StringProperty code() {
    return code;
  }

  StringProperty title() {
    return title;
  }

  /** The wanted views, as a list's cell names them. */
  StringProperty views() {
    return views;
  }

  /** How many frames are wanted of it. */
  StringProperty frames() {
    return frames;
  }

  /** Everything else, by heading. */
  Map<String, StringProperty> columns() {
    return columns;
  }

  /** What is wrong, with its remedy; empty if nothing is. */
  ReadOnlyStringProperty finding() {
    return finding.getReadOnlyProperty();
  }

  /** What its frames will be called; empty while something is wrong. */
  ReadOnlyStringProperty name() {
    return name.getReadOnlyProperty();
  }

  /** Whether it can come into the list as it is typed now. */
  ReadOnlyBooleanProperty ready() {
    return ready.getReadOnlyProperty();
  }

  /** The setup as it is typed, which was found in order; nothing otherwise. */
  Optional<Setup> setup() {
    try {
      return ready.get() ? Optional.of(typed()) : Optional.empty();
    } catch (Unclear _) {
      return Optional.empty();
    }
  }

  private void check() {
    ready.set(false);
    name.set("");
    trials.clear();
    try {
      trials.offer(typed());
    } catch (Unclear e) {
      finding.set(e.getMessage());
    }
  }

  private void show(Tried tried) {
    try {
      // What was typed meanwhile is tried next.
      if (!typed().equals(tried.setup())) {
        return;
      }
    } catch (Unclear _) {
      return;
    }
    var misfit = tried.made().misfits().stream().findFirst();
    finding.set(
        misfit
            .map(one -> texts.sentences(new Problem(one.what(), one.remedy())))
            .orElse("")
            .strip());
    name.set(misfit.isPresent() ? "" : tried.made().name().orElse(""));
    ready.set(misfit.isEmpty());
  }

  private Setup typed() throws Unclear {
    var number = code.get().strip();
    if (number.isEmpty()) {
      throw new Unclear(texts.get("setup.needsCode"));
    }
    if (kind != Kind.CHANGED && list.setup(number).isPresent()) {
      throw new Unclear(
          texts.get("setup.codeTaken", list.setup(number).orElseThrow().code(), list.nextCode()));
    }
    var said = new LinkedHashMap<String, String>();
    columns.forEach((heading, text) -> said.put(heading, text.get().strip()));
    return new Setup(number, title.get().strip(), typedViews(), typedFrames(), said);
  }

  private List<View> typedViews() throws Unclear {
    var typed = View.listOf(views.get());
    var twice = View.namedTwice(typed);
    if (twice.isPresent()) {
      throw new Unclear(texts.get("setup.viewTwice", twice.get()));
    }
    return typed;
  }

  private OptionalInt typedFrames() throws Unclear {
    var text = frames.get().strip();
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    if (!text.matches("\\d{1,4}") || Integer.parseInt(text) == 0) {
      throw new Unclear(texts.get("setup.framesNumber", Setup.MOST_FRAMES));
    }
    return OptionalInt.of(Integer.parseInt(text));
  }

  /** Whether a column holds long text, such as a note. */
  static boolean isLong(String heading) {
    return Heading.of(heading) == Heading.NOTE;
  }
}
