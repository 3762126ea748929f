package org.framewright.ui.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.util.Subscription;
import org.framewright.base.ByteSizes;
import org.framewright.handoff.Extent;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Room;
import org.framewright.handoff.Withheld;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.job.JobException;
import org.framewright.job.SetupRange;
import org.framewright.live.JobView;
import org.framewright.report.Letterhead;
import org.framewright.shotlist.Setup;
import org.framewright.ui.handoff.Asked.Basis;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/** What goes to the retoucher: planned anew with each answer of a person, written when asked to. */
final class HandOffModel {
  private final JobSession session;
  private final Tasks tasks;
  private final Texts texts;
  private final Supplier<Studio.Reading> studio;
  private final UnaryOperator<String> wayTo;
  private final Consumer<Throwable> trouble;

  private final ObjectProperty<Basis> basis = new SimpleObjectProperty<>(Basis.SELECTS);
  private final IntegerProperty rating = new SimpleIntegerProperty(4);
  private final StringProperty label = new SimpleStringProperty("");
  private final ObjectProperty<Optional<ClientListModel.Named>> list =
      new SimpleObjectProperty<>(Optional.empty());
  private final StringProperty setups = new SimpleStringProperty("");
  private final ObjectProperty<Extent.Pictures> pictures =
      new SimpleObjectProperty<>(Extent.Pictures.ALL);
  private final BooleanProperty onlyNew = new SimpleBooleanProperty(false);
  private final BooleanProperty slates = new SimpleBooleanProperty(false);
  private final ReadOnlyBooleanWrapper hasSlates = new ReadOnlyBooleanWrapper(false);
  private final StringProperty split = new SimpleStringProperty("");
  private final ObjectProperty<MetadataMode> metadata =
      new SimpleObjectProperty<>(MetadataMode.SIDECAR);
  private final BooleanProperty overwrite = new SimpleBooleanProperty(false);
  private final BooleanProperty sheet = new SimpleBooleanProperty(false);
  private final BooleanProperty table = new SimpleBooleanProperty(false);
  private final ObjectProperty<Path> place = new SimpleObjectProperty<>();
  private final StringProperty name = new SimpleStringProperty("");

  private final ReadOnlyObjectWrapper<Optional<Looked>> looked =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObservableList<GoingLine> lines = FXCollections.observableArrayList();
  private final BooleanProperty current = new SimpleBooleanProperty(false);
  private final ReadOnlyObjectWrapper<Optional<Running>> running =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Ended>> ended =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Newest<Work, Looked> planning;
  private final BooleanBinding ready;
  private Subscription following = Subscription.EMPTY;
  private long handOffs;

  /** What was asked, of the job as it was then. */
  private record Work(Asked asked, JobView view, Map<Withheld.Tool, String> pages) {}

  /**
   * @param studio what the settings say of the studio
   * @param wayTo how one gets to a page of that id, in words
   */
  HandOffModel(
      JobSession session,
      Tasks tasks,
      Texts texts,
      Supplier<Studio.Reading> studio,
      UnaryOperator<String> wayTo,
      Consumer<Throwable> trouble) {
    this.session = session;
    this.tasks = tasks;
    this.texts = texts;
    this.studio = studio;
    this.wayTo = wayTo;
    this.trouble = trouble;
    planning = new Newest<>(tasks, this::look, this::show, trouble);
    for (var asked :
        List.of(
            basis, rating, label, list, setups, pictures, onlyNew, slates, split, metadata, sheet,
            table, place, name)) {
      asked.addListener(_ -> answered());
    }
    ready =
        Bindings.createBooleanBinding(
            () ->
                current.get()
                    && running.get().isEmpty()
                    && looked.get().filter(Looked::isSound).isPresent(),
            current,
            running,
            looked);
  }

  /** By what frames are chosen. */
  ObjectProperty<Basis> basis() {
    return basis;
  }

  /** The least rating, from 1 to 5. */
  IntegerProperty rating() {
    return rating;
  }

  /** The label that frames shall have. */
  StringProperty label() {
    return label;
  }

  /** The client's list, once it is settled. */
  ObjectProperty<Optional<ClientListModel.Named>> list() {
    return list;
  }

  /** The setups whose frames go; all where it is blank. */
  StringProperty setups() {
    return setups;
  }

  /** Which pictures of each frame go. */
  ObjectProperty<Extent.Pictures> pictures() {
    return pictures;
  }

  /** Whether what went before stays. */
  BooleanProperty onlyNew() {
    return onlyNew;
  }

  /** Whether the slates of the setups go along. */
  BooleanProperty slates() {
    return slates;
  }

  /** Whether the job has slates, so that one can ask for them. */
  ReadOnlyBooleanProperty hasSlates() {
    return hasSlates.getReadOnlyProperty();
  }

  /** How large a package may be; as large as it is where it is blank. */
  StringProperty split() {
    return split;
  }

  /** Where the package says what the job knows. */
  ObjectProperty<MetadataMode> metadata() {
    return metadata;
  }

  /** Whether the job's data prevail over what somebody wrote. */
  BooleanProperty overwrite() {
    return overwrite;
  }

  /** Whether a contact sheet of what goes lies in the package. */
  BooleanProperty sheet() {
    return sheet;
  }

  /** Whether a list of what goes lies in the package. */
  BooleanProperty table() {
    return table;
  }

  /** The folder in which the package is made. */
  ObjectProperty<Path> place() {
    return place;
  }

  /** What the package is called; the usual name where it is blank. */
  StringProperty name() {
    return name;
  }

  /** What would go. */
  ReadOnlyObjectProperty<Optional<Looked>> looked() {
    return looked.getReadOnlyProperty();
  }

  /** The frames that would go, and those that would not. */
  ObservableList<GoingLine> lines() {
    return lines;
  }

  /** Whether what is shown is what is asked. */
  BooleanProperty current() {
    return current;
  }

  /** The hand-off under way. */
  ReadOnlyObjectProperty<Optional<Running>> running() {
    return running.getReadOnlyProperty();
  }

  /** How the last hand-off ended, until another thing is asked. */
  ReadOnlyObjectProperty<Optional<Ended>> ended() {
    return ended.getReadOnlyProperty();
  }

  /** Whether it can be handed off now. */
  BooleanBinding ready() {
    return ready;
  }

  /** Plans anew whenever the job changes, from now on. */
  void follow() {
    following.unsubscribe();
    following =
        session
            .view()
            .subscribe(
                now -> {
                  hasSlates.set(!now.tally().slates().frames().isEmpty());
                  look();
                });
  }

  /** Until {@link #follow}. */
  void pause() {
    following.unsubscribe();
  }

  /** Where packages went last, or beside the job. */
  void startAt(Optional<Path> last) {
    tasks.quietly(
        () -> last.filter(Files::isDirectory).orElse(session.job().folder().getParent()),
        place::set,
        trouble);
  }

  /** Chooses by the job's selects, as on the page of frames. */
  void askForSelects() {
    putAway();
    basis.set(Basis.SELECTS);
  }

  /** Chooses by a client's list that is settled. */
  void askFor(ClientListModel.Named settled) {
    putAway();
    list.set(Optional.of(settled));
    basis.set(Basis.LISTED);
  }

  /** Turns from how the last hand-off ended to what would go next. */
  void putAway() {
    ended.set(Optional.empty());
  }

  /** A person asks for something else than what was handed off last. */
  private void answered() {
    if (running.get().isEmpty()) {
      ended.set(Optional.empty());
    }
    look();
  }

  private void look() {
    current.set(false);
    if (running.get().isEmpty()) {
      planning.offer(
          new Work(
              asked(),
              session.view().get(),
              Map.of(
                  Withheld.Tool.RENAMING, wayTo.apply("names"),
                  Withheld.Tool.CHECKING, wayTo.apply("convention"))));
    }
  }

  private Asked asked() {
    return new Asked(
        basis.get(),
        rating.get(),
        label.get(),
        list.get(),
        setups.get(),
        pictures.get(),
        onlyNew.get(),
        slates.get() && hasSlates.get(),
        split.get(),
        metadata.get(),
        new WantedPapers(sheet.get(), table.get()),
        Optional.ofNullable(place.get()),
        name.get(),
        session.view().get().revision() + handOffs);
  }

  private void show(Looked now) {
    looked.set(Optional.of(now));
    lines.setAll(now.lines());
    current.set(now.of().equals(asked()));
  }

  // In the background

  private Looked look(Work work) {
    var asked = work.asked();
    var labels =
        work.view().scan().distinct().stream()
            .flatMap(frame -> frame.capture().label().stream())
            .distinct()
            .sorted()
            .toList();
    var usual = "";
    try {
      usual = session.job().name() + "_hand-off_" + HandOff.nextNumber(session.job());
      var planned = planned(work);
      var most = most(asked.split());
      if (most.isEmpty() && !asked.split().isBlank()) {
        return new Looked(
            asked,
            List.of(planned),
            lines(List.of(planned), work),
            usual,
            Optional.empty(),
            Optional.empty(),
            labels,
            Optional.of(remark("handoff.problem.split")));
      }
      var parts = most.isEmpty() ? List.of(planned) : planned.parts(most.getAsLong());
      return placed(work, parts, usual, labels, most);
    } catch (IOException | JobException e) {
      return new Looked(
          asked,
          List.of(),
          List.of(),
          usual,
          Optional.empty(),
          Optional.empty(),
          labels,
          Remark.foreseen(e).map(problem -> Remark.of(problem, texts)));
    }
  }

  private Looked placed(
      Work work, List<HandOffPlan> parts, String usual, List<String> labels, OptionalLong most)
      throws IOException, JobException {
    var asked = work.asked();
    var called = asked.name().isBlank() ? usual : asked.name().strip();
    var target = asked.place().flatMap(at -> PackageNames.inside(at, called));
    Optional<Remark> problem =
        tooLarge(parts, most)
            .or(() -> target.isEmpty() ? Optional.of(nowhere(asked)) : Optional.empty());
    var handOff = handOff(work);
    var room =
        target.isPresent() && !parts.getFirst().selects().isEmpty()
            ? Optional.of(
                handOff
                    .enclosing(asked.papers().of(session.job(), Letterhead.NONE, texts.locale()))
                    .room(parts, target.get(), asked.metadata()))
            : Optional.<Room>empty();
    if (problem.isEmpty()) {
      problem =
          handOff
              .problemAt(target.orElseThrow())
              .or(() -> room.flatMap(Room::lack))
              .map(found -> Remark.of(found, texts));
    }
    return new Looked(asked, parts, lines(parts, work), usual, target, room, labels, problem);
  }

  private List<GoingLine> lines(List<HandOffPlan> parts, Work work) {
    return GoingLine.of(parts, texts, work.pages());
  }

  private HandOff handOff(Work work) throws JobException {
    var asked = work.asked();
    return asked.basis() == Basis.LISTED && asked.list().isPresent()
        ? asked.list().get().handOff()
        : HandOff.of(session.job(), work.view().scan(), work.view().tally());
  }

  private HandOffPlan planned(Work work) throws IOException, JobException {
    var asked = work.asked();
    var job = session.job();
    var codes =
        SetupRange.setups(job, SetupRange.words(job, asked.setups())).stream()
            .map(Setup::code)
            .toList();
    var handOff =
        handOff(work).within(new Extent(codes, asked.pictures(), asked.onlyNew(), asked.slates()));
    return switch (asked.basis()) {
      case SELECTS -> handOff.selects();
      case RATED -> handOff.rated(asked.rating());
      case LABELLED -> handOff.labelled(asked.label());
      case EVERY -> handOff.every();
      case LISTED ->
          asked.list().isPresent()
              ? handOff.named(asked.list().get().names())
              : new HandOffPlan("", List.of(), List.of(), new TreeMap<>());
    };
  }

  private static OptionalLong most(String typed) {
    return ByteSizes.read(typed);
  }

  private Optional<Remark> tooLarge(List<HandOffPlan> parts, OptionalLong most) {
    return most.isEmpty()
        ? Optional.empty()
        : parts.stream()
            .filter(part -> part.bytes() > most.getAsLong())
            .findFirst()
            .map(
                part ->
                    new Remark(
                        texts.get(
                            "handoff.problem.large",
                            part.selects().getFirst().original(),
                            texts.formats().size(part.bytes())),
                        texts.get("handoff.problem.large.remedy")));
  }

  private Remark nowhere(Asked asked) {
    return remark(asked.place().isEmpty() ? "handoff.problem.place" : "handoff.problem.name");
  }

  private Remark remark(String key) {
    return new Remark(texts.get(key), texts.get(key + ".remedy"));
  }

  // Handing off

  /** Writes the packages. */
  void deliver() {
    if (!ready.get()) {
      return;
    }
    var papers = new WantedPapers(sheet.get(), table.get());
    switch (metadata.get() == MetadataMode.NONE && papers.isNone()
        ? new Studio.Reading.Sound(Studio.NOTHING)
        : studio.get()) {
      case Studio.Reading.Sound sound -> deliver(sound.studio(), papers);
      case Studio.Reading.Faulty faulty ->
          ended.set(Optional.of(Ended.before(faulty.problem(), texts)));
    }
  }

  private void deliver(Studio said, WantedPapers papers) {
    var options =
        metadata.get() == MetadataMode.NONE
            ? MetadataOptions.NONE
            : new MetadataOptions(metadata.get(), overwrite.get(), said);
    var now = looked.get().orElseThrow();
    var view = session.view().get();
    var job = session.job();
    ended.set(Optional.empty());
    var task =
        tasks.run(
            texts.get("handoff.handing", now.selects()),
            steps ->
                switch (papers.letterhead(said)) {
                  case Letterhead.Reading.Faulty faulty -> Ended.before(faulty.problem(), texts);
                  case Letterhead.Reading.Sound sound ->
                      Ended.of(
                          HandOff.of(job, view.scan(), view.tally())
                              .enclosing(papers.of(job, sound.letterhead(), texts.locale()))
                              .deliver(now.parts(), now.target().orElseThrow(), options, steps),
                          job,
                          texts);
                },
            result ->
                over(result, now.target().flatMap(at -> Optional.ofNullable(at.getFileName()))),
            this::failed);
    if (!task.finished().get()) {
      running.set(Optional.of(task));
    }
  }

  private void failed(Throwable failure) {
    var problem = Remark.foreseen(failure);
    if (problem.isEmpty()) {
      running.set(Optional.empty());
      trouble.accept(failure);
      look();
    } else {
      over(Ended.before(problem.get(), texts), Optional.empty());
    }
  }

  private void over(Ended result, Optional<Path> called) {
    running.set(Optional.empty());
    handOffs++;
    if (result.isWhole()) {
      // The next one has the next number.
      name.set("");
    } else if (!result.packages().isEmpty()) {
      // The same again goes on behind those that are in their place.
      called.ifPresent(it -> name.set(it.toString()));
    }
    if (result.isWhole() && basis.get() == Basis.LISTED) {
      list.set(Optional.empty());
      basis.set(Basis.SELECTS);
    }
    ended.set(Optional.of(result));
    look();
  }

  /** Asks the hand-off to stop; nothing is left of the package that is being written. */
  void stop() {
    running.get().ifPresent(Running::cancel);
  }

  /** The folders that a person may look at: of the last hand-off, or where the next will be. */
  Stream<Path> folders() {
    return ended.get().stream().flatMap(end -> end.packages().stream()).map(Ended.Handed::folder);
  }
}
