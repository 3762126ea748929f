package org.framewright.copies;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.job.FramesCompared;

/**
 * What one comparison found.
 *
 * @param at when it ended
 * @param by who asked
 * @param files how many files lie on the cards, in the job and on the backups
 * @param places the job and the backups, each against what the cards and the job hold
 * @param cards the answer for each card
 * @param frames how many frames of the job are in how many places
 * @param sidecarsOnce sidecars of the job that lie on one disk only
 * @param evidence the file that was written
 */
public record Compared(
    Instant at,
    String by,
    int files,
    List<PlaceCompared> places,
    List<CardCompared> cards,
    FramesCompared frames,
    int sidecarsOnce,
    Optional<Path> evidence) {

  /** Whether every card may be cleared, and without cards, nothing is missing anywhere. */
  public boolean allIsWell() {
    return cards.isEmpty()
        ? frames.once() == 0
            && places.stream()
                .allMatch(place -> place.missing().isEmpty() && place.troubles().isEmpty())
        : cards.stream().allMatch(CardCompared::mayClear);
  }

  /**
   * A card and its answer.
   *
   * @param folder as it was given
   * @param name what to call it before a person
   * @param device what it lies on
   * @param litter what systems left on it, which nobody misses
   * @param damaged its files that are empty, broken or changed, those that were waived too
   */
  public record CardCompared(
      Path folder,
      String name,
      String device,
      CardState state,
      List<String> litter,
      List<Damaged> damaged,
      Verdict verdict) {
    public boolean mayClear() {
      return verdict instanceof Verdict.MayClear;
    }
  }

  /**
   * A file of a card that is empty, no whole picture, or not what the ASC MHL there says.
   *
   * @param file as the card was given
   * @param path below the card
   * @param sha256 what it holds; empty where it could not be read to its end
   * @param said what is wrong with it
   */
  public record Damaged(Path file, String path, long size, Optional<String> sha256, Text said) {}

  /**
   * A place, compared with what the cards hold, and a backup with what the job holds too.
   *
   * @param folder as it was given
   * @param device what it lies on
   * @param isJob whether it is the job itself
   * @param identical how many of those files are here, under whatever name
   * @param same these files, each with one that is here
   * @param samePicture the picture is here, with another description; that is no copy
   * @param different the frame is here, with another picture or not whole
   * @param missing what is not here, by whole paths
   * @param extra what is here only, below the folder
   * @param troubles what of it could not be listed or read, or is not what an ASC MHL there says
   * @param mhl the list that was added to the ASC MHL there
   */
  public record PlaceCompared(
      Path folder,
      String name,
      String device,
      boolean isJob,
      int identical,
      List<Pair> same,
      List<Pair> samePicture,
      List<Pair> different,
      List<Path> missing,
      List<String> extra,
      List<Problem> troubles,
      Optional<Path> mhl) {
    PlaceCompared with(List<Problem> more, Optional<Path> list) {
      var all = new ArrayList<>(troubles);
      all.addAll(more);
      return new PlaceCompared(
          folder,
          name,
          device,
          isJob,
          identical,
          same,
          samePicture,
          different,
          missing,
          extra,
          List.copyOf(all),
          list);
    }
  }

  /**
   * Two files of one frame, or of one content.
   *
   * @param file the one on the card or in the job
   * @param here the one in the place, below its folder
   * @param said what is wrong with one of them; empty where only the pictures differ
   */
  public record Pair(Path file, String here, Text said) {
    /** What is wrong with one of them, in English. */
    public String why() {
      return said.english();
    }
  }
}
