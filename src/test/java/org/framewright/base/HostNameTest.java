package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class ComputerNameTest {
  @Test
  void theEnvironmentSaysIt() {
    assertThat(ComputerName.in(Map.of("COMPUTERNAME", "SET-A"))).contains("SET-A");
    assertThat(ComputerName.in(Map.of("HOSTNAME", " set-b "))).contains("set-b");
    assertThat(ComputerName.in(Map.of("COMPUTERNAME", " ", "HOSTNAME", "set-b"))).contains("set-b");
  }

  @Test
  void anEmptyOneIsNone() {
    assertThat(ComputerName.in(Map.of("COMPUTERNAME", "", "HOSTNAME", "  "))).isEmpty();
    assertThat(ComputerName.in(Map.of())).isEmpty();
  }
}
