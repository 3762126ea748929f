/**
 * The command line: one class a command, each a thin reading of arguments around the same core that
 * the app uses.
 *
 * <p>The way through: {@link org.framewright.cli.Framewright} parses the arguments; the command it
 * finds calls the core and hands the outcome to {@link org.framewright.cli.Output}, which writes
 * either readable text or one JSON document to standard output. Whatever goes wrong becomes a
 * {@link org.framewright.cli.CommandFailure} with an {@link org.framewright.cli.ExitStatus}; it is
 * printed in one or two lines on standard error.
 */
package org.framewright.cli;
