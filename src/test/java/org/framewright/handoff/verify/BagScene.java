package org.framewright.handoff.verify;

import static java.nio.charset.StandardCharsets.UTF_8;

import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;

/** A bag of two files, to be changed, and a second opinion on it. */
final class BagScene {
  static final String FIRST = "data/a b.JPG";
  static final String SECOND = "data/raw/a b.DNG";

  /** It tells each of its steps. */
  private static final Logger TOLD = Logger.getLogger("gov.loc");

  private final Path bag;

  BagScene(Path bag) throws IOException {
    this.bag = bag;
    Files.createDirectories(bag.resolve("data/raw"));
    Files.writeString(bag.resolve(FIRST), "pixels");
    Files.writeString(bag.resolve(SECOND), "more pixels");
    write("bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    write("bag-info.txt", "Contact-Name: Ines\nPayload-Oxum: 17.2\n");
    write("manifest-sha256.txt", line("sha256", FIRST) + line("sha256", SECOND));
  }

  Path folder() {
    return bag;
  }

  void write(String file, String text) throws IOException {
    Files.createDirectories(bag.resolve(file).getParent());
    Files.write(bag.resolve(file), text.getBytes(UTF_8));
  }

  void append(String file, String text) throws IOException {
    var before = Files.exists(bag.resolve(file)) ? Files.readString(bag.resolve(file)) : "";
    write(file, before + text);
  }

  /** Exchanges a text in a file. */
  void edit(String file, String before, String after) throws IOException {
    var text = Files.readString(bag.resolve(file));
    if (!text.contains(before)) {
      throw new IllegalArgumentException(file + " has no " + before);
    }
    write(file, text.replace(before, after));
  }

  void version(String version) throws IOException {
    edit("bagit.txt", "1.0", version);
  }

  /** The checksum of a file that is there, by the JDK. */
  String sum(String kind, String file) throws IOException {
    try {
      var digest = MessageDigest.getInstance(kind.replace("sha", "SHA-").toUpperCase(Locale.ROOT));
      return HexFormat.of().formatHex(digest.digest(Files.readAllBytes(bag.resolve(file))));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalArgumentException(e);
    }
  }

  String line(String kind, String file) throws IOException {
    return sum(kind, file) + "  " + file + "\n";
  }

  PackageCheck check() throws IOException {
    return OpenPackage.check(bag).orElseThrow();
  }

  String problems() throws IOException {
    return String.join("\n", PackageDescription.problems(check()));
  }

  /**
   * What the reference library of the Library of Congress (5.2.0) has against a bag; empty where it
   * is valid.
   */
  static Optional<String> reference(Path bag) throws InterruptedException {
    TOLD.setLevel(Level.OFF);
    try (var verifier = new BagVerifier()) {
      var read = new BagReader().read(bag);
      if (BagVerifier.canQuickVerify(read)) {
        BagVerifier.quicklyVerify(read);
      }
      verifier.isValid(read, false);
      return Optional.empty();
    } catch (InterruptedException e) {
      throw e;
    } catch (Exception e) {
      return Optional.of(e.getClass().getSimpleName() + ": " + e.getMessage());
    }
  }
}
