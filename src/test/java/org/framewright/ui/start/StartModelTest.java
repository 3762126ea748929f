package org.framewright.ui.start;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.framewright.naming.Severity;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartModelTest {
  private static final String CONVENTION =
      """
      convention: Days of a label
      fields:
        day:    {type: date, label: Shoot day, pattern: uuuu-MM-dd}
        client: {type: code, label: Client, letters: upper, length: 2-6}
        title:  {type: words, label: Title, letters: lower, length: 1-24}
        setup:  {type: number, label: Theme, digits: 3, from: 1}
        author: {type: code, label: Photographer, letters: upper, length: 2-3}
        take:   {type: counter, label: Frame, digits: 4, restarts: setup}
      names:
        job:   "{day}_{client}[_{title}]"
        frame: "{client}_{author}_{setup}_{take}"
      folders:
        frames: 01_frames
        paper: 09_paper
      """;

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-25T09:00:00Z"), ZoneOffset.UTC);

  @TempDir private Path folder;

  private final List<Throwable> troubles = new ArrayList<>();
  private final List<Path> opened = new ArrayList<>();
  private Preferences preferences;
  private StartModel model;

  @BeforeEach
  void aConventionIsAtHand() throws IOException {
    Files.createDirectories(folder.resolve("templates"));
    Files.createDirectories(folder.resolve("jobs"));
    Files.writeString(folder.resolve("templates/label.yaml"), CONVENTION);
    preferences =
        Preferences.read(
            folder.resolve("preferences.json"),
            Runnable::run,
            failure -> {
              throw new AssertionError(failure);
            });
    model = model(Tasks.immediate());
    model.gather(List.of(folder.resolve("templates"), folder.resolve("missing")));
    model.place().set(folder.resolve("jobs"));
  }

  private StartModel model(Tasks tasks) {
    return new StartModel(
        tasks, Texts.in(Locale.ENGLISH), preferences, CLOCK, troubles::add, opened::add);
  }

  private FieldEntry entry(String name) {
    return model.entries().stream().filter(e -> e.name().equals(name)).findFirst().orElseThrow();
  }

  private JobPreview preview() {
    return model.preview().get().orElseThrow();
  }

  private String ruler() {
    var text = new StringBuilder();
    preview().ruler().forEach(segment -> text.append(segment.text()));
    return text.toString();
  }

  @Test
  void makesAFormOfTheConventionsFields() {
    assertThat(model.conventions())
        .extracting(StartModel.KnownConvention::title)
        .containsExactly("Days of a label");
    assertThat(model.entries())
        .extracting(FieldEntry::label)
        .containsExactly("Shoot day", "Client", "Title", "Photographer");
  }

  @Test
  void asksForNothingThatTheShotListOrTheCounterGives() {
    assertThat(model.entries()).extracting(FieldEntry::name).doesNotContain("setup", "take");
  }

  @Test
  void saysWhatIsNeededAndWhatMayStayEmpty() {
    assertThat(entry("client").needed()).isTrue();
    assertThat(entry("title").needed()).isFalse();
    assertThat(entry("author").ofTheJob()).isFalse();
  }

  @Test
  void beginsWithTodaysDate() {
    assertThat(entry("day").text().get()).isEqualTo("2026-11-25");
  }

  @Test
  void showsTheWholeNameFromTheStartWithExamplesWhereNothingWasTyped() {
    assertThat(ruler()).startsWith("2026-11-25_");
    assertThat(preview().ruler())
        .filteredOn(Segment::example)
        .extracting(segment -> segment.field().orElseThrow())
        .containsExactly("client");
    assertThat(preview().jobName()).isEmpty();
    assertThat(model.canStart().get()).isFalse();
    assertThat(entry("client").beside().get().missing()).isTrue();
  }

  @Test
  void growsTheNameWhileOneTypes() {
    entry("client").text().set("LU");
    assertThat(ruler()).isEqualTo("2026-11-25_LU");
    entry("client").text().set("LUMO");
    entry("title").text().set("Spring Looks");
    assertThat(preview().jobName()).isEqualTo("2026-11-25_LUMO_spring-looks");
    assertThat(preview().ruler()).noneMatch(Segment::example);
    assertThat(model.startText().get()).isEqualTo("Start 2026-11-25_LUMO_spring-looks");
    assertThat(model.canStart().get()).isTrue();
  }

  @Test
  void growsTheFolderTreeWithExampleNames() {
    entry("client").text().set("LUMO");
    assertThat(preview().tree().getFirst())
        .isEqualTo(new Branch(0, "2026-11-25_LUMO", Branch.Kind.FOLDER));
    assertThat(preview().tree())
        .filteredOn(branch -> branch.kind() == Branch.Kind.FOLDER && branch.depth() == 1)
        .extracting(Branch::text)
        .containsExactly("01_frames", "09_paper");
    assertThat(preview().tree())
        .filteredOn(branch -> branch.kind() == Branch.Kind.EXAMPLE)
        .singleElement()
        .satisfies(
            branch -> {
              assertThat(branch.depth()).isEqualTo(2);
              assertThat(branch.text()).startsWith("LUMO_");
            });
  }

  @Test
  void putsAFindingBesideTheFieldThatItConcerns() {
    entry("client").text().set("LUMO");
    entry("day").text().set("the day after");
    assertThat(entry("day").beside().get().findings()).isNotEmpty();
    assertThat(entry("client").beside().get().findings()).isEmpty();
    assertThat(entry("title").beside().get().findings()).isEmpty();
    assertThat(model.canStart().get()).isFalse();
    assertThat(preview().ruler()).anyMatch(Segment::example);
  }

  @Test
  void takesAFindingAwayWhenTheFieldIsFixed() {
    entry("client").text().set("LUMO");
    entry("day").text().set("the day after");
    entry("day").text().set("2026-11-26");
    assertThat(entry("day").beside().get().findings()).isEmpty();
    assertThat(model.canStart().get()).isTrue();
  }

  @Test
  void saysHowPeoplesTextBecameLegal() {
    entry("client").text().set("LUMO");
    entry("title").text().set("Été à Åre");
    var beside = entry("title").beside().get();
    assertThat(beside.became()).isEqualTo("ete-a-are");
    assertThat(beside.rules()).isNotEmpty();
    assertThat(entry("client").beside().get().became()).isEmpty();
  }

  @Test
  void startsAJobAndOpensIt() {
    entry("client").text().set("LUMO");
    model.start();
    assertThat(troubles).isEmpty();
    assertThat(opened).containsExactly(folder.resolve("jobs/2026-11-25_LUMO"));
    assertThat(opened.getFirst().resolve("01_frames")).isDirectory();
  }

  @Test
  void remembersTheConventionThePlaceAndTheClientForNextTime() {
    entry("client").text().set("LUMO");
    model.start();
    var next = model(Tasks.immediate());
    next.gather(List.of());
    assertThat(next.conventions())
        .extracting(StartModel.KnownConvention::title)
        .containsExactly("Days of a label");
    assertThat(next.place().get()).isEqualTo(folder.resolve("jobs"));
    assertThat(next.entries())
        .filteredOn(entry -> entry.name().equals("client"))
        .singleElement()
        .satisfies(entry -> assertThat(entry.recent()).containsExactly("LUMO"));
  }

  @Test
  void saysTroubleWhenTheJobIsThereAlready() {
    entry("client").text().set("LUMO");
    model.start();
    model.start();
    assertThat(troubles)
        .singleElement()
        .satisfies(trouble -> assertThat(trouble).hasMessageContaining("exists already"));
    assertThat(opened).hasSize(1);
    assertThat(model.busy().get()).isFalse();
  }

  @Test
  void doesNotStartByAFaultyConvention() throws IOException {
    var faulty = folder.resolve("faulty.yaml");
    Files.writeString(faulty, CONVENTION.replace("{client}[_{title}]", "{client}_{nobody}"));
    entry("client").text().set("LUMO");
    model.use(faulty);
    assertThat(model.conventionFindings().get())
        .anyMatch(finding -> finding.severity() == Severity.ERROR && finding.line() > 0);
    assertThat(model.entries()).isEmpty();
    assertThat(model.canStart().get()).isFalse();
  }

  @Test
  void keepsWhatWasTypedWhenTheConventionChanges() throws IOException {
    var other = folder.resolve("other.yaml");
    Files.writeString(other, CONVENTION.replace("Days of a label", "Another"));
    entry("client").text().set("LUMO");
    model.use(other);
    assertThat(model.chosen().get().title()).isEqualTo("Another");
    assertThat(entry("client").text().get()).isEqualTo("LUMO");
    assertThat(preview().jobName()).isEqualTo("2026-11-25_LUMO");
  }

  @Test
  void worksOnNothingButTheNewestWhileOneTypesFast() {
    var background = new ArrayDeque<Runnable>();
    model = model(new Tasks(background::add, Runnable::run));
    model.gather(List.of(folder.resolve("templates")));
    while (!background.isEmpty()) {
      background.poll().run();
    }
    for (var text : List.of("L", "LU", "LUM", "LUMO", "LUMOS")) {
      entry("client").text().set(text);
      assertThat(background).hasSizeLessThanOrEqualTo(1);
    }
    while (!background.isEmpty()) {
      background.poll().run();
    }
    assertThat(ruler()).isEqualTo("2026-11-25_LUMOS");
  }

  @Test
  void everyTextOfTheFormIsThere() {
    var texts = Texts.in(Locale.ENGLISH);
    var types =
        Set.of("date", "code", "words", "person", "number", "counter", "choice", "gtin", "fixed");
    assertThat(types).allMatch(type -> texts.has("start.type." + type));
  }
}
