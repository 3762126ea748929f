package org.framewright.frames;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.framewright.base.Progress;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FrameScannerTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0, 0, 250_000_000);

  @TempDir Path root;
  private final TestCamera camera = new TestCamera("Studio Body A", "A-1001");
  private Instant now;
  private FrameScanner scanner;

  @BeforeEach
  void startTheClock() {
    now = Instant.now().plusSeconds(3600);
    scanner = new FrameScanner(root, () -> now);
  }

  @Test
  void countsTwentyFivePairsAsTwentyFiveFrames() throws IOException {
    for (int i = 1; i <= 25; i++) {
      write("A_%04d.CR2".formatted(i), camera.raw(NOON.plusSeconds(i), 500));
      write("A_%04d.JPG".formatted(i), camera.jpeg(NOON.plusSeconds(i)));
    }
    var scan = scanner.scan();
    assertThat(scan.frames()).hasSize(25).allMatch(Frame::complete);
    assertThat(scan.files()).isEqualTo(50);
    assertThat(scan.troubles()).isEmpty();
    assertThat(scan.frames().getFirst().primary().role()).isEqualTo(FileRole.RAW);
  }

  @Test
  void readsTimeBodyAndSubSecondsOfRawAndJpeg() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    write("b.nef", new TestCamera("Studio Body B", "B-7", Optional.of("+09:30")).raw(NOON, 100));
    var frames = scanner.scan().frames();
    assertThat(frames.get(0).capture().time()).contains(NOON);
    assertThat(frames.get(0).capture().offset()).isEmpty();
    assertThat(frames.get(0).capture().camera())
        .contains(new Camera("Invented Works", "Studio Body A", "A-1001"));
    assertThat(frames.get(1).capture().time()).contains(NOON);
    assertThat(frames.get(1).capture().offset().orElseThrow().getTotalSeconds())
        .isEqualTo((9 * 60 + 30) * 60);
  }

  @Test
  void passesOverWhatCardsAndComputersLeaveBehind() throws IOException {
    write("A_0001.JPG", camera.jpeg(NOON));
    for (var name :
        List.of("._A_0001.JPG", ".DS_Store", "Thumbs.db", "A_0002.JPG.tmp", "x.tmp", "notes.txt")) {
      write(name, camera.jpeg(NOON));
    }
    Files.createDirectories(root.resolve(".framewright/renames"));
    write(".framewright/A_0003.JPG", camera.jpeg(NOON));
    write("alone.xmp", TestCamera.sidecar("3"));
    var scan = scanner.scan();
    assertThat(scan.frames()).extracting(Frame::stem).containsExactly("A_0001");
    assertThat(scan.files()).isEqualTo(1);
  }

  @Test
  void gathersStemsThatDifferInLetterCaseOnly() throws IOException {
    write("a_0001.NEF", camera.raw(NOON, 100));
    write("A_0001.jpg", camera.jpeg(NOON));
    write("A_0001.Xmp", TestCamera.sidecar("2"));
    assertThat(scanner.scan().frames()).singleElement().returns(3, frame -> frame.files().size());
  }

  @Test
  void keepsTwoFilesApartWhoseWholeNamesDifferInLetterCaseOnly() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    write("A.jpg", camera.jpeg(NOON.plusSeconds(1)));
    org.junit.jupiter.api.Assumptions.assumeTrue(
        Files.size(root.resolve("a.jpg")) > 0 && root.toFile().list().length == 2,
        "this file system does not tell letter cases apart");
    assertThat(scanner.scan().frames()).extracting(Frame::stem).containsExactly("A", "a");
  }

  @Test
  void tellsTwoBodiesWithTheSameNumberApart() throws IOException {
    write("one/IMG_0001.JPG", camera.jpeg(NOON));
    write("two/IMG_0001.JPG", new TestCamera("Studio Body A", "A-1002").jpeg(NOON));
    assertThat(scanner.scan().frames()).extracting(Frame::id).doesNotHaveDuplicates().hasSize(2);
  }

  @Test
  void keepsAnIdentityAcrossRenamesAndRestarts() throws IOException {
    write("A_0001.JPG", camera.jpeg(NOON));
    var before = scanner.scan().frames().getFirst().id();
    Files.createDirectory(root.resolve("sorted"));
    Files.move(root.resolve("A_0001.JPG"), root.resolve("sorted/2026-11-25_ABC_001_0001.jpg"));
    assertThat(scanner.scan().frames()).extracting(Frame::id).containsExactly(before);
    assertThat(new FrameScanner(root).scan().frames())
        .extracting(Frame::id)
        .containsExactly(before);
  }

  @Test
  void knowsAFrameByItsJpegAfterTheRawHasCome() throws IOException {
    write("A_0001.JPG", camera.jpeg(NOON));
    var first = scanner.scan().frames().getFirst().id();
    write("A_0001.CR2", camera.raw(NOON, 100));
    var frame = scanner.scan().frames().getFirst();
    assertThat(frame.id()).isNotEqualTo(first);
    assertThat(frame.knownAs()).containsExactly(frame.id(), first);
  }

  @Test
  void saysThatACopyIsACopy() throws IOException {
    write("one/A.JPG", camera.jpeg(NOON));
    write("two/A.JPG", camera.jpeg(NOON));
    assertThat(scanner.scan().troubles())
        .singleElement()
        .satisfies(trouble -> assertThat(trouble.message()).contains("copy of"));
  }

  @Test
  void takesTheSidecarsRatingBeforeThePicturesOwn() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    write("a.xmp", TestCamera.sidecar("5.0"));
    write("b.cr2", camera.raw(NOON.plusSeconds(1), 100));
    write("b.cr2.xmp", TestCamera.sidecar("-1"));
    assertThat(scanner.scan().frames())
        .extracting(frame -> frame.capture().rating())
        .containsExactly(OptionalInt.of(5), OptionalInt.of(-1));
  }

  @Test
  void waitsUntilAFileHeldStillOverTwoLooks() throws IOException {
    var file = write("a.jpg", camera.jpeg(NOON));
    Files.setLastModifiedTime(file, FileTime.from(now));
    assertThat(scanner.look().scan().frames()).singleElement().returns(false, Frame::complete);
    now = now.plus(FrameScanner.SETTLE).minusMillis(1);
    assertThat(scanner.look().scan().frames()).singleElement().returns(false, Frame::complete);
    now = now.plusMillis(1);
    assertThat(scanner.look().scan().frames()).singleElement().returns(true, Frame::complete);
  }

  @Test
  void doesNotTrustATimeInTheFuture() throws IOException {
    var file = write("a.jpg", camera.jpeg(NOON));
    Files.setLastModifiedTime(file, FileTime.from(now.plus(Duration.ofHours(5))));
    assertThat(scanner.look().unsettled()).containsExactly(file);
    now = now.plus(FrameScanner.SETTLE);
    assertThat(scanner.look().scan().frames()).singleElement().returns(true, Frame::complete);
  }

  @Test
  void noJpegCutAnywhereIsComplete() throws IOException {
    byte[] whole = camera.jpeg(NOON);
    var file = root.resolve("a.jpg");
    for (int length : cuts(whole.length)) {
      Files.write(file, Arrays.copyOf(whole, length));
      now = now.plusSeconds(10);
      assertThat(scanner.look().scan().frames())
          .as("cut to %d of %d", length, whole.length)
          .singleElement()
          .returns(false, Frame::complete);
    }
    Files.write(file, whole);
    now = now.plusSeconds(10);
    assertThat(scanner.look().scan().frames()).singleElement().returns(true, Frame::complete);
  }

  @Test
  void noRawCutAnywhereIsCompleteWhileItMayYetGrow() throws IOException {
    byte[] whole = camera.raw(NOON, 400);
    var file = root.resolve("a.cr2");
    for (int length : cuts(whole.length)) {
      Files.write(file, Arrays.copyOf(whole, length));
      Files.setLastModifiedTime(file, FileTime.from(now));
      scanner.look();
      now = now.plusSeconds(3);
      assertThat(scanner.look().scan().frames())
          .as("cut to %d of %d", length, whole.length)
          .singleElement()
          .returns(false, Frame::complete);
      now = now.plusSeconds(10);
    }
    Files.write(file, whole);
    assertThat(scanner.look().scan().frames()).singleElement().returns(true, Frame::complete);
  }

  @Test
  void aPreallocatedRawWaitsLongerAndIsReadAfterwards() throws IOException {
    byte[] content = camera.raw(NOON, 9000);
    byte[] hollow = Arrays.copyOf(content, content.length + 5000);
    var file = write("a.cr2", hollow);
    Files.setLastModifiedTime(file, FileTime.from(now));
    scanner.look();
    now = now.plusSeconds(3);
    assertThat(scanner.look().scan().frames()).singleElement().returns(false, Frame::complete);
    now = now.plusSeconds(3);
    assertThat(scanner.look().scan().frames()).singleElement().returns(true, Frame::complete);
  }

  @Test
  void aPreallocatedJpegIsNotComplete() throws IOException {
    byte[] content = camera.jpeg(NOON);
    byte[] half = Arrays.copyOf(Arrays.copyOf(content, content.length / 2), content.length);
    write("a.jpg", half);
    assertThat(scanner.scan().frames()).singleElement().returns(false, Frame::complete);
  }

  @Test
  void aJpegWithSomethingBehindItsEndIsComplete() throws IOException {
    byte[] content = camera.jpeg(NOON);
    write("a.jpg", Arrays.copyOf(content, content.length + 777));
    assertThat(scanner.scan().frames()).singleElement().returns(true, Frame::complete);
  }

  @Test
  void followsWhatIsDeletedReplacedAndRenamed() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    write("b.jpg", camera.jpeg(NOON.plusSeconds(1)));
    write("c.jpg", camera.jpeg(NOON.plusSeconds(2)));
    var before = scanner.scan().frames();
    Files.delete(root.resolve("a.jpg"));
    Files.move(root.resolve("b.jpg"), root.resolve("d.jpg"));
    write("c.jpg", camera.jpeg(NOON.plusSeconds(9)));
    now = now.plusSeconds(10);
    var after = scanner.scan().frames();
    assertThat(after).extracting(Frame::stem).containsExactly("c", "d");
    assertThat(after.get(1).id()).isEqualTo(before.get(1).id());
    assertThat(after.get(0).id()).isNotEqualTo(before.get(2).id());
  }

  @Test
  void aBrokenFileNeverStopsAScan() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    write("b.jpg", new byte[] {1, 2, 3});
    write("c.cr3", new byte[0]);
    var scan = scanner.scan();
    assertThat(scan.frames()).extracting(Frame::complete).containsExactly(true, false, false);
    assertThat(scan.troubles())
        .extracting(trouble -> trouble.path().getFileName().toString())
        .containsExactly("b.jpg", "c.cr3");
  }

  @Test
  void aFrameWithoutACaptureTimeCountsAndIsToldOf() throws IOException {
    write("a.jpg", TestCamera.picture(20, 20, java.awt.Color.BLUE));
    var scan = scanner.scan();
    assertThat(scan.frames()).singleElement().returns(true, Frame::complete);
    assertThat(scan.troubles())
        .singleElement()
        .satisfies(trouble -> assertThat(trouble.message()).contains("capture time"));
  }

  @Test
  void tellsSomeTimesHowManyFilesAreRead() throws IOException {
    writePictures(130);
    var told = new ConcurrentLinkedQueue<Integer>();
    assertThat(
            scanner.scan(
                (done, total) -> {
                  assertThat(total).isEqualTo(130);
                  told.add(done);
                }))
        .isPresent();
    assertThat(told).hasSizeBetween(2, 30).doesNotHaveDuplicates().contains(130);
    told.clear();
    assertThat(scanner.scan((done, _) -> told.add(done))).isPresent();
    assertThat(told).as("there was nothing to be read").isEmpty();
  }

  @Test
  void aScanThatIsStoppedReadsNoFurtherAndTheNextGoesOnFromThere() throws IOException {
    writePictures(130);
    var read = new StopAfter(26);
    assertThat(scanner.scan(read)).isEmpty();
    assertThat(read.done).hasValueBetween(26, 64);
    var first = read.done.get();
    var rest = new StopAfter(Integer.MAX_VALUE);
    assertThat(scanner.scan(rest).orElseThrow().frames()).hasSize(130).allMatch(Frame::complete);
    assertThat(rest.total).hasValueBetween(130 - 64, 130 - first);
  }

  /** Stops a scan after so many files; others may be in the midst of one then. */
  private static final class StopAfter implements Progress {
    private final int most;
    private final AtomicInteger done = new AtomicInteger();
    private final AtomicInteger total = new AtomicInteger();

    StopAfter(int most) {
      this.most = most;
    }

    @Override
    public void step(int done, int total) {
      this.done.accumulateAndGet(done, Math::max);
      this.total.set(total);
    }

    @Override
    public boolean cancelled() {
      return done.get() >= most;
    }
  }

  @Test
  void aMissingFolderIsAnErrorNotAnEmptyScan() {
    var missing = new FrameScanner(root.resolve("nowhere"));
    assertThatThrownBy(missing::scan).isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void linksAreNotFollowed() throws IOException {
    write("a/a.jpg", camera.jpeg(NOON));
    Files.createSymbolicLink(root.resolve("a/again"), root);
    Files.createSymbolicLink(root.resolve("b.jpg"), root.resolve("a/a.jpg"));
    assertThat(scanner.scan().frames()).hasSize(1);
  }

  /** Some lengths, and all of the last; every single one is tried on the readers themselves. */
  private static int[] cuts(int length) {
    return IntStream.range(0, length).filter(n -> n % 41 == 0 || n > length - 40).toArray();
  }

  private void writePictures(int count) throws IOException {
    for (int i = 0; i < count; i++) {
      write("a%03d.jpg".formatted(i), camera.jpeg(NOON.plusSeconds(i)));
    }
  }

  private Path write(String name, byte[] content) throws IOException {
    var file = root.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.write(file, content);
  }
}
