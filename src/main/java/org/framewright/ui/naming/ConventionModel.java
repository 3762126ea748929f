package org.framewright.ui.naming;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.LongProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleLongProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.framewright.naming.Finding;
import org.framewright.naming.Severity;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * A convention being written: each change of its text is checked in the background, the newest
 * last. A file that somebody else changed meanwhile is not written over.
 */
final class ConventionModel {
  private final Tasks tasks;
  private final Texts texts;
  private final Consumer<Throwable> trouble;
  private final Consumer<Path> saved;

  private final StringProperty text = new SimpleStringProperty("");
  private final LongProperty framesPlanned = new SimpleLongProperty();
  private final ReadOnlyObjectWrapper<Optional<Path>> file =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final StringProperty onDisk = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<Checked> checked =
      new ReadOnlyObjectWrapper<>(Checked.NOTHING);
  private final ReadOnlyObjectWrapper<Optional<Said>> said =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final BooleanBinding changed;
  private final BooleanBinding canSave;
  private final Newest<Draft, Checked> checks;

  private record Draft(String text, String sourceName, long framesPlanned) {}

  /**
   * What came of saving.
   *
   * @param needsAPerson whether it was refused
   */
  record Said(boolean needsAPerson, String what) {}

  /** What came of writing a file. */
  private sealed interface Write {
    record Written(Path file, String text) implements Write {}

    record Refused(String why) implements Write {}
  }

  /**
   * @param saved told on the interface thread which file was written
   */
  ConventionModel(Tasks tasks, Texts texts, Consumer<Throwable> trouble, Consumer<Path> saved) {
    this.tasks = tasks;
    this.texts = texts;
    this.trouble = trouble;
    this.saved = saved;
    this.checks =
        new Newest<>(
            tasks,
            draft -> Checked.of(draft.text(), draft.sourceName(), draft.framesPlanned()),
            checked::set,
            trouble);
    text.addListener(_ -> check());
    framesPlanned.addListener(_ -> check());
    changed = text.isNotEqualTo(onDisk);
    canSave =
        Bindings.createBooleanBinding(() -> changed.get() && file.get().isPresent(), changed, file);
  }

  /** What is written. */
  StringProperty text() {
    return text;
  }

  /** Frames planned for each run of a counter; 0 if unknown. */
  LongProperty framesPlanned() {
    return framesPlanned;
  }

  /** Where it is kept; none for one that was never saved. */
  ReadOnlyObjectProperty<Optional<Path>> file() {
    return file.getReadOnlyProperty();
  }

  /** What the text is as a convention. */
  ReadOnlyObjectProperty<Checked> checked() {
    return checked.getReadOnlyProperty();
  }

  /** What came of the last saving. */
  ReadOnlyObjectProperty<Optional<Said>> said() {
    return said.getReadOnlyProperty();
  }

  /** Whether the text is another than on the disk. */
  BooleanBinding changed() {
    return changed;
  }

  BooleanBinding canSave() {
    return canSave;
  }

  /** Findings of a severity. */
  long count(Severity severity) {
    return checked.get().findings().stream()
        .map(Finding::severity)
        .filter(severity::equals)
        .count();
  }

  /**
   * Opens a convention's file.
   *
   * @param asDraft whether it is only where a new one begins: then it must be saved elsewhere
   */
  void open(Path from, boolean asDraft) {
    tasks.quietly(
        () -> Files.readString(from),
        read -> {
          file.set(asDraft ? Optional.empty() : Optional.of(from));
          onDisk.set(read);
          said.set(Optional.empty());
          text.set(read);
          check();
        },
        trouble);
  }

  /** Writes it to its file. */
  void save() {
    if (canSave.get()) {
      write(file.get().orElseThrow(), Optional.of(onDisk.get()));
    }
  }

  /** Writes it to another file, which is its file from then on. */
  void saveAs(Path to) {
    write(to, Optional.empty());
  }

  /** Goes back to what is on the disk. */
  void revert() {
    text.set(onDisk.get());
    said.set(Optional.empty());
  }

  private void check() {
    checks.offer(
        new Draft(
            text.get(),
            file.get().map(path -> path.getFileName().toString()).orElse(texts.get("naming.draft")),
            framesPlanned.get()));
  }

  /**
   * @param expected what the file must still hold; empty if whatever it holds may be replaced
   */
  private void write(Path to, Optional<String> expected) {
    var written = text.get();
    tasks.quietly(
        () -> writeFile(to, written, expected),
        outcome -> {
          switch (outcome) {
            case Write.Refused refused -> said.set(Optional.of(new Said(true, refused.why())));
            case Write.Written done -> {
              file.set(Optional.of(done.file()));
              onDisk.set(done.text());
              said.set(
                  Optional.of(new Said(false, texts.get("naming.saved", done.file().toString()))));
              saved.accept(done.file());
            }
          }
        },
        trouble);
  }

  private Write writeFile(Path to, String written, Optional<String> expected) throws IOException {
    if (expected.isPresent()
        && !(Files.exists(to) && Files.readString(to).equals(expected.get()))) {
      return new Write.Refused(texts.get("naming.changedOnDisk", to.toString()));
    }
    var folder = to.toAbsolutePath().getParent();
    var temporary = Files.createTempFile(folder, ".convention", ".tmp");
    try {
      try (var channel = FileChannel.open(temporary, StandardOpenOption.WRITE)) {
        var bytes = ByteBuffer.wrap(written.getBytes(StandardCharsets.UTF_8));
        while (bytes.hasRemaining()) {
          channel.write(bytes);
        }
        channel.force(true);
      }
      Files.move(temporary, to, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(temporary);
    }
    return new Write.Written(to, written);
  }
}
