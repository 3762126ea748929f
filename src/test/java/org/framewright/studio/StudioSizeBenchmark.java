package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.framewright.base.OwnFolder;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.job.JobLogs;
import org.framewright.job.MarkDetails;
import org.framewright.job.NumberedLogs;
import org.framewright.job.Station;
import org.framewright.job.StoredLines;
import org.framewright.shotlist.SetupState;

/**
 * A store of many years: {@code -Dbench.arguments="MILLIONS_OF_EVENTS [FILE_FOR_PLANS]"}. One job
 * of four stations is played, and its lines, byte for byte, become those of all jobs, over ten
 * years; what these are found by is invented. Then each thing that people wait for is done.
 */
public final class StudioSizeBenchmark {
  private static final int EVENTS = 2_000;
  private static final int STATIONS = 4;
  private static final int SETUPS = 60;
  private static final int TIMES = 9;
  private static final int APPENDS = 500;

  /** The disk is busy for a while with what was made. */
  private static final Duration CALM = Duration.ofSeconds(30);

  /** Jobs but the played one, over ten years up to now; the newest are of the last days. */
  private static final String JOBS =
      """
      insert into framewright.job (id, name, convention, added)
        select md5('j' || i)::uuid, 'kvo-' || i || '-winter', p.convention,
          now() - interval '10 years' * (n - i) / n
        from generate_series(1, n) i, framewright.job p where p.id = 'PLAYED';
      insert into framewright.head (job, station, number, at)
        select md5('j' || i)::uuid, h.station, h.number, now() - interval '10 years' * (n - i) / n
        from generate_series(1, n) i, framewright.head h where h.job = 'PLAYED';
      insert into framewright.standing (job, events, station, at, facts)
        select md5('j' || i)::uuid, s.events, s.station,
          now() - interval '10 years' * (n - i) / n, s.facts
        from generate_series(1, n) i, framewright.standing s where s.job = 'PLAYED';
      insert into framewright.event (job, station, number, millis, line)
        select md5('j' || i)::uuid, e.station, e.number, e.millis, e.line
        from generate_series(1, n) i, framewright.event e where e.job = 'PLAYED';
      """;

  private static final String FOUND_BY =
      """
      create temp table noun as
        select i, substr(translate(md5('n' || i), '0123456789', 'aeioulnrst'), 1, 5 + i % 5) w
        from generate_series(0, 1999) i;
      create temp table person as
        select i, substr(translate(md5('p' || i), '0123456789', 'aeioulnrst'), 1, 4 + i % 5) a,
          substr(translate(md5('q' || i), '0123456789', 'aeioulnrst'), 1, 5 + i % 6) b
        from generate_series(0, 2999) i;
      create temp table client as
        select i, substr(translate(md5('c' || i), '0123456789', 'aeioulnrst'), 1, 4 + i % 4) a
        from generate_series(0, 199) i;
      insert into framewright.searched
        select md5('j' || j)::uuid, 2000,
          'job: kvo-' || j || E'-winter\\nclient: ' || c.a || E'\\ntitle: winter'
        from generate_series(1, n) j join client c on c.i = j % 200;
      insert into framewright.search_setup
        select md5('j' || j)::uuid, lpad(s::text, 3, '0'), initcap(n1.w) || ' ' || n2.w || ' coat',
          g, p.a || ' ' || p.b, 'signed-off', date '2016-01-01' + (j * 3650 / n),
          ('''' || lpad(s::text, 3, '0') || ''':1A ''' || g || ''':2A ''' || n1.w || ''':3B '''
            || n2.w || ''':4B ''coat'':5B ''' || p.a || ''':6C ''' || p.b || ''':7C ''kvo'':8 '''
            || j || ''':9 ''winter'':10 ''' || c.a || ''':11')::tsvector
        from generate_series(1, n) j cross join generate_series(1, 60) s
        cross join lateral (
          select (4000000000000 + ((j * 60 + s)::bigint * 7919 * 13) % 900000000000)::text g) x
        join noun n1 on n1.i = (j * 31 + s * 7) % 2000
        join noun n2 on n2.i = ((j * 17 + s * 13) % 2000)
        join person p on p.i = (j * 3 + s / 20) % 3000
        join client c on c.i = j % 200;
      insert into framewright.search_frames
        select md5('j' || j)::uuid, 'desk', lpad((k / 2 + 1)::text, 3, '0'), 'kvo',
          int8range((j * 1000 + k * 8) % 10000, (j * 1000 + k * 8) % 10000 + 7, '[]')
        from generate_series(1, n) j, generate_series(0, 119) k;
      insert into framewright.search_word
        select distinct unnest(tsvector_to_array(words)) from framewright.search_setup
        on conflict do nothing;
      """;

  private static final String SIZES =
      """
      select relname || ': ' || reltuples::bigint || ' rows, ' || pg_size_pretty(pg_table_size(c.oid))
        || ' and ' || pg_size_pretty(pg_indexes_size(c.oid)) || ' of indexes'
      from pg_class c join pg_namespace s on s.oid = relnamespace
      where nspname = 'framewright' and relkind = 'r' and relname not like 'flyway%'
      order by pg_total_relation_size(c.oid) desc
      """;

  private final PlayedServer server;
  private final String database;
  private final Store store;
  private final int jobs;

  private StudioSizeBenchmark(PlayedServer server, String database, Store store, int jobs) {
    this.server = server;
    this.database = database;
    this.store = store;
    this.jobs = jobs;
  }

  public static void main(String[] args) throws Exception {
    double millions = args.length > 0 ? Double.parseDouble(args[0]) : 1;
    var root = Files.createTempDirectory("studio-size");
    try (var server = PlayedServer.own()) {
      server.stop();
      server.start("shared_buffers=256MB", "max_wal_size=4GB", "checkpoint_timeout=30min");
      var database = server.database();
      try (var store = server.store(database)) {
        var size =
            new StudioSizeBenchmark(server, database, store, (int) (millions * 1_000_000 / EVENTS));
        var played = play(root);
        var set =
            OwnSet.open(
                store,
                played,
                DayHours.usual(ZoneOffset.UTC),
                Clock.systemUTC(),
                new Station("desk1"));
        set.follow();
        size.multiply(set.id());
        Thread.sleep(CALM);
        size.measure(played);
        if (args.length > 1) {
          Files.write(Path.of(args[1]), size.plans());
        }
      }
    } finally {
      OwnFolder.remove(root);
    }
  }

  /** A day of four stations: a list, ticks with names and reasons, comments, sign-offs. */
  private static Path play(Path root) throws Exception {
    var clock = Clock.systemUTC();
    var folder = SetScene.job(root, "Winter", SETUPS, clock, "desk1").folder();
    var stations = new ArrayList<Job>();
    for (int i = 1; i <= STATIONS; i++) {
      stations.add(Job.open(folder, clock, new Station("desk" + i)));
    }
    long before = stations.getFirst().events();
    for (int i = 0; i < EVENTS - before; i++) {
      var job = stations.get(i % STATIONS);
      var setup = "%03d".formatted(i / 6 % SETUPS + 1);
      switch (i % 6) {
        case 0, 3 -> job.mark(setup, SetupState.ON_SET, MarkDetails.by("Ines").andView("F"));
        case 1 -> job.mark(setup, SetupState.SHOT, MarkDetails.by("Ines"));
        case 2 ->
            job.mark(setup, SetupState.PICKUP, MarkDetails.by("Petra").andReason("collar creased"));
        case 4 -> job.comment(setup, List.of(), "The label shows; turn it in, please.", "Petra");
        default -> job.mark(setup, SetupState.SIGNED_OFF, MarkDetails.by("Petra Klamm"));
      }
    }
    return folder;
  }

  private void multiply(UUID played) throws SQLException {
    long begun = System.nanoTime();
    // Those who own the tables may leave out what looks at each row.
    server.execute(
        database,
        "set session_replication_role = replica;"
            + JOBS.replace("PLAYED", played.toString()).replaceAll("\\bn\\b", "" + jobs)
            + FOUND_BY.replaceAll("\\bn\\b", "" + jobs));
    server.execute(database, "vacuum (analyze)");
    server.execute(database, "checkpoint");
    System.out.printf("made in %.0f s%n", (System.nanoTime() - begun) / 1e9);
    asked(SIZES).forEach(line -> System.out.println("  " + line));
  }

  private List<String> asked(String sql) throws SQLException {
    try (var connection = server.connect(database, PlayedServer.OWNER);
        var statement = connection.createStatement();
        var rows = statement.executeQuery(sql)) {
      var lines = new ArrayList<String>();
      while (rows.next()) {
        lines.add(rows.getString(1));
      }
      return lines;
    }
  }

  private UUID job(int number) throws SQLException {
    return UUID.fromString(asked("select md5('j" + number + "')::uuid::text").getFirst());
  }

  private void measure(Path folder) throws Exception {
    var clock = Clock.systemUTC();
    var some = IntStream.range(0, TIMES).mapToObj(i -> 1 + i * (jobs - 1) / TIMES).toList();
    var opened = new ArrayList<Integer>(some);
    time(
        "a job of " + EVENTS + " events opened from the store",
        () -> {
          var logs = JobLogs.stored(store.logs(job(opened.removeFirst())));
          return Job.open(folder, clock, new Station("looker"), logs);
        });
    time("all sets of a week", () -> Overview.of(store));
    time("all sets of ten years", () -> Overview.of(store, Duration.ofDays(36_500)));
    append(store.logs(job(jobs)));
    for (var words : words()) {
      time("search: " + words, () -> Search.of(store, words, 20));
    }
  }

  private static void append(NumberedLogs logs) throws IOException {
    var head = logs.heads().firstEntry();
    var times = new ArrayList<Long>();
    for (int i = 1; i <= APPENDS; i++) {
      var line = StoredLines.line(head.getKey(), head.getValue() + i, "001");
      long begun = System.nanoTime();
      logs.append(head.getKey(), List.of(line));
      times.add(System.nanoTime() - begun);
    }
    said("an event appended", times);
  }

  /** What is looked for, of all that was invented for one job. */
  private List<String> words() throws SQLException {
    var one =
        asked(
                "select concat_ws('|', split_part(title, ' ', 1), split_part(title, ' ', 2),"
                    + " people, gtins) from framewright.search_setup"
                    + " where job = md5('j7')::uuid and setup = '007'")
            .getFirst()
            .split("\\|", -1);
    var title = one[0];
    var person = one[2].split(" ", -1)[0];
    var slip = title.substring(0, 2) + title.charAt(3) + title.charAt(2) + title.substring(4);
    return List.of(
        one[3],
        one[3].substring(7),
        title,
        title + " " + one[1],
        title.substring(1, 4),
        slip + " " + person,
        "kvo1234",
        "kvo1234 " + title,
        "xyzzyplugh",
        "coat",
        "coat winter",
        "coa",
        title + " " + one[1] + " " + one[2] + " coat winter kvo 007");
  }

  private static void time(String what, Callable<?> step) throws Exception {
    var times = new ArrayList<Long>();
    for (int i = 0; i < TIMES; i++) {
      long begun = System.nanoTime();
      step.call();
      times.add(System.nanoTime() - begun);
    }
    said(what, times);
  }

  private static void said(String what, List<Long> times) throws IOException {
    var sorted = times.stream().sorted().toList();
    System.out.printf(
        "%s: first %.1f, middle %.1f, p99 %.1f, longest %.1f ms; load %s%n",
        what,
        times.getFirst() / 1e6,
        sorted.get(sorted.size() / 2) / 1e6,
        sorted.get(sorted.size() * 99 / 100) / 1e6,
        sorted.getLast() / 1e6,
        Files.readString(Path.of("/proc/loadavg")).split(" ", -1)[0]);
  }

  /** What the server does for each question that is asked often. */
  private List<String> plans() throws SQLException {
    var job = "'" + job(jobs / 2) + "'";
    var words = words();
    var plans = new ArrayList<String>();
    plan(plans, "heads", StoredLogs.HEADS, job);
    plan(plans, "lines", StoredLogs.READ, job, "'desk1'", "1", "1000", "8388608", "1");
    plan(plans, "all sets of a week", Overview.SETS, "604800", "604800", "604800");
    plan(plans, "a GTIN", Search.SETUPS, "'" + words.getFirst() + "'", "10000", "20");
    plan(
        plans,
        "a title",
        Search.SETUPS,
        "'" + words.get(2).toLowerCase(Locale.ROOT) + "'",
        "10000",
        "20");
    plan(plans, "in every row", Search.SETUPS, "'coat'", "10000", "20");
    plan(plans, "begins", Search.SETUPS, "'coa:*'", "10000", "20");
    plan(plans, "a frame", Search.FRAMES, "1234", "'kvo'", "10000", "20");
    return plans;
  }

  private void plan(List<String> plans, String what, String sql, String... values)
      throws SQLException {
    var filled = sql;
    for (var value : values) {
      filled = filled.replaceFirst("\\?", value);
    }
    plans.add("== " + what);
    plans.addAll(asked("explain (analyze, buffers) " + filled));
  }
}
