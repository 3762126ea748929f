package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.framewright.base.Progress;
import org.framewright.copies.device.MountIdentity;
import org.framewright.copies.device.MountedVolumes;
import org.framewright.copies.device.Volumes;
import org.framewright.job.Job;

/**
 * The cards that are in this computer. They are listed once for each time that they are put in, and
 * never read. For one thread.
 */
public final class MountedCards {
  private static final int MOST = 16;

  private final Job job;
  private final MountedVolumes mounted;
  private final Volumes volumes;
  private final Progress progress;
  private Map<Put, Card> listed = new HashMap<>();

  /** One putting in of a card, and how much had been compared by then. */
  private record Put(Path folder, MountIdentity mount, int comparisons) {}

  /**
   * A card.
   *
   * @param folder where it is mounted
   * @param name what to call it
   * @param mount which putting in of it this is
   * @param files how many files are on it, litter not counted
   * @param notOnTwo how many of these are not on two disks besides it, as far as the last
   *     comparisons say, by name, size and time; nothing where none of its files was ever compared.
   *     Enough to say what waits, and never to clear it
   */
  public record Card(
      Path folder, String name, MountIdentity mount, int files, OptionalInt notOnTwo) {}

  /**
   * Cards for a job.
   *
   * @param progress asked whether to stop
   */
  public MountedCards(Job job, MountedVolumes mounted, Volumes volumes, Progress progress) {
    this.job = job;
    this.mounted = mounted;
    this.volumes = volumes;
    this.progress = progress;
  }

  /** Those that are in now, by folder; one that is pulled out meanwhile is not among them. */
  public List<Card> look() throws IOException {
    var now = new HashMap<Put, Card>();
    var cards = new ArrayList<Card>();
    for (var folder : mounted.folders()) {
      if (cards.size() < MOST && !job.folder().startsWith(folder) && !progress.cancelled()) {
        try {
          look(folder, now, cards);
        } catch (IOException | CancellationException e) {
          // It is gone, or the app goes.
        }
      }
    }
    listed = now;
    return List.copyOf(cards);
  }

  private void look(Path folder, Map<Put, Card> now, List<Card> cards) throws IOException {
    if (!Place.looksLikeCard(folder)) {
      return;
    }
    var real = folder.toRealPath();
    var put = new Put(folder, volumes.mountOf(real), job.comparisons().size());
    var card = listed.get(put);
    if (card == null) {
      var listing = FolderLister.list(real, Set.of(), volumes, progress);
      var found =
          new Place(
              folder, real, Place.Kind.CARD, true, volumes.deviceOf(real), put.mount(), listing);
      card =
          new Card(
              folder,
              found.name(),
              put.mount(),
              listing.files().size(),
              KnownCopies.of(job).notOnTwo(listing));
    }
    now.put(put, card);
    cards.add(card);
  }
}
