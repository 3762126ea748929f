package org.framewright.share;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import java.util.Map;
import java.util.concurrent.ThreadLocalRandom;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** A phone that a test plays: what its page would send, written anew from docs/sharing.md. */
public final class PlayedDevice implements AutoCloseable {
  private static final String BASE32 = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"; // RFC 4648
  private static final JsonMapper JSON = new JsonMapper();

  private final HttpClient http = HttpClient.newHttpClient();
  private final String id =
      "page-" + HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextInt());
  private final URI page;
  private final byte[] key;
  private long last;
  private InputStream stream = InputStream.nullInputStream();

  private PlayedDevice(URI link) throws GeneralSecurityException {
    this.page = URI.create(link.toString().replaceFirst("#.*", ""));
    this.key = mac(secret(link.getFragment()), ("device " + id).getBytes(StandardCharsets.UTF_8));
  }

  /** Pairs by the link of a code, under a name; the answer must be 200. */
  public static PlayedDevice paired(URI link, String name) throws Exception {
    var device = new PlayedDevice(link);
    var wish = JSON.createObjectNode().put("device", device.id).put("name", name);
    device.last = device.send("POST", "/pair", wish).path("last").asLong();
    return device;
  }

  public String id() {
    return id;
  }

  /** Begins to follow the job; it is connected from then on. */
  public void follow() throws Exception {
    var answer =
        http.send(request("GET", "/live", new byte[0]), HttpResponse.BodyHandlers.ofInputStream());
    if (answer.statusCode() != 200) {
      throw new IOException("status " + answer.statusCode());
    }
    stream = answer.body();
  }

  /** Ticks a setup; the answer of the server. */
  public JsonNode tick(String setup, String state) throws Exception {
    return tick(setup, state, Map.of());
  }

  /**
   * The same with more.
   *
   * @param more {@code view}, {@code reason}, {@code by}
   */
  public JsonNode tick(String setup, String state, Map<String, String> more) throws Exception {
    var tick = event("tick").put("setup", setup).put("state", state);
    more.forEach(tick::put);
    return sent(tick);
  }

  /** Says something of a setup. */
  public JsonNode comment(String setup, String text, String by) throws Exception {
    return sent(event("comment").put("setup", setup).put("text", text).put("by", by));
  }

  private ObjectNode event(String does) {
    return JSON.createObjectNode()
        .put("number", last + 1)
        .put("at", System.currentTimeMillis())
        .put("do", does);
  }

  private JsonNode sent(ObjectNode event) throws Exception {
    var answer = send("POST", "/events", JSON.createArrayNode().add(event));
    last = answer.path("last").asLong();
    return answer;
  }

  /**
   * @throws IOException if the answer is no 200
   */
  private JsonNode send(String method, String path, JsonNode body) throws Exception {
    var answer =
        http.send(
            request(method, path, JSON.writeValueAsBytes(body)),
            HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() != 200) {
      throw new IOException("status " + answer.statusCode() + " " + answer.body());
    }
    return JSON.readTree(answer.body());
  }

  private HttpRequest request(String method, String path, byte[] body)
      throws GeneralSecurityException {
    long time = System.currentTimeMillis();
    var nonce = HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextLong());
    var head = method + "\n" + path + "\n" + time + "\n" + nonce + "\n";
    var mac = HexFormat.of().formatHex(mac(key, head.getBytes(StandardCharsets.UTF_8), body));
    return HttpRequest.newBuilder(page.resolve(path))
        .header(
            "Authorization",
            "Fw device=%s, time=%d, nonce=%s, mac=%s".formatted(id, time, nonce, mac))
        .method(method, HttpRequest.BodyPublishers.ofByteArray(body))
        .build();
  }

  private static byte[] mac(byte[] key, byte[]... parts) throws GeneralSecurityException {
    var mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(key, "HmacSHA256"));
    for (var part : parts) {
      mac.update(part);
    }
    return mac.doFinal();
  }

  /** 26 letters of base32 are 128 bits and two more. */
  private static byte[] secret(String fragment) {
    var bytes = new byte[16];
    int held = 0;
    int bits = 0;
    int at = 0;
    for (char letter : fragment.substring(0, fragment.indexOf('.')).toCharArray()) {
      held = held << 5 | BASE32.indexOf(letter);
      bits += 5;
      if (bits >= 8 && at < bytes.length) {
        bits -= 8;
        bytes[at++] = (byte) (held >> bits);
      }
    }
    return bytes;
  }

  @Override
  public void close() throws IOException {
    stream.close();
    http.shutdownNow();
  }
}
