package org.framewright.ui.frames;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.beans.value.ChangeListener;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.live.JobView;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.ViewWords;
import org.framewright.ui.session.Answer;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.session.Step;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * The job's frames under the headings of its list, with what is chosen among them. Marking a select
 * and moving frames are on the disk before they are shown.
 */
final class FramesModel {
  private final JobSession session;
  private final ViewWords views;
  private final Texts texts;
  private final Supplier<String> person;
  private final Consumer<Answer> answered;
  private final Consumer<Throwable> trouble;

  private final ObservableList<FrameHeading> headings = FXCollections.observableArrayList();
  private final ObjectProperty<FrameHeading> heading = new SimpleObjectProperty<>();
  private final ObservableList<Tile> tiles = FXCollections.observableArrayList();
  private final StringProperty filter = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<GroupedFrames> groups =
      new ReadOnlyObjectWrapper<>(GroupedFrames.EMPTY);
  private final ReadOnlyBooleanWrapper sorted = new ReadOnlyBooleanWrapper();
  private final FrameSelection<FrameId> selection = new FrameSelection<>();
  private final Newest<JobView, GroupedFrames> sorting;
  private final ChangeListener<JobView> follow = (_, _, now) -> sort(now);
  private final SlateModel slates;
  private Optional<FrameId> sought = Optional.empty();
  private boolean following;
  private boolean replacing;

  /**
   * @param person who marks and moves
   * @param answered hears what became of what a person did
   */
  FramesModel(
      JobSession session,
      Tasks tasks,
      Texts texts,
      Supplier<String> person,
      Consumer<Answer> answered,
      Consumer<Throwable> trouble) {
    this.session = session;
    this.views = new ViewWords(session.job().convention());
    this.texts = texts;
    this.person = person;
    this.answered = answered;
    this.trouble = trouble;
    this.sorting =
        new Newest<>(
            tasks,
            job -> GroupedFrames.of(job.scan().distinct(), job.tally(), job.list(), job.state()),
            this::show,
            trouble);
    headings.setAll(GroupedFrames.EMPTY.headings());
    heading.set(headings.getFirst());
    heading.addListener(
        (_, _, now) -> {
          if (now != null && !replacing) {
            fill();
          }
        });
    filter.addListener(_ -> fill());
    slates = new SlateModel(this, texts, person);
  }

  /** Follows the job from now on; sorting many thousand frames is for a page that is looked at. */
  void follow() {
    if (!following) {
      following = true;
      session.view().addListener(follow);
      sort(session.view().get());
    }
  }

  /** Stops following the job, until {@link #follow}. */
  void pause() {
    following = false;
    session.view().removeListener(follow);
    sorting.clear();
  }

  /** What the frames are gathered under. */
  ObservableList<FrameHeading> headings() {
    return headings;
  }

  /** The heading that is looked at. */
  ObjectProperty<FrameHeading> heading() {
    return heading;
  }

  /** The job as it is shown. */
  JobView job() {
    return session.view().get();
  }

  /** Looks at a frame among those of its setup, or at a slate among the slates. */
  void goTo(FrameId frame) {
    filter.set("");
    sought = Optional.of(frame);
    heading.set(
        shown(
            Optional.ofNullable(job().tally().places().get(frame))
                .map(place -> FrameHeading.ofSetup(place.setup()))
                .orElseGet(
                    () -> isSlate(frame) ? FrameHeading.slates() : FrameHeading.unassigned())));
    fill();
  }

  private boolean isSlate(FrameId frame) {
    return job().tally().slates().frames().stream()
        .anyMatch(one -> one.frame().knownAs().contains(frame));
  }

  /** Looks at all frames under a heading. */
  void lookAt(FrameHeading one) {
    filter.set("");
    heading.set(shown(one));
  }

  /** The heading as it is shown, with its counts, if it is shown already. */
  private FrameHeading shown(FrameHeading sought) {
    return headings.stream().filter(one -> one.same(sought)).findFirst().orElse(sought);
  }

  /** Goes on to another heading, as far as there is one. */
  void turnHeading(int by) {
    var at = headings.indexOf(heading.get());
    heading.set(headings.get(Math.clamp((long) at + by, 0, headings.size() - 1)));
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
  ReadOnlyObjectProperty<GroupedFrames> groups() {
    return groups.getReadOnlyProperty();
  }

  /** Whether the frames are under their headings yet, which takes a moment with many. */
  ReadOnlyBooleanProperty sorted() {
    return sorted.getReadOnlyProperty();
  }

  /** What is chosen. */
  FrameSelection<FrameId> selection() {
    return selection;
  }

  /** The frame that the keys are on. */
  Optional<Tile> current() {
    var at = selection.cursor().get();
    return at >= 0 && at < tiles.size() ? Optional.of(tiles.get(at)) : Optional.empty();
  }

  /** The setups that frames can be moved to, by what was typed of them. */
  List<Setup> destinations(String typed) {
    return GroupedFrames.matching(session.view().get().list(), typed);
  }

  /** The places that a setup has for frames: itself, then each of its views. */
  List<Place> places(Setup setup) {
    var places = new ArrayList<Place>();
    places.add(new Place(setup.code(), Optional.empty()));
    setup.views().forEach(v -> places.add(new Place(setup.code(), Optional.of(v.code()))));
    return places;
  }

  /** What a view's code stands for in the convention; empty where that does not say. */
  String meaning(String view) {
    var word = views.word(view);
    return word.equals(view) ? "" : word;
  }

  /** Where the chosen frames are now, in words; for the question where to. */
  String whereTheyAre() {
    var chosen = selection.chosen().get();
    var places =
        tiles.stream()
            .filter(tile -> chosen.contains(tile.frame().id()))
            .map(
                tile ->
                    tile.place()
                        .map(Place::setup)
                        .or(() -> tile.slate(texts))
                        .orElse(texts.get("frames.unassigned")))
            .distinct()
            .toList();
    return places.size() > 3
        ? texts.get("frames.manySetups", places.size())
        : texts.formats().list(places);
  }

  /** The chosen frames, in the order of the grid. */
  private List<Tile> chosen() {
    var chosen = selection.chosen().get();
    return tiles.stream().filter(tile -> chosen.contains(tile.frame().id())).toList();
  }

  /**
   * Marks the chosen frames as selects; if all of them are, they are none any more. The mark shows
   * when it is written.
   */
  void toggleSelect() {
    toggleSelect(chosen());
  }

  /** The same with these. */
  void toggleSelect(List<Tile> these) {
    if (these.isEmpty()) {
      return;
    }
    var all = frames(these);
    take(
        these.stream().allMatch(Tile::select)
            ? new Step.Selected(frames(List.of()), all, person.get())
            : new Step.Selected(all, frames(List.of()), person.get()));
  }

  /** Of several frames one is the select, the others are not. */
  void selectOnly(Tile one, List<Tile> others) {
    take(new Step.Selected(frames(List.of(one)), frames(others), person.get()));
  }

  /**
   * Rates the chosen frames.
   *
   * @param rating from 0, not rated, to 5
   */
  void rate(int rating) {
    rate(rating, chosen());
  }

  /** The same with these. */
  void rate(int rating, List<Tile> these) {
    if (!these.isEmpty()) {
      take(new Step.Rated(frames(these), rating, person.get()));
    }
  }

  /** Moves the chosen frames to a setup. */
  void move(Place to) {
    var these = chosen();
    if (!these.isEmpty()) {
      take(new Step.Placed(frames(these), to, person.get()));
    }
  }

  private static Step.Frames frames(List<Tile> tiles) {
    return Step.Frames.of(tiles.stream().map(Tile::frame).toList());
  }

  /** What is said of the slates among them. */
  SlateModel slates() {
    return slates;
  }

  /** Takes a step, which is answered once it is on the disk. */
  void take(Step step) {
    session.take(step, () -> answered.accept(new Answer.Taken(step)), trouble);
  }

  /** Undoes the last step, on whichever page it was taken. */
  void undo() {
    session.undo(step -> answered.accept(new Answer.Undone(step)), trouble);
  }

  /** Does again what was undone last. */
  void redo() {
    session.redo(step -> answered.accept(new Answer.Redone(step)), trouble);
  }

  private void sort(JobView now) {
    sorting.offer(now);
  }

  private void show(GroupedFrames now) {
    groups.set(now);
    var looked = heading.get();
    replacing = true;
    if (!headings.equals(now.headings())) {
      headings.setAll(now.headings());
    }
    heading.set(
        headings.stream()
            .filter(one -> looked != null && one.same(looked))
            .findFirst()
            .orElse(headings.getFirst()));
    replacing = false;
    fill();
    sorted.set(true);
  }

  private void fill() {
    if (heading.get() == null) {
      return;
    }
    var typed = filter.get().strip().toLowerCase(Locale.ROOT);
    var under = groups.get().under(heading.get());
    var now =
        typed.isEmpty()
            ? under
            : under.stream()
                .filter(tile -> tile.frame().stem().toLowerCase(Locale.ROOT).contains(typed))
                .toList();
    if (!tiles.equals(now)) {
      tiles.setAll(now);
      selection.over(tiles.stream().map(tile -> tile.frame().id()).toList());
    }
    sought = sought.filter(frame -> !selection.goTo(frame));
  }

  void dispose() {
    slates.dispose();
    pause();
  }
}
