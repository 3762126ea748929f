package org.framewright.job;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.framewright.base.Sha256;
import org.framewright.job.EventCodec.BadLine;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * The checksums of a folder of logs: of each file up to each sign-off, and up to its last line that
 * ended. Nothing is read through a link, and of a line that is too long to be an event nothing is
 * kept.
 */
final class LogProofs {
  private static final String ENDING = ".jsonl";
  private static final int PIECE = 1 << 16;

  /** Other names would need quotes in a shell, and no station has one. */
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9-]{0,200}\\.jsonl");

  private static final Pattern FOLDER = Pattern.compile("[A-Za-z0-9][A-Za-z0-9-]{0,200}");

  /** What tells one sign-off from another. */
  private record Key(String setup, String by, Instant at) {}

  private final Map<Key, LogProof> signOffs = new HashMap<>();
  private final List<LogProof> files = new ArrayList<>();

  private LogProofs() {}

  /** Reads the logs of a job. */
  static LogProofs of(JobLayout job) throws IOException {
    var proofs = new LogProofs();
    PlainFiles.requireFolder(job.log());
    for (var brought : FileEventLog.foldersFromStore(job.log())) {
      if (FOLDER.matcher(brought.getFileName().toString()).matches()) {
        proofs.readAll(brought, job.root());
      }
    }
    // The log that its station wrote here proves more than what was brought of it.
    proofs.readAll(job.log(), job.root());
    return proofs;
  }

  private void readAll(Path folder, Path root) throws IOException {
    var logs = new ArrayList<Path>();
    try (var found = Files.newDirectoryStream(folder, "*" + ENDING)) {
      found.forEach(logs::add);
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    logs.sort(null);
    for (var log : logs) {
      var attributes = PlainFiles.look(log);
      if (NAME.matcher(log.getFileName().toString()).matches()
          && attributes.isPresent()
          && attributes.get().isRegularFile()
          && attributes.get().size() <= LogFolder.LARGEST) {
        read(log, root);
      }
    }
  }

  /** The log up to a sign-off. */
  Optional<LogProof> signOff(String setup, String by, Instant at) {
    return Optional.ofNullable(signOffs.get(new Key(Setup.canonicalKey(setup), by, at)));
  }

  /** Each log up to its last line that ended. */
  List<LogProof> files() {
    return List.copyOf(files);
  }

  private void read(Path log, Path root) throws IOException {
    var name = root.relativize(log).toString().replace('\\', '/');
    var digest = Sha256.digest();
    var line = new ByteArrayOutputStream();
    boolean overlong = false;
    long end = 0;
    Optional<LogProof> last = Optional.empty();
    try (var channel =
        Files.newByteChannel(log, Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS))) {
      var piece = ByteBuffer.allocate(PIECE);
      while (channel.read(piece.clear()) > 0) {
        int from = 0;
        for (int i = 0; i < piece.position(); i++) {
          if (piece.get(i) != '\n') {
            continue;
          }
          digest.update(piece.array(), from, i - from);
          overlong = !keep(line, overlong, piece.array(), from, i);
          long bytes = end + i;
          var sum = sum(digest);
          last = Optional.of(new LogProof(name, bytes, sum));
          if (!overlong) {
            signOff(line.toByteArray(), last.get());
          }
          line.reset();
          overlong = false;
          digest.update((byte) '\n');
          from = i + 1;
        }
        digest.update(piece.array(), from, piece.position() - from);
        overlong = !keep(line, overlong, piece.array(), from, piece.position());
        end += piece.position();
      }
    }
    if (!overlong && line.size() > 0) {
      // A last line may count although its line feed is missing.
      signOff(line.toByteArray(), new LogProof(name, end, sum(digest)));
    }
    last.ifPresent(files::add);
  }

  private static boolean keep(
      ByteArrayOutputStream line, boolean overlong, byte[] bytes, int from, int to) {
    if (overlong || line.size() + (to - from) > LogTail.LONGEST_LINE) {
      line.reset();
      return false;
    }
    line.write(bytes, from, to - from);
    return true;
  }

  private static String sum(MessageDigest digest) {
    try {
      return HexFormat.of().formatHex(((MessageDigest) digest.clone()).digest());
    } catch (CloneNotSupportedException e) {
      throw new IllegalStateException("SHA-256 of every Java goes on after a look at it", e);
    }
  }

  private void signOff(byte[] text, LogProof proof) {
    try {
      var entry = EventCodec.decode(text).entry();
      if (entry.event() instanceof Event.Marked marked
          && marked.state() == SetupState.SIGNED_OFF
          && marked.details().by().isPresent()) {
        signOffs.put(
            new Key(Setup.canonicalKey(marked.setup()), marked.details().by().get(), entry.time()),
            proof);
      }
    } catch (BadLine e) {
      // No event, so no sign-off.
    }
  }
}
