package org.framewright.share;

import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.net.BindException;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.SocketException;
import java.net.URI;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.framewright.base.LockFile;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.live.LiveJob;

/**
 * Serves the page of a job, or of all sets of a studio, to phones, tablets and screens on the
 * studio's network. It keeps on until it is closed, whatever its devices do. Safe from any thread.
 */
public final class ShareServer implements AutoCloseable {
  /**
   * What the JDK's server reads when its first instance is made. Streams are small messages that
   * are not to wait for more; a request has its time to come in, an answer is watched by {@link
   * WriteWatch}, since one that is a stream never ends.
   */
  private static final Map<String, String> LIMITS =
      Map.of(
          "sun.net.httpserver.nodelay", "true",
          "sun.net.httpserver.maxReqTime", "10",
          "sun.net.httpserver.maxReqHeaders", "60",
          "sun.net.httpserver.maxReqHeaderSize", "16384",
          "jdk.httpserver.maxConnections", "1000");

  private static final int NEXT_PORTS = 10;
  private static final int BACKLOG = 128;

  private final Service service;
  private final Devices devices;
  private final LockFile served;
  private final WriteWatch watch;
  private final HttpServer http;
  private final Optional<InetAddress> host;
  private final boolean tls;
  private final Clock clock;
  private final ExecutorService exchanges = Executors.newVirtualThreadPerTaskExecutor();
  private final ScheduledExecutorService beats =
      Executors.newScheduledThreadPool(
          2,
          beat -> {
            var thread = new Thread(beat, "page on the network");
            thread.setDaemon(true);
            return thread;
          });
  private volatile InetAddress seenAt;

  private ShareServer(
      Service service,
      Devices devices,
      HttpServer http,
      ShareOptions options,
      PageFiles files,
      InetAddress seenAt,
      Clock clock,
      LockFile served) {
    this.service = service;
    this.served = served;
    this.devices = devices;
    this.http = http;
    this.host = options.host();
    this.tls = options.tls().isPresent();
    this.seenAt = seenAt;
    this.clock = clock;
    this.watch = new WriteWatch(System::nanoTime);
    var hosts = new Hosts(host.map(one -> hostString(one)).filter(name -> !isLiteral(name)));
    http.createContext("/", new Door(service, hosts, tls, files, watch));
    http.setExecutor(exchanges);
  }

  /**
   * Serves a job's page until it is closed.
   *
   * @throws ShareException if the port is taken, or this computer is in no network
   * @throws IOException if the paired devices cannot be read
   */
  public static ShareServer start(LiveJob job, ShareOptions options) throws IOException {
    return start(job, options, Clock.systemUTC());
  }

  static ShareServer start(LiveJob job, ShareOptions options, Clock clock) throws IOException {
    var hours = options.hours().orElseGet(() -> DayHours.usual(job.job().zone()));
    return start(
        job.job().identity(),
        Text.of("another program on this computer serves this job already"),
        devices -> new JobContent(job, devices, hours, clock),
        PageFiles.ofAJob(),
        options,
        clock);
  }

  /**
   * Serves the page of all sets of a studio until it is closed. Its assistants are producers.
   *
   * @throws ShareException if the port is taken, or this computer is in no network
   * @throws IOException if the paired devices cannot be read
   */
  public static ShareServer start(LiveSets sets, ShareOptions options) throws IOException {
    return start(sets, options, Clock.systemUTC());
  }

  static ShareServer start(LiveSets sets, ShareOptions options, Clock clock) throws IOException {
    return start(
        sets.identity(),
        Text.of("another program on this computer serves these sets already"),
        _ -> new SetsContent(sets, clock),
        PageFiles.ofAllSets(),
        options,
        clock);
  }

  /**
   * @param identity what tells what is served from all else
   * @param already why it is not served twice by one computer
   */
  private static ShareServer start(
      String identity,
      Text already,
      Function<Devices, Content> content,
      PageFiles files,
      ShareOptions options,
      Clock clock)
      throws IOException {
    LIMITS.forEach(
        (name, limit) -> {
          if (System.getProperty(name) == null) {
            System.setProperty(name, limit);
          }
        });
    var seenAt =
        options
            .host()
            .or(Addresses::ofThisComputer)
            .orElseThrow(
                () ->
                    new ShareException(
                        Text.of("this computer is in no network"),
                        "",
                        Text.of("Join the studio's network, or name the address to serve at.")));
    var served =
        Devices.hold(options.settings(), identity)
            .orElseThrow(
                () -> new ShareException(already, "", Text.of("Use that one, or end it first.")));
    try {
      var random = new SecureRandom();
      var devices = Devices.of(options.settings(), identity, random);
      var http = bound(options, devices.port());
      try {
        var service = new Service(content.apply(devices), devices, clock, random);
        var server = new ShareServer(service, devices, http, options, files, seenAt, clock, served);
        server.begin(options);
        return server;
      } catch (IOException | RuntimeException e) {
        http.stop(0);
        throw e;
      }
    } catch (IOException | RuntimeException e) {
      served.close();
      throw e;
    }
  }

  private void begin(ShareOptions options) throws IOException {
    if (options.port() == ShareOptions.USUAL_PORT) {
      devices.keepPort(port()); // Pages that are open look for it there.
    }
    http.start();
    // A drive that does not answer may hold up the look at the job for long, but nothing else.
    var _ = beats.scheduleWithFixedDelay(watch::sweep, 1, 1, TimeUnit.SECONDS);
    var _ = beats.scheduleWithFixedDelay(this::beat, 1, 1, TimeUnit.SECONDS);
  }

  private void beat() {
    try {
      service.beat();
    } catch (RuntimeException e) {
      // The next one may work; without any, nobody would be told of a lost folder.
      System.getLogger(ShareServer.class.getName())
          .log(System.Logger.Level.WARNING, "A look at the job failed", e);
    }
  }

  private static HttpServer bound(ShareOptions options, int before) throws IOException {
    boolean usual = options.port() == ShareOptions.USUAL_PORT;
    var ports =
        IntStream.concat(
                usual && before > 0 ? IntStream.of(before) : IntStream.empty(),
                IntStream.range(options.port(), options.port() + (usual ? NEXT_PORTS : 1)))
            .toArray();
    BindException taken = null;
    for (int port : ports) {
      var address =
          options
              .host()
              .map(one -> new InetSocketAddress(one, port))
              .orElseGet(() -> new InetSocketAddress(port));
      try {
        return made(options, address);
      } catch (BindException e) {
        taken = e;
      } catch (SocketException e) {
        throw cannot(options, port, e);
      }
    }
    throw cannot(options, ports[ports.length - 1], taken);
  }

  private static HttpServer made(ShareOptions options, InetSocketAddress address)
      throws IOException {
    if (options.tls().isEmpty()) {
      return HttpServer.create(address, BACKLOG);
    }
    var server = HttpsServer.create(address, BACKLOG);
    server.setHttpsConfigurator(new HttpsConfigurator(options.tls().get().context()));
    return server;
  }

  /** What the system says of it is "Address already in use" or "Cannot assign requested". */
  private static ShareException cannot(ShareOptions options, int port, SocketException failure) {
    var said = String.valueOf(failure.getMessage()).toLowerCase(Locale.ROOT);
    var told =
        said.contains("assign")
            ? new ShareException(
                Text.of("this computer has no address {0}", hostString(options.host().get())),
                "",
                Text.of("Name an address that it has, or none."))
            : said.contains("permission")
                ? new ShareException(
                    Text.of("port {0} is not for everybody", Integer.toString(port)),
                    "",
                    Text.of("Choose one from 1024 up."))
                : new ShareException(
                    Text.of("port {0} is taken", Integer.toString(port)),
                    "",
                    Text.of("Choose another one, or end the program that has it."));
    told.initCause(failure);
    return told;
  }

  /** When each device was seen last is nice to know, and no more. */
  private void devicesSeen() {
    try {
      devices.keepSeen(service.devices());
    } catch (IOException e) {
      System.getLogger(ShareServer.class.getName())
          .log(System.Logger.Level.WARNING, "When devices were seen could not be kept", e);
    }
  }

  private int port() {
    return http.getAddress().getPort();
  }

  /**
   * Where the page is: at the address that the studio's network sees just now, or the one that was
   * asked for.
   */
  public URI address() {
    if (host.isEmpty()) {
      seenAt = Addresses.ofThisComputer().orElse(seenAt);
    }
    return URI.create((tls ? "https://" : "http://") + written(seenAt) + ":" + port() + "/");
  }

  private static String written(InetAddress address) {
    var text = hostString(address);
    // A zone is of this computer only, and browsers take none.
    return address instanceof Inet6Address && isLiteral(text)
        ? "[" + text.replaceFirst("%.*", "") + "]"
        : text;
  }

  /** The name where it was given as one, without asking anybody for it. */
  private static String hostString(InetAddress address) {
    return new InetSocketAddress(address, 0).getHostString();
  }

  private static boolean isLiteral(String host) {
    try {
      return InetAddress.ofLiteral(host) != null;
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  /** A new link for one device, which holds for ten minutes. */
  public Invitation invite(Role role) {
    var until = clock.instant().plus(Invitations.HOLDS);
    var secret = service.invite(role, until);
    return new Invitation(
        URI.create(address() + "#" + secret.text() + "." + role.letter()), role, until);
  }

  /** Whether nobody used an invitation yet, and its time is not up. */
  public boolean holds(Invitation invitation) {
    return service.holds(secret(invitation));
  }

  /** An invitation that nobody is to use any more. */
  public void withdraw(Invitation invitation) {
    service.withdraw(secret(invitation));
  }

  private static String secret(Invitation invitation) {
    return invitation.link().getFragment().replaceFirst("\\..*", "");
  }

  /** The devices that are paired, in the order in which they were. */
  public List<PairedDevice> devices() {
    return service.devices();
  }

  /**
   * Unpairs a device at once: its page hears no more and can do nothing.
   *
   * @throws IOException if that cannot be kept, so that a server which is started again lets it in
   */
  public void unpair(String id) throws IOException {
    service.unpair(id);
  }

  /**
   * Tells of every change of the devices: paired, unpaired, connected, gone.
   *
   * @param changed called from any thread; it returns soon
   * @return to be closed by whoever does not want to hear any more
   */
  public AutoCloseable listen(Runnable changed) {
    return service.listen(changed);
  }

  /** Ends it; what pages have not sent waits in them. */
  @Override
  public void close() {
    beats.shutdownNow();
    service.close();
    devicesSeen();
    // A stream that is stuck in a write keeps its connection locked until it is interrupted.
    exchanges.shutdownNow();
    http.stop(0);
    try {
      served.close();
    } catch (IOException e) {
      // The system lets go of it when the program ends.
      System.getLogger(ShareServer.class.getName())
          .log(System.Logger.Level.WARNING, "The lock of a served job was not closed", e);
    }
  }
}
