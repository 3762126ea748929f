package org.framewright.share;

import com.sun.net.httpserver.HttpServer;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.lang.management.ManagementFactory;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Pattern;
import org.framewright.job.Device;
import org.framewright.live.JobView;
import org.framewright.live.LiveJob;

/**
 * Fifty devices that follow a job while it changes ten times a second: how many changes a stream
 * missed, how long one takes from the tick to a stream and from the disk to a stream, and the
 * memory; then the same with five that do not read, and a comment a second. The baseline is a bare
 * server of the JDK that writes as many bytes as often. All in one program, readers included.
 * {@code mvn -q -Pbench -Dbench=Share -Dbench.arguments=60} for so many seconds each.
 */
final class ShareBenchmark {
  private static final int DEVICES = 50;
  private static final int STUCK = 5;
  private static final int SETUPS = 400;
  private static final int A_SECOND = 10;
  private static final int COMMENTS = 100;
  private static final Pattern UPDATE = Pattern.compile("\"reason\":\"update ([0-9]+)\"");

  private ShareBenchmark() {}

  public static void main(String[] args) throws Exception {
    int seconds = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    var root = Files.createTempDirectory("share");
    try {
      long bytes = run(Files.createDirectory(root.resolve("warm")), 5, false, "to warm up");
      bytes =
          Math.max(
              bytes, run(Files.createDirectory(root.resolve("all")), seconds, false, "all read"));
      run(Files.createDirectory(root.resolve("stuck")), seconds, true, STUCK + " do not read");
      baseline(seconds, (int) bytes);
    } finally {
      try (var files = Files.walk(root)) {
        for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }

  /** What one stream heard: when each update came, in nanoseconds. */
  private static final class Reader implements AutoCloseable {
    final Map<Integer, Long> heard = new ConcurrentHashMap<>();
    private final Socket socket = new Socket();
    private final AtomicLong bytes = new AtomicLong();
    private final AtomicLong messages = new AtomicLong();

    Reader(int port, String request, Pattern update) throws IOException {
      socket.connect(SharedJob.loopbackAt(port));
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      Thread.startVirtualThread(
          () -> {
            try (var lines =
                new BufferedReader(
                    new InputStreamReader(socket.getInputStream(), StandardCharsets.ISO_8859_1))) {
              for (String line; (line = lines.readLine()) != null; ) {
                if (line.startsWith("data: ")) {
                  long now = System.nanoTime();
                  if (!line.contains("\"full\":true")) {
                    bytes.addAndGet(line.length());
                    messages.incrementAndGet();
                  }
                  for (var match = update.matcher(line); match.find(); ) {
                    heard.putIfAbsent(Integer.parseInt(match.group(1)), now);
                  }
                }
              }
            } catch (IOException e) {
              // It is over.
            }
          });
    }

    @Override
    public void close() throws IOException {
      socket.close();
    }
  }

  private static String live(Phone phone) {
    return RawHttp.lines(
        "GET /live HTTP/1.1",
        "Host: 127.0.0.1:" + phone.server.getPort(),
        "Authorization: " + phone.authorization("GET", "/live", new byte[0]));
  }

  private static long run(Path root, int seconds, boolean stuck, String what) throws Exception {
    var readers = new ArrayList<Reader>();
    var silent = new ArrayList<Socket>();
    try (var job = SharedJob.in(root, SETUPS)) {
      int port = job.server.address().getPort();
      var teller = job.paired(Role.ASSISTANT);
      var talker = job.paired(Role.CLIENT);
      long said = 1;
      var text = "collar ".repeat(140);
      if (stuck) {
        for (int i = 0; i < COMMENTS; i++) {
          talk(talker, ++said, text);
        }
      }
      for (int i = 0; i < DEVICES; i++) {
        readers.add(new Reader(port, live(job.paired(Role.ASSISTANT)), UPDATE));
      }
      for (int i = 0; stuck && i < STUCK; i++) {
        var socket = new Socket();
        socket.setReceiveBufferSize(4096);
        socket.connect(SharedJob.loopbackAt(port));
        var request = live(job.paired(Role.ASSISTANT));
        socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
        silent.add(socket);
      }
      Thread.sleep(2000);
      var kept = new ConcurrentHashMap<Integer, Long>();
      var sent = new ConcurrentHashMap<Integer, Long>();
      var listener =
          job.live.listen(
              new LiveJob.Listener() {
                @Override
                public void shown(JobView view) {
                  long last = job.live.job().last(new Device(teller.id));
                  kept.putIfAbsent((int) last, System.nanoTime());
                }
              });
      long heap = 0;
      long cpu = cpu();
      int updates = seconds * A_SECOND;
      long begin = System.nanoTime();
      for (int i = 0; i < updates; i++) {
        int number = i + 2;
        sleepUntil(begin + i * (1_000_000_000L / A_SECOND));
        var tick =
            Phone.tick(number, "%03d".formatted(1 + i % SETUPS), "pickup")
                .replace("}", ",\"reason\":\"update " + number + "\"}");
        sent.put(number, System.nanoTime());
        if (teller.events(tick).json().path("last").asLong() != number) {
          throw new IllegalStateException("not kept: " + number);
        }
        if (stuck && i % A_SECOND == 5) {
          talk(talker, ++said, text);
        }
        heap = Math.max(heap, used());
      }
      double took = (System.nanoTime() - begin) / 1e9;
      cpu = cpu() - cpu;
      Thread.sleep(2000);
      listener.close();
      System.gc();
      System.out.printf(
          "%-16s %d streams, %d updates in %.1f s: %s%n",
          what, readers.size(), updates, took, lost(readers, sent));
      System.out.printf("%16s tick to stream   %s%n", "", spread(readers, sent));
      System.out.printf("%16s disk to stream   %s%n", "", spread(readers, kept));
      System.out.printf(
          "%16s %d bytes a message; heap %d MB at most, %d MB after collection; %.0f%% of one"
              + " processor, readers included%n",
          "", bytes(readers), heap >> 20, used() >> 20, cpu / 1e7 / took);
      if (stuck) {
        long connected = job.server.devices().stream().filter(PairedDevice::connected).count();
        System.out.printf(
            "%16s %d of %d that do not read were cut off%n",
            "", DEVICES + STUCK - connected, STUCK);
      }
      return bytes(readers);
    } finally {
      for (var reader : readers) {
        reader.close();
      }
      for (var socket : silent) {
        socket.close();
      }
    }
  }

  private static void talk(Phone talker, long number, String text) throws Exception {
    while (talker.events(Phone.comment(number, "001", null, text)).status() == 429) {
      Thread.sleep(100);
    }
  }

  private static void sleepUntil(long nanos) throws InterruptedException {
    long left = nanos - System.nanoTime();
    if (left > 0) {
      TimeUnit.NANOSECONDS.sleep(left);
    }
  }

  private static String lost(List<Reader> readers, Map<Integer, Long> sent) {
    long lost =
        readers.stream()
            .mapToLong(
                reader ->
                    sent.keySet().stream().filter(it -> !reader.heard.containsKey(it)).count())
            .sum();
    return lost + " of " + (long) readers.size() * sent.size() + " lost";
  }

  private static String spread(List<Reader> readers, Map<Integer, Long> from) {
    var waits =
        readers.stream()
            .flatMapToLong(
                reader ->
                    reader.heard.entrySet().stream()
                        .filter(it -> from.containsKey(it.getKey()))
                        .mapToLong(it -> it.getValue() - from.get(it.getKey())))
            .toArray();
    Arrays.sort(waits);
    return waits.length == 0
        ? "none"
        : "p50 %.1f ms, p99 %.1f ms, most %.1f ms"
            .formatted(
                waits[waits.length / 2] / 1e6,
                waits[(int) (waits.length * 0.99)] / 1e6,
                waits[waits.length - 1] / 1e6);
  }

  private static long bytes(List<Reader> readers) {
    long messages = readers.stream().mapToLong(reader -> reader.messages.get()).sum();
    return readers.stream().mapToLong(reader -> reader.bytes.get()).sum() / Math.max(1, messages);
  }

  private static long used() {
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
  }

  private static long cpu() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }

  /** The same bytes as often, without a job, a disk, a signature or JSON. */
  private static void baseline(int seconds, int bytes) throws Exception {
    var queues = new CopyOnWriteArrayList<LinkedBlockingQueue<String>>();
    var server = HttpServer.create(SharedJob.loopbackAt(0), 0);
    var threads = Executors.newVirtualThreadPerTaskExecutor();
    server.setExecutor(threads);
    server.createContext(
        "/",
        exchange -> {
          var queue = new LinkedBlockingQueue<String>();
          exchange.sendResponseHeaders(200, 0);
          queues.add(queue);
          try {
            while (true) {
              exchange.getResponseBody().write(queue.take().getBytes(StandardCharsets.UTF_8));
              exchange.getResponseBody().flush();
            }
          } catch (InterruptedException e) {
            throw new IOException(e);
          }
        });
    server.start();
    var readers = new ArrayList<Reader>();
    for (int i = 0; i < DEVICES; i++) {
      var request = RawHttp.lines("GET / HTTP/1.1", "Host: x");
      readers.add(new Reader(server.getAddress().getPort(), request, UPDATE));
    }
    while (queues.size() < DEVICES) {
      Thread.sleep(10);
    }
    var sent = new ConcurrentHashMap<Integer, Long>();
    long cpu = cpu();
    long begin = System.nanoTime();
    for (int i = 0; i < seconds * A_SECOND; i++) {
      sleepUntil(begin + i * (1_000_000_000L / A_SECOND));
      var message =
          "data: {\"reason\":\"update " + i + "\",\"\":\"" + "x".repeat(bytes) + "\"}\n\n";
      sent.put(i, System.nanoTime());
      queues.forEach(queue -> queue.add(message));
    }
    double took = (System.nanoTime() - begin) / 1e9;
    cpu = cpu() - cpu;
    Thread.sleep(1000);
    System.out.printf(
        "%-16s %d streams: %s; %s; %.0f%% of one processor%n",
        "bare server",
        readers.size(),
        lost(readers, sent),
        spread(readers, sent),
        cpu / 1e7 / took);
    threads.shutdownNow();
    server.stop(0);
    for (var reader : readers) {
      reader.close();
    }
  }
}
