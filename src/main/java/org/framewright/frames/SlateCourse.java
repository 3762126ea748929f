package org.framewright.frames;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.Text;

/**
 * What the slates say of the frames: each slate opens its setup for its body, from the frame after
 * it to the next slate. A slate that is shot up to {@link #REPEATED} times in a row is a slate each
 * time; what comes after these was taken with the card left lying in the picture.
 *
 * <p>A pure function of the set of frames: in which order they came, and which came late, makes no
 * difference.
 */
final class SlateCourse {
  private static final int REPEATED = 3;

  static final SlateCourse NONE = new SlateCourse();

  /**
   * What holds for a frame.
   *
   * @param frame the frame that shows the slate
   * @param ordered whether a person said that it counts for this frame
   */
  record Statement(Frame frame, ShotSlate slate, boolean ordered) {}

  private record Body(Optional<Camera> camera, String place) {}

  private final Map<FrameId, Statement> statements = new HashMap<>();
  private final Map<FrameId, ShotSlate> slates = new LinkedHashMap<>();
  private final Set<FrameId> last = new HashSet<>();
  private final Set<FrameId> cards = new HashSet<>();
  private final List<Frame> frames = new ArrayList<>();
  private final List<Text> remarks = new ArrayList<>();

  private SlateCourse() {}

  /**
   * Puts the frames of each body in order and follows its slates.
   *
   * @param complete complete frames, each once
   */
  static SlateCourse of(List<Frame> complete, ShotSlates known, ZoneId zone) {
    if (known.byFrame().isEmpty()) {
      return NONE;
    }
    var bodies = new LinkedHashMap<Body, List<BodyOrder.Shot>>();
    var slated = new HashSet<Body>();
    for (var frame : complete) {
      var name = known.name(frame);
      var body = body(frame, name);
      var time = frame.capture().instant(zone).orElse(Instant.MAX);
      bodies
          .computeIfAbsent(body, _ -> new ArrayList<>())
          .add(new BodyOrder.Shot(frame, CameraNumber.of(name), time, name));
      if (known.of(frame) != null) {
        slated.add(body);
      }
    }
    var course = new SlateCourse();
    bodies.forEach(
        (body, shots) -> {
          if (slated.contains(body)) {
            course.follow(body, shots, known);
          }
        });
    return course;
  }

  /** Bodies that name no serial number are told apart by where their frames lie and their names. */
  private static Body body(Frame frame, String name) {
    var camera = frame.capture().camera();
    boolean known = camera.filter(one -> !one.serial().isBlank()).isPresent();
    return new Body(camera, known ? "" : frame.folder() + "/" + CameraNumber.series(name));
  }

  private void follow(Body body, List<BodyOrder.Shot> shots, ShotSlates known) {
    var order = BodyOrder.of(shots);
    var name = body.camera().map(Camera::model).filter(model -> !model.isBlank());
    remarks.addAll(order.remarks(name.orElse("?")));
    if (!body.place().isEmpty()) {
      remarks.add(
          Text.of(
              "the frames of {0} name no serial number; those of one folder are taken to be of one"
                  + " body",
              name.orElse("?")));
    }
    // Without a place in the order a slate opens nothing, and still is no frame of a setup.
    for (var shot : shots) {
      var slate = known.of(shot.frame());
      if (slate != null && shot.number().isEmpty() && !shot.isTimed()) {
        slate(shot.frame(), slate);
      }
    }
    Statement now = null;
    SlateSays before = null;
    int run = 0;
    var sinceSlate = new ArrayList<Frame>();
    Frame latest = null;
    for (var shot : order.shots()) {
      var frame = shot.frame();
      var slate = known.of(frame);
      var says = slate == null ? null : slate.says();
      run = says == null ? 0 : says.equals(before) ? run + 1 : 1;
      before = says;
      boolean lying = says instanceof SlateSays.OfSetup && run > REPEATED && !slate.byPerson();
      if (slate != null && !lying) {
        slate(frame, slate);
        now = new Statement(frame, slate, false);
        latest = frame;
        if (slate.backwards()) {
          for (var earlier : sinceSlate) {
            statements.put(earlier.id(), new Statement(frame, slate, true));
          }
        }
        sinceSlate.clear();
        continue;
      }
      if (lying) {
        cards.add(frame.id());
      }
      if (now != null) {
        statements.put(frame.id(), now);
      }
      sinceSlate.add(frame);
    }
    if (latest != null) {
      last.add(latest.id());
    }
  }

  private void slate(Frame frame, ShotSlate slate) {
    slates.put(frame.id(), slate);
    frames.add(frame);
  }

  boolean isSlate(Frame frame) {
    return slates.containsKey(frame.id());
  }

  Optional<Statement> statement(Frame frame) {
    return Optional.ofNullable(statements.get(frame.id()));
  }

  /** Whether a slate was left lying in a frame's picture. */
  boolean showsCard(Frame frame) {
    return cards.contains(frame.id());
  }

  /** Whether no slate of its body came after this one. */
  boolean isLast(Frame slate) {
    return last.contains(slate.id());
  }

  /** The frames that are slates, by body and in order. */
  List<Frame> frames() {
    return frames;
  }

  ShotSlate slate(Frame frame) {
    return slates.get(frame.id());
  }

  List<Text> remarks() {
    return remarks.stream().distinct().toList();
  }
}
