package org.framewright.ui.lists;

import static org.assertj.core.api.Assertions.tuple;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Progress;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.naming.Convention;
import org.framewright.shotlist.ListReader;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ListModelTest {
  private static final Path LISTS = Path.of("src/test/resources/lists");

  @TempDir private Path folder;

  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private final List<Throwable> troubles = new ArrayList<>();
  private final List<Integer> taken = new ArrayList<>();
  private JobSession session;
  private ListModel model;

  @BeforeEach
  void aJobWithoutAList() throws Exception {
    begin(LISTS.resolve("codes.yaml"));
  }

  private void begin(Path convention) throws Exception {
    var sound = (Convention.Parsed.Sound) Convention.read(convention);
    var values =
        Map.of("day", "2026-11-23", "client", "NOVA", "title", convention.getFileName().toString());
    var started =
        (Started.Opened) Job.start(sound.convention(), folder, values, clock, new Station("desk"));
    session =
        JobSession.begin(started.job(), Progress.NONE, Runnable::run, Runnable::run).orElseThrow();
    model = model(Tasks.immediate());
  }

  private ListModel model(Tasks tasks) {
    return new ListModel(session, tasks, Texts.in(Locale.ENGLISH), troubles::add);
  }

  private Path list(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private Use use(String id) {
    return model.uses().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
  }

  private ColumnLine column(String heading) {
    return model.columns().stream()
        .filter(one -> one.heading().equals(heading))
        .findFirst()
        .orElseThrow();
  }

  private List<String> results() {
    return model.results().stream()
        .map(
            line ->
                switch (line) {
                  case ResultLine.Way way -> "way: " + way.way().description();
                  case ResultLine.Found found ->
                      (found.stops() ? "wrong " : "told ")
                          + found.problem().line()
                          + ": "
                          + found.problem().problem().what();
                  case ResultLine.Difference one ->
                      one.kind() + " " + one.code() + " " + one.title();
                })
        .toList();
  }

  private ResultLine.Difference difference(String code) {
    return model.looked().get().differences().stream()
        .filter(one -> one.code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  private Job afresh() throws Exception {
    return Job.open(session.job().folder(), clock, new Station("desk"));
  }

  private List<Setup> setups() throws Exception {
    return afresh().shotList().setups();
  }

  // What is shown

  @Test
  void showsEachColumnWithItsFirstLinesAndWhatItChanges() throws Exception {
    model.open(LISTS.resolve("en-agency.csv"));
    assertThat(model.columns())
        .extracting(ColumnLine::heading, ColumnLine::words)
        .containsExactly(
            tuple("Style No.", "Modellnummer (setup)"),
            tuple("Style Name", "title"),
            tuple("Shot type", "View (wanted views)"),
            tuple("No. of shots", "frames wanted"),
            tuple("Remarks", "note"));
    assertThat(column("Style Name").cells()).containsExactly("Wool coat", "Silk shirt");
    assertThat(model.looked().get().lineNumbers()).containsExactly(2, 3);
    assertThat(results()).containsExactly("ADDED KV-101 Wool coat", "ADDED KV-102 Silk shirt");
    assertThat(difference("KV-101").detail().english()).isEqualTo("Front, Back · 4 · steam well");
    assertThat(model.verdict()).startsWith("2 new · 0 changed · 0 gone · 0 as before.");
    assertThat(model.accepted().get()).isEqualTo(2);
    assertThat(setups()).as("nothing is written before it is taken").isEmpty();
  }

  @Test
  void theMenuHasTheConventionsFieldsByTheirLabels() throws Exception {
    begin(LISTS.resolve("colours.yaml"));
    assertThat(model.uses()).extracting(Use::words).contains("Farbe", "title", "not used");
    assertThat(use("colour").words()).isEqualTo("Farbe");
    assertThat(model.uses()).extracting(Use::id).doesNotHaveDuplicates();
    model.open(LISTS.resolve("colour-by-label.csv"));
    assertThat(column("Farbe").use()).isEqualTo("colour");
  }

  @Test
  void aListThatIsTheSameHasNothingToTake() {
    model.open(LISTS.resolve("en-agency.csv"));
    model.take(taken::add);
    model.open(LISTS.resolve("en-agency.csv"));
    assertThat(model.verdict()).isEqualTo("The new list is the same as the one at hand.");
    assertThat(model.canTake().get()).isFalse();
  }

  // What a person chooses

  @Test
  void aColumnIsChosenToBeTheSetup() throws Exception {
    model.open(LISTS.resolve("unknown-headings.csv"));
    assertThat(model.needsAPerson()).isTrue();
    assertThat(model.canTake().get()).isFalse();
    assertThat(results())
        .contains("way: the setup from \"Wyróżnik\"")
        .anyMatch(line -> line.startsWith("wrong 1: no line of headings with a setup in it"));
    assertThat(model.columns()).allMatch(line -> line.use().equals("kept") && !line.chosen());
    model.choose("Wyróżnik", use("setup"));
    model.choose("Treść", use("title"));
    assertThat(results()).containsExactly("ADDED AA-1 Płaszcz", "ADDED AA-2 Rok");
    assertThat(column("Treść").chosen()).isTrue();
    assertThat(column("Cena").chosen()).isFalse();
    model.letBeFound("Treść");
    assertThat(column("Treść").use()).isEqualTo("kept");
    assertThat(setups()).isEmpty();
  }

  @Test
  void aColumnIsChosenToBeAnyFieldKeptOrNotUsed() {
    model.open(LISTS.resolve("en-agency.csv"));
    for (var id : List.of("title", "frames", "day", "rack", "model", "note", "views")) {
      model.choose("Remarks", use(id));
      assertThat(column("Remarks").use()).isEqualTo(id);
      assertThat(column("Remarks").chosen()).isTrue();
    }
    model.choose("Remarks", use("unused"));
    assertThat(column("Remarks").use()).isEqualTo("unused");
    assertThat(difference("KV-101").detail().english()).doesNotContain("steam");
    model.choose("Style Name", use("kept"));
    assertThat(difference("KV-101").title()).isEmpty();
    model.choose("Shot type", use("unused"));
    assertThat(model.looked().get().options().words())
        .isEqualTo(
            "--column unused=Remarks --column \"kept=Style Name\" --column \"unused=Shot type\"");
  }

  @Test
  void aColumnIsChosenToBeAFieldOfTheConvention() throws Exception {
    begin(LISTS.resolve("colours.yaml"));
    model.open(list("list.csv", "Look,Titel,Ton\nK1,Mantel,rot\n"));
    assertThat(results()).anyMatch(line -> line.contains("Farbe: frames cannot be named"));
    model.choose("Ton", use("colour"));
    assertThat(results()).containsExactly("ADDED K1 Mantel");
    assertThat(column("Ton").words()).isEqualTo("Farbe");
  }

  @Test
  void aColumnIsChosenToBeAView() {
    model.open(LISTS.resolve("crosses.csv"));
    model.choose("D", use("one-view"));
    assertThat(column("D").words()).isEqualTo("a view, by its crosses");
    assertThat(difference("KV-1").detail().english()).startsWith("D · ");
    assertThat(difference("KV-2").detail().english()).isEqualTo("50");
  }

  @Test
  void aColumnWithoutAHeadingIsChosenByItsPlace() {
    model.open(LISTS.resolve("no-headings-two-codes.csv"));
    assertThat(results()).contains("way: the setup from \"column 2\"");
    model.choose(model.heading(1).orElseThrow(), use("setup"));
    assertThat(results()).anyMatch(line -> line.startsWith("ADDED B-7"));
  }

  @Test
  void linesArePutTogetherToOneSetup() {
    model.open(LISTS.resolve("sizes.csv"));
    assertThat(model.mayBeOneSetup()).isTrue();
    assertThat(results()).contains("wrong 3: setup KV-1 stands in line 2 already");
    model.chooseOneSetupPer(Optional.of("Style"));
    assertThat(results()).contains("ADDED KV-1 Mantel").anyMatch(line -> line.contains("4 lines"));
    assertThat(model.oneSetupPer()).contains("Style");
    model.chooseOneSetupPer(Optional.empty());
    assertThat(model.needsAPerson()).isTrue();
    assertThat(model.mayBeOneSetup()).as("it can be chosen once more").isTrue();
  }

  @Test
  void aWayThatIsOfferedIsTaken() {
    model.open(LISTS.resolve("sizes.csv"));
    var way =
        model.results().stream()
            .filter(ResultLine.Way.class::isInstance)
            .map(ResultLine.Way.class::cast)
            .findFirst();
    model.choose(way.orElseThrow().way());
    assertThat(model.oneSetupPer()).contains("Style");
    assertThat(model.canTake().get()).isTrue();
  }

  @Test
  void aSheetIsChosenAndWhatWasSaidOfColumnsHoldsThereToo() throws Exception {
    begin(Path.of("templates/fashion-days.yaml"));
    model.open(LISTS.resolve("sheets.xlsx"));
    assertThat(model.sheets()).containsExactly("Contacts", "Tops", "Bottoms");
    assertThat(model.sheet()).isEqualTo("Tops");
    assertThat(model.encoding()).isEmpty();
    var heading =
        model.columns().stream()
            .filter(line -> line.use().equals("title"))
            .findFirst()
            .orElseThrow()
            .heading();
    model.choose(heading, use("kept"));
    model.chooseSheet("Bottoms");
    assertThat(model.sheet()).isEqualTo("Bottoms");
    assertThat(results()).anyMatch(line -> line.startsWith("ADDED 11"));
    assertThat(column(heading).use()).isEqualTo("kept");
    model.chooseSheet("Contacts");
    assertThat(model.sheet()).isEqualTo("Contacts");
    assertThat(model.needsAPerson()).isTrue();
    assertThat(model.sheets()).as("one may go back").hasSize(3);
    model.chooseSheet("Tops");
    assertThat(model.needsAPerson()).isFalse();
  }

  @Test
  void anEncodingIsChosenAndGivenUpAgain() throws Exception {
    var text = "Setup;Żółć\nAA-1;ąę\n".getBytes(Charset.forName("windows-1250"));
    model.open(Files.write(folder.resolve("list.csv"), text));
    model.choose(model.heading(0).orElseThrow(), use("setup"));
    model.chooseEncoding(Optional.of("windows-1250"));
    assertThat(column("Żółć").cells()).containsExactly("ąę");
    assertThat(column("Setup").chosen()).as("what was said holds").isTrue();
    model.chooseEncoding(Optional.of("UTF-8"));
    assertThat(results()).containsExactly("wrong 0: it is not written in UTF-8");
    assertThat(model.columns()).isEmpty();
    assertThat(model.encoding()).as("another one may be chosen").contains("UTF-8");
    model.chooseEncoding(Optional.empty());
    assertThat(model.needsAPerson()).isFalse();
    assertThat(model.looked().get().options().encoding()).isEmpty();
  }

  // What the job keeps

  @Test
  void whatWasChosenIsKeptAndOfferedForTheNextListOfTheKind() throws Exception {
    model.open(list("morning.csv", "Wyróżnik;Treść;Cena\nAA-1;Płaszcz;12\n"));
    model.choose("Wyróżnik", use("setup"));
    model.choose("Cena", use("unused"));
    model.take(taken::add);
    assertThat(taken).containsExactly(1);
    assertThat(model.looked().get()).isEqualTo(Looked.NOTHING);
    model.open(list("noon.csv", "Wyróżnik;Treść;Cena\nAA-1;Płaszcz;12\nAA-2;Rok;1\n"));
    assertThat(model.asBefore().orElseThrow())
        .contains("morning.csv", "setup from \"Wyróżnik\"", "\"Cena\" is not used");
    assertThat(column("Cena").chosen()).isTrue();
    assertThat(results()).containsExactly("ADDED AA-2 ");
    // What is said now goes on from there, and is not what was said before.
    model.choose("Treść", use("title"));
    assertThat(model.asBefore()).isEmpty();
    assertThat(column("Cena").use()).isEqualTo("unused");
    model.letBeFound("Cena");
    assertThat(column("Cena").use()).isEqualTo("kept");
    model.readAfresh();
    assertThat(model.needsAPerson()).isTrue();
    assertThat(model.columns()).noneMatch(ColumnLine::chosen);
  }

  @Test
  void aListThatIsLeftKeepsNothing() throws Exception {
    var file = list("list.csv", "Wyróżnik;Treść\nAA-1;Płaszcz\n");
    model.open(file);
    model.choose("Wyróżnik", use("setup"));
    model.cancel();
    assertThat(model.canTake().get()).isFalse();
    assertThat(setups()).isEmpty();
    model.open(file);
    assertThat(model.asBefore()).isEmpty();
    assertThat(model.needsAPerson()).isTrue();
  }

  // What is taken

  @Test
  void onlyWhatIsTickedIsTaken() throws Exception {
    model.open(list("a.csv", "Setup,Title\nA1,Coat\nA2,Hat\nA3,Scarf\n"));
    model.take(taken::add);
    session.job().mark("A3", SetupState.SHOT, MarkDetails.NONE);
    model.open(list("b.csv", "Setup,Title\nA1,Long coat\nA4,Veil\nA5,Glove\n"));
    assertThat(results())
        .containsExactly(
            "ADDED A4 Veil",
            "ADDED A5 Glove",
            "CHANGED A1 Long coat",
            "REMOVED A2 Hat",
            "KEPT A3 Scarf");
    assertThat(model.accepted().get()).isEqualTo(4);
    model.take(difference("A2"), false);
    model.take(difference("A5"), false);
    model.take(difference("A3"), true);
    assertThat(model.isTaken(difference("A3"))).as("nobody takes what was shot").isFalse();
    assertThat(model.accepted().get()).isEqualTo(2);
    // A tick that was taken off stays off when the list is read again.
    model.readAgain();
    assertThat(model.accepted().get()).isEqualTo(2);
    model.take(taken::add);
    assertThat(taken).containsExactly(3, 2);
    assertThat(setups())
        .extracting(Setup::code, Setup::title)
        .containsExactlyInAnyOrder(
            tuple("A1", "Long coat"),
            tuple("A2", "Hat"),
            tuple("A3", "Scarf"),
            tuple("A4", "Veil"));
  }

  @Test
  void allOrNoneAreTicked() {
    model.open(LISTS.resolve("en-agency.csv"));
    model.takeAll(false);
    assertThat(model.accepted().get()).isZero();
    assertThat(model.canTake().get()).isFalse();
    model.takeAll(true);
    assertThat(model.accepted().get()).isEqualTo(2);
  }

  @Test
  void aListOfAnotherOrderAloneMayBeTaken() throws Exception {
    model.open(list("a.csv", "Setup,Title\nA1,Coat\nA2,Hat\n"));
    model.take(taken::add);
    model.open(list("b.csv", "Setup,Title\nA2,Hat\nA1,Coat\n"));
    assertThat(model.accepted().get()).isZero();
    assertThat(model.isReordered()).isTrue();
    model.take(taken::add);
    assertThat(afresh().shotList().codes()).containsExactly("A2", "A1");
  }

  // What goes wrong

  @Test
  void aCodeThatCannotBeNamedIsFoundAtItsLineWithItsRemedy() throws Exception {
    begin(Path.of("templates/still-life-gtin.yaml"));
    model.open(LISTS.resolve("gtin-mistyped.csv"));
    var found = (ResultLine.Found) model.results().getFirst();
    assertThat(found.stops()).isTrue();
    assertThat(found.problem().line()).isEqualTo(3);
    assertThat(found.problem().problem().what()).contains("06291041500231");
    assertThat(found.problem().problem().remedy()).isNotBlank();
    assertThat(model.verdict()).contains("1 thing is wrong");
  }

  @Test
  @Tag("slow")
  void noRemedySpeaksOfACommandLine() throws Exception {
    try (var files = Files.list(LISTS)) {
      for (var file : files.sorted().toList()) {
        model.open(file);
        for (var line : model.results()) {
          if (line instanceof ResultLine.Found found) {
            assertThat(found.problem().problem().sentences()).as("%s", file).doesNotContain(" --");
          }
        }
      }
    }
  }

  @Test
  void aFileThatVanishedIsToldAndReadOnceItIsBack() throws Exception {
    var file = list("list.csv", "Setup,Title\nA1,Coat\n");
    model.open(file);
    var away = folder.resolve("away.csv");
    Files.move(file, away);
    model.readAgain();
    assertThat(model.needsAPerson()).isTrue();
    assertThat(model.canTake().get()).isFalse();
    assertThat(results()).singleElement().asString().startsWith("wrong 0: ");
    Files.move(away, file, StandardCopyOption.REPLACE_EXISTING);
    model.readAgain();
    assertThat(model.canTake().get()).isTrue();
    assertThat(troubles).isEmpty();
  }

  @Test
  void whatIsNoListIsTold() throws Exception {
    model.open(LISTS.resolve("picture.csv"));
    assertThat(results()).containsExactly("wrong 0: this is a PDF, no list");
    model.open(folder);
    assertThat(results()).containsExactly("wrong 0: this is a folder, a list was meant");
    model.open(list("empty.csv", ""));
    assertThat(results()).containsExactly("wrong 0: the list is empty");
  }

  @Test
  void aJobFolderThatIsGoneIsTroubleAndTheListStays() throws Exception {
    model.open(LISTS.resolve("en-agency.csv"));
    Files.move(session.job().folder(), folder.resolve("unplugged"));
    model.take(taken::add);
    assertThat(troubles).hasSize(1);
    assertThat(taken).isEmpty();
    assertThat(model.canTake().get()).as("it may be tried again").isTrue();
  }

  // In the background

  @Test
  void ofManyRequestsOnlyTheNewestIsShown() {
    Deque<Runnable> background = new ArrayDeque<>();
    model = model(new Tasks(background::add, Runnable::run));
    model.open(LISTS.resolve("en-agency.csv"));
    assertThat(model.verdict()).isEqualTo("Reading the list");
    background.poll().run();
    var shown = new ArrayList<String>();
    model
        .looked()
        .addListener((_, _, now) -> shown.add(now.isRead() + " " + now.options().words()));
    model.choose("Remarks", use("unused"));
    assertThat(column("Remarks").use()).as("what was said is shown at once").isEqualTo("unused");
    assertThat(model.canTake().get()).as("it is not known yet what is taken").isFalse();
    model.choose("Remarks", use("rack"));
    model.choose("Remarks", use("model"));
    while (!background.isEmpty()) {
      background.poll().run();
    }
    assertThat(shown)
        .containsExactly(
            "false --column unused=Remarks",
            "false --column rack=Remarks",
            "false --column model=Remarks",
            "true --column model=Remarks");
  }

  @Test
  void whatComesAfterItWasCancelledIsNotShown() {
    Deque<Runnable> background = new ArrayDeque<>();
    model = model(new Tasks(background::add, Runnable::run));
    model.open(LISTS.resolve("en-agency.csv"));
    model.cancel();
    background.poll().run();
    assertThat(model.looked().get()).isEqualTo(Looked.NOTHING);
    assertThat(model.accepted().get()).isZero();
  }

  @Test
  void whatAnotherStationChangesMeanwhileIsSeen() throws Exception {
    model.open(list("a.csv", "Setup,Title\nA1,Coat\nA2,Hat\n"));
    var other = Job.open(session.job().folder(), clock, new Station("laptop-b"));
    other.importList(
        ((ListReading.Understood) ListReader.read(list("b.csv", "Setup,Title\nA1,Coat\n"))).list());
    session.refresh();
    assertThat(results()).containsExactly("ADDED A2 Hat");
    assertThat(model.accepted().get()).isEqualTo(1);
  }
}
