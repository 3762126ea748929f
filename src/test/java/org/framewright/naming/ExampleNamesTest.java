package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import org.framewright.base.Text;
import org.junit.jupiter.api.Test;

class ExampleNamesTest {
  @Test
  void takesANameALine() {
    var names = ExampleNames.of("A_001\r\n\n  A_002.jpg \n");
    assertThat(names.names()).containsExactly("A_001", "A_002.jpg");
    assertThat(names.remarks()).isEmpty();
  }

  @Test
  void leavesOutWhatIsLongerThanAnyName() {
    var names = ExampleNames.of("A_001\n" + "x".repeat(1 << 20) + "\nA_002");
    assertThat(names.names()).containsExactly("A_001", "A_002");
    assertThat(names.remarks())
        .extracting(Text::english)
        .containsExactly("1 line is longer than any file’s name and left out");
  }

  @Test
  void endsAfterVeryManyAndSaysSo() {
    var names = ExampleNames.of("A_1\n".repeat(ExampleNames.MOST + 7));
    assertThat(names.names()).hasSize(ExampleNames.MOST);
    assertThat(names.remarks())
        .extracting(Text::english)
        .containsExactly("only the first 10000 names are looked at; 7 are left out");
  }
}
