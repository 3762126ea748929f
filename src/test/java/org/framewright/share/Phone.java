package org.framewright.share;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.ThreadLocalRandom;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * What a page does, in Java: it speaks the protocol from its description, with the JDK's HMAC and a
 * decoder of base32 of its own, and none of the server's code.
 */
final class Phone {
  static final JsonMapper JSON = new JsonMapper();

  /** One client for all: each has threads of its own. */
  private static final HttpClient HTTP =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  record Answer(int status, JsonNode json, HttpResponse<?> response) {}

  final String id;
  final URI server;
  byte[] key;
  String language = "en";
  long offset;

  Phone(URI server) {
    this("page-" + random(4), server);
  }

  Phone(String id, URI server) {
    this.id = id;
    this.server = server;
  }

  static String random(int bytes) {
    var random = new byte[bytes];
    ThreadLocalRandom.current().nextBytes(random);
    return HexFormat.of().formatHex(random);
  }

  static byte[] hmac(byte[] key, byte[] message) {
    try {
      var mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(key, "HmacSHA256"));
      return mac.doFinal(message);
    } catch (java.security.GeneralSecurityException e) {
      throw new AssertionError(e);
    }
  }

  /** RFC 4648, section 6: each letter holds five bits. */
  static byte[] base32(String letters) {
    var bits = new StringBuilder();
    for (int i = 0; i < letters.length(); i++) {
      int value = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".indexOf(letters.charAt(i));
      bits.append(Integer.toBinaryString(32 + value).substring(1));
    }
    var bytes = new byte[bits.length() / 8];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) Integer.parseInt(bits.substring(8 * i, 8 * i + 8), 2);
    }
    return bytes;
  }

  /** Takes the secret of a link, as one that opens it does. */
  void open(Invitation invitation) {
    var secret = invitation.link().getFragment().substring(0, 26);
    key = hmac(base32(secret), ("device " + id).getBytes(StandardCharsets.UTF_8));
  }

  Answer pair(Invitation invitation, String name) throws Exception {
    open(invitation);
    return pair(name);
  }

  Answer pair(String name) throws Exception {
    var body = JSON.createObjectNode().put("device", id).put("name", name);
    return post("/pair", body.toString());
  }

  String authorization(String method, String target, byte[] body) {
    return authorization(method, target, body, System.currentTimeMillis() + offset, random(8));
  }

  String authorization(String method, String target, byte[] body, long time, String nonce) {
    var head =
        (method + "\n" + target + "\n" + time + "\n" + nonce + "\n")
            .getBytes(StandardCharsets.UTF_8);
    var message = new byte[head.length + body.length];
    System.arraycopy(head, 0, message, 0, head.length);
    System.arraycopy(body, 0, message, head.length, body.length);
    return "Fw device=%s, time=%d, nonce=%s, mac=%s"
        .formatted(id, time, nonce, HexFormat.of().formatHex(hmac(key, message)));
  }

  HttpRequest request(String method, String target, String body) {
    var bytes = body.getBytes(StandardCharsets.UTF_8);
    return HttpRequest.newBuilder(server.resolve(target))
        .method(method, HttpRequest.BodyPublishers.ofByteArray(bytes))
        .header("Authorization", authorization(method, target, bytes))
        .header("Accept-Language", language)
        .build();
  }

  Answer post(String target, String body) throws Exception {
    return send(request("POST", target, body));
  }

  static Answer send(HttpRequest request) throws Exception {
    var response = HTTP.send(request, HttpResponse.BodyHandlers.ofString());
    JsonNode json;
    try {
      json = JSON.readTree(response.body());
    } catch (IOException e) {
      json = JSON.missingNode();
    }
    return new Answer(response.statusCode(), json, response);
  }

  HttpResponse<byte[]> bytes(String target) throws Exception {
    return HTTP.send(request("GET", target, ""), HttpResponse.BodyHandlers.ofByteArray());
  }

  /** Sends what somebody did; what is sent again is the same text, with the same time. */
  Answer events(String... events) throws Exception {
    return post("/events", "[" + String.join(",", events) + "]");
  }

  static String tick(long number, long at, String setup, String state) {
    return "{\"number\":%d,\"at\":%d,\"do\":\"tick\",\"setup\":\"%s\",\"state\":\"%s\"}"
        .formatted(number, at, setup, state);
  }

  static String tick(long number, String setup, String state) {
    return tick(number, System.currentTimeMillis(), setup, state);
  }

  static String signOff(long number, String setup, String by) {
    return tick(number, setup, "signed-off").replace("}", ",\"by\":\"" + by + "\"}");
  }

  static String comment(long number, String setup, String picture, String text) {
    return "{\"number\":%d,\"at\":%d,\"do\":\"comment\",\"setup\":\"%s\"%s,\"text\":\"%s\",\"by\":\"Ada\"}"
        .formatted(
            number,
            System.currentTimeMillis(),
            setup,
            picture == null ? "" : ",\"picture\":\"" + picture + "\"",
            text);
  }

  static String takeBack(long number, long of) {
    return "{\"number\":%d,\"at\":%d,\"do\":\"take-back\",\"of\":%d}"
        .formatted(number, System.currentTimeMillis(), of);
  }

  /** A stream of the job, read as WHATWG HTML, section 9.2.6 says. */
  static final class Stream implements AutoCloseable {
    record Event(String id, String name, JsonNode data) {}

    final int status;
    private final InputStream in;
    private final BufferedReader lines;
    final List<String> comments = new ArrayList<>();

    private Stream(HttpResponse<InputStream> response) {
      status = response.statusCode();
      in = response.body();
      lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    }

    /** The next event; nothing at the end. */
    Event next() throws IOException {
      var id = "";
      var name = "message";
      var data = new StringBuilder();
      for (String line; (line = lines.readLine()) != null; ) {
        if (line.isEmpty()) {
          if (!data.isEmpty()) {
            return new Event(id, name, JSON.readTree(data.toString()));
          }
        } else if (line.startsWith(":")) {
          comments.add(line);
        } else {
          int colon = line.indexOf(':');
          var value = line.substring(colon + 1).replaceFirst("^ ", "");
          switch (line.substring(0, colon)) {
            case "id" -> id = value;
            case "event" -> name = value;
            case "data" -> data.append(value);
            default -> throw new AssertionError("a field that is none: " + line);
          }
        }
      }
      return null;
    }

    /** The first state for which something holds. */
    JsonNode until(java.util.function.Predicate<JsonNode> holds) throws IOException {
      while (true) {
        var next = next();
        if (next == null) {
          throw new AssertionError("the stream ended");
        }
        if (next.name().equals("state") && holds.test(next.data())) {
          return next.data();
        }
      }
    }

    @Override
    public void close() throws IOException {
      in.close();
    }
  }

  Stream live() throws Exception {
    return new Stream(
        HTTP.send(request("GET", "/live", ""), HttpResponse.BodyHandlers.ofInputStream()));
  }
}
