package org.framewright.frames;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** Tells of a file of which nothing is known whether it is a whole picture, by its structure. */
public final class PictureFile {
  private PictureFile() {}

  /**
   * Why a file is no whole picture, in words; empty where it is one: a JPEG, TIFF, BigTIFF, PNG,
   * PSD, WebP, HEIF or raw, whatever its ending says. Its pixels are not decoded. Links are not
   * followed.
   */
  public static Optional<Text> fault(Path path) {
    try (var file = Bytes.open(path)) {
      if (PsdReader.claims(file)) {
        PsdReader.read(file);
        return Optional.empty();
      }
      if (BigTiffReader.claims(file)) {
        BigTiffReader.read(file);
        return Optional.empty();
      }
      if (WebpReader.claims(file)) {
        WebpReader.read(file);
        return Optional.empty();
      }
      // A file that somebody sent is not still being written.
      var contents = Contents.of(file);
      return contents.fault().or(contents::lacking);
    } catch (Malformed e) {
      return Optional.of(e.said());
    } catch (IOException e) {
      return Optional.of(FileProblems.of(e).fault());
    } catch (RuntimeException | StackOverflowError e) {
      // The readers are bounded, so this is a fault of one of them.
      return Optional.of(Text.of("its structure cannot be understood"));
    }
  }

  /**
   * Why a picture or clip of a card is not whole, in words; empty where it is, or where its ending
   * allows a container that is not known here. Links are not followed.
   */
  public static Optional<Text> faultOfFrame(Path path) {
    var role = FileRole.of(path).filter(FileRole::isExposure);
    if (role.isEmpty()) {
      return Optional.empty();
    }
    var reading = FileReading.of(path, role.get(), new Bytes.Room());
    return reading.isPresent() && !reading.get().whole()
        ? Optional.of(
            reading.get().problem().map(Problem::fault).orElse(Text.of("it is not whole")))
        : Optional.empty();
  }

  /** What a picture or clip says of its making; empty where it says nothing or cannot be read. */
  public static Optional<Capture> capture(Path path) {
    return FileRole.of(path)
        .filter(FileRole::isExposure)
        .flatMap(role -> FileReading.of(path, role, new Bytes.Room()))
        .map(FileReading::capture);
  }
}
