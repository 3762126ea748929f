package org.framewright.ui.preferences;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.base.Problem;
import org.framewright.day.DayHours;
import org.framewright.handoff.metadata.DataMining;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.Theme;
import org.framewright.ui.settings.ComputerName;
import org.framewright.ui.settings.DefaultPlace;
import org.framewright.ui.settings.Kept;
import org.framewright.ui.settings.Language;
import org.framewright.ui.settings.MiningSetting;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.SettingFault;
import org.framewright.ui.settings.StudioDetail;
import org.framewright.ui.settings.TextSetting;
import org.framewright.ui.settings.WorkingHours;
import org.framewright.ui.task.Tasks;

/** The settings, each as a field; what is changed takes effect at once and can be undone. */
final class SettingsModel {
  /** More than anybody takes back. */
  private static final int MOST_UNDONE = 100;

  /** What was answered last. */
  record Answer(String text, Offer offer) {}

  /** What is offered with an answer. */
  enum Offer {
    UNDO,
    REDO
  }

  /**
   * What was changed.
   *
   * @param name of the setting, for people
   * @param change makes it so again
   * @param back makes it as it was
   */
  private record Change(String name, Runnable change, Runnable back) {}

  private final Preferences preferences;
  private final Tasks tasks;
  private final Texts texts;
  private final ZoneId zone;
  private final Looks looks;
  private final Consumer<Answer> answered;
  private final Map<StudioDetail, Entry> studio = new EnumMap<>(StudioDetail.class);
  private final Map<DefaultPlace, Entry> places = new EnumMap<>(DefaultPlace.class);
  private final Entry computer;
  private final HoursDraft hours;
  private final ReadOnlyObjectWrapper<Theme> theme = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<Double> scale = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<Language> language = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<Optional<DataMining>> mining =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Deque<Change> changes = new ArrayDeque<>();
  private final Deque<Change> undone = new ArrayDeque<>();

  /**
   * @param zone in which the hours of work are
   * @param answered hears in words what was changed
   * @param computerNamed hears what this computer is called from now on
   */
  SettingsModel(
      Preferences preferences,
      Tasks tasks,
      Texts texts,
      ZoneId zone,
      Looks looks,
      Consumer<Answer> answered,
      Consumer<String> computerNamed) {
    this.preferences = preferences;
    this.tasks = tasks;
    this.texts = texts;
    this.zone = zone;
    this.looks = looks;
    this.answered = answered;
    for (var detail : StudioDetail.values()) {
      studio.put(
          detail,
          line(
              detail.key(),
              text ->
                  inWords(TextSetting.fault(text, TextSetting.LONGEST))
                      .or(() -> detail.problem(text)),
              () -> detail.kept(preferences),
              _ -> {}));
    }
    for (var place : DefaultPlace.values()) {
      places.put(place, new Entry(place.key(), () -> commit(place)));
    }
    computer =
        line(
            ComputerName.KEY,
            text -> inWords(TextSetting.fault(text, ComputerName.LONGEST)),
            () -> ComputerName.kept(preferences),
            computerNamed);
    hours = new HoursDraft(texts, zone, this::commitHours);
    showKept();
  }

  Entry studio(StudioDetail detail) {
    return studio.get(detail);
  }

  Entry place(DefaultPlace place) {
    return places.get(place);
  }

  Entry computer() {
    return computer;
  }

  HoursDraft hours() {
    return hours;
  }

  ReadOnlyObjectProperty<Theme> theme() {
    return theme.getReadOnlyProperty();
  }

  /** The size of everything, 1 for normal. */
  ReadOnlyObjectProperty<Double> scale() {
    return scale.getReadOnlyProperty();
  }

  /** The language that the app will speak from its next start on. */
  ReadOnlyObjectProperty<Language> language() {
    return language.getReadOnlyProperty();
  }

  /** What those who gather pictures may use them for; empty where nothing is said of it. */
  ReadOnlyObjectProperty<Optional<DataMining>> mining() {
    return mining.getReadOnlyProperty();
  }

  /** All fields. */
  Stream<Entry> entries() {
    return Stream.of(
            studio.values().stream(),
            places.values().stream(),
            hours.entries(),
            Stream.of(computer))
        .flatMap(each -> each);
  }

  /** What is wrong with what stands in the fields, or with what is kept. */
  List<Problem> problems() {
    return entries().flatMap(entry -> entry.problem().get().stream()).toList();
  }

  /** Shows what is kept; what was written and does not hold is gone. */
  void showKept() {
    studio.forEach((detail, entry) -> show(entry, detail.kept(preferences)));
    places.forEach(this::showKept);
    show(computer, ComputerName.kept(preferences));
    var kept = WorkingHours.kept(preferences, zone);
    hours.show(kept.value(), inWords(kept.fault()));
    language.set(Language.kept(preferences));
    mining.set(MiningSetting.kept(preferences));
    showLooks();
  }

  /** The look or the size was changed, here or elsewhere. */
  void showLooks() {
    theme.set(looks.theme());
    scale.set(looks.scale());
  }

  private void show(Entry entry, Kept<String> kept) {
    entry.show(kept.value(), inWords(kept.fault()));
  }

  private void showKept(DefaultPlace place, Entry entry) {
    entry.show(
        place.kept(preferences).map(Path::toString).orElse(""), inWords(place.fault(preferences)));
  }

  private Optional<Problem> inWords(Optional<SettingFault> fault) {
    return fault.map(one -> one.in(texts));
  }

  private Entry line(
      String key,
      Function<String, Optional<Problem>> fault,
      Supplier<Kept<String>> kept,
      Consumer<String> changed) {
    var its = new Entry[1];
    its[0] =
        new Entry(
            key,
            () -> {
              var entry = its[0];
              var written = entry.written();
              if (entry.isAsShown()) {
                entry.restore();
                return;
              }
              var wrong = fault.apply(written);
              if (wrong.isPresent()) {
                entry.show(wrong);
                return;
              }
              var old = kept.get().value();
              make(
                  word(entry),
                  written,
                  () -> keep(entry, written, changed),
                  () -> keep(entry, old, changed));
            });
    return its[0];
  }

  private void keep(Entry entry, String value, Consumer<String> changed) {
    if (value.isEmpty()) {
      preferences.remove(entry.id());
    } else {
      preferences.put(entry.id(), value);
    }
    entry.show(value, Optional.empty());
    changed.accept(value);
  }

  private void commit(DefaultPlace place) {
    var entry = places.get(place);
    var written = entry.written();
    var old = place.kept(preferences).map(Path::toString).orElse("");
    if (entry.isAsShown()) {
      entry.restore();
      return;
    }
    if (written.isEmpty()) {
      take(entry, "", old);
      return;
    }
    var wrong = inWords(DefaultPlace.fault(written));
    if (wrong.isPresent()) {
      entry.show(wrong);
      return;
    }
    // A drive on the network may take its time.
    tasks.quietly(
        () -> Files.isDirectory(Path.of(written)),
        isThere -> {
          if (entry.written().equals(written)) {
            if (isThere) {
              take(entry, written, old);
            } else {
              entry.show(Optional.of(noFolder()));
            }
          }
        },
        _ -> entry.show(Optional.of(noFolder())));
  }

  private Problem noFolder() {
    return new Problem(texts.get("settings.noFolder"), texts.get("settings.noFolder.remedy"));
  }

  private void take(Entry entry, String written, String old) {
    make(
        word(entry), written, () -> keep(entry, written, _ -> {}), () -> keep(entry, old, _ -> {}));
  }

  private void commitHours() {
    if (hours.entries().allMatch(Entry::isAsShown)) {
      hours.entries().forEach(Entry::restore);
      return;
    }
    hours
        .hours()
        .ifPresent(
            now -> {
              var before = WorkingHours.kept(preferences, zone);
              if (now.equals(before.value())) {
                hours.show(now, Optional.empty());
                return;
              }
              make(
                  texts.get("settings.hours"),
                  words(now),
                  () -> keep(now),
                  () -> keep(before.value()));
            });
  }

  private void keep(DayHours now) {
    WorkingHours.keep(preferences, now);
    hours.show(now, Optional.empty());
  }

  private String words(DayHours now) {
    return texts.formats().time(now.from()) + "\u2013" + texts.formats().time(now.until());
  }

  /** Takes a look. */
  void take(Theme next) {
    var old = looks.theme();
    if (next != old) {
      make(
          texts.get("settings.theme"),
          texts.get("look." + next.word()),
          () -> looks.take(next),
          () -> looks.take(old));
    }
  }

  /** Takes a language. */
  void take(Language next) {
    var old = language.get();
    if (next != old) {
      make(texts.get("settings.language"), words(next), () -> keep(next), () -> keep(old));
    }
  }

  private void keep(Language now) {
    now.keep(preferences);
    language.set(now);
  }

  /** Says what those who gather pictures may use them for. */
  void takeMining(Optional<DataMining> next) {
    var old = mining.get();
    if (!next.equals(old)) {
      make(texts.get("settings.studio.mining"), words(next), () -> keep(next), () -> keep(old));
    }
  }

  private void keep(Optional<DataMining> now) {
    MiningSetting.keep(preferences, now);
    mining.set(now);
  }

  /** What they may be used for, for people. */
  String words(Optional<DataMining> one) {
    return texts.get("settings.studio.mining." + one.map(DataMining::word).orElse("unsaid"));
  }

  /** A language, for people. */
  String words(Language one) {
    return one.ownName().orElseGet(() -> texts.get("settings.language.system"));
  }

  /** Makes everything larger or smaller by so many steps. */
  void takeScale(double next) {
    double old = looks.scale();
    looks.take(next);
    double taken = looks.scale();
    if (taken != old) {
      make(
          texts.get("settings.scale"),
          percent(taken),
          () -> looks.take(taken),
          () -> looks.take(old));
    }
  }

  /** A size, for people. */
  String percent(double size) {
    return texts.get("settings.percent", Math.round(size * 100) / 100.0);
  }

  private String word(Entry entry) {
    return texts.get("settings." + entry.id());
  }

  private void make(String name, String value, Runnable change, Runnable back) {
    change.run();
    showLooks();
    undone.clear();
    changes.push(new Change(name, change, back));
    if (changes.size() > MOST_UNDONE) {
      changes.removeLast();
    }
    answered.accept(
        new Answer(
            value.isEmpty()
                ? texts.get("settings.emptied", name)
                : texts.get("settings.changed", name, value),
            Offer.UNDO));
  }

  /** Makes what was changed last as it was. */
  void undo() {
    var last = changes.poll();
    if (last != null) {
      last.back().run();
      showLooks();
      undone.push(last);
      answered.accept(new Answer(texts.get("settings.undone", last.name()), Offer.REDO));
    }
  }

  /** Changes again what was undone last. */
  void redo() {
    var last = undone.poll();
    if (last != null) {
      last.change().run();
      showLooks();
      changes.push(last);
      answered.accept(new Answer(texts.get("settings.redone", last.name()), Offer.UNDO));
    }
  }
}
