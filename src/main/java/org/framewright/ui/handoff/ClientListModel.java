package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.handoff.ClientNames;
import org.framewright.handoff.HandOff;
import org.framewright.ui.handoff.ListReading.Candidate;
import org.framewright.ui.handoff.ListReading.Draft;
import org.framewright.ui.handoff.ListReading.Part;
import org.framewright.ui.handoff.ListReading.Row;
import org.framewright.ui.handoff.ListReading.Source;
import org.framewright.ui.handoff.ListReading.State;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * A client's list of the frames wanted: what each part of it was taken for, and what a person says
 * of what is unclear. Read in the background, the newest text last; nothing is taken that fits
 * several frames or none until somebody said which.
 */
final class ClientListModel {
  /** Characters that can be pasted; a longer list is a file. */
  static final int MOST_CHARACTERS = 100_000;

  private final JobSession session;
  private final Tasks tasks;
  private final Texts texts;
  private final Consumer<Throwable> trouble;

  private final StringProperty text = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<Optional<Path>> file =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Map<Part, List<Integer>> answers = new LinkedHashMap<>();
  private final ReadOnlyObjectWrapper<ListReading> reading =
      new ReadOnlyObjectWrapper<>(ListReading.NOTHING);
  private final BooleanProperty onlyUnclear = new SimpleBooleanProperty(false);
  private final BooleanProperty tooLong = new SimpleBooleanProperty(false);
  private final ObservableList<Row> rows = FXCollections.observableArrayList();
  private final BooleanProperty current = new SimpleBooleanProperty(true);
  private final BooleanBinding ready;
  private final Newest<Draft, ListReading> readings;

  private Optional<Prepared> prepared = Optional.empty();
  private int filesChosen;

  /** The job's names as they were when the list was asked for. */
  private record Prepared(HandOff handOff, ListReading.Reader reader) {}

  ClientListModel(JobSession session, Tasks tasks, Texts texts, Consumer<Throwable> trouble) {
    this.session = session;
    this.tasks = tasks;
    this.texts = texts;
    this.trouble = trouble;
    this.readings = new Newest<>(tasks, this::read, this::show, trouble);
    text.addListener(_ -> typed());
    onlyUnclear.addListener(_ -> showRows());
    ready =
        Bindings.createBooleanBinding(
            () ->
                current.get()
                    && reading.get().settled().isPresent()
                    && reading.get().unclear() == 0
                    && reading.get().frames() > 0,
            reading,
            current);
  }

  /** What is pasted or typed; empty where a file is read. */
  StringProperty text() {
    return text;
  }

  /** The file that is read; none where the text is. */
  ReadOnlyObjectProperty<Optional<Path>> file() {
    return file.getReadOnlyProperty();
  }

  /** Whether more was pasted than a field takes, so that none of it was. */
  BooleanProperty tooLong() {
    return tooLong;
  }

  /** The list as it was read. */
  ReadOnlyObjectProperty<ListReading> reading() {
    return reading.getReadOnlyProperty();
  }

  /** Whether only the parts are shown that a person has to settle. */
  BooleanProperty onlyUnclear() {
    return onlyUnclear;
  }

  /** The parts that are shown. */
  ObservableList<Row> rows() {
    return rows;
  }

  /** Whether frames are named, and nothing is left to settle. */
  BooleanBinding ready() {
    return ready;
  }

  /**
   * Gathers the names that the frames have and had, to read lists against; {@code then} runs when
   * they are known.
   */
  void begin(Runnable then) {
    var view = session.view().get();
    var job = session.job();
    tasks.quietly(
        () -> {
          var handOff = HandOff.of(job, view.scan(), view.tally());
          return new Prepared(
              handOff, new ListReading.Reader(handOff.lists(), texts.get("clientList.pasted")));
        },
        now -> {
          if (prepared.filter(old -> now.reader().takesAnswersOf(old.reader())).isEmpty()) {
            answers.clear();
          }
          prepared = Optional.of(now);
          work();
          then.run();
        },
        trouble);
  }

  /** Reads a file in place of the text. */
  void load(Path path) {
    filesChosen++;
    file.set(Optional.of(path));
    answers.clear();
    if (text.get().isEmpty()) {
      work();
    } else {
      text.set("");
    }
  }

  private void typed() {
    if (!text.get().isEmpty()) {
      file.set(Optional.empty());
    }
    tooLong.set(false);
    work();
  }

  /** Forgets the list: its frames were handed off. */
  void clear() {
    answers.clear();
    file.set(Optional.empty());
    text.set("");
    work();
  }

  /** Takes a frame as meant, or no longer. */
  void choose(Row row, Candidate candidate) {
    var chosen = new LinkedHashSet<>(row.chosen());
    if (!chosen.remove(candidate.frame())) {
      chosen.add(candidate.frame());
    }
    if (chosen.isEmpty()) {
      answers.remove(row.part());
    } else {
      answers.put(row.part(), List.copyOf(chosen));
    }
    work();
  }

  /** Leaves a part out, or asks about it again. */
  void leaveOut(Row row) {
    if (row.isLeftOut()) {
      answers.remove(row.part());
    } else {
      answers.put(row.part(), List.of());
    }
    work();
  }

  /** Leaves out every part that is not settled yet. */
  void leaveOutTheRest() {
    for (var row : reading.get().rows()) {
      if (row.state() == State.UNCLEAR) {
        answers.put(row.part(), List.of());
      }
    }
    work();
  }

  /** The hand-off whose names were read, and the list; none where it is not settled. */
  Optional<Named> named() {
    return ready.get()
        ? prepared.flatMap(
            it -> reading.get().settled().map(names -> new Named(it.handOff(), names)))
        : Optional.empty();
  }

  /** A settled list, and what hands its frames off. */
  record Named(HandOff handOff, ClientNames names) {}

  private void work() {
    current.set(false);
    readings.offer(draft());
  }

  private Draft draft() {
    Source source =
        file.get()
            .<Source>map(path -> new Source.File(path, filesChosen))
            .orElseGet(() -> new Source.Text(text.get()));
    return new Draft(source, Map.copyOf(answers));
  }

  private ListReading read(Draft draft) {
    return prepared.map(it -> it.reader().of(draft)).orElse(ListReading.NOTHING);
  }

  private void show(ListReading now) {
    reading.set(now);
    current.set(now.of().equals(draft()));
    showRows();
  }

  private void showRows() {
    var now = reading.get();
    if (!now.asks()) {
      onlyUnclear.set(false);
    }
    rows.setAll(now.shown(onlyUnclear.get()));
  }
}
