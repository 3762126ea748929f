package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import net.jqwik.api.Tuple;
import org.framewright.job.Job;
import org.framewright.shotlist.SetupState;

/** Whatever the network does, and however often the server dies: each tick is kept once. */
@Tag("slow")
class DeliveryLaws {
  private static final List<String> WORDS = List.of("to-shoot", "on-set", "shot", "pickup");

  /** One step of a schedule. */
  sealed interface Step {
    /** Somebody ticks on a device. */
    record Tick(int device, int setup, int word) implements Step {}

    /**
     * A device sends what waits, and the network carries it and the answer as it likes.
     *
     * @param most how many events it sends
     * @param fate of the request and its answer
     */
    record Send(int device, int most, Fate fate) implements Step {}

    /** A request that was held up on the way arrives now, if there is one. */
    record Late() implements Step {}

    /** The server dies and is started again. */
    record Restart() implements Step {}
  }

  /** What the network does. */
  enum Fate {
    CARRIED,
    REQUEST_LOST,
    ANSWER_LOST,
    CARRIED_TWICE,
    HELD_UP
  }

  /** A device by the rules of the protocol: numbers go on from the last that is known as kept. */
  private static final class Hand {
    final Phone phone;
    final List<String> all = new ArrayList<>();
    final Deque<String> waiting = new ArrayDeque<>();
    long next = 2;

    Hand(Phone phone) {
      this.phone = phone;
    }

    void tick(String setup, String word) {
      var event = Phone.tick(next, 1_795_680_000_000L + 1000 * next, setup, word);
      next++;
      all.add(event);
      waiting.addLast(event);
    }

    String[] batch(int most) {
      return waiting.stream().limit(most).toArray(String[]::new);
    }

    void answered(Phone.Answer answer) {
      assertThat(answer.status()).isEqualTo(200);
      assertThat(answer.json().has("refused")).isFalse();
      long last = answer.json().path("last").asLong();
      while (!waiting.isEmpty() && number(waiting.peekFirst()) <= last) {
        waiting.removeFirst();
      }
    }

    private static long number(String event) {
      return Long.parseLong(event.replaceAll(".*\"number\":([0-9]+).*", "$1"));
    }
  }

  @Provide
  Arbitrary<List<Step>> schedules() {
    var device = Arbitraries.integers().between(0, 1);
    var tick =
        Combinators.combine(
                device, Arbitraries.integers().between(1, 3), Arbitraries.integers().between(0, 3))
            .as((hand, setup, word) -> (Step) new Step.Tick(hand, setup, word));
    var send =
        Combinators.combine(
                device, Arbitraries.integers().between(1, 4), Arbitraries.of(Fate.class))
            .as((hand, most, fate) -> (Step) new Step.Send(hand, most, fate));
    return Arbitraries.frequencyOf(
            Tuple.of(5, tick),
            Tuple.of(5, send),
            Tuple.of(2, Arbitraries.of(new Step.Late())),
            Tuple.of(1, Arbitraries.of(new Step.Restart())))
        .list()
        .ofMinSize(4)
        .ofMaxSize(40);
  }

  @Property(tries = 40)
  void eachTickIsKeptOnceInTheOrderOfItsDevice(@ForAll("schedules") List<Step> schedule)
      throws Exception {
    var root = Files.createTempDirectory("delivery");
    try (var job = SharedJob.in(root, 3)) {
      var hands =
          List.of(new Hand(job.paired(Role.ASSISTANT)), new Hand(job.paired(Role.ASSISTANT)));
      // Each remembers the very bytes, and arrives whenever it likes.
      Deque<Late> late = new ArrayDeque<>();
      for (var step : schedule) {
        switch (step) {
          case Step.Tick(var device, var setup, var word) ->
              hands.get(device).tick("%03d".formatted(setup), WORDS.get(word));
          case Step.Send(var device, var most, var fate) ->
              send(hands.get(device), most, fate, late);
          case Step.Late() -> {
            if (!late.isEmpty()) {
              late.removeLast().arrive(); // Those that were sent last come first.
            }
          }
          case Step.Restart() -> job.restart();
        }
      }
      while (!late.isEmpty()) {
        late.removeFirst().arrive();
      }
      for (var hand : hands) {
        while (!hand.waiting.isEmpty()) {
          hand.answered(hand.phone.events(hand.batch(100)));
        }
        assertThat(kept(job.folder, hand.phone)).isEqualTo(sent(hand));
      }
      var anew = Job.open(job.folder, job.clock, SharedJob.DESK);
      assertThat(anew.state().setups()).isEqualTo(job.live.job().state().setups());
    } finally {
      delete(root);
    }
  }

  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Late(Phone phone, String[] batch) {
    void arrive() throws Exception {
      var answer = phone.events(batch);
      // An old request can be answered by a gap, never by a clash: its events are the device's own.
      assertThat(answer.status()).isEqualTo(200);
    }
  }

  private static void send(Hand hand, int most, Fate fate, Deque<Late> late) throws Exception {
    var batch = hand.batch(most);
    if (batch.length == 0) {
      return;
    }
    switch (fate) {
      case CARRIED -> hand.answered(hand.phone.events(batch));
      case REQUEST_LOST -> {}
      case ANSWER_LOST -> hand.phone.events(batch);
      case CARRIED_TWICE -> {
        hand.phone.events(batch);
        hand.answered(hand.phone.events(batch));
      }
      case HELD_UP -> late.addLast(new Late(hand.phone, batch));
    }
  }

  private static List<String> sent(Hand hand) throws Exception {
    var sent = new ArrayList<String>();
    for (var event : hand.all) {
      var json = Phone.JSON.readTree(event);
      sent.add(json.path("setup").asText() + " " + json.path("state").asText());
    }
    return sent;
  }

  /** What the log's lines say, read as text: the first one is the device's name. */
  private static List<String> kept(Path folder, Phone phone) throws Exception {
    try (var files = Files.walk(folder)) {
      var log = files.filter(it -> it.endsWith(phone.id + ".jsonl")).findFirst().orElseThrow();
      var kept = new ArrayList<String>();
      var lines = Files.readAllLines(log);
      for (var line : lines.subList(1, lines.size())) {
        var json = Phone.JSON.readTree(line);
        var state = SetupState.of(json.path("state").asText()).orElseThrow();
        kept.add(json.path("setup").asText() + " " + state.word());
      }
      return kept;
    }
  }

  private static void delete(Path root) throws Exception {
    try (var files = Files.walk(root)) {
      for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
