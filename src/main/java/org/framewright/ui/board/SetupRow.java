package org.framewright.ui.board;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.frames.SetupTally;
import org.framewright.job.OnSet;
import org.framewright.job.SetupStatus;
import org.framewright.live.JobView;
import org.framewright.live.ViewCount;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.look.Texts;

/**
 * One setup as the board shows it.
 *
 * @param setup the list's line
 * @param status where it stands
 * @param counted its frames, if it has any
 * @param inFront the view that is before the camera, if this setup is on set and somebody said it
 * @param views the wanted views with their counts, then views that nobody wanted but that have
 *     frames
 * @param where the day, the rack and the model
 * @param from the set that it came from
 * @param said how much was said of it
 * @param comesNext whether it is the one to be put on set next
 * @param searched what the filter looks in, in lower case
 */
public record SetupRow(
    Setup setup,
    SetupStatus status,
    Optional<SetupTally> counted,
    Optional<String> inFront,
    List<ViewCount> views,
    String where,
    Optional<String> from,
    SaidCount said,
    boolean comesNext,
    String searched)
    implements Line {

  /**
   * The row of a setup. There are many and most stay: the same objects are not compared in depth.
   *
   * @param said how much was said of it
   * @param texts for the words that one may look for
   * @param before the row of a moment ago or null; where nothing changed, it stays
   */
  static SetupRow of(Setup setup, JobView job, SaidCount said, Texts texts, SetupRow before) {
    var status = job.state().of(setup.code());
    var tally = job.tally().bySetup().get(setup.code());
    var inFront =
        status.state() == SetupState.ON_SET
            ? job.state().onSet().flatMap(OnSet::view)
            : Optional.<String>empty();
    var from = job.moves().came(setup.code()).map(came -> came.from().name());
    if (before != null
        && Objects.equals(before.from, from)
        && Objects.equals(before.status, status)
        && Objects.equals(before.counted.orElse(null), tally)
        && Objects.equals(before.inFront, inFront)
        && Objects.equals(before.said, said)
        && Objects.equals(before.setup, setup)) {
      return before;
    }
    var counted = Optional.ofNullable(tally);
    return new SetupRow(
        setup,
        status,
        counted,
        inFront,
        ViewCount.of(setup, counted, inFront),
        before != null && before.setup.equals(setup) ? before.where : where(setup),
        from,
        said,
        before != null && before.comesNext,
        searched(setup, texts.get("state." + status.state().word()), from.orElse("")));
  }

  private static String where(Setup setup) {
    return Stream.of(setup.day(), setup.rack(), setup.model())
        .flatMap(Optional::stream)
        .collect(Collectors.joining(" · "));
  }

  private static String searched(Setup setup, String state, String from) {
    var text = new StringBuilder(setup.code()).append(' ').append(setup.title());
    setup.columns().values().forEach(value -> text.append(' ').append(value));
    return text.append(' ')
        .append(state)
        .append(' ')
        .append(from)
        .toString()
        .toLowerCase(Locale.ROOT);
  }

  SetupRow withComesNext(boolean next) {
    return next == comesNext
        ? this
        : new SetupRow(setup, status, counted, inFront, views, where, from, said, next, searched);
  }

  /** What it is and, where it came from another set, from which. */
  String title(Texts texts) {
    return from.map(set -> texts.apart(setup.title(), texts.get("board.row.from", set)))
        .orElse(setup.title());
  }

  /** The setup's code. */
  public String code() {
    return setup.code();
  }

  /** Where it stands. */
  public SetupState state() {
    return status.state();
  }

  /** All its frames. */
  public int frames() {
    return counted.map(SetupTally::frames).orElse(0);
  }

  /** Whether a wanted view has fewer frames than are wanted. */
  public boolean viewMissing() {
    return views.stream().anyMatch(view -> !view.complete());
  }

  @Override
  public boolean sameAs(Line other) {
    return other instanceof SetupRow row && row.code().equals(code());
  }
}
