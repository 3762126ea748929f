package org.framewright.ui.scan;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.job.Job;
import org.framewright.job.SetupCodes;
import org.framewright.job.TestClock;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.FreshJob;
import org.framewright.ui.scan.ScanModel.Heard;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The product numbers are examples of GS1, from memory; their check digits are right. */
class ScanModelTest {
  private static final String COAT = "9506000134352";
  private static final String HAT = "614141000012";

  @TempDir private Path folder;
  private Job job;
  private ShotList list;
  private Optional<String> onSet = Optional.empty();
  private boolean open = true;
  private final List<String> done = new ArrayList<>();
  private final ListCodes codes =
      new ListCodes(
          now -> SetupCodes.of(job, now),
          Tasks.immediate(),
          failure -> {
            throw new AssertionError(failure);
          });
  private final ScanModel model =
      new ScanModel(() -> open ? Optional.of(new OfTheTest()) : Optional.empty());

  private final class OfTheTest implements ScanModel.Target {
    @Override
    public ShotList list() {
      return list;
    }

    @Override
    public ListCodes codes() {
      codes.of(list, job.slateKeys());
      return codes;
    }

    @Override
    public Optional<String> onSet() {
      return onSet;
    }

    @Override
    public void putOnSet(String code) {
      onSet = Optional.of(code);
      done.add("on set " + code);
    }

    @Override
    public void change(Setup setup) {
      list =
          new ShotList(
              list.setups().stream()
                  .map(one -> one.code().equals(setup.code()) ? setup : one)
                  .toList());
      done.add("changed " + setup.code() + " " + setup.columns());
    }
  }

  @BeforeEach
  void aListOfThree() throws Exception {
    job = FreshJob.titled(folder, new TestClock("2026-11-23T09:00:00Z"), List.of());
    list = new ShotList(List.of(setup("001", COAT), setup("002", HAT), setup("003", HAT)));
  }

  private static Setup setup(String code, String ean) {
    return new Setup(
        code, "", List.of(), OptionalInt.empty(), new LinkedHashMap<>(Map.of("EAN", ean)));
  }

  private Setup setup(String code) {
    return list.setup(code).orElseThrow();
  }

  @Test
  void aScanPutsTheSetupOfTheCodeOnSet() {
    assertThat(model.hear(COAT)).isEqualTo(new Heard.PutOnSet(setup("001")));
    assertThat(model.hear("0002")).isEqualTo(new Heard.PutOnSet(setup("002")));
    assertThat(done).containsExactly("on set 001", "on set 002");
  }

  @Test
  void whatIsOnSetAlreadyStaysThere() {
    model.hear(COAT);
    assertThat(model.hear(COAT)).isEqualTo(new Heard.OnSetAlready(setup("001")));
    assertThat(done).containsExactly("on set 001");
  }

  @Test
  void ofTwoSetupsWithOneCodeAPersonSaysWhich() {
    assertThat(model.hear(HAT))
        .isEqualTo(new Heard.Several(HAT, List.of(setup("002"), setup("003"))));
    assertThat(done).isEmpty();
    model.choose(setup("003"));
    assertThat(done).containsExactly("on set 003");
  }

  @Test
  void aCodeThatNoSetupHasChangesNothingUntilItIsAdded() {
    assertThat(model.hear("95012346")).isEqualTo(new Heard.Unknown("95012346"));
    assertThat(done).isEmpty();
    model.add(setup("002"), "95012346");
    assertThat(done).containsExactly("changed 002 {EAN=" + HAT + ", 95012346}");
    assertThat(model.hear("95012346")).isEqualTo(new Heard.PutOnSet(setup("002")));
  }

  @Test
  void textThatFitsNoCheckIsSaidAndCanBeAddedOnRequest() {
    assertThat(model.canAdd().get()).isFalse();
    assertThat(model.hear("KV-1007")).isEqualTo(new Heard.Unclear("KV-1007", true));
    assertThat(done).isEmpty();
    assertThat(model.canAdd().get()).isTrue();
    model.add(setup("001"), model.last().orElseThrow());
    assertThat(model.hear("kv-1007")).isEqualTo(new Heard.PutOnSet(setup("001")));
    assertThat(model.canAdd().get()).isFalse();
  }

  @Test
  void whatIsNoCodeIsNotAdded() {
    assertThat(model.hear("12\u202e34")).isEqualTo(new Heard.Unclear("12\\u{202E}34", false));
    assertThat(model.hear("    ")).isEqualTo(new Heard.Unclear("", false));
    assertThat(model.hear("x".repeat(5_000))).isInstanceOf(Heard.Unclear.class);
    assertThat(model.canAdd().get()).isFalse();
  }

  @Test
  void withoutAnEndOnlyACodeOfTheListWhoseCheckIsRightIsAScan() {
    assertThat(model.knows(COAT)).isTrue();
    assertThat(model.knows("95012346")).as("not in the list").isFalse();
    assertThat(model.knows("0001")).as("without a check").isFalse();
  }

  @Test
  void withoutAJobNothingIsDone() {
    open = false;
    assertThat(model.hear(COAT)).isEqualTo(new Heard.NoJob(COAT));
    assertThat(model.knows(COAT)).isFalse();
    assertThat(done).isEmpty();
  }
}
