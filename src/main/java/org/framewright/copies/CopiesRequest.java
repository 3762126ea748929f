package org.framewright.copies;

import java.nio.file.Path;
import java.util.List;

/**
 * What a person wants compared with a job.
 *
 * @param folders cards and backups; a folder with {@code DCIM} at its top is a card
 * @param cards folders that are cards although they look otherwise
 * @param backups folders on disks that hold copies although they look like cards
 * @param needed on how many disks besides the card each file has to be, from 1 to 9
 * @param waived files of cards that need not be kept
 * @param by who asks
 * @param mhl whether each backup gets a generation of its ASC MHL
 */
public record CopiesRequest(
    List<Path> folders,
    List<Path> cards,
    List<Path> backups,
    int needed,
    List<WaivedFile> waived,
    String by,
    boolean mhl) {
  /** Two disks besides the card. Common practice, no source. */
  public static final int USUALLY_NEEDED = 2;

  /** More than that nobody can ask for. */
  public static final int MOST_NEEDED = Policy.MOST_NEEDED;

  public CopiesRequest {
    folders = List.copyOf(folders);
    cards = List.copyOf(cards);
    backups = List.copyOf(backups);
    waived = List.copyOf(waived);
  }

  /** A question about folders of which no backup looks like a card; who asks waives too. */
  public CopiesRequest(
      List<Path> folders, List<Path> cards, int needed, List<Path> waived, String by) {
    this(
        folders,
        cards,
        List.of(),
        needed,
        waived.stream().map(file -> WaivedFile.byName(file, by)).toList(),
        by,
        false);
  }

  /** The usual question about these folders. */
  public static CopiesRequest of(List<Path> folders, String by) {
    return new CopiesRequest(folders, List.of(), USUALLY_NEEDED, List.of(), by);
  }
}
