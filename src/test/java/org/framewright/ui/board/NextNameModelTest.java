package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.SimpleObjectProperty;
import org.framewright.base.Problem;
import org.framewright.frames.FrameScan;
import org.framewright.job.NextName;
import org.framewright.live.JobView;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;

class NextNameModelTest {
  private static final Path FRAMES = Path.of("/shoots/job/01_frames");

  private final JobViews job = JobViews.of(3);
  private final SimpleObjectProperty<JobView> view = new SimpleObjectProperty<>(job.build());
  private final List<String> asked = new ArrayList<>();
  private final List<String> copied = new ArrayList<>();
  private final List<String> said = new ArrayList<>();
  private final List<Throwable> troubles = new ArrayList<>();
  private Optional<NextName> answer = Optional.empty();
  private boolean clipboardWorks = true;
  private final NextNameModel model =
      new NextNameModel(
          view,
          FRAMES,
          this::name,
          Texts.in(Locale.ENGLISH),
          code -> code.equals("F") ? "front" : code,
          Tasks.immediate(),
          name -> clipboardWorks && copied.add(name),
          said::add,
          troubles::add);

  private NextName name(String setup, Optional<String> seen, Path folder, FrameScan scan)
      throws IOException {
    asked.add(setup + " " + seen.orElse("-") + " " + folder);
    if (troubles.isEmpty() && setup.equals("003")) {
      throw new IOException("the disk is gone");
    }
    return answer.orElse(new NextName.Known("KVO_" + setup + "_" + seen.orElse("") + "_0001"));
  }

  private void onSet(String code, String seen) {
    job.state(code, SetupState.ON_SET).view(seen);
    view.set(job.build());
  }

  @Test
  void whileNothingIsOnSetThereIsNoNameAndThatIsSaid() {
    assertThat(model.obstacle().get()).isPresent();
    model.copy();
    assertThat(said).containsExactly(model.obstacle().get().orElseThrow());
    assertThat(copied).isEmpty();
    assertThat(asked).isEmpty();
  }

  @Test
  void copiesTheNameOfWhatIsOnSetAndSaysSo() {
    onSet("002", "F");
    assertThat(model.obstacle().get()).isEmpty();
    model.copy();
    assertThat(copied).containsExactly("KVO_002_F_0001");
    assertThat(said)
        .containsExactly("Copied: KVO_002_F_0001, the name of the next frame of 002 front.");
    assertThat(asked).containsOnly("002 F " + FRAMES);
  }

  @Test
  void asksAgainOnlyWhenWhatTheNameDependsOnChanges() {
    onSet("002", "F");
    view.set(job.build());
    view.set(job.build());
    assertThat(asked).hasSize(1);
    onSet("002", "B");
    assertThat(asked).hasSize(2);
    job.state("002", SetupState.SHOT);
    view.set(job.build());
    assertThat(model.obstacle().get()).isPresent();
  }

  @Test
  void whyThereIsNoNameStandsThereBeforeSomebodyAsks() {
    answer =
        Optional.of(
            new NextName.Unknown(
                new Problem("Room: a value is missing", "setup 002", "Give room=A, or another.")));
    onSet("002", "F");
    var why =
        "There is no name for the next frame: setup 002: Room: a value is missing. Give room=A, or"
            + " another.";
    assertThat(model.obstacle().get()).contains(why);
    model.copy();
    assertThat(said).containsExactly(why);
    assertThat(copied).isEmpty();
  }

  @Test
  void aClipboardThatCannotBeWrittenLeavesTheNameToRead() {
    clipboardWorks = false;
    onSet("002", "F");
    model.copy();
    assertThat(said)
        .containsExactly("The clipboard could not be written; the next name is KVO_002_F_0001.");
  }

  @Test
  void aFailureThatNobodyForesawIsReportedWhenSomebodyAsks() {
    onSet("003", "F");
    assertThat(model.obstacle().get()).as("pressing tells what is wrong").isEmpty();
    assertThat(troubles).isEmpty();
    model.copy();
    assertThat(troubles).singleElement().isInstanceOf(IOException.class);
    assertThat(said).isEmpty();
  }

  @Test
  void aDisposedModelAsksNoMore() {
    model.dispose();
    onSet("002", "F");
    assertThat(asked).isEmpty();
  }
}
