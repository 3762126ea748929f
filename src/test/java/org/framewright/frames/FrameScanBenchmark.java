package org.framewright.frames;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Many frames in one job: the first scan with capture times, later scans, memory; and how long
 * {@code exiftool -fast2} takes for the same folder in the same run, where it is. Run it with the
 * heap that is to do, {@code -Xmx256m}. Arguments: frames (100000), yes or no for exiftool (yes).
 */
final class FrameScanBenchmark {
  private static final int A_FOLDER = 1000;
  private static final DateTimeFormatter EXIF =
      DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);

  private FrameScanBenchmark() {}

  public static void main(String[] args) throws Exception {
    int frames = args.length > 0 ? Integer.parseInt(args[0]) : 100_000;
    boolean reference = args.length < 2 || args[1].equals("yes");
    var folder = Files.createTempDirectory("framewright-scan-");
    try {
      long bytes = generate(folder, frames);
      System.out.printf(
          Locale.ROOT, "%d frames of %d bytes in folders of %d%n", frames, bytes, A_FOLDER);
      var scanner = new FrameScanner(folder);
      double first = scan("first scan", scanner, frames);
      for (int i = 1; i <= 4; i++) {
        scan("scan again", scanner, frames);
      }
      System.gc();
      var runtime = Runtime.getRuntime();
      System.out.printf(
          Locale.ROOT,
          "heap held %d MiB, allowed %d MiB%n",
          (runtime.totalMemory() - runtime.freeMemory()) >> 20,
          runtime.maxMemory() >> 20);
      if (reference) {
        exiftool(folder, first);
      }
    } finally {
      FrameBurstBenchmark.delete(folder);
    }
  }

  /** One JPEG with its time changed for each frame, so that each is another exposure. */
  private static long generate(Path folder, int frames) throws IOException {
    var time = LocalDateTime.of(2026, 11, 23, 9, 0);
    byte[] jpeg = new TestCamera("Studio Body A", "A-1001").jpeg(time);
    int place = new String(jpeg, StandardCharsets.ISO_8859_1).indexOf(EXIF.format(time));
    for (int i = 0; i < frames; i++) {
      var parent = folder.resolve("%03d".formatted(i / A_FOLDER));
      if (i % A_FOLDER == 0) {
        Files.createDirectory(parent);
      }
      byte[] text = EXIF.format(time.plusSeconds(i)).getBytes(StandardCharsets.US_ASCII);
      System.arraycopy(text, 0, jpeg, place, text.length);
      Files.write(parent.resolve("A_%06d.JPG".formatted(i)), jpeg);
    }
    return jpeg.length;
  }

  private static double scan(String what, FrameScanner scanner, int frames) throws IOException {
    long began = System.nanoTime();
    var scan = scanner.scan();
    double took = (System.nanoTime() - began) / 1e9;
    long dated =
        scan.frames().stream()
            .filter(frame -> frame.complete() && frame.capture().time().isPresent())
            .map(Frame::id)
            .distinct()
            .count();
    System.out.printf(
        Locale.ROOT,
        "%s: %.3f s, %d of %d complete, dated and distinct%n",
        what,
        took,
        dated,
        frames);
    return took;
  }

  private static void exiftool(Path folder, double ours) throws InterruptedException {
    try {
      long began = System.nanoTime();
      var process =
          new ProcessBuilder(
                  "exiftool",
                  "-fast2",
                  "-r",
                  "-q",
                  "-T",
                  "-DateTimeOriginal",
                  "-SubSecTimeOriginal",
                  "-Make",
                  "-Model",
                  "-SerialNumber",
                  folder.toString())
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      process.waitFor();
      double took = (System.nanoTime() - began) / 1e9;
      System.out.printf(
          Locale.ROOT, "exiftool -fast2: %.1f s, %.1f times the first scan%n", took, took / ours);
    } catch (IOException e) {
      System.out.printf(Locale.ROOT, "exiftool is not here%n");
    }
  }
}
