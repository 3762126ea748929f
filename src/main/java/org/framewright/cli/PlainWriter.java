package org.framewright.cli;

import java.io.PrintWriter;
import java.io.Writer;
import org.framewright.base.PlainText;

/**
 * Where commands print. What is printed as a line stays one line and cannot act on the terminal,
 * whoever wrote the title or the file name in it; {@code print} and {@code write} are for texts of
 * our own, such as help, JSON and CSV, which have their own rules.
 */
final class PlainWriter extends PrintWriter {
  PlainWriter(Writer to) {
    super(to, true);
  }

  @Override
  public void println(String line) {
    super.println(line == null ? "null" : PlainText.line(line));
  }

  @Override
  public void println(Object line) {
    println(String.valueOf(line));
  }
}
