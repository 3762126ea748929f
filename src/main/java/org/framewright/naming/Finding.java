package org.framewright.naming;

import java.util.Optional;

/**
 * A checked fact about a convention or a value.
 *
 * @param where the place in the convention, such as {@code names.frame}
 * @param line the line in the file, counted from 1; 0 where there is none
 * @param column the column in that line, counted from 1; 0 where there is none
 * @param message what is so, in plain words
 * @param remedy its remedy
 */
public record Finding(
    Rule rule,
    Severity severity,
    String where,
    int line,
    int column,
    String message,
    Optional<Witness> witness,
    Optional<String> remedy) {}
