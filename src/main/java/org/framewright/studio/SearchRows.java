package org.framewright.studio;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.SequencedSet;
import java.util.UUID;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.Standing;
import org.framewright.shotlist.Setup;

/**
 * What one job is found by: a row for each setup, and the ranges of its frames. It tells the store
 * what changed since it did so last. For one thread.
 */
public final class SearchRows {
  private static final int MOST_WORDS = 200;
  private static final int MOST_IN_ONE = 500;
  private static final Pattern GTIN = Pattern.compile("[0-9]{8}|[0-9]{12,14}");
  private static final Pattern BETWEEN_DIGITS = Pattern.compile("[ -]");
  private static final JsonMapper JSON = new JsonMapper();

  private final Store store;
  private final UUID id;
  private Map<String, String> toldSetups = Map.of();
  private String toldAbout = "";
  private List<FrameRange> toldFrames = List.of();

  SearchRows(Store store, UUID id) {
    this.store = store;
    this.id = id;
  }

  /**
   * Tells the store anew what a job is found by.
   *
   * @param job open, with the events that the store has of it
   * @param scan its frames; where there are none, what was told of them stays
   */
  public static void tell(Store store, Job job, FrameScan scan) throws IOException {
    new SearchRows(store, OwnSet.id(job)).tell(job, scan, job.standing(scan));
  }

  void tell(Job job, FrameScan scan, Standing standing) throws IOException {
    var about = about(job);
    var setups = setups(job, standing, about);
    if (!setups.equals(toldSetups) || !about.equals(toldAbout)) {
      if (tell(job.events(), about, setups)) {
        toldSetups = setups;
        toldAbout = about;
      }
    }
    var frames = frames(scan, standing);
    // A folder that was put away takes nothing from what was told of it.
    if (!frames.isEmpty() && !frames.equals(toldFrames)) {
      tell(job.station(), frames);
      toldFrames = frames;
    }
  }

  private boolean tell(long events, String about, SequencedMap<String, String> setups)
      throws IOException {
    var changed =
        setups.entrySet().stream()
            .filter(row -> !row.getValue().equals(toldSetups.get(row.getKey())))
            .map(Map.Entry::getValue)
            .toList();
    boolean same = setups.keySet().equals(toldSetups.keySet());
    return store.with(
        connection -> {
          boolean told = true;
          int from = 0;
          do {
            int to = Math.min(changed.size(), from + MOST_IN_ONE);
            var rows = "[" + String.join(",", changed.subList(from, to)) + "]";
            told &= tell(connection, events, about, rows, same || from > 0 ? null : setups);
            from = to;
          } while (told && from < changed.size());
          return told;
        });
  }

  private boolean tell(
      Connection connection, long events, String about, String rows, Map<String, String> codes)
      throws SQLException {
    try (var statement =
        connection.prepareStatement("select framewright.tell_search(?, ?, ?, ?::jsonb, ?)")) {
      statement.setObject(1, id);
      statement.setLong(2, events);
      statement.setString(3, about);
      statement.setString(4, rows);
      statement.setArray(
          5,
          codes == null
              ? null
              : connection.createArrayOf("text", codes.keySet().toArray(String[]::new)));
      try (var row = statement.executeQuery()) {
        row.next();
        return row.getBoolean(1);
      }
    }
  }

  void tell(String station, List<FrameRange> frames) throws IOException {
    var json = JSON.createArrayNode();
    for (var range : frames) {
      json.addObject()
          .put("setup", range.setup())
          .put("stem", range.stem())
          .put("first", range.first())
          .put("last", range.last());
    }
    store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement("select framewright.tell_frames(?, ?, ?::jsonb)")) {
            statement.setObject(1, id);
            statement.setString(2, station);
            statement.setString(3, text(json));
            return statement.execute();
          }
        });
  }

  /** What is said of the whole job, a line each. */
  private static String about(Job job) {
    var lines = new ArrayList<String>();
    lines.add("job: " + job.name());
    job.values().forEach((name, value) -> lines.add(name + ": " + value));
    return PlainText.start(
        String.join("\n", lines.stream().map(line -> line(line, 1000)).toList()), 8000);
  }

  private static SequencedMap<String, String> setups(Job job, Standing standing, String about) {
    var commenters = new HashMap<String, LinkedHashSet<String>>();
    for (var comment : job.comments()) {
      if (!comment.by().isBlank()) {
        commenters
            .computeIfAbsent(Setup.canonicalKey(comment.setup()), _ -> new LinkedHashSet<String>())
            .add(comment.by());
      }
    }
    var rows = new LinkedHashMap<String, String>();
    for (var setup : job.shotList().setups()) {
      var people = new LinkedHashSet<String>();
      setup.model().ifPresent(people::add);
      standing.state().of(setup.code()).signedOffBy().ifPresent(people::add);
      people.addAll(
          commenters.getOrDefault(Setup.canonicalKey(setup.code()), new LinkedHashSet<>()));
      rows.put(line(setup.code(), 1000), row(job, standing, about, setup, people));
    }
    return rows;
  }

  private static String row(
      Job job, Standing standing, String about, Setup setup, SequencedSet<String> people) {
    var status = standing.state().of(setup.code());
    var gtins = gtins(setup);
    var persons =
        PlainText.start(
            String.join("\n", people.stream().map(person -> line(person, 200)).toList()), 4000);
    var words = new LinkedHashMap<String, Character>();
    add(words, setup.code() + " " + SearchKey.joined(setup.code()) + " " + gtins, 'A');
    add(words, setup.title(), 'B');
    add(words, persons, 'C');
    about.lines().forEach(line -> add(words, SearchText.value(line), 'D'));
    var row = JSON.createObjectNode();
    row.put("setup", line(setup.code(), 1000));
    row.put("title", line(setup.title(), 1000));
    row.put("gtins", gtins);
    row.put("people", persons);
    row.put("state", status.state().word());
    status
        .since()
        .ifPresent(since -> row.put("day", LocalDate.ofInstant(since, job.zone()).toString()));
    row.put("words", vector(words));
    return text(row);
  }

  private static void add(Map<String, Character> words, String text, char weight) {
    for (var word : SearchKey.words(text)) {
      if (words.size() < MOST_WORDS) {
        words.putIfAbsent(word, weight);
      }
    }
  }

  /** Each word with its place and weight: letters and digits only, so nothing is to be escaped. */
  private static String vector(SequencedMap<String, Character> words) {
    var vector = new StringBuilder();
    int place = 1;
    for (var word : words.entrySet()) {
      vector
          .append('\'')
          .append(word.getKey())
          .append("':")
          .append(place++)
          .append((char) word.getValue())
          .append(' ');
    }
    return vector.toString();
  }

  private static String gtins(Setup setup) {
    var gtins = new ArrayList<String>();
    for (var cell : setup.columns().values()) {
      var digits = BETWEEN_DIGITS.matcher(cell.strip()).replaceAll("");
      if (GTIN.matcher(digits).matches() && gtins.size() < 20) {
        gtins.add(digits);
      }
    }
    return String.join(" ", gtins);
  }

  private static List<FrameRange> frames(FrameScan scan, Standing standing) {
    var places = standing.tally().places();
    return FrameRange.joined(
        scan.distinct().stream()
            .map(
                frame ->
                    FrameRange.of(
                        Optional.ofNullable(places.get(frame.id()))
                            .map(place -> line(place.setup(), 1000))
                            .orElse(""),
                        frame.stem()))
            .filter(range -> !range.stem().isEmpty() || range.first() != FrameRange.NONE)
            .toList());
  }

  private static String line(String text, int most) {
    return PlainText.start(PlainText.line(text), most);
  }

  private static String text(Object json) {
    try {
      return JSON.writeValueAsString(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
