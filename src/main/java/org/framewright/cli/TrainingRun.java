package org.framewright.cli;

import java.io.PrintWriter;
import java.io.Writer;
import java.util.List;

/**
 * Runs the short commands once, for Java to see what they load: from that it makes the cache (JEP
 * 483, 514) that packages bring along. Whatever is loaded here costs every command some time at its
 * start, so those that take long are not among them.
 */
final class TrainingRun {
  private TrainingRun() {}

  /**
   * Runs them.
   *
   * @param args a convention, a name of a job by it, a job's folder that may be changed, and a
   *     setup of it
   */
  public static void main(String[] args) {
    var convention = args[0];
    var job = args[2];
    var setup = args[3];
    var commands =
        List.of(
            List.of("--help"),
            List.of("mark", "--help"),
            List.of("check", convention),
            List.of("check", convention, "--json"),
            List.of("read", args[1], "--by", convention),
            List.of("read", "none", "--by", convention),
            List.of(
                "name", "job", "--by", convention, "day=2026-11-02", "client=KVO", "title=look"),
            List.of("list", job),
            List.of("list", job, "--json"),
            List.of("mark", job, setup, "on-set"),
            List.of("mark", job, setup, "shot"),
            List.of("mark", job, setup, "nowhere"),
            List.of("mark", job, "--take-back"),
            List.of("mark", job, "--take-back"),
            List.of("frames", job),
            List.of("day", job),
            List.of("day", job, "--json"),
            List.of("batches", job),
            List.of("rename", job, "--preview"));
    for (var command : commands) {
      var nothing = new PrintWriter(Writer.nullWriter());
      Framewright.run(nothing, nothing, command.toArray(String[]::new));
    }
  }
}
