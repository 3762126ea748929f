package org.framewright.share;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShareServerTest {
  @TempDir private Path root;
  private SharedJob job;

  @BeforeEach
  void aSharedJob() throws Exception {
    job = SharedJob.in(root, 1);
  }

  @AfterEach
  void end() {
    job.close();
  }

  private ShareOptions at(InetAddress host, int port) {
    return new ShareOptions(Optional.of(host), port, Optional.empty(), job.settings);
  }

  @Test
  void theAddressIsTheOneThatWasAskedFor() {
    var address = job.server.address();
    assertThat(address.toString()).matches("http://127\\.0\\.0\\.1:[0-9]+/");
  }

  @Test
  void aNameThatWasGivenStandsInTheLinksAndIsOurs() throws Exception {
    job.server.close();
    var loopback = InetAddress.getByAddress("set.studio.example", new byte[] {127, 0, 0, 1});
    try (var server = ShareServer.start(job.live, at(loopback, 0))) {
      var port = server.address().getPort();
      assertThat(server.address().toString()).isEqualTo("http://set.studio.example:" + port + "/");
      var there = URI.create("http://127.0.0.1:" + port + "/");
      var answer = RawHttp.lines("GET / HTTP/1.1", "Host: set.studio.example:" + port);
      assertThat(RawHttp.status(RawHttp.send(there, answer))).isEqualTo(200);
    }
  }

  @Test
  void ofAllAddressesTheNetworksOneIsShown() throws Exception {
    assumeThat(Addresses.ofThisComputer()).as("this computer is in no network").isPresent();
    job.server.close();
    var everywhere = new ShareOptions(Optional.empty(), 0, Optional.empty(), job.settings);
    try (var server = ShareServer.start(job.live, everywhere)) {
      var seen = InetAddress.getByName(server.address().getHost());
      assertThat(seen.isLoopbackAddress() || seen.isAnyLocalAddress()).isFalse();
      // The loopback address is ours, too, and nothing else.
      var there = URI.create("http://127.0.0.1:" + server.address().getPort() + "/");
      var here = RawHttp.lines("GET / HTTP/1.1", "Host: localhost:" + there.getPort());
      assertThat(RawHttp.status(RawHttp.send(there, here))).isEqualTo(200);
    }
  }

  @Test
  void aPortThatIsTakenIsSaid() throws Exception {
    job.server.close();
    try (var taken = new ServerSocket()) {
      taken.bind(SharedJob.loopbackAt(0));
      assertThatThrownBy(() -> ShareServer.start(job.live, job.loopback(taken.getLocalPort())))
          .isInstanceOf(ShareException.class)
          .hasMessage("port " + taken.getLocalPort() + " is taken");
    }
  }

  @Test
  void anAddressOfAnotherComputerIsSaid() {
    job.server.close();
    assertThatThrownBy(() -> ShareServer.start(job.live, at(InetAddress.ofLiteral("192.0.2.7"), 0)))
        .isInstanceOf(ShareException.class)
        .hasMessage("this computer has no address 192.0.2.7");
  }

  @Test
  void aPortIsFrom0To65535() {
    assertThatIllegalArgumentException().isThrownBy(() -> job.loopback(65_536));
    assertThatIllegalArgumentException().isThrownBy(() -> job.loopback(-1));
    assertThat(job.loopback(65_535).port()).isEqualTo(65_535);
  }

  @Test
  void theNextPortIsTakenWhereTheUsualOneIsAndKeptFromThenOn(@TempDir Path others)
      throws Exception {
    var elsewhere =
        new ShareOptions(
            Optional.of(InetAddress.ofLiteral("127.0.0.1")),
            ShareOptions.USUAL_PORT,
            Optional.empty(),
            others);
    int next;
    try (var other = ShareServer.start(job.live, elsewhere)) {
      int taken = other.address().getPort();
      job.server.close();
      try (var server = ShareServer.start(job.live, job.loopback(ShareOptions.USUAL_PORT))) {
        next = server.address().getPort();
        assertThat(next).isGreaterThan(taken);
        assertThat(next).isLessThan(ShareOptions.USUAL_PORT + 10);
      }
    }
    try (var again = ShareServer.start(job.live, job.loopback(ShareOptions.USUAL_PORT))) {
      assertThat(again.address().getPort()).isEqualTo(next);
    }
  }

  @Test
  void oneProgramServesAJobUntilItEnds() throws Exception {
    assertThatThrownBy(() -> ShareServer.start(job.live, job.loopback(0)))
        .isInstanceOf(ShareException.class)
        .hasMessage("another program on this computer serves this job already");
    job.server.close();
    ShareServer.start(job.live, job.loopback(0)).close();
    ShareServer.start(job.live, job.loopback(0)).close();
  }

  @Test
  void theEndOfTheServerEndsItsStreams() throws Exception {
    try (var stream = job.paired(Role.VIEWER).live()) {
      stream.next();
      job.server.close();
      assertThatThrownBy(
              () -> {
                while (stream.next() != null) {}
                throw new IOException("the end");
              })
          .isInstanceOf(IOException.class);
    }
  }

  @Test
  void whoIsPairedIsKeptInTheSettingsAndNothingOfItInTheJob() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var key = HexFormat.of().formatHex(phone.key);
    try (var files = Files.walk(job.folder)) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        var text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        assertThat(text).as(file.toString()).doesNotContain(key);
      }
    }
    job.restart();
    assertThat(job.server.devices().getFirst().id()).isEqualTo(phone.id);
    assertThat(phone.events(Phone.tick(2, "001", "shot")).status()).isEqualTo(200);
  }
}
