package org.framewright.ui.sets;

import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.live.Latest;
import org.framewright.studio.OverviewFollower.Heard;
import org.framewright.studio.SetRow;
import org.framewright.ui.command.TypedWords;
import org.framewright.ui.look.Texts;

/** All sets as the page shows them. Called on the interface thread, but for what is heard. */
final class SetsModel {
  /**
   * What stands above and in place of the list.
   *
   * @param summary how many sets there are, and how many need a person; may be empty
   * @param away why this may be old, and since when; may be empty
   * @param instead what to say where no line is shown; empty where there are lines
   * @param join whether to say how one joins a studio
   */
  record Said(String summary, String away, String instead, boolean join) {}

  private final SetsSource source;
  private final Texts texts;
  private final Clock clock;
  private final AtomicReference<SetsKnown> known = new AtomicReference<>(SetsKnown.NOTHING);
  private final Latest<SetsKnown> news;
  private final ObservableList<SetLine> lines = FXCollections.observableArrayList();
  private final ObservableList<SetLine> readOnly = FXCollections.unmodifiableObservableList(lines);
  private final StringProperty typed = new SimpleStringProperty("");
  private final ObjectProperty<Optional<UUID>> chosen =
      new SimpleObjectProperty<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Said> said = new ReadOnlyObjectWrapper<>();
  private Optional<SetsSource.Following> following = Optional.empty();

  /**
   * @param ui the interface thread's queue, in which one refresh waits at most
   */
  SetsModel(SetsSource source, Texts texts, Clock clock, Executor ui) {
    this.source = source;
    this.texts = texts;
    this.clock = clock;
    this.news = new Latest<>(ui, _ -> show());
    typed.addListener(_ -> show());
    show();
  }

  /** The sets that have what was typed, those that need a person first. */
  ObservableList<SetLine> lines() {
    return readOnly;
  }

  /** What is typed to find a set. */
  StringProperty typed() {
    return typed;
  }

  /** The set that the keys are on. */
  ObjectProperty<Optional<UUID>> chosen() {
    return chosen;
  }

  ReadOnlyObjectProperty<Said> said() {
    return said.getReadOnlyProperty();
  }

  /** The line that the keys are on, where it is shown. */
  Optional<SetLine> chosenLine() {
    return chosen
        .get()
        .flatMap(job -> lines.stream().filter(line -> line.job().equals(job)).findFirst());
  }

  /** Who has setups of these sets shot by another one. */
  Optional<SetupMoving> moving() {
    return source.moving();
  }

  /** The other sets than this one, whatever is typed, in the order of their names. */
  List<SetLine> others(UUID job) {
    var words = new SetWords(texts, clock.getZone(), clock.instant());
    return known.get().sets().map(all -> all.overview().sets()).orElse(List.of()).stream()
        .filter(row -> !row.job().equals(job))
        .sorted(Comparator.comparing(SetRow::name))
        .map(row -> words.line(row, Optional.empty()))
        .toList();
  }

  /** Asks from now on. */
  void follow() {
    if (following.isEmpty()) {
      following = Optional.of(source.follow(this::heard));
    }
    show();
  }

  /** Asks no more: nobody looks. */
  void pause() {
    following.ifPresent(SetsSource.Following::close);
    following = Optional.empty();
  }

  private void heard(Heard heard) {
    news.offer(known.updateAndGet(before -> before.after(heard, clock.instant())));
  }

  /** Shows what is known as it reads now: some of it changes with the time alone. */
  void show() {
    var now = known.get();
    var words = new SetWords(texts, clock.getZone(), clock.instant());
    var rows = now.sets().map(all -> all.overview().sets()).orElse(List.of());
    var wanted = TypedWords.of(typed.get());
    var next =
        rows.stream()
            .map(
                row ->
                    words.line(
                        row,
                        now.sets()
                            .flatMap(all -> Optional.ofNullable(all.folders().get(row.job())))))
            .filter(line -> SetWords.has(line, wanted))
            .toList();
    put(next);
    said.set(said(now, rows, words));
  }

  /** Lines that stay where they are keep their place on the screen. */
  private void put(List<SetLine> next) {
    if (jobs(lines).equals(jobs(next))) {
      for (int i = 0; i < next.size(); i++) {
        if (!lines.get(i).equals(next.get(i))) {
          lines.set(i, next.get(i));
        }
      }
    } else {
      lines.setAll(next);
    }
  }

  private static List<UUID> jobs(List<SetLine> lines) {
    return lines.stream().map(SetLine::job).toList();
  }

  private Said said(SetsKnown now, List<SetRow> rows, SetWords words) {
    var away = now.away().map(one -> away(one, now.answered(), words)).orElse("");
    if (now.sets().isEmpty()) {
      boolean none = now.hasStore().filter(has -> !has).isPresent();
      var instead =
          now.away()
              .map(one -> texts.remedy(one.why()))
              .orElseGet(() -> texts.get(none ? "sets.noStore" : "sets.asking"));
      return new Said("", away, instead, none);
    }
    long need = rows.stream().filter(row -> row.need() != SetRow.Need.NOTHING).count();
    var summary =
        texts.apart(
            texts.get("sets.count", rows.size()),
            need == 0 ? texts.get("sets.needNobody") : texts.get("sets.needing", need));
    var instead = lines.isEmpty() ? texts.get(rows.isEmpty() ? "sets.none" : "sets.notFound") : "";
    return new Said(rows.isEmpty() ? "" : summary, away, instead, false);
  }

  private String away(SetsKnown.Away away, Optional<Instant> answered, SetWords words) {
    var why = texts.sentence(texts.what(away.why()));
    var since = words.moment(away.since());
    return answered
        .map(at -> texts.get("sets.away", why, since, words.moment(at)))
        .orElseGet(() -> texts.get("sets.awayUnknown", why, since));
  }
}
