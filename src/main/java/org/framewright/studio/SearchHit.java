package org.framewright.studio;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.framewright.shotlist.SetupState;

/**
 * A setup, or frames of a job, that somebody looked for.
 *
 * @param name of the job
 * @param day when the setup came into its state, at the place of the shoot; else when the job was
 *     added to the store
 * @param setup its code; none for a frame that belongs to none
 * @param title its title, may be blank
 * @param state none where that is not known
 * @param matched what was found, "title: Coat, black" each
 */
public record SearchHit(
    UUID job,
    String name,
    LocalDate day,
    Optional<String> setup,
    String title,
    Optional<SetupState> state,
    List<String> matched) {
  public SearchHit {
    matched = List.copyOf(matched);
  }
}
