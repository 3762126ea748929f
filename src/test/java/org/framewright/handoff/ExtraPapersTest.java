package org.framewright.handoff;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.InstanceOfAssertFactories.type;
import static org.framewright.AssertThat.assertThat;

import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.CancellationException;
import org.framewright.base.Progress;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Recording;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Papers that others make and that lie in a package, beside its index. */
@Tag("slow")
class ExtraPapersTest {
  @TempDir private Path folder;
  private Job job;
  private Path target;

  @BeforeEach
  void aJob() throws Exception {
    var scene = Scene.rated(Files.createDirectory(folder.resolve("shoot")));
    scene.rename();
    job = scene.job();
    target = folder.resolve("out/package");
  }

  /** How a paper is made. */
  private interface Making {
    void write(HandOffPlan plan, OutputStream out, Progress progress) throws IOException;
  }

  private record Made(String name, Making making) implements ExtraPaper {
    @Override
    public String said() {
      return name + " names each of them.";
    }

    @Override
    public long room(int selects) {
      return 1000L * selects;
    }

    @Override
    public int steps(HandOffPlan plan) {
      return plan.selects().size();
    }

    @Override
    public void write(HandOffPlan plan, OutputStream out, Progress progress) throws IOException {
      making.write(plan, out, progress);
    }
  }

  /** One that names the selects. */
  static ExtraPaper names() {
    return new Made(
        "list.csv",
        (plan, out, progress) -> {
          int done = 0;
          for (var select : plan.selects()) {
            out.write((select.name() + "\n").getBytes(UTF_8));
            progress.step(++done, plan.selects().size());
          }
        });
  }

  private List<Delivery> deliver(Progress progress, long most, ExtraPaper... papers)
      throws Exception {
    var handOff = Scene.handOff(job).enclosing(List.of(papers));
    return handOff.deliver(handOff.rated(4).parts(most), target, MetadataOptions.NONE, progress);
  }

  private Delivery deliver(ExtraPaper... papers) throws Exception {
    return deliver(Progress.NONE, Long.MAX_VALUE, papers).getFirst();
  }

  @Test
  void aPaperLiesBesideTheIndexWhereTheTagManifestCoversIt() throws Exception {
    assertThat(deliver(names())).isInstanceOf(Delivery.Delivered.class);
    assertThat(target.resolve("list.csv"))
        .hasContent("KVO_001_F_0001\nKVO_001_F_0004\nKVO_002_B_0002\n");
    assertThat(target.resolve("README.txt")).content().contains("\nlist.csv names each of them.");
    assertThat(target.resolve("tagmanifest-sha256.txt")).content().contains("  list.csv\n");
    assertThat(target.resolve("manifest-sha256.txt")).content().doesNotContain("list.csv");
    assertThat(OpenPackage.check(target).orElseThrow()).matches(PackageCheck::whole);
    Files.writeString(target.resolve("list.csv"), "another");
    assertThat(OpenPackage.check(target).orElseThrow().different()).containsExactly("list.csv");
  }

  /** The Library of Congress' own implementation of RFC 8493. */
  @Test
  void thePackageStaysABagForOthers() throws Exception {
    deliver(names());
    var bag = new BagReader().read(target);
    try (var verifier = new BagVerifier()) {
      verifier.isValid(bag, false);
      verifier.isComplete(bag, false);
    }
  }

  @Test
  void aPaperThatCameBackIsNoPicture() throws Exception {
    deliver(names());
    var returns = Returns.of(job, target, OptionalInt.empty());
    assertThat(returns.extras()).isEmpty();
    assertThat(returns.answers()).allMatch(one -> one.state() == Returns.State.UNTOUCHED);
  }

  @Test
  void eachOfSeveralPackagesHasItsOwnAndTheStepsAreCountedToTheEnd() throws Exception {
    var steps = new ArrayList<String>();
    var ended = deliver((done, total) -> steps.add(done + "/" + total), 1, names());
    assertThat(ended).hasSize(3).allMatch(Delivery.Delivered.class::isInstance);
    assertThat(folder.resolve("out/package-2/list.csv")).hasContent("KVO_001_F_0004\n");
    int total = Scene.handOff(job).rated(4).files() + 3;
    assertThat(steps).hasSize(total).first().isEqualTo("1/" + total);
    assertThat(steps).last().isEqualTo(total + "/" + total);
    assertThat(steps).doesNotHaveDuplicates();
  }

  @Test
  void aPackageThatLacksAPaperIsNotTheOneThatIsAskedFor() throws Exception {
    deliver();
    assertThat(deliver(names()))
        .asInstanceOf(type(Delivery.Refused.class))
        .satisfies(refused -> assertThat(refused.problem().what()).contains("there already"));
  }

  @Test
  void oneThatHasItIsDoneAlready() throws Exception {
    deliver(names());
    assertThat(deliver(names()))
        .asInstanceOf(type(Delivery.Delivered.class))
        .satisfies(done -> assertThat(done.number()).isEqualTo(1));
  }

  @Test
  void aPaperThatCannotBeMadeLeavesNothing() throws Exception {
    var failing =
        new Made(
            "list.csv",
            (_, out, _) -> {
              out.write(new byte[100_000]);
              throw new IOException("No space left on device");
            });
    assertThat(deliver(failing))
        .asInstanceOf(type(Delivery.Failed.class))
        .satisfies(failed -> assertThat(failed.problem().what()).contains("the disk is full"));
    assertThat(folder.resolve("out")).doesNotExist();
    assertThat(HandOffRecords.of(job).read().nextNumber()).isEqualTo(1);
  }

  @Test
  void oneThatIsStoppedLeavesNothingEither() throws Exception {
    var stopped =
        new Made(
            "list.csv",
            (_, _, _) -> {
              throw new CancellationException();
            });
    assertThat(deliver(stopped)).isInstanceOf(Delivery.Cancelled.class);
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void aPaperThatIsNotWhatWasWrittenIsFoundByReadingItAgain() throws Exception {
    var recording = Recording.on(folder.toRealPath());
    job = Scene.open(recording.root().resolve("shoot").resolve(job.name()));
    target = recording.root().resolve("out/package");
    recording.fail(
        (op, _) -> {
          if (op instanceof DiskOp.Force && op.path().endsWith("list.csv")) {
            try {
              Files.writeString(folder.resolve(op.path()), "another");
            } catch (IOException e) {
              throw new java.io.UncheckedIOException(e);
            }
          }
          return java.util.Optional.empty();
        });
    assertThat(deliver(names()))
        .asInstanceOf(type(Delivery.Failed.class))
        .satisfies(failed -> assertThat(failed.problem().what()).contains("list.csv"));
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void theRoomOfPapersIsCounted() throws Exception {
    var plain = Scene.handOff(job);
    var plan = plain.rated(4);
    var parts = plan.parts(1);
    var with = plain.enclosing(List.of(names()));
    assertThat(
            with.room(parts, target, MetadataMode.NONE).needed()
                - plain.room(parts, target, MetadataMode.NONE).needed())
        .isEqualTo(3000);
  }

  private record Vast() implements ExtraPaper {
    @Override
    public String name() {
      return "vast";
    }

    @Override
    public String said() {
      return "vast";
    }

    @Override
    public long room(int selects) {
      return Long.MAX_VALUE / 2;
    }

    @Override
    public int steps(HandOffPlan plan) {
      return 0;
    }

    @Override
    public void write(HandOffPlan plan, OutputStream out, Progress progress) {}
  }

  @Test
  void whereTheDiskHasNoRoomForThePapersNothingIsBegun() throws Exception {
    for (long most : List.of(1L, Long.MAX_VALUE)) {
      assertThat(deliver(Progress.NONE, most, new Vast()).getFirst())
          .asInstanceOf(type(Delivery.Refused.class))
          .satisfies(refused -> assertThat(refused.problem().what()).contains("not enough room"));
      assertThat(folder.resolve("out")).doesNotExist();
    }
  }
}
