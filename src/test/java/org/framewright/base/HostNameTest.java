package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class HostNameTest {
  @Test
  void theEnvironmentSaysIt() {
    assertThat(HostName.in(Map.of("COMPUTERNAME", "SET-A"))).contains("SET-A");
    assertThat(HostName.in(Map.of("HOSTNAME", " set-b "))).contains("set-b");
    assertThat(HostName.in(Map.of("COMPUTERNAME", " ", "HOSTNAME", "set-b"))).contains("set-b");
  }

  @Test
  void anEmptyOneIsNone() {
    assertThat(HostName.in(Map.of("COMPUTERNAME", "", "HOSTNAME", "  "))).isEmpty();
    assertThat(HostName.in(Map.of())).isEmpty();
  }
}
