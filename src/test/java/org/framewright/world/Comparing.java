package org.framewright.world;

import java.io.IOException;
import java.time.Instant;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Set;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/** Compares what the program says with the model. */
final class Comparing {
  private final Stage stage;

  Comparing(Stage stage) {
    this.stage = stage;
  }

  void check(Desk desk) throws IOException, JobException {
    if (stage.gone) {
      return;
    }
    var job = desk.open();
    job.refresh();
    var model = stage.model(desk.folder());
    compare(job, model, desk.seat.station());
    if (desk.seat != Seat.AWAY) {
      compareFrames(desk, job, model);
    }
    nothingLost();
  }

  static void compare(Job job, Model model, String who) {
    var list = new LinkedHashMap<String, Said.Line>();
    job.shotList().setups().forEach(setup -> list.put(Model.key(setup.code()), Lists.line(setup)));
    Wrong.unlessSame(list, model.list(), who + ": the list");
    Wrong.unlessSame(
        List.copyOf(list.keySet()),
        List.copyOf(model.list().keySet()),
        who + ": order of the list");
    var state = job.state();
    state
        .setups()
        .forEach(
            (code, status) -> {
              var should = model.standing(Model.key(code));
              Wrong.unlessSame(status.state(), should.state(), who + ": " + code);
              Wrong.unlessSame(
                  status.since().map(Instant::toEpochMilli).orElse(-1L),
                  should.since(),
                  who + ": " + code + " since");
              Wrong.unlessSame(
                  status.signedOffBy().orElse(""),
                  should.signedOffBy(),
                  who + ": " + code + " signed off by");
            });
    Wrong.unlessSame(
        state.onSet().map(on -> Model.key(on.setup()) + on.view().orElse("")),
        model.onSet().map(span -> span.key() + span.view()),
        who + ": on set");
    var pickups = state.pickups().stream().map(Model::key).toList();
    Wrong.unlessSame(Set.copyOf(pickups), Set.copyOf(model.pickups()), who + ": pickups");
    Wrong.unlessSame(
        pickups.stream().map(key -> model.pickedUp(key)).toList(),
        model.pickups().stream().map(key -> model.pickedUp(key)).toList(),
        who + ": order of pickups");
    Wrong.unlessSame(
        job.comments().stream().map(one -> Model.key(one.setup()) + ": " + one.text()).toList(),
        model.comments(),
        who + ": comments");
  }

  private void compareFrames(Desk desk, Job job, Model model) throws IOException {
    var scan = job.scan();
    var tally = job.tally(scan);
    var frames = stage.byShot(desk, scan);
    var places = stage.places.places(model);
    Wrong.unlessSame(frames.keySet(), places.keySet(), "the frames that are there");
    Wrong.unlessSame(tally.frames(), places.size(), "the number of frames");
    var state = job.state();
    var chosen = model.chosen();
    var ratings = model.ratings();
    frames.forEach(
        (id, frame) -> {
          Wrong.unlessSame(state.isSelect(frame), chosen.contains(id), frame.stem() + " is chosen");
          Wrong.unlessSame(
              state.ratingHere(frame).orElse(-1),
              ratings.getOrDefault(id, -1),
              frame.stem() + " is rated");
          var should = places.get(id);
          stage.counts.placed(should.clear());
          if (should.clear()) {
            var place = tally.place(frame);
            Wrong.unlessSame(
                place.map(one -> Model.key(one.setup())),
                should.key(),
                frame.stem() + " belongs to");
            Wrong.unlessSame(
                place.flatMap(one -> one.view()).orElse(""),
                should.view(),
                frame.stem() + " shows");
          }
        });
  }

  /** Every file that was ever whole is somewhere, unless somebody harmed it. */
  void nothingLost() throws IOException {
    var there = new HashSet<String>();
    there.addAll(stage.contents.of(stage.framesFolder()).values());
    for (int i = 0; i < 2; i++) {
      there.addAll(stage.contents.of(stage.card(i)).values());
      there.addAll(stage.contents.of(stage.real("backup" + (i + 1))).values());
    }
    for (var shot : stage.shots) {
      if (stage.halves.contains(shot)) {
        continue;
      }
      for (var file : shot.files()) {
        Wrong.unless(
            there.contains(file) || stage.harmed.contains(file),
            "a file of frame #" + shot.id() + " is nowhere any more");
      }
    }
  }
}
