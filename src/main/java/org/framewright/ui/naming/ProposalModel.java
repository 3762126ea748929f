package org.framewright.ui.naming;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.base.Problem;
import org.framewright.naming.ExampleNames;
import org.framewright.naming.Proposal;
import org.framewright.naming.Proposal.Role;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * A convention proposed from names in use: whatever a person gives or says is worked out in the
 * background, the newest last. It is saved only where nothing is yet.
 */
final class ProposalModel {
  /** Characters of names that are taken; they are kept in a field in which one types. */
  static final int MOST_CHARACTERS = 100_000;

  private final Tasks tasks;
  private final Texts texts;
  private final Consumer<Throwable> trouble;
  private final Consumer<Path> saved;

  private final StringProperty names = new SimpleStringProperty("");
  private final StringProperty job = new SimpleStringProperty("");
  private final StringProperty title = new SimpleStringProperty("");
  private final Map<Integer, Role> said = new LinkedHashMap<>();
  private int pieces;

  private final ReadOnlyObjectWrapper<Proposed> proposed =
      new ReadOnlyObjectWrapper<>(Proposed.NOTHING);
  private final BooleanProperty onlyUnread = new SimpleBooleanProperty(false);
  private final ObservableList<Proposal.Example> rows = FXCollections.observableArrayList();
  private final BooleanProperty current = new SimpleBooleanProperty(true);
  private final BooleanProperty writing = new SimpleBooleanProperty(false);
  private final ReadOnlyObjectWrapper<Optional<Said>> outcome =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final BooleanBinding canSave;
  private final Newest<Proposed.Draft, Proposed> proposals;

  /**
   * What came of saving.
   *
   * @param file where it was saved; empty where it was not
   */
  record Said(Optional<Path> file, String what) {}

  /**
   * @param saved gets the file that was written, on the interface thread
   */
  ProposalModel(Tasks tasks, Texts texts, Consumer<Throwable> trouble, Consumer<Path> saved) {
    this.tasks = tasks;
    this.texts = texts;
    this.trouble = trouble;
    this.saved = saved;
    this.proposals = new Newest<>(tasks, Proposed::of, this::show, trouble);
    names.addListener(_ -> work());
    job.addListener(_ -> work());
    title.addListener(_ -> work());
    onlyUnread.addListener(_ -> showRows());
    canSave =
        Bindings.createBooleanBinding(
            () -> proposed.get().proposal().isPresent() && current.get() && !writing.get(),
            proposed,
            current,
            writing);
  }

  /** Names of frames, one a line. */
  StringProperty names() {
    return names;
  }

  /** The name of a job's folder, if there is one. */
  StringProperty job() {
    return job;
  }

  /** What the convention is called. */
  StringProperty title() {
    return title;
  }

  /** What the names become. */
  ReadOnlyObjectProperty<Proposed> proposed() {
    return proposed.getReadOnlyProperty();
  }

  /** Whether only the examples are shown that are not read back. */
  BooleanProperty onlyUnread() {
    return onlyUnread;
  }

  /** The examples that are shown. */
  ObservableList<Proposal.Example> rows() {
    return rows;
  }

  /** What came of the last saving, until something else is given or said. */
  ReadOnlyObjectProperty<Optional<Said>> outcome() {
    return outcome.getReadOnlyProperty();
  }

  /** Whether there is something to save, and it is of what is given now. */
  BooleanBinding canSave() {
    return canSave;
  }

  /** Says what a piece is. What was said of other pieces holds while there are as many. */
  void say(int piece, Role role) {
    int now = proposed.get().columns().size();
    if (now != pieces) {
      said.clear();
      pieces = now;
    }
    said.remove(piece);
    said.put(piece, role);
    work();
  }

  /** Takes back all that was said of the pieces. */
  void forget() {
    said.clear();
    work();
  }

  /** Whether anything was said of the pieces. */
  boolean hasSaid() {
    return !said.isEmpty();
  }

  /**
   * What of a pasted text is taken: lines are cut behind what is too long for a name, and the text
   * behind {@code room} characters, at the end of a line.
   */
  static String taken(String pasted, int room) {
    var taken = new StringBuilder();
    int at = 0;
    while (at < pasted.length()) {
      int end = pasted.indexOf('\n', at);
      end = end < 0 ? pasted.length() : end + 1;
      boolean whole = end - at <= ExampleNames.LONGEST + 1;
      var line =
          whole ? pasted.substring(at, end) : pasted.substring(at, at + ExampleNames.LONGEST + 1);
      if (taken.length() + line.length() > room) {
        break;
      }
      taken.append(line);
      if (!whole && pasted.charAt(end - 1) == '\n') {
        taken.append('\n');
      }
      at = end;
    }
    return taken.toString();
  }

  /** The name that its file may have. */
  String suggestedFile() {
    var name =
        proposed
            .get()
            .proposal()
            .flatMap(Proposal::convention)
            .map(convention -> convention.title())
            .orElse("")
            .toLowerCase(texts.locale())
            .replaceAll("[^\\p{L}\\p{N}]+", "-")
            .replaceAll("^-+|-+$", "");
    return (name.isEmpty() ? "our-names" : name.substring(0, Math.min(40, name.length())))
        + ".yaml";
  }

  /** Saves it, if nothing has that name. */
  void save(Path file) {
    if (!canSave.get()) {
      return;
    }
    var made = proposed.get().proposal().orElseThrow();
    writing.set(true);
    outcome.set(Optional.empty());
    tasks.quietly(
        () -> made.save(file),
        refused -> {
          writing.set(false);
          wrote(file, refused);
        },
        failure -> {
          writing.set(false);
          outcome.set(
              Optional.of(
                  new Said(Optional.empty(), texts.get("naming.notSaved", file.toString()))));
          trouble.accept(failure);
        });
  }

  private void wrote(Path file, Optional<Problem> refused) {
    if (refused.isPresent()) {
      outcome.set(Optional.of(new Said(Optional.empty(), texts.sentences(refused.get()))));
      return;
    }
    outcome.set(
        Optional.of(new Said(Optional.of(file), texts.get("proposal.saved", file.toString()))));
    saved.accept(file);
  }

  private void work() {
    current.set(false);
    outcome.set(Optional.empty());
    proposals.offer(draft());
  }

  private Proposed.Draft draft() {
    return new Proposed.Draft(
        names.get(), job.get(), title.get(), pieces, new LinkedHashMap<>(said));
  }

  private void show(Proposed now) {
    proposed.set(now);
    current.set(now.of().equals(draft()));
    showRows();
  }

  private void showRows() {
    if (proposed.get().unread().isEmpty()) {
      onlyUnread.set(false);
    }
    rows.setAll(onlyUnread.get() ? proposed.get().unread() : proposed.get().examples());
  }
}
