package org.framewright.handoff.verify;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.mhl.HashKind;
import org.framewright.mhl.RunningHashes;

/** Reads the files of a package, each once, whatever number of lists names it. */
final class FileReading {
  private static final int PIECE = 1 << 18;

  private final Plan plan;
  private final Progress progress;
  private final int total;
  private final ByteBuffer piece = ByteBuffer.allocate(PIECE);
  private long done;

  FileReading(Plan plan, Progress progress) {
    this.plan = plan;
    this.progress = progress;
    this.total = mebibytes(plan.bytes());
  }

  private static int mebibytes(long bytes) {
    return (int) Math.min(Integer.MAX_VALUE, bytes >> 20);
  }

  /** What a file was found to be. */
  private enum State {
    SAME,
    DIFFERENT,
    CANCELLED
  }

  /** Reads all; empty where somebody stopped it. */
  Optional<PackageCheck> run() {
    var known = plan.known();
    var missing = new TreeSet<>(known.missing());
    var different = new ArrayList<String>();
    var faults = new ArrayList<>(known.faults());
    int files = 0;
    for (var reading : plan.readings()) {
      if (progress.cancelled()) {
        return Optional.empty();
      }
      var name = reading.file().name();
      try {
        switch (compared(reading)) {
          case SAME -> {}
          case DIFFERENT -> different.add(name);
          case CANCELLED -> {
            return Optional.empty();
          }
        }
        files++;
      } catch (NoSuchFileException e) {
        missing.add(name);
      } catch (IOException e) {
        Problem said = FileProblems.of(e);
        faults.add(said.at(name));
      }
    }
    return Optional.of(
        new PackageCheck(
            known.kind(),
            known.lists(),
            known.closed(),
            files,
            List.copyOf(missing),
            different,
            known.unlisted(),
            known.notFetched(),
            faults,
            known.warnings()));
  }

  private State compared(Plan.Reading reading) throws IOException {
    var size = reading.size();
    if (size.isPresent() && size.getAsLong() != reading.file().bytes()) {
      step(reading.file().bytes());
      return State.DIFFERENT;
    }
    var plain = new EnumMap<Algorithm, MessageDigest>(Algorithm.class);
    var media = EnumSet.noneOf(HashKind.class);
    for (var sum : reading.sums()) {
      switch (sum) {
        case Sum.Plain one -> plain.computeIfAbsent(one.kind(), Algorithm::digest);
        case Sum.Media one -> media.add(one.kind());
      }
    }
    var hashes = new RunningHashes(media);
    try (var in =
        FileChannel.open(
            reading.file().path(), StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS)) {
      while (in.read(piece.clear()) >= 0) {
        piece.flip();
        plain.values().forEach(digest -> digest.update(piece.duplicate()));
        hashes.update(piece);
        step(piece.limit());
        if (progress.cancelled()) {
          return State.CANCELLED;
        }
      }
    }
    var digests = new EnumMap<Algorithm, String>(Algorithm.class);
    plain.forEach((kind, digest) -> digests.put(kind, HexFormat.of().formatHex(digest.digest())));
    return isAll(reading.sums(), digests, hashes.values()) ? State.SAME : State.DIFFERENT;
  }

  private static boolean isAll(
      List<Sum> sums, Map<Algorithm, String> plain, Map<HashKind, String> media) {
    return sums.stream()
        .allMatch(
            sum ->
                switch (sum) {
                  case Sum.Plain one -> one.value().equals(plain.get(one.kind()));
                  case Sum.Media one -> one.value().equals(media.get(one.kind()));
                });
  }

  /** In whole mebibytes, of which no work has more than a number has. */
  private void step(long bytes) {
    int before = mebibytes(done);
    done += bytes;
    if (mebibytes(done) > before) {
      progress.step(Math.min(total, mebibytes(done)), total);
    }
  }
}
