package org.framewright.share;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The way between a page and the computer, which can be bad: it loses answers, or there is nobody
 * at its end. A page that goes by it has an address of its own, and so a storage of its own.
 */
final class Wire implements AutoCloseable {
  private static final List<String> PASSED =
      List.of("Authorization", "Content-Type", "Accept-Language", "If-None-Match");

  private final HttpServer http;
  private final ExecutorService exchanges = Executors.newVirtualThreadPerTaskExecutor();
  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).executor(exchanges).build();
  private final Random random;
  private final AtomicInteger lostAnswers = new AtomicInteger();
  private final AtomicInteger batches = new AtomicInteger();
  private volatile URI target;
  private volatile double losing;

  /** A good one to a computer. */
  Wire(URI target, long seed) throws IOException {
    this.target = target;
    this.random = new Random(seed);
    http = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    http.createContext("/", this::pass);
    http.setExecutor(exchanges);
    http.start();
  }

  /** Where a page finds the computer. */
  URI address() {
    return URI.create("http://127.0.0.1:" + http.getAddress().getPort() + "/");
  }

  /** An invitation that leads by this way. */
  String by(Invitation invitation) {
    return address() + "#" + invitation.link().getFragment();
  }

  /** From now on this part of the answers to what is ticked is lost, from 0 to 1. */
  void losing(double part) {
    losing = part;
  }

  /** There is nobody at its end until {@link #leadsTo}. */
  void cut() {
    target = null;
  }

  void leadsTo(URI computer) {
    target = computer;
  }

  int lostAnswers() {
    return lostAnswers.get();
  }

  /** How often something was sent to be kept. */
  int batches() {
    return batches.get();
  }

  private void pass(HttpExchange exchange) throws IOException {
    var to = target;
    try (exchange) {
      if (to == null) {
        return; // which ends the connection without a word
      }
      var path = exchange.getRequestURI().getRawPath();
      var body = exchange.getRequestBody().readAllBytes();
      var response =
          client.send(request(exchange, to, body), HttpResponse.BodyHandlers.ofInputStream());
      try (var in = response.body()) {
        if (path.equals("/events")) {
          batches.incrementAndGet();
          if (loses()) {
            lostAnswers.incrementAndGet();
            return;
          }
        }
        response
            .headers()
            .map()
            .forEach(
                (name, values) -> {
                  if (!name.equalsIgnoreCase("content-length")
                      && !name.equalsIgnoreCase("transfer-encoding")
                      && !name.equalsIgnoreCase("connection")
                      && !name.equalsIgnoreCase("date")) {
                    exchange.getResponseHeaders().set(name, values.getFirst());
                  }
                });
        boolean empty = response.statusCode() == 304;
        exchange.sendResponseHeaders(response.statusCode(), empty ? -1 : 0);
        if (!empty) {
          copy(in, exchange, to);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized boolean loses() {
    return random.nextDouble() < losing;
  }

  private void copy(InputStream in, HttpExchange exchange, URI to) throws IOException {
    var out = exchange.getResponseBody();
    var buffer = new byte[8192];
    for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
      if (!target.equals(to)) {
        return;
      }
      out.write(buffer, 0, read);
      out.flush();
    }
  }

  private static HttpRequest request(HttpExchange exchange, URI to, byte[] body) {
    var uri = exchange.getRequestURI();
    var target = uri.getRawPath() + (uri.getRawQuery() == null ? "" : "?" + uri.getRawQuery());
    var request = HttpRequest.newBuilder(to.resolve(target));
    request.method(
        exchange.getRequestMethod(),
        body.length == 0
            ? HttpRequest.BodyPublishers.noBody()
            : HttpRequest.BodyPublishers.ofByteArray(body));
    for (var name : PASSED) {
      var value = exchange.getRequestHeaders().getFirst(name);
      if (value != null) {
        request.header(name, value);
      }
    }
    if (exchange.getRequestHeaders().containsKey("Origin")) {
      request.header("Origin", to.toString().replaceFirst("/$", ""));
    }
    return request.build();
  }

  @Override
  public void close() {
    target = null;
    http.stop(0);
    client.shutdownNow();
    exchanges.shutdownNow();
  }
}
