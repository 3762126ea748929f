package org.framewright.handoff;

import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.InstanceOfAssertFactories.type;
import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Sha256;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.framewright.frames.FileRole;
import org.framewright.frames.FrameId;
import org.framewright.frames.PictureDigest;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the job knows of its selects goes into the package, and never into a frame. */
@Tag("slow")
class MetadataInPackagesTest {
  @TempDir private Path folder;
  private Scene scene;
  private Job job;

  @BeforeEach
  void aJobWithRatedFrames() throws Exception {
    scene = Scene.rated(folder);
    job = scene.job();
    scene.rename();
  }

  private static MetadataOptions options(MetadataMode mode, String... settings) {
    var kept = new HashMap<String, Object>();
    for (int i = 0; i < settings.length; i += 2) {
      kept.put(settings[i], settings[i + 1]);
    }
    var reading = (Studio.Reading.Sound) Studio.of(kept, "preferences.json");
    return new MetadataOptions(mode, false, reading.studio());
  }

  private Delivery deliver(Path target, MetadataOptions options) throws Exception {
    var handOff = Scene.handOff(job);
    return handOff.deliver(handOff.rated(4), target, options, Progress.NONE);
  }

  private Path delivered(MetadataOptions options) throws Exception {
    var target = folder.resolve("for Bram");
    assertThat(deliver(target, options)).isInstanceOf(Delivery.Delivered.class);
    return target;
  }

  /** The frame's one file of a kind, by a select's name. */
  private Path frame(String ending) throws Exception {
    try (var files = Files.walk(job.framesFolder())) {
      return files
          .filter(file -> file.toString().endsWith("KVO_001_F_0001." + ending))
          .findFirst()
          .orElseThrow();
    }
  }

  private void aged(Path file) throws Exception {
    Files.setLastModifiedTime(file, FileTime.from(Instant.now().minusSeconds(3600)));
  }

  private static String text(Path file) throws Exception {
    return Files.readString(file, StandardCharsets.ISO_8859_1);
  }

  private static List<String> remarks(Delivery delivery) {
    return delivery.remarks().stream().map(Problem::sentence).toList();
  }

  /** Content, time and number on the disk of each frame. */
  private Map<String, List<Object>> frames() throws Exception {
    var frames = new TreeMap<String, List<Object>>();
    try (var files = Files.walk(job.framesFolder())) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        frames.put(
            file.toString(),
            List.of(
                Checksum.of(file),
                Files.getLastModifiedTime(file),
                String.valueOf(Files.readAttributes(file, BasicFileAttributes.class).fileKey())));
      }
    }
    return frames;
  }

  @Test
  void theCopiesSayItAndTheFramesAreWhatTheyWere() throws Exception {
    var before = frames();
    var target =
        delivered(
            options(
                MetadataMode.EMBED,
                "studio.photographer",
                "Ines Vander",
                "studio.copyright",
                "(c) {day.year} {client} Nova"));
    assertThat(frames()).isEqualTo(before);
    for (var ending : List.of("xmp", "JPG", "DNG")) {
      assertThat(text(target.resolve("data/KVO_001_F_0001." + ending)))
          .contains("Ines Vander")
          .contains("<rdf:li xml:lang=\"x-default\">KVO_001_F_0001</rdf:li>")
          .contains("(c) 2026 KVO Nova")
          .contains("look book 001")
          .contains("Please send it back as KVO_001_F_0001_v01.");
    }
    for (var ending : List.of("JPG", "DNG")) {
      var digest = PictureDigest.of(target.resolve("data/KVO_001_F_0001." + ending));
      assertThat(digest).isEqualTo(PictureDigest.of(frame(ending)));
    }
  }

  // RFC 8493, by the reference library.
  @Test
  void theManifestsAreOfTheFinishedCopies() throws Exception {
    var target = delivered(options(MetadataMode.EMBED));
    try (var verifier = new BagVerifier()) {
      verifier.isValid(new BagReader().read(target), false);
    }
    assertThat(OpenPackage.check(target.toRealPath()).orElseThrow().whole()).isTrue();
    assertThat(target.resolve("rewritten.part")).doesNotExist();
    assertThat(target.resolve("README.txt"))
        .content()
        .contains("say so themselves, too")
        .contains("IPTC Photo Metadata");
  }

  // RFC 4180, read by another reader; the checksums by this runtime's own SHA-256.
  @Test
  void theIndexHasTheChecksumsOfTheFrames() throws Exception {
    var sums = new HashMap<String, String>();
    for (var ending : List.of("DNG", "JPG", "xmp")) {
      sums.put(ending, Sha256.of(Files.readAllBytes(frame(ending))));
    }
    var target = delivered(options(MetadataMode.EMBED));
    try (var rows =
        new CsvMapper()
            .readerForMapOf(String.class)
            .with(CsvSchema.emptySchema().withHeader())
            .<Map<String, String>>readValues(target.resolve("index.csv").toFile())) {
      assertThat(rows.next())
          .containsEntry("files", "KVO_001_F_0001.DNG KVO_001_F_0001.JPG KVO_001_F_0001.xmp")
          .containsEntry(
              "sha256-original", sums.get("DNG") + " " + sums.get("JPG") + " " + sums.get("xmp"));
    }
  }

  @Test
  void theRecordSaysWhatTheCopiesWereMadeOf() throws Exception {
    var sum = Sha256.of(Files.readAllBytes(frame("JPG")));
    var target = delivered(options(MetadataMode.EMBED));
    var record = HandOffRecords.of(job).read().usable().get(1);
    var copy = record.selects().getFirst().files().get(1);
    assertThat(copy.name()).isEqualTo("KVO_001_F_0001.JPG");
    assertThat(copy.original()).hasValue(sum);
    assertThat(copy.sha256()).isEqualTo(Checksum.of(target.resolve("data/KVO_001_F_0001.JPG")));
    assertThat(record.metadata().orElseThrow()).matches("embed:[0-9a-f]{64}");
  }

  @Test
  void aFrameWithoutASidecarGetsOneThatComesBackAsTheSelects() throws Exception {
    Files.delete(frame("xmp"));
    job.rate(job.scan().frames().getFirst().knownAs(), 5, "Ines");
    var target = delivered(options(MetadataMode.SIDECAR));
    var added = target.resolve("data/KVO_001_F_0001.xmp");
    assertThat(added).content().contains("KVO_001_F_0001_v01");
    try (var files = Files.list(target.resolve("data"))) {
      assertThat(target.resolve("README.txt"))
          .content()
          .contains("3 selects in " + files.count() + " files lie in data/.");
    }
    var record = HandOffRecords.of(job).read().usable().get(1);
    assertThat(record.selects().getFirst().files()).hasSize(2);
    assertThat(record.selects().getFirst().added())
        .singleElement()
        .satisfies(copy -> assertThat(copy.sha256()).isEqualTo(Checksum.of(added)));
    assertThat(target.resolve("index.csv"))
        .content()
        .contains("KVO_001_F_0001.DNG KVO_001_F_0001.JPG KVO_001_F_0001.xmp");
    var back = Files.createDirectory(folder.resolve("back"));
    Files.copy(added, back.resolve("KVO_001_F_0001.xmp"));
    assertThat(Returns.of(job, back, OptionalInt.empty()).answers().getFirst().state())
        .isEqualTo(Returns.State.UNTOUCHED);
  }

  @Test
  void whatSomebodyWroteInASidecarStaysAndIsToldOnce() throws Exception {
    var sidecar = frame("xmp");
    var theirs =
        """
        <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF
         xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about=""
         xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmp:Rating="4"
         xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:crs="urn:develop" crs:Exposure="+0.50">
         <dc:description><rdf:Alt><rdf:li xml:lang="x-default">by hand</rdf:li></rdf:Alt>
         </dc:description></rdf:Description></rdf:RDF></x:xmpmeta>
        """;
    Files.writeString(sidecar, theirs);
    aged(sidecar);
    var target = folder.resolve("for Bram");
    var outcome = deliver(target, options(MetadataMode.EMBED));
    assertThat(text(target.resolve("data/KVO_001_F_0001.xmp")))
        .contains("by hand")
        .contains("crs:Exposure=\"+0.50\"")
        .contains("xmp:Rating=\"4\"")
        .contains("KVO_001_F_0001_v01");
    assertThat(remarks(outcome))
        .containsExactly(
            "KVO_001_F_0001.xmp: 1 file says something else of Description, which stays as it was"
                + " written");
    assertThat(sidecar).hasContent(theirs);
  }

  @Test
  void aSidecarThatCannotBeMergedGoesAsItIsAndIsTold() throws Exception {
    var bomb = "<!DOCTYPE x [<!ENTITY a \"aaaa\">]><x:xmpmeta xmlns:x=\"adobe:ns:meta/\"/>";
    Files.writeString(frame("xmp"), bomb);
    aged(frame("xmp"));
    var target = folder.resolve("for Bram");
    job.rate(List.of(frameOf("KVO_001_F_0001")), 5, "Ines");
    var outcome = deliver(target, options(MetadataMode.SIDECAR));
    assertThat(outcome).isInstanceOf(Delivery.Delivered.class);
    assertThat(target.resolve("data/KVO_001_F_0001.xmp")).hasContent(bomb);
    assertThat(remarks(outcome))
        .anyMatch(
            line ->
                line.equals(
                    "KVO_001_F_0001.xmp: 1 sidecar is in the package as it was, without the job's"
                        + " data: its XMP brings a document type along, which none needs"));
    assertThat(OpenPackage.check(target.toRealPath()).orElseThrow().whole()).isTrue();
  }

  private FrameId frameOf(String name) throws Exception {
    return job.scan().frames().stream()
        .filter(frame -> frame.stem().endsWith(name))
        .findFirst()
        .orElseThrow()
        .id();
  }

  @Test
  void aCopyThatTakesNoPacketStaysAsItIsAndIsTold() throws Exception {
    var jpeg = frame("JPG");
    Files.write(jpeg, new byte[] {1, 2, 3}, StandardOpenOption.APPEND);
    aged(jpeg);
    var target = folder.resolve("for Bram");
    var outcome = deliver(target, options(MetadataMode.EMBED));
    assertThat(Files.readAllBytes(target.resolve("data/KVO_001_F_0001.JPG")))
        .isEqualTo(Files.readAllBytes(jpeg));
    assertThat(remarks(outcome))
        .containsExactly(
            "KVO_001_F_0001.JPG: 1 copy is as the frame is, and the job's data are in its sidecar"
                + " only: it has data behind its picture, which would not be found again");
    assertThat(((Delivery.Delivered) outcome).described()).isEqualTo(new Delivery.Described(3, 5));
  }

  @Test
  void theSameHandOffAgainIsThereAlreadyAndAnotherIsRefused() throws Exception {
    var target = delivered(options(MetadataMode.EMBED, "studio.credit", "Nova"));
    var again = deliver(target, options(MetadataMode.EMBED, "studio.credit", "Nova"));
    assertThat(again).isInstanceOf(Delivery.Delivered.class);
    assertThat(remarks(again)).singleElement().matches(line -> line.contains("was there already"));
    assertThat(deliver(target, options(MetadataMode.SIDECAR, "studio.credit", "Nova")))
        .isInstanceOf(Delivery.Refused.class);
    assertThat(deliver(target, options(MetadataMode.EMBED, "studio.credit", "Other")))
        .isInstanceOf(Delivery.Refused.class);
    assertThat(deliver(target, MetadataOptions.NONE)).isInstanceOf(Delivery.Refused.class);
  }

  @Test
  void aNoticeWithAFieldThatTheConventionDoesNotHaveIsRefusedBeforeAnythingIsWritten()
      throws Exception {
    var target = folder.resolve("for Bram");
    assertThat(deliver(target, options(MetadataMode.SIDECAR, "studio.copyright", "{flavour}")))
        .asInstanceOf(type(Delivery.Refused.class))
        .satisfies(
            refused ->
                assertThat(refused.problem().what()).contains("{flavour}").contains("convention"));
    assertThat(target).doesNotExist();
    assertThat(HandOff.nextNumber(job)).isEqualTo(1);
  }

  @Test
  void withoutMetadataThePackageIsTheFramesAlone() throws Exception {
    var before = frames().values().stream().map(List::getFirst).toList();
    var target = delivered(MetadataOptions.NONE);
    var copied = Scene.contents(target.resolve("data"));
    assertThat(copied).hasSize(9);
    assertThat(before).containsAll(copied.values());
    assertThat(HandOffRecords.of(job).read().usable().get(1).metadata()).isEmpty();
  }

  @Test
  void theRoomForThemIsAskedForBefore() throws Exception {
    var plan = Scene.handOff(job).rated(4);
    long largest =
        plan.selects().stream()
            .flatMap(select -> select.frame().files().stream())
            .mapToLong(file -> file.size())
            .max()
            .orElseThrow();
    assertThat(Target.needed(plan, MetadataMode.NONE)).isZero();
    assertThat(Target.needed(plan, MetadataMode.SIDECAR)).isEqualTo(3 * 16384);
    assertThat(Target.needed(plan, MetadataMode.EMBED)).isEqualTo(3 * 16384 + 9 * 65536 + largest);
  }

  /** Hands the one frame of a small job off on a recorded disk. */
  private Delivery recorded(Recording recording, Path jobFolder) throws Exception {
    job = Scene.open(recording.root().resolve(jobFolder.getFileName().toString()));
    return deliver(recording.root().resolve("out/package"), options(MetadataMode.EMBED));
  }

  @Test
  void everyFileIsFlushedAfterItsLastChangeAndBeforeThePackageTakesItsPlace() throws Exception {
    var small = Files.createDirectory(folder.resolve("small"));
    var jobFolder = Scene.ofOneFile(small).job().folder();
    Files.createDirectory(small.resolve("out"));
    var recording = Recording.on(small);
    assertThat(recorded(recording, jobFolder)).isInstanceOf(Delivery.Delivered.class);
    var ops = recording.ops();
    int placed = -1;
    for (int i = 0; i < ops.size(); i++) {
      if (ops.get(i) instanceof DiskOp.Move move && move.to().equals("out/package")) {
        placed = i;
      }
    }
    var before = ops.subList(0, placed);
    var written =
        before.stream()
            .filter(op -> op instanceof DiskOp.Write && op.path().contains("/package/"))
            .map(DiskOp::path)
            .distinct()
            .toList();
    assertThat(written).anyMatch(path -> path.endsWith("data/KVO_001_F_0001.xmp"));
    assertThat(written).anyMatch(path -> path.endsWith("rewritten.part"));
    for (var path : written) {
      int last = -1;
      for (int i = 0; i < before.size(); i++) {
        last =
            before.get(i) instanceof DiskOp.Write && before.get(i).path().equals(path) ? i : last;
      }
      assertThat(before.lastIndexOf(new DiskOp.Force(path, false))).as(path).isGreaterThan(last);
    }
    var data =
        written.getFirst().substring(0, written.getFirst().indexOf("/package/")) + "/package/data";
    int moved = -1;
    for (int i = 0; i < before.size(); i++) {
      moved = before.get(i) instanceof DiskOp.Move move && move.to().startsWith(data) ? i : moved;
    }
    assertThat(moved).isPositive();
    assertThat(before.lastIndexOf(new DiskOp.Force(data, true))).isGreaterThan(moved);
  }

  @Test
  void aCopyThatIsNotWhatWasWrittenIntoItLeavesNoPackage() throws Exception {
    var small = Files.createDirectory(folder.resolve("small"));
    var jobFolder = Scene.ofOneFile(small).job().folder();
    Files.createDirectory(small.resolve("out"));
    for (var name : List.of("rewritten.part", "data/KVO_001_F_0001.xmp")) {
      if (name.endsWith(".xmp")) {
        withoutSidecar(jobFolder);
      }
      var recording = Recording.on(small);
      recording.fail(
          (op, _) -> {
            if (op instanceof DiskOp.Force && op.path().endsWith(name)) {
              flipped(small.resolve(op.path()));
            }
            return Optional.empty();
          });
      assertThat(recorded(recording, jobFolder))
          .asInstanceOf(type(Delivery.Failed.class))
          .satisfies(
              failed -> assertThat(failed.problem().what()).contains("is not what was read again"));
      assertThat(small.resolve("out")).isEmptyDirectory();
    }
  }

  /** So that it gets one. */
  private static void withoutSidecar(Path jobFolder) throws Exception {
    var its = Scene.open(jobFolder);
    for (var frame : its.scan().frames()) {
      its.rate(frame.knownAs(), 5, "Ines");
      for (var file : frame.files()) {
        if (file.role() == FileRole.SIDECAR) {
          Files.delete(file.path());
        }
      }
    }
  }

  private static void flipped(Path file) {
    try {
      var bytes = Files.readAllBytes(file);
      bytes[bytes.length / 2] ^= 1;
      Files.write(file, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  @Tag("slow")
  void killedAtAnyChangeThePackageIsThereWholeOrNotAtAllAndTheNextRunMakesIt() throws Exception {
    var small = Files.createDirectory(folder.resolve("small"));
    var jobFolder = Scene.ofOneFile(small).job().folder();
    Files.createDirectory(small.resolve("out"));
    int changes = 0;
    for (int n = 0; n <= changes; n++) {
      var tried = Files.createDirectory(folder.resolve("tried-" + n));
      Scene.copied(small, tried.resolve("job"));
      var place = tried.resolve("job");
      var recording = Recording.on(place);
      int kill = n;
      if (n > 0) {
        recording.killWithin(kill - 1);
      }
      var thrown = catchThrowable(() -> recorded(recording, jobFolder));
      if (n == 0) {
        changes = recording.ops().size();
        assertThat(changes).isGreaterThan(30);
        continue;
      }
      assertThat(thrown).isInstanceOf(Killed.class);
      var target = place.resolve("out/package");
      if (Files.exists(target)) {
        assertThat(OpenPackage.check(target.toRealPath()).orElseThrow().whole())
            .as("killed at " + n)
            .isTrue();
      }
      job = Scene.open(place.resolve(jobFolder.getFileName().toString()));
      assertThat(deliver(target, options(MetadataMode.EMBED)))
          .as("after a kill at " + n)
          .isInstanceOf(Delivery.Delivered.class);
      assertThat(text(target.resolve("data/KVO_001_F_0001.JPG"))).contains("KVO_001_F_0001_v01");
      assertThat(Scene.drafts(place.resolve("out"))).isEmpty();
    }
  }
}
