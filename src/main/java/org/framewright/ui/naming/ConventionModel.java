package org.framewright.ui.naming;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.InvalidationListener;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.LongProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleLongProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.framewright.base.DurableFiles;
import org.framewright.base.SmallFiles;
import org.framewright.naming.Convention;
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

  /** The text as it was when it was last the file's; a control may show line ends its own way. */
  private final StringProperty kept = new SimpleStringProperty("");

  private final BooleanProperty writing = new SimpleBooleanProperty(false);
  private final ReadOnlyObjectWrapper<Checked> checked =
      new ReadOnlyObjectWrapper<>(Checked.NOTHING);
  private final ReadOnlyObjectWrapper<Optional<Said>> said =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final BooleanBinding changed;
  private final BooleanBinding canSave;
  private final Newest<Draft, Checked> checks;

  /** What the file held when it was last read or written. */
  private String onDisk = "";

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
   * @param saved gets the file that was written, on the interface thread
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
    text.addListener(
        _ -> {
          // Whatever was saved, this text is not.
          said.set(Optional.empty());
          check();
        });
    framesPlanned.addListener(_ -> check());
    changed = text.isNotEqualTo(kept);
    canSave =
        Bindings.createBooleanBinding(
            () -> changed.get() && file.get().isPresent() && !writing.get(),
            changed,
            file,
            writing);
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

  /** Whether the text is another than was read or saved. */
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
    if (changed.get()) {
      said.set(Optional.of(new Said(true, texts.get("naming.unsavedFirst", from.toString()))));
      return;
    }
    tasks.quietly(
        () -> text(from),
        read -> {
          if (changed.get()) {
            return; // Somebody began to write meanwhile.
          }
          file.set(asDraft ? Optional.empty() : Optional.of(from));
          onDisk = read;
          kept.set(read);
          text.set(read);
          kept.set(text.get());
          said.set(Optional.empty());
          check();
        },
        trouble);
  }

  /** Writes it to its file. */
  void save() {
    if (canSave.get()) {
      write(file.get().orElseThrow(), Optional.of(onDisk));
    }
  }

  /** Writes it to another file, which is its file from then on. */
  void saveAs(Path to) {
    if (writing.get()) {
      writing.addListener(
          new InvalidationListener() {
            @Override
            public void invalidated(Observable now) {
              writing.removeListener(this);
              write(to, Optional.empty());
            }
          });
    } else {
      write(to, Optional.empty());
    }
  }

  /** Goes back to what is saved. */
  void revert() {
    text.set(kept.get());
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
    writing.set(true);
    said.set(Optional.empty());
    tasks.quietly(
        () -> writeFile(to, written, expected),
        outcome -> {
          writing.set(false);
          wrote(outcome);
        },
        failure -> {
          writing.set(false);
          said.set(Optional.of(new Said(true, texts.get("naming.notSaved", to.toString()))));
          trouble.accept(failure);
        });
  }

  private void wrote(Write outcome) {
    switch (outcome) {
      case Write.Refused refused -> said.set(Optional.of(new Said(true, refused.why())));
      case Write.Written done -> {
        file.set(Optional.of(done.file()));
        onDisk = done.text();
        kept.set(done.text());
        // Where somebody wrote on meanwhile, this text is not saved.
        if (!changed.get()) {
          said.set(Optional.of(new Said(false, texts.get("naming.saved", done.file().toString()))));
        }
        saved.accept(done.file());
      }
    }
  }

  /** A convention is a page of text; what is larger was chosen by mistake. */
  private static String text(Path file) throws IOException {
    return StandardCharsets.UTF_8
        .newDecoder()
        .decode(ByteBuffer.wrap(SmallFiles.read(file, Convention.MOST_BYTES)))
        .toString();
  }

  private Write writeFile(Path to, String written, Optional<String> expected) throws IOException {
    if (expected.isPresent() && !(Files.exists(to) && text(to).equals(expected.get()))) {
      return new Write.Refused(texts.get("naming.changedOnDisk", to.toString()));
    }
    // A link is kept, and what it leads to is written.
    var target = Files.exists(to) ? to.toRealPath() : to.toAbsolutePath();
    DurableFiles.replace(target, written.getBytes(StandardCharsets.UTF_8));
    return new Write.Written(to, written);
  }
}
