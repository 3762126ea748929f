package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.UUID;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import org.framewright.base.Text;
import org.framewright.frames.FrameId;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.View;

/** Several stations, whose clocks differ, on folders that are synchronised now and then. */
@Tag("slow")
class StationsLawsTest {
  private static final List<String> CODES = List.of("1", "002", "A-3");
  private static final OtherJob OTHER = new OtherJob(new UUID(1, 1), "set_02");

  /** One step of a script: a station does something, or its folder hears from another's. */
  sealed interface Step {
    record Act(int station, int seconds, int choice, String setup) implements Step {}

    record Hear(int station, int from, int percent) implements Step {}
  }

  @Provide
  Arbitrary<List<Step>> scripts() {
    var act =
        Combinators.combine(
                Arbitraries.integers().between(0, 2),
                Arbitraries.integers().between(0, 1200),
                Arbitraries.integers().between(0, 17),
                Arbitraries.of(CODES))
            .as(
                (station, seconds, choice, setup) ->
                    (Step) new Step.Act(station, seconds, choice, setup));
    var hear =
        Combinators.combine(
                Arbitraries.integers().between(0, 2),
                Arbitraries.integers().between(0, 2),
                Arbitraries.integers().between(0, 100))
            .as((station, from, percent) -> (Step) new Step.Hear(station, from, percent));
    return Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(3, act), net.jqwik.api.Tuple.of(2, hear))
        .list()
        .ofMinSize(1)
        .ofMaxSize(40);
  }

  /** Three stations, each with a folder and a clock of its own. */
  private static List<Desk> desks(Path root, List<Integer> skews) throws IOException {
    var stations = new ArrayList<Desk>();
    for (int i = 0; i < 3; i++) {
      stations.add(new Desk(root.resolve("folder" + i), "desk" + i, skews.get(i)));
    }
    return stations;
  }

  /**
   * Whatever the stations did, however wrong their clocks are, and in whatever pieces they heard of
   * each other: once each has every log, all show one state, which is the one that a newcomer
   * reads, and every event is in it.
   */
  @Property(tries = 300)
  void stationsThatHaveAllLogsAgree(
      @ForAll("scripts") List<Step> script, @ForAll("skews") List<Integer> skews)
      throws IOException {
    var root = Files.createTempDirectory("stations");
    try {
      var stations = desks(root, skews);
      for (var step : script) {
        switch (step) {
          case Step.Act act -> stations.get(act.station()).act(act);
          case Step.Hear hear ->
              stations.get(hear.station()).hear(stations.get(hear.from()), hear.percent());
        }
      }
      for (var station : stations) {
        for (var other : stations) {
          station.hear(other, 100);
        }
      }
      int written = stations.stream().mapToInt(station -> station.written).sum();
      var newcomer = new Desk(stations.getFirst().folder, "newcomer", 0);
      newcomer.refresh();
      for (var station : stations) {
        assertThat(station.entries).hasSize(written);
        assertThat(station.fold()).isEqualTo(newcomer.fold());
        assertThat(station.incremental.fold()).isEqualTo(newcomer.fold());
        assertThat(Shown.of(newcomer.fold()))
            .isEqualTo(Shown.of(ReferenceFold.of(station.sorted())));
        assertThat(station.log.warnings()).noneMatch(warning -> warning.contains("line"));
      }
    } finally {
      delete(root);
    }
  }

  /** An event always comes after every event that its station had seen, whatever the clocks say. */
  @Property(tries = 200)
  void whatAStationHadSeenComesBefore(
      @ForAll("scripts") List<Step> script, @ForAll("skews") List<Integer> skews)
      throws IOException {
    var root = Files.createTempDirectory("stations");
    try {
      var stations = desks(root, skews);
      for (var step : script) {
        switch (step) {
          case Step.Act act -> {
            var desk = stations.get(act.station());
            var seen = desk.latest();
            desk.act(act);
            assertThat(desk.latest().compareTo(seen)).isPositive();
          }
          case Step.Hear hear ->
              stations.get(hear.station()).hear(stations.get(hear.from()), hear.percent());
        }
      }
    } finally {
      delete(root);
    }
  }

  /** The same events fold to the same state in whatever order they are handed to the sorting. */
  @Property(tries = 200)
  void theFoldOnlyKnowsStamps(@ForAll("scripts") List<Step> script, @ForAll Random random)
      throws IOException {
    var root = Files.createTempDirectory("stations");
    try {
      var desk = new Desk(root, "desk", 0);
      for (var step : script) {
        if (step instanceof Step.Act act) {
          desk.act(act);
        }
      }
      var shuffled = new ArrayList<>(desk.entries);
      Collections.shuffle(shuffled, random);
      shuffled.sort(Comparator.comparing(Entry::stamp));
      assertThat(Shown.of(Fold.of(shuffled))).isEqualTo(Shown.of(desk.fold()));
    } finally {
      delete(root);
    }
  }

  /** What a fold shows, however it was made. */
  record Shown(
      List<Setup> setups,
      JobState state,
      Map<String, String> values,
      List<ComparedAt> comparisons,
      List<Comment> comments,
      List<String> given,
      List<JobKey> slateKeys,
      Readiness readiness,
      List<String> remarks) {
    static Shown of(Fold fold) {
      return new Shown(
          fold.list().setups(),
          fold.state(),
          fold.values(),
          fold.comparisons(),
          fold.comments(),
          fold.moves().given().stream().map(one -> one.move() + " " + one.arrived()).toList(),
          fold.slateKeys(),
          fold.readiness(),
          fold.remarks().stream().map(Text::english).toList());
    }

    static Shown of(ReferenceFold fold) {
      return new Shown(
          fold.list().setups(),
          fold.state(),
          fold.values(),
          fold.comparisons(),
          fold.comments(),
          fold.given(),
          fold.slateKeys(),
          fold.readiness(),
          fold.remarks());
    }
  }

  @Provide
  Arbitrary<List<Integer>> skews() {
    return Arbitraries.of(0, 1, 61, -3600, 3600, 86_400, -86_400).list().ofSize(3);
  }

  private static void delete(Path root) throws IOException {
    try (var files = Files.walk(root)) {
      files
          .sorted(Comparator.reverseOrder())
          .forEach(
              file -> {
                try {
                  Files.delete(file);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
    }
  }

  /** A station with its own copy of the folder. */
  private static final class Desk {
    private final Path folder;
    private final String name;
    private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
    private final FileEventLog log;
    private final List<Entry> entries = new ArrayList<>();
    private final Folding incremental = new Folding();
    private int written;

    Desk(Path folder, String name, int skew) throws IOException {
      this.folder = Files.createDirectories(folder);
      this.name = name;
      clock.pass(Duration.ofSeconds(skew));
      log = new FileEventLog(folder, new Station(name), clock);
    }

    void refresh() throws IOException {
      var news = log.news();
      entries.addAll(news);
      incremental.add(news);
      assertThat(Shown.of(incremental.fold())).isEqualTo(Shown.of(ReferenceFold.of(sorted())));
    }

    Fold fold() {
      return Fold.of(entries);
    }

    List<Entry> sorted() {
      return entries.stream().sorted(Comparator.comparing(Entry::stamp)).toList();
    }

    Stamp latest() {
      return entries.stream()
          .map(Entry::stamp)
          .max(Comparator.naturalOrder())
          .orElse(new Stamp(0, 0, ""));
    }

    void act(Step.Act act) throws IOException {
      clock.pass(Duration.ofSeconds(act.seconds()));
      log.append(event(act));
      written++;
      refresh();
    }

    private Event event(Step.Act act) {
      var setup = act.setup();
      var frame = List.of(new FrameId("f" + act.choice() % 3));
      return switch (act.choice()) {
        case 0, 1, 2, 3, 4, 5 ->
            new Event.Marked(
                setup, List.of(SetupState.values()).get(act.choice()), MarkDetails.by(name));
        case 6 -> new Event.Marked(setup, SetupState.ON_SET, MarkDetails.NONE.andView("F"));
        case 7 -> new Event.ListChanged(List.of(setup(setup)), List.of(), CODES);
        case 8 -> new Event.ListChanged(List.of(), List.of(setup), CODES.reversed());
        case 9 -> new Event.Arrived(frame);
        case 10 -> new Event.Moved(frame, setup, Optional.empty(), name);
        case 11, 12 -> new Event.Selected(frame, act.choice() == 11, name);
        case 14 -> new Event.Given(move(act), moved(setup), OTHER, name);
        case 15, 16 -> new Event.GiveEnded(move(act), act.choice() == 15);
        case 17 -> new Event.Taken(move(act), setup, moved(setup), OTHER);
        default ->
            entries.reversed().stream()
                .filter(entry -> entry.event() instanceof Event.Marked)
                .findFirst()
                .<Event>map(entry -> new Event.TakenBack(entry.stamp()))
                .orElse(new Event.Marked(setup, SetupState.SHOT, MarkDetails.NONE));
      };
    }

    /** One of a few, so that what one station says is said again, or answered, by another. */
    private static UUID move(Step.Act act) {
      return new UUID(0, act.seconds() % 3);
    }

    private MovedSetup moved(String code) {
      var note = new MovedSetup.Note("Steam it", name, name, Instant.EPOCH);
      return new MovedSetup(setup(code), List.of(note), new LinkedHashMap<>());
    }

    private Setup setup(String code) {
      return new Setup(
          code, name + written, List.of(new View("F")), OptionalInt.empty(), new LinkedHashMap<>());
    }

    /** The other's own log comes over, up to a part of its bytes and never shorter than before. */
    void hear(Desk other, int percent) throws IOException {
      var theirs = other.folder.resolve(other.name + ".jsonl");
      if (other != this && Files.exists(theirs)) {
        var bytes = Files.readAllBytes(theirs);
        var ours = folder.resolve(other.name + ".jsonl");
        long have = Files.exists(ours) ? Files.size(ours) : 0;
        int length = (int) Math.max(have, bytes.length * (long) percent / 100);
        Files.write(
            ours,
            Arrays.copyOf(bytes, length),
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING);
      }
      refresh();
    }
  }
}
