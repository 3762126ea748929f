package org.framewright.ui.frames;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * The job's frames under the headings of its list, with what is chosen among them. Marking a select
 * and moving frames are on the disk before they are shown.
 */
final class FramesModel {
  private final Job job;
  private final Tasks tasks;
  private final Texts texts;
  private final Supplier<String> person;
  private final Consumer<Throwable> trouble;
  private final Consumer<JobState> changed;

  private final ObservableList<Heading> headings = FXCollections.observableArrayList();
  private final ObjectProperty<Heading> heading = new SimpleObjectProperty<>();
  private final ObservableList<Tile> tiles = FXCollections.observableArrayList();
  private final StringProperty filter = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<Shelf> shelf = new ReadOnlyObjectWrapper<>(Shelf.EMPTY);
  private final Choice<FrameId> choice = new Choice<>();
  private final Newest<FrameScan, Shelf> sorting;
  private FrameScan scan = new FrameScan(List.of(), 0, List.of());
  private boolean replacing;

  /**
   * @param person who marks and moves
   * @param changed told on the interface thread when the job's state changed by this page
   */
  FramesModel(
      Job job,
      Tasks tasks,
      Texts texts,
      Supplier<String> person,
      Consumer<Throwable> trouble,
      Consumer<JobState> changed) {
    this.job = job;
    this.tasks = tasks;
    this.texts = texts;
    this.person = person;
    this.trouble = trouble;
    this.changed = changed;
    this.sorting = new Newest<>(tasks, this::sort, this::show, trouble);
    headings.setAll(Shelf.EMPTY.headings());
    heading.set(headings.getFirst());
    heading.addListener(
        (_, _, now) -> {
          if (now != null && !replacing) {
            fill();
          }
        });
    filter.addListener(_ -> fill());
  }

  /** What the frames are gathered under. */
  ObservableList<Heading> headings() {
    return headings;
  }

  /** The heading that is looked at. */
  ObjectProperty<Heading> heading() {
    return heading;
  }

  /** The frames under it that the filter lets through. */
  ObservableList<Tile> tiles() {
    return tiles;
  }

  /** Part of a frame's name. */
  StringProperty filter() {
    return filter;
  }

  /** All frames. */
  ReadOnlyObjectProperty<Shelf> shelf() {
    return shelf.getReadOnlyProperty();
  }

  /** What is chosen. */
  Choice<FrameId> choice() {
    return choice;
  }

  /** The job's list. */
  ShotList list() {
    return job.shotList();
  }

  /** The setups that frames can be moved to, by what was typed of them. */
  List<Setup> destinations(String typed) {
    return Shelf.matching(job.shotList(), typed);
  }

  /** Where the chosen frames are now, in words; for the question where to. */
  String whereTheyAre() {
    var chosen = choice.chosen().get();
    var places =
        tiles.stream()
            .filter(tile -> chosen.contains(tile.frame().id()))
            .map(tile -> tile.place().map(Place::setup).orElse(texts.get("frames.unassigned")))
            .distinct()
            .toList();
    return places.size() > 3
        ? texts.get("frames.manySetups", places.size())
        : String.join(", ", places);
  }

  /** The frames lie like this now. */
  void show(FrameScan now) {
    scan = now;
    sorting.offer(now);
  }

  /** Sorts again: the list, the marks or the names changed. */
  void again() {
    sorting.offer(scan);
  }

  /** Looks at the disk. */
  void look() {
    tasks.quietly(job::scan, this::show, trouble);
  }

  /**
   * Marks the chosen frames as selects; if all of them are, they are none any more. The mark shows
   * when it is written.
   */
  void toggleSelect() {
    var chosen = choice.inOrder();
    if (chosen.isEmpty()) {
      return;
    }
    var selects = tiles.stream().filter(Tile::select).map(tile -> tile.frame().id()).toList();
    var mark = !Set.copyOf(selects).containsAll(chosen);
    write(() -> job.select(chosen, mark, person.get()));
  }

  /** Moves the chosen frames to a setup. */
  void move(Place to) {
    var chosen = choice.inOrder();
    if (!chosen.isEmpty()) {
      write(() -> job.moveFrames(chosen, to.setup(), to.view(), person.get()));
    }
  }

  /** Takes the last move back. */
  void takeBackMove() {
    write(job::takeBackMove);
  }

  private void write(Callable<JobState> work) {
    tasks.quietly(
        work,
        state -> {
          changed.accept(state);
          again();
        },
        trouble);
  }

  private Shelf sort(FrameScan of) {
    return Shelf.of(of.frames(), job.tally(of), job.shotList(), job.state().selects());
  }

  private void show(Shelf now) {
    shelf.set(now);
    var looked = heading.get();
    replacing = true;
    headings.setAll(now.headings());
    heading.set(
        headings.stream()
            .filter(one -> looked != null && one.same(looked))
            .findFirst()
            .orElse(headings.getFirst()));
    replacing = false;
    fill();
  }

  private void fill() {
    if (heading.get() == null) {
      return;
    }
    var typed = filter.get().strip().toLowerCase(Locale.ROOT);
    var under = shelf.get().under(heading.get());
    tiles.setAll(
        typed.isEmpty()
            ? under
            : under.stream()
                .filter(tile -> tile.frame().stem().toLowerCase(Locale.ROOT).contains(typed))
                .toList());
    choice.over(tiles.stream().map(tile -> tile.frame().id()).toList());
  }

  /** The frame that the keys are on. */
  Optional<Tile> current() {
    var at = choice.cursor().get();
    return at >= 0 && at < tiles.size() ? Optional.of(tiles.get(at)) : Optional.empty();
  }
}
