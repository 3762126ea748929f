package org.framewright.naming;

import java.util.List;
import java.util.SequencedMap;

/**
 * The proof of a finding: values that show the fault, and the name or names that they make. {@code
 * second} is empty where one set of values is enough.
 */
public record Witness(
    SequencedMap<String, String> first, SequencedMap<String, String> second, List<String> names) {}
