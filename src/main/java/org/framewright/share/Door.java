package org.framewright.share;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import java.io.IOException;
import java.net.URI;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * Everything that comes from the network passes here first: whether it is meant for us, comes from
 * our page, is not too large or too often, and is signed by a device that was paired. Only then is
 * it looked at. Statuses and headers are those of RFC 9110.
 */
final class Door implements HttpHandler {
  /** The largest body of a request, in bytes. */
  static final int LARGEST = 64 << 10;

  /** How much of a body that is too large is still taken, in bytes. */
  private static final int MOST_SKIPPED = 1 << 20;

  /** Where the page may take things from: from here, and nothing that is written into it. */
  static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src blob: 'self';"
          + " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  private static final String A_DAY = "private, max-age=86400";

  /** What there is to ask for, and by which method; pictures have a path each. */
  private static final Map<String, String> METHODS =
      Map.of("/pair", "POST", "/events", "POST", "/code", "POST", "/live", "GET");

  private static final String PICTURES = "/picture/";

  /** What a request asks for, as far as nobody has to be known for it. */
  @SuppressWarnings("ArrayRecordComponent") // Never compared, and nobody changes it.
  private record Wish(
      String method, String path, String query, byte[] body, Function<Text, String> say) {
    String target() {
      return query == null ? path : path + "?" + query;
    }
  }

  private final Service service;
  private final Hosts hosts;
  private final boolean tls;
  private final PageFiles files;
  private final Words words = new Words();
  private final WriteWatch watch;
  private final Nonces streamsOpened = new Nonces();
  private final Rates filesByAddress;
  private final Rates failuresByAddress;
  private final Rates byDevice;

  Door(Service service, Hosts hosts, boolean tls, PageFiles files, WriteWatch watch) {
    this.service = service;
    this.hosts = hosts;
    this.tls = tls;
    this.files = files;
    this.watch = watch;
    // A page has some twenty files, and reloads; a device that works sends a few requests a second.
    this.filesByAddress = new Rates(400, 40, System::nanoTime);
    this.failuresByAddress = new Rates(40, 2, System::nanoTime);
    this.byDevice = new Rates(150, 30, System::nanoTime);
  }

  @Override
  public void handle(HttpExchange exchange) throws IOException {
    try (var guard = watch.begin()) {
      protect(exchange.getResponseHeaders());
      var reply = safely(exchange, guard);
      if (reply.isPresent()) {
        send(exchange, guard, reply.get());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("ended", e);
    }
  }

  /** A fault of ours is one answer, and no page waits for it. */
  private Optional<Reply> safely(HttpExchange exchange, WriteWatch.Guard guard)
      throws IOException, InterruptedException {
    try {
      return answer(exchange, guard);
    } catch (RuntimeException e) {
      System.getLogger(Door.class.getName())
          .log(System.Logger.Level.ERROR, "A request of a page was not answered", e);
      if (exchange.getResponseCode() > 0) {
        throw e; // A stream had begun.
      }
      return Optional.of(Reply.plain(500, service.now()));
    }
  }

  private static void protect(Headers headers) {
    headers.set("Content-Security-Policy", POLICY);
    headers.set("Referrer-Policy", "no-referrer");
    headers.set("X-Content-Type-Options", "nosniff");
    headers.set("Cross-Origin-Resource-Policy", "same-origin");
  }

  private void send(HttpExchange exchange, WriteWatch.Guard guard, Reply reply) throws IOException {
    reply.headers().forEach(exchange.getResponseHeaders()::set);
    guard.writing();
    if (exchange.getRequestMethod().equals("HEAD") || reply.body().length == 0) {
      if (reply.status() != 304) {
        exchange.getResponseHeaders().set("Content-Length", Integer.toString(reply.body().length));
      }
      exchange.sendResponseHeaders(reply.status(), -1);
    } else {
      exchange.sendResponseHeaders(reply.status(), reply.body().length);
      exchange.getResponseBody().write(reply.body());
      exchange.getResponseBody().flush(); // Before it waits for the rest of what is sent.
    }
    exchange.close();
    guard.written();
  }

  /** Nothing where it was answered already, as a stream is. */
  private Optional<Reply> answer(HttpExchange exchange, WriteWatch.Guard guard)
      throws IOException, InterruptedException {
    var now = service.now();
    var uri = exchange.getRequestURI();
    if (!isPlain(uri)) {
      return Optional.of(failed(exchange, Reply.plain(400, now).with("Connection", "close")));
    }
    var host = exchange.getRequestHeaders().getFirst("Host");
    if (!isOurs(exchange, host)) {
      return Optional.of(failed(exchange, Reply.plain(421, now)));
    }
    var origin = exchange.getRequestHeaders().getFirst("Origin");
    if (origin != null && !origin.equals((tls ? "https://" : "http://") + host)) {
      return Optional.of(failed(exchange, Reply.plain(403, now)));
    }
    var method = exchange.getRequestMethod();
    var file = files.at(uri.getRawPath());
    if (file.isPresent() && uri.getRawQuery() == null) {
      return Optional.of(file(exchange, method, file.get()));
    }
    var allowed = uri.getRawPath().startsWith(PICTURES) ? "GET" : METHODS.get(uri.getRawPath());
    if (allowed == null) {
      return Optional.of(failed(exchange, Reply.plain(404, now)));
    }
    if (!allowed.equals(method)) {
      return Optional.of(failed(exchange, Reply.plain(405, now).with("Allow", allowed)));
    }
    var body = body(exchange);
    if (body.isEmpty()) {
      return Optional.of(failed(exchange, Reply.plain(413, now).with("Connection", "close")));
    }
    var wish =
        new Wish(
            method,
            uri.getRawPath(),
            uri.getRawQuery(),
            body.get(),
            words.in(exchange.getRequestHeaders().getFirst("Accept-Language")));
    return signed(exchange, guard, wish, now);
  }

  /** A path and perhaps a query, and no other place. */
  private static boolean isPlain(URI uri) {
    return !uri.isAbsolute()
        && uri.getRawAuthority() == null
        && uri.getRawFragment() == null
        && uri.getRawPath() != null
        && uri.getRawPath().startsWith("/");
  }

  private boolean isOurs(HttpExchange exchange, String host) {
    var here = exchange.getLocalAddress();
    var all = exchange.getRequestHeaders().get("Host");
    return all != null
        && all.size() == 1
        && hosts.isOurs(host, here.getAddress(), here.getPort(), tls ? 443 : 80);
  }

  private Reply file(HttpExchange exchange, String method, PageFiles.PageFile file) {
    if (!method.equals("GET") && !method.equals("HEAD")) {
      return failed(exchange, Reply.plain(405, service.now()).with("Allow", "GET, HEAD"));
    }
    var wait = filesByAddress.take(address(exchange));
    if (wait.isPresent()) {
      return tooOften(wait.getAsInt());
    }
    boolean had = file.tag().equals(exchange.getRequestHeaders().getFirst("If-None-Match"));
    var reply =
        had ? new Reply(304, Map.of(), new byte[0]) : Reply.of(200, file.type(), file.bytes());
    return reply.with("ETag", file.tag()).with("Cache-Control", A_DAY);
  }

  private Optional<byte[]> body(HttpExchange exchange) throws IOException {
    var in = exchange.getRequestBody();
    var body = in.readNBytes(LARGEST + 1);
    if (body.length <= LARGEST) {
      return Optional.of(body);
    }
    // Whoever still sends does not listen: some more is taken, so that the answer is heard.
    in.skip(MOST_SKIPPED);
    return Optional.empty();
  }

  private Optional<Reply> signed(
      HttpExchange exchange, WriteWatch.Guard guard, Wish wish, Instant now)
      throws IOException, InterruptedException {
    var signature = Signature.of(exchange.getRequestHeaders().getFirst("Authorization"));
    if (signature.filter(one -> one.isTimely(now)).isEmpty()) {
      return Optional.of(failed(exchange, unknown(now)));
    }
    var by = signature.get();
    if (wish.path().equals("/pair")) {
      return Optional.of(pair(exchange, by, wish, now));
    }
    var device = service.device(by.device());
    if (device.isEmpty()) {
      return Optional.of(failed(exchange, Reply.plain(410, now)));
    }
    var key = device.get().key().orElseThrow();
    if (!by.isBy(key, wish.method(), wish.target(), wish.body())) {
      return Optional.of(failed(exchange, unknown(now)));
    }
    var wait = byDevice.take(by.device());
    if (wait.isPresent()) {
      return Optional.of(tooOften(wait.getAsInt()));
    }
    service.heard(by.device());
    if (wish.path().equals("/live")) {
      if (!streamsOpened.use(by, now)) {
        return Optional.of(unknown(now));
      }
      follow(exchange, guard, device.get(), wish);
      return Optional.empty();
    }
    return Optional.of(asked(device.get(), wish, now));
  }

  /** RFC 9110, section 15.5.2: it says by which scheme one makes oneself known. */
  private static Reply unknown(Instant now) {
    return Reply.plain(401, now).with("WWW-Authenticate", Signature.SCHEME);
  }

  private Reply pair(HttpExchange exchange, Signature by, Wish wish, Instant now)
      throws InterruptedException {
    try {
      var wanted = RequestJson.pairing(wish.body());
      if (!wanted.device().equals(by.device())) {
        return failed(exchange, Reply.plain(400, now));
      }
      return switch (service.pair(
          by.device(),
          wanted.name(),
          key -> by.isBy(key, wish.method(), wish.target(), wish.body()))) {
        case Service.Pairing.Paired(var role, var job, var last) -> {
          var json = Reply.told(now).put("role", role.word()).put("job", job).put("last", last);
          yield Reply.json(200, json);
        }
        case Service.Pairing.Not(var why) ->
            failed(exchange, Reply.json(410, Reply.told(now).put("why", why)));
      };
    } catch (MalformedRequest e) {
      return failed(exchange, Reply.plain(400, now));
    } catch (IOException e) {
      return unavailable(e, wish.say(), now);
    }
  }

  private Reply asked(Devices.Known device, Wish wish, Instant now) throws InterruptedException {
    try {
      if (wish.path().startsWith(PICTURES)) {
        return picture(device, wish, now);
      }
      return switch (wish.path()) {
        case "/events" -> events(device, wish, now);
        case "/code" ->
            service.allows(device.role(), wish.path())
                ? Reply.json(
                    200,
                    service.code(RequestJson.typed(wish.body())).put("time", now.toEpochMilli()))
                : Reply.plain(403, now);
        default -> Reply.plain(404, now);
      };
    } catch (MalformedRequest e) {
      return Reply.plain(400, now);
    } catch (IOException e) {
      return unavailable(e, wish.say(), now);
    }
  }

  private Reply events(Devices.Known device, Wish wish, Instant now)
      throws MalformedRequest, IOException, InterruptedException {
    if (!service.allows(device.role(), wish.path())) {
      return Reply.plain(403, now);
    }
    var answer = service.receive(device, RequestJson.events(wish.body()));
    var json = Reply.told(service.now()).put("last", answer.last());
    return switch (answer) {
      case Ticks.Answer.Kept _ -> Reply.json(200, json);
      case Ticks.Answer.Gap _ -> Reply.json(200, json.put("gap", true));
      case Ticks.Answer.Clash(_, var number) -> Reply.json(409, json.put("clash", number));
      case Ticks.Answer.Refused(_, var number, var why) -> {
        var refused = JsonNodeFactory.instance.objectNode().put("number", number);
        json.set("refused", say(why, wish.say(), refused));
        yield Reply.json(200, json);
      }
    };
  }

  private Reply picture(Devices.Known device, Wish wish, Instant now)
      throws IOException, InterruptedException {
    var token = wish.path().substring(PICTURES.length());
    var edge = edge(wish.query());
    if (!PictureTokens.isLegal(token) || edge.isEmpty()) {
      return Reply.plain(404, now);
    }
    return service
        .picture(device.role(), token, edge.getAsInt())
        .map(
            jpeg ->
                Reply.of(200, "image/jpeg", jpeg).with("Cache-Control", "private, max-age=3600"))
        .orElseGet(() -> Reply.plain(404, now));
  }

  private static OptionalInt edge(String query) {
    return switch (query) {
      case "edge=320" -> OptionalInt.of(320);
      case "edge=1600" -> OptionalInt.of(1600);
      case null, default -> OptionalInt.empty();
    };
  }

  private void follow(
      HttpExchange exchange, WriteWatch.Guard guard, Devices.Known device, Wish wish)
      throws IOException, InterruptedException {
    var headers = exchange.getResponseHeaders();
    headers.set("Content-Type", "text/event-stream");
    headers.set("Cache-Control", "no-store");
    guard.writing();
    exchange.sendResponseHeaders(200, 0);
    service.follow(device, wish.say(), exchange.getResponseBody(), guard);
    guard.writing();
    exchange.close();
    guard.written();
  }

  /** An answer to somebody who is not known, or not as who they say; counted by their address. */
  private Reply failed(HttpExchange exchange, Reply reply) {
    var wait = failuresByAddress.take(address(exchange));
    return wait.isPresent() ? tooOften(wait.getAsInt()) : reply;
  }

  private Reply tooOften(int seconds) {
    return Reply.plain(429, service.now()).with("Retry-After", Integer.toString(seconds));
  }

  private static Reply unavailable(IOException failure, Function<Text, String> say, Instant now) {
    var problem = FileProblems.of(failure);
    // Words that hold a value may hold a path, and no page is told one.
    var told =
        problem.fault().values().isEmpty()
            ? problem
            : new Problem(
                Text.of("the job folder cannot be written just now"),
                Text.of("It waits here until it can be. Tell whoever sits at the computer."));
    return Reply.json(503, say(told, say, Reply.told(now)));
  }

  /** Without the place, which may be a path. */
  private static ObjectNode say(Problem why, Function<Text, String> say, ObjectNode json) {
    return json.put("what", say.apply(why.fault())).put("remedy", say.apply(why.fix()));
  }

  private static String address(HttpExchange exchange) {
    return exchange.getRemoteAddress().getAddress().getHostAddress();
  }
}
