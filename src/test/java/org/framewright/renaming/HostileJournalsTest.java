package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.framewright.base.Progress;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Folders of journals as somebody would make them who means harm. */
class HostileJournalsTest {
  private static final Duration HANGS = Duration.ofMinutes(30);

  @TempDir Path scratch;
  private Path root;
  private Path journals;

  @BeforeEach
  void folders() throws IOException {
    root = Files.createDirectory(scratch.toRealPath().resolve("job"));
    journals = Files.createDirectories(root.resolve(".framewright/renames"));
    Files.writeString(root.resolve("a"), "a");
  }

  @Tag("slow")
  @Test
  void noCraftedFolderIsEscapedFromOrLosesAFileOrThrows(TestReporter reporter) throws Exception {
    noCraftedFolder(0, 60, reporter, "Applied", "Nothing", "Refused", "Recovery Refused");
  }

  @Test
  @Tag("slow")
  void noneOfManyCraftedFoldersIsEscapedFromOrLosesAFileOrThrows(TestReporter reporter)
      throws Exception {
    noCraftedFolder(1_000, 3_000, reporter, "Applied", "Nothing", "Refused", "Recovery Stuck");
  }

  private void noCraftedFolder(long first, int count, TestReporter reporter, String... met)
      throws Exception {
    var pipe = CraftedFolder.pipe(scratch);
    var tally = new TreeMap<String, Integer>();
    assertTimeoutPreemptively(
        HANGS,
        () -> {
          for (long seed = first; seed < first + count; seed++) {
            try (var crafted = CraftedFolder.make(scratch, pipe, seed)) {
              attack(crafted, tally);
            } catch (RuntimeException | IOException | AssertionError e) {
              throw new AssertionError("seed " + seed, e);
            }
          }
        });
    reporter.publishEntry("crafted folders", count + ": " + tally);
    // The folders are of use only if some of them get far.
    assertThat(tally.keySet()).contains(met);
  }

  private static void attack(CraftedFolder crafted, Map<String, Integer> tally) throws IOException {
    var outside = crafted.outside();
    var inside = crafted.inside();
    var renamer = Renamer.in(crafted.root());
    for (var batch : renamer.batches()) {
      assertThat(batch.trouble().length()).isLessThan(1_000);
      count(tally, "", renamer.undo(batch.id(), Progress.NONE));
    }
    renamer.nextUndo();
    renamer.nextRedo();
    renamer.interrupted();
    count(tally, "Recovery ", renamer.recover());
    var plan = renamer.plan(List.of(new RenameRequest(Path.of("c"), Path.of("d"))));
    count(tally, "", renamer.apply(plan, Progress.NONE));
    count(tally, "Recovery ", renamer.close());
    assertThat(crafted.outside()).isEqualTo(outside);
    assertThat(crafted.inside()).isEqualTo(inside);
  }

  private static void count(Map<String, Integer> tally, String what, Object outcome) {
    switch (outcome) {
      case Outcome.Refused refused -> assertThat(refused.why() + refused.remedy()).isNotBlank();
      case Recovery.Refused refused -> assertThat(refused.remedy()).isNotBlank();
      default -> {}
    }
    tally.merge(what + outcome.getClass().getSimpleName(), 1, Integer::sum);
  }

  @ParameterizedTest
  @ValueSource(strings = {"link", "folder", "pipe"})
  void aLockThatIsNoPlainFileIsRefusedAtOnce(String kind) throws Exception {
    var lock = journals.resolve("lock");
    var victim = scratch.resolve("victim");
    switch (kind) {
      case "link" -> SymbolicLinks.make(lock, victim);
      case "folder" -> Files.createDirectory(lock);
      default -> {
        var pipe = CraftedFolder.pipe(scratch);
        Assumptions.assumeTrue(pipe != null, "there are no pipes in folders here");
        Files.createLink(lock, pipe);
      }
    }
    var outcome =
        assertTimeoutPreemptively(
            HANGS,
            () -> {
              var renamer = Renamer.in(root);
              var plan = renamer.plan(List.of(new RenameRequest(Path.of("a"), Path.of("b"))));
              return renamer.apply(plan, Progress.NONE);
            });
    assertThat(outcome)
        .isInstanceOfSatisfying(
            Outcome.Refused.class,
            refused -> {
              assertThat(refused.why()).contains("lock").contains("a file was meant");
              assertThat(refused.remedy()).isEqualTo("Give a plain file.");
            });
    assertThat(victim).doesNotExist();
    assertThat(root.resolve("a")).exists();
  }

  @Test
  void aLineWithoutEndIsNotReadToItsEnd() throws IOException {
    var file = journals.resolve("0001-0a1b2c3d.jsonl");
    try (var journal = new RandomAccessFile(file.toFile(), "rw")) {
      journal.setLength(1L << 40);
    } catch (IOException e) {
      Assumptions.abort("no file of this size can be made here");
    }
    assertThat(Renamer.in(root).batches().getFirst().trouble())
        .contains("longer than those of any");
    assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Refused.class);
  }

  @Test
  void aJournalThatIsLargerThanAnyIsNotRead() throws IOException {
    var renamer = Renamer.in(root);
    var plan = renamer.plan(List.of(new RenameRequest(Path.of("a"), Path.of("b"))));
    var batch = ((Outcome.Applied) renamer.apply(plan, Progress.NONE)).batch();
    var file = journals.resolve(batch + ".jsonl");
    var bytes = Files.readAllBytes(file);
    int tail = new String(bytes, StandardCharsets.US_ASCII).indexOf("{\"commit\"");
    // A hole between the rename and the last lines, so that the ends look well.
    try (var channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      var end = new byte[bytes.length - tail + 1];
      end[0] = '\n';
      System.arraycopy(bytes, tail, end, 1, bytes.length - tail);
      channel.truncate(tail);
      channel.write(ByteBuffer.wrap(end), 1L << 33);
    }
    assertThat(renamer.batches().getFirst().state()).isEqualTo(BatchState.DONE);
    assertThat(renamer.undo(batch, Progress.NONE))
        .isInstanceOfSatisfying(
            Outcome.Refused.class,
            refused -> assertThat(refused.why()).contains("larger than any journal"));
    assertThat(root.resolve("b")).exists();
  }

  @Test
  void manyBatchesThatTakeEachOtherBackAreListedInATimeThatGrowsWithTheirNumber()
      throws IOException {
    int count = 500;
    var all = new ArrayList<String>();
    for (int i = 1; i <= count; i++) {
      var id = String.format("%04d-0a1b2c3d", i);
      var undoes = i == 1 ? id : String.format("%04d-0a1b2c3d", i - 1);
      chain(id, undoes);
      all.add(id);
    }
    var renamer = Renamer.in(root);
    assertTimeoutPreemptively(
        HANGS,
        () -> {
          assertThat(renamer.batches()).extracting(Batch::id).containsExactlyElementsOf(all);
          renamer.nextUndo();
          renamer.nextRedo();
          assertThat(renamer.interrupted()).isEmpty();
        });
  }

  private void chain(String id, String undoes) throws IOException {
    var file = journals.resolve(id + ".jsonl");
    var lines =
        List.of(
            "{\"framewright\":\"renames\",\"version\":1,\"batch\":\""
                + id
                + "\",\"at\":\"2026-11-25T09:30:00Z\",\"undoes\":\""
                + undoes
                + "\",\"guarantee\":\"native\",\"volume\":\"ext4\",\"folders\":[[]],\"renames\":1",
            "{\"in\":0,\"from\":\"a\",\"to\":\"b\",\"size\":1,\"modified\":0,\"key\":\"\"");
    var sealed = JournalForge.sealed(lines);
    Files.write(file, sealed);
    var text = new String(sealed, StandardCharsets.US_ASCII);
    int at = text.indexOf("{\"commit\":\"") + 11;
    Files.write(
        file,
        JournalForge.closed(
            "{\"end\":\"done\",\"at\":\"2026-11-25T09:30:01Z\",\"commit\":\""
                + text.substring(at, at + 64)
                + "\""),
        StandardOpenOption.APPEND);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[[],[]]",
        "[[],[\"a\"],[\"b\"]]",
        "[[\"..\"]]",
      })
  void aHeaderThatNamesFoldersTwiceOrMoreThanItNeedsIsRefused(String folders) throws IOException {
    var id = "0001-0a1b2c3d";
    chain(id, "");
    JournalForge.change(journals.resolve(id + ".jsonl"), "[[]]", folders);
    assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Refused.class);
  }

  @Test
  void aBatchWithTheLastNumberIsSaidToBeInTheWay() throws IOException {
    var id = "999999999-0a1b2c3d";
    chain(id, "");
    var renamer = Renamer.in(root);
    var plan = renamer.plan(List.of(new RenameRequest(Path.of("a"), Path.of("b"))));
    assertThat(renamer.apply(plan, Progress.NONE))
        .isInstanceOfSatisfying(
            Outcome.Refused.class,
            refused ->
                assertThat(refused.why() + refused.remedy())
                    .contains("999999999")
                    .contains("move it out"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"+1000000000-12-31T23:59:59.999999999Z", "-1000000000-01-01T00:00:00Z", "now"})
  void aTimeThatNoClockShowsIsRefused(String at) throws IOException {
    var id = "0001-0a1b2c3d";
    chain(id, "");
    JournalForge.change(journals.resolve(id + ".jsonl"), "2026-11-25T09:30:00Z", at);
    assertThat(Renamer.in(root).batches().getFirst().trouble()).contains("bad value of at");
  }

  @Test
  void whatIsNotOursInTheFolderOfJournalsStays() throws IOException {
    var kept = Files.writeString(journals.resolve("notes.tmp"), "somebody's");
    var folder = Files.createDirectory(journals.resolve("0007-0a1b2c3d.tmp"));
    var begun = Files.writeString(journals.resolve("0008-0a1b2c3d.tmp"), "never begun");
    var renamer = Renamer.in(root);
    var plan = renamer.plan(List.of(new RenameRequest(Path.of("a"), Path.of("b"))));
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
    assertThat(kept).exists();
    assertThat(folder).exists();
    assertThat(begun).doesNotExist();
  }

  @Test
  void twoRenamesThatClaimOneFileStandStill() throws IOException {
    Files.writeString(root.resolve("b"), "b");
    var seen = new NioDisk(root, MoverFallback.movers()).look(root.resolve("a")).seen();
    var rename = "{\"in\":0,\"from\":\"a\",\"to\":\"%s\",\"size\":1,\"modified\":%d,\"key\":\"%s\"";
    Files.write(
        journals.resolve("0001-0a1b2c3d.jsonl"),
        JournalForge.sealed(
            List.of(
                "{\"framewright\":\"renames\",\"version\":1,\"batch\":\"0001-0a1b2c3d\",\"at\":\"2026-11-25T09:30:00Z\",\"undoes\":\"\",\"guarantee\":\"native\",\"volume\":\"ext4\",\"folders\":[[]],\"renames\":2",
                rename.formatted("x", seen.modifiedNanos(), seen.key()),
                rename.formatted("y", seen.modifiedNanos(), seen.key()))));
    assertThat(Renamer.in(root).recover())
        .isInstanceOfSatisfying(
            Recovery.Stuck.class,
            stuck -> assertThat(stuck.files().getFirst().why()).contains("two renames"));
    assertThat(root.resolve("a")).hasContent("a");
  }
}
