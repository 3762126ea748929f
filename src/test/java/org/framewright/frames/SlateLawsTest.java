package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/**
 * Days of two bodies without a cable, with slates only. The oracle walks each body's frames in the
 * order in which they were truly taken and keeps the last slate in mind; what is tested sees them
 * in any order, with clocks that lie.
 */
class SlateLawsTest {
  private static final LocalDateTime MORNING = LocalDateTime.of(2026, 11, 25, 9, 0);

  /** What happens to a body's clock in the middle of the day. */
  enum Clock {
    RUNS,
    SET_BACK_AN_HOUR,
    RESET
  }

  private record Taken(Frame frame, Optional<SlateSays> slate) {}

  private static final class Day {
    private final Random random;
    private final List<List<Taken>> bodies = new ArrayList<>();
    private final Map<FrameId, ShotSlate> slates = new HashMap<>();

    Day(long seed, Clock clock) {
      random = new Random(seed);
      bodies.add(body("A", clock));
      bodies.add(body("B", Clock.RUNS));
    }

    private List<Taken> body(String name, Clock clock) {
      var camera = new Camera("Invented Works", "Studio Body " + name, name);
      var says = new ArrayList<Optional<SlateSays>>();
      int setups = 1 + random.nextInt(12);
      for (int i = 0; i < random.nextInt(4); i++) {
        says.add(Optional.empty());
      }
      for (int i = 1; i <= setups; i++) {
        slate(says, "%03d".formatted(i));
        for (int left = random.nextInt(31); left > 0; left--) {
          says.add(Optional.empty());
        }
      }
      boolean fractions = random.nextBoolean();
      long wrong = random.nextInt(2_000_000) - 1_000_000L;
      int number = 2 + random.nextInt(9998);
      var time = MORNING.plusSeconds(wrong);
      int midday = says.size() / 2;
      var taken = new ArrayList<Taken>();
      for (int i = 0; i < says.size(); i++) {
        time =
            says.get(i).isPresent() || random.nextInt(6) == 0
                ? time.plusSeconds(1 + random.nextInt(300))
                : time.plus(100, ChronoUnit.MILLIS);
        if (i == midday && clock == Clock.SET_BACK_AN_HOUR) {
          time = time.minusHours(1);
        } else if (i == midday && clock == Clock.RESET) {
          time = LocalDateTime.of(2000, 1, 1, 0, 0);
        }
        var stem = "IMG_%04d".formatted(number);
        number = number % 9999 + 1;
        var shown = fractions ? time : time.truncatedTo(ChronoUnit.SECONDS);
        var frame = frame(camera, stem, shown);
        // Lost on its way, with whatever it showed.
        if (random.nextInt(50) > 0) {
          taken.add(new Taken(frame, says.get(i)));
          says.get(i).ifPresent(one -> slates.put(frame.id(), ShotSlate.read(one)));
        }
      }
      return taken;
    }

    private void slate(List<Optional<SlateSays>> says, String setup) {
      int kind = random.nextInt(100);
      if (kind < 8) {
        return; // Forgotten.
      }
      if (kind < 12) {
        says.add(Optional.of(new SlateSays.OfSetup("900"))); // The wrong card, then the right one.
      } else if (kind < 15) {
        says.add(Optional.of(new SlateSays.OfAnotherJob(setup)));
        return;
      } else if (kind < 18) {
        says.add(Optional.of(new SlateSays.Unlisted(setup)));
        return;
      }
      int times = kind < 94 ? 1 : 2 + random.nextInt(5);
      for (int i = 0; i < times; i++) {
        says.add(Optional.of(new SlateSays.OfSetup(setup)));
      }
    }

    private static Frame frame(Camera camera, String stem, LocalDateTime time) {
      var capture =
          new Capture(
              Optional.of(time), Optional.empty(), Optional.of(camera), OptionalInt.empty());
      var id = new FrameId(camera.serial() + " " + stem + " " + time);
      return new Frame(id, Path.of("/frames"), stem, List.of(), capture, true);
    }

    List<Frame> frames(boolean shuffled) {
      var frames = new ArrayList<Frame>();
      bodies.forEach(body -> body.forEach(one -> frames.add(one.frame())));
      if (shuffled) {
        Collections.shuffle(frames, random);
      }
      return frames;
    }

    /** The rule, on the true order. */
    void expected(Map<FrameId, Place> places, Set<FrameId> slateFrames) {
      for (var body : bodies) {
        Optional<SlateSays> now = Optional.empty();
        Optional<SlateSays> before = Optional.empty();
        int run = 0;
        for (var one : body) {
          var slate = one.slate();
          run = slate.isEmpty() ? 0 : slate.equals(before) ? run + 1 : 1;
          before = slate;
          boolean ofSetup = slate.filter(SlateSays.OfSetup.class::isInstance).isPresent();
          if (slate.isPresent() && (!ofSetup || run <= 3)) {
            now = slate;
            slateFrames.add(one.frame().id());
          } else if (now.isPresent() && now.get() instanceof SlateSays.OfSetup(var setup)) {
            places.put(one.frame().id(), new Place(setup, Optional.empty()));
          }
        }
      }
    }
  }

  private static Tally tally(List<Frame> frames, Map<FrameId, ShotSlate> slates) {
    return Attribution.of(
            frames,
            Map.of(),
            List.of(),
            List.of(),
            _ -> Optional.empty(),
            _ -> Optional.empty(),
            ZoneOffset.UTC,
            new ShotSlates(slates, Map.of()))
        .tally(PlausibleTimes.ANY);
  }

  @Property(tries = 200)
  void slatesPlaceFramesAsTheyWereTrulyTakenInWhateverOrderTheyCome(
      @ForAll long seed, @ForAll Clock clock) {
    var day = new Day(seed, clock);
    var places = new HashMap<FrameId, Place>();
    var slateFrames = new HashSet<FrameId>();
    day.expected(places, slateFrames);

    var tally = tally(day.frames(true), day.slates);

    assertThat(tally.places()).isEqualTo(places);
    assertThat(tally.slates().frames().stream().map(one -> one.frame().id()))
        .containsExactlyInAnyOrderElementsOf(slateFrames);
    int all = day.frames(false).size();
    assertThat(tally.frames()).isEqualTo(all - slateFrames.size());
    assertThat(tally.unassigned()).hasSize(tally.frames() - places.size());
    assertThat(tally.slates().frames().stream().mapToInt(SlateFrame::frames).sum())
        .isEqualTo(places.size());
  }

  @Property(tries = 50)
  void framesThatComeLateChangeNothingForWhatIsThere(@ForAll long seed) {
    var day = new Day(seed, Clock.RUNS);
    var some =
        day.frames(true).stream()
            .filter(frame -> day.slates.containsKey(frame.id()) || day.random.nextInt(3) > 0)
            .toList();
    var before = tally(some, day.slates).places();
    var after = new HashMap<>(tally(day.frames(true), day.slates).places());
    after.keySet().retainAll(some.stream().map(Frame::id).toList());
    // But for slates that lay in the picture: how many of them stand in a row depends on the rest.
    after.keySet().removeAll(day.slates.keySet());
    var compared = new HashMap<>(before);
    compared.keySet().removeAll(day.slates.keySet());
    assertThat(compared).isEqualTo(after);
  }
}
