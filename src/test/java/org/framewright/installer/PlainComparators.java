package org.framewright.installer;

import java.util.Comparator;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.function.ToLongFunction;

/**
 * Stands in packages for the methods of {@link Comparator} of the same names. Those of the JDK give
 * comparators that can be serialized, which no cache keeps: the first that a command uses costs 10
 * to 20 milliseconds.
 */
public final class PlainComparators {
  private PlainComparators() {}

  /** As {@link Comparator#comparing(Function)}. */
  public static <T, U extends Comparable<? super U>> Comparator<T> comparing(
      Function<? super T, ? extends U> key) {
    Objects.requireNonNull(key);
    return (one, other) -> key.apply(one).compareTo(key.apply(other));
  }

  /** As {@link Comparator#comparing(Function, Comparator)}. */
  public static <T, U> Comparator<T> comparing(
      Function<? super T, ? extends U> key, Comparator<? super U> order) {
    Objects.requireNonNull(key);
    Objects.requireNonNull(order);
    return (one, other) -> order.compare(key.apply(one), key.apply(other));
  }

  /** As {@link Comparator#comparingInt}. */
  public static <T> Comparator<T> comparingInt(ToIntFunction<? super T> key) {
    Objects.requireNonNull(key);
    return (one, other) -> Integer.compare(key.applyAsInt(one), key.applyAsInt(other));
  }

  /** As {@link Comparator#comparingLong}. */
  public static <T> Comparator<T> comparingLong(ToLongFunction<? super T> key) {
    Objects.requireNonNull(key);
    return (one, other) -> Long.compare(key.applyAsLong(one), key.applyAsLong(other));
  }

  /** As {@link Comparator#comparingDouble}. */
  public static <T> Comparator<T> comparingDouble(ToDoubleFunction<? super T> key) {
    Objects.requireNonNull(key);
    return (one, other) -> Double.compare(key.applyAsDouble(one), key.applyAsDouble(other));
  }

  /** As {@link Comparator#thenComparing(Comparator)}. */
  public static <T> Comparator<T> thenComparing(Comparator<T> first, Comparator<? super T> then) {
    Objects.requireNonNull(then);
    return (one, other) -> {
      int order = first.compare(one, other);
      return order == 0 ? then.compare(one, other) : order;
    };
  }

  /** As {@link Comparator#thenComparing(Function)}. */
  public static <T, U extends Comparable<? super U>> Comparator<T> thenComparing(
      Comparator<T> first, Function<? super T, ? extends U> key) {
    return thenComparing(first, comparing(key));
  }

  /** As {@link Comparator#thenComparing(Function, Comparator)}. */
  public static <T, U> Comparator<T> thenComparing(
      Comparator<T> first, Function<? super T, ? extends U> key, Comparator<? super U> order) {
    return thenComparing(first, comparing(key, order));
  }

  /** As {@link Comparator#thenComparingInt}. */
  public static <T> Comparator<T> thenComparingInt(
      Comparator<T> first, ToIntFunction<? super T> key) {
    return thenComparing(first, comparingInt(key));
  }

  /** As {@link Comparator#thenComparingLong}. */
  public static <T> Comparator<T> thenComparingLong(
      Comparator<T> first, ToLongFunction<? super T> key) {
    return thenComparing(first, comparingLong(key));
  }

  /** As {@link Comparator#thenComparingDouble}. */
  public static <T> Comparator<T> thenComparingDouble(
      Comparator<T> first, ToDoubleFunction<? super T> key) {
    return thenComparing(first, comparingDouble(key));
  }
}
