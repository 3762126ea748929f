package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.disk.SymbolicLinks;
import org.framewright.frames.Frame;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ratings that were given in the job, in the sidecars of their frames. */
class RatingSidecarsTest {
  @TempDir private Path folder;
  private Job job;

  @BeforeEach
  void aJobWithOneFrameOfTwoFiles() throws Exception {
    var scene = Scene.rated(folder);
    scene.rename();
    job = scene.job();
  }

  private Frame frame(int index) throws Exception {
    return job.inOrder(job.scan()).get(index);
  }

  private Path sidecar(int index) throws Exception {
    var picture = frame(index).primary().path().toString();
    return Path.of(picture.substring(0, picture.lastIndexOf('.')) + ".xmp");
  }

  private void rate(int index, int rating) throws Exception {
    job.rate(List.of(frame(index).id()), rating, "Ines");
  }

  private RatingSidecars.Outcome write() throws Exception {
    return RatingSidecars.write(RatingSidecars.plan(job, job.scan()), Progress.NONE);
  }

  private Map<String, String> pictures() throws Exception {
    var contents = new TreeMap<String, String>();
    Scene.contents(job.framesFolder())
        .forEach(
            (name, content) -> {
              if (!name.endsWith(".xmp")) {
                contents.put(name, content);
              }
            });
    return contents;
  }

  private static Path age(Path file) throws Exception {
    return Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(Duration.ofHours(1))));
  }

  private OptionalInt inFiles(int index) throws Exception {
    var path = sidecar(index);
    if (Files.exists(path)) {
      age(path);
    }
    return frame(index).capture().rating();
  }

  @Test
  void nothingIsPlannedWhereTheFilesSayTheSameOrNobodyRatedHere() throws Exception {
    assertThat(RatingSidecars.plan(job, job.scan())).isEmpty();
    int there = frame(0).capture().rating().orElseThrow();
    rate(0, there);
    rate(1, 0);
    assertThat(frame(1).capture().rating().orElse(0)).isZero();
    assertThat(RatingSidecars.plan(job, job.scan())).isEmpty();
  }

  @Test
  void aFrameWithoutASidecarGetsOneNamedAsItsPicture() throws Exception {
    Files.deleteIfExists(sidecar(1));
    rate(1, 3);
    var before = pictures();
    var outcome = write();
    assertThat(outcome.left()).isEmpty();
    assertThat(outcome.written()).containsExactly(new RatingSidecars.Planned(sidecar(1), 3, true));
    assertThat(inFiles(1)).hasValue(3);
    assertThat(pictures()).isEqualTo(before);
    assertThat(RatingSidecars.plan(job, job.scan())).isEmpty();
  }

  @Test
  void ofASidecarThatIsThereOnlyTheRatingChanges() throws Exception {
    var packet =
        """
        <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
         <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
          <rdf:Description rdf:about="" xmlns:xap="http://ns.adobe.com/xap/1.0/"
            xmlns:own="http://own.example/" xap:Rating="1" xap:Label="später" own:crop="0.5">
           <own:note><![CDATA[keep & see]]></own:note>
          </rdf:Description>
         </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="w"?>\
        """;
    age(Files.writeString(sidecar(0), packet));
    rate(0, 2);
    var before = pictures();
    assertThat(write().written()).containsExactly(new RatingSidecars.Planned(sidecar(0), 2, false));
    assertThat(inFiles(0)).hasValue(2);
    assertThat(Files.readString(sidecar(0)))
        .contains("xap:Label=\"später\"", "own:crop=\"0.5\"", "<![CDATA[keep & see]]>")
        .doesNotContain("Rating=\"1\"");
    assertThat(pictures()).isEqualTo(before);
  }

  /** An explicit 0 in a sidecar is a rating that somebody took back. */
  @Test
  void aRatingThatWasTakenBackHereIsTakenBackThere() throws Exception {
    assertThat(frame(0).capture().rating().orElse(0)).isPositive();
    rate(0, 0);
    assertThat(write().left()).isEmpty();
    assertThat(inFiles(0).orElse(0)).isZero();
  }

  @Test
  void aSidecarThatIsNoneAndALinkStayAsTheyAre() throws Exception {
    age(Files.writeString(sidecar(0), "no packet"));
    rate(0, 2);
    var other = Files.writeString(folder.resolve("other"), "theirs");
    Files.deleteIfExists(sidecar(1));
    SymbolicLinks.make(sidecar(1), other);
    rate(1, 2);
    var outcome = write();
    assertThat(outcome.written()).isEmpty();
    assertThat(outcome.left()).hasSize(2);
    assertThat(outcome.left().getFirst().what())
        .isEqualTo("the rating is not in its sidecar: it has no XMP that can be read");
    assertThat(sidecar(0)).hasContent("no packet");
    assertThat(other).hasContent("theirs");
  }

  @Test
  void aSidecarThatAppearedOrWentMeanwhileIsToldAndLeft() throws Exception {
    Files.deleteIfExists(sidecar(1));
    rate(1, 3);
    var planned = RatingSidecars.plan(job, job.scan());
    Files.writeString(sidecar(1), "of another program");
    var gone = List.of(new RatingSidecars.Planned(folder.resolve("gone.xmp"), 3, false));
    for (var plan : List.of(planned, gone)) {
      assertThat(RatingSidecars.write(plan, Progress.NONE).left())
          .extracting(Problem::what)
          .containsExactly("another program changed this sidecar meanwhile");
    }
    assertThat(sidecar(1)).hasContent("of another program");
    assertThat(folder.resolve("gone.xmp")).doesNotExist();
  }

  @Test
  void aStopLeavesTheRestAsItWas() throws Exception {
    rate(0, 2);
    rate(1, 2);
    var planned = RatingSidecars.plan(job, job.scan());
    var outcome = RatingSidecars.write(planned, Progress.until(() -> true));
    assertThat(outcome.cancelled()).isTrue();
    assertThat(outcome.written()).isEmpty();
    assertThat(RatingSidecars.plan(job, job.scan())).isEqualTo(planned);
  }

  @Test
  void whatARetoucherGetsSaysTheRatingThatWasGivenHere() throws Exception {
    rate(0, 3);
    var handOff = Scene.handOff(job);
    var target = folder.resolve("for Bram");
    assertThat(
            handOff.deliver(
                handOff.rated(3),
                target,
                new MetadataOptions(MetadataMode.SIDECAR, false, Studio.NOTHING),
                Progress.NONE))
        .isInstanceOf(Delivery.Delivered.class);
    var name = handOff.rated(3).selects().getFirst().name();
    assertThat(target.resolve("data").resolve(name + ".xmp"))
        .content()
        .contains("<xmp:Rating>3</xmp:Rating>");
  }
}
