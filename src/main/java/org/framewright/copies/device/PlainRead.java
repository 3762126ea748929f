package org.framewright.copies.device;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import org.framewright.base.Progress;
import org.framewright.base.SmallFiles;

/** A read through the memory of the system: right or not, it proves nothing of the disk. */
final class PlainRead {
  private static final int PIECE = 1 << 20;

  private PlainRead() {}

  static Reading of(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException {
    var before = look(file);
    SmallFiles.requirePlain(file, before);
    MessageDigest digest;
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java runtime has SHA-256", e);
    }
    long size = before.size();
    int pieces = (int) Math.min(Integer.MAX_VALUE, (size + PIECE - 1) / PIECE);
    try (var channel = FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS)) {
      var piece = ByteBuffer.allocateDirect(PIECE);
      for (long at = 0; at < size; at += piece.limit()) {
        if (progress.cancelled()) {
          throw new CancellationException();
        }
        piece.clear().limit((int) Math.min(PIECE, size - at));
        if (channel.read(piece, at) <= 0) {
          throw new EOFException(file.toString());
        }
        piece.flip();
        digest.update(piece.duplicate());
        each.accept(piece.asReadOnlyBuffer());
        progress.step((int) ((at + piece.limit() + PIECE - 1) / PIECE), pieces);
      }
    }
    var after = look(file);
    if (after.size() != size || !after.lastModifiedTime().equals(before.lastModifiedTime())) {
      throw new FileSystemException(file.toString(), null, "it changed while it was read");
    }
    return new Reading(
        HexFormat.of().formatHex(digest.digest()), size, Medium.UNSURE, before.lastModifiedTime());
  }

  private static BasicFileAttributes look(Path file) throws IOException {
    return Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
  }
}
