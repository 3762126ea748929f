package org.framewright.handoff;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/**
 * What the job remembers of a hand-off, so that what comes back can be read against it: one JSON
 * file each in {@code .framewright/handoffs}.
 */
record HandOffRecord(int number, Path folder, List<Entry> selects) {
  private static final Pattern FILE = Pattern.compile("(\\d{4})\\.json");
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  HandOffRecord {
    selects = List.copyOf(selects);
  }

  /**
   * One select.
   *
   * @param files each file's name in the package and its SHA-256
   */
  record Entry(String select, String setup, String original, Map<String, String> files) {}

  static List<HandOffRecord> all(Job job) throws IOException, JobException {
    var records = new ArrayList<HandOffRecord>();
    for (var file : files(job)) {
      JsonNode json;
      try {
        json = JSON.readTree(file.toFile());
      } catch (JsonProcessingException e) {
        throw new JobException(
            "the record of this hand-off is damaged (" + e.getOriginalMessage() + ")",
            file.toString(),
            "Restore it from a backup, or move it away; the package itself is not touched.");
      }
      var entries = new ArrayList<Entry>();
      for (var select : json.path("selects")) {
        var sums = new LinkedHashMap<String, String>();
        for (var one : select.path("files")) {
          sums.put(one.path("name").asText(), one.path("sha256").asText());
        }
        entries.add(
            new Entry(
                select.path("select").asText(),
                select.path("setup").asText(),
                select.path("original").asText(),
                sums));
      }
      records.add(
          new HandOffRecord(
              json.path("handOff").asInt(), Path.of(json.path("folder").asText()), entries));
    }
    return records;
  }

  static int nextNumber(Job job) throws IOException {
    return files(job).stream().mapToInt(HandOffRecord::number).max().orElse(0) + 1;
  }

  static void write(Job job, int number, Path folder, HandOffPlan plan, Bag bag)
      throws IOException {
    var selects = new ArrayList<Map<String, Object>>();
    for (var select : plan.selects()) {
      var entry = new LinkedHashMap<String, Object>();
      entry.put("select", select.name());
      entry.put("setup", select.place().setup());
      entry.put("original", select.original());
      entry.put(
          "files",
          select.files().stream()
              .map(name -> Map.of("name", name, "sha256", bag.checksum(name)))
              .toList());
      selects.add(entry);
    }
    var document = new LinkedHashMap<String, Object>();
    document.put("handOff", number);
    document.put("at", job.now().toString());
    document.put("folder", folder.toString());
    document.put("chosenBy", plan.chosenBy());
    document.put("selects", selects);

    var records = records(job);
    Files.createDirectories(records);
    var name = String.format(Locale.ROOT, "%04d.json", number);
    var draft = records.resolve(name + ".tmp");
    try (var out =
        FileChannel.open(draft, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      var bytes = ByteBuffer.wrap(JSON.writeValueAsBytes(document));
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
      out.force(true);
    }
    Files.move(draft, records.resolve(name));
  }

  private static Path records(Job job) {
    return job.folder().resolve(".framewright").resolve("handoffs");
  }

  private static List<Path> files(Job job) throws IOException {
    if (!Files.isDirectory(records(job))) {
      return List.of();
    }
    try (var files = Files.list(records(job))) {
      return files
          .filter(file -> FILE.matcher(file.getFileName().toString()).matches())
          .sorted()
          .toList();
    }
  }

  private static int number(Path file) {
    return Integer.parseInt(file.getFileName().toString().substring(0, 4));
  }
}
