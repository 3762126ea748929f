package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.net.InetAddress;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** RFC 9110, section 7.2; what DNS rebinding is: a name of somebody else's for our address. */
class HostsTest {
  private static final InetAddress HERE = InetAddress.ofLiteral("192.168.1.20");

  @ParameterizedTest
  @CsvSource({
    "192.168.1.20:8470, true",
    "192.168.1.20:8471, false",
    "192.168.1.20, false",
    "192.168.1.21:8470, false",
    "evil.example:8470, false",
    "192.168.1.20.evil.example:8470, false",
    "localhost:8470, false",
    "set.studio.example:8470, true",
    "SET.studio.example:8470, true",
    "set.studio.example.:8470, false",
    "'', false",
    ":8470, false",
    "[192.168.1.20]:8470, false",
    "[::1]:8470, false",
    "[::1, false",
    "192.168.1.20:8470:8470, false",
    "3232235796:8470, false"
  })
  void onlyOurAddressAndTheGivenNameAreOurs(String host, boolean ours) {
    var hosts = new Hosts(Optional.of("set.studio.example"));
    assertThat(hosts.isOurs(host, HERE, 8470, 80)).isEqualTo(ours);
  }

  @Test
  void noHostIsNotOurs() {
    assertThat(new Hosts(Optional.empty()).isOurs(null, HERE, 8470, 80)).isFalse();
  }

  @Test
  void thePortOfTheSchemeNeedNotBeNamed() {
    assertThat(new Hosts(Optional.empty()).isOurs("192.168.1.20", HERE, 443, 443)).isTrue();
  }

  @Test
  void thisComputerMayCallItselfLocalhost() {
    var hosts = new Hosts(Optional.empty());
    assertThat(hosts.isOurs("localhost:1", InetAddress.ofLiteral("127.0.0.1"), 1, 80)).isTrue();
    assertThat(hosts.isOurs("[::1]:1", InetAddress.ofLiteral("::1"), 1, 80)).isTrue();
    assertThat(hosts.isOurs("[::2]:1", InetAddress.ofLiteral("::1"), 1, 80)).isFalse();
    assertThat(hosts.isOurs("[evil.example]:1", InetAddress.ofLiteral("::1"), 1, 80)).isFalse();
  }
}
