package org.framewright.mhl;

import com.dynatrace.hash4j.hashing.HashStream64;
import com.dynatrace.hash4j.hashing.Hashing;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/** The kinds of hashes that ASC MHL knows, in the order in which its schema has them. */
public enum HashKind {
  /** SHA-512 in digits of its own (SMPTE ST 2114). */
  C4(64),
  MD5(16),
  SHA1(20),
  XXH128(16),
  XXH3(8),
  XXH64(8);

  private final int length;

  HashKind(int length) {
    this.length = length;
  }

  /** The name of its element. */
  public String element() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Optional<HashKind> of(String element) {
    for (var kind : values()) {
      if (kind.element().equals(element)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  RunningHash begin() {
    return switch (this) {
      case C4 -> ofJava("SHA-512");
      case MD5 -> ofJava("MD5");
      case SHA1 -> ofJava("SHA-1");
      case XXH128 -> xxh128();
      case XXH3 -> xxh3();
      case XXH64 -> new Xxh64();
    };
  }

  /** A value as lists have it. */
  String text(byte[] value) {
    return this == C4 ? C4Id.encoded(value) : HexFormat.of().formatHex(value);
  }

  /** The value that a list has; empty where it is none of this kind. */
  Optional<byte[]> bytes(String text) {
    try {
      var bytes = this == C4 ? C4Id.decoded(text) : HexFormat.of().parseHex(text);
      return Optional.of(bytes).filter(value -> value.length == length);
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static RunningHash ofJava(String algorithm) {
    MessageDigest digest;
    try {
      digest = MessageDigest.getInstance(algorithm);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("this Java has no " + algorithm, e);
    }
    return new RunningHash() {
      @Override
      public void update(ByteBuffer piece) {
        digest.update(piece);
      }

      @Override
      public byte[] value() {
        return digest.digest();
      }
    };
  }

  private static RunningHash xxh128() {
    var stream = Hashing.xxh3_128().hashStream();
    return new Stream(
        stream,
        () -> {
          var value = stream.get();
          return ByteBuffer.allocate(16)
              .putLong(value.getMostSignificantBits())
              .putLong(value.getLeastSignificantBits())
              .array();
        });
  }

  private static RunningHash xxh3() {
    var stream = Hashing.xxh3_64().hashStream();
    return new Stream(
        stream, () -> ByteBuffer.allocate(Long.BYTES).putLong(stream.getAsLong()).array());
  }

  private static final class Stream implements RunningHash {
    private static final int PIECE = 1 << 16;

    private final HashStream64 stream;
    private final Supplier<byte[]> value;
    private final byte[] copy = new byte[PIECE];

    Stream(HashStream64 stream, Supplier<byte[]> value) {
      this.stream = stream;
      this.value = value;
    }

    @Override
    public void update(ByteBuffer piece) {
      while (piece.hasRemaining()) {
        int count = Math.min(copy.length, piece.remaining());
        piece.get(copy, 0, count);
        stream.putBytes(copy, 0, count);
      }
    }

    @Override
    public byte[] value() {
      return value.get();
    }
  }
}
