package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What somebody on the studio's network may try: the log is as it was, and the set works on. */
@Tag("slow")
class AttacksTest {
  private static final int REQUESTS = 100_000;
  private static final int AT_ONCE = 20;

  @TempDir private Path root;
  private SharedJob job;
  private Phone phone;

  @BeforeEach
  void aSharedJob() throws Exception {
    job = SharedJob.in(root, 3);
    phone = job.paired(Role.ASSISTANT);
  }

  @AfterEach
  void end() {
    job.close();
  }

  private Socket connect(int from) throws IOException {
    // From many addresses, as from many computers.
    var socket = new Socket();
    socket.bind(new InetSocketAddress(InetAddress.ofLiteral("127.0.0." + (2 + from % 200)), 0));
    socket.connect(SharedJob.loopbackAt(job.server.address().getPort()));
    socket.setSoTimeout(30_000);
    return socket;
  }

  /** A request that is nearly right, or not at all. */
  private String malformed(Random random) {
    var host = "127.0.0.1:" + job.server.address().getPort();
    var junk = new byte[random.nextInt(60)];
    random.nextBytes(junk);
    var text = new String(junk, StandardCharsets.ISO_8859_1).replace('\r', ' ').replace('\n', ' ');
    var hex = Phone.random(8);
    var path =
        List.of("/", "/live", "/events", "/pair", "/code", "/picture/" + hex + hex, "/x" + hex)
            .get(random.nextInt(7));
    var body = random.nextBoolean() ? "[{\"number\":2,\"do\":\"tick\"}]" : text;
    var length = body.getBytes(StandardCharsets.ISO_8859_1).length;
    var head =
        switch (random.nextInt(6)) {
          case 0 ->
              "Authorization: Fw device="
                  + phone.id
                  + ", time="
                  + System.currentTimeMillis()
                  + ", nonce="
                  + hex
                  + ", mac="
                  + hex.repeat(4);
          case 1 -> "Authorization: " + text.replace(':', '.');
          case 2 -> "Origin: http://" + hex + ".example";
          case 3 -> "Cookie: a=" + hex;
          case 4 -> "X-" + hex + ": " + hex.repeat(20);
          default -> "Authorization: Fw device=page-00000000, time=1, nonce=" + hex + ", mac=";
        };
    return List.of("GET", "POST", "PUT", "get").get(random.nextInt(4))
        + " "
        + path
        + " HTTP/1.1\r\nHost: "
        + (random.nextInt(4) == 0 ? hex + ".example" : host)
        + "\r\n"
        + head
        + "\r\nContent-Length: "
        + length
        + "\r\n\r\n"
        + body;
  }

  /** What ends a connection: nothing of HTTP. */
  private static String end(Random random) {
    return List.of(
            "\u0000\u0001\u0002 / HTTP/1.1\r\n\r\n",
            "GET\r\n\r\n",
            "GET / HTTP/1.1\r\nContent-Length: -1\r\n\r\n",
            "POST /events HTTP/1.1\r\nContent-Length: 3\r\nTransfer-Encoding: chunked\r\n\r\n",
            "GET /%zz HTTP/1.1\r\n\r\n",
            "GET / HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n",
            "POST /events HTTP/1.1\r\nHost: x\r\nContent-Length: 999999999999\r\nConnection: close"
                + "\r\n\r\n",
            "G".repeat(20_000))
        .get(random.nextInt(8));
  }

  private int attack(int seed, int connections) throws IOException {
    var random = new Random(seed);
    int answers = 0;
    for (int i = 0; i < connections; i++) {
      try (var socket = connect(seed * 31 + i)) {
        var requests = new StringBuilder();
        for (int n = 1; n < AT_ONCE; n++) {
          requests.append(malformed(random));
        }
        requests.append(end(random));
        socket.getOutputStream().write((requests + "").getBytes(StandardCharsets.ISO_8859_1));
        socket.shutdownOutput();
        var said = new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        answers += said.split("HTTP/1\\.1 [2-5]", -1).length - 1;
        assertThat(said).doesNotContain("HTTP/1.1 500").doesNotContain("Exception:");
      } catch (SocketException e) {
        // Cut off, as it should be.
      }
    }
    return answers;
  }

  @Test
  void aHundredThousandMalformedRequestsChangeNothing() throws Exception {
    phone.events(Phone.tick(2, "001", "on-set"));
    var before = job.logs();
    int answers = 0;
    try (var attackers = Executors.newFixedThreadPool(4);
        var stream = phone.live()) {
      stream.next();
      var attacks = new ArrayList<Future<Integer>>();
      for (int i = 0; i < 4; i++) {
        int seed = i;
        attacks.add(attackers.submit(() -> attack(seed, REQUESTS / AT_ONCE / 4)));
      }
      for (var attack : attacks) {
        answers += attack.get();
      }
      assertThat(job.logs()).isEqualTo(before);
      assertThat(phone.events(Phone.tick(3, "001", "shot")).json().path("last").asLong())
          .isEqualTo(3);
      stream.until(state -> state.path("last").asLong() == 3);
    }
    System.out.println(REQUESTS + " malformed requests, " + answers + " answers");
    assertThat(job.server.devices()).hasSize(1);
  }

  @Test
  void whoeverSendsSlowlyIsCutOffAndHoldsNobodyUp() throws Exception {
    var slow = new ArrayList<Socket>();
    for (int i = 0; i < 60; i++) {
      var socket = connect(i);
      var start =
          i % 2 == 0
              ? "GET / HTTP/1.1\r\nHo"
              : "POST /events HTTP/1.1\r\nHost: 127.0.0.1:%d\r\nContent-Length: 50\r\n\r\n["
                  .formatted(job.server.address().getPort());
      socket.getOutputStream().write(start.getBytes(StandardCharsets.US_ASCII));
      slow.add(socket);
    }
    assertThat(phone.events(Phone.tick(2, "001", "on-set")).status()).isEqualTo(200);
    long began = System.nanoTime();
    int open = slow.size();
    for (int second = 0; second < 20 && open > 0; second++) {
      Thread.sleep(1000);
      open = 0;
      for (var socket : slow) {
        open += isOpen(socket) ? 1 : 0;
      }
    }
    assertThat(open).as("still open after " + (System.nanoTime() - began)).isEqualTo(0);
    assertThat(phone.events(Phone.tick(3, "001", "shot")).status()).isEqualTo(200);
    for (var socket : slow) {
      socket.close();
    }
  }

  /** It sends one byte more, as slowly as can be. */
  private static boolean isOpen(Socket socket) throws IOException {
    try {
      socket.getOutputStream().write('x');
      socket.setSoTimeout(1);
      return socket.getInputStream().read() >= 0;
    } catch (SocketTimeoutException e) {
      return true;
    } catch (SocketException e) {
      return false;
    }
  }

  @Test
  void whoeverReadsNothingHoldsNobodyUpAndIsCutOff() throws Exception {
    var stuck = job.paired(Role.ASSISTANT);
    try (var socket = new Socket();
        var stream = phone.live()) {
      socket.setReceiveBufferSize(4096);
      socket.connect(SharedJob.loopbackAt(job.server.address().getPort()));
      var request =
          RawHttp.lines(
              "GET /live HTTP/1.1",
              "Host: 127.0.0.1:" + job.server.address().getPort(),
              "Authorization: " + stuck.authorization("GET", "/live", new byte[0]));
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      stream.next();
      // All comments are told anew with each, so that some hundred fill every buffer.
      var text = "collar ".repeat(140);
      for (int number = 2; number < 152; number++) {
        int last = number;
        assertThat(phone.events(Phone.comment(number, "001", null, text)).status()).isEqualTo(200);
        stream.until(state -> state.path("last").asLong() == last);
      }
      var until = System.nanoTime() + Duration.ofSeconds(40).toNanos();
      while (isConnected(stuck) && System.nanoTime() < until) {
        Thread.sleep(200);
      }
      assertThat(isConnected(stuck)).isFalse();
      assertThat(isConnected(phone)).isTrue();
      phone.events(Phone.tick(152, "001", "shot"));
      stream.until(state -> state.path("last").asLong() == 152);
    }
  }

  private boolean isConnected(Phone one) {
    return job.server.devices().stream()
        .anyMatch(device -> device.id().equals(one.id) && device.connected());
  }

  /** WHATWG HTML, section 9.2.7: authors are advised to send a comment now and then. */
  @Test
  void aStreamWithoutNewsGivesASignOfLife() throws Exception {
    try (var stream = phone.live()) {
      var reader = Executors.newSingleThreadExecutor();
      var _ = reader.submit(() -> stream.until(state -> state.path("last").asLong() == 2));
      Thread.sleep(13_000);
      phone.events(Phone.tick(2, "001", "shot"));
      reader.shutdown();
      assertThat(reader.awaitTermination(10, TimeUnit.SECONDS)).isTrue();
      assertThat(stream.comments.size()).isBetween(1, 3);
    }
  }
}
