package org.framewright.ui;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import org.framewright.base.Progress;
import org.framewright.copies.Comparison;
import org.framewright.copies.CopiesRequest;
import org.framewright.copies.TestVolumes;
import org.framewright.copies.device.Device;
import org.framewright.job.Job;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.ui.copies.Disks;
import org.framewright.ui.page.FileChoosers;

/** Cards and disks of an invented shoot, for pictures of the page for copies. */
final class CopiesShoot {
  private static final int ON_A1 = 84;

  /** The place of a JPEG among the late files that the card broke off. */
  private static final int CUT = 11;

  private final Job job;
  private final Path a1;
  private final Path a2;
  private final Path b1;
  private final Path one;
  private final Path two;
  private final TestVolumes volumes = new TestVolumes();
  private final Queue<Path> asked = new ArrayDeque<>();
  private final int places;
  private volatile List<Path> mounted;
  private volatile boolean slow;

  CopiesShoot(Path place, Job job) throws IOException {
    this.job = job;
    a1 = Files.createDirectory(place.resolve("A1"));
    a2 = Files.createDirectory(place.resolve("A2"));
    b1 = Files.createDirectory(place.resolve("B1"));
    one = Files.createDirectory(place.resolve("SSD 1"));
    two = Files.createDirectory(place.resolve("SSD 2"));
    disk(job.folder(), "laptop", "disk nvme0n1 (1 TB)");
    disk(a1, "a1", "card sdb (USB reader, 128 GB)");
    disk(a2, "a2", "card sdc (USB reader, 128 GB)");
    disk(b1, "b1", "card sdd (USB reader, 256 GB)");
    disk(one, "one", "disk sde (USB, 2 TB)");
    disk(two, "two", "disk sdf (USB, 2 TB)");
    volumes.unsure(a2);
    fill();
    volumes.onRead(this::read);
    mounted = List.of(b1);
    asked.addAll(List.of(a1, a2, b1, one, two));
    places = asked.size();
  }

  private void disk(Path folder, String id, String label) throws IOException {
    volumes.device(folder, new Device("disk:" + id, Device.Kind.DISK, label));
  }

  private void read() {
    if (slow) {
      try {
        Thread.sleep(250);
      } catch (InterruptedException _) {
        Thread.currentThread().interrupt();
      }
    }
  }

  /** A1 is everywhere, A2 too but read from memory; of B1 the last frames are on one disk only. */
  private void fill() throws IOException {
    List<Path> frames;
    try (var files = Files.walk(job.framesFolder())) {
      frames = files.filter(Files::isRegularFile).sorted().toList();
    }
    for (int i = 0; i < frames.size(); i++) {
      var card = i < ON_A1 ? a1 : a2;
      var body = frames.get(i).getParent().getFileName().toString();
      copy(frames.get(i), card.resolve("DCIM/100STUD" + body));
      copy(frames.get(i), one.resolve("day 1").resolve(body));
      copy(frames.get(i), two.resolve("day 1").resolve(body));
    }
    var late = Files.createDirectories(b1.resolve("DCIM/100STUDB"));
    var camera =
        new SampleCamera(
            SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 620);
    for (int i = 0; i < 19; i++) {
      camera
          .take(Exposure.of(Instant.parse("2026-11-27T12:10:00Z").plusSeconds(i), "014", "F"))
          .writeTo(late);
    }
    Files.writeString(late.resolve("VOICE_01.WAV"), "a memo");
    List<Path> shot;
    try (var files = Files.list(late)) {
      shot = files.sorted().toList();
    }
    var cut = shot.get(CUT);
    Files.write(cut, Arrays.copyOf(Files.readAllBytes(cut), 900));
    for (var file : shot) {
      copy(file, one.resolve("B1"));
    }
    for (var file : shot.subList(6, 16)) {
      copy(file, two.resolve("B1"));
    }
    var rotten = two.resolve("B1").resolve(shot.get(9).getFileName());
    var bytes = Files.readAllBytes(rotten);
    Files.write(rotten, Arrays.copyOf(bytes, bytes.length / 2));
    Files.writeString(two.resolve("day 1/notes of the studio.txt"), "rack 3 goes back on Friday");
  }

  private static void copy(Path file, Path folder) throws IOException {
    Files.createDirectories(folder);
    Files.copy(file, folder.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
  }

  /** What was compared earlier on the day. */
  void compareBefore() throws Exception {
    new Comparison(job, volumes)
        .run(CopiesRequest.of(List.of(a1, b1, one, two), "Ines"), Progress.NONE);
  }

  /** A card that was copied as it is comes to SSD 2, and is the next folder that is chosen. */
  void copyACard() throws IOException {
    var copied = two.resolve("A1 of Monday");
    Files.createDirectories(copied.resolve("DCIM/100STUDA"));
    asked.add(copied);
  }

  /** Where it stands among the places: cards come first, by their names. */
  int copiedCardAt() {
    return 1;
  }

  int places() {
    return places;
  }

  void pullAll() {
    mounted = List.of();
  }

  void slow(boolean now) {
    slow = now;
  }

  /** From now on B1 cannot be read. */
  void fail() throws IOException {
    try (var files = Files.walk(b1)) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        volumes.failing(file);
      }
    }
  }

  Disks disks() {
    return new Disks(volumes, () -> mounted);
  }

  /** Answers with one folder after the other. */
  FileChoosers choosers() {
    return new FileChoosers() {
      @Override
      public Optional<Path> folder(String title, Optional<Path> startIn) {
        return Optional.ofNullable(asked.poll());
      }

      @Override
      public Optional<Path> file(String title, Optional<Path> startIn, List<String> endings) {
        return Optional.empty();
      }

      @Override
      public Optional<Path> save(String title, Optional<Path> startIn, String suggestedName) {
        return Optional.empty();
      }
    };
  }
}
