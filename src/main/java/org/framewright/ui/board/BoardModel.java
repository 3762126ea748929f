package org.framewright.ui.board;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableValue;
import javafx.collections.ObservableList;
import org.framewright.frames.Frame;
import org.framewright.frames.SlateDoubt;
import org.framewright.job.Comment;
import org.framewright.job.MarkDetails;
import org.framewright.job.OnSet;
import org.framewright.job.SetupMoves;
import org.framewright.live.JobView;
import org.framewright.live.ViewCount;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Answer;
import org.framewright.ui.session.LookedAt;
import org.framewright.ui.session.Step;
import org.framewright.ui.session.Step.Mark;
import org.framewright.ui.session.Steps;

/** The board without its controls. */
public final class BoardModel {
  private static final int AHEAD = 3;

  private final ObservableValue<JobView> job;
  private final Steps steps;
  private final Texts texts;
  private final CommentsModel comments;
  private final Consumer<Comment> heard;
  private final Consumer<Answer> answered;
  private final Consumer<Throwable> failed;
  private final RunningOrder order;
  private final ChangeListener<JobView> follow = (_, _, now) -> take(now);

  private final BoardLines shown = new BoardLines();
  private final LookedAt looked = new LookedAt(false);
  private final StringProperty selected = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<Standing> standing =
      new ReadOnlyObjectWrapper<>(
          new Standing(Totals.of(List.of()), List.of(), 0, 0, List.of(), Optional.empty()));
  private final ReadOnlyObjectWrapper<Now> now = new ReadOnlyObjectWrapper<>(Now.NOTHING);
  private final ReadOnlyBooleanWrapper chosen = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<SaidNow> said = new ReadOnlyObjectWrapper<>(SaidNow.NOTHING);

  private List<SetupRow> rows = List.of();

  /**
   * What is on set with its last frames, and what comes next, of one and the same moment.
   *
   * @param latest the last frames of the setup on set, newest first
   * @param next at most three; pickups after everything that was never shot
   * @param noList whether the job has no list yet
   */
  record Now(Optional<SetupRow> onSet, List<Frame> latest, List<SetupRow> next, boolean noList) {
    static final Now NOTHING = new Now(Optional.empty(), List.of(), List.of(), true);
  }

  /**
   * What was said of what the page shows, each the newest first.
   *
   * @param onSet of the setup on set
   * @param chosen of the chosen setup, where that is another one
   */
  record SaidNow(List<Said> onSet, List<Said> chosen) {
    static final SaidNow NOTHING = new SaidNow(List.of(), List.of());

    SaidNow {
      onSet = List.copyOf(onSet);
      chosen = List.copyOf(chosen);
    }

    boolean isAnyNew() {
      return Stream.concat(onSet.stream(), chosen.stream()).anyMatch(Said::isNew);
    }
  }

  /**
   * How far the job is.
   *
   * @param totals in numbers
   * @param rows setup by setup in running order
   * @param loose frames that belong to no setup
   * @param notUnderstood files in the frames folder that are neither frames nor of frames
   * @param given setups that went to other sets
   * @param doubt the slate that came last and contradicts what is on set
   */
  record Standing(
      Totals totals,
      List<SetupRow> rows,
      int loose,
      int notUnderstood,
      List<SetupMoves.Given> given,
      Optional<SlateDoubt> doubt) {
    /** So many setups that went to other sets are named. */
    private static final int NAMED = 4;

    Standing {
      rows = List.copyOf(rows);
    }

    /** What went to which set; empty where nothing did. */
    String givenWords(Texts texts) {
      if (given.isEmpty()) {
        return "";
      }
      var named =
          given.stream()
              .limit(NAMED)
              .map(
                  one ->
                      texts.get(
                          one.arrived() ? "board.given.to" : "board.given.onItsWay",
                          one.setup().code(),
                          one.to().name()))
              .toArray(String[]::new);
      var more = given.size() > NAMED ? texts.get("board.given.more", given.size() - NAMED) : "";
      return texts.get("board.given", texts.apart(texts.apart(named), more));
    }
  }

  /**
   * A board of the job.
   *
   * @param texts for the words that one may look for
   * @param heard hears of comments that came from elsewhere
   * @param answered hears what became of what a person did
   * @param failed hears of steps that could not be kept
   */
  BoardModel(
      ObservableValue<JobView> job,
      Steps steps,
      Texts texts,
      CommentsModel comments,
      Consumer<Comment> heard,
      Consumer<Answer> answered,
      Consumer<Throwable> failed) {
    this.job = job;
    this.steps = steps;
    this.texts = texts;
    this.comments = comments;
    this.heard = heard;
    this.answered = answered;
    this.failed = failed;
    this.order = new RunningOrder(steps, step -> answered.accept(new Answer.Taken(step)), failed);
    selected.addListener(
        (_, _, _) -> {
          chosen.set(selectedRow().isPresent());
          showSaid();
        });
    job.addListener(follow);
    comments.begin(job.getValue());
    take(job.getValue());
    now.get().onSet().or(() -> now.get().next().stream().findFirst()).ifPresent(this::select);
  }

  /** Stops following the job. */
  public void dispose() {
    job.removeListener(follow);
  }

  // What is shown

  /** The lines to show: filtered, and under their group's headings. */
  public ObservableList<Line> lines() {
    return shown.lines();
  }

  /** What is typed to find lines: each word must be found in the line. */
  public StringProperty filter() {
    return shown.filter();
  }

  /** What the lines are grouped by. */
  public ObjectProperty<Grouping> grouping() {
    return shown.grouping();
  }

  /** The code of the chosen setup; empty for none. */
  public StringProperty selected() {
    return selected;
  }

  /** The job as it is shown. */
  JobView job() {
    return job.getValue();
  }

  /** How far the job is. */
  ReadOnlyObjectProperty<Standing> standing() {
    return standing.getReadOnlyProperty();
  }

  /** The list in numbers. */
  public Totals totals() {
    return standing.get().totals();
  }

  /** What is on set, its last frames and what comes next; changes once for all three. */
  ReadOnlyObjectProperty<Now> now() {
    return now.getReadOnlyProperty();
  }

  /** What was said of what the page shows. */
  ReadOnlyObjectProperty<SaidNow> said() {
    return said.getReadOnlyProperty();
  }

  /** Which of the last frames of the setup on set is looked at; a new one is by itself. */
  LookedAt looked() {
    return looked;
  }

  /** Whether a setup is chosen. */
  public ReadOnlyBooleanProperty chosen() {
    return chosen.getReadOnlyProperty();
  }

  /** The chosen setup. */
  public Optional<SetupRow> selectedRow() {
    return row(selected.get());
  }

  /** The setup of that code. */
  public Optional<SetupRow> row(String code) {
    return rows.stream().filter(row -> row.code().equals(code)).findFirst();
  }

  /** How long the setup on set has been there, by the job's time; never below zero. */
  public Optional<Duration> timeOnSet(Instant now) {
    return job.getValue()
        .state()
        .onSet()
        .map(set -> Duration.between(set.since(), now))
        .map(time -> time.isNegative() ? Duration.ZERO : time);
  }

  /** Where the chosen line stands among those shown, or -1. */
  public int selectedIndex() {
    for (var i = 0; i < lines().size(); i++) {
      if (lines().get(i) instanceof SetupRow row && row.code().equals(selected.get())) {
        return i;
      }
    }
    return -1;
  }

  // What people do

  /** Chooses a setup. */
  public void select(SetupRow row) {
    selected.set(row.code());
  }

  /** Chooses the setup on set, making it visible if the filter hides it. */
  public void selectOnSet() {
    now.get().onSet().ifPresent(this::goTo);
  }

  /** Chooses a setup by its code, making it visible if the filter hides it. */
  void goTo(String code) {
    row(code).ifPresent(this::goTo);
  }

  private void goTo(SetupRow row) {
    if (!shown.matches(row)) {
      filter().set("");
    }
    select(row);
  }

  /** Moves the choice by a number of setups, over headings, within what is shown. */
  public void step(int by) {
    var seen = shown.shownRows();
    if (seen.isEmpty()) {
      return;
    }
    var at = seen.stream().map(SetupRow::code).toList().indexOf(selected.get());
    select(seen.get(at < 0 ? 0 : Math.clamp((long) at + by, 0, seen.size() - 1)));
  }

  /** Puts the chosen setup on set. */
  public void putOnSet() {
    selectedRow()
        .filter(row -> row.state() != SetupState.ON_SET)
        .ifPresent(row -> tick(row, SetupState.ON_SET, firstView(row)));
  }

  /** Puts the setup of that code on set, and chooses it. */
  public void putOnSet(String code) {
    row(code)
        .filter(row -> row.state() != SetupState.ON_SET)
        .ifPresent(
            row ->
                take(
                    new Step.Ticked(row.code(), SetupState.ON_SET, firstView(row)),
                    () -> select(row)));
  }

  /** The first wanted view that lacks frames, else the first, is before the camera. */
  private static MarkDetails firstView(SetupRow row) {
    var wanted = wantedViews(row);
    return wanted.stream()
        .filter(count -> !count.complete())
        .findFirst()
        .or(() -> wanted.stream().findFirst())
        .map(count -> MarkDetails.NONE.andView(count.code()))
        .orElse(MarkDetails.NONE);
  }

  /** The wanted views of which a setup has no frame. */
  List<String> withoutFrames(SetupRow row) {
    return ViewCount.without(row.setup(), row.views());
  }

  private static List<ViewCount> wantedViews(SetupRow row) {
    return row.views().stream()
        .filter(count -> row.setup().view(count.code()).isPresent())
        .toList();
  }

  /** The setup on set is shot, and the next one goes on set and is chosen. */
  public void shotAndNext() {
    var marks = new ArrayList<Mark>();
    now.get()
        .onSet()
        .ifPresent(row -> marks.add(new Mark(row.code(), SetupState.SHOT, MarkDetails.NONE)));
    var following = now.get().next().stream().findFirst();
    following.ifPresent(row -> marks.add(new Mark(row.code(), SetupState.ON_SET, firstView(row))));
    if (!marks.isEmpty()) {
      take(new Step.Ticked(marks), () -> following.ifPresent(this::select));
    }
  }

  /** The chosen setup is shot; nothing else goes on set. */
  public void shot() {
    selectedRow().ifPresent(row -> tick(row, SetupState.SHOT, MarkDetails.NONE));
  }

  /** The client agrees with a setup. */
  public void signOff(String code, String by) {
    row(code).ifPresent(row -> tick(row, SetupState.SIGNED_OFF, MarkDetails.by(by)));
  }

  /** The chosen setup is to be shot again. */
  public void pickup(String reason) {
    selectedRow()
        .ifPresent(row -> tick(row, SetupState.PICKUP, MarkDetails.NONE.andReason(reason)));
  }

  /** The chosen setup is no longer wanted. */
  public void drop(String reason) {
    selectedRow()
        .ifPresent(row -> tick(row, SetupState.DROPPED, MarkDetails.NONE.andReason(reason)));
  }

  /** The chosen setup is to be shot, as if nothing had been ticked. */
  public void toShoot() {
    selectedRow().ifPresent(row -> tick(row, SetupState.TO_SHOOT, MarkDetails.NONE));
  }

  /** Undoes the last step. */
  public void undo() {
    steps.undo(
        step -> {
          chooseAfter(step);
          answered.accept(new Answer.Undone(step));
        },
        failed);
  }

  /** Does again what was undone last. */
  public void redo() {
    steps.redo(
        step -> {
          if (step.isPresent()) {
            chooseAfter(step);
          }
          answered.accept(new Answer.Redone(step));
        },
        failed);
  }

  /** A setup comes into the list behind the chosen one, and is chosen. */
  void add(Setup setup) {
    take(
        new Step.Added(setup, selectedRow().map(SetupRow::code)), () -> selected.set(setup.code()));
  }

  /** The list says something else of a setup. */
  public void change(Setup setup) {
    take(new Step.Changed(setup), () -> {});
  }

  /** After ticks the one on set is chosen, after a change of the list the one that it was about. */
  private void chooseAfter(Optional<Step> step) {
    var about =
        step.flatMap(
            one ->
                switch (one) {
                  case Step.Ticked _, Step.Ordered _ -> Optional.<String>empty();
                  case Step.Moved moved -> Optional.of(moved.moved());
                  case Step.Added added -> Optional.of(added.setup().code());
                  case Step.Changed changed -> Optional.of(changed.setup().code());
                  case Step.Commented commented -> Optional.of(commented.setup());
                  case Step.Selected _,
                      Step.Rated _,
                      Step.Placed _,
                      Step.SaidOfSlate _,
                      Step.Followed _ ->
                      Optional.<String>empty();
                });
    about.flatMap(this::row).or(() -> now.get().onSet()).ifPresent(this::select);
  }

  /** Another of the wanted views of the setup on set comes before the camera. */
  public void turnView(int by) {
    var set = job.getValue().state().onSet();
    var row = now.get().onSet();
    if (set.isEmpty() || row.isEmpty() || row.get().setup().views().isEmpty()) {
      return;
    }
    var views = row.get().setup().views();
    var inFront = set.flatMap(OnSet::view).orElse("");
    var at = -1;
    for (var i = 0; i < views.size(); i++) {
      if (views.get(i).code().equalsIgnoreCase(inFront)) {
        at = i;
      }
    }
    var to = at < 0 ? (by > 0 ? 0 : views.size() - 1) : Math.floorMod(at + by, views.size());
    tick(row.get(), SetupState.ON_SET, MarkDetails.NONE.andView(views.get(to).code()));
  }

  /** That view of the setup on set comes before the camera. */
  public void bringView(String code) {
    now.get()
        .onSet()
        .filter(row -> row.views().stream().anyMatch(view -> view.code().equals(code)))
        .filter(row -> row.inFront().filter(code::equalsIgnoreCase).isEmpty())
        .ifPresent(row -> tick(row, SetupState.ON_SET, MarkDetails.NONE.andView(code)));
  }

  /** Moves the chosen setup up or down in the running order, past the line that is seen there. */
  public void move(int by) {
    var seen = shown.shownRows().stream().map(SetupRow::code).toList();
    order
        .neighbour(
            selected.get(), by, grouping().get() == Grouping.NONE ? order.among(rows, seen) : seen)
        .ifPresent(beside -> moveBeside(selected.get(), beside, by > 0));
  }

  /** Puts a setup right before another in the running order, or right behind it, and chooses it. */
  public void moveBeside(String code, String beside, boolean behind) {
    if (order.moveBeside(rows, code, beside, behind)) {
      selected.set(code);
    }
  }

  /** Puts the chosen setup right behind the one on set, so that it comes next. */
  public void bringNext() {
    order.bringBehind(rows, selected.get(), now.get().onSet().map(SetupRow::code));
  }

  /** Gives what is left another order, as a whole. */
  void order(List<String> codes) {
    take(new Step.Ordered(codes), () -> {});
  }

  /** Groups by the next thing that the list has. */
  public void regroup() {
    shown.regroup();
  }

  private void tick(SetupRow row, SetupState state, MarkDetails details) {
    take(new Step.Ticked(row.code(), state, details), () -> {});
  }

  /** Something is said of a setup. */
  void comment(String code, String text, String by) {
    comment(code, List.of(), text, by);
  }

  /** Something is said of a frame of the setup on set. */
  void comment(Frame frame, String text, String by) {
    now.get().onSet().ifPresent(row -> comment(row.code(), List.of(frame), text, by));
  }

  private void comment(String code, List<Frame> frames, String text, String by) {
    take(new Step.Commented(code, Step.Frames.of(frames), text, by), () -> {});
  }

  /** A frame by its view and its name. */
  String called(Frame frame) {
    return comments.called(frame, job.getValue());
  }

  /** Somebody has seen what was said of the setups that the page shows. */
  void seeComments() {
    var shown =
        Stream.concat(now.get().onSet().map(SetupRow::code).stream(), Stream.of(selected.get()))
            .toList();
    if (comments.see(shown)) {
      take(job.getValue());
    }
  }

  /** Follows the slate that contradicts what is on set. */
  void followSlate() {
    standing
        .get()
        .doubt()
        .ifPresent(
            doubt -> take(new Step.Followed(doubt, System.getProperty("user.name", "")), () -> {}));
  }

  private void take(Step step, Runnable then) {
    steps.take(
        step,
        () -> {
          then.run();
          answered.accept(new Answer.Taken(step));
        },
        failed);
  }

  // From the job to the lines

  private void take(JobView view) {
    var came = comments.take(view);
    rows = renewed(view);
    var set = view.state().onSet().flatMap(on -> row(on.setup()));
    var latest = set.map(row -> view.latest().getOrDefault(row.code(), List.of()));
    var ahead = ahead(set);
    markNext(ahead);
    var fresh = new Now(set, latest.orElse(List.of()), ahead, rows.isEmpty());
    if (!fresh.equals(now.get())) {
      now.set(fresh);
    }
    looked.show(set.map(SetupRow::code).orElse(""), fresh.latest(), _ -> Optional.empty());
    standing.set(
        new Standing(
            Totals.of(rows),
            rows,
            view.tally().unassigned().size(),
            view.scan().notUnderstood().size(),
            view.moves().given(),
            view.tally().slates().doubts().stream()
                .filter(SlateDoubt::lasts)
                .reduce((_, later) -> later)));
    shown.show(rows);
    chosen.set(selectedRow().isPresent());
    showSaid();
    came.forEach(heard);
  }

  private void showSaid() {
    var view = job.getValue();
    var set = now.get().onSet().map(SetupRow::code);
    var fresh =
        new SaidNow(
            set.map(code -> comments.said(code, view)).orElse(List.of()),
            selectedRow()
                .map(SetupRow::code)
                .filter(code -> !Optional.of(code).equals(set))
                .map(code -> comments.said(code, view))
                .orElse(List.of()));
    if (!fresh.equals(said.get())) {
      said.set(fresh);
    }
  }

  private void markNext(List<SetupRow> ahead) {
    var next = ahead.isEmpty() ? "" : ahead.getFirst().code();
    for (var i = 0; i < rows.size(); i++) {
      var row = rows.get(i);
      rows.set(i, row.withComesNext(row.code().equals(next)));
    }
  }

  /** The rows of now; those that did not change stay the same objects. */
  private List<SetupRow> renewed(JobView now) {
    var setups = now.list().setups();
    var before = before(setups);
    var renewed = new ArrayList<SetupRow>(setups.size());
    for (var i = 0; i < setups.size(); i++) {
      var setup = setups.get(i);
      renewed.add(SetupRow.of(setup, now, comments.count(setup.code()), texts, before.get(i)));
    }
    return renewed;
  }

  /**
   * The row of a moment ago of each setup, null for one that is new; mostly they are as they lie.
   */
  private List<SetupRow> before(List<Setup> setups) {
    if (areOf(setups)) {
      return rows;
    }
    var byCode = HashMap.<String, SetupRow>newHashMap(rows.size());
    rows.forEach(row -> byCode.put(row.code(), row));
    return setups.stream().map(setup -> byCode.get(setup.code())).toList();
  }

  private boolean areOf(List<Setup> setups) {
    if (setups.size() != rows.size()) {
      return false;
    }
    for (var i = 0; i < setups.size(); i++) {
      if (!Objects.equals(setups.get(i), rows.get(i).setup())) {
        return false;
      }
    }
    return true;
  }

  /** Round the list from the one on set: what was never shot, then what is to be shot again. */
  private List<SetupRow> ahead(Optional<SetupRow> set) {
    var from = set.map(rows::indexOf).orElse(-1) + 1;
    var ahead = new ArrayList<SetupRow>();
    for (var state : List.of(SetupState.TO_SHOOT, SetupState.PICKUP)) {
      for (var i = 0; i < rows.size() && ahead.size() < AHEAD; i++) {
        var row = rows.get((from + i) % rows.size());
        if (row.state() == state) {
          ahead.add(row);
        }
      }
    }
    return List.copyOf(ahead);
  }
}
