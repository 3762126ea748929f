package org.framewright.frames;

import java.io.IOException;
import javax.imageio.stream.ImageInputStreamImpl;

/** A stretch of a file as the decoders of pictures want it, read in pieces. */
final class BytesInput extends ImageInputStreamImpl {
  private static final int PIECE = 256 << 10;

  private final Bytes bytes;
  private byte[] piece = {};
  private long from;

  BytesInput(Bytes bytes) {
    this.bytes = bytes;
  }

  @Override
  public int read() throws IOException {
    bitOffset = 0;
    return isAtEnd() ? -1 : piece[(int) (streamPos++ - from)] & 0xFF;
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    bitOffset = 0;
    if (length == 0) {
      return 0;
    }
    if (isAtEnd()) {
      return -1;
    }
    int at = (int) (streamPos - from);
    int read = Math.min(length, piece.length - at);
    System.arraycopy(piece, at, into, offset, read);
    streamPos += read;
    return read;
  }

  /** Reads the piece that is next, unless it is at hand. */
  private boolean isAtEnd() throws IOException {
    checkClosed();
    if (streamPos < from || streamPos >= from + piece.length) {
      if (streamPos >= bytes.size()) {
        return true;
      }
      piece = bytes.read(streamPos, (int) Math.min(PIECE, bytes.size() - streamPos));
      from = streamPos;
    }
    return false;
  }

  @Override
  public long length() {
    return bytes.size();
  }
}
