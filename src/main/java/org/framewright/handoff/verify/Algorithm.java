package org.framewright.handoff.verify;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The kinds of checksums that bags and lists of checksums have, as far as they are read here. */
enum Algorithm {
  MD5("MD5", 32),
  SHA1("SHA-1", 40),
  SHA224("SHA-224", 56),
  SHA256("SHA-256", 64),
  SHA384("SHA-384", 96),
  SHA512("SHA-512", 128);

  private final String called;
  private final int digits;

  Algorithm(String called, int digits) {
    this.called = called;
    this.digits = digits;
  }

  /** The kind by the word that names of files have for it, such as {@code sha256}. */
  static Optional<Algorithm> of(String word) {
    return Arrays.stream(values()).filter(one -> one.word().equals(word)).findFirst();
  }

  /**
   * RFC 8493, section 2.4: the usual name in small letters, without anything but letters, digits.
   */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  int digits() {
    return digits;
  }

  MessageDigest digest() {
    try {
      return MessageDigest.getInstance(called);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("this Java has no " + called, e);
    }
  }
}
