package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.framewright.ui.FindModel.Line;
import org.framewright.ui.command.TypedWords;
import org.framewright.ui.page.Finder;
import org.framewright.ui.page.Finder.Found;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;

class FindModelTest {
  private final List<String> gone = new ArrayList<>();

  private Finder of(List<String> names) {
    return (typed, most) ->
        names.stream()
            .filter(typed::areIn)
            .limit(most)
            .map(name -> new Found(name, "", () -> gone.add(name)))
            .toList();
  }

  private FindModel model(Tasks tasks) {
    return new FindModel(
        List.of(
            new FindModel.Source(
                "Setups", of(List.of("001 Wool coat", "002 Wool hat", "003 Belt"))),
            new FindModel.Source(
                "Frames", of(IntStream.range(0, 50).mapToObj(i -> "IMG_wool_" + i).toList()))),
        tasks,
        trouble -> {
          throw new AssertionError(trouble);
        });
  }

  @Test
  void whatIsFoundStandsByItsKindWhichIsNamedOnce() {
    var model = model(Tasks.immediate());
    model.typed().set("WOOL  0");
    assertThat(model.lines().get())
        .extracting(line -> line.kind() + "|" + line.found().name())
        .startsWith("Setups|001 Wool coat", "|002 Wool hat", "Frames|IMG_wool_0", "|IMG_wool_10");
  }

  @Test
  void ofAKindSomeAreShownAndNothingWhereNothingIsTyped() {
    var model = model(Tasks.immediate());
    model.typed().set("wool");
    assertThat(model.lines().get()).hasSize(2 + 8);
    model.typed().set("  ");
    assertThat(model.lines().get()).isEmpty();
    assertThat(model.goal()).isEmpty();
  }

  @Test
  void theChosenLineIsGoneToAndTheChoiceStaysInTheList() {
    var model = model(Tasks.immediate());
    model.typed().set("wool");
    model.step(-1);
    assertThat(model.goal()).map(Found::name).contains("001 Wool coat");
    model.step(1);
    model.goal().orElseThrow().go().run();
    assertThat(gone).containsExactly("002 Wool hat");
    model.step(100);
    assertThat(model.goal()).map(Found::name).contains("IMG_wool_7");
    model.typed().set("belt");
    assertThat(model.goal()).map(Found::name).contains("003 Belt");
  }

  @Test
  void whatIsNoLongerTypedIsNotShown() {
    var waiting = new ArrayDeque<Runnable>();
    var model = model(new Tasks(waiting::add, Runnable::run));
    model.typed().set("wool");
    model.typed().set("belt");
    waiting.remove().run();
    assertThat(model.lines().get()).isEmpty();
    waiting.remove().run();
    assertThat(model.lines().get()).extracting(Line::kind).containsExactly("Setups");
  }

  @Test
  void aTextIsCalledJustSoWhateverItsCase() {
    assertThat(TypedWords.of(" A-12 ").are("a-12")).isTrue();
    assertThat(TypedWords.of("A 12").are("a 12")).isFalse();
    assertThat(TypedWords.of("12").are("a-12")).isFalse();
    assertThat(TypedWords.of(" \t ").isEmpty()).isTrue();
  }
}
