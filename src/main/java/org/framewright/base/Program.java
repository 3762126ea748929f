package org.framewright.base;

/** What this program calls itself, in answers and in the files that it writes. */
public final class Program {
  public static final String NAME = "framewright";

  /** The version of the pom, without what marks it as not yet released. */
  public static final String VERSION = "0.1.0";

  private Program() {}
}
