package org.framewright.ui.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.framewright.ui.handoff.CheckLine.Kind;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Packages of strangers. The checksum of "abc" is the example of FIPS 180-2, appendix B.1. */
class CheckModelTest {
  private static final String ABC =
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

  @TempDir private Path folder;
  private final List<Throwable> troubles = new ArrayList<>();
  private final CheckModel model = model(Tasks.immediate());

  private CheckModel model(Tasks tasks) {
    return new CheckModel(
        tasks,
        HandOffScene.TEXTS,
        Clock.fixed(Instant.parse("2026-11-23T12:00:00Z"), ZoneOffset.UTC),
        troubles::add);
  }

  @AfterEach
  void nothingUnforeseenHappened() {
    assertThat(troubles).isEmpty();
  }

  private void list(String... lines) throws Exception {
    Files.writeString(folder.resolve("SHA256SUMS"), String.join("\n", lines) + "\n");
  }

  private CheckModel.Answer answer() {
    return model.answer().get().orElseThrow();
  }

  @Test
  void aWholePackageIsCalledSo() throws Exception {
    Files.writeString(folder.resolve("one.jpg"), "abc");
    list(ABC + "  one.jpg");
    model.check(folder);
    assertThat(answer().verdict()).isEqualTo(Verdict.WHOLE);
    assertThat(answer().what().what()).isEqualTo("The one file is what its list says.");
    assertThat(answer().by()).isEqualTo("List of checksums: 1 file compared by SHA256SUMS");
    assertThat(answer().sentence()).contains(" is whole: its one file was read at 12:00");
    assertThat(model.lines()).isEmpty();
  }

  @Test
  void whatIsWrongIsCountedAndSaidFileByFile() throws Exception {
    Files.writeString(folder.resolve("one.jpg"), "abd");
    Files.writeString(folder.resolve("more.jpg"), "more");
    list(ABC + "  one.jpg", ABC + "  two.jpg", ABC + "  three.jpg");
    model.check(folder);
    assertThat(answer().verdict()).isEqualTo(Verdict.NOT_WHOLE);
    assertThat(answer().counts())
        .containsEntry(Kind.DIFFERENT, 1)
        .containsEntry(Kind.MISSING, 2)
        .containsEntry(Kind.UNLISTED, 1);
    assertThat(answer().sentence()).contains("1 different, 2 missing and 1 in no list");
    assertThat(model.lines())
        .extracting(CheckLine::kind)
        .startsWith(Kind.DIFFERENT, Kind.MISSING, Kind.MISSING);
    model.only().set(Optional.of(Kind.MISSING));
    assertThat(model.lines()).extracting(CheckLine::file).containsExactly("three.jpg", "two.jpg");
  }

  @Test
  void aFolderWithoutListsIsNoPackage() throws Exception {
    Files.writeString(folder.resolve("one.jpg"), "abc");
    model.check(folder);
    assertThat(answer().verdict()).isEqualTo(Verdict.NONE);
    assertThat(answer().sentence()).isEmpty();
  }

  @Test
  void aFolderThatIsGoneOrIsAFileIsASentence() throws Exception {
    model.check(folder.resolve("unplugged"));
    assertThat(answer().verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(answer().what().what()).contains("unplugged");
    model.check(Files.writeString(folder.resolve("a file"), "abc"));
    assertThat(answer().verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(answer().what().what()).contains("a file");
  }

  @Test
  void namesThatActOnAScreenAreShownByTheirCodes() throws Exception {
    var hostile = "\u001b[2Jgone\u202egpj.exe";
    list(ABC + "  " + hostile, ABC + "  " + "x".repeat(255));
    model.check(folder);
    assertThat(model.lines())
        .extracting(CheckLine::file)
        .contains("\\u{1B}[2Jgone\\u{202E}gpj.exe", "x".repeat(255));
  }

  @Test
  void fiveThousandFilesAreSaid() throws Exception {
    var lines = new ArrayList<String>();
    for (int i = 0; i < 5000; i++) {
      lines.add(ABC + "  " + i + ".jpg");
    }
    Files.write(folder.resolve("SHA256SUMS"), lines, StandardCharsets.UTF_8);
    model.check(folder);
    assertThat(answer().counts()).containsEntry(Kind.MISSING, 5000);
    assertThat(model.lines()).hasSize(5000);
  }

  @Test
  void stoppedItSaysThatNobodyKnows() throws Exception {
    Deque<Runnable> background = new ArrayDeque<>();
    var slow = model(new Tasks(background::add, Runnable::run));
    Files.writeString(folder.resolve("one.jpg"), "abc");
    list(ABC + "  one.jpg");
    slow.check(folder);
    assertThat(slow.running().get()).isPresent();
    slow.stop();
    background.remove().run();
    assertThat(slow.running().get()).isEmpty();
    assertThat(slow.answer().get().orElseThrow().verdict()).isEqualTo(Verdict.UNKNOWN);
  }

  @Test
  void theAnswerOfAnotherFolderIsNotShownForThisOne() throws Exception {
    Deque<Runnable> background = new ArrayDeque<>();
    var slow = model(new Tasks(background::add, Runnable::run));
    var other = Files.createDirectory(folder.resolve("other"));
    Files.writeString(folder.resolve("one.jpg"), "abc");
    list(ABC + "  one.jpg");
    slow.check(other);
    slow.check(folder);
    background.remove().run();
    assertThat(slow.answer().get()).isEmpty();
    background.remove().run();
    assertThat(slow.answer().get().orElseThrow().folder()).isEqualTo(folder);
    assertThat(slow.answer().get().orElseThrow().verdict()).isEqualTo(Verdict.WHOLE);
  }
}
