package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.handoff.Pictures;
import org.framewright.mhl.MhlHistory;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;

/**
 * A job, and every command that writes, as tests run them on a copy of it that is disturbed in some
 * way. Whatever happens: the job opens, nothing is half-made, and the same command does its work.
 */
final class CommandScene {
  static final String JOB = "2026-11-23_KVO_look-book";

  private static final Set<String> REPLACED = Set.of("noon.csv", "old.pdf");

  private final Path scratch;
  private final Path scene;
  private final Path withSlates;
  private int places;

  /** What a command is run with; {@code %s} is the folder that the job lies in. */
  @SuppressWarnings("ImmutableEnumChecker") // List.of never changes
  enum Case {
    START(
        "start",
        "--by",
        "%s/fashion-days.yaml",
        "--in",
        "%s/new",
        "day=2026-11-24",
        "client=KVO",
        "title=knitwear"),
    IMPORT("list", "%s/" + JOB, "--import", "%s/noon.csv"),
    ORDER("list", "%s/" + JOB, "--propose-order", "--apply"),
    EXPORT("list", "%s/" + JOB, "--export", "%s/out.csv"),
    EXPORT_WORKBOOK("list", "%s/" + JOB, "--export", "%s/out.xlsx"),
    EXPORT_AGAIN("list", "%s/" + JOB, "--export", "%s/noon.csv", "--replace"),
    MARK("mark", "%s/" + JOB, "002", "signed-off", "--by", "Odette"),
    MOVE(
        "frames", "%s/" + JOB, "--move", "20261123_KVO_001_F_0001..20261123_KVO_001_F_0001", "002"),
    FRAMES("frames", "%s/" + JOB),
    SLATE("frames", "%s/" + JOB, "--slate", "20261123_KVO_001_F_0001", "002"),
    SLATES("slates", "%s/" + JOB, "--to", "%s/slates.pdf"),
    SLATES_AGAIN("slates", "%s/" + JOB, "--to", "%s/old.pdf", "--setups", "001", "--replace"),
    DELIVER("deliver", "%s/" + JOB, "--to", "%s/package", "--names", "%s/names.txt"),
    DELIVER_RETURNED("deliver", "%s/" + JOB, "--to", "%s/client", "--returned", "%s/returned"),
    COPY("copy", "%s/" + JOB, "--from", "%s/card", "--to", "%s/backup", "--to", "%s/second"),
    COPY_WITH_MHL("copy", "%s/" + JOB, "--from", "%s/card", "--to", "%s/backup", "--mhl"),
    COPIES("copies", "%s/" + JOB, "%s/card", "%s/kept"),
    COPIES_WITH_MHL("copies", "%s/" + JOB, "%s/card", "%s/kept", "--mhl"),
    READY(
        "ready", "%s/" + JOB, "--quick", "--checklist", "studio", "--tick", "cables", "--by", "A"),
    REPORT("report", "%s/" + JOB, "--to", "%s/report.html", "--kind", "sheet"),
    REPORT_AGAIN("report", "%s/" + JOB, "--to", "%s/noon.csv", "--replace"),
    RETURNS("returns", "%s/" + JOB, "%s/back");

    private final List<String> words;

    Case(String... words) {
      this.words = List.of(words);
    }

    Object[] in(Path folder) {
      return words.stream().map(word -> word.replace("%s", folder.toString())).toArray();
    }
  }

  /** A job with four setups, a frame of one, and a hand-off. */
  CommandScene(Path scratch) throws IOException {
    this.scratch = scratch;
    scene = Files.createDirectory(scratch.resolve("scene"));
    Files.createDirectory(scene.resolve("new"));
    Files.createDirectory(scene.resolve("back"));
    var card = Files.createDirectories(scene.resolve("card").resolve("DCIM").resolve("100STUDA"));
    Files.writeString(card.resolve("A_0001.RAW"), "raw");
    Files.writeString(card.resolve("A_0001.JPG"), "jpeg");
    var kept = Files.createDirectories(scene.resolve("kept"));
    Files.writeString(kept.resolve("A_0001.RAW"), "raw");
    Files.copy(Path.of("templates/fashion-days.yaml"), scene.resolve("fashion-days.yaml"));
    Files.writeString(scene.resolve("old.pdf"), "slates of the day before");
    var list =
        """
        Look;Name;Views;Model
        001;Coat;F;Mira
        002;Hat;F;Jonna
        004;Belt;F;Mira
        005;Glove;F;Jonna
        """;
    Files.writeString(scene.resolve("list.csv"), list);
    Files.writeString(scene.resolve("noon.csv"), list + "003;Scarf;B;Mira\n");
    Files.writeString(scene.resolve("names.txt"), "20261123_KVO_001_F_0001\n");
    done(
        "start",
        "--by",
        "templates/fashion-days.yaml",
        "--in",
        scene,
        "day=2026-11-23",
        "client=KVO",
        "title=look book");
    var job = scene.resolve(JOB);
    done("list", job, "--import", scene.resolve("list.csv"));
    var frames = job.resolve("01_frames");
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
    var at = Instant.parse("2026-11-23T09:00:00Z");
    camera.take(Exposure.of(at, "001", "F")).writeTo(frames);
    renameAll(frames, "20261123_KVO_001_F_0001");
    done("deliver", job, "--to", scene.resolve("first"), "--names", scene.resolve("names.txt"));
    Pictures.write(
        Files.createDirectory(scene.resolve("returned")).resolve("KVO_001_F_0001_v01.tif"));
    withSlates = scratch.resolve("with-slates");
    copy(scene, withSlates);
    done("slates", withSlates.resolve(JOB), "--to", scratch.resolve("slates.pdf"));
  }

  private static void renameAll(Path frames, String to) throws IOException {
    try (var files = Files.list(frames)) {
      for (var file : files.toList()) {
        var name = file.getFileName().toString();
        Files.move(file, file.resolveSibling(to + name.substring(name.lastIndexOf('.'))));
      }
    }
  }

  private static void done(Object... words) {
    var ran = Ran.run(words);
    assertThat(ran.status()).as(ran.err()).isZero();
  }

  /** A copy of the scene, to disturb; pictures are searched only where slates were printed. */
  Path place(Case command) throws IOException {
    var place = scratch.resolve("place" + places++);
    copy(command == Case.FRAMES ? withSlates : scene, place);
    return place.toRealPath();
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.walkFileTree(
        from,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes)
              throws IOException {
            Files.createDirectory(to.resolve(from.relativize(folder).toString()));
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.copy(
                file,
                to.resolve(from.relativize(file).toString()),
                StandardCopyOption.COPY_ATTRIBUTES);
            return FileVisitResult.CONTINUE;
          }
        });
  }

  /** The job opens; the same command succeeds, or finds its work done; nothing else is left. */
  static void endsWhole(Case command, Path place, Map<String, String> before, String what) {
    var listed = Ran.run("list", place.resolve(JOB), "--json");
    assertThat(listed.status()).as(what + "\n" + listed.err()).isZero();
    before.forEach(
        (name, content) -> {
          if (!name.contains(".framewright") && !REPLACED.contains(name)) {
            assertThat(contents(place)).as(what).containsEntry(name, content);
          }
        });
    var again = Ran.run(command.in(place));
    if (again.status() > 1) {
      assertThat(again.err()).as(what).containsAnyOf("exists already", "is there already");
      if (Set.of(Case.EXPORT, Case.EXPORT_WORKBOOK, Case.REPORT, Case.SLATES).contains(command)) {
        var words = new ArrayList<>(List.of(command.in(place)));
        words.add("--replace");
        assertThat(Ran.run(words.toArray()).status()).as(what).isZero();
      }
    }
    var left =
        contents(place).keySet().stream()
            .filter(name -> !before.containsKey(name))
            .filter(name -> name.endsWith(".tmp") || name.endsWith(".part") || isDraft(name))
            .toList();
    assertThat(left).as(what + "\n" + again).isEmpty();
    if (command == Case.START) {
      var job = place.resolve("new/2026-11-24_KVO_knitwear");
      assertThat(Ran.run("list", job).status()).as(what).isZero();
    }
    if (command == Case.COPIES || command == Case.COPIES_WITH_MHL) {
      var last = Ran.run("copies", place.resolve(JOB));
      assertThat(last.out()).as(what).startsWith("Card card was not yet clear");
    }
    if (command == Case.COPY_WITH_MHL || command == Case.COPIES_WITH_MHL) {
      var target = place.resolve(command == Case.COPY_WITH_MHL ? "backup" : "kept");
      assertThat(historyOf(target))
          .as(what)
          .containsKey(command == Case.COPY_WITH_MHL ? "DCIM/100STUDA/A_0001.RAW" : "A_0001.RAW");
    }
    if (command == Case.DELIVER_RETURNED) {
      assertThat(contents(place))
          .as(what)
          .containsKey("client/bagit.txt")
          .containsEntry(
              "client/data/KVO_001_F_0001_v01.tif", before.get("returned/KVO_001_F_0001_v01.tif"));
    }
    if (command == Case.DELIVER) {
      assertThat(contents(place)).as(what).containsKey("package/bagit.txt");
      var back = Ran.run("returns", place.resolve(JOB), place.resolve("package"));
      assertThat(back.status()).as(what + back).isLessThan(2);
    }
  }

  private static Map<String, MhlHistory.Claim> historyOf(Path folder) {
    try {
      return MhlHistory.read(folder).orElseThrow().claims();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean isDraft(String name) {
    return Path.of(name).getName(0).toString().startsWith(".");
  }

  static Map<String, String> contents(Path folder) {
    var contents = new TreeMap<String, String>();
    try (var files = Files.walk(folder)) {
      for (var file : new ArrayList<>(files.filter(Files::isRegularFile).toList())) {
        contents.put(
            folder.relativize(file).toString().replace('\\', '/'),
            HexFormat.of().formatHex(Files.readAllBytes(file)));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return contents;
  }
}
