package org.framewright.ui.scan;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import org.framewright.base.PlainText;
import org.framewright.job.Scanned;
import org.framewright.job.ScannerKeyboard;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/** What a scan does: without its questions, which a person answers. */
public final class ScanModel {
  /** A longer text is no code of a garment. */
  private static final int LONGEST = 100;

  /** What a scan acts on: the list of the job that is open. */
  public interface Target {
    /** The list as it is now. */
    ShotList list();

    /** The codes of the list, as far as they are read. */
    ListCodes codes();

    /** The setup that is on set. */
    Optional<String> onSet();

    /** Puts a setup on set, as a person does on the list. */
    void putOnSet(String code);

    /** Says something else of a setup, as a person does on the list. */
    void change(Setup setup);
  }

  /** What came of a scan. */
  sealed interface Heard {
    /** The setup that has the code is put on set. */
    record PutOnSet(Setup setup) implements Heard {}

    /** It is there already. */
    record OnSetAlready(Setup setup) implements Heard {}

    /** Several have the code. */
    record Several(String code, List<Setup> setups) implements Heard {
      public Several {
        setups = List.copyOf(setups);
      }
    }

    /** A code that was read rightly, and that no setup has. */
    record Unknown(String code) implements Heard {}

    /** No setup has it, and nothing says that it was read rightly, or that it is a code at all. */
    record Unclear(String text, boolean canAdd) implements Heard {}

    /** A slate that means no setup of the list. */
    record StraySlate(String setup, boolean ofAnotherJob) implements Heard {}

    /** The list is not read yet. */
    record NotYet(String text) implements Heard {}

    /** No job is open. */
    record NoJob(String text) implements Heard {}
  }

  private final Supplier<Optional<Target>> open;
  private final ReadOnlyBooleanWrapper canAdd = new ReadOnlyBooleanWrapper(false);
  private ScannerKeyboard keyboard = ScannerKeyboard.US;
  private String last = "";

  /**
   * @param open the job that is open, if one is
   */
  public ScanModel(Supplier<Optional<Target>> open) {
    this.open = open;
  }

  /** Whether a code was scanned that can be added to a setup. */
  public ReadOnlyBooleanProperty canAdd() {
    return canAdd.getReadOnlyProperty();
  }

  /** Whether a text is certainly a scan: its check is right, and the list has it. */
  public boolean knows(String text) {
    return open.get()
        .flatMap(job -> job.codes().latest())
        .filter(codes -> codes.has(text, keyboard))
        .isPresent();
  }

  /**
   * Hears a scan once the list is read, at once where it is.
   *
   * @param tooLong is done in its place where that takes too long
   */
  public void whenRead(Runnable then, Runnable tooLong) {
    open.get().ifPresentOrElse(job -> job.codes().whenCurrent(then, tooLong), then);
  }

  /** A text was scanned. */
  Heard hear(String typed) {
    var job = open.get();
    if (job.isEmpty()) {
      return new Heard.NoJob(PlainText.line(typed.strip()));
    }
    var codes = job.get().codes().current();
    if (codes.isEmpty()) {
      return new Heard.NotYet(PlainText.line(typed.strip()));
    }
    var read = codes.get().read(typed, keyboard);
    keyboard = read.keyboard();
    return switch (read.scanned()) {
      case Scanned.One(var setup) -> put(job.get(), setup);
      case Scanned.Several(var setups) -> new Heard.Several(PlainText.line(typed.strip()), setups);
      case Scanned.StraySlate(var setup, boolean ofAnotherJob) ->
          new Heard.StraySlate(setup, ofAnotherJob);
      case Scanned.Unknown(var code, boolean checked) -> unknown(code, checked);
    };
  }

  private static Heard put(Target job, Setup setup) {
    if (job.onSet().filter(setup.code()::equals).isPresent()) {
      return new Heard.OnSetAlready(setup);
    }
    job.putOnSet(setup.code());
    return new Heard.PutOnSet(setup);
  }

  private Heard unknown(String code, boolean checked) {
    boolean addable =
        !code.isBlank() && code.length() <= LONGEST && PlainText.line(code).equals(code);
    if (addable) {
      last = code;
    }
    canAdd.set(!last.isEmpty());
    return checked && addable
        ? new Heard.Unknown(code)
        : new Heard.Unclear(PlainText.line(code), addable);
  }

  /** What a scan would be about, in a line: the setup, or the code. */
  String called(String typed) {
    return PlainText.line(typed.strip());
  }

  /** The setup that is meant of several. */
  void choose(Setup setup) {
    open.get().ifPresent(job -> put(job, setup));
  }

  /** The code that was scanned last and that no setup had. */
  Optional<String> last() {
    return Optional.of(last).filter(code -> !code.isEmpty() && open.get().isPresent());
  }

  /** The setups of the list. */
  List<Setup> setups() {
    return open.get().map(job -> job.list().setups()).orElse(List.of());
  }

  /** Gives a setup a code more, as the list says it now. */
  void add(Setup setup, String code) {
    whenRead(() -> addNow(setup, code), () -> {});
  }

  private void addNow(Setup setup, String code) {
    open.get()
        .ifPresent(
            job ->
                job.codes()
                    .current()
                    .ifPresent(
                        codes ->
                            job.list()
                                .setup(setup.code())
                                .ifPresent(now -> job.change(codes.withCode(now, code)))));
    last = "";
    canAdd.set(false);
  }
}
