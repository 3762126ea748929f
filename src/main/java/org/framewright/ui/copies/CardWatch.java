package org.framewright.ui.copies;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.base.Progress;
import org.framewright.copies.MountedCards;
import org.framewright.copies.device.MountIdentity;
import org.framewright.job.Job;
import org.framewright.live.Latest;

/**
 * Offers a card that was put into this computer, once for each time, until it is taken on, put away
 * or pulled out.
 */
public final class CardWatch {
  /** Looks which cards are in. */
  @FunctionalInterface
  interface Look {
    List<MountedCards.Card> look() throws IOException;
  }

  private final Look cards;
  private final Latest<List<MountedCards.Card>> found;
  private final ReadOnlyObjectWrapper<Optional<MountedCards.Card>> offered =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /** Touched by looks only. */
  private List<MountedCards.Card> seen = List.of();

  private final Set<Put> putAway = new HashSet<>();
  private List<MountedCards.Card> now = List.of();
  private final AtomicBoolean closed;

  private record Put(String folder, MountIdentity mount) {
    static Put of(MountedCards.Card card) {
      return new Put(card.folder().toString(), card.mount());
    }
  }

  CardWatch(Look cards, AtomicBoolean closed, Executor ui) {
    this.cards = cards;
    this.closed = closed;
    this.found = new Latest<>(ui, this::show);
  }

  /** Watches for a job. */
  public static CardWatch of(Job job, Disks disks, Executor ui) {
    var closed = new AtomicBoolean();
    var cards =
        new MountedCards(job, disks.mounted(), disks.volumes(), Progress.until(closed::get));
    return new CardWatch(cards::look, closed, ui);
  }

  /** The card on offer; changes on the interface thread. */
  public ReadOnlyObjectProperty<Optional<MountedCards.Card>> offered() {
    return offered.getReadOnlyProperty();
  }

  /** Looks which cards are in. Not on the interface thread, and on one thread at a time. */
  public void look() {
    if (closed.get()) {
      return;
    }
    try {
      tell(cards.look());
    } catch (IOException e) {
      // There is nothing to offer, and nothing that a person could do about it.
      tell(List.of());
    }
  }

  /** The interface is not woken up for what it knows. */
  private void tell(List<MountedCards.Card> in) {
    if (!in.equals(seen)) {
      seen = in;
      found.offer(in);
    }
  }

  /** Offers the card no more, until it is put in again. */
  public void putAway() {
    offered.get().map(Put::of).ifPresent(putAway::add);
    show(now);
  }

  /** Offers nothing any more. From any thread. */
  public void close() {
    closed.set(true);
  }

  private void show(List<MountedCards.Card> cards) {
    now = cards;
    var in = cards.stream().map(Put::of).toList();
    putAway.retainAll(in);
    offered.set(
        closed.get()
            ? Optional.empty()
            : cards.stream().filter(card -> !putAway.contains(Put.of(card))).findFirst());
  }
}
