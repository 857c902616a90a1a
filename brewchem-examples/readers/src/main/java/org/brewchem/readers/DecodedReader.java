package org.brewchem.readers;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;

/**
 * The characters of a file, with a mark where bytes are none in its character set, so that the cell
 * they stand in can be named. Counts the bytes read. Mutable, for one thread.
 */
final class DecodedReader extends Reader {

  /** Stands for bytes that cannot be decoded; Unicode keeps it for such uses. */
  static final char MARK = '\uFFFF';

  static final char BYTE_ORDER_MARK = '\uFEFF';

  private final InputStream in;
  private final CharsetDecoder decoder;
  private final ByteBuffer bytes = ByteBuffer.allocate(1 << 16).flip();
  private boolean ended;
  private boolean flushed;
  private boolean marked;
  private boolean first = true;
  private long count;

  DecodedReader(InputStream in, Charset charset) {
    this.in = in;
    decoder =
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
  }

  /** How many bytes were read. */
  long count() {
    return count;
  }

  /** Whether a mark was given out. */
  boolean marked() {
    return marked;
  }

  @Override
  public int read(char[] buffer, int offset, int length) throws IOException {
    CharBuffer out = CharBuffer.wrap(buffer, offset, length).slice();
    while (out.position() == 0 && length > 0) {
      if (flushed) {
        return -1;
      }
      decode(out);
      if (first && out.position() > 0) {
        first = false;
        if (out.get(0) == BYTE_ORDER_MARK) {
          int rest = out.position() - 1;
          System.arraycopy(buffer, offset + 1, buffer, offset, rest);
          out.position(rest);
        }
      }
    }
    return out.position();
  }

  private void decode(CharBuffer out) throws IOException {
    CoderResult result = decoder.decode(bytes, out, ended);
    if (result.isError()) {
      if (out.hasRemaining()) {
        bytes.position(bytes.position() + result.length());
        out.put(MARK);
        marked = true;
      }
    } else if (result.isUnderflow()) {
      if (ended) {
        flushed = decoder.flush(out).isUnderflow();
      } else {
        fill();
      }
    }
  }

  private void fill() throws IOException {
    bytes.compact();
    int read = in.read(bytes.array(), bytes.position(), bytes.remaining());
    if (read < 0) {
      ended = true;
    } else {
      count += read;
      bytes.position(bytes.position() + read);
    }
    bytes.flip();
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
