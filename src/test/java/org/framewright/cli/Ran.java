package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import picocli.CommandLine;

/** A command that was run, as a shell would: its exit status and what it wrote. */
record Ran(int status, String out, String err) {

  static Ran run(Object... words) {
    var out = new StringWriter();
    var err = new StringWriter();
    var args = Arrays.stream(words).map(Object::toString).toArray(String[]::new);
    int status = Framewright.run(new PrintWriter(out), new PrintWriter(err), args);
    return new Ran(status, out.toString(), err.toString());
  }

  /** The same on another file system. */
  static Ran on(CommandLine.ITypeConverter<Path> paths, Object... words) {
    var out = new StringWriter();
    var err = new StringWriter();
    var args = Arrays.stream(words).map(Object::toString).toArray(String[]::new);
    int status = Framewright.run(null, paths, new PrintWriter(out), new PrintWriter(err), args);
    return new Ran(status, out.toString(), err.toString());
  }

  /** The same with a person's answers, one a line. */
  static Ran answering(String answers, Object... words) {
    var out = new StringWriter();
    var err = new StringWriter();
    var args = Arrays.stream(words).map(Object::toString).toArray(String[]::new);
    int status =
        Framewright.run(
            null,
            Path::of,
            new StringReader(answers),
            new PrintWriter(out),
            new PrintWriter(err),
            args);
    return new Ran(status, out.toString(), err.toString());
  }

  /** Starts a job by the convention for fashion in a folder; where it lies. */
  static Path startIn(Path folder) {
    var started =
        run(
            "start",
            "--by",
            "templates/fashion-days.yaml",
            "--in",
            folder,
            "day=2026-11-23",
            "client=KVO",
            "title=Wool");
    assertThat(started.status()).isZero();
    return Path.of(started.out().strip());
  }

  JsonNode json() throws IOException {
    return new JsonMapper().readTree(out);
  }
}
