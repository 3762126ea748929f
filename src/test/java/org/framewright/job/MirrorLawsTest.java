package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SequencedMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import net.jqwik.api.Tuple;

/**
 * Two stations of one set that share no folder: whatever is dropped, sent again, sent late or
 * brought back from a backup, in the end each folder and the store have every tick once, in order.
 */
@Tag("slow")
class MirrorLawsTest {

  /** One step of a schedule. */
  sealed interface Step {
    /** A station ticks some setups. */
    record Ticks(int station, int count) implements Step {}

    /**
     * A station exchanges with the store.
     *
     * @param broken which call of it breaks, from 0; one that is never made breaks nothing
     * @param done whether the store did what was asked before the answer was lost
     */
    record Exchange(int station, int broken, boolean done) implements Step {}

    /** A program is ended and begun again. */
    record Restart(int station) implements Step {}

    /** What was on its way for long comes now, once more. */
    record Late(int which) implements Step {}

    record Backup() implements Step {}

    record Restore() implements Step {}
  }

  @Provide
  Arbitrary<List<Step>> schedules() {
    var station = Arbitraries.integers().between(0, 1);
    var ticks =
        Combinators.combine(station, Arbitraries.integers().between(1, 4))
            .as((one, count) -> (Step) new Step.Ticks(one, count));
    var exchange =
        Combinators.combine(
                station, Arbitraries.integers().between(0, 9), Arbitraries.of(true, false))
            .as((one, broken, done) -> (Step) new Step.Exchange(one, broken, done));
    var restart = station.map(one -> (Step) new Step.Restart(one));
    var late = Arbitraries.integers().between(0, 30).map(which -> (Step) new Step.Late(which));
    return Arbitraries.frequencyOf(
            Tuple.of(6, ticks),
            Tuple.of(8, exchange),
            Tuple.of(2, restart),
            Tuple.of(2, late),
            Tuple.of(1, Arbitraries.just((Step) new Step.Backup())),
            Tuple.of(1, Arbitraries.just((Step) new Step.Restore())))
        .list()
        .ofMinSize(1)
        .ofMaxSize(30);
  }

  /** A network that breaks at one call, and remembers what was sent. */
  private static final class Network implements NumberedLogs {
    private final MemoryLogs store;
    private final List<List<SealedLine>> past = new ArrayList<>();
    private int left = Integer.MAX_VALUE;
    private boolean done;

    Network(MemoryLogs store) {
      this.store = store;
    }

    @FunctionalInterface
    private interface Call<T> {
      T make() throws IOException;
    }

    private <T> T through(Call<T> call) throws IOException {
      if (left-- > 0) {
        return call.make();
      }
      left = Integer.MAX_VALUE;
      if (done) {
        call.make();
      }
      throw new IOException("the network is gone");
    }

    void breakAt(int call, boolean afterwards) {
      left = call;
      done = afterwards;
    }

    void mend() {
      left = Integer.MAX_VALUE;
    }

    @Override
    public SequencedMap<String, Long> heads() throws IOException {
      return through(store::heads);
    }

    @Override
    public Receipt append(String writer, List<SealedLine> lines) throws IOException {
      past.add(List.copyOf(lines));
      return through(() -> store.append(writer, lines));
    }

    @Override
    public List<byte[]> read(String writer, long from) throws IOException {
      return through(() -> store.read(writer, from));
    }

    void sendAgain(int which) {
      if (!past.isEmpty()) {
        var lines = past.get(which % past.size());
        store.append(lines.getFirst().writer(), lines);
      }
    }
  }

  private static final class Computer {
    final Path job;
    final String station;
    final TestClock clock;
    final NumberedLogs store;
    JobMirror mirror;
    EventLog log;
    int ticks;

    Computer(Path job, String station, NumberedLogs store) throws IOException {
      this.job = job;
      this.station = station;
      this.clock = new TestClock("2026-11-23T09:00:00Z");
      this.store = store;
      restart();
    }

    void restart() throws IOException {
      mirror = MirrorScene.mirror(job, station, clock, store);
      log = MirrorScene.log(job, station, clock, mirror);
    }

    void tick(int count) throws IOException {
      for (int i = 0; i < count; i++) {
        clock.pass(Duration.ofMillis(700));
        log.append(EventLogContract.shot(station + ++ticks));
      }
    }

    void exchange() {
      try {
        mirror.exchange();
      } catch (IOException e) {
        // It is done again some time.
      }
    }

    List<Entry> all() throws IOException {
      return new FileEventLog(MirrorScene.log(job), new Station("newcomer"), clock)
          .news().stream().sorted(Comparator.comparing(Entry::stamp)).toList();
    }
  }

  @Property(tries = 200)
  void inTheEndEachHasEveryTickOnce(@ForAll("schedules") List<Step> schedule) throws IOException {
    var root = Files.createTempDirectory("mirror");
    try {
      var store = new MemoryLogs();
      var network = new Network(store);
      var desk = new Computer(root.resolve("desk"), "desk", network);
      var cart = new Computer(root.resolve("cart"), "cart", network);
      var both = List.of(desk, cart);
      var backup = new MemoryLogs();
      for (var step : schedule) {
        switch (step) {
          case Step.Ticks(var one, var count) -> both.get(one).tick(count);
          case Step.Exchange(var one, var broken, var done) -> {
            network.breakAt(broken, done);
            both.get(one).exchange();
            network.mend();
          }
          case Step.Restart(var one) -> both.get(one).restart();
          case Step.Late(var which) -> network.sendAgain(which);
          case Step.Backup() -> backup = store.copy();
          case Step.Restore() -> store.restore(backup);
        }
      }
      // An offline day, merged twice.
      for (int i = 0; i < 2; i++) {
        both.forEach(Computer::exchange);
        desk.exchange();
      }
      assertThat(store.log("desk")).hasSize(desk.ticks);
      assertThat(store.log("cart")).hasSize(cart.ticks);
      assertThat(desk.all()).hasSize(desk.ticks + cart.ticks).isEqualTo(cart.all());
      for (var computer : both) {
        assertThat(computer.mirror.told()).isEmpty();
        var own = MirrorScene.log(computer.job).resolve(computer.station + ".jsonl");
        if (computer.ticks > 0) {
          assertThat(store.log(computer.station).stream().map(SealedLine::toString))
              .containsExactlyElementsOf(Files.readAllLines(own));
        }
      }
    } finally {
      delete(root);
    }
  }

  private static void delete(Path root) throws IOException {
    try (var files = Files.walk(root)) {
      for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
