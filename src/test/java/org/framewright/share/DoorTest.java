package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What does not come from our page does not come in; statuses and headers are of RFC 9110. */
class DoorTest {
  @TempDir private Path root;
  private SharedJob job;
  private String host;

  @BeforeEach
  void aSharedJob() throws Exception {
    job = SharedJob.in(root, 3);
    host = "127.0.0.1:" + job.server.address().getPort();
  }

  @AfterEach
  void end() {
    job.close();
  }

  private String wire(String... lines) throws Exception {
    return RawHttp.send(job.server.address(), RawHttp.lines(lines));
  }

  private int status(String... lines) throws Exception {
    return RawHttp.status(wire(lines));
  }

  @Test
  void thePageComesWithWhatProtectsIt() throws Exception {
    var answer = wire("GET / HTTP/1.1", "Host: " + host);
    assertThat(RawHttp.status(answer)).isEqualTo(200);
    var lower = answer.toLowerCase(Locale.ROOT);
    assertThat(lower)
        .contains(
            "content-security-policy: default-src 'none'; script-src 'self';",
            "frame-ancestors 'none'",
            "referrer-policy: no-referrer",
            "x-content-type-options: nosniff",
            "cache-control: private, max-age=86400",
            "content-type: text/html; charset=utf-8")
        .doesNotContain("set-cookie", "server:", "access-control-allow");
  }

  /** RFC 9110, sections 13.1.2 and 15.4.5. */
  @Test
  void aPageThatIsKnownIsNotSentAgain() throws Exception {
    var answer = wire("GET / HTTP/1.1", "Host: " + host);
    var tag = answer.replaceAll("(?is).*\\netag: ([^\\r]*)\\r.*", "$1");
    var again = wire("GET / HTTP/1.1", "Host: " + host, "If-None-Match: " + tag);
    assertThat(RawHttp.status(again)).isEqualTo(304);
    assertThat(again).endsWith("\r\n\r\n");
  }

  /** RFC 9110, section 9.3.2. */
  @Test
  void theHeadOfThePageComesWithoutIt() throws Exception {
    var answer = wire("HEAD / HTTP/1.1", "Host: " + host);
    assertThat(RawHttp.status(answer)).isEqualTo(200);
    assertThat(answer).endsWith("\r\n\r\n");
  }

  /** DNS rebinding: a page of elsewhere whose name was made to lead here. RFC 9110, 15.5.20. */
  @ParameterizedTest
  @ValueSource(strings = {"evil.example", "localhost.evil.example:8470", "127.0.0.2:1", ""})
  void aRequestForAnotherHostIsMisdirected(String other) throws Exception {
    assertThat(status("GET / HTTP/1.1", "Host: " + other)).isEqualTo(421);
  }

  @Test
  void aRequestWithoutAHostOrWithTwoIsMisdirected() throws Exception {
    assertThat(status("GET / HTTP/1.1", "X: y")).isEqualTo(421);
    assertThat(status("GET / HTTP/1.1", "Host: " + host, "Host: evil.example")).isEqualTo(421);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"http://evil.example", "null", "https://HOST", "http://HOST.evil.example"})
  void aRequestOfAnotherOriginIsForbidden(String origin) throws Exception {
    assertThat(status("GET / HTTP/1.1", "Host: " + host, "Origin: " + origin.replace("HOST", host)))
        .isEqualTo(403);
  }

  @Test
  void aRequestOfOurOriginIsNot() throws Exception {
    assertThat(status("GET / HTTP/1.1", "Host: " + host, "Origin: http://" + host)).isEqualTo(200);
  }

  /** Nothing of the disk is ever served: paths are looked up, not put together. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../../../../etc/passwd",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/..%2f..%2fetc%2fpasswd",
        "/..\\..\\etc\\passwd",
        "/app.js/../../secret",
        "//etc/passwd",
        "/./app.js",
        "/APP.JS",
        "/app.js%00",
        "/app.js?x=1",
        "/app.js/",
        "/index.html",
        "/Folds.class",
        "/package-info.java",
        "/picture/../../secret",
        "http://127.0.0.1/etc/passwd",
        "*"
      })
  void aPathOfAnotherPlaceLeadsNowhere(String path) throws Exception {
    var answer = wire("GET " + path + " HTTP/1.1", "Host: " + host);
    assertThat(RawHttp.status(answer)).as(answer).isIn(0, 400, 401, 404);
    assertThat(answer).doesNotContain("root:", "class ");
  }

  /** RFC 9110, section 15.5.6: it says what is allowed. */
  @ParameterizedTest
  @CsvSource({
    "POST, /, 'GET, HEAD'",
    "GET, /events, POST",
    "DELETE, /live, GET",
    "PUT, /picture/0, GET"
  })
  void anotherMethodIsNotAllowed(String method, String path, String allowed) throws Exception {
    var answer = wire(method + " " + path + " HTTP/1.1", "Host: " + host);
    assertThat(RawHttp.status(answer)).isEqualTo(405);
    assertThat(answer).containsIgnoringCase("\r\nAllow: " + allowed + "\r\n");
  }

  /** RFC 9110, section 15.5.2: it says how to make oneself known. */
  @ParameterizedTest
  @ValueSource(strings = {"/live", "/picture/00000000000000000000000000000000?edge=320"})
  void whoDoesNotSayWhoTheyAreIsUnknown(String path) throws Exception {
    var answer = wire("GET " + path + " HTTP/1.1", "Host: " + host);
    assertThat(RawHttp.status(answer)).isEqualTo(401);
    assertThat(answer).containsIgnoringCase("\r\nWWW-Authenticate: Fw\r\n").contains("\"time\":");
  }

  private Phone.Answer sent(Phone phone, String authorization) throws Exception {
    return sent(
        phone, authorization, "[" + Phone.tick(2, 1_795_680_000_000L, "001", "on-set") + "]");
  }

  private Phone.Answer sent(Phone phone, String authorization, String body) throws Exception {
    return Phone.send(
        HttpRequest.newBuilder(phone.server.resolve("/events"))
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .header("Authorization", authorization)
            .build());
  }

  private static byte[] body() {
    return ("[" + Phone.tick(2, 1_795_680_000_000L, "001", "on-set") + "]")
        .getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void whatIsSignedForSomethingElseIsUnknown() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var before = job.logs();
    long now = System.currentTimeMillis();
    for (var forged :
        List.of(
            phone.authorization("POST", "/code", body(), now, Phone.random(8)),
            phone.authorization("GET", "/events", body(), now, Phone.random(8)),
            phone.authorization("POST", "/events", "[]".getBytes(StandardCharsets.UTF_8)),
            phone.authorization("POST", "/events", body()).replace("time=1", "time=2"),
            phone
                .authorization("POST", "/events", body())
                .replaceFirst("nonce=.{16}", "nonce=0123456789abcdef"),
            phone
                .authorization("POST", "/events", body())
                .replaceFirst("mac=.{64}", "mac=" + "0".repeat(64)))) {
      assertThat(sent(phone, forged).status()).as(forged).isEqualTo(401);
    }
    assertThat(job.logs()).isEqualTo(before);
    assertThat(sent(phone, phone.authorization("POST", "/events", body())).status()).isEqualTo(200);
  }

  @Test
  void whatWasSignedWithTheKeyOfAnotherDeviceIsUnknown() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var client = job.paired(Role.CLIENT);
    phone.key = client.key;
    assertThat(phone.events(Phone.tick(2, "001", "on-set")).status()).isEqualTo(401);
  }

  /** RFC 9110, section 15.5.11. */
  @Test
  void whoWasNeverPairedIsGone() throws Exception {
    var stranger = new Phone(job.server.address());
    stranger.key = new byte[32];
    assertThat(stranger.events(Phone.tick(2, "001", "on-set")).status()).isEqualTo(410);
  }

  /** What was heard on the network is of no use five minutes later, and harmless before. */
  @Test
  void whatIsReplayedDoesNothing() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var heard = phone.authorization("POST", "/events", body());
    assertThat(sent(phone, heard).status()).isEqualTo(200);
    var before = job.logs();
    for (int i = 0; i < 5; i++) {
      assertThat(sent(phone, heard).json().path("last").asLong()).isEqualTo(2);
    }
    long early = System.currentTimeMillis() - 301_000;
    var old = phone.authorization("POST", "/events", body(), early, Phone.random(8));
    assertThat(sent(phone, old).status()).isEqualTo(401);
    assertThat(job.logs()).isEqualTo(before);
  }

  @Test
  void aStreamIsNotOpenedByAReplay() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var http = HttpClient.newHttpClient();
    var request = phone.request("GET", "/live", "");
    var first = http.send(request, HttpResponse.BodyHandlers.ofInputStream());
    assertThat(first.statusCode()).isEqualTo(200);
    assertThat(Phone.send(request).status()).isEqualTo(401);
    first.body().close();
  }

  /** RFC 9110, section 15.5.14. */
  @Test
  void aBodyOfMoreThan64KilobytesIsTooLarge() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var before = job.logs();
    assertThat(phone.post("/events", " ".repeat(Door.LARGEST + 1)).status()).isEqualTo(413);
    assertThat(phone.post("/events", "[]" + " ".repeat(Door.LARGEST - 2)).status()).isEqualTo(200);
    assertThat(job.logs()).isEqualTo(before);
  }

  /** RFC 6585, section 4; RFC 9110, section 10.2.3. */
  @Test
  void whoTriesTooOftenWaits() throws Exception {
    var answer = "";
    for (int i = 0; i < 60; i++) {
      answer = wire("GET /live HTTP/1.1", "Host: " + host);
    }
    assertThat(RawHttp.status(answer)).isEqualTo(429);
    assertThat(answer).containsIgnoringCase("\r\nRetry-After: 1\r\n");
    // Whoever is paired goes on, from the same address, too.
    var phone = new Phone(job.server.address());
    assertThat(phone.pair(job.server.invite(Role.ASSISTANT), "phone").status()).isEqualTo(200);
    assertThat(phone.events(Phone.tick(2, "001", "on-set")).status()).isEqualTo(200);
  }

  @Test
  void aDeviceThatAsksTooOftenWaits() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var other = job.paired(Role.ASSISTANT);
    int status = 200;
    for (int i = 0; i < 250 && status == 200; i++) {
      status = phone.post("/events", "[]").status();
    }
    assertThat(status).isEqualTo(429);
    assertThat(other.post("/events", "[]").status()).isEqualTo(200);
  }

  @Test
  void noAnswerSetsACookieOrLetsOthersRead() throws Exception {
    var phone = job.paired(Role.ASSISTANT);
    var headers = phone.post("/events", "[]").response().headers().map();
    assertThat(headers.keySet())
        .doesNotContain("set-cookie", "access-control-allow-origin")
        .contains("content-security-policy", "x-content-type-options", "referrer-policy");
    assertThat(headers.get("cache-control")).containsExactly("no-store");
  }
}
