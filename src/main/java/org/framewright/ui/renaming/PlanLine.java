package org.framewright.ui.renaming;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.framewright.job.FrameNames;
import org.framewright.renaming.PlannedRename;
import org.framewright.renaming.Status;
import org.framewright.ui.look.Texts;

/**
 * One line of the table: the files of a frame, which get their name together, or one file alone.
 *
 * @param from the name now, without folder; without ending where the line has several files
 * @param to the name to be, likewise
 * @param endings the endings of the files, in the plan's order, with their dot
 * @param folder where they lie, relative to the root; empty for the root itself
 * @param toFolder where they go; the same as {@code folder} nearly always
 * @param why why it is blocked or was skipped; else empty
 * @param remedy its remedy; else empty
 * @param text what a filter looks in, in lower case
 */
record PlanLine(
    State state,
    String from,
    String to,
    List<String> endings,
    String folder,
    String toFolder,
    int files,
    String why,
    String remedy,
    String text) {

  /** How a line stands, in the order of the table. */
  enum State {
    /** It cannot be done. */
    BLOCKED,
    /** The frame has no name yet. */
    NO_NAME,
    /** It was left out. */
    SKIPPED,
    /** It can be done. */
    READY,
    /** It was done. */
    DONE,
    /** It has this name already. */
    UNCHANGED;

    /** As in the keys of texts and styles. */
    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** For people. */
    String word(Texts texts) {
      return texts.get("renaming.state." + word());
    }

    private static State of(Status status) {
      return switch (status) {
        case READY -> READY;
        case UNCHANGED -> UNCHANGED;
        case BLOCKED -> BLOCKED;
        case DONE -> DONE;
        case SKIPPED -> SKIPPED;
      };
    }
  }

  /**
   * Makes the lines of a plan: what needs a person first, the rest in the plan's order.
   *
   * @param texts for the words that one may look for
   * @param leftOut the frames that have no name, each a line of its own
   */
  static List<PlanLine> of(
      Texts texts, List<PlannedRename> renames, List<FrameNames.LeftOut> leftOut) {
    var groups = new LinkedHashMap<String, List<PlannedRename>>();
    var alone = 0;
    for (var rename : renames) {
      var key = rename.group().isEmpty() ? "/" + alone++ : rename.group();
      groups.computeIfAbsent(key, _ -> new ArrayList<>()).add(rename);
    }
    var lines = new ArrayList<PlanLine>();
    for (var group : groups.values()) {
      if (!group.getFirst().group().isEmpty() && areOneName(group)) {
        lines.add(together(texts, group));
      } else {
        group.forEach(rename -> lines.add(alone(texts, rename)));
      }
    }
    leftOut.forEach(frame -> lines.add(nameless(texts, frame)));
    lines.sort(Comparator.comparing(PlanLine::state));
    return List.copyOf(lines);
  }

  /** The endings of its files in one text. */
  String together() {
    return String.join(" ", endings);
  }

  /** Whether every word typed is somewhere in this line; the words in lower case. */
  boolean matches(List<String> words) {
    return words.stream().allMatch(text::contains);
  }

  private static boolean areOneName(List<PlannedRename> group) {
    var first = group.getFirst();
    return group.stream()
        .allMatch(
            rename ->
                rename.status() == first.status()
                    && stem(rename.from()).equals(stem(first.from()))
                    && stem(rename.to()).equals(stem(first.to()))
                    && ending(rename.from()).equals(ending(rename.to()))
                    && Objects.equals(rename.from().getParent(), first.from().getParent())
                    && Objects.equals(rename.to().getParent(), first.to().getParent()));
  }

  /** The group's reason is that of the file that has one of its own: the first of them. */
  private static PlanLine together(Texts texts, List<PlannedRename> group) {
    var first = group.getFirst();
    var reason = group.stream().filter(r -> !r.said().isEmpty()).findFirst().orElse(first);
    return line(
        texts,
        State.of(first.status()),
        stem(first.from()),
        stem(first.to()),
        group.stream().map(rename -> ending(rename.from())).toList(),
        first,
        group.size(),
        reason);
  }

  private static PlanLine alone(Texts texts, PlannedRename rename) {
    return line(
        texts,
        State.of(rename.status()),
        rename.from().getFileName().toString(),
        rename.to().getFileName().toString(),
        List.of(),
        rename,
        1,
        rename);
  }

  private static PlanLine nameless(Texts texts, FrameNames.LeftOut leftOut) {
    var frame = leftOut.frame();
    return line(
        texts,
        State.NO_NAME,
        frame.stem(),
        "",
        frame.files().stream().map(file -> ending(file.path())).toList(),
        String.valueOf(frame.folder().getFileName()),
        "",
        frame.files().size(),
        texts.say(leftOut.said()),
        texts.say(leftOut.fix()));
  }

  private static PlanLine line(
      Texts texts,
      State state,
      String from,
      String to,
      List<String> endings,
      PlannedRename where,
      int files,
      PlannedRename reason) {
    return line(
        texts,
        state,
        from,
        to,
        endings,
        folder(where.from()),
        folder(where.to()),
        files,
        texts.say(reason.said()),
        texts.say(reason.fix()));
  }

  private static PlanLine line(
      Texts texts,
      State state,
      String from,
      String to,
      List<String> endings,
      String folder,
      String toFolder,
      int files,
      String why,
      String remedy) {
    var text =
        String.join(
            " ", List.of(state.word(texts), folder, from, to, String.join(" ", endings), why));
    return new PlanLine(
        state,
        from,
        to,
        endings,
        folder,
        toFolder,
        files,
        why,
        remedy,
        text.toLowerCase(Locale.ROOT));
  }

  private static String folder(Path path) {
    return path.getParent() == null ? "" : path.getParent().toString();
  }

  private static String stem(Path path) {
    var name = path.getFileName().toString();
    var dot = name.lastIndexOf('.');
    return dot <= 0 ? name : name.substring(0, dot);
  }

  private static String ending(Path path) {
    return path.getFileName().toString().substring(stem(path).length());
  }
}
