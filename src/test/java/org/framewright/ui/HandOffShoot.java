package org.framewright.ui;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.framewright.frames.Thumbnails;
import org.framewright.ui.page.FileChoosers;

/** What becomes of a job's hand-off for the pictures, and the folders that the app is shown. */
final class HandOffShoot implements FileChoosers {
  private static final int LONGEST = 4000;

  private final Path place;
  private final Path job;
  private Path next;
  private Path whole;

  HandOffShoot(Path place, Path job) {
    this.place = place;
    this.job = job;
    this.next = place;
  }

  /** Finds the package that was just made, and lets some of it come back. */
  void handed() throws IOException {
    try (var all = Files.list(job.getParent())) {
      whole =
          all.filter(one -> one.getFileName().toString().contains("_hand-off_"))
              .findFirst()
              .orElseThrow();
    }
    var pictures = pictures(whole.resolve("data"));
    var back = Files.createDirectory(back());
    for (int i = 0; i < pictures.size(); i++) {
      var name = pictures.get(i).getFileName().toString().replace(".JPG", "");
      switch (i % 6) {
        case 0 -> {} // is missing
        case 1 -> Files.copy(pictures.get(i), back.resolve(name + ".JPG"));
        case 2 -> retouched(pictures.get(i), back.resolve(name + " final v2.jpg"));
        default -> retouched(pictures.get(i), back.resolve(name + "_v0" + (1 + i % 3) + ".tif"));
      }
    }
    Files.writeString(back.resolve("notes from Bram.txt"), "all done but one");
    var broken = broken();
    copy(whole, broken);
    Files.delete(broken.resolve("data").resolve(pictures.getFirst().getFileName()));
    Files.writeString(broken.resolve("data").resolve(pictures.get(1).getFileName()), "cut");
    Files.writeString(broken.resolve("data/read me too.txt"), "hello");
  }

  private static List<Path> pictures(Path data) throws IOException {
    try (var all = Files.list(data)) {
      return all.filter(one -> one.toString().endsWith(".JPG")).sorted().toList();
    }
  }

  private static void retouched(Path from, Path to) throws IOException {
    var image = Thumbnails.of(from, LONGEST).orElseThrow();
    var paint = image.createGraphics();
    paint.setColor(new Color(255, 250, 235, 60));
    paint.fillRect(0, 0, image.getWidth(), image.getHeight());
    paint.dispose();
    ImageIO.write(image, to.toString().endsWith(".tif") ? "tiff" : "jpg", to.toFile());
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (var one : all.toList()) {
        Files.copy(one, to.resolve(from.relativize(one).toString()));
      }
    }
  }

  Path whole() {
    return whole;
  }

  Path broken() {
    return place.resolve("sent by Bram");
  }

  Path back() {
    return place.resolve("back from Bram");
  }

  void next(Path folder) {
    next = folder;
  }

  @Override
  public Optional<Path> folder(String title, Optional<Path> startIn) {
    return Optional.of(next);
  }

  @Override
  public Optional<Path> file(String title, Optional<Path> startIn, List<String> endings) {
    return Optional.empty();
  }

  @Override
  public Optional<Path> save(String title, Optional<Path> startIn, String suggestedName) {
    return Optional.empty();
  }
}
