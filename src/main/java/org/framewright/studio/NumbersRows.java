package org.framewright.studio;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import org.framewright.day.DayHours;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.Standing;

/**
 * The numbers of one job by day, as they are told to the store where they changed since that was
 * done last. For one thread.
 */
public final class NumbersRows {
  private static final JsonMapper JSON = new JsonMapper();

  private final Store store;
  private final UUID id;
  private final DayHours hours;
  private long knownEvents = -1;
  private List<Frame> knownFrames = List.of();
  private String toldSetups = "";
  private String toldFrames = "[]";

  NumbersRows(Store store, UUID id, DayHours hours) {
    this.store = store;
    this.id = id;
    this.hours = hours;
  }

  /**
   * Tells the store anew the numbers of a job.
   *
   * @param job open, with the events that the store has of it
   * @param scan its frames; where there are none, what was told of them stays
   * @param hours of work, in which times are reckoned
   */
  public static void tell(Store store, Job job, FrameScan scan, DayHours hours) throws IOException {
    new NumbersRows(store, OwnSet.id(job), hours).tell(job, scan, job.standing(scan));
  }

  void tell(Job job, FrameScan scan, Standing standing) throws IOException {
    long events = job.events();
    if (events == knownEvents && scan.frames().equals(knownFrames)) {
      return;
    }
    var numbers = JobNumbers.of(job, scan, standing, hours);
    var setups = setups(numbers);
    if (!setups.equals(toldSetups) && tellSetups(events, setups)) {
      toldSetups = setups;
    }
    var frames = frames(numbers);
    // A folder that was put away takes nothing from what was told of it.
    if (!numbers.frames().isEmpty() && !frames.equals(toldFrames)) {
      tellFrames(job.station(), frames);
      toldFrames = frames;
    }
    knownEvents = events;
    knownFrames = scan.frames();
  }

  private boolean tellSetups(long events, String days) throws IOException {
    return store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement("select framewright.tell_numbers(?, ?, ?::jsonb)")) {
            statement.setObject(1, id);
            statement.setLong(2, events);
            statement.setString(3, days);
            try (var row = statement.executeQuery()) {
              row.next();
              return row.getBoolean(1);
            }
          }
        });
  }

  void tellFrames(String station, String days) throws IOException {
    store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement(
                  "select framewright.tell_frame_numbers(?, ?, ?::jsonb)")) {
            statement.setObject(1, id);
            statement.setString(2, station);
            statement.setString(3, days);
            return statement.execute();
          }
        });
  }

  private static String setups(JobNumbers numbers) {
    var days = JSON.createArrayNode();
    numbers
        .setups()
        .forEach(
            (day, its) -> {
              var row = days.addObject().put("day", day(day));
              put(row, "planned", its.planned());
              row.put("done", its.done())
                  .put("signed_off", its.signedOff())
                  .put("pickups", its.pickups())
                  .put("dropped", its.dropped());
              put(row.putArray("on_set"), its.onSet());
              put(row.putArray("waits"), its.waits());
            });
    return text(days);
  }

  private static String frames(JobNumbers numbers) {
    var days = JSON.createArrayNode();
    numbers
        .frames()
        .forEach(
            (day, its) -> {
              var row = days.addObject().put("day", day(day)).put("frames", its.frames());
              put(row, "selects", its.selects());
              its.first().ifPresent(first -> row.put("first_taken", first.toString()));
              its.last().ifPresent(last -> row.put("last_taken", last.toString()));
            });
    return text(days);
  }

  private static String day(LocalDate day) {
    return day.equals(JobNumbers.NO_DAY) ? "infinity" : day.toString();
  }

  private static void put(ObjectNode row, String name, OptionalInt number) {
    number.ifPresent(known -> row.put(name, known));
  }

  private static void put(ArrayNode array, List<Duration> times) {
    times.forEach(time -> array.add((int) Math.min(time.toSeconds(), Integer.MAX_VALUE)));
  }

  private static String text(ArrayNode json) {
    try {
      return JSON.writeValueAsString(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
