package org.framewright.ui.naming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import org.framewright.disk.SymbolicLinks;
import org.framewright.naming.Severity;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ConventionModelTest {
  private static final String SOUND =
      """
      convention: Plain
      fields:
        client: {type: code, letters: upper, length: 2-6}
        setup:  {type: number, digits: 3, from: 1}
        take:   {type: counter, digits: 4, restarts: setup}
      names:
        job:   "job-{client}"
        frame: "{client}_{setup}_{take}"
      folders:
        frames: 01_frames
      """;

  @TempDir private Path folder;

  private final List<Throwable> troubles = new ArrayList<>();
  private final List<Path> saved = new ArrayList<>();
  private Path file;
  private ConventionModel model;

  @BeforeEach
  void aConventionIsOpen() throws IOException {
    file = folder.resolve("plain.yaml");
    Files.writeString(file, SOUND);
    model =
        new ConventionModel(Tasks.immediate(), Texts.in(Locale.ENGLISH), troubles::add, saved::add);
    model.open(file, false);
  }

  @Test
  void showsANameOfEachKind() {
    assertThat(model.checked().get().title()).contains("Plain");
    assertThat(model.checked().get().examples())
        .extracting(Checked.Example::kind)
        .containsExactly("job", "frame");
    assertThat(model.checked().get().examples()).allMatch(Checked.Example::made);
    assertThat(model.count(Severity.ERROR)).isZero();
  }

  @Test
  void findsAFaultWhileOneWrites() {
    model.text().set(SOUND.replace("{setup}_{take}", "{setup}_{tkae}"));
    assertThat(model.count(Severity.ERROR)).isEqualTo(1);
    assertThat(model.checked().get().findings().getFirst())
        .satisfies(
            finding -> {
              assertThat(finding.line()).isEqualTo(8);
              assertThat(finding.remedy()).isPresent();
            });
    assertThat(model.checked().get().title()).isEmpty();
  }

  @Test
  void forgetsTheFaultWhenItIsFixed() {
    model.text().set(SOUND.replace("{take}", "{tkae}"));
    model.text().set(SOUND);
    assertThat(model.checked().get().findings())
        .noneMatch(finding -> finding.severity() == Severity.ERROR);
  }

  @Test
  void putsErrorsBeforeTheRest() {
    model.text().set(SOUND.replace("frame: \"{client}_{setup}_{take}\"", "frame: \"{nobody}\""));
    assertThat(model.checked().get().findings())
        .extracting(finding -> finding.severity())
        .isSorted()
        .startsWith(Severity.ERROR);
  }

  @Test
  void survivesTextThatIsNoYamlAtAll() {
    model.text().set("{{{ : - [");
    assertThat(model.count(Severity.ERROR)).isPositive();
    assertThat(troubles).isEmpty();
  }

  @Test
  void savesToItsFileAndSaysWhoUsesIt() throws IOException {
    var changed = SOUND.replace("Plain", "Plainer");
    model.text().set(changed);
    assertThat(model.canSave().get()).isTrue();
    model.save();
    assertThat(Files.readString(file)).isEqualTo(changed);
    assertThat(saved).containsExactly(file);
    assertThat(model.changed().get()).isFalse();
    try (var left = Files.list(folder)) {
      assertThat(left).containsExactly(file);
    }
  }

  @Test
  void doesNotWriteOverWhatSomebodyElseWrote() throws IOException {
    model.text().set(SOUND.replace("Plain", "Mine"));
    Files.writeString(file, SOUND.replace("Plain", "Theirs"));
    model.save();
    assertThat(Files.readString(file)).contains("Theirs");
    assertThat(model.said().get())
        .hasValueSatisfying(said -> assertThat(said.needsAPerson()).isTrue());
    assertThat(model.changed().get()).isTrue();
    assertThat(saved).isEmpty();
  }

  @Test
  void saysSavedOnlyWhileTheTextIsWhatWasSaved() {
    model.text().set(SOUND.replace("Plain", "Plainer"));
    model.save();
    assertThat(model.said().get())
        .hasValueSatisfying(said -> assertThat(said.needsAPerson()).isFalse());
    model.text().set(SOUND.replace("Plain", "Plainest"));
    assertThat(model.said().get()).isEmpty();
  }

  @Test
  void aSaveThatFailsIsReportedAndNothingSaysSaved() throws IOException {
    model.text().set(SOUND.replace("Plain", "Mine"));
    model.saveAs(Files.createDirectory(folder.resolve("a-folder")));
    assertThat(troubles).hasSize(1);
    assertThat(model.said().get())
        .hasValueSatisfying(said -> assertThat(said.needsAPerson()).isTrue());
    assertThat(model.changed().get()).isTrue();
    assertThat(model.canSave().get()).isTrue();
    assertThat(saved).isEmpty();
    assertThat(Files.readString(file)).isEqualTo(SOUND);
  }

  @Test
  void nothingIsSavedBeforeTheWriteReturned() throws IOException {
    var waiting = new ArrayDeque<Runnable>();
    var slow =
        new ConventionModel(
            new Tasks(waiting::add, Runnable::run),
            Texts.in(Locale.ENGLISH),
            troubles::add,
            saved::add);
    slow.open(file, false);
    runAll(waiting);
    slow.text().set(SOUND.replace("Plain", "Slow"));
    runAll(waiting);
    slow.save();
    assertThat(slow.said().get()).isEmpty();
    assertThat(slow.canSave().get()).as("one write at a time").isFalse();
    slow.text().set(SOUND.replace("Plain", "Slower"));
    runAll(waiting);
    assertThat(Files.readString(file)).contains("Slow").doesNotContain("Slower");
    assertThat(slow.said().get()).as("what is written now is not saved").isEmpty();
    assertThat(slow.changed().get()).isTrue();
    slow.save();
    runAll(waiting);
    assertThat(Files.readString(file)).contains("Slower");
  }

  private static void runAll(Deque<Runnable> waiting) {
    while (!waiting.isEmpty()) {
      waiting.removeFirst().run();
    }
  }

  @Test
  void openingAnotherKeepsWhatIsNotSaved() throws IOException {
    var other = Files.writeString(folder.resolve("other.yaml"), SOUND.replace("Plain", "Other"));
    var mine = SOUND.replace("Plain", "Mine");
    model.text().set(mine);
    model.open(other, false);
    assertThat(model.text().get()).isEqualTo(mine);
    assertThat(model.file().get()).contains(file);
    assertThat(model.said().get())
        .hasValueSatisfying(said -> assertThat(said.what()).contains("not saved", "other.yaml"));
    model.revert();
    model.open(other, false);
    assertThat(model.text().get()).contains("Other");
  }

  @Test
  void aFileThatIsALinkStaysOne() throws IOException {
    var link = SymbolicLinks.make(folder.resolve("link.yaml"), file);
    model.open(link, false);
    model.text().set(SOUND.replace("Plain", "Linked"));
    model.save();
    assertThat(link).isSymbolicLink();
    assertThat(Files.readString(file)).contains("Linked");
  }

  @Test
  void aDraftIsSavedElsewhereAndThenHasItsFile() throws IOException {
    model.open(file, true);
    model.text().set(SOUND.replace("Plain", "Own"));
    assertThat(model.canSave().get()).isFalse();
    var own = folder.resolve("own.yaml");
    model.saveAs(own);
    assertThat(Files.readString(own)).contains("Own");
    assertThat(Files.readString(file)).isEqualTo(SOUND);
    assertThat(model.file().get()).contains(own);
  }

  @Test
  void goesBackToWhatIsSaved() {
    model.text().set("nothing of use");
    model.revert();
    assertThat(model.text().get()).isEqualTo(SOUND);
    assertThat(model.changed().get()).isFalse();
  }

  @Test
  void saysTroubleWhenTheFileIsGone() throws IOException {
    Files.delete(file);
    model.open(file, false);
    assertThat(troubles).hasSize(1);
  }

  @Test
  void checksTheCounterAgainstThePlannedFrames() {
    var before = model.checked().get().findings().size();
    model.framesPlanned().set(20_000);
    assertThat(model.checked().get().findings())
        .hasSizeGreaterThan(before)
        .anyMatch(finding -> finding.rule().id().equals("counter-full"));
  }

  @Test
  void showsTheWitnessOfAFaultOfTheLanguage() {
    model
        .text()
        .set(
            """
            convention: Two ways
            fields:
              one: {type: code, letters: upper, length: 1-4}
              two: {type: code, letters: upper, length: 1-4}
              take: {type: counter, digits: 4}
            names:
              job:   "{one}"
              frame: "{one}{two}_{take}"
            folders:
              frames: 01_frames
            """);
    assertThat(model.checked().get().findings())
        .filteredOn(finding -> finding.severity() == Severity.ERROR)
        .anySatisfy(
            finding ->
                assertThat(finding.witness())
                    .hasValueSatisfying(
                        witness -> assertThat(witness.first()).isNotEqualTo(witness.second())));
  }
}
