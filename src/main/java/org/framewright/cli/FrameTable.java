package org.framewright.cli;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.framewright.frames.Camera;
import org.framewright.frames.PlacedBy;
import org.framewright.job.FrameLine;
import org.framewright.job.Job;

/** All frames of a job as a table, a line each. */
record FrameTable(Job job, List<FrameLine> lines) {
  private static final List<String> HEADINGS =
      List.of(
          "File", "Time", "Body", "Setup", "View", "Rating", "How it came to its setup", "Label");

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

  /** The headings, then a row for each frame; what is not known is empty. */
  List<List<String>> rows() {
    var rows = new ArrayList<List<String>>(lines.size() + 1);
    rows.add(HEADINGS);
    for (var line : lines) {
      rows.add(
          List.of(
              file(line),
              time(line),
              body(line),
              line.place().map(place -> place.setup()).orElse(""),
              line.place().flatMap(place -> place.view()).orElse(""),
              rating(line) == null ? "" : rating(line).toString(),
              line.how(),
              line.frame().capture().label().orElse("")));
    }
    return rows;
  }

  List<Map<String, Object>> json() {
    return lines.stream().map(this::json).toList();
  }

  private Map<String, Object> json(FrameLine line) {
    var row = new LinkedHashMap<String, Object>();
    row.put("file", file(line));
    row.put("clip", line.frame().isClip());
    row.put("time", time(line).isEmpty() ? null : time(line).replace(' ', 'T'));
    row.put("body", body(line));
    row.put("setup", line.place().map(place -> place.setup()).orElse(null));
    row.put("view", line.place().flatMap(place -> place.view()).orElse(null));
    row.put("rating", rating(line));
    row.put("how", line.how());
    row.put("slate", line.slate().map(one -> one.slate().says().code()).orElse(null));
    row.put(
        "bySlate",
        line.placed()
            .filter(placed -> placed.by() == PlacedBy.SLATE)
            .flatMap(placed -> placed.slate())
            .map(one -> one.frame().stem())
            .orElse(null));
    row.put("inDoubt", line.placed().map(placed -> placed.doubt()).orElse(false));
    row.put("label", line.frame().capture().label().orElse(null));
    return row;
  }

  private String file(FrameLine line) {
    return job.folder().relativize(line.frame().primary().path()).toString().replace('\\', '/');
  }

  private static String time(FrameLine line) {
    return line.taken().map(TIME::format).orElse("");
  }

  private static String body(FrameLine line) {
    return line.frame().capture().camera().map(FrameTable::name).orElse("");
  }

  private static String name(Camera camera) {
    return (camera.model() + " " + camera.serial()).strip();
  }

  private static Integer rating(FrameLine line) {
    return line.rating().isPresent() ? line.rating().getAsInt() : null;
  }
}
