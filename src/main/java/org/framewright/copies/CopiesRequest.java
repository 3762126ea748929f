package org.framewright.copies;

import java.nio.file.Path;
import java.util.List;

/**
 * What a person wants compared with a job.
 *
 * @param folders cards and backups; a folder with {@code DCIM} at its top is a card
 * @param cards folders that are cards although they look otherwise
 * @param needed on how many disks besides the card each file has to be, from 1 to 9
 * @param waived files of cards that need not be kept
 * @param by who asks, and who waives
 */
public record CopiesRequest(
    List<Path> folders, List<Path> cards, int needed, List<Path> waived, String by) {
  /** Two disks besides the card. Common practice, no source. */
  public static final int USUALLY_NEEDED = 2;

  public CopiesRequest {
    folders = List.copyOf(folders);
    cards = List.copyOf(cards);
    waived = List.copyOf(waived);
  }

  /** The usual question about these folders. */
  public static CopiesRequest of(List<Path> folders, String by) {
    return new CopiesRequest(folders, List.of(), USUALLY_NEEDED, List.of(), by);
  }
}
