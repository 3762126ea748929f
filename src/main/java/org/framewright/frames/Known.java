package org.framewright.frames;

import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.framewright.base.Problem;

/** One file as it was seen, and what was read of it. */
final class Known {
  final String name;
  final FrameFile file;
  final StemGroup group;
  private final Object key;
  private int listing;
  private Instant since;
  private Instant seen;
  FileReading reading;
  private Instant readAt;
  private boolean gone;

  Known(String name, FrameFile file, StemGroup group, Object key, Instant since, int listing) {
    this.name = name;
    this.file = file;
    this.group = group;
    this.key = key;
    this.listing = listing;
    this.since = since;
    this.seen = since;
  }

  /** Notes that a look saw it as it was. */
  void stayed(Instant now, int inListing) {
    seen = now;
    listing = inListing;
  }

  /** Notes that it is still there, of which a look could learn no more. */
  void keep(int inListing) {
    listing = inListing;
  }

  boolean isOf(int thatListing) {
    return listing == thatListing;
  }

  void leave() {
    gone = true;
  }

  /** Whether it vanished, perhaps only between the look at it and the reading. */
  boolean isGone() {
    return gone;
  }

  /** Whether what was read of it may become more when it is looked at again. */
  boolean isUnsettled() {
    return reading == null || reading.hollow();
  }

  boolean isExposure() {
    return file.role().isExposure();
  }

  String stem() {
    return Stems.of(name, file.role());
  }

  /** The stem as far as it is text. */
  String shownStem() {
    return Stems.of(file.path().getFileName().toString(), file.role());
  }

  /** Stands for the frame while its files do not yet give it an identity. */
  FrameId provisionalId() {
    return new FrameId("incomplete " + SpelledName.shown(file.path()));
  }

  void problems(List<Problem> into) {
    if (!SpelledName.isText(file.path().getFileName())) {
      into.add(FrameProblems.nameIsNoText(file.path()));
    }
    if (reading != null) {
      reading.problem().ifPresent(problem -> into.add(FrameProblems.at(file.path(), problem)));
    }
  }

  Optional<FrameId> id() {
    return reading == null ? Optional.empty() : reading.id();
  }

  boolean isStill(BasicFileAttributes attributes) {
    return file.size() == attributes.size()
        && file.modified().equals(attributes.lastModifiedTime().toInstant())
        && Objects.equals(key, attributes.fileKey());
  }

  /** Whether two looks that far apart saw the same. */
  private boolean held(Duration needed) {
    if (seen.isBefore(since)) {
      since = seen;
    }
    return !seen.isBefore(since.plus(needed));
  }

  private boolean isOld(Duration age) {
    return !file.modified().isAfter(seen.minus(age));
  }

  boolean isDue(Instant now) {
    if (reading != null) {
      return reading.again() && !now.isBefore(readAt.plus(FrameScanner.OLD));
    }
    return held(FrameScanner.SETTLE) || isOld(FrameScanner.OLD);
  }

  boolean isComplete() {
    return reading != null
        && reading.whole()
        && (!reading.hollow() || held(FrameScanner.HOLLOW) || isOld(FrameScanner.HOLLOW));
  }

  boolean isDone() {
    return reading != null && !reading.again() && (isComplete() || !reading.whole());
  }

  void read(Instant now, FileReader reader, Map<Camera, Camera> bodies, Bytes.Room room) {
    var fresh = reader.read(file.path(), file.role(), room);
    if (fresh.isEmpty()) {
      gone = true;
      return;
    }
    reading = fresh.get().sharing(bodies);
    readAt = now;
  }
}
