package org.framewright.job;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.RandomAccess;

/**
 * A list that grows at its end, of which snapshots cost nothing: they share its array, and what
 * they show is never written again. For one thread; snapshots are for all.
 */
final class GrowingList<E> {
  private Object[] items = new Object[16];
  private int size;

  /** So many items a snapshot may show. */
  private int shared;

  private Snapshot<E> latest = new Snapshot<>(items, 0);

  int size() {
    return size;
  }

  E get(int index) {
    return item(items, index);
  }

  void add(E item) {
    if (size < shared || size == items.length) {
      items = Arrays.copyOf(items, Math.max(2 * size, 16));
      shared = 0;
    }
    items[size++] = item;
  }

  /** Forgets the items from this place on; snapshots keep them. */
  void cut(int newSize) {
    size = Math.min(size, newSize);
  }

  /** The items as they are now. */
  List<E> snapshot() {
    shared = Math.max(shared, size);
    if (latest.items != items || latest.size != size) {
      latest = new Snapshot<>(items, size);
    }
    return latest;
  }

  /** The items as they are now, and one more. */
  List<E> snapshotWith(E last) {
    shared = Math.max(shared, size);
    return new SnapshotWith<>(items, size, last);
  }

  @SuppressWarnings("unchecked") // Only add() fills the array.
  private static <E> E item(Object[] items, int index) {
    return (E) items[index];
  }

  private static class Snapshot<E> extends AbstractList<E> implements RandomAccess {
    private final Object[] items;
    private final int size;

    Snapshot(Object[] items, int size) {
      this.items = items;
      this.size = size;
    }

    @Override
    public E get(int index) {
      Objects.checkIndex(index, size);
      return item(items, index);
    }

    @Override
    public int size() {
      return size;
    }
  }

  private static final class SnapshotWith<E> extends Snapshot<E> {
    private final int before;
    private final E last;

    SnapshotWith(Object[] items, int before, E last) {
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
