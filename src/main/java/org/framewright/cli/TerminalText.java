package org.framewright.cli;

import java.io.Console;
import java.io.FilterWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.framewright.base.OperatingSystem;

/**
 * Text for a terminal. A console of Windows reads the code page that it is set to, not UTF-8: what
 * that page has not is replaced by the nearest sign of ASCII. Files and other programs always get
 * UTF-8.
 */
final class TerminalText extends FilterWriter {
  /** Signs of our own texts that old code pages lack, each before what stands for it. */
  private static final String[] NEAREST = {
    "\u201C", "\"", "\u201D", "\"", "\u201E", "\"", "\u00AB", "\"", "\u00BB", "\"", "\u2018", "'",
    "\u2019", "'", "\u2013", "-", "\u2014", "-", "\u2212", "-", "\u2026", "...", "\u2022", "*",
    "\u00B7", "*", "\u00D7", "x", "\u2192", "->", "\u00A0", " ", "\u202F", " ", "\u2009", " "
  };

  private final CharsetEncoder encoder;

  private TerminalText(Writer to, Charset charset) {
    super(to);
    this.encoder = charset.newEncoder();
  }

  /** In which charset a stream wants its text. */
  static Charset charset(OperatingSystem system, boolean terminal, Charset ofTerminal) {
    return system == OperatingSystem.WINDOWS && terminal ? ofTerminal : StandardCharsets.UTF_8;
  }

  /** The same on this system, as this program was started. */
  static Charset charset(Charset ofTerminal) {
    boolean terminal = hasCodePages() && console().isPresent();
    return charset(OperatingSystem.current(), terminal, ofTerminal);
  }

  /** Whether somebody sees what is written, and whether that can be in colours. */
  static boolean showsColours() {
    return !hasCodePages() && console().isPresent();
  }

  /** In which charset a person at the terminal types. */
  static Charset typed() {
    return hasCodePages()
        ? console().map(Console::charset).orElse(StandardCharsets.UTF_8)
        : StandardCharsets.UTF_8;
  }

  /** Asked first: to look for a terminal takes as long as a short command. */
  private static boolean hasCodePages() {
    return OperatingSystem.current() == OperatingSystem.WINDOWS;
  }

  /** Some runtimes have none where a stream leads elsewhere, some one that is no terminal. */
  @SuppressWarnings("SystemConsoleNull")
  private static Optional<Console> console() {
    return Optional.ofNullable(System.console()).filter(Console::isTerminal);
  }

  /** Prints to a stream in a charset. */
  static PrintWriter to(OutputStream stream, Charset charset) {
    var writer = new OutputStreamWriter(stream, charset);
    return new PrintWriter(
        charset.equals(StandardCharsets.UTF_8) ? writer : new TerminalText(writer, charset), true);
  }

  @Override
  public void write(int c) throws IOException {
    write(String.valueOf((char) c));
  }

  @Override
  public void write(char[] text, int offset, int length) throws IOException {
    write(new String(text, offset, length));
  }

  @Override
  public void write(String text, int offset, int length) throws IOException {
    write(text.substring(offset, offset + length));
  }

  @Override
  public void write(String text) throws IOException {
    out.write(encoder.canEncode(text) ? text : nearest(text));
  }

  private String nearest(String text) {
    var legible = text;
    for (int i = 0; i < NEAREST.length; i += 2) {
      if (!encoder.canEncode(NEAREST[i])) {
        legible = legible.replace(NEAREST[i], NEAREST[i + 1]);
      }
    }
    return legible; // The writer puts a question mark for the rest.
  }
}
