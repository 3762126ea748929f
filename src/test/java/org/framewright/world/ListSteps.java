package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.framewright.Templates;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.naming.Convention;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.SetupState;

/** What people do to the list and to its setups. */
final class ListSteps {
  private final Stage stage;
  private static final List<Convention> CONVENTIONS =
      List.of(
          Templates.fashionDays(),
          Templates.read(Path.of("templates/food.yaml")),
          Templates.read(Path.of("templates/editorial.yaml")));

  private final Lists lists = new Lists();

  ListSteps(Stage stage) {
    this.stage = stage;
  }

  void start(Step.Start begin) throws IOException, JobException {
    stage.start = begin;
    stage.volumes = new WorldVolumes(stage.base, begin.oneDisk());
    stage.bodies[0] = new Body("A", SampleCamera.Writes.RAW_AND_JPEG, 0, 9996);
    stage.bodies[1] = new Body("B", SampleCamera.Writes.JPEG, begin.ahead(), 1);
    var desk = stage.desks.get(Seat.LAPTOP);
    var values = Map.of("day", "2026-03-02", "client", "KVO", "title", "Wool");
    var disk = stage.recording();
    var started =
        Job.start(
            CONVENTIONS.get(begin.template()),
            disk.root().resolve("laptop"),
            values,
            desk.clock,
            new Station("laptop"));
    Wrong.unless(started instanceof Started.Opened, "the job was not started: " + started);
    var folder = disk.real(((Started.Opened) started).job().folder());
    stage.main = stage.base.relativize(folder).toString();
    stage.office = "office/" + folder.getFileName();
    stage.hear(desk, List.of(new Said.Other("began")), Stage.End.DONE);
    Contents.copy(stage.real(stage.main), stage.real(stage.office));
    stage.hear(stage.desks.get(Seat.AWAY), List.of(), Stage.End.DONE);
  }

  void importList(Desk desk, int edition) throws IOException, JobException {
    var incoming = lists.edition(stage.start.template(), edition);
    var file = stage.real("lists").resolve("list-" + edition + ".csv");
    Files.write(file, lists.csv(incoming));
    var before = stage.model(desk.folder());
    var put = new ArrayList<Said.Line>();
    var keys = new LinkedHashSet<String>();
    for (var line : incoming) {
      keys.add(Model.key(line.code()));
      var was = before.list().get(Model.key(line.code()));
      if (was == null || !was.equals(line)) {
        put.add(line);
      }
    }
    var framed = framed(before);
    var missing = new TreeSet<>(before.list().keySet());
    missing.removeAll(keys);
    missing.removeIf(before::isWorkedOn);
    var certain = new TreeSet<>(missing);
    if (desk.seat != Seat.AWAY) {
      certain.removeAll(framed.maybe());
      missing.removeAll(framed.surely());
    }
    boolean sure = certain.equals(missing);
    var ordered = new ArrayList<>(before.list().keySet());
    ordered.retainAll(keys);
    boolean event = !put.isEmpty() || !missing.isEmpty() || !ordered.equals(List.copyOf(keys));
    var wanted = event ? List.of(new Said.Listed(put, List.of(), List.of())) : List.<Said>of();
    if (!sure && put.isEmpty()) {
      return; // Whether anything changes hangs on frames of which the model does not know enough.
    }
    var end =
        stage.act(
            desk,
            wanted,
            false,
            job -> {
              var reading =
                  job.readList(
                      desk.disk.root().resolve("lists").resolve(file.getFileName().toString()),
                      ListOptions.NONE);
              if (!(reading instanceof ListReading.Understood understood)) {
                throw new Wrong("the list was not understood: " + reading);
              }
              job.importList(understood);
            });
    if (end == Stage.End.DONE && event) {
      var said =
          stage
              .model(desk.folder())
              .last(desk.job == null ? desk.seat.station() : desk.job.station(), Said.Listed.class);
      if (said.isPresent()) {
        var removed =
            ((Said.Listed) said.get().said())
                .removed().stream().map(Model::key).collect(Collectors.toCollection(TreeSet::new));
        Wrong.unless(
            removed.containsAll(certain) && missing.containsAll(removed),
            "setups taken out: " + removed + ", should be " + missing);
      }
    }
  }

  private record Framed(Set<String> surely, Set<String> maybe) {}

  void signOffByNobody(Desk desk, int setup) throws IOException, JobException {
    var code = stage.code(desk.seat, setup);
    stage.act(
        desk, List.of(), true, job -> job.mark(code, SetupState.SIGNED_OFF, MarkDetails.NONE));
  }

  void tickUnknown(Desk desk) throws IOException, JobException {
    stage.act(
        desk, List.of(), true, job -> job.mark("9998", SetupState.SHOT, MarkDetails.by("Timo")));
  }

  void tick(Step.Tick tick) throws IOException, JobException {
    var desk = stage.desks.get(tick.seat());
    var all = List.copyOf(stage.model(desk.folder()).list().values());
    if (all.isEmpty()) {
      stage.act(desk, List.of(), true, job -> job.mark("7", tick.state(), MarkDetails.by("Timo")));
      return;
    }
    var by = tick.state() == SetupState.SIGNED_OFF ? "Odette" : "Timo";
    var details = MarkDetails.by(by);
    var codes = new ArrayList<String>();
    var listed = new ArrayList<String>();
    for (int i = 0; i < Math.min(tick.several(), all.size()); i++) {
      var line = all.get((tick.setup() + i) % all.size());
      listed.add(line.code());
      codes.add(tick.loosely() ? Model.key(line.code()) : line.code());
    }
    var views = all.get(tick.setup() % all.size()).views();
    var view = tick.view() < 0 || views.isEmpty() ? "" : views.get(tick.view() % views.size());
    var said = view.isEmpty() ? details : details.andView(view);
    stage.act(
        desk,
        listed.stream().map(code -> new Said.Ticked(code, tick.state(), by, view, "")).toList(),
        false,
        job -> job.mark(codes, tick.state(), said));
  }

  void takeBack(Desk desk, Class<? extends Said> kind) throws IOException, JobException {
    var last = stage.model(desk.folder()).last(stage.station(desk), kind);
    stage.act(
        desk,
        last.map(fact -> new Said.TakenBack(fact.id())).stream().toList(),
        last.isEmpty(),
        job -> {
          if (kind == Said.Moved.class) {
            job.takeBackMove();
          } else {
            job.takeBack();
          }
        });
  }

  void comment(Desk desk, int setup) throws IOException, JobException {
    var code = stage.code(desk.seat, setup);
    var text = "Said at " + stage.now;
    boolean none = stage.model(desk.folder()).list().isEmpty();
    stage.act(
        desk,
        none ? List.of() : List.of(new Said.Commented(code, text)),
        none,
        job -> job.comment(code, List.of(), text, "Timo"));
  }

  void restart(Desk desk, boolean present) throws IOException, JobException {
    desk.die();
    var job = desk.open();
    if (present && desk.seat != Seat.AWAY) {
      job.foundPresent(job.scan());
      desk.present.addAll(stage.complete().keySet());
    }
    stage.comparing.check(desk);
  }

  private Framed framed(Model model) throws IOException {
    var surely = new HashSet<String>();
    boolean unclear = false;
    for (var place : stage.places.places(model).values()) {
      if (place.clear()) {
        place.key().ifPresent(surely::add);
      } else {
        unclear = true;
      }
    }
    return new Framed(surely, unclear ? model.list().keySet() : surely);
  }
}
