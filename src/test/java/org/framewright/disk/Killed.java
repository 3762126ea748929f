package org.framewright.disk;

/**
 * The end of the program under test; not an exception, so that nobody handles it. Clean-up code
 * that runs nevertheless meets it again at each change it tries.
 */
public final class Killed extends Error {
  private static final long serialVersionUID = 1L;

  Killed(DiskOp op) {
    super("killed before " + op, null, false, true);
  }
}
