package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;

/** A job on a laptop, a card and two disks, each a disk of its own by what the test says. */
final class CopiesScene {
  private Instant now = Instant.parse("2026-11-23T18:04:00Z");
  final Path laptop;
  final Path card;
  final Path one;
  final Path two;
  final TestVolumes volumes = new TestVolumes();
  final Job job;

  /** Two frames on the card, and nowhere else. */
  CopiesScene(Path temp) throws Exception {
    var real = temp.toRealPath();
    laptop = Files.createDirectory(real.resolve("laptop"));
    card = Files.createDirectory(real.resolve("A1"));
    one = Files.createDirectory(real.resolve("SSD 1"));
    two = Files.createDirectory(real.resolve("SSD 2"));
    volumes.disk(laptop, "laptop").disk(card, "card").disk(one, "one").disk(two, "two");
    var clock = ((InstantSource) () -> now).withZone(ZoneOffset.UTC);
    job =
        ((Started.Opened)
                Job.start(
                    Templates.fashionDays(),
                    laptop,
                    Map.of("day", "2026-11-23", "client", "KVO", "title", "look book"),
                    clock))
            .job();
    var images = Files.createDirectories(card.resolve("DCIM/100STUDI"));
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
    for (int i = 0; i < 2; i++) {
      camera.take(Exposure.of(now.minusSeconds(3600 - i), "001", "F")).writeTo(images);
    }
  }

  Clock clock() {
    return ((InstantSource) () -> now).withZone(ZoneOffset.UTC);
  }

  void later() {
    now = now.plusSeconds(600);
  }

  List<Path> cardFiles() throws IOException {
    return files(card);
  }

  static List<Path> files(Path folder) throws IOException {
    try (var files = Files.walk(folder)) {
      return new ArrayList<>(files.filter(Files::isRegularFile).sorted().toList());
    }
  }

  /** Copies what is on the card into a folder, under other names if {@code prefix} is not empty. */
  void copyCardTo(Path folder, String prefix) throws IOException {
    Files.createDirectories(folder);
    for (var file : cardFiles()) {
      Files.copy(
          file, folder.resolve(prefix + file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
    }
  }

  Path frames() {
    return job.framesFolder();
  }

  Optional<Compared> run(CopiesRequest request, Progress progress) throws Exception {
    return new Comparison(job, volumes).run(request, progress);
  }

  Compared compare(Path... folders) throws Exception {
    return run(CopiesRequest.of(List.of(folders), "Ines"), Progress.NONE).orElseThrow();
  }

  static Verdict verdict(Compared compared) {
    assertThat(compared.cards()).hasSize(1);
    return compared.cards().getFirst().verdict();
  }

  static List<Rule> rules(Verdict verdict) {
    return verdict.why().stream().map(Reason::rule).toList();
  }
}
