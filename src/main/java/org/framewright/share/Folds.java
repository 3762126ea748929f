package org.framewright.share;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.frames.SetupTally;
import org.framewright.job.Comment;
import org.framewright.job.Job;
import org.framewright.job.OnSet;
import org.framewright.job.SetupCodes;
import org.framewright.job.SetupStatus;
import org.framewright.live.JobView;
import org.framewright.live.ShownToClient;
import org.framewright.live.ViewCount;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * Makes the JSON of each moment once for a role, and of a setup only where something of it changed.
 * What is not in here never reaches a page. Safe from any thread.
 */
final class Folds {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  /** All that the JSON of a setup is made of. */
  private record Seen(
      Setup setup,
      SetupStatus status,
      Optional<SetupTally> counted,
      List<Frame> latest,
      Optional<String> inFront,
      Optional<String> from,
      SetupCodes codes) {}

  private static final class Made {
    Fold last;
    Map<String, Seen> seen = Map.of();
  }

  private final Job job;
  private final PictureTokens tokens;
  private final Codes codes;
  private final Predicate<String> client;
  private final Map<Role, Made> made = new EnumMap<>(Role.class);

  /**
   * @param client whether a writer of comments is a client's device
   */
  Folds(Job job, PictureTokens tokens, Codes codes, Predicate<String> client) {
    this.job = job;
    this.tokens = tokens;
    this.codes = codes;
    this.client = client;
    for (var role : Role.values()) {
      made.put(role, new Made());
    }
  }

  /** The moment, or a later one that was made already. */
  Fold of(Role role, Moment moment) {
    var mine = made.get(role);
    synchronized (mine) {
      if (mine.last == null || mine.last.moment().number() < moment.number()) {
        mine.last = fold(role, moment, mine);
      }
      return mine.last;
    }
  }

  private Fold fold(Role role, Moment moment, Made mine) {
    var view = moment.view();
    var setups = new LinkedHashMap<String, String>();
    if (role != Role.CLIENT) {
      var before = mine.last == null ? Map.<String, String>of() : mine.last.setups();
      var seen = HashMap.<String, Seen>newHashMap(view.list().setups().size());
      var read = role == Role.ASSISTANT ? codes.of(view.list()) : null;
      for (var setup : view.list().setups()) {
        var code = setup.code();
        var now =
            new Seen(
                setup,
                view.state().of(code),
                Optional.ofNullable(view.tally().bySetup().get(code)),
                role == Role.ASSISTANT ? view.latest().getOrDefault(code, List.of()) : List.of(),
                inFront(view, code),
                view.moves().came(code).map(came -> came.from().name()),
                read);
        seen.put(code, now);
        var known = now.equals(mine.seen.get(code)) ? before.get(code) : null;
        setups.put(code, known != null ? known : setup(role, now).toString());
      }
      mine.seen = seen;
    }
    return new Fold(
        moment,
        role,
        role == Role.CLIENT ? "[]" : array(view.list().codes()).toString(),
        setups,
        role == Role.VIEWER ? "null" : client(view).toString(),
        comments(role, view),
        view.state().onSet().map(Folds::onSet).map(ObjectNode::toString).orElse("null"),
        role == Role.CLIENT ? "null" : day(role, view, moment.day()));
  }

  private static Optional<String> inFront(JobView view, String code) {
    return view.state().onSet().filter(set -> set.setup().equals(code)).flatMap(OnSet::view);
  }

  private static ArrayNode array(Iterable<String> texts) {
    var array = JSON.arrayNode();
    texts.forEach(array::add);
    return array;
  }

  private static ObjectNode onSet(OnSet set) {
    var json = JSON.objectNode();
    json.put("code", set.setup());
    json.put("view", set.view().orElse(null));
    json.put("since", set.since().toEpochMilli());
    return json;
  }

  private ObjectNode setup(Role role, Seen seen) {
    var setup = seen.setup();
    var json = JSON.objectNode();
    json.put("code", setup.code());
    json.put("title", setup.title());
    json.put("state", seen.status().state().word());
    json.put("frames", seen.counted().map(SetupTally::frames).orElse(0));
    json.put("wanted", setup.wanted().isPresent() ? setup.wanted().getAsInt() : null);
    if (role == Role.ASSISTANT) {
      json.put("since", seen.status().since().map(Instant::toEpochMilli).orElse(null));
      json.set("views", views(ViewCount.of(setup, seen.counted(), seen.inFront())));
      json.put("signedOffBy", seen.status().signedOffBy().orElse(null));
      json.put("reason", seen.status().reason().orElse(null));
      seen.from().ifPresent(set -> json.put("from", set));
      var columns = json.putObject("columns");
      setup.columns().forEach(columns::put);
      json.set("codes", array(seen.codes().codesOf(setup)));
      var pictures = json.putArray("pictures");
      seen.latest().stream()
          .filter(frame -> !frame.isClip())
          .forEach(frame -> pictures.add(tokens.of(frame.id())));
    }
    return json;
  }

  private ArrayNode views(List<ViewCount> views) {
    var array = JSON.arrayNode();
    for (var view : views) {
      var json = array.addObject();
      json.put("code", view.code());
      json.put("label", view.code().isEmpty() ? "" : job.viewLabel(view.code()));
      json.put("frames", view.frames());
      json.put("wanted", view.wanted().isPresent() ? view.wanted().getAsInt() : null);
      json.put("before", view.before());
    }
    return array;
  }

  private ObjectNode client(JobView view) {
    var shown = ShownToClient.of(view, Optional.empty());
    var json = JSON.objectNode();
    json.put("code", shown.code());
    json.put("title", shown.title());
    json.put("state", shown.state().word());
    json.put("agreedBy", shown.agreedBy().orElse(null));
    json.put("frames", shown.frames());
    json.set("views", views(shown.views()));
    json.put("agreed", shown.agreed());
    json.put("setups", shown.setups());
    json.put("canAgree", shown.canAgree());
    var pictures = json.putArray("pictures");
    var counted = Optional.ofNullable(view.tally().bySetup().get(shown.code()));
    int number = counted.map(tally -> tally.frames() + tally.clips()).orElse(0);
    for (var frame : view.latest().getOrDefault(shown.code(), List.of())) {
      if (!frame.isClip()) {
        var picture = pictures.addObject();
        picture.put("token", tokens.of(frame.id()));
        picture.put("view", view.tally().place(frame).flatMap(Place::view).orElse(null));
        picture.put("number", number);
      }
      number--;
    }
    return json;
  }

  private List<Fold.Said> comments(Role role, JobView view) {
    if (role == Role.VIEWER || view.comments().isEmpty()) {
      return List.of();
    }
    var now = new HashMap<FrameId, FrameId>();
    for (var frames : view.latest().values()) {
      for (var frame : frames) {
        frame.knownAs().forEach(id -> now.put(id, frame.id()));
      }
    }
    var comments = new ArrayList<Fold.Said>();
    for (var comment : view.comments()) {
      if (role == Role.ASSISTANT || client.test(comment.station())) {
        var json = comment(comment, now).toString();
        comments.add(
            new Fold.Said(
                json.substring(0, json.length() - 1), comment.station(), comment.number()));
      }
    }
    return comments;
  }

  private ObjectNode comment(Comment comment, Map<FrameId, FrameId> now) {
    var json = JSON.objectNode();
    json.put("setup", comment.setup());
    json.put(
        "picture",
        comment.frames().stream()
            .filter(now::containsKey)
            .map(now::get)
            .findFirst()
            .or(() -> comment.frames().stream().findFirst())
            .map(tokens::of)
            .orElse(null));
    json.put("text", comment.text());
    json.put("by", comment.by());
    json.put("at", comment.at().toEpochMilli());
    return json;
  }

  /** Without the brace that closes it: the text of why there is no forecast has a language. */
  private static String day(Role role, JobView view, DayNow day) {
    int done = 0;
    int planned = 0;
    int signedOff = 0;
    for (var setup : view.list().setups()) {
      var state = view.state().of(setup.code()).state();
      planned += state == SetupState.DROPPED ? 0 : 1;
      done += state.done() && state != SetupState.DROPPED ? 1 : 0;
      signedOff += state == SetupState.SIGNED_OFF ? 1 : 0;
    }
    var json = JSON.objectNode();
    json.put("done", done);
    json.put("planned", planned);
    json.put("signedOff", signedOff);
    json.put("frames", view.tally().frames());
    json.put("pace", day.pace().map(pace -> pace.toSeconds()).orElse(null));
    day.finish()
        .ifPresentOrElse(
            finish ->
                json.putObject("finish")
                    .put("from", finish.from().toEpochMilli())
                    .put("to", finish.to().toEpochMilli()),
            () -> json.putNull("finish"));
    if (role == Role.ASSISTANT && !view.moves().given().isEmpty()) {
      var given = json.putArray("given");
      for (var one : view.moves().given()) {
        given
            .addObject()
            .put("code", one.setup().code())
            .put("to", one.to().name())
            .put("arrived", one.arrived());
      }
    }
    var text = json.toString();
    return text.substring(0, text.length() - 1);
  }
}
