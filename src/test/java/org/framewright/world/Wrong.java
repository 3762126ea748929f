package org.framewright.world;

/** The program did or said something that the model does not allow. */
final class Wrong extends RuntimeException {
  private static final long serialVersionUID = 1L;

  Wrong(String what) {
    super(what);
  }

  static void unless(boolean holds, String what) {
    if (!holds) {
      throw new Wrong(what);
    }
  }

  static void unlessSame(Object is, Object wanted, String what) {
    if (!is.equals(wanted)) {
      throw new Wrong(what + ": " + is + ", and should be " + wanted);
    }
  }
}
