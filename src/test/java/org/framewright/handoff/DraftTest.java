package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Recording;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The folder in which a package is made, and what may be removed of it after a kill. */
class DraftTest {
  @TempDir private Path folder;
  private Path draft;
  private String note;

  @BeforeEach
  void aPlace() {
    draft = Draft.beside(folder.resolve("for Bram"));
    note = Draft.note("20261123_KVO_look-book", 7, draft);
  }

  private Draft made() throws IOException {
    return Draft.create(draft, note);
  }

  @Test
  void itsNoteSaysWhoseItIsAndThatItMayGo() throws Exception {
    try (var _ = made()) {
      assertThat(draft.resolve("draft.txt"))
          .hasContent(
              "The unfinished package of hand-off 7 of 20261123_KVO_look-book, draft "
                  + draft.getFileName()
                  + ", by Framewright.\n"
                  + "The next hand-off of that job removes it; nothing else needs it.\n");
    }
    assertThat(Draft.isName(draft.getFileName().toString())).isTrue();
  }

  @Test
  void itIsOnTheDiskWithItsNoteBeforeAnythingIsPutIntoIt() throws Exception {
    var recording = Recording.on(folder);
    var name = draft.getFileName().toString();
    try (var _ = Draft.create(recording.root().resolve(name), note)) {
      assertThat(recording.ops())
          .filteredOn(op -> !(op instanceof DiskOp.Lock))
          .containsExactly(
              new DiskOp.CreateFolder(name),
              new DiskOp.Create(name + "/draft.txt"),
              new DiskOp.Write(name + "/draft.txt", 0, note.length()),
              new DiskOp.Force(name + "/draft.txt", false),
              new DiskOp.Force(name, true),
              new DiskOp.Force(".", true));
    }
  }

  @Test
  void aDraftThatCannotBeMadeLeavesNothingAndHoldsNothing() throws Exception {
    var recording = Recording.on(folder);
    var path = recording.root().resolve(draft.getFileName().toString());
    Draft.create(path, note).discard();
    var ops = recording.ops();
    for (int failing = 1; !(ops.get(failing) instanceof DiskOp.Delete); failing++) {
      if (ops.get(failing) instanceof DiskOp.Lock) {
        continue; // A volume without locks is no fault.
      }
      recording.clear();
      recording.failAt(failing, op -> new FileSystemException(op.path(), null, "no"));
      assertThatThrownBy(() -> Draft.create(path, note)).isInstanceOf(IOException.class);
      recording.heal();
      assertThat(path).as("failing at " + failing).doesNotExist();
    }
    try (var again = Draft.create(path, note)) {
      assertThat(again.packageFolder()).hasFileName("package");
    }
  }

  @Test
  void whereTheRestCannotBeRemovedEitherBothFailuresAreTold() throws Exception {
    var recording = Recording.on(folder);
    var path = recording.root().resolve(draft.getFileName().toString());
    recording.failFrom(2, op -> new FileSystemException(op.path(), null, "gone"));
    assertThatThrownBy(() -> Draft.create(path, note))
        .isInstanceOf(IOException.class)
        .satisfies(e -> assertThat(e.getSuppressed()).hasSize(1));
  }

  @Test
  void whatIsDiscardedIsGoneOnTheDiskAndItsNameIsFree() throws Exception {
    var recording = Recording.on(folder);
    var name = draft.getFileName().toString();
    var made = Draft.create(recording.root().resolve(name), note);
    Files.createDirectories(made.packageFolder().resolve("data"));
    Files.writeString(made.packageFolder().resolve("data/a.jpg"), "a");
    recording.clear();
    made.discard();
    assertThat(recording.ops())
        .endsWith(
            new DiskOp.Delete(name + "/package"),
            new DiskOp.Delete(name + "/draft.txt"),
            new DiskOp.Delete(name),
            new DiskOp.Force(".", true));
    try (var again = Draft.create(recording.root().resolve(name), note)) {
      assertThat(Draft.holdsPackage(recording.root().resolve(name))).isFalse();
      assertThat(again).isNotNull();
    }
  }

  @Test
  void whatAKillLeftIsRemovedOnceNobodyWritesIt() throws Exception {
    try (var writing = made()) {
      Files.createDirectory(writing.packageFolder());
      assertThat(Draft.isInUse(draft)).isTrue();
      assertThat(Draft.clear(draft, note)).isEqualTo(Draft.Cleared.IN_USE);
      assertThat(draft.resolve("package")).exists();
    }
    assertThat(Draft.isInUse(draft)).isFalse();
    assertThat(Draft.clear(draft, note)).isEqualTo(Draft.Cleared.REMOVED);
    assertThat(draft).doesNotExist();
    assertThat(Draft.clear(draft, note)).isEqualTo(Draft.Cleared.ABSENT);
    assertThat(Draft.isInUse(draft)).isFalse();
  }

  @Test
  void aDraftWithoutANoteIsRemovedOnlyWhereNothingIsInIt() throws Exception {
    Files.createDirectory(draft);
    assertThat(Draft.isInUse(draft)).isFalse();
    assertThat(Draft.clear(draft, note)).isEqualTo(Draft.Cleared.REMOVED);
    assertThat(draft).doesNotExist();
    Files.createDirectories(draft.resolve("package"));
    assertThat(Draft.clear(draft, note)).isEqualTo(Draft.Cleared.NOT_OURS);
    assertThat(draft.resolve("package")).exists();
  }

  @Test
  void whatIsNotCertainlyThisDraftIsLeft() throws Exception {
    made().close();
    assertThat(Draft.clear(draft, Draft.note("another job", 7, draft)))
        .isEqualTo(Draft.Cleared.NOT_OURS);
    assertThat(draft.resolve("draft.txt")).exists();
    var other = Files.createDirectory(folder.resolve(".framewright-mine"));
    var file = Files.writeString(Draft.beside(other), "a file");
    for (var path : List.of(other, file)) {
      assertThat(Draft.clear(path, note)).isEqualTo(Draft.Cleared.NOT_OURS);
      assertThat(path).exists();
    }
  }
}
