package org.framewright.ui.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.framewright.Templates;
import org.framewright.copies.TestVolumes;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;

/** A job on a laptop, a card with two frames in four files, and two disks. */
public final class CardScene {
  private Instant now = Instant.parse("2026-11-23T18:04:00Z");
  public final Path laptop;
  public final Path card;
  public final Path one;
  public final Path two;
  public final TestVolumes volumes = new TestVolumes();
  public final Job job;
  public final List<Path> mounted = new ArrayList<>();

  public CardScene(Path temp) throws Exception {
    var real = temp.toRealPath();
    laptop = Files.createDirectory(real.resolve("laptop"));
    card = Files.createDirectory(real.resolve("A1"));
    one = Files.createDirectory(real.resolve("SSD 1"));
    two = Files.createDirectory(real.resolve("SSD 2"));
    volumes.disk(laptop, "laptop").disk(card, "card").disk(one, "one").disk(two, "two");
    job =
        ((Started.Opened)
                Job.start(
                    Templates.fashionDays(),
                    laptop,
                    Map.of("day", "2026-11-23", "client", "KVO", "title", "look book"),
                    clock()))
            .job();
    shoot(card, 2);
  }

  /** Puts frames on a card. */
  public void shoot(Path onto, int frames) throws IOException {
    var images = Files.createDirectories(onto.resolve("DCIM/100STUDI"));
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
    for (int i = 0; i < frames; i++) {
      camera.take(Exposure.of(now.minusSeconds(3600 - i), "001", "F")).writeTo(images);
    }
  }

  public Clock clock() {
    return ((InstantSource) () -> now).withZone(ZoneOffset.UTC);
  }

  void later(Duration by) {
    now = now.plus(by);
  }

  List<Path> cardFiles() throws IOException {
    try (var files = Files.walk(card)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  /** Copies all files of the card into a folder. */
  public void copyCardTo(Path folder) throws IOException {
    Files.createDirectories(folder);
    for (var file : cardFiles()) {
      Files.copy(file, folder.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
    }
  }

  public Disks disks() {
    return new Disks(volumes, () -> List.copyOf(mounted));
  }
}
