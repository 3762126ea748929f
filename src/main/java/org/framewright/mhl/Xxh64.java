package org.framewright.mhl;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** XXH64 with the seed 0. Source: the xxHash fast digest algorithm, format description 0.1.1. */
final class Xxh64 implements RunningHash {
  private static final long PRIME_1 = 0x9E3779B185EBCA87L;
  private static final long PRIME_2 = 0xC2B2AE3D27D4EB4FL;
  private static final long PRIME_3 = 0x165667B19E3779F9L;
  private static final long PRIME_4 = 0x85EBCA77C2B2AE63L;
  private static final long PRIME_5 = 0x27D4EB2F165667C5L;
  private static final int STRIPE = 32;

  private final ByteBuffer rest = ByteBuffer.allocate(STRIPE).order(ByteOrder.LITTLE_ENDIAN);
  private long first = PRIME_1;
  private long second = PRIME_2;
  private long third;
  private long fourth = -PRIME_1;
  private long length;

  Xxh64() {
    first += PRIME_2; // Modulo 2 to the 64th power, as all sums here.
  }

  @Override
  public void update(ByteBuffer piece) {
    length += piece.remaining();
    if (rest.position() > 0) {
      while (rest.hasRemaining() && piece.hasRemaining()) {
        rest.put(piece.get());
      }
      if (rest.hasRemaining()) {
        return;
      }
      stripe(rest.flip());
      rest.clear();
    }
    var stripes = piece.slice().order(ByteOrder.LITTLE_ENDIAN);
    while (stripes.remaining() >= STRIPE) {
      stripe(stripes);
    }
    rest.put(stripes);
    piece.position(piece.limit());
  }

  private void stripe(ByteBuffer from) {
    first = round(first, from.getLong());
    second = round(second, from.getLong());
    third = round(third, from.getLong());
    fourth = round(fourth, from.getLong());
  }

  private static long round(long sum, long lane) {
    return Long.rotateLeft(sum + lane * PRIME_2, 31) * PRIME_1;
  }

  private static long merge(long sum, long lane) {
    return (sum ^ round(0, lane)) * PRIME_1 + PRIME_4;
  }

  @Override
  public byte[] value() {
    long sum;
    if (length >= STRIPE) {
      sum =
          Long.rotateLeft(first, 1)
              + Long.rotateLeft(second, 7)
              + Long.rotateLeft(third, 12)
              + Long.rotateLeft(fourth, 18);
      sum = merge(merge(merge(merge(sum, first), second), third), fourth);
    } else {
      sum = PRIME_5;
    }
    sum += length;
    rest.flip();
    while (rest.remaining() >= Long.BYTES) {
      sum = Long.rotateLeft(sum ^ round(0, rest.getLong()), 27) * PRIME_1 + PRIME_4;
    }
    if (rest.remaining() >= Integer.BYTES) {
      sum ^= (rest.getInt() & 0xFFFFFFFFL) * PRIME_1;
      sum = Long.rotateLeft(sum, 23) * PRIME_2 + PRIME_3;
    }
    while (rest.hasRemaining()) {
      sum = Long.rotateLeft(sum ^ (rest.get() & 0xFF) * PRIME_5, 11) * PRIME_1;
    }
    sum = (sum ^ sum >>> 33) * PRIME_2;
    sum = (sum ^ sum >>> 29) * PRIME_3;
    return ByteBuffer.allocate(Long.BYTES).putLong(sum ^ sum >>> 32).array();
  }
}
