/**
 * What a shell is told of the commands: manual pages and completions.
 *
 * <p>All of it is made when the program is packaged, from the commands' own descriptions: {@link
 * org.framewright.cli.shell.ManualPages} writes one page a command in the macros of man(7); {@link
 * org.framewright.cli.shell.Completions} writes a file for bash, for zsh and for fish. {@link
 * org.framewright.cli.shell.Described} is what both read of a command. Nothing here is loaded when
 * a command runs.
 */
package org.framewright.cli.shell;
