package org.framewright.base;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.HexFormat;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Writes whole files so that a crash, a kill or a full disk leaves the old file or the new one,
 * never a part of it: a temporary file beside the target is written and flushed, takes the target's
 * name, and the folder is flushed. When a call returns, the file survives a power cut as far as the
 * disk keeps its word.
 *
 * <p>A kill may leave a temporary file, {@code .NAME.HEX.part}; the next write of the same file
 * removes it once no process holds it.
 */
public final class DurableFiles {
  private static final String ENDING = ".part";
  private static final int NAME_LENGTH = 12;
  private static final Pattern LEFTOVER =
      Pattern.compile("\\.(.+)\\.[^.]{" + NAME_LENGTH + "}\\.part", Pattern.DOTALL);

  /** Another write looked at the new file before it was held. */
  private static final String TAKEN = "another program took the temporary file";

  /** What a file is to hold, written piece by piece where it is too large to be held at once. */
  @FunctionalInterface
  public interface Content {
    /** Writes all of it; what is thrown here leaves no file. */
    void writeTo(OutputStream out) throws IOException;
  }

  private DurableFiles() {}

  /**
   * Writes a file that must not exist yet.
   *
   * @throws FileAlreadyExistsException if anything has that name; it is as it was
   */
  public static void create(Path file, byte[] bytes) throws IOException {
    create(file, out -> out.write(bytes));
  }

  /**
   * The same piece by piece.
   *
   * @throws FileAlreadyExistsException if anything has that name; it is as it was
   */
  public static void create(Path file, Content content) throws IOException {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileAlreadyExistsException(file.toString());
    }
    write(file, content, temporary -> place(temporary, file));
  }

  /**
   * Writes a file in place of the one of that name, if there is one, and keeps who may read it.
   *
   * @throws FileSystemException if something other than a regular file has that name: a folder, a
   *     link, a device
   */
  public static void replace(Path file, byte[] bytes) throws IOException {
    replace(file, out -> out.write(bytes));
  }

  /**
   * The same piece by piece.
   *
   * @throws FileSystemException if something other than a regular file has that name
   */
  public static void replace(Path file, Content content) throws IOException {
    boolean there = Files.exists(file, LinkOption.NOFOLLOW_LINKS);
    if (there && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileSystemException(file.toString(), null, "not a regular file");
    }
    write(
        file,
        content,
        temporary -> {
          if (there) {
            keepPermissions(file, temporary);
          }
          // On one volume this is one step of the file system: the old file or the new one.
          new Patience()
              .with(
                  failure -> Patience.mayPass(OperatingSystem.current(), failure),
                  () ->
                      Files.move(
                          temporary,
                          file,
                          StandardCopyOption.ATOMIC_MOVE,
                          StandardCopyOption.REPLACE_EXISTING));
        });
  }

  /** Makes a folder and flushes the one that it is in; one that exists is left as it is. */
  public static void createFolder(Path folder) throws IOException {
    if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    Files.createDirectory(folder);
    OwnFolder.hide(folder);
    syncFolder(folder.toAbsolutePath().getParent());
  }

  /** Makes the names in a folder durable, where the system lets us. */
  public static void syncFolder(Path folder) throws IOException {
    try (var channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (AccessDeniedException e) {
      // Windows opens no folders; it makes names durable by itself.
      if (!Files.isDirectory(folder)) {
        throw e;
      }
    } catch (IOException e) {
      if (!isUnsupported(e)) {
        throw FileProblems.named(folder, e);
      }
    }
  }

  /** Makes what a file holds lasting, whoever wrote it. */
  public static void syncFile(Path file) throws IOException {
    try (var channel =
        FileChannel.open(file, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS)) {
      channel.force(true);
    }
  }

  /** Some servers flush no folders: the words of strerror(3) for EINVAL and EOPNOTSUPP. */
  private static boolean isUnsupported(IOException failure) {
    var said = String.valueOf(failure.getMessage());
    return !(failure instanceof FileSystemException)
        && (said.equals("Invalid argument") || said.endsWith("not supported"));
  }

  /** Writes all bytes to a new file of its own and flushes it. */
  public static void writeFlushed(Path newFile, byte[] bytes) throws IOException {
    writeFlushed(newFile, out -> out.write(bytes));
  }

  /** The same piece by piece; what is thrown while it is written leaves a part of it. */
  public static void writeFlushed(Path newFile, Content content) throws IOException {
    try (var channel =
        FileChannel.open(newFile, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      content.writeTo(new ChannelOutput(channel));
      channel.force(true);
    } catch (IOException e) {
      throw FileProblems.named(newFile, e);
    }
  }

  /** Writes what remains in a buffer; a channel may take less than it is given. */
  public static void writeFully(FileChannel channel, ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  /** Writes to a channel, which stays open, every byte that it is given. */
  private static final class ChannelOutput extends OutputStream {
    private final FileChannel channel;

    ChannelOutput(FileChannel channel) {
      this.channel = channel;
    }

    @Override
    public void write(int one) throws IOException {
      write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      writeFully(channel, ByteBuffer.wrap(bytes, from, length));
    }
  }

  private interface Placing {
    void place(Path temporary) throws IOException;
  }

  private static void write(Path file, Content content, Placing placing) throws IOException {
    var folder = file.toAbsolutePath().getParent();
    clearLeftovers(folder, file.getFileName().toString()::equals);
    var temporary = folder.resolve(prefix(file) + random() + ENDING);
    // Held as long as it is written, so that no other write takes it for a leftover.
    try (var held =
        HeldFile.hold(temporary, StandardOpenOption.CREATE_NEW)
            .orElseThrow(() -> new FileSystemException(file.toString(), null, TAKEN))) {
      var channel = held.channel();
      content.writeTo(new ChannelOutput(channel));
      channel.force(true);
      placing.place(temporary);
    } catch (IOException e) {
      removeQuietly(temporary, e);
      throw FileProblems.named(file, e);
    } catch (RuntimeException | Error e) {
      removeQuietly(temporary, e);
      throw e;
    }
    syncFolder(folder);
  }

  /** Gives the temporary file its name unless something took it meanwhile. */
  private static void place(Path temporary, Path file) throws IOException {
    try {
      // A second name is refused where the name is taken; a rename would replace it.
      Files.createLink(file, temporary);
    } catch (FileAlreadyExistsException e) {
      throw e;
    } catch (UnsupportedOperationException | FileSystemException e) {
      // FAT and some servers have no links. The name is looked at again just before.
      Files.move(temporary, file);
      return;
    }
    Files.delete(temporary);
  }

  private static void keepPermissions(Path from, Path to) throws IOException {
    var view =
        Files.getFileAttributeView(from, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
    if (view != null) {
      Files.setPosixFilePermissions(to, view.readAttributes().permissions());
    }
  }

  /**
   * Removes what a kill left of earlier writes of some files of a folder, and nothing that is in
   * use. A write of a file does that for the file itself; this is for files that never have the
   * same name twice.
   *
   * @param names tells of which files
   */
  public static void clearLeftovers(Path folder, Predicate<String> names) throws IOException {
    try (var files = Files.newDirectoryStream(folder, path -> isLeftover(path, names))) {
      for (var leftover : files) {
        clear(leftover);
      }
    }
  }

  private static boolean isLeftover(Path path, Predicate<String> names) throws IOException {
    var match = LEFTOVER.matcher(path.getFileName().toString());
    return match.matches()
        && names.test(match.group(1))
        && Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS)
            .isRegularFile();
  }

  private static void clear(Path leftover) throws IOException {
    boolean free;
    try (var held = HeldFile.hold(leftover).orElse(null)) {
      // Where a volume has no locks, nobody can know that it is not in use.
      free = held != null && held.isCertain();
    } catch (IOException e) {
      return; // Its writer has just finished, it is somebody else's, or it cannot be read.
    }
    if (free) {
      Files.deleteIfExists(leftover);
    }
  }

  private static void removeQuietly(Path temporary, Throwable cause) {
    try {
      Files.deleteIfExists(temporary);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
  }

  private static String prefix(Path file) {
    return "." + file.getFileName() + ".";
  }

  private static String random() {
    var bytes = new byte[NAME_LENGTH / 2];
    ThreadLocalRandom.current().nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }
}
