package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.JAVA_BYTE;

import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;

/** Room for one text that is handed to the system, used again for the next. */
final class NativeText {
  private static final int USUAL_BYTES = 4096;

  private final Arena arena;
  private MemorySegment room;

  NativeText(Arena arena) {
    this.arena = arena;
    this.room = arena.allocate(USUAL_BYTES);
  }

  /** The bytes, closed by a zero; valid until the next text. */
  MemorySegment of(byte[] bytes) {
    var segment = room(bytes.length + 1L);
    MemorySegment.copy(bytes, 0, segment, JAVA_BYTE, 0, bytes.length);
    segment.set(JAVA_BYTE, bytes.length, (byte) 0);
    return segment;
  }

  /** At least so many bytes. */
  MemorySegment room(long bytes) {
    if (bytes > room.byteSize()) {
      room = arena.allocate(2 * bytes);
    }
    return room;
  }
}
