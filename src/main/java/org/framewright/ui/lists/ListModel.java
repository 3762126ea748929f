package org.framewright.ui.lists;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.util.Subscription;
import org.framewright.base.PlainText;
import org.framewright.live.JobView;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.WayOn;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Tasks;

/**
 * A client's list before it is taken: how it is read, which a person may change, and what it
 * changes. It is read in the background; of many requests the newest is shown. The job stays as it
 * is until the list is taken.
 */
final class ListModel {
  private final JobSession session;
  private final Texts texts;
  private final Consumer<Throwable> trouble;
  private final List<Use> uses;
  private final ListWords words;
  private final Asking asking;
  private final Subscription following;

  private final ReadOnlyObjectWrapper<Looked> looked = new ReadOnlyObjectWrapper<>(Looked.NOTHING);
  private final ReadOnlyIntegerWrapper accepted = new ReadOnlyIntegerWrapper();
  private final SimpleBooleanProperty taking = new SimpleBooleanProperty();
  private final BooleanBinding canTake;

  /** The setups that are not to be taken, by their canonical keys. */
  private final Set<String> left = new HashSet<>();

  private ShotList ofJob;

  /**
   * @param tasks where lists are read
   */
  ListModel(JobSession session, Tasks tasks, Texts texts, Consumer<Throwable> trouble) {
    this.session = session;
    this.texts = texts;
    this.trouble = trouble;
    this.uses = Use.all(session.job().listFields(), texts);
    this.ofJob = session.view().get().list();
    this.words = new ListWords(texts, uses);
    this.asking = new Asking(session.job(), tasks, this::answered, trouble);
    this.canTake =
        Bindings.createBooleanBinding(
            () ->
                looked.get().isRead()
                    && looked.get().understood().isPresent()
                    && (accepted.get() > 0 || isReordered())
                    && !taking.get(),
            looked,
            accepted,
            taking);
    this.following = session.view().subscribe(this::jobIs);
  }

  /** The list as it is looked at. */
  ReadOnlyObjectProperty<Looked> looked() {
    return looked.getReadOnlyProperty();
  }

  /** How many setups are to be taken. */
  ReadOnlyIntegerProperty accepted() {
    return accepted.getReadOnlyProperty();
  }

  /** Whether there is something to take, and it is known what. */
  BooleanBinding canTake() {
    return canTake;
  }

  /** What a column may be. */
  List<Use> uses() {
    return uses;
  }

  // What a person says

  /** Looks at a list, at first as an earlier one of its headings was read. */
  void open(Path file) {
    left.clear();
    looked.set(Looked.at(file));
    ask(ListOptions.NONE, ListOptions.NONE, true);
  }

  /** A column is this. */
  void choose(String heading, Use use) {
    askAlone(use.in(looked.get().options(), heading));
  }

  /** A column is what the reader finds. */
  void letBeFound(String heading) {
    askAlone(looked.get().options().without(heading));
  }

  /** The list stands in this sheet; what was said of columns holds for those that it has, too. */
  void chooseSheet(String name) {
    if (!name.equals(sheet())) {
      ask(ListOptions.ofSheet(name), looked.get().options(), true);
    }
  }

  /** It is written so; none if that is to be found. */
  void chooseEncoding(Optional<String> name) {
    if (!name.equals(looked.get().options().encoding())) {
      ask(
          name.map(ListOptions::ofEncoding).orElse(ListOptions.NONE),
          looked.get().options(),
          name.isPresent());
    }
  }

  /** Lines with the same in this column are one setup; none if each line is one. */
  void chooseOneSetupPer(Optional<String> heading) {
    if (!heading.equals(oneSetupPer())) {
      askAlone(looked.get().options().withOneSetupPer(heading.orElse("")));
    }
  }

  /** Takes a way that was offered. */
  void choose(WayOn way) {
    askAlone(way.options());
  }

  /** Leaves aside all that was said, and what was said of earlier lists. */
  void readAfresh() {
    askAlone(ListOptions.NONE);
  }

  /** Reads the file once more: somebody changed it. */
  void readAgain() {
    askAlone(looked.get().options());
  }

  /** Looks at it no more; the job is as it was. */
  void cancel() {
    asking.withdraw();
    left.clear();
    looked.set(Looked.NOTHING);
    accepted.set(0);
  }

  private void askAlone(ListOptions options) {
    ask(options, ListOptions.NONE, false);
  }

  private void ask(ListOptions options, ListOptions carried, boolean asBefore) {
    looked
        .get()
        .file()
        .ifPresent(
            file -> {
              looked.set(looked.get().asking(options));
              offer(file, options, carried, asBefore, Optional.empty());
            });
  }

  private void offer(
      Path file,
      ListOptions options,
      ListOptions carried,
      boolean asBefore,
      Optional<ListReading> again) {
    asking.ask(new Asking.Request(file, options, carried, asBefore, again, session.view().get()));
  }

  /** The job's list changed meanwhile: what this one changes is another. */
  private void jobIs(JobView now) {
    if (now.list().equals(ofJob)) {
      return;
    }
    ofJob = now.list();
    compareAnew();
  }

  private void compareAnew() {
    var shown = looked.get();
    if (shown.isRead() && shown.understood().isPresent() && !taking.get()) {
      offer(shown.file().orElseThrow(), shown.options(), ListOptions.NONE, false, shown.reading());
    }
  }

  private void answered(Asking.Answer answer) {
    answer
        .reading()
        .ifPresentOrElse(
            reading ->
                looked.set(looked.get().read(reading, answer.change(), answer.differences())),
            () -> looked.set(looked.get().failed()));
    count();
    answer.failure().ifPresent(trouble);
    if (!answer.request().request().job().list().equals(ofJob)) {
      compareAnew();
    }
  }

  private void count() {
    accepted.set((int) differences().stream().filter(this::isTaken).count());
  }

  // What is shown

  private List<ResultLine.Difference> differences() {
    return looked.get().differences();
  }

  boolean isReordered() {
    return looked.get().change().filter(ListChange::reordered).isPresent();
  }

  /** The columns of the file. */
  List<ColumnLine> columns() {
    return words.columns(looked.get());
  }

  /** The heading of a column as the list has it. */
  Optional<String> heading(int place) {
    return looked
        .get()
        .reading()
        .filter(reading -> place >= 0 && place < reading.columns().size())
        .map(reading -> reading.columns().get(place).heading());
  }

  /** What comes of the list. */
  List<ResultLine> results() {
    return looked.get().results();
  }

  /** What is so, in a sentence. */
  String verdict() {
    return words.verdict(looked.get());
  }

  /** Whether somebody has to do something before it can be taken. */
  boolean needsAPerson() {
    return looked.get().isRead() && looked.get().understood().isEmpty();
  }

  /** How an earlier list was read, where this one was read so, too. */
  Optional<String> asBefore() {
    return looked
        .get()
        .reading()
        .filter(_ -> looked.get().isRead())
        .flatMap(reading -> reading.as().before())
        .map(before -> PlainText.line(texts.what(before.problem())));
  }

  /** The sheets to choose from; none where there is one at most. */
  List<String> sheets() {
    return looked
        .get()
        .reading()
        .map(
            reading -> {
              var sheets = new ArrayList<>(reading.source().sheets());
              // One that is hidden, or that is not there.
              reading.source().sheet().filter(one -> !sheets.contains(one)).ifPresent(sheets::add);
              return sheets;
            })
        .filter(sheets -> sheets.size() > 1)
        .<List<String>>map(List::copyOf)
        .orElse(List.of());
  }

  String sheet() {
    return looked.get().reading().flatMap(reading -> reading.source().sheet()).orElse("");
  }

  /** The encoding of a text as it was read; none for a workbook. */
  Optional<String> encoding() {
    return looked.get().reading().flatMap(reading -> reading.source().encoding());
  }

  /** The column whose equal cells make lines one setup. */
  Optional<String> oneSetupPer() {
    return looked.get().options().merging();
  }

  /** Whether lines may belong together: it was offered, or chosen. */
  boolean mayBeOneSetup() {
    return oneSetupPer().isPresent()
        || looked.get().options().oneSetupPer().isPresent()
        || looked
            .get()
            .refused()
            .filter(
                refused ->
                    refused.waysOn().stream().anyMatch(way -> way.options().merging().isPresent()))
            .isPresent();
  }

  // What is taken

  boolean isTaken(ResultLine.Difference line) {
    return line.canBeTaken() && !left.contains(Setup.canonicalKey(line.code()));
  }

  /** Takes a setup, or leaves it as it is in the job. */
  void take(ResultLine.Difference line, boolean isTaken) {
    if (!line.canBeTaken() || isTaken == isTaken(line)) {
      return;
    }
    if (isTaken) {
      left.remove(Setup.canonicalKey(line.code()));
    } else {
      left.add(Setup.canonicalKey(line.code()));
    }
    accepted.set(accepted.get() + (isTaken ? 1 : -1));
  }

  /** Takes all of them, or none. */
  void takeAll(boolean isTaken) {
    left.clear();
    if (!isTaken) {
      differences().stream()
          .filter(ResultLine.Difference::canBeTaken)
          .forEach(line -> left.add(Setup.canonicalKey(line.code())));
    }
    count();
  }

  /** How many there are to take. */
  OptionalInt takeable() {
    return looked.get().change().isEmpty()
        ? OptionalInt.empty()
        : OptionalInt.of(
            (int) differences().stream().filter(ResultLine.Difference::canBeTaken).count());
  }

  /**
   * Takes what is ticked into the job, and keeps how the list was read.
   *
   * @param done gets how many setups were taken
   */
  void take(Consumer<Integer> done) {
    if (!canTake.get()) {
      return;
    }
    var understood = looked.get().understood().orElseThrow();
    Set<String> codes =
        differences().stream()
            .filter(this::isTaken)
            .map(ResultLine.Difference::code)
            .collect(Collectors.toSet());
    taking.set(true);
    session.change(
        texts.get("lists.taking"),
        job -> {
          job.importList(understood.list(), codes);
          job.keepChoices(understood);
          return codes.size();
        },
        taken -> {
          taking.set(false);
          cancel();
          done.accept(taken);
        },
        failure -> {
          taking.set(false);
          trouble.accept(Objects.requireNonNull(failure));
        });
  }

  void dispose() {
    cancel();
    following.unsubscribe();
  }
}
