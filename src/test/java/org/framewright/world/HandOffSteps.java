package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.framewright.base.Progress;
import org.framewright.handoff.Delivery;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.job.JobException;

/** Packages for the retoucher. */
final class HandOffSteps {
  private final Stage stage;
  private final Map<String, Map<String, String>> packages = new LinkedHashMap<>();
  private int handOffs;

  HandOffSteps(Stage stage) {
    this.stage = stage;
  }

  void handOff(Desk desk) throws IOException, JobException {
    var target = "packages/hand-off-" + ++handOffs;
    var delivery = new Delivery[1];
    var plan = new HandOffPlan[1];
    var wanted = new TreeSet<Integer>();
    var model = stage.model(desk.folder());
    var paths = stage.complete();
    stage
        .places
        .places(model)
        .forEach(
            (id, belongs) -> {
              var read = Names.read(stage.start.template(), paths.get(id).getFirst());
              if (model.chosen().contains(id)
                  && belongs.clear()
                  && belongs.key().isPresent()
                  && read.isPresent()
                  && read.get().key().equals(belongs.key().get())
                  && (stage.start.template() == 2 || read.get().view().equals(belongs.view()))) {
                wanted.add(id);
              }
            });
    var planned = new TreeSet<Integer>();
    var end =
        stage.act(
            desk,
            List.of(),
            false,
            job -> {
              job.refresh();
              var scan = job.scan();
              var byShot = stage.byShot(desk, scan);
              var handOff = HandOff.of(job, scan, job.tally(scan));
              plan[0] = handOff.selects();
              plan[0].withheld().forEach(one -> Stage.told(one.problem()));
              plan[0]
                  .selects()
                  .forEach(
                      select ->
                          byShot.forEach(
                              (id, frame) -> {
                                if (frame.id().equals(select.frame().id())) {
                                  planned.add(id);
                                }
                              }));
              delivery[0] =
                  handOff.deliver(
                      plan[0],
                      desk.disk.root().resolve(target),
                      MetadataOptions.NONE,
                      Progress.NONE);
            });
    if (plan[0] != null) {
      Wrong.unless(
          planned.containsAll(wanted) && model.chosen().containsAll(planned),
          "the selects that go: "
              + planned
              + ", should be "
              + wanted
              + "; withheld: "
              + plan[0].withheld().stream().map(one -> one.problem().sentences()).toList());
    }
    switch (delivery[0]) {
      case Delivery.Delivered done -> {
        Wrong.unlessSame(done.selects(), planned.size(), "selects handed off");
        var files = verify(stage.real(target));
        packages.put(target, stage.contents.of(stage.real(target)));
        var should = new ArrayList<String>();
        planned.forEach(id -> should.addAll(stage.shots.get(id).files()));
        Wrong.unlessSame(files, should.stream().sorted().toList(), "the files of the package");
      }
      case Delivery.Refused refused -> {
        Stage.told(refused.problem());
        Wrong.unless(!Files.exists(stage.real(target)), "a package that was refused is there");
        Wrong.unless(
            planned.isEmpty() || stage.trouble != null,
            "refused: " + refused.problem().sentences());
      }
      case Delivery.Failed failed -> {
        Stage.told(failed.problem());
        Wrong.unless(stage.trouble != null, "failed: " + failed.problem().sentences());
        Wrong.unless(!Files.exists(stage.real(target)), "a package that failed is there");
      }
      case Delivery.Cancelled _ -> throw new Wrong("nobody cancelled");
      case null -> {
        if (Files.exists(stage.real(target))) {
          verify(stage.real(target));
        }
      }
    }
    if (end == Stage.End.DONE && stage.trouble == null) {
      records(target, delivery[0] instanceof Delivery.Delivered);
    }
  }

  /** Packages stay as they were. */
  void night() throws IOException {
    for (var known : packages.entrySet()) {
      Wrong.unlessSame(
          stage.contents.of(stage.real(known.getKey())),
          known.getValue(),
          "the package " + known.getKey());
    }
  }

  /** What a package says it has is there; the checksums of the frames' files in it. */
  private static List<String> verify(Path folder) throws IOException {
    var found = new ArrayList<String>();
    for (var line : Files.readAllLines(folder.resolve("SHA256SUMS"))) {
      var sha256 = line.substring(0, 64);
      var file = folder.resolve(line.substring(66));
      Wrong.unless(Files.exists(file), file.getFileName() + " is missing in the package");
      Wrong.unlessSame(
          Contents.sha256(Files.readAllBytes(file)),
          sha256,
          file.getFileName() + " in the package");
      found.add(sha256);
    }
    found.sort(null);
    return found;
  }

  private void records(String target, boolean delivered) throws IOException {
    boolean recorded = false;
    var folder = stage.real(stage.main).resolve(".framewright/handoffs");
    if (Files.exists(folder)) {
      try (var files = Files.newDirectoryStream(folder, "*.json")) {
        for (var file : files) {
          var text = Files.readString(file);
          boolean done = text.replaceAll("\\s", "").contains("\"state\":\"delivered\"");
          for (var known : packages.keySet()) {
            if (text.contains("/" + known + "\"")) {
              Wrong.unless(done, "the hand-off to " + known + " is not recorded as delivered");
            }
          }
          recorded |= done && text.contains("/" + target + "\"");
        }
      }
    }
    Wrong.unlessSame(recorded, delivered, "the hand-off is recorded");
  }
}
