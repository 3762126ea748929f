package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Test;

/** What every kind of log keeps to, wherever it lies. */
abstract class EventLogContract {
  private static final String DEVICE = "page-00000001";

  final TestClock clock = new TestClock("2026-11-23T09:00:00Z");

  /** The log of one job, opened as a station; what others appended is read with its news. */
  abstract EventLog open(String station, Clock clock) throws IOException;

  private EventLog open(String station) throws IOException {
    return open(station, clock);
  }

  static Event shot(String setup) {
    return new Event.Marked(setup, SetupState.SHOT, MarkDetails.NONE);
  }

  static List<String> setups(List<Entry> entries) {
    return entries.stream()
        .sorted(Comparator.comparing(Entry::stamp))
        .map(entry -> ((Event.Marked) entry.event()).setup())
        .toList();
  }

  private Entry ofDevice(long number, String setup) {
    return new Entry(number, new Stamp(number, 0, DEVICE), clock.instant(), shot(setup));
  }

  @Test
  void whatWasAppendedIsNewsOnce() throws Exception {
    var log = open("desk");
    assertThat(log.news()).isEmpty();
    var stamp = log.append(shot("1"));
    var news = log.news();
    assertThat(setups(news)).containsExactly("1");
    assertThat(news.getFirst().stamp()).isEqualTo(stamp);
    assertThat(log.news()).isEmpty();
  }

  @Test
  void whoeverOpensTheLogLaterReadsAllOfIt() throws Exception {
    var log = open("desk");
    for (var setup : List.of("1", "2", "3")) {
      log.append(shot(setup));
      clock.pass(Duration.ofSeconds(1));
    }
    assertThat(setups(open("desk").news())).containsExactly("1", "2", "3");
    assertThat(setups(open("cart").news())).containsExactly("1", "2", "3");
  }

  @Test
  void stationsHearOfEachOtherHoweverLongTheirLogsAre() throws Exception {
    var desk = open("desk");
    var cart = open("cart");
    for (int i = 0; i < 20; i++) {
      desk.append(shot("d" + i));
    }
    cart.append(shot("c"));
    assertThat(cart.news()).hasSize(21);
    assertThat(desk.news()).hasSize(21);
  }

  @Test
  void anEventComesAfterAllThatItsStationHadSeen() throws Exception {
    var ahead = new TestClock("2026-11-23T09:10:00Z");
    var stamp = open("cart", ahead).append(shot("1"));
    var desk = open("desk");
    desk.news();
    assertThat(desk.append(shot("2")).compareTo(stamp)).isPositive();
    assertThat(desk.now()).isEqualTo(ahead.instant());
    assertThat(desk.told()).isNotEmpty();
  }

  @Test
  void eventsOfAWriterAreNumberedFromOne() throws Exception {
    open("desk").append(shot("1"));
    open("desk").append(shot("2"));
    var log = open("desk");
    assertThat(log.news().stream().map(Entry::number).sorted()).containsExactly(1L, 2L);
    assertThat(log.last("desk")).isEqualTo(2);
    assertThat(log.last("cart")).isZero();
    assertThat(log.station()).isEqualTo("desk");
  }

  @Test
  void theNextEventOfADeviceIsKeptOnceHoweverOftenItComes() throws Exception {
    var log = open("desk");
    assertThat(log.append(ofDevice(2, "2"))).isFalse();
    assertThat(log.append(ofDevice(1, "1"))).isTrue();
    assertThat(log.append(ofDevice(1, "1"))).isFalse();
    assertThat(log.append(ofDevice(1, "other"))).isFalse();
    assertThat(log.append(ofDevice(2, "2"))).isTrue();
    assertThat(log.last(DEVICE)).isEqualTo(2);
    assertThat(setups(open("desk").news())).containsExactly("1", "2");
  }

  @Test
  void severalProgramsOfOneStationWriteAtOnceAndLoseNothing() throws Exception {
    int each = 10;
    try (var threads = Executors.newFixedThreadPool(4)) {
      var runs = new ArrayList<Callable<Void>>();
      for (int thread = 0; thread < 4; thread++) {
        var name = "t" + thread + "-";
        runs.add(
            () -> {
              var log = open("desk", Clock.systemUTC());
              for (int i = 0; i < each; i++) {
                log.append(shot(name + i));
              }
              return null;
            });
      }
      for (var run : threads.invokeAll(runs)) {
        run.get();
      }
    }
    var all = open("desk").news();
    assertThat(all.stream().map(Entry::number).sorted())
        .containsExactlyElementsOf(
            IntStream.rangeClosed(1, 4 * each).mapToObj(Long::valueOf).toList());
    assertThat(all.stream().map(Entry::stamp).distinct()).hasSize(4 * each);
    assertThat(setups(all)).hasSize(4 * each).doesNotHaveDuplicates();
  }
}
