package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Random;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Station;

/** What becomes of the job’s folder: unplugged, copied, synchronised, and compared at night. */
final class FolderSteps {
  private final Stage stage;

  /** What happens while the folder is not there. */
  interface Meanwhile {
    void happens() throws IOException, JobException;
  }

  private int copies;
  private int newer;

  FolderSteps(Stage stage) {
    this.stage = stage;
  }

  void folderGone(Meanwhile meanwhile) throws IOException, JobException {
    var folder = stage.real(stage.main);
    var away = folder.resolveSibling("unplugged");
    Files.move(folder, away);
    stage.gone = true;
    try {
      meanwhile.happens();
      Wrong.unless(!Files.exists(folder), "something was made where the job’s folder was");
    } finally {
      stage.gone = false;
      if (!Files.exists(folder)) {
        Files.move(away, folder);
      }
    }
    for (var desk : stage.desks.values()) {
      if (desk.job != null) {
        stage.comparing.check(desk);
      }
    }
  }

  void folderCopied() throws IOException {
    var copy = "disk" + ++copies + "/" + stage.real(stage.main).getFileName();
    Contents.copy(stage.real(stage.main), stage.real(copy));
    Contents.delete(stage.real(stage.main));
    stage.visible.put(copy, stage.visible.remove(stage.main));
    stage.main = copy;
    stage.contents.forget();
    stage.desks.get(Seat.LAPTOP).die();
    stage.desks.get(Seat.CART).die();
  }

  private List<Path> plainLogs(String folder, boolean ofOffice) throws IOException {
    try (var files = Files.list(stage.logs(folder))) {
      return files
          .filter(file -> file.toString().endsWith(".jsonl") && !file.toString().contains(" "))
          .filter(file -> file.getFileName().toString().startsWith("away") == ofOffice)
          .sorted()
          .toList();
    }
  }

  void synchronise(Step.Synchronise sync) throws IOException, JobException {
    var from = sync.back() ? stage.office : stage.main;
    var to = sync.back() ? stage.main : stage.office;
    var files = plainLogs(from, sync.back());
    if (files.isEmpty()) {
      return;
    }
    var file = files.get(sync.writer() % files.size());
    var copy = stage.logs(to).resolve(file.getFileName().toString());
    var bytes = Files.readAllBytes(file);
    int had = Files.exists(copy) ? (int) Files.size(copy) : 0;
    int length = had + (int) ((bytes.length - had) * (long) sync.percent() / 100);
    var part = copy.resolveSibling("." + file.getFileName() + ".sync");
    Files.write(part, Arrays.copyOf(bytes, length));
    Files.move(part, copy, StandardCopyOption.REPLACE_EXISTING);
    stage.visible.get(to).addAll(stage.lines(to).keySet());
    for (var desk : stage.desks.values()) {
      if (desk.folder().equals(to)) {
        stage.comparing.check(desk);
      }
    }
  }

  void conflictCopy(boolean away, int writer) throws IOException, JobException {
    var folder = away ? stage.office : stage.main;
    var files = new ArrayList<>(plainLogs(folder, false));
    files.addAll(plainLogs(folder, true));
    var file = files.get(writer % files.size());
    var name = file.getFileName().toString().replace(".jsonl", " (conflicted copy).jsonl");
    Files.copy(file, file.resolveSibling(name), StandardCopyOption.REPLACE_EXISTING);
    for (var desk : stage.desks.values()) {
      if (desk.folder().equals(folder)) {
        stage.comparing.check(desk);
      }
    }
  }

  void newerVersion() throws IOException, JobException {
    var file = stage.logs(stage.main).resolve("newer-1.jsonl");
    var line =
        "{\"station\":\"newer-1\",\"number\":%d,\"time\":\"%s\",\"count\":0,\"clock\":\"%s\",\"type\":\"hovered\",\"over\":\"x\""
            .formatted(++newer, stage.now, stage.now);
    Files.writeString(
        file, (Files.exists(file) ? Files.readString(file) : "") + LogLine.sealed(line));
    for (var one : stage.lines(stage.main).values()) {
      stage.facts.computeIfAbsent(
          one.id(), id -> new Model.Fact(id, one.millis(), one.count(), new Said.Other("hovered")));
      stage.visible.get(stage.main).add(one.id());
    }
    stage.comparing.check(stage.desks.get(Seat.LAPTOP));
  }

  void night() throws IOException, JobException {
    for (var desk : stage.desks.values()) {
      stage.comparing.check(desk);
    }
    var model = stage.model(stage.main);
    var disk = stage.recording();
    var newcomer =
        Job.open(
            disk.root().resolve(stage.main),
            stage.desks.get(Seat.LAPTOP).clock,
            new Station("newcomer"));
    Comparing.compare(newcomer, model, "a newcomer");
    inAnyOrder(model);
    stage.now = stage.now.plus(Duration.ofHours(13));
  }

  /** Logs that come in pieces and in any order make one state. */
  private void inAnyOrder(Model model) throws IOException, JobException {
    var random = new Random(stage.facts.size());
    var folder =
        stage.scratch.resolve("order").resolve(stage.real(stage.main).getFileName().toString());
    Files.createDirectories(folder.resolve(".framewright/log"));
    Files.createDirectories(folder.resolve("01_frames"));
    Files.copy(
        stage.real(stage.main).resolve(".framewright/convention.yaml"),
        folder.resolve(".framewright/convention.yaml"));
    var job = Job.open(folder, stage.desks.get(Seat.LAPTOP).clock, new Station("newcomer"));
    var files =
        Contents.all(stage.logs(stage.main)).stream()
            .filter(file -> file.toString().endsWith(".jsonl"))
            .toList();
    var had = new HashMap<Path, Integer>();
    for (int i = 0; i < 3 * files.size(); i++) {
      var file = files.get(random.nextInt(files.size()));
      int size = (int) Files.size(file);
      int length = Math.max(had.getOrDefault(file, 0), random.nextInt(size + 1));
      piece(folder, file, length);
      had.put(file, length);
      job.refresh();
    }
    for (var file : files) {
      piece(folder, file, (int) Files.size(file));
      job.refresh();
    }
    Comparing.compare(job, model, "whoever hears it in another order");
    Contents.delete(stage.scratch.resolve("order"));
  }

  private static void piece(Path folder, Path log, int length) throws IOException {
    Files.write(
        folder.resolve(".framewright/log").resolve(log.getFileName().toString()),
        Arrays.copyOf(Files.readAllBytes(log), length));
  }
}
