package org.framewright.ui.day;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.copies.KnownDisks;
import org.framewright.copies.device.MountedVolumes;
import org.framewright.day.DayHours;
import org.framewright.day.PowerSource;
import org.framewright.day.Supplies;
import org.framewright.job.Job;
import org.framewright.report.Letterhead;
import org.framewright.report.ReportFiles;
import org.framewright.report.ReportKind;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;
import org.framewright.ui.page.ViewWords;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.StudioDetail;
import org.framewright.ui.settings.WorkingHours;
import org.framewright.ui.task.Repeating;

/** The page of the day: how it stands, what to look at before one wraps, its reports. */
public final class DayScreen implements Screen {
  /** Its id. */
  public static final String ID = "day";

  /** The folder that a report was last saved in. */
  private static final String PLACE = "reports.place";

  private static final double SHEET = 0.42;
  private static final double NARROWEST = 330;

  /** How often it looks whether a minute passed. */
  private static final Duration LOOK = Duration.ofSeconds(5);

  /** Where one goes from here. */
  public interface Ways {
    /** To a setup on the list. */
    void onTheList(String setup);

    /** To the frames of a setup. */
    void framesOf(String setup);

    /** To the frames that no setup has. */
    void looseFrames();

    /** To all frames. */
    void allFrames();

    /** Turns to the slates among the frames. */
    void slates();

    /** To the copies. */
    void copies();
  }

  /** What outlives the page where it has to be made anew. */
  private record Models(DayModel day, ReportsModel reports) {}

  private final Desk desk;
  private final Texts texts;
  private final JobSession session;
  private final Ways ways;
  private final Models models;
  private final HBox node = new HBox();
  private final FiguresPane figures;
  private final VBox said = new VBox();
  private final Label asOf = new Label();
  private final ChartView hours;
  private final ChartView onSet;
  private final VBox hoursPart;
  private final VBox onSetPart;
  private final WrappedText empty = new WrappedText("day-empty");
  private final LookPane look;
  private final ReportsPane reports;
  private final List<Command> commands;
  private final Subscription following;
  private final Repeating clock;

  /** The page of a job. */
  public DayScreen(Desk desk, JobSession session, Ways ways) {
    this(desk, session, ways, models(desk, session));
  }

  private static Models models(Desk desk, JobSession session) {
    var reader =
        new DayNow.Reader(
            session.job(),
            () -> hours(desk.preferences(), desk.clock().getZone()),
            () -> disks(session.job()),
            PowerSource.ofThisSystem());
    var views = new ViewWords(session.job().convention());
    return new Models(
        new DayModel(
            session.view(),
            session.job()::now,
            view -> DayShown.of(reader.read(view), desk.texts(), views),
            desk.tasks(),
            desk::trouble),
        new ReportsModel(
            session.job(),
            () -> session.view().get().scan(),
            () -> hours(desk.preferences(), desk.clock().getZone()),
            () -> Letterhead.of(StudioDetail.studio(desk.preferences())),
            desk.tasks(),
            desk.texts(),
            desk::trouble));
  }

  private static List<Supplies.Disk> disks(Job job) {
    return KnownDisks.of(job, MountedVolumes.ofThisSystem()).stream()
        .map(disk -> Supplies.Disk.beside(disk.card(), disk.name(), disk.free()))
        .toList();
  }

  private static DayHours hours(Preferences preferences, ZoneId zone) {
    return WorkingHours.kept(preferences, zone).value();
  }

  private DayScreen(Desk desk, JobSession session, Ways ways, Models models) {
    this.desk = desk;
    this.texts = desk.texts();
    this.session = session;
    this.ways = ways;
    this.models = models;
    this.commands = makeCommands();
    this.figures = new FiguresPane(texts);
    this.hours = new ChartView(texts);
    this.onSet = new ChartView(texts);
    hours.setId("day-hours");
    onSet.setId("day-on-set");
    this.hoursPart = part("day.hours", "day.hours.how", hours);
    this.onSetPart = part("day.onSet", "day.onSet.how", onSet);
    this.look = new LookPane(models.day(), texts, this::go);
    this.reports =
        new ReportsPane(
            texts,
            command("evening"),
            List.of(
                command("report"),
                command("sheet"),
                command("next"),
                command("signOff"),
                command("slates")),
            command("stop"),
            command("showReport"));
    asOf.getStyleClass().addAll("needs", "day-as-of");
    asOf.setId("day-as-of");
    said.getStyleClass().add("day-said");
    said.setMinHeight(Region.USE_PREF_SIZE);
    var table = new VBox(asOf, figures, said, empty, hoursPart, onSetPart);
    table.getStyleClass().add("day-table");
    table.setMinWidth(0);
    // Where there is little room the charts give way, not the figures.
    table.setMinHeight(0);
    table.setPrefWidth(1);
    HBox.setHgrow(table, Priority.ALWAYS);
    var sheet = new VBox(look, reports);
    VBox.setVgrow(look, Priority.ALWAYS);
    sheet.getStyleClass().addAll("paper-sheet", "day-sheet");
    sheet.prefWidthProperty().bind(Bindings.max(NARROWEST, node.widthProperty().multiply(SHEET)));
    sheet.setMinWidth(Region.USE_PREF_SIZE);
    node.setMinHeight(0);
    node.getStyleClass().add("day-page");
    node.getChildren().addAll(table, sheet);
    clock = new Repeating(LOOK, Platform::runLater, models.day()::look);
    following =
        Subscription.combine(
            models.day().shown().subscribe(_ -> show()),
            models.day().past().subscribe(_ -> show()),
            models.reports().running().subscribe(reports::show),
            models.reports().ended().subscribe(reports::showEnd),
            models.reports().ended().subscribe((_, end) -> end.ifPresent(this::answer)));
  }

  private VBox part(String title, String how, ChartView chart) {
    var name = new Label(texts.get(title));
    name.getStyleClass().add("day-title");
    name.setMinWidth(Region.USE_PREF_SIZE);
    var explained = WrappedText.of(texts.get(how), "quiet", "day-how");
    explained.setMostLines(1);
    explained.setMinWidth(0);
    HBox.setHgrow(explained, Priority.ALWAYS);
    var head = new HBox(name, explained);
    head.getStyleClass().add("day-part-head");
    var part = new VBox(head, chart);
    part.getStyleClass().add("day-part");
    part.setMinHeight(0);
    VBox.setVgrow(chart, Priority.ALWAYS);
    VBox.setVgrow(part, Priority.ALWAYS);
    return part;
  }

  // What can be done

  private List<Command> makeCommands() {
    var all = new ArrayList<Command>();
    var line = models.day().chosen().map(Optional::isPresent);
    all.add(
        new Command(
            ID + ".go",
            text("go"),
            Keys.plain(KeyCode.ENTER),
            () -> models.day().chosen().get().ifPresent(this::go),
            Bindings.createBooleanBinding(
                () -> models.day().chosen().get().flatMap(LookLine::way).isPresent(),
                models.day().chosen())));
    all.add(
        new Command(
            ID + ".looked",
            text("looked"),
            Keys.plain(KeyCode.SPACE),
            models.day()::turnLooked,
            Bindings.createBooleanBinding(line::getValue, models.day().chosen())));
    all.add(Command.of(ID + ".lines", text("lines"), Keys.plain(KeyCode.A), () -> look.takeKeys()));
    all.add(idle("evening", Keys.shortcut(KeyCode.ENTER), models.reports()::evening));
    all.add(idle("report", Keys.plain(KeyCode.D), () -> save(ReportKind.DAY)));
    all.add(idle("sheet", Keys.plain(KeyCode.C), () -> save(ReportKind.SHEET)));
    all.add(idle("next", Keys.plain(KeyCode.N), () -> save(ReportKind.NEXT)));
    all.add(idle("signOff", Keys.plain(KeyCode.S), () -> save(ReportKind.SIGN_OFF)));
    all.add(idle("slates", Keys.plain(KeyCode.T), this::saveSlates));
    all.add(
        new Command(
            ID + ".stop",
            text("stop"),
            Keys.plain(KeyCode.ESCAPE),
            models.reports()::stop,
            Bindings.createBooleanBinding(
                () -> models.reports().running().get().isPresent(), models.reports().running())));
    all.add(
        new Command(
            ID + ".showReport",
            text("showReport"),
            Keys.plain(KeyCode.O),
            () -> written().ifPresent(desk::showInFileManager),
            Bindings.createBooleanBinding(() -> written().isPresent(), models.reports().ended())));
    return List.copyOf(all);
  }

  private Command idle(String word, KeyCodeCombination key, Runnable action) {
    return new Command(
        ID + "." + word,
        text(word),
        key,
        action,
        Bindings.createBooleanBinding(
            () -> models.reports().running().get().isEmpty(), models.reports().running()));
  }

  private Command command(String word) {
    return Commands.named(ID + "." + word, commands);
  }

  private String text(String word) {
    return texts.get("command.day." + word);
  }

  private Optional<Path> written() {
    return models
        .reports()
        .ended()
        .get()
        .filter(end -> !end.files().isEmpty())
        .map(end -> end.files().getFirst());
  }

  private void save(ReportKind kind) {
    save(
        texts.get("day.save." + kind.word()),
        models.reports().nameFor(kind),
        file -> models.reports().write(kind, file));
  }

  private void saveSlates() {
    save(
        texts.get("day.save.slates"),
        models.reports().nameForSlates(),
        models.reports()::writeSlates);
  }

  private void save(String title, String name, Consumer<Path> writing) {
    var startIn =
        desk.preferences()
            .path(PLACE)
            .filter(Files::isDirectory)
            .or(models.reports()::usualFolder)
            .or(() -> Optional.ofNullable(session.job().folder().getParent()));
    desk.files()
        .save(title, startIn, name)
        .ifPresent(
            file -> {
              Optional.ofNullable(file.toAbsolutePath().getParent())
                  .ifPresent(place -> desk.preferences().put(PLACE, place.toString()));
              writing.accept(file);
            });
  }

  private void answer(ReportFiles.Outcome end) {
    var what = ReportsPane.said(end, texts).lines().findFirst().orElse("");
    if (end.files().isEmpty()) {
      desk.say(what);
    } else {
      desk.answer(what, ID + ".showReport");
    }
  }

  private void go(LookLine line) {
    line.way().ifPresent(this::go);
  }

  private void go(Way way) {
    switch (way) {
      case Way.OnTheList(var setup) -> ways.onTheList(setup);
      case Way.ItsFrames(var setup) -> ways.framesOf(setup);
      case Way.Loose _ -> ways.looseFrames();
      case Way.AllFrames _ -> ways.allFrames();
      case Way.Slates _ -> ways.slates();
      case Way.Copies _ -> ways.copies();
      case Way.Folder _ -> desk.showInFileManager(session.job().folder());
    }
  }

  // What is shown

  private void show() {
    var now = models.day().shown().get();
    boolean past = models.day().past().get();
    asOf.setText(
        now.map(shown -> texts.get("day.asOf", shown.at()))
            .orElseGet(() -> texts.get("day.notRead")));
    shown(asOf, past);
    figures.show(now.map(DayShown::figures).orElse(List.of()));
    said.getChildren()
        .setAll(
            now.map(DayShown::said).orElse(List.of()).stream()
                .map(line -> sentence(line))
                .toList());
    shown(said, !said.getChildren().isEmpty());
    empty.setText(now.filter(DayShown::noList).map(_ -> texts.get("day.noList")).orElse(""));
    shown(empty, !empty.getText().isEmpty());
    var hoursNow = now.flatMap(DayShown::hours);
    hoursNow.ifPresent(chart -> hours.show(chart::in));
    shown(hoursPart, hoursNow.isPresent());
    var onSetNow = now.flatMap(DayShown::onSet);
    onSetNow.ifPresent(chart -> onSet.show(chart::in));
    shown(onSetPart, onSetNow.isPresent());
  }

  private static WrappedText sentence(String line) {
    var text = WrappedText.of(line, "day-sentence");
    text.setMostLines(2);
    return text;
  }

  private static void shown(Region part, boolean now) {
    part.setVisible(now);
    part.setManaged(now);
  }

  @Override
  public String id() {
    return ID;
  }

  @Override
  public String title() {
    return texts.get("day.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return look.list();
  }

  @Override
  public List<Command> commands() {
    return commands;
  }

  @Override
  public void onShown() {
    models.day().follow();
    clock.start();
  }

  @Override
  public void onHidden() {
    clock.stop();
    models.day().pause();
  }

  @Override
  public Screen anew() {
    leave();
    return new DayScreen(desk, session, ways, models);
  }

  @Override
  public void dispose() {
    leave();
    models.day().pause();
    models.reports().stop();
  }

  private void leave() {
    clock.stop();
    following.unsubscribe();
    look.dispose();
    reports.dispose();
  }
}
