package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.framewright.base.Progress;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When a disk is read by more than one thread, and that each file is read once all the same. */
class DiskQueueTest {
  private static final long SECOND = 1_000_000_000;

  @TempDir private Path temp;

  private final AtomicLong clock = new AtomicLong(7 * SECOND);
  private final AtomicLong computed = new AtomicLong(3 * SECOND);

  private static DiskQueue of(int files, int most, Supplier<Effort> effort) {
    var waiting =
        IntStream.range(0, files)
            .mapToObj(i -> new DiskQueue.Waiting(null, listed("f" + i, 100), null))
            .toList();
    return new DiskQueue(waiting, new DiskQueue.Sharing(most, 1000, effort));
  }

  private static Listed listed(String name, long size) {
    return new Listed(Path.of(name), name, size, Instant.EPOCH, Optional.empty());
  }

  private Effort effort() {
    return new Effort(clock::get, computed::get);
  }

  private void work(double seconds, double computing) {
    clock.addAndGet((long) (seconds * SECOND));
    computed.addAndGet((long) (computing * SECOND));
  }

  @Test
  void theFilesComeInTheirOrderAndEachOnce() {
    var queue = of(3, 4, this::effort);
    var names = new ArrayList<String>();
    for (var next = queue.next(); next.isPresent(); next = queue.next()) {
      names.add(next.get().file().name());
    }
    assertThat(names).containsExactly("f0", "f1", "f2");
  }

  @Test
  void aThreadThatWaitsForItsDiskStaysAlone() {
    var reader = of(9, 4, this::effort).reader();
    work(10, 7.9);
    assertThat(reader.needsAnother(1000)).isFalse();
  }

  @Test
  void aDiskThatWaitsForItsThreadGetsAnotherOne() {
    var reader = of(9, 4, this::effort).reader();
    work(10, 8.1);
    assertThat(reader.needsAnother(1000)).isTrue();
  }

  @Test
  void nobodyIsJudgedByAFewBytes() {
    var reader = of(9, 4, this::effort).reader();
    work(10, 10);
    assertThat(reader.needsAnother(999)).isFalse();
    assertThat(reader.needsAnother(1)).isTrue();
    assertThat(reader.needsAnother(999)).isFalse();
  }

  @Test
  void whatWasComputedBeforeDoesNotCount() {
    var reader = of(9, 4, this::effort).reader();
    work(10, 10);
    assertThat(reader.needsAnother(1000)).isTrue();
    work(10, 1);
    assertThat(reader.needsAnother(1000)).isFalse();
  }

  @Test
  void thereAreNoMoreThreadsThanAllowedAndNoneForNothing() {
    var queue = of(2, 3, this::effort);
    var reader = queue.reader();
    for (boolean more : new boolean[] {true, true, false}) {
      work(10, 10);
      assertThat(reader.needsAnother(1000)).isEqualTo(more);
    }
    var done = of(1, 3, this::effort);
    done.next();
    var last = done.reader();
    work(10, 10);
    assertThat(last.needsAnother(1000)).isFalse();
  }

  @Test
  void aSystemThatCannotTellLooksLikeOneThatWaits() {
    var effort = new Effort(clock::get, () -> 0);
    work(10, 10);
    assertThat(effort.share()).isZero();
    assertThat(effort.share()).isZero();
  }

  @Tag("slow")
  @Test
  void severalThreadsOfOneDiskFindWhatOneFinds() throws Exception {
    var scene = new CopiesScene(temp);
    scene.copyCardTo(scene.one, "kept_");
    var readers = new AtomicInteger();
    var busy =
        new DiskQueue.Sharing(
            4,
            1,
            () -> {
              readers.incrementAndGet();
              var ticks = new AtomicLong();
              return new Effort(ticks::incrementAndGet, ticks::get);
            });
    var alone = read(scene, new DiskQueue.Sharing(1, 1, Effort::ofThisThread), _ -> {});
    var told = new ConcurrentLinkedQueue<PlaceProgress>();
    var together = read(scene, busy, told::add);
    assertThat(together).isEqualTo(alone);
    assertThat(together.get(scene.card)).hasSize(4);
    assertThat(readers).hasValueGreaterThan(together.size());
    var card = told.stream().filter(one -> one.folder().equals(scene.card)).toList();
    assertThat(card.getLast().files()).isEqualTo(4);
    assertThat(card.getLast().bytes()).isEqualTo(card.getLast().ofBytes()).isPositive();
  }

  /** What was read of each place, each of which is a disk. */
  private static Map<Path, Map<String, FileFacts>> read(
      CopiesScene scene, DiskQueue.Sharing sharing, Consumer<PlaceProgress> told) throws Exception {
    var request = CopiesRequest.of(List.of(scene.card, scene.one), "Ines");
    var places = new PlaceFinder(scene.job.folder(), request, scene.volumes, Progress.NONE).find();
    var work =
        places.stream().map(place -> new DiskReader.Work(place, place.listing.files())).toList();
    var earlier = EarlierRuns.of(scene.job.folder(), List.of(), places);
    new DiskReader(scene.volumes, earlier, Progress.NONE, told, sharing).read(work);
    return places.stream()
        .collect(Collectors.toMap(place -> place.given, place -> Map.copyOf(place.facts)));
  }
}
