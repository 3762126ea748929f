package org.framewright.ui.board;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.ui.settings.Preferences;

/** Until when the comments of a job were seen at this computer, kept for its last jobs. */
final class SeenComments {
  private static final String KEY = "comments.seen";
  private static final int JOBS = 8;
  private static final String THEN = " ";

  private final Preferences preferences;
  private final String job;

  /**
   * @param job what tells it from every other one
   */
  SeenComments(Preferences preferences, String job) {
    this.preferences = preferences;
    this.job = job;
  }

  /** All that was said until then was seen; nothing where nobody said so. */
  Optional<Instant> until() {
    return preferences.recent(KEY).stream()
        .filter(line -> line.startsWith(job + THEN))
        .flatMap(line -> instant(line.substring(job.length() + 1)))
        .findFirst();
  }

  private static Stream<Instant> instant(String text) {
    try {
      return Stream.of(Instant.parse(text));
    } catch (DateTimeException _) {
      return Stream.empty();
    }
  }

  /** Keeps it. */
  void keep(Instant until) {
    List<String> others =
        preferences.recent(KEY).stream().filter(line -> !line.startsWith(job + THEN)).toList();
    preferences.put(
        KEY, Stream.concat(Stream.of(job + THEN + until), others.stream()).limit(JOBS).toList());
  }
}
