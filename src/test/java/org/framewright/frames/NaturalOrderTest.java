package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

final class NaturalOrderTest {
  @Test
  void putsNumbersInTheOrderOfTheirWorth() {
    assertThat(sorted("10", "9", "100", "2b", "2a", "02", "0", "000"))
        .containsExactly("0", "000", "02", "2a", "2b", "9", "10", "100");
  }

  @Test
  void comparesNumbersTooLongForAnyType() {
    assertThat(sorted("A100000000000000000000001", "A0100000000000000000000000", "A7"))
        .containsExactly("A7", "A0100000000000000000000000", "A100000000000000000000001");
  }

  private static List<String> sorted(String... texts) {
    return List.of(texts).stream().sorted(NaturalOrder.INSTANCE).toList();
  }
}
