package org.framewright.cli;

/** The shortest program that there is, with which {@link StartBenchmark} compares. */
public final class OneLine {
  private OneLine() {}

  public static void main(String[] args) {
    System.out.println("one line");
  }
}
