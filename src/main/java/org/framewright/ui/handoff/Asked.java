package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.framewright.handoff.Extent;
import org.framewright.handoff.metadata.MetadataMode;

/**
 * What somebody wants handed off, as it stands in the form.
 *
 * @param list the client's list, once it is settled
 * @param setups as typed; all where it is blank
 * @param slates whether the slates of the setups go along
 * @param split as typed; one package where it is blank
 * @param place the folder in which the package is made
 * @param name what the package is called; the usual name where it is blank
 * @param moment changes with the job, so that the same is planned anew
 */
record Asked(
    Basis basis,
    int rating,
    String label,
    Optional<ClientListModel.Named> list,
    String setups,
    Extent.Pictures pictures,
    boolean onlyNew,
    boolean slates,
    String split,
    MetadataMode metadata,
    WantedPapers papers,
    Optional<Path> place,
    String name,
    long moment) {

  /** By what frames are chosen. */
  enum Basis {
    SELECTS,
    RATED,
    LABELLED,
    LISTED,
    EVERY;

    /** The word of its texts. */
    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
