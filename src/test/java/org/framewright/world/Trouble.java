package org.framewright.world;

/** What goes wrong while a program changes something on the disk. */
enum Trouble {
  KILLED("is killed"),
  POWER_LOST("loses its power, and with it names that were not flushed,"),
  POWER_KEPT("loses its power, and with it bytes that were not flushed,"),
  FULL("finds the disk full"),
  READ_ONLY("finds the disk read-only"),
  ERROR("meets a bad sector");

  private final String said;

  Trouble(String said) {
    this.said = said;
  }

  String said() {
    return said;
  }

  boolean ends() {
    return this == KILLED || this == POWER_LOST || this == POWER_KEPT;
  }
}
