package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.framewright.base.Progress;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class RenamerTest {
  @TempDir Path root;
  private Renamer renamer;

  @BeforeEach
  void open() throws IOException {
    renamer = Renamer.in(root);
  }

  @Test
  void renamesFilesAndSaysSo() throws IOException {
    make("IMG_0001.jpg", "IMG_0002.jpg");
    var outcome = apply("IMG_0001.jpg", "A_001.jpg", "IMG_0002.jpg", "A_002.jpg");
    assertThat(applied(outcome).done()).isEqualTo(2);
    assertThat(files())
        .containsExactlyInAnyOrderEntriesOf(
            Map.of("A_001.jpg", "IMG_0001.jpg", "A_002.jpg", "IMG_0002.jpg"));
  }

  @Test
  void swapsCyclesChainsAndCaseChangesNeedNoOrder() throws IOException {
    make("a", "b", "c1", "c2", "c3", "d1", "d2", "img.jpg");
    var outcome =
        apply(
            "a", "b", "b", "a", "c1", "c2", "c2", "c3", "c3", "c1", "d1", "d2", "d2", "d3",
            "img.jpg", "IMG.jpg");
    assertThat(applied(outcome).done()).isEqualTo(8);
    assertThat(files())
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(
                "a", "b", "b", "a", "c1", "c3", "c2", "c1", "c3", "c2", "d2", "d1", "d3", "d2",
                "IMG.jpg", "img.jpg"));
  }

  @Test
  void whatABatchWasToRenameCanBeListed() throws IOException {
    make("a", "b");
    Files.createDirectory(root.resolve("sub"));
    var batch = applied(apply("a", "x", "b", "sub/b")).batch();
    assertThat(renamer.renames(batch))
        .containsExactly(
            new RenameRequest(Path.of("a"), Path.of("x")),
            new RenameRequest(Path.of("b"), Path.of("sub/b")));
  }

  @Test
  void renamesAcrossFoldersOfOneVolume() throws IOException {
    Files.createDirectories(root.resolve("day 1/x"));
    make("a.jpg", "day 1/a.jpg");
    apply("a.jpg", "day 1/x/a.jpg", "day 1/a.jpg", "a.jpg");
    assertThat(files())
        .containsEntry("day 1/x/a.jpg", "a.jpg")
        .containsEntry("a.jpg", "day 1/a.jpg");
  }

  @Test
  void blocksAGroupWholeWhenOneOfItIsBlocked() throws IOException {
    make("1.raw", "1.jpg", "taken.jpg", "2.raw");
    var plan =
        renamer.plan(
            List.of(
                request("1.raw", "x.raw", "1"),
                request("1.jpg", "taken.jpg", "1"),
                request("2.raw", "1.raw", "2")));
    assertThat(plan.blocked()).isEqualTo(3);
    assertThat(plan.renames().get(0).why()).contains("group").contains("1.jpg");
    assertThat(plan.renames().get(1).why()).contains("taken");
    assertThat(plan.renames().get(2).why()).contains("taken");
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Nothing.class);
    assertThat(files()).hasSize(4).containsEntry("1.raw", "1.raw");
  }

  @Test
  void blocksWhatCannotBeDoneAndSaysWhyAndTheRemedy() throws IOException {
    make("a", "b", "c", "d", "IMG.jpg");
    Files.createDirectory(root.resolve("folder"));
    SymbolicLinks.make(root.resolve("link"), root.resolve("a"));
    SymbolicLinks.make(root.resolve("linked"), root.resolve("folder"));
    assertBlocked("nosuch", "x", "there is no file nosuch");
    assertBlocked("img.jpg", "x", "there is IMG.jpg");
    assertBlocked("folder", "x", "is a folder");
    assertBlocked("link", "x", "is a link");
    assertBlocked("a", "b", "taken");
    assertBlocked("a", "B", "taken on some disks by b");
    assertBlocked("a", "none/x", "no folder none");
    assertBlocked("a", "linked/x", "is a link");
    assertBlocked("a", "../x", "leads out");
    assertBlocked("../x", "b", "leads out");
    assertBlocked("a", root.resolveSibling("x").toString(), "outside");
    assertBlocked("a", ".framewright/x", "own files");
    assertBlocked("a", ".FrameWright/x", "own files");
    assertBlocked("a", "x".repeat(256), "256 ");
    assertBlocked("a", "fw-0001-00000000-1.tmp", "in progress");
    assertBlocked("", "x", "no path of a file");
    assertBlocked("a", "", "no path of a file");
    assertBlocked("/", "x", "no path of a file");
  }

  @Test
  void blocksBothWhenTwoWouldGetOneNameOnSomeDisk() throws IOException {
    make("a", "b", "c");
    var plan = renamer.plan(requests("a", "straße", "b", "STRASSE", "c", "e"));
    assertThat(plan.renames())
        .extracting(PlannedRename::status)
        .containsExactly(Status.BLOCKED, Status.BLOCKED, Status.READY);
  }

  @Test
  void blocksAFileThatWouldGetTwoNamesAndTwoNamesOfOneFile() throws IOException {
    make("a", "b");
    Files.createLink(root.resolve("b2"), root.resolve("b"));
    var plan = renamer.plan(requests("a", "x", "a", "y", "b", "b3", "b2", "b4"));
    assertThat(plan.blocked()).isEqualTo(4);
    assertThat(plan.renames().get(0).why()).contains("two names");
    assertThat(plan.renames().get(2).why()).contains("hard links");
  }

  @Test
  void aPlanIsBoundToTheStateItSaw() throws IOException {
    make("a", "b");
    var plan = renamer.plan(requests("a", "x", "b", "y"));
    Files.writeString(root.resolve("b"), "changed");
    var outcome = renamer.apply(plan, Progress.NONE);
    assertThat(outcome)
        .isInstanceOfSatisfying(
            Outcome.Refused.class, refused -> assertThat(refused.why()).contains("b was changed"));
    assertThat(files()).containsEntry("a", "a").containsEntry("b", "changed");
    assertThat(renamer.batches()).isEmpty();
  }

  @Test
  void applyingAPlanTwiceChangesNothingTheSecondTime() throws IOException {
    make("a", "b");
    var plan = renamer.plan(requests("a", "b", "b", "a"));
    renamer.apply(plan, Progress.NONE);
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Refused.class);
    assertThat(files()).containsEntry("a", "b").containsEntry("b", "a");
  }

  @Test
  void rollsBackWhenATargetIsTakenAfterThePlan() throws IOException {
    make("a", "b", "c");
    var plan = renamer.plan(requests("a", "b", "b", "a", "c", "x"));
    make("x");
    var outcome = renamer.apply(plan, Progress.NONE);
    assertThat(outcome)
        .isInstanceOfSatisfying(
            Outcome.RolledBack.class, back -> assertThat(back.why()).contains("taken the name x"));
    assertThat(files())
        .containsExactlyInAnyOrderEntriesOf(Map.of("a", "a", "b", "b", "c", "c", "x", "x"));
    assertThat(renamer.batches().getFirst().state()).isEqualTo(BatchState.ROLLED_BACK);
  }

  @Test
  void aCancelTakesBackWhatWasDone() throws IOException {
    make("a", "b", "c");
    var plan = renamer.plan(requests("a", "b", "b", "a", "c", "x"));
    for (int moves = 0; moves < 5; moves++) {
      assertThat(renamer.apply(plan, new CancelAfter(moves))).isInstanceOf(Outcome.Cancelled.class);
      assertThat(files()).containsExactlyInAnyOrderEntriesOf(Map.of("a", "a", "b", "b", "c", "c"));
    }
    assertThat(renamer.apply(plan, new CancelAfter(5))).isInstanceOf(Outcome.Applied.class);
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void aFolderReplacedByALinkMeanwhileLeadsToNoOtherFiles(@TempDir Path outside)
      throws IOException {
    var day = Files.createDirectory(root.resolve("day 1"));
    make("day 1/a", "day 1/b");
    Files.writeString(outside.resolve("a"), "a copy");
    Files.writeString(outside.resolve("b"), "a copy");
    var plan = renamer.plan(requests("day 1/a", "day 1/x", "day 1/b", "day 1/y"));
    renamer.apply(
        plan,
        new Progress() {
          @Override
          public void step(int done, int total) {
            try {
              if (done == 1) {
                Files.move(day, root.resolve("moved"));
                SymbolicLinks.make(day, outside);
              }
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          }
        });
    assertThat(files()).containsOnlyKeys("moved/x", "moved/y");
    assertThat(outside.resolve("b")).hasContent("a copy");
    assertThat(outside.resolve("y")).doesNotExist();
  }

  @Test
  void undoTakesBackAndUndoOfTheUndoDoesItAgain() throws IOException {
    make("a", "b", "c");
    var before = files();
    apply("a", "b", "b", "a", "c", "C");
    var after = files();
    var first = renamer.nextUndo().orElseThrow().id();
    var undo = applied(renamer.undo(first, Progress.NONE)).batch();
    assertThat(files()).isEqualTo(before);
    assertThat(renamer.nextUndo()).isEmpty();
    assertThat(renamer.undo(first, Progress.NONE)).isInstanceOf(Outcome.Refused.class);
    assertThat(renamer.nextRedo().orElseThrow().id()).isEqualTo(undo);
    applied(renamer.undo(undo, Progress.NONE));
    assertThat(files()).isEqualTo(after);
    assertThat(renamer.nextRedo()).isEmpty();
    applied(renamer.undo(renamer.nextUndo().orElseThrow().id(), Progress.NONE));
    assertThat(files()).isEqualTo(before);
    assertThat(renamer.nextUndo()).isEmpty();
  }

  @Test
  void undoOfAnEarlierBatchAfterFilesWereAdded() throws IOException {
    make("a", "b");
    var first = applied(apply("a", "x")).batch();
    applied(apply("b", "y"));
    make("new");
    applied(renamer.undo(first, Progress.NONE));
    assertThat(files())
        .containsExactlyInAnyOrderEntriesOf(Map.of("a", "a", "y", "b", "new", "new"));
  }

  @Test
  void undoSkipsAGroupThatWasChangedSinceAndSaysSo() throws IOException {
    make("1.raw", "1.jpg", "2.raw");
    var plan =
        renamer.plan(
            List.of(
                request("1.raw", "x.raw", "1"),
                request("1.jpg", "x.jpg", "1"),
                request("2.raw", "y.raw", "2")));
    var batch = applied(renamer.apply(plan, Progress.NONE)).batch();
    Files.setLastModifiedTime(root.resolve("x.jpg"), FileTime.from(Instant.EPOCH));
    var undone = applied(renamer.undo(batch, Progress.NONE));
    assertThat(undone.done()).isEqualTo(1);
    assertThat(undone.needsAPerson()).isTrue();
    assertThat(undone.renames())
        .extracting(PlannedRename::status)
        .containsExactly(Status.SKIPPED, Status.SKIPPED, Status.DONE);
    assertThat(undone.renames().get(1).why()).contains("changed");
    assertThat(files().keySet()).containsExactlyInAnyOrder("x.raw", "x.jpg", "2.raw");
  }

  @Test
  void aSecondProcessIsKeptOutWhileOneIsAtWork() throws IOException {
    make("a");
    var plan = renamer.plan(requests("a", "x"));
    var other = Renamer.in(root);
    var answers = new ArrayList<Outcome>();
    renamer.apply(
        plan,
        new Progress() {
          @Override
          public void step(int done, int total) {}

          @Override
          public boolean cancelled() {
            try {
              answers.add(other.apply(plan, Progress.NONE));
              assertThat(other.interrupted()).isEmpty();
              assertThat(other.recover()).isInstanceOf(Recovery.Refused.class);
            } catch (IOException e) {
              throw new AssertionError(e);
            }
            return false;
          }
        });
    assertThat(answers).hasOnlyElementsOfType(Outcome.Refused.class).isNotEmpty();
    assertThat(files()).containsOnlyKeys("x");
  }

  @Test
  void pruningKeepsWhatCouldBeUndoneUnlessAskedOtherwise() throws IOException {
    make("a", "b");
    var first = applied(apply("a", "x")).batch();
    var undo = applied(renamer.undo(first, Progress.NONE)).batch();
    var second = applied(apply("b", "y")).batch();
    var later = Instant.now().plusSeconds(60);
    var pruned = renamer.prune(later, false);
    assertThat(pruned.dropped()).extracting(Batch::id).containsExactly(first);
    assertThat(pruned.kept()).extracting(Batch::id).containsExactly(undo, second);
    assertThat(renamer.prune(later, true).dropped()).hasSize(2);
    assertThat(renamer.batches()).isEmpty();
  }

  @Test
  void namesThatAreNoTextSurviveApplyAndUndo() throws IOException {
    var name = PathBytes.name(new byte[] {'x', (byte) 0xFF, (byte) 0xC3, '%'});
    try {
      Files.writeString(root.resolve(name), "bytes");
    } catch (IOException e) {
      Assumptions.abort("this file system keeps only text as names");
    }
    var plan = renamer.plan(List.of(new RenameRequest(name, Path.of("text"))));
    var batch = applied(renamer.apply(plan, Progress.NONE)).batch();
    assertThat(root.resolve("text")).hasContent("bytes");
    applied(renamer.undo(batch, Progress.NONE));
    assertThat(Files.readString(root.resolve(name))).isEqualTo("bytes");
  }

  // ---- helpers

  private static final class CancelAfter implements Progress {
    private int left;

    CancelAfter(int moves) {
      left = moves;
    }

    @Override
    public void step(int done, int total) {}

    @Override
    public boolean cancelled() {
      return left-- == 0;
    }
  }

  private void assertBlocked(String from, String to, String why) throws IOException {
    var rename = renamer.plan(requests(from, to)).renames().getFirst();
    assertThat(rename.status()).as(from + " -> " + to).isEqualTo(Status.BLOCKED);
    assertThat(rename.why()).contains(why);
    assertThat(rename.remedy()).isNotEmpty();
  }

  private static Outcome.Applied applied(Outcome outcome) {
    assertThat(outcome).isInstanceOf(Outcome.Applied.class);
    return (Outcome.Applied) outcome;
  }

  private Outcome apply(String... pairs) throws IOException {
    return renamer.apply(renamer.plan(requests(pairs)), Progress.NONE);
  }

  private static RenameRequest request(String from, String to, String group) {
    return new RenameRequest(Path.of(from), Path.of(to), group);
  }

  private static List<RenameRequest> requests(String... pairs) {
    var requests = new ArrayList<RenameRequest>();
    for (int i = 0; i < pairs.length; i += 2) {
      requests.add(request(pairs[i], pairs[i + 1], ""));
    }
    return requests;
  }

  /** Makes files whose content is their name. */
  private void make(String... names) throws IOException {
    for (var name : names) {
      Files.writeString(root.resolve(name), name);
    }
  }

  /** Every file below the root, without our own: its path and its content. */
  private Map<String, String> files() throws IOException {
    var files = new TreeMap<String, String>();
    try (var all = Files.walk(root)) {
      for (var file : all.filter(path -> Files.isRegularFile(path)).toList()) {
        var path = root.relativize(file);
        if (!path.startsWith(".framewright")) {
          files.put(path.toString().replace(File.separatorChar, '/'), Files.readString(file));
        }
      }
    }
    return files;
  }
}
