package org.framewright.studio;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.framewright.base.Text;
import org.framewright.copies.FramesOnce;
import org.framewright.day.DaySummary;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * How one set stands, as one of its computers tells all others.
 *
 * @param at the job's time
 * @param onSet what is before the camera; nothing where no setup is
 * @param planned setups that are to be shot or were, without those that were dropped
 * @param done of which these are shot or signed off
 * @param signedOff of which these are signed off
 * @param pickups of the planned, these are to be shot again
 * @param waiting the codes of setups that are shot and not signed off, the longest waiting first,
 *     at most {@link #MOST_SAID}
 * @param waitingSince since when the first of them waits
 * @param frames complete frames
 * @param pace how long setups took lately; none where it is too early to tell
 * @param finish when the rest is likely done; none where nobody can say, or nothing is left
 * @param earliest where the likely range of that begins
 * @param latest where it ends
 * @param late whether what is planned for today will not be done today
 * @param urgent what stops work or loses it if nobody acts, a sentence each, at most {@link
 *     #MOST_SAID}
 * @param troubles what a person should look at, a sentence each, at most as many
 */
public record SetNow(
    Instant at,
    Optional<OnSetNow> onSet,
    int planned,
    int done,
    int signedOff,
    int pickups,
    List<String> waiting,
    Optional<Instant> waitingSince,
    int frames,
    Optional<Duration> pace,
    Optional<Instant> finish,
    Optional<Instant> earliest,
    Optional<Instant> latest,
    boolean late,
    List<Text> urgent,
    List<Text> troubles) {
  static final int MOST_SAID = 20;

  private static final JsonMapper JSON = new JsonMapper();

  /**
   * The setup on set.
   *
   * @param since by the job's time
   */
  public record OnSetNow(String setup, String title, Instant since) {}

  private record Waiting(String setup, Instant since) {}

  public SetNow {
    waiting = List.copyOf(waiting);
    urgent = List.copyOf(urgent);
    troubles = List.copyOf(troubles);
  }

  /**
   * How a job stands.
   *
   * @param told what a person should know of its logs
   * @param once its frames that are in one place only; nothing where no comparison was ever made
   */
  static SetNow of(
      Job job, JobState state, DaySummary day, List<Text> told, Optional<FramesOnce> once) {
    var waiting = new ArrayList<Waiting>();
    int planned = 0;
    for (var setup : job.shotList().setups()) {
      var status = state.of(setup.code());
      planned += status.state() == SetupState.DROPPED ? 0 : 1;
      if (status.state() == SetupState.SHOT) {
        waiting.add(new Waiting(setup.code(), status.since().orElse(day.at())));
      }
    }
    waiting.sort((one, other) -> one.since().compareTo(other.since()));
    int signedOff = day.setups().getOrDefault(SetupState.SIGNED_OFF, 0);
    var urgent = new ArrayList<>(told);
    if (!day.space().enough()) {
      urgent.add(Text.of("the frames still planned do not fit on the disk"));
    }
    int done = waiting.size() + signedOff;
    var troubles = new ArrayList<>(onTheirWay(job, day));
    troubles.addAll(copies(day, once, planned > 0 && done >= planned));
    troubles.addAll(day.attention());
    return new SetNow(
        day.at(),
        state.onSet().map(one -> new OnSetNow(one.setup(), title(job, one.setup()), one.since())),
        planned,
        done,
        signedOff,
        day.setups().getOrDefault(SetupState.PICKUP, 0),
        waiting.stream().limit(MOST_SAID).map(Waiting::setup).toList(),
        waiting.stream().findFirst().map(Waiting::since),
        day.frames(),
        day.pace().recent(),
        day.all().finish(),
        day.all().earliest(),
        day.all().latest(),
        isLate(day),
        said(urgent),
        said(troubles));
  }

  /** Setups that nobody shoots, since no computer of the other set took them yet. */
  private static List<Text> onTheirWay(Job job, DaySummary day) {
    return job.moves().given().stream()
        .filter(given -> !given.arrived())
        .filter(given -> given.at().plus(SetRow.SILENCE).isBefore(day.at()))
        .map(
            given ->
                Text.of(
                    "setup {0} has been on its way to {1} since {2}",
                    given.setup().code(),
                    given.to().name(),
                    LocalTime.ofInstant(given.at(), day.hours().zone())
                        .truncatedTo(ChronoUnit.MINUTES)))
        .toList();
  }

  private static String title(Job job, String code) {
    return job.shotList().setup(code).map(Setup::title).orElse("");
  }

  private static List<Text> said(List<Text> texts) {
    return texts.stream().limit(MOST_SAID).map(TextJson::bounded).toList();
  }

  /** While frames come, there are always some that were not compared yet. */
  private static List<Text> copies(DaySummary day, Optional<FramesOnce> once, boolean isOver) {
    if (once.isEmpty()) {
      return isOver && day.frames() > 0
          ? List.of(Text.of("copies were not compared yet"))
          : List.of();
    }
    return Stream.concat(
            once.get().saidOnce().stream(),
            isOver ? once.get().saidNotCompared().stream() : Stream.empty())
        .toList();
  }

  private static boolean isLate(DaySummary day) {
    var zone = day.hours().zone();
    return day.today()
        .flatMap(today -> today.finish())
        .filter(
            finish ->
                LocalDate.ofInstant(finish, zone).isAfter(LocalDate.ofInstant(day.at(), zone)))
        .isPresent();
  }

  /** For the store. */
  String json() {
    var json = JSON.createObjectNode();
    json.put("at", at.toString());
    onSet.ifPresent(
        one ->
            json.putObject("onSet")
                .put("setup", one.setup())
                .put("title", one.title())
                .put("since", one.since().toString()));
    json.put("planned", planned);
    json.put("done", done);
    json.put("signedOff", signedOff);
    json.put("pickups", pickups);
    waiting.forEach(json.putArray("waiting")::add);
    waitingSince.ifPresent(since -> json.put("waitingSince", since.toString()));
    json.put("frames", frames);
    pace.ifPresent(time -> json.put("paceSeconds", time.toSeconds()));
    finish.ifPresent(time -> json.put("finish", time.toString()));
    earliest.ifPresent(time -> json.put("earliest", time.toString()));
    latest.ifPresent(time -> json.put("latest", time.toString()));
    json.put("late", late);
    urgent.stream().map(TextJson::of).forEach(json.putArray("urgent")::add);
    troubles.stream().map(TextJson::of).forEach(json.putArray("troubles")::add);
    try {
      // A server keeps no NUL in text.
      return JSON.writeValueAsString(json).replace("\\u0000", "\\ufffd");
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * What the store has of a set; it may come from a newer program, or from anybody.
   *
   * @return nothing where it cannot be read
   */
  static Optional<SetNow> read(String text) {
    try {
      var json = JSON.readTree(text);
      var on = json.path("onSet");
      return Optional.of(
          new SetNow(
              Instant.parse(json.path("at").asText()),
              on.isObject()
                  ? Optional.of(
                      new OnSetNow(
                          on.path("setup").asText(),
                          on.path("title").asText(),
                          Instant.parse(on.path("since").asText())))
                  : Optional.empty(),
              json.path("planned").asInt(),
              json.path("done").asInt(),
              json.path("signedOff").asInt(),
              json.path("pickups").asInt(),
              read(json.path("waiting"), JsonNode::asText),
              time(json, "waitingSince"),
              json.path("frames").asInt(),
              json.has("paceSeconds")
                  ? Optional.of(Duration.ofSeconds(json.path("paceSeconds").asLong()))
                  : Optional.empty(),
              time(json, "finish"),
              time(json, "earliest"),
              time(json, "latest"),
              json.path("late").asBoolean(),
              read(json.path("urgent"), TextJson::read),
              read(json.path("troubles"), TextJson::read)));
    } catch (JsonProcessingException | DateTimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<Instant> time(JsonNode json, String name) {
    return json.has(name) ? Optional.of(Instant.parse(json.path(name).asText())) : Optional.empty();
  }

  private static <T> List<T> read(JsonNode nodes, Function<JsonNode, T> one) {
    return nodes.valueStream().limit(MOST_SAID).map(one).toList();
  }
}
