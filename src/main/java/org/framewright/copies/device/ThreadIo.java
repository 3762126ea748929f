package org.framewright.copies.device;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * What disks delivered to a thread, as Linux counts it: {@code read_bytes} in {@code
 * /proc/thread-self/io}, see proc_pid_io(5). What came from memory, or from the process of a file
 * system in user space, is not in it.
 */
final class ThreadIo implements Proof {
  private static final String FIELD = "read_bytes:";
  private static final int MOST = 4096;

  private final FileChannel counters;
  private final ByteBuffer text = ByteBuffer.allocate(MOST);

  private ThreadIo(FileChannel counters) {
    this.counters = counters;
  }

  /** That of the calling thread; none where the kernel does not count. */
  static Proof here(Path proc) {
    try {
      var path = proc.resolve("thread-self").resolve("io");
      var made = new ThreadIo(FileChannel.open(path, StandardOpenOption.READ));
      made.delivered();
      return made;
    } catch (IOException e) {
      return NONE;
    }
  }

  @Override
  public long delivered() throws IOException {
    counters.read(text.clear(), 0);
    var said = new String(text.array(), 0, text.position(), StandardCharsets.US_ASCII);
    for (var line : said.split("\n", -1)) {
      if (line.startsWith(FIELD)) {
        try {
          return Long.parseLong(line.substring(FIELD.length()).strip());
        } catch (NumberFormatException e) {
          break;
        }
      }
    }
    throw new IOException("the kernel does not count what a thread reads");
  }

  @Override
  public void close() throws IOException {
    counters.close();
  }
}
