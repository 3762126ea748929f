package org.framewright.frames;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Problem;
import org.framewright.base.Sha256;
import org.framewright.base.Text;

/**
 * What one file says, read once and kept until the file changes.
 *
 * @param whole whether its container is whole
 * @param hollow whether its end is empty or lacks something, so that it may yet be written
 * @param capture of a picture or clip: its making; of a sidecar: its rating
 * @param id of a whole picture or clip
 * @param problem what is wrong with it; where is left open
 * @param again whether it could not be read at all, so that reading it again may help
 */
record FileReading(
    boolean whole,
    boolean hollow,
    Capture capture,
    Optional<FrameId> id,
    Optional<Problem> problem,
    boolean again) {
  private static final int END = 4096;
  private static final int DIGITS = 32;

  /** Reads a file; nothing where it is gone. */
  static Optional<FileReading> of(Path path, FileRole role, Bytes.Room room) {
    try (var file = Bytes.open(path, room)) {
      return Optional.of(of(file, role, Endings.isOpaque(path.getFileName().toString())));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    } catch (IOException e) {
      return Optional.of(unreadable(e));
    }
  }

  static FileReading of(Bytes file, FileRole role) {
    return of(file, role, false);
  }

  /**
   * @param opaque whether its ending allows a container that no reader knows
   */
  private static FileReading of(Bytes file, FileRole role, boolean opaque) {
    return of(
        file,
        role.isExposure()
            ? bytes -> picture(bytes, role == FileRole.RAW, opaque)
            : FileReading::sidecar);
  }

  interface Structure {
    FileReading read(Bytes file) throws IOException;
  }

  static FileReading of(Bytes file, Structure structure) {
    try {
      return structure.read(file);
    } catch (IOException e) {
      return unreadable(e);
    } catch (RuntimeException | StackOverflowError e) {
      // The readers are bounded, so this is a fault of one of them: it costs this file, no scan.
      return broken(Text.of("its structure cannot be understood"));
    }
  }

  private static FileReading unreadable(IOException e) {
    return new FileReading(
        false,
        false,
        Capture.UNKNOWN,
        Optional.empty(),
        Optional.of(FrameProblems.unreadable(e)),
        true);
  }

  /** The same, with the body that equal ones share, since a hundred thousand frames name few. */
  FileReading sharing(Map<Camera, Camera> bodies) {
    if (capture.camera().isEmpty()) {
      return this;
    }
    var body = bodies.computeIfAbsent(capture.camera().get(), same -> same);
    var shared =
        new Capture(
            capture.time(), capture.offset(), Optional.of(body), capture.rating(), capture.label());
    return new FileReading(whole, hollow, shared, id, problem, again);
  }

  private static FileReading broken(Text what) {
    return new FileReading(
        false,
        false,
        Capture.UNKNOWN,
        Optional.empty(),
        Optional.of(FrameProblems.broken(what)),
        false);
  }

  private static FileReading sidecar(Bytes file) throws IOException {
    try {
      var said = Xmp.read(file);
      var rating = said.rating().isPresent() ? said.rating() : said.share();
      return new FileReading(
          true,
          false,
          Capture.UNKNOWN.judged(rating, said.label()),
          Optional.empty(),
          Optional.empty(),
          false);
    } catch (Malformed e) {
      return broken(e.said());
    }
  }

  private static FileReading picture(Bytes file, boolean raw, boolean opaque) throws IOException {
    var contents = Contents.of(file);
    var capture = ExifReader.read(contents.exif(), raw).or(contents.said());
    var said = embedded(contents);
    capture = capture.judged(rating(said, capture.rating()), said.label());
    var fault = opaque ? contents.certainFault() : contents.fault();
    if (fault.isPresent()) {
      return new FileReading(
          false,
          contents.isHollow(),
          capture,
          Optional.empty(),
          fault.map(FrameProblems::broken),
          false);
    }
    var id = Optional.of(identity(file, capture));
    var problem =
        capture.time().isPresent()
            ? Optional.<Problem>empty()
            : Optional.of(FrameProblems.withoutCaptureTime());
    return new FileReading(true, contents.isHollow(), capture, id, problem, false);
  }

  /** The first that says anything: bodies write a 0 into every picture. */
  private static OptionalInt rating(Xmp said, OptionalInt exif) {
    if (said.rating().orElse(0) != 0) {
      return said.rating();
    }
    return exif.isPresent() ? exif : said.share();
  }

  private static Xmp embedded(Contents contents) throws IOException {
    if (contents.xmp().isEmpty()) {
      return Xmp.NONE;
    }
    try {
      return Xmp.read(contents.xmp().get());
    } catch (Malformed e) {
      // A picture is whole without the remarks inside it.
      return Xmp.NONE;
    }
  }

  private static FrameId identity(Bytes file, Capture capture) throws IOException {
    var digest = Sha256.digest();
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
    return new FrameId(Sha256.hex(digest).substring(0, DIGITS));
  }
}
