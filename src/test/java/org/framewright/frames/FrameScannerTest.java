package org.framewright.frames;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.abort;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.StandardProtocolFamily;
import java.net.URI;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
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
    assertThat(scan.problems()).isEmpty();
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
        "this file system does not distinguish letter case");
    assertThat(scanner.scan().frames()).extracting(Frame::stem).containsExactly("A", "a");
  }

  @Test
  void distinguishesTwoBodiesWithTheSameNumber() throws IOException {
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
    assertThat(scanner.scan().problems())
        .singleElement()
        .satisfies(problem -> assertThat(problem.what()).contains("copy of"));
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

  /** Bodies write a rating of 0 into every picture; a person takes a rating back in a sidecar. */
  @Test
  void aRatingOfNoneInAPictureTakesNoRatingBackAndOneInASidecarDoes() throws IOException {
    write("a.dng", camera.ratedRaw(NOON, "3"));
    write("a.jpg", camera.judgedJpeg(NOON, "xmp:Rating='0'"));
    write("b.jpg", camera.judgedJpeg(NOON.plusSeconds(1), "xmp:Rating='4'"));
    write("b.xmp", TestCamera.sidecar("0"));
    assertThat(scanner.scan().frames())
        .extracting(frame -> frame.capture().rating())
        .containsExactly(OptionalInt.of(3), OptionalInt.of(0));
  }

  @Test
  void aLabelIsTheSidecarsElseThePicturesOwn() throws IOException {
    write("a.jpg", camera.judgedJpeg(NOON, "xmp:Label='Second'"));
    write("b.jpg", camera.judgedJpeg(NOON.plusSeconds(1), "xmp:Label='Second'"));
    write(
        "b.xmp",
        new String(TestCamera.sidecar("1"), StandardCharsets.UTF_8)
            .replace("xmp:Rating", "xmp:Label='À revoir' xmp:Rating")
            .getBytes(StandardCharsets.UTF_8));
    assertThat(scanner.scan().frames())
        .extracting(frame -> frame.capture().label())
        .containsExactly(Optional.of("Second"), Optional.of("À revoir"));
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
    assertThat(scan.problems())
        .extracting(problem -> Path.of(problem.where()).getFileName().toString())
        .containsExactly("b.jpg", "c.cr3");
  }

  @Test
  void aFrameWithoutACaptureTimeCountsAndIsReported() throws IOException {
    write("a.jpg", TestCamera.picture(20, 20, java.awt.Color.BLUE));
    var scan = scanner.scan();
    assertThat(scan.frames()).singleElement().returns(true, Frame::complete);
    assertThat(scan.problems())
        .singleElement()
        .satisfies(problem -> assertThat(problem.what()).contains("capture time"));
  }

  @Test
  void reportsNowAndThenHowManyFilesAreRead() throws IOException {
    writePictures(130);
    var reported = new ConcurrentLinkedQueue<Integer>();
    assertThat(
            scanner.scan(
                (done, total) -> {
                  assertThat(total).isEqualTo(130);
                  reported.add(done);
                }))
        .isPresent();
    assertThat(reported).hasSizeBetween(2, 30).doesNotHaveDuplicates().contains(130);
    reported.clear();
    assertThat(scanner.scan((done, _) -> reported.add(done))).isPresent();
    assertThat(reported).as("there was nothing to be read").isEmpty();
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
    SymbolicLinks.make(root.resolve("a/again"), root);
    SymbolicLinks.make(root.resolve("b.jpg"), root.resolve("a/a.jpg"));
    assertThat(scanner.scan().frames()).hasSize(1);
  }

  @Test
  void twoNamesThatAreNoTextAreTwoFramesAndAreReportedWithARemedy() throws IOException {
    assumeBytesMakeNames();
    var one = Files.write(named("IMG_%E9.jpg"), camera.jpeg(NOON));
    Files.write(named("IMG_%E8.jpg"), camera.jpeg(NOON.plusSeconds(1)));
    Files.write(named("IMG_%E8.cr2"), camera.raw(NOON.plusSeconds(1), 100));
    for (int look = 0; look < 2; look++) {
      var scan = scanner.scan();
      assertThat(scan.frames()).hasSize(2).allMatch(Frame::complete);
      assertThat(scan.files()).isEqualTo(3);
      assertThat(scan.frames()).extracting(Frame::id).doesNotHaveDuplicates();
      assertThat(scan.problems())
          .hasSize(3)
          .allSatisfy(problem -> assertThat(problem.what()).contains("not UTF-8"))
          .allSatisfy(problem -> assertThat(problem.remedy()).contains("LC_ALL"))
          .anySatisfy(problem -> assertThat(problem.where()).endsWith("IMG_%E9.jpg"));
    }
    Files.delete(one);
    assertThat(scanner.scan().frames()).hasSize(1);
  }

  @Test
  void incompleteFramesWhoseNamesAreNoTextAreTwoTooAlsoInFoldersThatAreNone() throws IOException {
    assumeBytesMakeNames();
    for (var folder : List.of("%FE", "%FF")) {
      Files.createDirectory(named(folder));
      Files.write(named(folder + "/%E9.jpg"), new byte[] {1});
      Files.write(named(folder + "/%E8.jpg"), new byte[] {1});
    }
    assertThat(scanner.scan().distinct()).hasSize(4).noneMatch(Frame::complete);
  }

  private void assumeBytesMakeNames() {
    assumeTrue(
        System.getProperty("os.name").equals("Linux")
            && "UTF-8".equals(System.getProperty("sun.jnu.encoding")),
        "only Linux takes names of any bytes");
  }

  /** A path of the root, of bytes as in a URI. */
  private Path named(String raw) {
    return Path.of(URI.create(root.toUri().toString().replaceFirst("/*$", "/") + raw));
  }

  @Test
  void ofCopiesOnlyTheFirstIsDistinct() throws IOException {
    write("one/A.JPG", camera.jpeg(NOON));
    write("two/A.JPG", camera.jpeg(NOON));
    write("two/A (1).JPG", camera.jpeg(NOON));
    write("two/B.JPG", camera.jpeg(NOON.plusSeconds(1)));
    var scan = scanner.scan();
    assertThat(scan.frames()).hasSize(4);
    assertThat(scan.distinct())
        .extracting(frame -> root.relativize(frame.primary().path()).toString())
        .containsExactly("one/A.JPG", "two/B.JPG");
    assertThat(scan.problems()).hasSize(2).allMatch(problem -> !problem.remedy().isEmpty());
    var tally = assign(scan);
    assertThat(tally.frames()).isEqualTo(2);
    assertThat(tally.files()).isEqualTo(2);
  }

  private static Tally assign(FrameScan scan) {
    return Attribution.assign(scan.frames(), Map.of(), List.of(), List.of(), _ -> Optional.empty());
  }

  @Test
  void eachFileIsReadOnceUntilItChanges() throws IOException {
    for (int i = 0; i < 100; i++) {
      write("%d/a%d.jpg".formatted(i % 7, i), camera.jpeg(NOON.plusSeconds(i)));
    }
    var reads = new ConcurrentLinkedQueue<Path>();
    var counting = counting(reads);
    assertThat(counting.scan().frames()).hasSize(100);
    assertThat(reads).hasSize(100).doesNotHaveDuplicates();
    reads.clear();
    write("3/a3.jpg", camera.jpeg(NOON.minusSeconds(1)));
    write("8/new.jpg", camera.jpeg(NOON.minusSeconds(2)));
    assertThat(counting.scan().frames()).hasSize(101);
    assertThat(reads)
        .containsExactlyInAnyOrder(root.resolve("3/a3.jpg"), root.resolve("8/new.jpg"));
    reads.clear();
    counting.look(List.of(root.resolve("3/a3.jpg"), root.resolve("8")));
    assertThat(reads).isEmpty();
  }

  private FrameScanner counting(Collection<Path> reads) {
    return new FrameScanner(
        root,
        () -> now,
        (path, role, room) -> {
          reads.add(path);
          return FileReading.of(path, role, room);
        });
  }

  @Test
  void aFileThatVanishesBeforeItIsReadIsNoFrameAndNoProblem() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    write("b.jpg", camera.jpeg(NOON.plusSeconds(1)));
    write("b.cr2", camera.raw(NOON.plusSeconds(1), 100));
    var vanishing =
        new FrameScanner(
            root,
            () -> now,
            (path, role, room) -> {
              deleteUnlessRaw(path);
              return FileReading.of(path, role, room);
            });
    var scan = vanishing.scan();
    assertThat(scan.frames()).singleElement().returns(1, frame -> frame.files().size());
    assertThat(scan.files()).isEqualTo(1);
    assertThat(scan.problems()).isEmpty();
    write("a.jpg", camera.jpeg(NOON.plusSeconds(2)));
    assertThat(new FrameScanner(root, () -> now).scan().frames()).hasSize(2);
  }

  private static void deleteUnlessRaw(Path path) {
    try {
      if (!path.toString().endsWith("cr2")) {
        Files.delete(path);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void pipesSocketsAndDevicesAreNeverOpened() throws Exception {
    write("a.jpg", camera.jpeg(NOON));
    make("mkfifo", root.resolve("pipe.jpg").toString());
    var socket = root.resolve("s.jpg");
    var reads = new ConcurrentLinkedQueue<Path>();
    try (var server = ServerSocketChannel.open(StandardProtocolFamily.UNIX)) {
      server.bind(UnixDomainSocketAddress.of(socket));
      var scan = assertTimeoutPreemptively(Duration.ofMinutes(2), () -> counting(reads).scan());
      assertThat(scan.frames()).extracting(Frame::stem).containsExactly("a");
      assertThat(reads).containsExactly(root.resolve("a.jpg"));
    }
  }

  @Test
  void aPipeThatTookAFilesPlaceIsNotWaitedFor() throws Exception {
    make("mkfifo", root.resolve("pipe.jpg").toString());
    var pipe = root.resolve("pipe.jpg");
    var reading =
        assertTimeoutPreemptively(
            Duration.ofMinutes(2), () -> FileReading.of(pipe, FileRole.JPEG, new Bytes.Room()));
    assertThat(reading.orElseThrow().whole()).isFalse();
    assertThat(assertTimeoutPreemptively(Duration.ofMinutes(2), () -> Thumbnails.of(pipe, 100)))
        .isEmpty();
    var link = SymbolicLinks.make(root.resolve("b.jpg"), write("a.jpg", camera.jpeg(NOON)));
    assertThat(FileReading.of(link, FileRole.JPEG, new Bytes.Room()).orElseThrow().whole())
        .isFalse();
  }

  private static void make(String... command) throws Exception {
    try {
      assertThat(new ProcessBuilder(command).inheritIO().start().waitFor()).isZero();
    } catch (IOException e) {
      abort("there is no " + command[0] + " here");
    }
  }

  @Test
  void namesOfTheGreatestLengthAreRead() throws IOException {
    var longest = "n".repeat(255 - 4);
    write(longest + ".jpg", camera.jpeg(NOON));
    var deep = root;
    while (deep.toString().length() + longest.length() < 3500) {
      deep = Files.createDirectory(deep.resolve(longest));
    }
    Files.write(deep.resolve("a.jpg"), camera.jpeg(NOON.plusSeconds(1)));
    var scan = scanner.scan();
    assertThat(scan.frames()).hasSize(2).allMatch(Frame::complete);
    assertThat(scan.problems()).isEmpty();
  }

  @Tag("slow")
  @Test
  void aThousandFoldersInsideEachOtherAreWalked() throws IOException {
    var deep = root;
    for (int i = 0; i < 1000; i++) {
      deep = Files.createDirectory(deep.resolve("d"));
    }
    Files.write(deep.resolve("a.jpg"), camera.jpeg(NOON));
    assertThat(scanner.scan().frames()).singleElement().returns(deep, Frame::folder);
  }

  @Test
  void aFolderThatMayNotBeReadIsReportedAndKeepsItsFrames() throws IOException {
    write("locked/a.jpg", camera.jpeg(NOON));
    write("b.jpg", camera.jpeg(NOON.plusSeconds(1)));
    assertThat(scanner.scan().frames()).hasSize(2);
    var locked = root.resolve("locked");
    Files.setPosixFilePermissions(locked, Set.of());
    try {
      assumeTrue(!Files.isReadable(locked), "this user may read everything");
      var scan = scanner.scan();
      assertThat(scan.frames()).hasSize(2);
      assertThat(scan.problems())
          .singleElement()
          .returns(locked.toString(), Problem::where)
          .satisfies(problem -> assertThat(problem.remedy()).contains("access"));
    } finally {
      Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("rwx------"));
    }
    assertThat(scanner.scan().problems()).isEmpty();
  }

  @Test
  void anErrorOfAReaderCostsOneFileAndNoScan() {
    var reading =
        FileReading.of(
            Bytes.of(new byte[0]),
            _ -> {
              throw new StackOverflowError();
            });
    assertThat(reading.whole()).isFalse();
    assertThat(reading.problem().orElseThrow().what()).contains("cannot be understood");
    assertThat(reading.problem().orElseThrow().remedy()).isNotEmpty();
  }

  // ---- looks at what a hint names

  @Test
  void aHintOfADeletedFileTakesItsFrameAway() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    write("b.jpg", camera.jpeg(NOON.plusSeconds(1)));
    assertThat(scanner.look().scan().frames()).hasSize(2);
    Files.delete(root.resolve("a.jpg"));
    assertThat(stems(scanner.look(List.of(root.resolve("a.jpg"))))).containsExactly("b");
    assertThat(stems(scanner.look(List.of(root.resolve("none.jpg"))))).containsExactly("b");
  }

  @Test
  void aHintOfADeletedFolderTakesAwayWhatWasInItAndNothingElse() throws IOException {
    write("day/a.jpg", camera.jpeg(NOON));
    write("day/card/b.jpg", camera.jpeg(NOON.plusSeconds(1)));
    write("day 2/c.jpg", camera.jpeg(NOON.plusSeconds(2)));
    write("d.jpg", camera.jpeg(NOON.plusSeconds(3)));
    assertThat(scanner.look().scan().frames()).hasSize(4);
    Files.delete(root.resolve("day/card/b.jpg"));
    Files.delete(root.resolve("day/card"));
    Files.delete(root.resolve("day/a.jpg"));
    Files.delete(root.resolve("day"));
    assertThat(stems(scanner.look(List.of(root.resolve("day")))))
        .containsExactlyInAnyOrder("c", "d");
  }

  @Test
  void aHintOfAFolderFindsWhatIsInAndBelowIt() throws IOException {
    assertThat(scanner.look().scan().frames()).isEmpty();
    write("day/card/a.jpg", camera.jpeg(NOON));
    write("other/b.jpg", camera.jpeg(NOON.plusSeconds(1)));
    assertThat(stems(scanner.look(List.of(root.resolve("day"))))).containsExactly("a");
    write("c.jpg", camera.jpeg(NOON.plusSeconds(2)));
    assertThat(stems(scanner.look(List.of(root.resolve("c.jpg")))))
        .containsExactlyInAnyOrder("a", "c");
    assertThat(stems(scanner.look())).containsExactlyInAnyOrder("a", "b", "c");
  }

  @Test
  void hintsFromOutsideAndFromWhatComputersLeaveBehindAreIgnored(@TempDir Path outside)
      throws IOException {
    assertThat(scanner.look().scan().frames()).isEmpty();
    var stray = Files.write(outside.resolve("a.jpg"), camera.jpeg(NOON));
    write(".framewright/b.jpg", camera.jpeg(NOON.plusSeconds(1)));
    assertThat(stems(scanner.look(List.of(stray, root.resolve(".framewright/b.jpg"))))).isEmpty();
  }

  @Test
  void whatCannotBeLookedAtIsReportedUntilTheNextLookAtEverything() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    assertThat(scanner.look().scan().problems()).isEmpty();
    var tooLong = root.resolve("x".repeat(300) + ".jpg");
    var look = scanner.look(List.of(tooLong));
    assertThat(look.scan().problems()).singleElement().returns(tooLong.toString(), Problem::where);
    assertThat(stems(look)).containsExactly("a");
    assertThat(scanner.look(List.of(root.resolve("a.jpg"))).scan().problems()).hasSize(1);
    assertThat(scanner.look().scan().problems()).isEmpty();
  }

  @Test
  void aCopyIsReportedAsSoonAsItIsThereAndNoLonger() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    assertThat(scanner.look().scan().problems()).isEmpty();
    write("copy/a.jpg", camera.jpeg(NOON));
    assertThat(scanner.look(List.of(root.resolve("copy"))).scan().problems()).hasSize(1);
    assertThat(scanner.look().scan().problems()).hasSize(1);
    write("copy/a.jpg", camera.jpeg(NOON.plusSeconds(1)));
    now = now.plusSeconds(10);
    assertThat(scanner.look().scan().problems()).isEmpty();
    write("copy/a.jpg", camera.jpeg(NOON));
    now = now.plusSeconds(10);
    assertThat(scanner.look().scan().problems()).hasSize(1);
    Files.delete(root.resolve("copy/a.jpg"));
    assertThat(scanner.look(List.of(root.resolve("copy/a.jpg"))).scan().problems()).isEmpty();
  }

  private static List<String> stems(FrameScanner.Look look) {
    return look.scan().frames().stream().map(Frame::stem).toList();
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
