package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpenCommandTest {
  @TempDir private Path folder;
  private final List<Optional<Path>> opened = new ArrayList<>();
  private boolean canOpen = true;

  private Ran run(boolean display, Object... words) {
    var out = new StringWriter();
    var err = new StringWriter();
    var window =
        new Framewright.Window() {
          @Override
          public boolean hasDisplay() {
            return display;
          }

          @Override
          public void open(Optional<Path> job) {
            if (!canOpen) {
              throw new UnsupportedOperationException("Unable to load glass GTK library.");
            }
            opened.add(job);
          }
        };
    var args = List.of(words).stream().map(Object::toString).toArray(String[]::new);
    var status = Framewright.run(window, new PrintWriter(out), new PrintWriter(err), args);
    return new Ran(status, out.toString(), err.toString());
  }

  @Test
  void opensTheAppOnTheJobThatIsNamed() {
    assertThat(run(true, "open", folder).status()).isZero();
    assertThat(opened).containsExactly(Optional.of(folder));
  }

  @Test
  void opensTheAppWithoutAJobToo() {
    assertThat(run(true, "open").status()).isZero();
    assertThat(opened).containsExactly(Optional.empty());
  }

  @Test
  void opensTheAppWhereNothingIsSaidAtAll() {
    assertThat(run(true).status()).isZero();
    assertThat(opened).containsExactly(Optional.empty());
  }

  @Test
  void refusesAFolderThatIsNotThere() {
    var missing = folder.resolve("missing");
    var ran = run(true, "open", missing);
    assertThat(ran.status()).isEqualTo(ExitStatus.BAD_INPUT.code());
    assertThat(ran.err()).contains("there is no folder " + missing).contains("Name a job folder.");
    assertThat(opened).isEmpty();
  }

  @Test
  void saysWhatIsMissingWhereTheToolkitFindsNoLibrary() {
    canOpen = false;
    var ran = run(true, "open");
    assertThat(ran.status()).isEqualTo(ExitStatus.FAILED.code());
    assertThat(ran.err()).contains("no window can be opened here").contains("GTK 3");
  }

  @Test
  void saysWhatToDoWhereThereIsNoDisplay() {
    var ran = run(false, "open", folder);
    assertThat(ran.status()).isEqualTo(ExitStatus.BAD_INPUT.code());
    assertThat(ran.err()).contains("no display").contains("framewright --help");
    assertThat(run(false).err()).contains("Say what to do");
    assertThat(opened).isEmpty();
  }
}
