package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.ThrowingSupplier;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files that were cut, altered or made to do harm: whatever they hold, they are read to an answer.
 * A hang fails by the limit of time, which is many times what the slowest takes; more memory than
 * is sensible fails as an {@link OutOfMemoryError} of the huge claims below.
 */
@Tag("slow")
class HostileFilesTest {
  private static final Duration LIMIT = Duration.ofMinutes(5);

  @TempDir Path folder;

  private static Map<String, byte[]> samples() {
    var samples = new LinkedHashMap<>(TestContainers.all());
    TestFormats.all().forEach((name, bytes) -> samples.put("format-" + name, bytes));
    return samples;
  }

  @Test
  void noFileCutAtAnyLengthIsTakenForWhole() {
    long cases = within(this::cutEverywhere);
    assertThat(cases).isGreaterThan(10_000);
    System.getLogger("fuzz").log(System.Logger.Level.INFO, "cut files: {0}", cases);
  }

  private long cutEverywhere() throws IOException {
    long cases = 0;
    for (var sample : samples().entrySet()) {
      var role = FileRole.of(sample.getKey()).orElseThrow();
      byte[] whole = sample.getValue();
      assertThat(read(whole, role).whole()).as(sample.getKey()).isTrue();
      // A sidecar is whole with its last element; what may be missing is the line's end.
      int most = role == FileRole.SIDECAR ? whole.length - 1 : whole.length;
      for (int length = 0; length < most; length++) {
        var reading = read(Arrays.copyOf(whole, length), role);
        cases++;
        assertThat(!reading.whole() || reading.hollow())
            .as("%s cut to %d of %d", sample.getKey(), length, whole.length)
            .isTrue();
      }
    }
    return cases;
  }

  @Test
  void alteredBytesNeverStopTheReading() {
    long cases = within(() -> alter(samples(), 3000));
    assertThat(cases).isGreaterThan(20_000);
    System.getLogger("fuzz").log(System.Logger.Level.INFO, "altered files: {0}", cases);
  }

  @Test
  void alteredBytesOfRealFilesNeverStopTheReading() throws IOException {
    var real = RealFrames.found();
    var small = new LinkedHashMap<String, byte[]>();
    for (var file : real) {
      if (Files.size(file) < 60_000) {
        small.put(file.getFileName().toString(), Files.readAllBytes(file));
      }
    }
    long cases = within(() -> alter(small, 1000));
    assertThat(cases).isEqualTo(small.size() * 1000L);
    System.getLogger("fuzz").log(System.Logger.Level.INFO, "altered real files: {0}", cases);
  }

  private long alter(Map<String, byte[]> samples, int times) throws IOException {
    long cases = 0;
    for (var sample : samples.entrySet()) {
      var role = FileRole.of(sample.getKey()).orElseThrow();
      for (int seed = 0; seed < times; seed++) {
        var random = new Random(seed);
        byte[] altered = sample.getValue().clone();
        // Structure lies mostly in front, so half of the alterations go there.
        int reach = random.nextBoolean() ? altered.length : Math.min(1024, altered.length);
        for (int n = 1 + random.nextInt(8); n > 0; n--) {
          int at = random.nextInt(reach);
          altered[at] = (byte) (random.nextInt(3) == 0 ? -1 : random.nextInt(256));
        }
        assertThat(read(altered, role)).isNotNull();
        cases++;
        if (seed % 50 == 0) {
          var file = Files.write(folder.resolve(sample.getKey()), altered);
          assertThat(Thumbnails.of(file, 100)).isNotNull();
        }
      }
    }
    return cases;
  }

  @Test
  void noiseBehindEveryKindOfBeginningIsReadToAnAnswer() {
    long cases =
        within(
            () -> {
              long done = 0;
              var random = new Random(7);
              for (var sample : samples().entrySet()) {
                for (int i = 0; i < 500; i++) {
                  byte[] noise = new byte[2000 + random.nextInt(3000)];
                  random.nextBytes(noise);
                  System.arraycopy(sample.getValue(), 0, noise, 0, 12);
                  assertThat(read(noise, FileRole.of(sample.getKey()).orElseThrow())).isNotNull();
                  done++;
                }
              }
              return done;
            });
    assertThat(cases).isEqualTo(samples().size() * 500L);
  }

  @Test
  void directoriesThatPointAtEachOtherEnd() throws IOException {
    // Two directories, each the other's next and each its own child, and each the other's Exif.
    var tiff = ByteBuffer.allocate(200).order(ByteOrder.LITTLE_ENDIAN);
    tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
    for (int at : List.of(8, 100)) {
      tiff.position(at);
      tiff.putShort((short) 2);
      tiff.putShort((short) 0x014A).putShort((short) 4).putInt(1).putInt(at);
      tiff.putShort((short) 0x8769).putShort((short) 4).putInt(1).putInt(108 - at);
      tiff.putInt(108 - at);
    }
    assertThat(within(() -> read(tiff.array(), FileRole.RAW)).whole()).isFalse();
  }

  @Test
  void aDirectoryOfManyChildrenThatAllAreTheDirectoryEnds() throws IOException {
    int count = 30_000;
    var tiff = ByteBuffer.allocate(26 + 4 * count).order(ByteOrder.LITTLE_ENDIAN);
    tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
    tiff.putShort((short) 1);
    tiff.putShort((short) 0x014A).putShort((short) 4).putInt(count).putInt(26).putInt(0);
    for (int i = 0; i < count; i++) {
      tiff.putInt(8 + i % 7);
    }
    assertThat(within(() -> read(tiff.array(), FileRole.RAW)).whole()).isFalse();
  }

  @Test
  void aBoxOfNoSizeAndBoxesWithoutEndAreRefused() throws IOException {
    byte[] start = TestCamera.box("ftyp", "heic\0\0\0\0".getBytes(StandardCharsets.US_ASCII));
    var tooSmall = TestContainers.join(start, new byte[] {0, 0, 0, 4, 'm', 'e', 't', 'a'});
    assertThat(read(tooSmall, FileRole.HEIF).problem().orElseThrow().what())
        .contains("below its header");
    var many = new byte[8 * 100_000];
    for (int i = 0; i < many.length; i += 8) {
      many[i + 3] = 8;
      many[i + 4] = 'f';
    }
    var all = TestContainers.join(start, many);
    assertThat(within(() -> read(all, FileRole.HEIF)).problem().orElseThrow().what())
        .contains("boxes");
  }

  @Test
  void claimsOfFourGigabytesCostNothing() throws IOException {
    var claims = new ArrayList<byte[]>();
    for (var sample : samples().entrySet()) {
      if (sample.getKey().endsWith("xmp")) {
        continue;
      }
      byte[] whole = sample.getValue();
      for (int at = 4; at < Math.min(600, whole.length - 8); at++) {
        byte[] claim = whole.clone();
        Arrays.fill(claim, at, at + 4, (byte) 0xFF);
        claims.add(claim);
        byte[] positive = whole.clone();
        ByteBuffer.wrap(positive).putInt(at, 0x7FFFFFFF);
        claims.add(positive);
      }
    }
    Collections.shuffle(claims, new Random(1));
    assertThat(claims).hasSizeGreaterThan(6000);
    long most = within(() -> mostAllocated(claims));
    assertThat(most).isLessThan(Bytes.MOST_IN_ALL);
    System.getLogger("fuzz")
        .log(System.Logger.Level.INFO, "claims: {0}, most bytes for one: {1}", claims.size(), most);
  }

  private long mostAllocated(List<byte[]> claims) {
    var threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long most = 0;
    for (var claim : claims) {
      long before = threads.getCurrentThreadAllocatedBytes();
      read(claim, FileRole.RAW);
      most = Math.max(most, threads.getCurrentThreadAllocatedBytes() - before);
    }
    return most;
  }

  @Test
  void aSparseFileOfTerabytesIsAnsweredFromItsFirstBytes() throws IOException {
    for (var sample : samples().entrySet()) {
      var file = Files.write(folder.resolve(sample.getKey()), sample.getValue());
      try (var sparse = new RandomAccessFile(file.toFile(), "rw")) {
        sparse.setLength(1L << 40);
      } catch (IOException e) {
        Assumptions.abort("this file system has no such large files");
      }
      var role = FileRole.of(file).orElseThrow();
      var reading = within(() -> FileReading.of(file, role, new Bytes.Room()));
      assertThat(reading).isNotNull();
      assertThat(within(() -> Thumbnails.of(file, 100))).isNotNull();
      Files.delete(file);
    }
  }

  private FileReading read(byte[] content, FileRole role) {
    return FileReading.of(Bytes.of(content), role);
  }

  private static <T> T within(ThrowingSupplier<T> work) {
    return assertTimeoutPreemptively(LIMIT, work);
  }
}
