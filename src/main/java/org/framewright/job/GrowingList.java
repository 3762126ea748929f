package org.framewright.job;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.RandomAccess;

/**
 * A list that grows at its end, of which snapshots cost nothing: they share its array, and what
 * they show is never written again. For one thread; snapshots are for all.
 */
final class GrowingList<E> {
  private E[] items = array(16);
  private int size;

  /** So many items a snapshot may show. */
  private int shared;

  /** The last snapshot, while nothing has changed since. */
  private Optional<List<E>> latest = Optional.empty();

  int size() {
    return size;
  }

  E get(int index) {
    return items[index];
  }

  void add(E item) {
    if (size < shared || size == items.length) {
      items = Arrays.copyOf(items, Math.max(2 * size, 16));
      shared = 0;
    }
    items[size++] = item;
    latest = Optional.empty();
  }

  /** Forgets the items from this place on; snapshots keep them. */
  void cut(int newSize) {
    size = Math.min(size, newSize);
    latest = Optional.empty();
  }

  /** The items as they are now. */
  List<E> snapshot() {
    shared = Math.max(shared, size);
    if (latest.isEmpty()) {
      latest = Optional.of(new Snapshot<>(items, size));
    }
    return latest.get();
  }

  /** The items as they are now, and one more. */
  List<E> snapshotWith(E last) {
    shared = Math.max(shared, size);
    return new SnapshotWith<>(items, size, last);
  }

  @SuppressWarnings("unchecked") // Nothing but items is ever put into it.
  private E[] array(int length) {
    return (E[]) new Object[length];
  }

  private static class Snapshot<E> extends AbstractList<E> implements RandomAccess {
    private final E[] items;
    private final int size;

    Snapshot(E[] items, int size) {
      this.items = items;
      this.size = size;
    }

    @Override
    public E get(int index) {
      Objects.checkIndex(index, size);
      return items[index];
    }

    @Override
    public int size() {
      return size;
    }
  }

  private static final class SnapshotWith<E> extends Snapshot<E> {
    private final int before;
    private final E last;

    SnapshotWith(E[] items, int before, E last) {
      super(items, before);
      this.before = before;
      this.last = last;
    }

    @Override
    public E get(int index) {
      return index == before ? last : super.get(index);
    }

    @Override
    public int size() {
      return before + 1;
    }
  }
}
