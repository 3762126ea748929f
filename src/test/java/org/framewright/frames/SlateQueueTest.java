package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Text;
import org.framewright.frames.slate.SlateReading;
import org.junit.jupiter.api.Test;

class SlateQueueTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);
  private static final SlateReading NONE = new SlateReading.None();
  private static final long SETTLED = SlateOrder.SETTLED.toNanos();
  private static final long LATER = SlateOrder.IDLE.toNanos() + 1;

  private final SlateOrder order = new SlateOrder();

  private static Frame frame(String stem, String camera, double seconds, String... alsoKnown) {
    var path = Path.of(stem + ".JPG");
    var ids = new ArrayList<FrameId>();
    ids.add(new FrameId(stem));
    for (var id : alsoKnown) {
      ids.add(new FrameId(id));
    }
    return new Frame(
        ids.getFirst(),
        ids,
        Path.of(""),
        stem,
        List.of(new FrameFile(path, 1, Instant.EPOCH, FileRole.JPEG)),
        new Capture(
            Optional.of(NOON.plus(Duration.ofMillis(Math.round(seconds * 1000)))),
            Optional.empty(),
            Optional.of(new Camera("Studio", "Body", camera)),
            OptionalInt.empty()),
        true);
  }

  private List<String> nextAt(long now) {
    var stems = new ArrayList<String>();
    for (var next = order.next(now); next.isPresent(); next = order.next(now)) {
      stems.add(next.get().stem());
    }
    return stems;
  }

  @Test
  void theNewestComesFirst() {
    order.add(List.of(frame("1", "A", 0), frame("2", "A", 5)), 0);
    order.add(List.of(frame("3", "A", 10)), 0);
    assertThat(nextAt(0)).containsExactly("3", "2", "1");
  }

  @Test
  void ofABurstOnlyTheFirstIsLookedAtAtOnceAndTheLastWhenNoneFollows() {
    var burst = new ArrayList<Frame>();
    for (int i = 1; i <= 6; i++) {
      burst.add(frame("" + i, "A", 100 + i * 0.1));
    }
    order.add(burst, 0);
    assertThat(nextAt(0)).containsExactly("1");
    assertThat(order.untilNext(0)).isEqualTo(SETTLED);
    assertThat(nextAt(SETTLED - 1)).isEmpty();
    assertThat(nextAt(SETTLED)).containsExactly("6");
    assertThat(order.untilNext(SETTLED)).isEqualTo(LATER - 1 - SETTLED);
    assertThat(nextAt(LATER - 2)).isEmpty();
    assertThat(nextAt(LATER)).containsExactly("5", "4", "3", "2");
    assertThat(order.size()).isZero();
  }

  @Test
  void theOthersWaitUntilNoFrameHasComeForAWhile() {
    order.add(List.of(frame("1", "A", 0), frame("2", "A", 0.1), frame("3", "A", 0.2)), 0);
    assertThat(nextAt(SETTLED)).containsExactly("3", "1");
    order.add(List.of(frame("4", "A", 30)), LATER - 1);
    assertThat(nextAt(LATER)).containsExactly("4");
    assertThat(nextAt(2 * LATER)).containsExactly("2");
  }

  @Test
  void framesAtAPersonsPaceAndOfSeveralBodiesAreNoBurst() {
    order.add(
        List.of(
            frame("1", "A", 0), frame("2", "B", 0.2), frame("3", "A", 0.7), frame("4", "A", 1.4)),
        0);
    assertThat(nextAt(0)).containsExactly("4", "3", "2", "1");
  }

  /** The order of names tells which are the first and the last. */
  @Test
  void aBodyThatWritesNoPartsOfASecondHasBurstsToo() {
    order.add(List.of(frame("IMG_9", "A", 0), frame("IMG_10", "A", 0), frame("IMG_11", "A", 0)), 0);
    assertThat(nextAt(0)).containsExactly("IMG_9");
    assertThat(nextAt(SETTLED)).containsExactly("IMG_11");
  }

  /** Thirty a second for a minute, each looked for as it comes. */
  @Test
  void whileABurstLastsNoneOfItIsLookedAtButTheFirst() {
    long now = 0;
    var looked = new ArrayList<String>();
    for (int i = 0; i < 1800; i++) {
      now = i * 1_000_000_000L / 30;
      order.add(List.of(frame("" + i, "A", i / 30.0)), now);
      looked.addAll(nextAt(now));
    }
    assertThat(looked).containsExactly("0");
    assertThat(nextAt(now + SETTLED)).containsExactly("1799");
    assertThat(nextAt(now + LATER)).hasSize(1798);
  }

  @Test
  void aFrameThatWaitsIsLookedAtWithTheFilesThatCameMeanwhile() {
    order.add(List.of(frame("0", "A", 0), frame("raw", "A", 0.1), frame("2", "A", 0.2)), 0);
    order.add(List.of(withTwoFiles(frame("1", "A", 0.1, "raw"))), 1);
    assertThat(nextAt(0)).containsExactly("0");
    assertThat(nextAt(LATER)).containsExactly("2", "1");
  }

  @Test
  void aFrameOfWhichMoreCameWhileItHadNothingIsLookedAtAgain() {
    var raw = frame("raw", "A", 0);
    order.add(List.of(raw), 0);
    assertThat(nextAt(0)).containsExactly("raw");
    order.add(List.of(withTwoFiles(frame("1", "A", 0, "raw"))), 1);
    assertThat(nextAt(1)).isEmpty();
    order.hadNothing(raw);
    assertThat(nextAt(LATER)).containsExactly("1");
    order.looked(frame("1", "A", 0, "raw"));
    assertThat(order.size()).isZero();
  }

  private static Frame withTwoFiles(Frame frame) {
    var raw = new FrameFile(Path.of("raw.CR3"), 1, Instant.EPOCH, FileRole.RAW);
    return new Frame(
        frame.id(),
        frame.knownAs(),
        frame.folder(),
        frame.stem(),
        List.of(frame.files().getFirst(), raw),
        frame.capture(),
        true);
  }

  @Test
  void aFrameIsLookedAtOnceWhateverScansSay() {
    var frame = frame("1", "A", 0);
    order.add(List.of(frame), 0);
    order.add(List.of(frame), 0);
    assertThat(nextAt(0)).containsExactly("1");
    order.add(List.of(frame), 0);
    order.add(List.of(frame("raw", "A", 0, "1")), 0);
    assertThat(nextAt(0)).isEmpty();
  }

  @Test
  void aFrameWithoutAPictureIsLookedAtAgainOnceItHasAnotherFile() {
    var jpeg = frame("1", "A", 0);
    order.add(List.of(jpeg), 0);
    assertThat(nextAt(0)).containsExactly("1");
    order.hadNothing(jpeg);
    order.add(List.of(jpeg), 0);
    assertThat(nextAt(0)).isEmpty();
    order.add(List.of(frame("raw", "A", 0, "1")), 0);
    assertThat(nextAt(0)).containsExactly("raw");
  }

  @Test
  void aFrameThatIsStillWrittenIsPassedOver() {
    var whole = frame("1", "A", 0);
    var part =
        new Frame(whole.id(), whole.folder(), whole.stem(), whole.files(), whole.capture(), false);
    order.add(List.of(part), 0);
    assertThat(nextAt(0)).isEmpty();
    order.add(List.of(whole), 0);
    assertThat(nextAt(0)).containsExactly("1");
  }

  @Test
  void aQueueHandsOutEveryReadingInItsOwnThread() throws Exception {
    var taken = new LinkedBlockingQueue<String>();
    try (var queue =
        SlateQueue.inBackground(
            frame -> NONE,
            (frame, _) -> taken.add(frame.stem() + Thread.currentThread().getName()))) {
      queue.add(List.of(frame("1", "A", 0), frame("2", "A", 5)));
      var both = List.of(taken.poll(1, TimeUnit.MINUTES), taken.poll(1, TimeUnit.MINUTES));
      assertThat(both).containsExactlyInAnyOrder("1slates", "2slates");
    }
  }

  @Test
  void whoeverTakesReadingsMayFailWithOne() throws Exception {
    var told = new LinkedBlockingQueue<Throwable>();
    var taken = new CountDownLatch(1);
    try (var queue =
        SlateQueue.inBackground(
            frame -> NONE,
            (frame, _) -> {
              if (frame.stem().equals("1")) {
                Thread.currentThread()
                    .setUncaughtExceptionHandler((_, failure) -> told.add(failure));
                throw new IllegalStateException("one");
              }
              taken.countDown();
            })) {
      queue.add(List.of(frame("1", "A", 0)));
      assertThat(told.poll(1, TimeUnit.MINUTES)).hasMessage("one");
      queue.add(List.of(frame("2", "A", 5)));
      assertThat(taken.await(1, TimeUnit.MINUTES)).isTrue();
    }
  }

  @Test
  void aClosedQueueHandsOutNothingMore() throws Exception {
    var begun = new CountDownLatch(1);
    var go = new CountDownLatch(1);
    var taken = new LinkedBlockingQueue<String>();
    var thread = new LinkedBlockingQueue<Thread>();
    var queue =
        SlateQueue.inBackground(
            frame -> {
              thread.add(Thread.currentThread());
              begun.countDown();
              try {
                go.await();
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              return NONE;
            },
            (frame, _) -> taken.add(frame.stem()));
    queue.add(List.of(frame("1", "A", 0), frame("2", "A", 5)));
    assertThat(begun.await(1, TimeUnit.MINUTES)).isTrue();
    assertThat(queue.waiting()).isEqualTo(2);
    queue.close();
    go.countDown();
    thread.take().join();
    queue.add(List.of(frame("3", "A", 9)));
    assertThat(taken).isEmpty();
  }

  @Test
  void inATestEverythingIsLookedAtAtOnce() {
    var taken = new ArrayList<String>();
    try (var queue =
        SlateQueue.atOnce(
            frame -> frame.stem().equals("2") ? new SlateReading.NoPicture(Text.of("x")) : NONE,
            (frame, reading) -> taken.add(frame.stem() + (reading.equals(NONE) ? "" : "!")))) {
      queue.add(List.of(frame("1", "A", 0), frame("2", "A", 0.1), frame("3", "A", 0.2)));
      assertThat(taken).containsExactly("3", "1", "2!");
      assertThat(queue.waiting()).isZero();
    }
  }
}
