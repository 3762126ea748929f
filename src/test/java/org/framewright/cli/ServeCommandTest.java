package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.PipedReader;
import java.io.PipedWriter;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.framewright.job.Job;
import org.framewright.share.PlayedDevice;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

@Timeout(60)
@Isolated("It sets where this computer keeps its settings.")
class ServeCommandTest {
  private static final String SETTINGS = "framewright.settings";

  @TempDir private Path folder;
  private final String before = System.getProperty(SETTINGS);
  private Path job;

  @BeforeEach
  void aJobOfTwoSetups() throws Exception {
    System.setProperty(SETTINGS, folder.resolve("settings").toString());
    job = Ran.startIn(folder);
    Job.open(job, Clock.systemUTC())
        .importList(new ShotList(List.of(new Setup("001", "Coat"), new Setup("002", "Hat"))));
  }

  @AfterEach
  void theSettingsAreThoseOfBefore() {
    if (before == null) {
      System.clearProperty(SETTINGS);
    } else {
      System.setProperty(SETTINGS, before);
    }
  }

  /** What is written from any thread, line by line. */
  private static final class Lines extends Writer {
    private final BlockingQueue<String> whole = new LinkedBlockingQueue<>();
    private final StringBuilder begun = new StringBuilder();

    @Override
    public synchronized void write(char[] text, int from, int length) {
      begun.append(text, from, length);
      for (int end = begun.indexOf("\n"); end >= 0; end = begun.indexOf("\n")) {
        whole.add(begun.substring(0, end));
        begun.delete(0, end + 1);
      }
    }

    Optional<String> next() throws InterruptedException {
      return Optional.ofNullable(whole.poll(20, TimeUnit.SECONDS));
    }

    @Override
    public void flush() {}

    @Override
    public void close() {}
  }

  /** The command while it runs: a person types, and a program reads its JSON lines. */
  private final class Running implements AutoCloseable {
    private final PipedWriter typed = new PipedWriter();
    private final Lines told = new Lines();
    private final StringWriter err = new StringWriter();
    private final CompletableFuture<Integer> status;
    private final List<JsonNode> lines = new ArrayList<>();

    Running(String... more) throws IOException {
      var answers = new PipedReader(typed);
      var words =
          new ArrayList<String>(
              List.of("serve", job.toString(), "--host", "127.0.0.1", "--port", "0", "--json"));
      words.addAll(List.of(more));
      status =
          CompletableFuture.supplyAsync(
              () ->
                  Framewright.run(
                      null,
                      Path::of,
                      answers,
                      new PrintWriter(told, true),
                      new PrintWriter(err, true),
                      words.toArray(String[]::new)));
    }

    void types(String line) throws IOException {
      typed.write(line + "\n");
      typed.flush();
    }

    /** Reads on until an event of that kind comes. */
    JsonNode next(String event) throws Exception {
      for (var line = told.next(); line.isPresent(); line = told.next()) {
        var json = new JsonMapper().readTree(line.get());
        lines.add(json);
        if (json.path("event").asText().equals(event)) {
          return json;
        }
      }
      throw new AssertionError("waited in vain after " + lines + " " + err);
    }

    int end() throws Exception {
      typed.close();
      next("ended");
      return status.get(30, TimeUnit.SECONDS);
    }

    @Override
    public void close() throws IOException {
      typed.close();
    }
  }

  private static URI link(JsonNode code) {
    return URI.create(code.path("link").asText());
  }

  @Test
  void whatATickOnAPairedPhoneDoesIsInTheJob() throws Exception {
    try (var serve = new Running()) {
      assertThat(serve.next("serving").path("address").asText()).startsWith("http://127.0.0.1:");
      var code = serve.next("code");
      assertThat(code.path("role").asText()).isEqualTo("assistant");
      try (var phone = PlayedDevice.paired(link(code), "Ines' phone")) {
        var paired = serve.next("paired");
        assertThat(paired.path("name").asText()).isEqualTo("Ines' phone");
        assertThat(phone.tick("002", "shot").path("last").asLong()).isEqualTo(2);
        assertThat(Job.open(job, Clock.systemUTC()).state().of("002").state())
            .isEqualTo(SetupState.SHOT);
      }
      assertThat(serve.end()).isZero();
    }
  }

  /** It is what the other computers see of it, too. */
  @Test
  void whatThePhoneIsCalledIsSaidWithItsTick() throws Exception {
    try (var serve = new Running()) {
      try (var phone = PlayedDevice.paired(link(serve.next("code")), "Ines' phone")) {
        phone.tick("002", "shot");
      }
      var elsewhere = Job.open(job, Clock.systemUTC()).elsewhere().orElseThrow();
      assertThat(elsewhere.called()).contains("Ines' phone");
      assertThat(elsewhere.tick().orElseThrow().setup()).isEqualTo("002");
      assertThat(serve.end()).isZero();
    }
  }

  @Test
  void aCodeForEachRoleThatIsAskedForIsGiven() throws Exception {
    try (var serve = new Running("--role", "client", "--role", "viewer")) {
      assertThat(serve.next("code").path("role").asText()).isEqualTo("client");
      assertThat(serve.next("code").path("role").asText()).isEqualTo("viewer");
      serve.types("assistant");
      assertThat(serve.next("code").path("role").asText()).isEqualTo("assistant");
      assertThat(serve.end()).isZero();
    }
  }

  @Test
  void whoIsThereIsListedAndSentAwayByName() throws Exception {
    try (var serve = new Running();
        var phone = PlayedDevice.paired(link(serve.next("code")), "Ines' phone")) {
      serve.next("paired");
      phone.follow();
      serve.next("connected");
      serve.types("devices");
      assertThat(serve.next("devices").path("devices").path(0).path("connected").asBoolean())
          .isTrue();
      serve.types("unpair Ines' phone");
      assertThat(serve.next("unpaired").path("device").asText()).isEqualTo(phone.id());
      assertThat(serve.end()).isZero();
    }
  }

  @Test
  void aPhoneThatWasPairedIsKnownWhenItIsServedAgain() throws Exception {
    try (var serve = new Running()) {
      PlayedDevice.paired(link(serve.next("code")), "Ines' phone").close();
      serve.next("paired");
      serve.end();
    }
    try (var serve = new Running()) {
      assertThat(serve.next("known").path("name").asText()).isEqualTo("Ines' phone");
      serve.end();
    }
  }

  @Test
  void asTextItSaysWhereAndDrawsTheCode() {
    var ran =
        Ran.answering(
            "devices\nnonsense\nunpair nobody\n",
            "serve",
            job,
            "--host",
            "127.0.0.1",
            "--port",
            "0");
    assertThat(ran.status()).isZero();
    assertThat(ran.out())
        .contains("_KVO_wool is at http://127.0.0.1:")
        .contains("For one device, as assistant, until ")
        .contains("\u2588\u2588")
        .contains("No device is paired.")
        .doesNotContain("\\u{", "\u001b");
    assertThat(ran.err())
        .contains("Not encrypted: whoever listens")
        .contains("\"nonsense\" says nothing here.")
        .contains("No device is called \"nobody\"");
  }

  @Test
  void itGoesOnForAWhileWithoutAnybodyTyping() {
    var ran = Ran.answering("", "serve", job, "--host", "127.0.0.1", "--port", "0", "--for", "0");
    assertThat(ran.status()).isZero();
  }

  @Test
  void aPortThatIsTakenIsSaidWithTheRemedy() throws Exception {
    try (var taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      var ran =
          Ran.answering(
              "", "serve", job, "--host", "127.0.0.1", "--port", "" + taken.getLocalPort());
      assertThat(ran.status()).isEqualTo(2);
      assertThat(ran.err())
          .contains("framewright: port " + taken.getLocalPort() + " is taken")
          .contains("Choose another one");
    }
  }

  @Test
  void whatIsNoPortAddressRoleOrTimeIsRefused() {
    for (var wrong :
        List.of(
            List.of("--port", "70000"),
            List.of("--port", "-1"),
            List.of("--role", "painter"),
            List.of("--for", "-3"))) {
      var words = new ArrayList<Object>(List.of("serve", job));
      words.addAll(wrong);
      var ran = Ran.answering("", words.toArray());
      assertThat(ran.status()).as(wrong.toString()).isEqualTo(2);
      assertThat(ran.out()).isEmpty();
    }
  }

  @Test
  void thePasswordOfAKeyFileIsNoArgumentButAVariableOrAsked() throws Exception {
    var file = folder.resolve("studio.p12");
    assertThat(TlsPassword.of(Map.of(TlsPassword.VARIABLE, "quiet please"), file, _ -> null))
        .isEqualTo("quiet please".toCharArray());
    assertThat(TlsPassword.of(Map.of(), file, question -> Optional.of(question.toCharArray())))
        .isEqualTo(("Password of " + file + ": ").toCharArray());
    Files.writeString(file, "no key file");
    var ran = Ran.answering("", "serve", job, "--tls", file);
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("the password of " + file + " is not known");
  }
}
