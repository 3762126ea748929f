package org.framewright.ui.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.handoff.ClientDelivery;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Returns;
import org.framewright.handoff.Withheld;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.report.Letterhead;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Steps;
import org.framewright.ui.task.Tasks;

/** What of that which came back goes to the client; planned anew with each answer of a person. */
final class ClientDeliveryModel {
  private final JobSession session;
  private final Tasks tasks;
  private final Texts texts;
  private final UnaryOperator<String> wayTo;
  private final Consumer<Throwable> trouble;
  private final BooleanProperty onlyNew = new SimpleBooleanProperty(false);
  private final BooleanProperty withFindings = new SimpleBooleanProperty(false);
  private final BooleanProperty sheet = new SimpleBooleanProperty(false);
  private final BooleanProperty table = new SimpleBooleanProperty(false);
  private final ObjectProperty<Path> place = new SimpleObjectProperty<>();
  private final StringProperty name = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<Optional<Planned>> planned =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObservableList<GoingLine> lines = FXCollections.observableArrayList();
  private final BooleanProperty current = new SimpleBooleanProperty(false);
  private final Newest<Asking, Planned> planning;
  private final BooleanBinding ready;
  private Optional<Returns> returns = Optional.empty();

  /**
   * What a person answered.
   *
   * @param pages how one gets to the page of a tool, in words
   */
  private record Asking(
      Returns returns,
      boolean onlyNew,
      boolean withFindings,
      WantedPapers papers,
      Optional<Path> place,
      String name,
      Map<Withheld.Tool, String> pages) {}

  /**
   * What would be delivered; nothing is written.
   *
   * @param target none where there is no place for it
   */
  record Planned(
      Asking of,
      ClientDelivery delivery,
      HandOffPlan plan,
      List<GoingLine> lines,
      String usualName,
      Optional<Path> target) {

    /**
     * Writes the package.
     *
     * @param said what the settings say of the studio, for its papers
     */
    Ended deliver(JobSession session, Studio.Reading said, Texts texts, Steps steps)
        throws IOException {
      var papers = of.papers();
      return switch (papers.isNone() ? new Studio.Reading.Sound(Studio.NOTHING) : said) {
        case Studio.Reading.Faulty faulty -> Ended.before(faulty.problem(), texts);
        case Studio.Reading.Sound sound ->
            switch (papers.letterhead(sound.studio())) {
              case Letterhead.Reading.Faulty faulty -> Ended.before(faulty.problem(), texts);
              case Letterhead.Reading.Sound head -> {
                delivery.enclose(papers.of(session.job(), head.letterhead(), texts.locale()));
                yield Ended.of(
                    delivery.deliver(
                        List.of(plan), target.orElseThrow(), MetadataOptions.NONE, steps),
                    session.job(),
                    texts);
              }
            };
      };
    }
  }

  ClientDeliveryModel(
      JobSession session,
      Tasks tasks,
      Texts texts,
      UnaryOperator<String> wayTo,
      Consumer<Throwable> trouble) {
    this.session = session;
    this.tasks = tasks;
    this.texts = texts;
    this.wayTo = wayTo;
    this.trouble = trouble;
    planning = new Newest<>(tasks, this::plan, this::show, trouble);
    onlyNew.addListener(_ -> look());
    withFindings.addListener(_ -> look());
    sheet.addListener(_ -> look());
    table.addListener(_ -> look());
    place.addListener(_ -> look());
    name.addListener(_ -> look());
    ready =
        Bindings.createBooleanBinding(
            () ->
                current.get()
                    && planned
                        .get()
                        .filter(now -> now.target().isPresent() && now.plan().files() > 0)
                        .isPresent(),
            current,
            planned);
  }

  /** Whether what was delivered before, as it is, stays. */
  BooleanProperty onlyNew() {
    return onlyNew;
  }

  /** Whether files go that are not as the client asked. */
  BooleanProperty withFindings() {
    return withFindings;
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
  ReadOnlyObjectProperty<Optional<Planned>> planned() {
    return planned.getReadOnlyProperty();
  }

  /** What would go and what would not, the latter first. */
  ObservableList<GoingLine> lines() {
    return lines;
  }

  /** Whether it can be delivered now. */
  BooleanBinding ready() {
    return ready;
  }

  /** Begins with what came back. */
  void begin(Returns came, Optional<Path> at) {
    returns = Optional.of(came);
    planned.set(Optional.empty());
    lines.clear();
    name.set("");
    if (place.get() == null) {
      tasks.quietly(
          () -> at.filter(Files::isDirectory).orElse(session.job().folder().getParent()),
          place::set,
          trouble);
    }
    look();
  }

  private void look() {
    current.set(false);
    asking().ifPresent(planning::offer);
  }

  private Optional<Asking> asking() {
    return returns.map(
        came ->
            new Asking(
                came,
                onlyNew.get(),
                withFindings.get(),
                new WantedPapers(sheet.get(), table.get()),
                Optional.ofNullable(place.get()),
                name.get(),
                Map.of(
                    Withheld.Tool.RENAMING, wayTo.apply("names"),
                    Withheld.Tool.CHECKING, wayTo.apply("convention"))));
  }

  private Planned plan(Asking asked) throws IOException {
    var view = session.view().get();
    var delivery = ClientDelivery.of(session.job(), view.scan(), view.tally(), asked.returns());
    var plan = delivery.plan(List.of(), asked.onlyNew(), asked.withFindings());
    var usual = session.job().name() + "_delivery_" + HandOff.nextNumber(session.job());
    return new Planned(
        asked,
        delivery,
        plan,
        GoingLine.of(List.of(plan), texts, asked.pages()),
        usual,
        asked
            .place()
            .flatMap(
                at ->
                    PackageNames.inside(
                        at, asked.name().isBlank() ? usual : asked.name().strip())));
  }

  private void show(Planned now) {
    planned.set(Optional.of(now));
    lines.setAll(now.lines());
    current.set(asking().filter(now.of()::equals).isPresent());
  }
}
