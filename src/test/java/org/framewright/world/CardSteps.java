package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.base.Progress;
import org.framewright.copies.Compared;
import org.framewright.copies.Comparison;
import org.framewright.copies.Copier;
import org.framewright.copies.CopiesRequest;
import org.framewright.copies.CopyOutcome;
import org.framewright.copies.CopyPlan;
import org.framewright.job.JobException;

/** Cards: copies of them, and whether they may be cleared. */
final class CardSteps {
  private final Stage stage;

  CardSteps(Stage stage) {
    this.stage = stage;
  }

  void copyCard(Step.CopyCard copy) throws IOException, JobException {
    var desk = stage.desks.get(copy.seat());
    var card = stage.card(copy.body());
    var before = stage.contents.of(card);
    if (before.isEmpty()) {
      return;
    }
    var targets = new ArrayList<String>();
    for (int i = 0; i < 2; i++) {
      if ((copy.places() >> i & 1) == 1) {
        targets.add("backup" + (i + 1) + "/" + card.getFileName());
      }
    }
    var outcome = new CopyOutcome[1];
    var wanted = new ArrayList<Said>();
    wanted.add(new Said.Other("copied"));
    copies(
        desk,
        wanted,
        job -> {
          var root = desk.disk.root();
          var plan =
              CopyPlan.of(
                  root.resolve(card.getFileName().toString()),
                  targets.stream().map(root::resolve).toList());
          outcome[0] = new Copier(stage.volumes).copy(job, plan, Progress.NONE);
        });
    Wrong.unlessSame(stage.contents.of(card), before, "what is on the card");
    if (outcome[0] instanceof CopyOutcome.Done(var report) && report.isWhole()) {
      for (var target : targets) {
        var there = stage.contents.of(stage.real(target));
        before.forEach(
            (path, sha256) ->
                Wrong.unlessSame(
                    there.getOrDefault(path, "nothing"), sha256, path + " on " + target));
      }
    }
    for (var target : targets) {
      stage
          .contents
          .of(stage.real(target))
          .forEach(
              (path, sha256) ->
                  Wrong.unless(
                      stage.byContent.containsKey(sha256)
                          || stage.harmed.contains(sha256)
                          || path.startsWith("copied-"),
                      path + " on " + target + " is only half there"));
    }
  }

  /** As {@link Stage#act}, where the event may be left out if nothing was done. */
  private Stage.End copies(Desk desk, List<Said> wanted, Stage.Action action)
      throws IOException, JobException {
    var before = stage.lines(desk.folder()).size();
    return stage.act(
        desk,
        wanted,
        false,
        job -> {
          action.run(job);
          if (stage.lines(desk.folder()).size() == before) {
            wanted.clear();
          }
        });
  }

  void ask(Desk desk, int body) throws IOException, JobException {
    var card = stage.card(body);
    var onCard = stage.contents.of(card);
    if (onCard.isEmpty()) {
      return;
    }
    var compared = new Compared[1];
    copies(
        desk,
        new ArrayList<>(List.of(new Said.Other("compared"))),
        job -> {
          var root = desk.disk.root();
          var folders = new ArrayList<Path>();
          folders.add(root.resolve(card.getFileName().toString()));
          folders.add(root.resolve("backup1"));
          folders.add(root.resolve("backup2"));
          compared[0] =
              new Comparison(job, stage.volumes)
                  .run(CopiesRequest.of(folders, "Ines"), Progress.NONE)
                  .orElseThrow();
        });
    if (compared[0] == null) {
      return;
    }
    stage.contents.forget();
    var disks = new HashMap<String, Set<String>>();
    kept(stage.main, "job", disks);
    kept("backup1", stage.start.oneDisk() ? "backups" : "backup1", disks);
    kept("backup2", stage.start.oneDisk() ? "backups" : "backup2", disks);
    boolean may = true;
    for (var file : onCard.entrySet()) {
      may &=
          stage.volumes.canRead(card.resolve(file.getKey()))
              && disks.getOrDefault(file.getValue(), Set.of()).size() >= 2;
    }
    boolean said = compared[0].cards().getFirst().mayClear();
    compared[0]
        .cards()
        .getFirst()
        .verdict()
        .why()
        .forEach(why -> Wrong.unless(!why.toString().isBlank(), "no reason"));
    Wrong.unlessSame(
        said, may, "the card may be cleared (" + compared[0].cards().getFirst().verdict() + ")");
    stage.counts.asked(said);
    if (said) {
      for (var path : Contents.all(card).reversed()) {
        if (!path.equals(card) && !path.equals(card.resolve("DCIM"))) {
          Files.delete(path);
        }
      }
      stage.comparing.nothingLost();
    }
  }

  /** Adds on which disk each content lies, as far as it can be proved. */
  private void kept(String folder, String disk, Map<String, Set<String>> disks) throws IOException {
    if (stage.volumes.isFromMemory(folder)) {
      return;
    }
    for (var sha256 : stage.contents.of(stage.real(folder)).values()) {
      disks.computeIfAbsent(sha256, _ -> new HashSet<>()).add(disk);
    }
  }

  void damage(Step.Damage damage) throws IOException {
    var place = "backup" + (damage.place() + 1);
    if (damage.harm() == Step.Harm.FROM_MEMORY) {
      stage.volumes.turnMemory(place);
      return;
    }
    var folder =
        damage.harm() == Step.Harm.CARD_UNREADABLE ? stage.card(damage.place()) : stage.real(place);
    var files =
        stage.contents.of(folder).keySet().stream()
            .filter(path -> !path.contains("copied-"))
            .toList();
    if (files.isEmpty()) {
      return;
    }
    var file = folder.resolve(files.get(damage.file() % files.size()));
    var bytes = Files.readAllBytes(file);
    switch (damage.harm()) {
      case CARD_UNREADABLE -> stage.volumes.cannotRead(file);
      case FILE_GONE -> {
        stage.harmed.add(Contents.sha256(bytes));
        Files.delete(file);
      }
      default -> {
        stage.harmed.add(Contents.sha256(bytes));
        var time = Files.getLastModifiedTime(file);
        bytes[bytes.length / 2] ^= 4;
        stage.harmed.add(Contents.sha256(bytes));
        Files.write(file, bytes);
        Files.setLastModifiedTime(file, time);
        stage.contents.forget();
      }
    }
  }
}
