package org.framewright.job;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.UUID;
import org.framewright.shotlist.Setup;

/**
 * What goes from one job to another: a setup's line of the shot list, and what was said of it.
 *
 * @param setup its line, with the code that it has in the job that gives it
 * @param notes the comments on it
 * @param codes its code in each job that it was in before, by what the store calls the job
 */
public record MovedSetup(Setup setup, List<Note> notes, SequencedMap<UUID, String> codes) {
  /**
   * A comment that travels.
   *
   * @param text one line
   * @param by who said it; empty where nobody is named
   * @param station the computer or the device that it was said on
   * @param at when, by the time of the job that it was said in
   */
  public record Note(String text, String by, String station, Instant at) {}

  public MovedSetup {
    notes = List.copyOf(notes);
    codes = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(codes));
  }

  /** As one object of JSON, for a store. */
  public String json() {
    return EventCodec.json(this);
  }

  /** What {@link #json} made; empty where a text is none such. */
  public static Optional<MovedSetup> read(String json) {
    return EventCodec.movedSetup(json);
  }

  /** The setup under another code. */
  Setup as(String code) {
    return new Setup(code, setup.title(), setup.views(), setup.framesWanted(), setup.columns());
  }
}
