package org.framewright.ui.start;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.binding.StringBinding;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.value.ChangeListener;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.naming.Convention;
import org.framewright.naming.FieldType;
import org.framewright.naming.Finding;
import org.framewright.naming.Reserved;
import org.framewright.naming.Severity;
import org.framewright.naming.Step;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.DefaultPlace;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.StudioDetail;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * Starts a job: a convention is chosen, its fields become a form, and what they make is worked out
 * in the background as one types.
 */
final class StartModel {
  static final String RECENT_CONVENTIONS = "recent.conventions";
  static final String RECENT_PLACES = "recent.places";
  private static final String RECENT_FIELD = "recent.field.";

  /** Fields of frames' names that the shot list gives, not a person at the start. */
  private static final List<String> FROM_THE_LIST = List.of(Reserved.SETUP, Reserved.VIEW);

  private final Tasks tasks;
  private final Preferences preferences;
  private final Clock clock;
  private final Consumer<Throwable> trouble;
  private final Consumer<Path> openJob;

  private final ObservableList<KnownConvention> conventions = FXCollections.observableArrayList();
  private final ObjectProperty<KnownConvention> chosen = new SimpleObjectProperty<>();
  private final ReadOnlyObjectWrapper<Optional<Convention>> convention =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<List<Finding>> conventionFindings =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ObservableList<FieldEntry> entries = FXCollections.observableArrayList();
  private final ReadOnlyObjectWrapper<Optional<JobPreview>> preview =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<Path> place = new SimpleObjectProperty<>();
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<List<Finding>> refused =
      new ReadOnlyObjectWrapper<>(List.of());
  private final BooleanBinding canStart;
  private final StringBinding startText;
  private final Newest<Typed, JobPreview> previews;
  private final Newest<KnownConvention, Read> readings;

  /** What of the settings was offered, by the field's name. */
  private final Map<String, String> offered = new HashMap<>();

  private Optional<Path> offeredPlace = Optional.empty();
  private final ChangeListener<String> typing = (_, _, _) -> work();

  /** A convention that can be chosen. */
  record KnownConvention(String title, Path file) {}

  private record Typed(Convention convention, Map<String, String> values) {}

  private record Read(KnownConvention file, Convention.Parsed parsed, List<Finding> findings) {}

  /**
   * @param openJob gets the folder of the job that was started
   */
  StartModel(
      Tasks tasks,
      Texts texts,
      Preferences preferences,
      Clock clock,
      Consumer<Throwable> trouble,
      Consumer<Path> openJob) {
    this.tasks = tasks;
    this.preferences = preferences;
    this.clock = clock;
    this.trouble = trouble;
    this.openJob = openJob;
    this.previews =
        new Newest<>(
            tasks, typed -> JobPreview.of(typed.convention(), typed.values()), this::show, trouble);
    this.readings = new Newest<>(tasks, StartModel::read, this::use, trouble);
    chosen.addListener(
        (_, _, now) -> {
          if (now != null) {
            readings.offer(now);
          }
        });
    preferences.recentPaths(RECENT_PLACES).stream().findFirst().ifPresent(place::set);
    offerSettings();
    canStart =
        Bindings.createBooleanBinding(
            () ->
                !busy.get()
                    && place.get() != null
                    && preview.get().filter(p -> !p.jobName().isEmpty()).isPresent()
                    && conventionFindings.get().stream()
                        .noneMatch(finding -> finding.severity() == Severity.ERROR),
            busy,
            place,
            preview,
            conventionFindings);
    startText =
        Bindings.createStringBinding(
            () ->
                preview
                    .get()
                    .map(JobPreview::jobName)
                    .filter(name -> !name.isEmpty())
                    .map(name -> texts.get("start.start", name))
                    .orElse(texts.get("start.notYet")),
            preview);
  }

  /** The conventions at hand: those used lately first. */
  ObservableList<KnownConvention> conventions() {
    return conventions;
  }

  /** The one in use. */
  ObjectProperty<KnownConvention> chosen() {
    return chosen;
  }

  /** The convention as read; none while it is faulty. */
  ReadOnlyObjectProperty<Optional<Convention>> convention() {
    return convention.getReadOnlyProperty();
  }

  /** What is wrong with the convention itself. */
  ReadOnlyObjectProperty<List<Finding>> conventionFindings() {
    return conventionFindings.getReadOnlyProperty();
  }

  /** The form. */
  ObservableList<FieldEntry> entries() {
    return entries;
  }

  /** What the convention makes of what was typed. */
  ReadOnlyObjectProperty<Optional<JobPreview>> preview() {
    return preview.getReadOnlyProperty();
  }

  /** The folder in which the job folder is made. */
  ObjectProperty<Path> place() {
    return place;
  }

  /** Why the last try to start was refused. */
  ReadOnlyObjectProperty<List<Finding>> refused() {
    return refused.getReadOnlyProperty();
  }

  /** Whether a job is being made. */
  ReadOnlyBooleanProperty busy() {
    return busy.getReadOnlyProperty();
  }

  BooleanBinding canStart() {
    return canStart;
  }

  /** What the button says. */
  StringBinding startText() {
    return startText;
  }

  /**
   * Gathers the conventions used lately and those in some folders, and takes the first into use.
   *
   * @param folders folders with conventions, one YAML file each; those that are missing are passed
   */
  void gather(List<Path> folders) {
    var recent = preferences.recentPaths(RECENT_CONVENTIONS);
    tasks.quietly(() -> list(recent, folders), this::offer, trouble);
  }

  /** Takes a convention from a file into use. */
  void use(Path file) {
    tasks.quietly(
        () -> list(List.of(file), List.of()),
        found -> {
          for (var one : found) {
            conventions.removeIf(known -> known.file().equals(one.file()));
            conventions.addFirst(one);
            if (one.equals(chosen.get())) {
              readings.offer(one);
            }
            chosen.set(one);
          }
        },
        trouble);
  }

  /** Offers what was set since it was last offered, where nothing was written. */
  void offerSettings() {
    var usual = DefaultPlace.JOBS.kept(preferences);
    if (!usual.equals(offeredPlace)) {
      offeredPlace = usual;
      usual.ifPresent(place::set);
    }
    for (var entry : entries) {
      var before = offered.get(entry.name());
      var written = entry.text().get();
      if (written.isEmpty() || written.equals(before)) {
        ofTheStudio(entry)
            .filter(now -> remembers(entry) && !now.equals(before))
            .ifPresent(now -> entry.text().set(now));
      }
    }
  }

  /** What the settings say for a field, which is offered once. */
  private Optional<String> ofTheStudio(FieldEntry entry) {
    var first = StudioDetail.firstValue(preferences, entry.name());
    first.ifPresent(text -> offered.put(entry.name(), text));
    return first;
  }

  /** Makes the job folder and opens it. */
  void start() {
    if (!canStart.get()) {
      return;
    }
    var with = convention.get().orElseThrow();
    var values = typed();
    var parent = place.get();
    busy.set(true);
    refused.set(List.of());
    tasks.run(
        startText.get(),
        _ -> Job.start(with, parent, values, clock),
        started -> {
          busy.set(false);
          switch (started) {
            case Started.Opened opened -> {
              remember(values, parent);
              openJob.accept(opened.job().folder());
            }
            case Started.Refused no -> refused.set(no.findings());
          }
        },
        failure -> {
          busy.set(false);
          trouble.accept(failure);
        });
  }

  private void remember(Map<String, String> values, Path parent) {
    preferences.remember(RECENT_CONVENTIONS, chosen.get().file().toString());
    preferences.remember(RECENT_PLACES, parent.toString());
    for (var entry : entries) {
      var text = values.get(entry.name());
      if (text != null && remembers(entry)) {
        preferences.remember(RECENT_FIELD + entry.name(), text);
      }
    }
  }

  private static boolean remembers(FieldEntry entry) {
    return switch (entry.type()) {
      case CODE, WORDS, PERSON -> true;
      case DATE, NUMBER, COUNTER, CHOICE, GTIN, FIXED -> false;
    };
  }

  private void offer(List<KnownConvention> found) {
    conventions.setAll(found);
    if (chosen.get() == null && !found.isEmpty()) {
      chosen.set(found.getFirst());
    }
  }

  private static List<KnownConvention> list(List<Path> files, List<Path> folders)
      throws IOException {
    var all = new LinkedHashSet<Path>();
    files.stream().filter(Files::isRegularFile).map(Path::toAbsolutePath).forEach(all::add);
    for (var folder : folders) {
      if (Files.isDirectory(folder)) {
        try (var inside = Files.list(folder)) {
          inside
              .filter(file -> file.getFileName().toString().matches("(?i).*\\.ya?ml"))
              .map(Path::toAbsolutePath)
              .sorted()
              .forEach(all::add);
        }
      }
    }
    var found = new ArrayList<KnownConvention>();
    for (var file : all) {
      found.add(
          new KnownConvention(
              Convention.read(file) instanceof Convention.Parsed.Sound sound
                  ? sound.convention().title()
                  : file.getFileName().toString(),
              file));
    }
    return found;
  }

  private static Read read(KnownConvention file) throws IOException {
    var parsed = Convention.read(file.file());
    return new Read(
        file,
        parsed,
        switch (parsed) {
          case Convention.Parsed.Sound sound -> sound.convention().check(0);
          case Convention.Parsed.Faulty faulty -> faulty.findings();
        });
  }

  /** Rebuilds the form; what was typed stays with the fields that both conventions have. */
  private void use(Read read) {
    if (!Objects.equals(read.file(), chosen.get())) {
      return;
    }
    var kept = new HashMap<String, String>();
    for (var entry : entries) {
      entry.text().removeListener(typing);
      kept.put(entry.name(), entry.text().get());
    }
    conventionFindings.set(read.findings());
    refused.set(List.of());
    preview.set(Optional.empty());
    previews.clear();
    if (read.parsed() instanceof Convention.Parsed.Sound sound
        && sound.convention().kinds().containsKey(JobPreview.JOB)) {
      convention.set(Optional.of(sound.convention()));
      entries.setAll(form(sound.convention(), kept));
      entries.forEach(entry -> entry.text().addListener(typing));
      work();
    } else {
      convention.set(Optional.empty());
      entries.clear();
    }
  }

  private List<FieldEntry> form(Convention of, Map<String, String> kept) {
    var ofTheJob = of.kinds().get(JobPreview.JOB).fields();
    var form = new ArrayList<FieldEntry>();
    var later = new ArrayList<FieldEntry>();
    for (var field : of.fields().values()) {
      var shown = ofTheJob.containsKey(field.name());
      var ofFrames =
          of.kinds().containsKey(JobPreview.FRAME)
              && of.kinds().get(JobPreview.FRAME).fields().containsKey(field.name())
              && !FROM_THE_LIST.contains(field.name());
      if (field.type() == FieldType.FIXED
          || field.type() == FieldType.COUNTER
          || !(shown || ofFrames)) {
        continue;
      }
      var needed = shown && ofTheJob.get(field.name()) && field.defaultValue().isEmpty();
      var entry =
          new FieldEntry(field, needed, shown, preferences.recent(RECENT_FIELD + field.name()));
      entry.text().set(kept.getOrDefault(field.name(), beginning(entry, field.defaultValue())));
      (shown ? form : later).add(entry);
    }
    form.addAll(later);
    return form;
  }

  private String beginning(FieldEntry entry, Optional<String> byDefault) {
    return byDefault.orElse(
        entry.type() == FieldType.DATE && entry.ofTheJob()
            ? LocalDate.now(clock).toString()
            : remembers(entry) ? ofTheStudio(entry).orElse("") : "");
  }

  private Map<String, String> typed() {
    var values = new HashMap<String, String>();
    for (var entry : entries) {
      var text = entry.text().get().strip();
      if (!text.isEmpty()) {
        values.put(entry.name(), text);
      }
    }
    return values;
  }

  private void work() {
    refused.set(List.of());
    convention.get().ifPresent(now -> previews.offer(new Typed(now, typed())));
  }

  private void show(JobPreview now) {
    preview.set(Optional.of(now));
    for (var entry : entries) {
      var became = now.values().getOrDefault(entry.name(), "");
      var rules =
          now.steps().stream()
              .filter(step -> step.field().equals(entry.name()))
              .map(Step::said)
              .toList();
      entry.beside(
          new FieldEntry.Beside(
              now.findings().getOrDefault(entry.name(), List.of()),
              now.missing().contains(entry.name()),
              rules.isEmpty() ? "" : became,
              rules));
    }
  }
}
