package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.naming.Convention;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A client's lists in a job: what was chosen for one holds for the next, and how far it all is. */
class ClientListsTest {
  private static final Station DESK = new Station("desk");
  private static final String LIST = "Art;Words;Angle\n1;Coat;F\n2;Hat;B\n3;Belt;F\n";
  private static final ListOptions CHOSEN =
      ListOptions.NONE.withColumn("setup", "Art").withColumn("title", "Words");

  @TempDir private Path folder;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Job job;

  @BeforeEach
  void aJob() throws Exception {
    var yaml = Files.readString(Path.of("templates/fashion-days.yaml"));
    var parsed = (Convention.Parsed.Sound) Convention.parse(yaml, "fashion-days.yaml");
    var values = Map.of("day", "2026-11-23", "client", "NOVA", "title", "Wool");
    job = ((Started.Opened) Job.start(parsed.convention(), folder, values, clock, DESK)).job();
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private ListReading.Understood read(String name, ListOptions options) throws IOException {
    return (ListReading.Understood) job.readList(file(name, LIST), options);
  }

  private static List<String> titles(ListReading.Understood reading) {
    return reading.list().setups().stream().map(Setup::title).toList();
  }

  private static Optional<String> before(ListReading reading) {
    return reading.as().before().map(told -> told.problem().what());
  }

  private List<Event> choicesKept() throws IOException {
    return new FileEventLog(job.folder().resolve(".framewright/log"), new Station("r"), clock)
        .news().stream().map(Entry::event).filter(Event.ListRead.class::isInstance).toList();
  }

  @Test
  void anUnreadableFileIsRefused() {
    assertThat(job.readList(folder.resolve("none.csv"), ListOptions.NONE))
        .isInstanceOf(ListReading.Refused.class);
  }

  @Test
  void aListWithoutChoicesBeforeItIsReadByItself() throws IOException {
    assertThat(before(job.readList(file("a.csv", LIST), ListOptions.NONE))).isEmpty();
    assertThat(titles(read("a.csv", CHOSEN))).containsExactly("Coat", "Hat", "Belt");
  }

  @Test
  void whatWasChosenHoldsForTheNextListOfTheSameHeadings() throws IOException {
    var change = job.importList(read("a.csv", CHOSEN));
    assertThat(change.added()).hasSize(3);
    var next = (ListReading.Understood) job.readList(file("b.csv", LIST), ListOptions.NONE);
    assertThat(titles(next)).containsExactly("Coat", "Hat", "Belt");
    assertThat(before(next))
        .contains(
            "it has the headings of the earlier list a.csv and was read like that one: setup from"
                + " \"Art\", title from \"Words\"");
    var same = job.readList(file("a.csv", LIST), ListOptions.NONE);
    assertThat(before(same).orElseThrow()).startsWith("it has the headings of an earlier list and");
  }

  @Test
  void whatIsSaidAnewIsNotToldAndPrevails() throws IOException {
    job.importList(read("a.csv", CHOSEN));
    assertThat(before(read("b.csv", CHOSEN))).isEmpty();
    var other = read("b.csv", ListOptions.NONE.withColumn("title", "Angle"));
    assertThat(titles(other)).containsExactly("F", "B", "F");
    assertThat(before(other).orElseThrow()).endsWith("one: setup from \"Art\"");
  }

  @Test
  void choicesDoNotHoldForAListOfOtherHeadingsNorForOneReadAnew() throws IOException {
    job.importList(read("a.csv", CHOSEN));
    var other = job.readList(file("c.csv", "Setup;Title\n1;Coat\n"), ListOptions.NONE);
    assertThat(before(other)).isEmpty();
    var anew = job.readListAnew(file("b.csv", LIST), ListOptions.NONE);
    assertThat(before(anew)).isEmpty();
    assertThat(anew.options().isNone()).isTrue();
  }

  /** No heading says which line they are: only the choice of before finds them. */
  @Test
  void choicesAreTriedWhereTheListSaysNothingOfItself() throws IOException {
    var strange = "Foo;Bar\ncoat;9\nhat;8\n";
    var options = ListOptions.NONE.withColumn("setup", "Bar");
    job.importList((ListReading.Understood) job.readList(file("a.csv", strange), options));
    var next = job.readList(file("b.csv", strange), ListOptions.NONE);
    assertThat(((ListReading.Understood) next).list().codes()).containsExactly("9", "8");
    assertThat(before(next).orElseThrow()).contains("a.csv");
  }

  @Test
  void choicesAreKeptOnceAndOnlyWhereThereAreAny() throws IOException {
    job.importList(read("a.csv", CHOSEN));
    job.importList(read("b.csv", ListOptions.NONE));
    assertThat(choicesKept()).hasSize(1);
    var plain = job.readList(file("c.csv", "Setup;Title\n1;Coat\n"), ListOptions.NONE);
    job.importList((ListReading.Understood) plain);
    assertThat(choicesKept()).hasSize(1);
    var headless = job.readList(file("d.csv", "A-1;Wool coat\nA-2;Felt hat\n"), CHOSEN);
    assertThat(headless).isInstanceOf(ListReading.Refused.class);
  }

  @Test
  void aPreviewOfAnImportWritesNothing() throws IOException {
    var list = read("a.csv", CHOSEN).list();
    assertThat(job.previewImport(list).added()).hasSize(3);
    assertThat(job.previewImport(list, job.tally()).added()).hasSize(3);
    assertThat(job.shotList().setups()).isEmpty();
    assertThat(choicesKept()).isEmpty();
  }

  @Test
  void theProgressOfAJobIsThatOfItsListAndItsTicks() throws Exception {
    assertThat(JobProgress.of(job).last()).contains(clock.instant());
    job.importList(read("a.csv", CHOSEN).list());
    clock.pass(Duration.ofMinutes(5));
    job.mark("1", SetupState.SHOT, MarkDetails.NONE);
    job.mark("2", SetupState.SHOT, MarkDetails.NONE);
    clock.pass(Duration.ofMinutes(5));
    job.mark("2", SetupState.SIGNED_OFF, MarkDetails.by("Ana"));
    var progress = JobProgress.read(job.folder(), clock);
    assertThat(progress.states())
        .containsExactly(SetupState.SHOT, SetupState.SIGNED_OFF, SetupState.TO_SHOOT);
    assertThat(progress.signedOff()).isEqualTo(1);
    assertThat(progress.last()).contains(clock.instant());
    assertThat(progress.name()).isEqualTo(job.name()).isNotEmpty();
    assertThat(progress.frames()).isEqualTo(job.framesFolder()).isAbsolute();
    assertThat(JobProgress.of(job)).isEqualTo(progress);
  }
}
