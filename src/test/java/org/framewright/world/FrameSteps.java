package org.framewright.world;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.framewright.frames.FrameId;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/** Frames that come, and what people say of them. */
final class FrameSteps {
  private final Stage stage;

  private record Half(Stage.Shot shot, String folder, Map<String, byte[]> files) {}

  private final List<Half> halfWritten = new ArrayList<>();
  private int copies;

  FrameSteps(Stage stage) {
    this.stage = stage;
  }

  void shoot(Step.Shoot shoot) throws IOException {
    var body = stage.bodies[shoot.body()];
    for (int i = 0; i < shoot.frames(); i++) {
      stage.now = stage.now.plusMillis(900);
      var frame = body.take(stage.now);
      var files = frame.files();
      var shot =
          new Stage.Shot(
              stage.shots.size(),
              body,
              body.jumped(),
              stage.now,
              stage.now.plus(body.ahead()),
              files.values().stream().map(Contents::sha256).toList());
      stage.shots.add(shot);
      shot.files().forEach(file -> stage.byContent.put(file, shot));
      boolean half = shoot.half() && i + 1 == shoot.frames();
      if (shoot.writes() != Step.Writes.CARD) {
        var folder = Body.free(stage.framesFolder(), body.name(), frame);
        Body.write(folder, files, stage.now, half);
        if (half) {
          halfWritten.add(
              new Half(shot, stage.framesFolder().relativize(folder).toString(), files));
          stage.halves.add(shot);
        }
      }
      if (shoot.writes() != Step.Writes.CABLE) {
        Body.write(
            Body.free(stage.card(shoot.body()).resolve("DCIM"), "100STUDI", frame),
            files,
            stage.now,
            false);
      }
    }
  }

  void finish() throws IOException {
    for (var half : halfWritten) {
      Body.write(stage.framesFolder().resolve(half.folder()), half.files(), stage.now, false);
    }
    halfWritten.clear();
    stage.halves.clear();
  }

  void look(Desk desk) throws IOException, JobException {
    var model = stage.model(desk.folder());
    var arrived = new TreeSet<>(stage.complete().keySet());
    boolean dies = stage.trouble == Trouble.POWER_LOST || stage.trouble == Trouble.POWER_KEPT;
    arrived.removeIf(id -> model.arrival(id).isPresent() || desk.present.contains(id));
    if (dies && !desk.present.isEmpty()) {
      arrived.clear();
    }
    stage.act(
        desk,
        arrived.isEmpty() ? List.of() : List.of(new Said.Arrived(arrived)),
        false,
        job -> job.recordArrivals(job.scan()));
  }

  void cardIn(int body) throws IOException {
    if (!stage.contents.of(stage.card(body)).isEmpty()) {
      Contents.copy(
          stage.card(body).resolve("DCIM"),
          stage.framesFolder().resolve("card-" + stage.bodies[body].name() + "-" + ++copies));
    }
  }

  private interface OnFrames {
    void act(Job job, List<FrameId> frames) throws IOException, JobException;
  }

  private Set<Integer> some(int from, int count) throws IOException {
    var all = List.copyOf(stage.complete().keySet());
    var some = new TreeSet<Integer>();
    for (int i = 0; i < count && !all.isEmpty(); i++) {
      some.add(all.get((from + i) % all.size()));
    }
    return some;
  }

  private void onFrames(Desk desk, Set<Integer> some, Said said, boolean refusal, OnFrames what)
      throws IOException, JobException {
    stage.act(
        desk,
        some.isEmpty() || refusal ? List.of() : List.of(said),
        refusal,
        job -> {
          var known = stage.byShot(desk, job.scan());
          var ids = some.stream().flatMap(id -> known.get(id).knownAs().stream()).toList();
          what.act(job, ids);
        });
  }

  void move(Step.Move move) throws IOException, JobException {
    var desk = stage.desks.get(move.seat());
    var some = some(move.frame(), move.frames());
    var code = stage.code(move.seat(), move.setup());
    onFrames(
        desk,
        some,
        new Said.Moved(some, code),
        stage.model(desk.folder()).list().isEmpty(),
        (job, ids) -> job.moveFrames(ids, code, Optional.empty(), "Ines"));
  }

  void choose(Step.Choose choose) throws IOException, JobException {
    var some = some(choose.frame(), choose.frames());
    onFrames(
        stage.desks.get(choose.seat()),
        some,
        new Said.Chosen(some, choose.chosen()),
        false,
        (job, ids) -> job.select(ids, choose.chosen(), "Ines"));
  }

  void rate(Step.Rate rate) throws IOException, JobException {
    var some = some(rate.frame(), rate.frames());
    onFrames(
        stage.desks.get(rate.seat()),
        some,
        new Said.Rated(some, rate.rating()),
        false,
        (job, ids) -> job.rate(ids, rate.rating(), "Ines"));
  }
}
