package org.framewright.studio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.shotlist.SetupState;
import org.postgresql.PGConnection;

/**
 * A process with some of the stations of a studio, each with a folder, a follower and connections
 * of its own, as it has them in the app. What they are to do comes in as lines; each tick that is
 * in a folder, confirmed by the store, or seen on another station goes out as one, with the
 * system's nanoseconds. To compare with, there are bare stations that only insert and notify, on
 * one channel for all or on one for each set.
 *
 * <p>Arguments: {@code framewright}, {@code bare} or {@code bare-apart}, the store, the folder of
 * all stations' folders with the stations of each set, the first station and how many there are.
 */
final class LoadedStations {
  private static final Duration ASK = Duration.ofSeconds(5);

  /** Where a bare station keeps its events. */
  static final String BARE_TABLE =
      """
      create table public.bare (job int, station int, number bigint, line bytea,
        primary key (job, station, number));
      grant select, insert on public.bare to public
      """;

  private abstract static class Ticking {
    final int index;
    private long ticked;
    private long kept;

    Ticking(int index) {
      this.index = index;
    }

    /** Makes the next tick. */
    final synchronized void tick() {
      try {
        make(ticked + 1);
        ticked++;
      } catch (IOException | JobException | SQLException e) {
        say("failed " + index + " " + e);
      }
    }

    abstract void make(long number) throws IOException, JobException, SQLException;

    final synchronized long ticked() {
      return ticked;
    }

    final synchronized void kept(long number) {
      for (; kept < number; kept++) {
        say("kept", index, kept + 1, System.nanoTime());
      }
      notifyAll();
    }

    /** Ticks whenever the store has what was ticked before. */
    final void tickWithoutRest(long until) {
      while (System.nanoTime() < until) {
        tick();
        synchronized (this) {
          while (kept < ticked && System.nanoTime() < until) {
            try {
              wait(100);
            } catch (InterruptedException e) {
              return;
            }
          }
        }
      }
    }
  }

  /** A station as it is in the app: the folder first, then the store. */
  private static final class Desk extends Ticking implements SetFollower.Listener {
    private final Job job;
    private final SetFollower follower;
    private final List<Integer> others;
    private final long[] seen;
    private final int in;

    Desk(int index, int inSet, StoreAddress address, Path folder) throws Exception {
      super(index);
      in = inSet;
      others =
          IntStream.range(index / inSet * inSet, index / inSet * inSet + inSet)
              .filter(other -> other != index)
              .boxed()
              .toList();
      seen = new long[inSet];
      var clock = Clock.systemUTC();
      var station = new Station("desk" + index);
      job = Job.open(folder, clock, station);
      var hours = DayHours.usual(ZoneOffset.UTC);
      follower =
          new SetFollower(
              hint -> {
                var store = Store.open(address, PlayedServer.PASSWORD);
                try {
                  var set = OwnSet.open(store, folder, hours, clock, station);
                  return Optional.of(new Visit(StoreVisit.of(store, set, hint)));
                } catch (IOException | JobException e) {
                  store.close();
                  throw e;
                }
              },
              this,
              ASK,
              ASK);
      look(false);
      follower.started();
    }

    private final class Visit implements StoreRounds.Visit<SetFollower.Exchange> {
      private final StoreVisit visit;

      Visit(StoreVisit visit) {
        this.visit = visit;
      }

      @Override
      public SetFollower.Exchange ask() throws IOException {
        long before = ticked();
        var exchange = visit.ask();
        kept(before);
        return exchange;
      }

      @Override
      public void close() {
        visit.close();
      }
    }

    private static String setup(int station, int inSet) {
      return "%03d".formatted(station % inSet + 1);
    }

    @Override
    void make(long number) throws IOException, JobException {
      job.mark(
          setup(index, in), SetupState.PICKUP, MarkDetails.NONE.andReason(String.valueOf(number)));
      say("tick", index, number, System.nanoTime());
      follower.changed();
    }

    private void look(boolean telling) {
      long at = System.nanoTime();
      var state = job.state();
      for (int other : others) {
        var last = state.of(setup(other, in)).reason().map(Long::parseLong).orElse(0L);
        for (long n = seen[other % in] + 1; telling && n <= last; n++) {
          say("seen", other, n, at);
        }
        seen[other % in] = last;
      }
    }

    @Override
    public void brought() {
      try {
        job.refresh();
        look(true);
      } catch (IOException e) {
        say("failed " + index + " " + e);
      }
    }

    @Override
    public void told(List<Text> told) {
      told.forEach(one -> say("told " + index + " " + one.english()));
    }

    @Override
    public void away(StoreException why) {
      say("away " + index);
    }

    @Override
    public void reached() {
      say("reached " + index);
    }
  }

  /** No more than an insert that notifies, and a connection that listens. */
  private static final class Bare extends Ticking {
    private final java.sql.Connection writing;
    private final byte[] line;
    private final int set;
    private final String channel;

    Bare(int index, int inSet, StoreAddress address, boolean apart) throws SQLException {
      super(index);
      set = index / inSet;
      channel = apart ? "bare" + set : "bare";
      line = "x".repeat(250).getBytes(StandardCharsets.UTF_8);
      writing = connect(address);
      var listening = connect(address);
      try (var statement = listening.createStatement()) {
        statement.execute("listen " + channel);
      }
      var server = listening.unwrap(PGConnection.class);
      Thread.ofPlatform()
          .daemon()
          .start(
              () -> {
                try {
                  while (true) {
                    for (var hint : server.getNotifications(500)) {
                      var said = hint.getParameter().split(" ", -1);
                      if (said[0].equals("" + set) && !said[1].equals("" + index)) {
                        say("seen", Integer.parseInt(said[1]), said[2], System.nanoTime());
                      }
                    }
                  }
                } catch (SQLException e) {
                  say("away " + index);
                }
              });
    }

    private static java.sql.Connection connect(StoreAddress address) throws SQLException {
      var properties = address.properties();
      properties.setProperty("password", PlayedServer.PASSWORD);
      return java.sql.DriverManager.getConnection(address.jdbc(), properties);
    }

    @Override
    void make(long number) throws SQLException {
      say("tick", index, number, System.nanoTime());
      try (var statement =
          writing.prepareStatement(
              "with kept as (insert into public.bare values (?, ?, ?, ?) returning 1)"
                  + " select pg_notify(?, ?) from kept")) {
        statement.setInt(1, set);
        statement.setInt(2, index);
        statement.setLong(3, number);
        statement.setBytes(4, line);
        statement.setString(5, channel);
        statement.setString(6, set + " " + index + " " + number);
        statement.execute();
      }
      kept(number);
    }
  }

  private LoadedStations() {}

  private static void say(String line) {
    System.out.println(line);
  }

  private static void say(String what, int station, Object number, long nanos) {
    say(what + " " + station + " " + number + " " + nanos);
  }

  public static void main(String[] args) throws Exception {
    var address = StoreAddress.parse(args[1]);
    var root = Path.of(args[2]);
    int inSet = Integer.parseInt(args[3]);
    int first = Integer.parseInt(args[4]);
    var stations = new ArrayList<Ticking>();
    for (int i = first; i < first + Integer.parseInt(args[5]); i++) {
      stations.add(
          args[0].startsWith("bare")
              ? new Bare(i, inSet, address, args[0].equals("bare-apart"))
              : new Desk(i, inSet, address, folder(root, i)));
    }
    say("ready");
    try (var lines = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
      for (var line = lines.readLine(); line != null; line = lines.readLine()) {
        var words = line.split(" ", -1);
        double rate = Double.parseDouble(words[0]);
        run(stations, rate, Integer.parseInt(words[1]));
        say("done");
      }
    }
    System.exit(0);
  }

  /** The only folder in that of a station. */
  static Path folder(Path root, int station) throws IOException {
    try (var folders = Files.list(root.resolve("desk" + station))) {
      return folders.findFirst().orElseThrow();
    }
  }

  /** As many ticks a second in all; with 0, each station ticks without rest. */
  private static void run(List<Ticking> stations, double rate, int seconds)
      throws InterruptedException {
    try (var threads = Executors.newCachedThreadPool();
        var clock = Executors.newScheduledThreadPool(1)) {
      if (rate == 0) {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
        stations.forEach(station -> threads.execute(() -> station.tickWithoutRest(until)));
        return;
      }
      for (int i = 0; i < rate * seconds; i++) {
        var station = stations.get(i % stations.size());
        var _ =
            clock.schedule(
                () -> threads.execute(station::tick),
                (long) (i * 1_000_000L / rate),
                TimeUnit.MICROSECONDS);
      }
      clock.shutdown();
      clock.awaitTermination(seconds + 60L, TimeUnit.SECONDS);
    }
  }
}
