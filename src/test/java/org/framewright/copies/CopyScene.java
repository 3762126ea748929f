package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.copies.device.Device;
import org.framewright.copies.device.Medium;
import org.framewright.copies.device.MountIdentity;
import org.framewright.copies.device.Reading;
import org.framewright.copies.device.Volumes;
import org.framewright.job.Job;
import org.framewright.job.Started;

/** A job, a card, and disks to copy to, of which tests decide how they fail. */
final class CopyScene {
  final Path root;
  final Path card;
  final Path first;
  final Path second;
  private final Path jobFolder;

  CopyScene(Path folder) throws Exception {
    this.root = folder.toRealPath();
    this.card = Files.createDirectories(root.resolve("card"));
    this.first = root.resolve("first");
    this.second = root.resolve("second");
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "Wool");
    var started = (Started.Opened) Job.start(Templates.fashionDays(), root, values, clock());
    this.jobFolder = started.job().folder();
  }

  private static Clock clock() {
    return Clock.fixed(Instant.parse("2026-11-23T18:04:00Z"), ZoneOffset.UTC);
  }

  Job job() throws Exception {
    return Job.open(jobFolder, clock());
  }

  /** The job, on another file system. */
  Job job(Path otherRoot) throws Exception {
    return Job.open(otherRoot.resolve(root.relativize(jobFolder).toString()), clock());
  }

  CopyScene file(String name, byte[] content) throws IOException {
    var file = card.resolve(name);
    Files.createDirectories(file.getParent());
    Files.write(file, content);
    Files.setLastModifiedTime(file, FileTime.from(Instant.parse("2026-11-23T09:00:07Z")));
    return this;
  }

  CopyScene file(String name, String content) throws IOException {
    return file(name, content.getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }

  CopyOutcome copy(Path... to) throws Exception {
    return copy(Volumes.ofThisSystem(), Progress.NONE, to);
  }

  CopyOutcome copy(Volumes volumes, Progress progress, Path... to) throws Exception {
    return new Copier(volumes).copy(job(), CopyPlan.of(card, List.of(to)), progress);
  }

  CopyOutcome copyWithMhl(Path... to) throws Exception {
    return new Copier(Volumes.ofThisSystem())
        .withMhl()
        .copy(job(), CopyPlan.of(card, List.of(to)), Progress.NONE);
  }

  static CopyReport done(CopyOutcome outcome) {
    assertThat(outcome).isInstanceOf(CopyOutcome.Done.class);
    return ((CopyOutcome.Done) outcome).report();
  }

  /** Every file below a folder with its bytes. */
  static Map<String, String> contents(Path folder) throws IOException {
    var contents = new TreeMap<String, String>();
    if (!Files.exists(folder)) {
      return contents;
    }
    try (var files = Files.walk(folder)) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        contents.put(
            folder.relativize(file).toString().replace('\\', '/'),
            HexFormat.of().formatHex(Files.readAllBytes(file)));
      }
    }
    return contents;
  }

  /** The same without the lists of checksums. */
  static Map<String, String> copies(Path folder) throws IOException {
    var contents = contents(folder);
    contents.keySet().removeIf(name -> name.startsWith("copied-") && name.endsWith(".sha256"));
    contents.keySet().removeIf(name -> name.startsWith("ascmhl/"));
    return contents;
  }

  /** Disks of which the reads can be disturbed. */
  static class Disturbed implements Volumes {
    private final Volumes real = Volumes.ofThisSystem();

    /** Before a file is read. */
    void before(Path file) throws IOException {}

    /** What a read gave. */
    Reading after(Path file, Reading reading) {
      return reading;
    }

    @Override
    public Device deviceOf(Path path) throws IOException {
      return real.deviceOf(path);
    }

    @Override
    public MountIdentity mountOf(Path path) throws IOException {
      return real.mountOf(path);
    }

    @Override
    public Reading read(Path file, Consumer<ByteBuffer> each, Progress progress)
        throws IOException {
      before(file);
      return after(file, real.read(file, each, progress));
    }
  }

  static FileSystemException inputOutput(Path file) {
    return new FileSystemException(file.toString(), null, "Input/output error");
  }

  static Reading wrong(Reading reading) {
    return new Reading("0".repeat(64), reading.bytes(), Medium.READ, reading.modified());
  }
}
