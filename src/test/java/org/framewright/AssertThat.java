package org.framewright;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.assertj.core.api.AbstractBooleanAssert;
import org.assertj.core.api.AbstractByteArrayAssert;
import org.assertj.core.api.AbstractCharacterAssert;
import org.assertj.core.api.AbstractDoubleAssert;
import org.assertj.core.api.AbstractDurationAssert;
import org.assertj.core.api.AbstractInstantAssert;
import org.assertj.core.api.AbstractIntArrayAssert;
import org.assertj.core.api.AbstractIntegerAssert;
import org.assertj.core.api.AbstractLongAssert;
import org.assertj.core.api.AbstractPathAssert;
import org.assertj.core.api.AbstractStringAssert;
import org.assertj.core.api.AbstractThrowableAssert;
import org.assertj.core.api.Assertions;
import org.assertj.core.api.AtomicIntegerAssert;
import org.assertj.core.api.IterableAssert;
import org.assertj.core.api.ListAssert;
import org.assertj.core.api.MapAssert;
import org.assertj.core.api.ObjectArrayAssert;
import org.assertj.core.api.ObjectAssert;
import org.assertj.core.api.OptionalAssert;
import org.assertj.core.api.OptionalDoubleAssert;
import org.assertj.core.api.OptionalIntAssert;
import org.assertj.core.api.OptionalLongAssert;

/**
 * AssertJ's {@code assertThat} for the types that the tests ask about. AssertJ has a hundred of
 * them under one name, and the compiler tries each at every call: with these few, the tests compile
 * in half of the time. A type that is not here is an {@link ObjectAssert}; one that needs more gets
 * its line.
 */
public final class AssertThat {
  private AssertThat() {}

  public static AbstractBooleanAssert<?> assertThat(boolean actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractIntegerAssert<?> assertThat(int actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractLongAssert<?> assertThat(long actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractDoubleAssert<?> assertThat(double actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractCharacterAssert<?> assertThat(char actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractByteArrayAssert<?> assertThat(byte[] actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractIntArrayAssert<?> assertThat(int[] actual) {
    return Assertions.assertThat(actual);
  }

  public static <T> ObjectArrayAssert<T> assertThat(T[] actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractStringAssert<?> assertThat(String actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractPathAssert<?> assertThat(Path actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractInstantAssert<?> assertThat(Instant actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractDurationAssert<?> assertThat(Duration actual) {
    return Assertions.assertThat(actual);
  }

  public static <T> OptionalAssert<T> assertThat(Optional<T> actual) {
    return Assertions.assertThat(actual);
  }

  public static <T> ListAssert<T> assertThat(List<? extends T> actual) {
    return Assertions.assertThat(actual);
  }

  public static <T> IterableAssert<T> assertThat(Iterable<? extends T> actual) {
    return Assertions.assertThat(actual);
  }

  public static <T> ListAssert<T> assertThat(Stream<? extends T> actual) {
    return Assertions.assertThat(actual);
  }

  public static <K, V> MapAssert<K, V> assertThat(Map<K, V> actual) {
    return Assertions.assertThat(actual);
  }

  public static <T extends Throwable> AbstractThrowableAssert<?, T> assertThat(T actual) {
    return Assertions.assertThat(actual);
  }

  public static <T> ObjectAssert<T> assertThat(T actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractBooleanAssert<?> assertThat(Boolean actual) {
    return Assertions.assertThat(actual);
  }

  public static OptionalIntAssert assertThat(OptionalInt actual) {
    return Assertions.assertThat(actual);
  }

  public static OptionalLongAssert assertThat(OptionalLong actual) {
    return Assertions.assertThat(actual);
  }

  public static OptionalDoubleAssert assertThat(OptionalDouble actual) {
    return Assertions.assertThat(actual);
  }

  public static AtomicIntegerAssert assertThat(AtomicInteger actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractIntegerAssert<?> assertThat(Integer actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractLongAssert<?> assertThat(Long actual) {
    return Assertions.assertThat(actual);
  }

  public static AbstractDoubleAssert<?> assertThat(Double actual) {
    return Assertions.assertThat(actual);
  }
}
