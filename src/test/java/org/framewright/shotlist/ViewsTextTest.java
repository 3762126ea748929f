package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ViewsTextTest {

  static Stream<List<String>> codes() {
    return Stream.of(
        List.of("\"x", ",b"),
        List.of("a,", "b"),
        List.of("a;", ";b"),
        List.of("\"", "\"\""),
        List.of("x\"", "y"),
        List.of("a, \"b\", c"));
  }

  @ParameterizedTest
  @MethodSource("codes")
  void readsViewsBackWhateverTheirNamesHold(List<String> codes) {
    var views = codes.stream().map(View::new).toList();
    assertThat(ViewsText.read(ViewsText.write(views))).isEqualTo(views);
  }

  @Test
  void takesWordsOfUpToThreeLettersForViewsOfTheirOwn() {
    assertThat(ViewsText.write(ViewsText.read("Frt Bck"))).isEqualTo("Frt, Bck");
    assertThat(ViewsText.write(ViewsText.read("Frt back"))).isEqualTo("Frt back");
  }

  @Test
  void readsNoViewBehindALastSeparator() {
    assertThat(ViewsText.read("F,")).containsExactly(new View("F"));
    assertThat(ViewsText.read(" - ")).isEmpty();
    assertThat(ViewsText.read("")).isEmpty();
  }
}
