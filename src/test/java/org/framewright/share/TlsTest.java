package org.framewright.share;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.ByteArrayInputStream;
import java.net.InetAddress;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A key file as keytool makes it, and a page that is served with it. */
@Tag("slow")
class TlsTest {
  private static final char[] PASSWORD = "sharing".toCharArray();

  @TempDir private Path root;

  private Path keyFile() throws Exception {
    var file = root.resolve("studio.p12");
    run(
        "-genkeypair",
        "-keystore",
        file.toString(),
        "-storetype",
        "PKCS12",
        "-storepass",
        new String(PASSWORD),
        "-alias",
        "page",
        "-keyalg",
        "EC",
        "-dname",
        "CN=127.0.0.1",
        "-ext",
        "san=ip:127.0.0.1");
    return file;
  }

  private void run(String... arguments) throws Exception {
    var command = new ArrayList<String>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "keytool").toString());
    command.addAll(List.of(arguments));
    var process = new ProcessBuilder(command).redirectErrorStream(true).start();
    var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isEqualTo(0);
  }

  @Test
  void withACertificateThePageIsServedOverTls() throws Exception {
    var file = keyFile();
    try (var job = SharedJob.in(Files.createDirectory(root.resolve("job")), 1);
        var server =
            ShareServer.start(
                job.live,
                new ShareOptions(
                    Optional.of(InetAddress.ofLiteral("127.0.0.1")),
                    0,
                    Optional.of(Tls.read(file, PASSWORD)),
                    root.resolve("settings")));
        var http = HttpClient.newBuilder().sslContext(trusting(file)).build()) {
      assertThat(server.address().getScheme()).isEqualTo("https");
      var page =
          http.send(
              HttpRequest.newBuilder(server.address()).build(),
              HttpResponse.BodyHandlers.ofString());
      assertThat(page.statusCode()).isEqualTo(200);
      var foreign =
          HttpRequest.newBuilder(server.address())
              .header("Origin", server.address().toString().replace("https", "http"))
              .build();
      assertThat(http.send(foreign, HttpResponse.BodyHandlers.ofString()).statusCode())
          .isEqualTo(403);
      // Who speaks plain HTTP gets nothing, and the server goes on.
      var plain =
          RawHttp.send(
              server.address(),
              RawHttp.lines("GET / HTTP/1.1", "Host: 127.0.0.1:" + server.address().getPort()));
      assertThat(plain).doesNotContain("HTTP/1.1 200");
      var phone = new Phone(server.address());
      phone.open(server.invite(Role.VIEWER));
      var body = Phone.JSON.createObjectNode().put("device", phone.id).put("name", "wall");
      var pair = phone.request("POST", "/pair", body.toString());
      assertThat(http.send(pair, HttpResponse.BodyHandlers.ofString()).statusCode()).isEqualTo(200);
      var live =
          http.send(phone.request("GET", "/live", ""), HttpResponse.BodyHandlers.ofInputStream());
      assertThat(new String(live.body().readNBytes(4), StandardCharsets.UTF_8)).isEqualTo("id: ");
      live.body().close();
    }
  }

  private static SSLContext trusting(Path file) throws Exception {
    var keys = KeyStore.getInstance("PKCS12");
    keys.load(new ByteArrayInputStream(Files.readAllBytes(file)), PASSWORD);
    var trusted = KeyStore.getInstance("PKCS12");
    trusted.load(null, null);
    trusted.setCertificateEntry("page", keys.getCertificate("page"));
    var managers = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    managers.init(trusted);
    var context = SSLContext.getInstance("TLS");
    context.init(null, managers.getTrustManagers(), null);
    return context;
  }

  @Test
  void aWrongPasswordIsSaid() throws Exception {
    var file = keyFile();
    assertThatThrownBy(() -> Tls.read(file, "wrong1".toCharArray()))
        .isInstanceOf(ShareException.class)
        .hasMessageContaining("the password of this key file is wrong");
  }

  @Test
  void aFileThatIsNoKeyFileIsSaid() throws Exception {
    var file = Files.writeString(root.resolve("studio.p12"), "-----BEGIN CERTIFICATE-----");
    assertThatThrownBy(() -> Tls.read(file, PASSWORD))
        .isInstanceOf(ShareException.class)
        .hasMessage(file + ": this is no key file");
  }

  @Test
  void aCertificateWithoutItsKeyIsSaid() throws Exception {
    var keys = keyFile();
    var certificate = root.resolve("page.crt");
    run(
        "-exportcert",
        "-keystore",
        keys.toString(),
        "-storepass",
        new String(PASSWORD),
        "-alias",
        "page",
        "-file",
        certificate.toString());
    var file = root.resolve("trusted.p12");
    run(
        "-importcert",
        "-noprompt",
        "-keystore",
        file.toString(),
        "-storetype",
        "PKCS12",
        "-storepass",
        new String(PASSWORD),
        "-alias",
        "page",
        "-file",
        certificate.toString());
    assertThatThrownBy(() -> Tls.read(file, PASSWORD))
        .hasMessage(file + ": this key file has a certificate but not its key");
  }

  @Test
  void noFileIsSaidAsEverywhere() {
    assertThatThrownBy(() -> Tls.read(root.resolve("none.p12"), PASSWORD))
        .isInstanceOf(NoSuchFileException.class);
  }
}
