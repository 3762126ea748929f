package org.framewright.frames;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What one file says, read once and kept until the file changes.
 *
 * @param whole whether its container is whole
 * @param hollow whether its end is empty or lacks something, so that it may yet be written
 * @param capture of a picture: its making; of a sidecar: its rating
 * @param id of a whole picture
 * @param trouble what is wrong with it
 * @param again whether it could not be read at all, so that reading it again may help
 */
record FileReading(
    boolean whole,
    boolean hollow,
    Capture capture,
    Optional<FrameId> id,
    Optional<String> trouble,
    boolean again) {
  private static final int END = 4096;
  private static final int DIGITS = 32;

  static FileReading of(Path path, FileRole role, Bytes.Room room) {
    try (var file = Bytes.open(path, room)) {
      return of(file, role);
    } catch (IOException e) {
      return unreadable(e);
    }
  }

  static FileReading of(Bytes file, FileRole role) {
    try {
      return role.isPicture() ? picture(file) : sidecar(file);
    } catch (IOException e) {
      return unreadable(e);
    }
  }

  private static FileReading unreadable(IOException e) {
    return new FileReading(
        false,
        false,
        Capture.UNKNOWN,
        Optional.empty(),
        Optional.of("it cannot be read (%s)".formatted(reason(e))),
        true);
  }

  /** The same, with the body that equal ones share, since a hundred thousand frames name few. */
  FileReading sharing(Map<Camera, Camera> bodies) {
    if (capture.camera().isEmpty()) {
      return this;
    }
    var body = bodies.computeIfAbsent(capture.camera().get(), same -> same);
    var shared = new Capture(capture.time(), capture.offset(), Optional.of(body), capture.rating());
    return new FileReading(whole, hollow, shared, id, trouble, again);
  }

  private static String reason(IOException e) {
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }

  private static FileReading broken(String trouble) {
    return new FileReading(
        false, false, Capture.UNKNOWN, Optional.empty(), Optional.of(trouble), false);
  }

  private static FileReading sidecar(Bytes file) throws IOException {
    try {
      var rating = Xmp.rating(file);
      return new FileReading(
          true,
          false,
          Capture.UNKNOWN.withRating(rating),
          Optional.empty(),
          Optional.empty(),
          false);
    } catch (Malformed e) {
      return broken(e.getMessage());
    }
  }

  private static FileReading picture(Bytes file) throws IOException {
    var contents = Contents.of(file);
    var capture = ExifReader.read(contents.exif());
    if (capture.rating().isEmpty()) {
      capture = capture.withRating(embeddedRating(contents));
    }
    var fault = contents.fault();
    if (fault.isPresent()) {
      return new FileReading(false, contents.isHollow(), capture, Optional.empty(), fault, false);
    }
    var id = Optional.of(identity(file, capture));
    var trouble =
        capture.time().isPresent()
            ? Optional.<String>empty()
            : Optional.of("its capture time cannot be read; it counts all the same");
    return new FileReading(true, contents.isHollow(), capture, id, trouble, false);
  }

  private static OptionalInt embeddedRating(Contents contents) throws IOException {
    if (contents.xmp().isEmpty()) {
      return OptionalInt.empty();
    }
    try {
      return Xmp.rating(contents.xmp().get());
    } catch (Malformed e) {
      // A picture is whole without the remarks inside it.
      return OptionalInt.empty();
    }
  }

  private static FrameId identity(Bytes file, Capture capture) throws IOException {
    try {
      var digest = MessageDigest.getInstance("SHA-256");
      var made =
          capture.time().map(Object::toString).orElse("")
              + '|'
              + capture.camera().map(body -> body.model() + '|' + body.serial()).orElse("")
              + '|'
              + file.size()
              + '|';
      digest.update(made.getBytes(StandardCharsets.UTF_8));
      int end = (int) Math.min(END, file.size());
      file.digest(0, end, digest);
      file.digest(file.size() - end, end, digest);
      return new FrameId(HexFormat.of().formatHex(digest.digest()).substring(0, DIGITS));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
