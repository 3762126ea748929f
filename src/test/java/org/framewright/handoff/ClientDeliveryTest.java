package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import javax.imageio.ImageIO;
import org.framewright.Templates;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.handoff.spec.Rule;
import org.framewright.handoff.spec.SpecFinding;
import org.framewright.handoff.spec.Specification;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.job.Job;
import org.framewright.naming.Convention;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What came back of three selects, against what the client asks, and on to the client. */
class ClientDeliveryTest {
  private static final String ONE = "KVO_001_F_0001";
  private static final String TWO = "KVO_001_F_0004";
  private static final String THREE = "KVO_002_B_0002";

  @TempDir private Path folder;
  private Job job;
  private Path back;

  @BeforeEach
  void aHandOffOfThreeSelects() throws Exception {
    job = Scene.rated(folder, Templates.fashionDays()).job();
    assertThat(Scene.deliver(job, folder.resolve("out"))).isInstanceOf(Delivery.Delivered.class);
    back = Files.createDirectory(folder.resolve("back"));
  }

  /** Written by the JDK. */
  private Path came(String name, int width, int height, int type) throws Exception {
    var file = back.resolve(name);
    var format = name.endsWith(".tif") ? "tiff" : name.substring(name.lastIndexOf('.') + 1);
    var out = new ByteArrayOutputStream();
    assertThat(
            ImageIO.write(
                new BufferedImage(width, height, type), format.replace("jpg", "jpeg"), out))
        .isTrue();
    return Files.write(file, out.toByteArray());
  }

  private Path came(String name) throws Exception {
    return came(name, 80, 100, BufferedImage.TYPE_INT_RGB);
  }

  private void asks(String yaml) throws Exception {
    Files.writeString(job.folder().resolve(Specification.FILE), "specification: Shop\n" + yaml);
  }

  private Returns returns() throws Exception {
    return Returns.of(job, back, OptionalInt.empty());
  }

  private ClientDelivery delivery() throws Exception {
    var scan = job.scan();
    return ClientDelivery.of(job, scan, job.tally(scan), returns());
  }

  private static HandOffPlan plan(ClientDelivery delivery) throws Exception {
    return delivery.plan(List.of(), false, false);
  }

  private Delivery deliver(ClientDelivery delivery, HandOffPlan plan, String to) {
    return delivery
        .deliver(List.of(plan), folder.resolve(to), MetadataOptions.NONE, Progress.NONE)
        .getFirst();
  }

  private Returns.Answer answer(String select) throws Exception {
    return returns().answers().stream()
        .filter(answer -> answer.select().equals(select))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void anAnswerNamesTheFrameAndWhatIsNotAsAsked() throws Exception {
    asks("all: {bits: 8, long-side: 100}\nviews: {B: {long-side: 90}}\n");
    came(ONE + "_v01.png", 80, 100, BufferedImage.TYPE_USHORT_GRAY);
    came(ONE + "_v02.png", 100, 80, BufferedImage.TYPE_INT_RGB);
    came(TWO + "_v01.png", 80, 100, BufferedImage.TYPE_USHORT_GRAY);
    came(THREE + "_v01.png");
    assertThat(answer(ONE).findings()).isEmpty();
    assertThat(answer(ONE).frame())
        .containsExactly(job.framesFolder().resolve("20261123_KVO_001_F_0001.JPG"));
    assertThat(answer(TWO).findings())
        .containsExactly(returns().findings().getFirst())
        .extracting(SpecFinding::file, SpecFinding::rule)
        .containsExactly(org.assertj.core.groups.Tuple.tuple(TWO + "_v01.png", Rule.BITS));
    assertThat(answer(THREE).findings())
        .extracting(SpecFinding::rule)
        .containsExactly(Rule.LONG_SIDE);
    assertThat(HandOffDescription.returned(returns()))
        .contains("1 of 3 are as “Shop” asks")
        .contains("  " + TWO + "_v01.png: it has 16 bits a channel; asked: 8")
        .contains("    Export it with 8 bits a channel.");
    assertThat(returns().complete()).isTrue();
  }

  @Test
  void theFrameIsFoundAlsoAfterAnotherRename() throws Exception {
    var before = job.framesFolder().resolve("20261123_KVO_001_F_0001.JPG");
    var renamer = org.framewright.renaming.Renamer.in(job.folder());
    var to = before.resolveSibling("other name.JPG");
    renamer.apply(
        renamer.plan(
            List.of(
                new org.framewright.renaming.RenameRequest(
                    job.folder().relativize(before), job.folder().relativize(to), "1"))),
        Progress.NONE);
    assertThat(answer(ONE).frame()).containsExactly(to);
    Files.delete(to);
    assertThat(answer(ONE).frame()).isEmpty();
  }

  @Test
  void aRecordLeadsToNoFileOutsideOfTheFramesFolder() throws Exception {
    var record = job.folder().resolve(".framewright/handoffs/0001.json");
    Files.writeString(folder.resolve("secret.JPG"), "secret");
    Files.writeString(
        record,
        Files.readString(record)
            .replace("20261123_KVO_001_F_0001", "../../secret")
            .replace("20261123_KVO_001_F_0004", folder.resolve("secret").toString()));
    assertThat(returns().answers())
        .filteredOn(answer -> answer.setup().equals("001"))
        .allSatisfy(answer -> assertThat(answer.frame()).isEmpty());
  }

  @Test
  void aFaultySpecificationOfTheJobIsToldAndNothingIsJudged() throws Exception {
    asks("all: {bits: nine}\n");
    came(ONE + "_v01.jpg");
    assertThat(returns().problems())
        .extracting(Problem::where)
        .containsExactly(job.folder().resolve(Specification.FILE) + ", line 2, column 13");
    assertThat(returns().findings()).isEmpty();
    asks("views: {X: {bits: 8}}\n");
    assertThat(returns().problems()).hasSize(1);
    assertThat(returns().complete()).isFalse();
  }

  @Test
  void theNewestVersionsGoToTheClientWholeAndAsTheyCame() throws Exception {
    came(ONE + "_v01.jpg");
    var newest = came(ONE + "_v02.jpg");
    var print = came(ONE + "_v02.tif");
    came(TWO + "_v01.jpg");
    var delivery = delivery();
    var plan = plan(delivery);
    assertThat(plan.selects()).extracting(Select::name).containsExactly(ONE + "_v02", TWO + "_v01");
    assertThat(plan.withheld()).isEmpty();
    assertThat(HandOffDescription.plannedForClient(plan))
        .contains(ONE + "_v02.tif  ->  " + ONE + "_v02.tif", "2 pictures in 3 files");
    var done = (Delivery.Delivered) deliver(delivery, plan, "client");
    assertThat(done.number()).isEqualTo(2);
    var data = done.folder().resolve("data");
    assertThat(data.resolve(ONE + "_v02.jpg")).hasSameBinaryContentAs(newest);
    assertThat(data.resolve(ONE + "_v02.tif")).hasSameBinaryContentAs(print);
    assertThat(data.toFile().list()).hasSize(3);
    assertThat(OpenPackage.check(done.folder()).orElseThrow().whole()).isTrue();
    assertThat(Files.readString(done.folder().resolve("README.txt")))
        .contains("delivery 2")
        .contains("2 pictures in 3 files")
        .contains("sha256sum -c SHA256SUMS")
        .doesNotContain("send each one back");
    assertThat(Files.readString(done.folder().resolve("index.csv")))
        .contains(
            "001,F,"
                + ONE
                + ","
                + ONE
                + "_v02.jpg,"
                + ONE
                + "_v02.jpg,jpeg,80,100,8,rgb,,"
                + Files.size(newest)
                + ","
                + Checksum.of(newest)
                + ",,");
    assertThat(Scene.drafts(folder)).isEmpty();
    // What went to the client is nothing that may come back.
    assertThat(returns().answers()).hasSize(3);
    assertThat(Scene.handOff(job).within(new Extent(List.of(), Extent.Pictures.ALL, true)).rated(4))
        .satisfies(again -> assertThat(again.selects()).isEmpty());
  }

  @Test
  void whatCameBackAsItWasOrWithoutAVersionIsToldAndStays() throws Exception {
    var select = folder.resolve("out/data").resolve(ONE + ".JPG");
    Files.copy(select, back.resolve(ONE + ".JPG"));
    came(TWO + ".jpg");
    assertThat(plan(delivery()).withheld())
        .extracting(withheld -> withheld.problem().sentence())
        .containsExactly(
            ONE + ": it came back as it was handed off",
            TWO + ": it came back under its own name, without a version");
  }

  @Test
  void whatIsNotAsAskedIsLeftOutAndToldUnlessItIsAskedFor() throws Exception {
    asks("all: {kinds: jpeg}\n");
    came(ONE + "_v01.png");
    came(TWO + "_v01.jpg");
    came(THREE + "_v01.jpg");
    var delivery = delivery();
    var plan = plan(delivery);
    assertThat(plan.selects()).hasSize(2);
    assertThat(plan.withheld())
        .extracting(withheld -> withheld.problem().sentence())
        .containsExactly(ONE + ": " + ONE + "_v01.png: it is of the kind png; asked: jpeg");
    var all = delivery.plan(List.of(), false, true);
    assertThat(all.selects()).hasSize(3);
    assertThat(all.withheld()).isEmpty();
    var done = (Delivery.Delivered) deliver(delivery, all, "client");
    assertThat(Files.readString(done.folder().resolve("index.csv")))
        .contains("it is of the kind png; asked: jpeg");
  }

  @Test
  void aSecondDeliveryTellsWhatIsNewByContent() throws Exception {
    came(ONE + "_v01.jpg");
    came(TWO + "_v01.jpg");
    var first = delivery();
    deliver(first, plan(first), "client 1");
    came(TWO + "_v01.jpg", 90, 100, BufferedImage.TYPE_INT_RGB);
    came(THREE + "_v01.jpg");
    var second = delivery();
    assertThat(plan(second).before()).isEqualTo(Map.of(ONE + "_v01", 2));
    assertThat(plan(second).selects()).hasSize(3);
    var onlyNew = second.plan(List.of(), true, false);
    assertThat(onlyNew.selects())
        .extracting(Select::name)
        .containsExactly(TWO + "_v01", THREE + "_v01");
    var done = (Delivery.Delivered) deliver(second, plan(second), "client 2");
    assertThat(Files.readString(done.folder().resolve("index.csv"))).contains(",,2\r\n");
    assertThat(Files.readString(done.folder().resolve("README.txt")))
        .contains("2 of them are new; 1 went before, and index.csv says in which delivery.");
    assertThat(second.plan(List.of("002"), false, false).selects())
        .extracting(Select::name)
        .containsExactly(THREE + "_v01");
  }

  @Test
  void theSameDeliveryToTheSamePlaceIsComparedAndWritesNothing() throws Exception {
    came(ONE + "_v01.jpg");
    var delivery = delivery();
    deliver(delivery, plan(delivery), "client");
    var again = delivery();
    var done = (Delivery.Delivered) deliver(again, plan(again), "client");
    assertThat(done.number()).isEqualTo(2);
    assertThat(done.remarks())
        .extracting(Problem::what)
        .containsExactly("this package was there already; it was compared again and is whole");
    // The retoucher's package is none of these.
    assertThat(Scene.deliver(job, folder.resolve("client"))).isInstanceOf(Delivery.Refused.class);
  }

  @Test
  void nothingIsWrittenWhereNothingCanGoOrIntoTheFolderThatCameBack() throws Exception {
    var none = delivery();
    assertThat(deliver(none, plan(none), "client"))
        .isInstanceOfSatisfying(
            Delivery.Refused.class,
            refused ->
                assertThat(refused.problem().what())
                    .isEqualTo("nothing that came back can be delivered"));
    came(ONE + "_v01.jpg");
    var delivery = delivery();
    assertThat(deliver(delivery, plan(delivery), "back/client"))
        .isInstanceOfSatisfying(
            Delivery.Refused.class,
            refused -> assertThat(refused.problem().what()).contains("the folder that came back"));
    assertThat(back.toFile().list()).hasSize(1);
  }

  @Test
  void whatTheListThatCameWithItSaysIsDamagedStays() throws Exception {
    var file = came(ONE + "_v01.jpg");
    Files.writeString(
        back.resolve("bagit.txt"), "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    var data = Files.createDirectory(back.resolve("data"));
    Files.move(file, data.resolve(file.getFileName()));
    Files.writeString(
        back.resolve("manifest-sha256.txt"), "0".repeat(64) + "  data/" + ONE + "_v01.jpg\n");
    assertThat(plan(delivery()).withheld())
        .extracting(withheld -> withheld.problem().what())
        .contains(
            "data/" + ONE + "_v01.jpg is not what the list of checksums says that came with it");
    assertThat(plan(delivery()).selects()).isEmpty();
  }

  @Test
  void aFileThatChangesAfterItWasReadFailsAndLeavesNothing() throws Exception {
    var file = came(ONE + "_v01.jpg");
    var delivery = delivery();
    var plan = plan(delivery);
    Files.write(file, came(TWO + "_v01.jpg", 5, 5, 1).toString().getBytes(StandardCharsets.UTF_8));
    assertThat(deliver(delivery, plan, "client")).isInstanceOf(Delivery.Failed.class);
    assertThat(folder.resolve("client")).doesNotExist();
    assertThat(Scene.drafts(folder)).isEmpty();
  }

  @Test
  void theSidecarSaysWhatTheFrameIsWhereItIsAskedFor() throws Exception {
    came(ONE + "_v01.jpg");
    var delivery = delivery();
    var options = new MetadataOptions(MetadataMode.SIDECAR, false, Studio.NOTHING);
    var done =
        (Delivery.Delivered)
            delivery
                .deliver(List.of(plan(delivery)), folder.resolve("client"), options, Progress.NONE)
                .getFirst();
    assertThat(done.described().sidecars()).isEqualTo(1);
    assertThat(Files.readString(done.folder().resolve("data/" + ONE + "_v01.xmp")))
        .contains("<photoshop:DateCreated>2026-11-23T")
        .contains("<xmpMM:PreservedFileName>IMG_9998.JPG<")
        .doesNotContain("<photoshop:Instructions>");
  }

  /** The convention of product pictures, to which the number of a frame means nothing. */
  private static Convention delivered(String pattern) throws Exception {
    var yaml =
        Files.readString(Path.of("templates/fashion-days.yaml"))
            .replace("  retouched: \"", "  delivery: " + pattern + "\n  retouched: \"");
    return ((Convention.Parsed.Sound) Convention.parse(yaml, "delivered.yaml")).convention();
  }

  @Test
  void theConventionsNameForDeliveriesIsTheNameThatTheClientGets() throws Exception {
    var other = Files.createDirectory(folder.resolve("other"));
    job = Scene.rated(other, delivered("\"{client}-{setup}-{take}\"")).job();
    Scene.deliver(job, other.resolve("out"));
    came(ONE + "_v03.jpg");
    var plan = plan(delivery());
    assertThat(plan.selects()).extracting(Select::name).containsExactly("KVO-001-0001");
    assertThat(plan.selects().getFirst().files()).containsExactly("KVO-001-0001.jpg");
    asks("name: select\nall: {bits: 8}\n");
    assertThat(plan(delivery()).selects()).extracting(Select::name).containsExactly(ONE);
  }

  @Test
  void twoPicturesThatWouldHaveOneNameAreTold() throws Exception {
    var other = Files.createDirectory(folder.resolve("other"));
    job = Scene.rated(other, delivered("\"{client}-{setup}\"")).job();
    Scene.deliver(job, other.resolve("out"));
    came(ONE + "_v01.jpg");
    came(TWO + "_v01.jpg");
    var plan = plan(delivery());
    assertThat(plan.selects()).hasSize(1);
    assertThat(plan.withheld())
        .extracting(withheld -> withheld.problem().what())
        .anySatisfy(why -> assertThat(why).contains("it would have the same name as"));
  }
}
