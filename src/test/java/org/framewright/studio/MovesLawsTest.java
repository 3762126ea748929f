package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.Tuple;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.JobMirror;
import org.framewright.job.MarkDetails;
import org.framewright.job.MemoryLogs;
import org.framewright.job.NumberedLogs;
import org.framewright.job.OtherJob;
import org.framewright.job.Receipt;
import org.framewright.job.SealedLine;
import org.framewright.job.SetupMoves;
import org.framewright.job.Station;
import org.framewright.job.TestClock;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * Setups that go from set to set while calls break off, computers are away, programs end, two
 * producers want the same, and people work on: in the end each setup is wanted by one set.
 */
@Tag("slow")
class MovesLawsTest {
  private static final int SETS = 3;
  private static final int SETUPS = 2;

  /** One step of a schedule. */
  sealed interface Step {
    /** Somebody asks for a move; which setup of the set is meant is told by a number. */
    record Ask(int from, int to, int setup) implements Step {}

    /** Somebody takes a move back. */
    record Back(int which) implements Step {}

    /**
     * A computer meets the store.
     *
     * @param broken which call of it breaks, from 0; one that is never made breaks nothing
     * @param done whether the store did what was asked before the answer was lost
     */
    record Follow(int set, int station, int broken, boolean done) implements Step {}

    /** Somebody ticks a setup of the list. */
    record Ticks(int set, int station, int setup, SetupState to) implements Step {}

    /** A program is ended and begun again. */
    record Restart(int set, int station) implements Step {}
  }

  @Provide
  Arbitrary<List<Step>> schedules() {
    var set = Arbitraries.integers().between(0, SETS - 1);
    var station = Arbitraries.integers().between(0, 1);
    var setup = Arbitraries.integers().between(0, SETUPS);
    var ask = Combinators.combine(set, set, setup).as((a, b, c) -> (Step) new Step.Ask(a, b, c));
    var back = Arbitraries.integers().between(0, 9).map(which -> (Step) new Step.Back(which));
    var follow =
        Combinators.combine(
                set, station, Arbitraries.integers().between(0, 14), Arbitraries.of(true, false))
            .as((a, b, c, d) -> (Step) new Step.Follow(a, b, c, d));
    var ticks =
        Combinators.combine(
                set,
                station,
                setup,
                Arbitraries.of(SetupState.ON_SET, SetupState.TO_SHOOT, SetupState.DROPPED))
            .as((a, b, c, d) -> (Step) new Step.Ticks(a, b, c, d));
    var restart = Combinators.combine(set, station).as((a, b) -> (Step) new Step.Restart(a, b));
    return Arbitraries.frequencyOf(
            Tuple.of(5, ask),
            Tuple.of(1, back),
            Tuple.of(12, follow),
            Tuple.of(2, ticks),
            Tuple.of(1, restart))
        .list()
        .ofMinSize(3)
        .ofMaxSize(40);
  }

  /** A store that breaks at one call. */
  private static final class Network {
    private int left = Integer.MAX_VALUE;
    private boolean done;

    @FunctionalInterface
    interface Call<T> {
      T make() throws IOException;
    }

    <T> T through(Call<T> call) throws IOException {
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
  }

  private record Logs(Network network, MemoryLogs store) implements NumberedLogs {
    @Override
    public SequencedMap<String, Long> heads() throws IOException {
      return network.through(store::heads);
    }

    @Override
    public Receipt append(String writer, List<SealedLine> lines) throws IOException {
      return network.through(() -> store.append(writer, lines));
    }

    @Override
    public List<byte[]> read(String writer, long from) throws IOException {
      return network.through(() -> store.read(writer, from));
    }
  }

  private record Book(Network network, MemoryMoves store) implements MoveBook {
    @Override
    public List<SetupMove> of(UUID job) throws IOException {
      return network.through(() -> store.of(job));
    }

    @Override
    public void ask(SetupMove move) throws IOException {
      network.through(
          () -> {
            store.ask(move);
            return true;
          });
    }

    @Override
    public boolean step(SetupMove move, MoveStep.Kind kind, String station, String facts)
        throws IOException {
      return network.through(() -> store.step(move, kind, station, facts));
    }
  }

  /** A computer of a set, with a folder of its own. */
  private static final class Computer {
    final Path folder;
    final Station station;
    final TestClock clock;
    final Logs logs;
    final MoveBook book;
    Job job;
    SetMoves moves;

    Computer(Path folder, String station, Duration ahead, Logs logs, MoveBook book)
        throws Exception {
      this.folder = folder;
      this.station = new Station(station);
      this.clock = new TestClock("2026-11-23T09:00:00Z");
      clock.pass(ahead);
      this.logs = logs;
      this.book = book;
      restart();
    }

    void restart() throws Exception {
      var mirror = JobMirror.of(folder, clock, station, logs);
      job = Job.open(folder, clock, station, mirror.logs());
      moves = new SetMoves(book, OwnSet.id(job), job, mirror);
    }

    void follow() {
      clock.pass(Duration.ofMillis(700));
      try {
        moves.follow();
      } catch (IOException e) {
        // It is done again some time.
      }
    }

    void tick(int setup, SetupState to) throws IOException {
      clock.pass(Duration.ofMillis(700));
      var codes = job.shotList().codes();
      try {
        job.mark(codes.get(setup % codes.size()), to, MarkDetails.NONE);
      } catch (JobException | ArithmeticException e) {
        // It went away, or there is none.
      }
    }

    /** What this set is to shoot, by the titles. */
    List<String> wanted() {
      return job.shotList().setups().stream()
          .filter(setup -> job.moves().given(setup.code()).isEmpty())
          .map(setup -> setup.title())
          .sorted()
          .toList();
    }
  }

  /** The sets, each with as many computers, that meet in one store. */
  private static final class Studio {
    final Network network = new Network();
    final MemoryMoves moves = new MemoryMoves();
    final List<List<Computer>> sets = new ArrayList<>();
    final List<String> titles;

    Studio(Path root, int stations) throws Exception {
      var skews = List.of(Duration.ZERO, Duration.ofMinutes(11), Duration.ofSeconds(-90));
      for (int i = 0; i < SETS; i++) {
        var clock = new TestClock("2026-11-23T08:00:0" + i + "Z");
        var parent = Files.createDirectories(root.resolve("first" + i));
        var first = SetScene.job(parent, "Set" + i, SETUPS, clock, "first");
        rename(first, i);
        var logs = new Logs(network, new MemoryLogs());
        var computers = new ArrayList<Computer>();
        for (int k = 0; k < stations; k++) {
          var folder = root.resolve("set" + i + "-" + k);
          copy(first.folder(), folder);
          var ahead = skews.get((i + k) % skews.size());
          computers.add(new Computer(folder, "desk" + k, ahead, logs, new Book(network, moves)));
        }
        sets.add(computers);
      }
      titles = sets.stream().flatMap(set -> set.getFirst().wanted().stream()).sorted().toList();
    }

    private static void rename(Job job, int set) throws Exception {
      for (var setup : job.shotList().setups()) {
        job.changeSetup(
            new Setup(
                setup.code(),
                "set " + set + " garment " + setup.code(),
                setup.views(),
                setup.framesWanted(),
                setup.columns()));
      }
    }

    private static void copy(Path from, Path to) throws IOException {
      try (var files = Files.walk(from)) {
        for (var file : files.toList()) {
          Files.copy(file, to.resolve(from.relativize(file).toString()));
        }
      }
    }

    OtherJob other(int set) {
      var job = sets.get(set).getFirst().job;
      return new OtherJob(OwnSet.id(job), "set " + set);
    }

    void play(Step step) throws Exception {
      switch (step) {
        case Step.Ask(var from, var to, var setup) -> {
          var codes = sets.get(from).getFirst().job.shotList().codes();
          if (from != to && !codes.isEmpty()) {
            var code = codes.get(setup % codes.size());
            moves.ask(
                new SetupMove(
                    UUID.randomUUID(), other(from), other(to), code, "", Instant.EPOCH, List.of()));
          }
        }
        case Step.Back(var which) -> {
          var all = moves.all();
          if (!all.isEmpty()) {
            Moves.takeBack(moves, all.get(which % all.size()), "producer");
          }
        }
        case Step.Follow(var set, var station, var broken, var done) -> {
          network.breakAt(broken, done);
          computer(set, station).follow();
          network.mend();
        }
        case Step.Ticks(var set, var station, var setup, var to) ->
            computer(set, station).tick(setup, to);
        case Step.Restart(var set, var station) -> computer(set, station).restart();
      }
    }

    private Computer computer(int set, int station) {
      var computers = sets.get(set);
      return computers.get(station % computers.size());
    }

    /** Each title with the sets that want it, as their first computers know. */
    Map<String, List<Integer>> holders() {
      var holders = new TreeMap<String, List<Integer>>();
      titles.forEach(title -> holders.put(title, new ArrayList<>()));
      for (int i = 0; i < SETS; i++) {
        for (var title : sets.get(i).getFirst().wanted()) {
          holders.get(title).add(i);
        }
      }
      return holders;
    }

    void settle() {
      for (int i = 0; i < 6; i++) {
        sets.forEach(set -> set.forEach(Computer::follow));
      }
    }
  }

  private static void within(int stations, Playing playing) throws Exception {
    var root = Files.createTempDirectory("moves");
    try {
      playing.play(new Studio(root, stations));
    } finally {
      try (var files = Files.walk(root)) {
        for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }

  private interface Playing {
    void play(Studio studio) throws Exception;
  }

  @Property(tries = 40, shrinking = ShrinkingMode.OFF)
  void inTheEndEachSetupIsWantedByOneSet(@ForAll("schedules") List<Step> schedule)
      throws Exception {
    within(
        2,
        studio -> {
          for (var step : schedule) {
            studio.play(step);
          }
          studio.settle();
          for (var holders : studio.holders().entrySet()) {
            assertThat(holders.getValue()).as(holders.getKey()).hasSize(1);
          }
          for (var set : studio.sets) {
            assertThat(set.getLast().job.shotList()).isEqualTo(set.getFirst().job.shotList());
            assertThat(set.getLast().job.moves()).isEqualTo(set.getFirst().job.moves());
            assertThat(set.getFirst().job.moves().given()).allMatch(SetupMoves.Given::arrived);
          }
          assertThat(studio.moves.all())
              .noneMatch(
                  move ->
                      move.outcome() instanceof SetupMove.Outcome.Asked
                          || move.outcome() instanceof SetupMove.Outcome.OnItsWay);
        });
  }

  /** Where each set has one computer, at no moment two of them would shoot the same setup. */
  @Property(tries = 40, shrinking = ShrinkingMode.OFF)
  void atNoMomentTwoSetsWantOneSetup(@ForAll("schedules") List<Step> schedule) throws Exception {
    within(
        1,
        studio -> {
          for (var step : schedule) {
            studio.play(step);
            for (var holders : studio.holders().entrySet()) {
              assertThat(holders.getValue().size()).as(holders.getKey()).isLessThan(2);
            }
          }
          studio.settle();
          var ends = new HashMap<String, Integer>();
          studio.holders().forEach((title, sets) -> ends.put(title, sets.size()));
          assertThat(ends.values()).allMatch(sets -> sets == 1);
        });
  }

  /** A schedule in which something moves, so that the laws are not about nothing. */
  @Property(tries = 1)
  void setupsDoMove() throws Exception {
    within(
        2,
        studio -> {
          IntStream.range(0, SETUPS).forEach(i -> ask(studio, i));
          studio.settle();
          assertThat(studio.sets.get(0).getFirst().wanted()).isEmpty();
          assertThat(studio.sets.get(1).getFirst().wanted()).hasSize(2 * SETUPS);
        });
  }

  private static void ask(Studio studio, int setup) {
    try {
      studio.play(new Step.Ask(0, 1, setup));
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }
}
