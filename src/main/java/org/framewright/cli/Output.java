package org.framewright.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/**
 * Where a reporting command writes: the result to standard output, as text or as one JSON document;
 * progress and remarks to standard error. Mixed into each command that reports, as {@code @Mixin
 * Output output}.
 */
final class Output {
  /** Loaded when a command is first asked for JSON; most never are. */
  private static final class Json {
    static final ObjectWriter INDENTED =
        JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build().writer();
    static final ObjectWriter ON_ONE_LINE = INDENTED.without(SerializationFeature.INDENT_OUTPUT);
  }

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(names = "--json", description = "Write the result as JSON.")
  private boolean json;

  boolean json() {
    return json;
  }

  /** The result as text. */
  PrintWriter out() {
    return command.commandLine().getOut();
  }

  /** Progress and remarks. */
  PrintWriter err() {
    return command.commandLine().getErr();
  }

  /** Writes one of many results as JSON on one line (JSON Lines). */
  void writeLine(Object document) {
    try {
      out().print(Json.ON_ONE_LINE.writeValueAsString(document) + System.lineSeparator());
      out().flush();
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Writes the result as JSON; maps, lists, strings, numbers, booleans and null. */
  void write(Object document) {
    try {
      out().print(Json.INDENTED.writeValueAsString(document) + System.lineSeparator());
      out().flush();
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
