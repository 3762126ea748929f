package org.framewright.handoff.metadata;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.shotlist.Setup;

/**
 * What a job knows of a select.
 *
 * @param job the job's name
 * @param jobTitle what the job is called in words
 * @param name the select's name
 * @param setup the code of its setup
 * @param line the setup in the shot list
 * @param view what its view is called in words
 * @param wantedBack the name under which it is to come back
 * @param taken when it was taken, the body's clock put right
 * @param nameBefore the name of its picture before it was renamed
 * @param rating given in the job, from 0, not rated, to 5; nothing where only its files rate it
 * @param fields what the convention's fields say of it
 * @param slate whether it is a slate
 */
public record SelectData(
    String job,
    String jobTitle,
    String name,
    String setup,
    Optional<Setup> line,
    Optional<String> view,
    Optional<String> wantedBack,
    Optional<Taken> taken,
    boolean byCamera,
    String nameBefore,
    OptionalInt rating,
    FieldWords fields,
    boolean slate) {
  /**
   * When a frame was taken.
   *
   * @param offset where the body says it
   */
  public record Taken(LocalDateTime time, Optional<ZoneOffset> offset) {}
}
