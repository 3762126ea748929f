package org.framewright.ui.start;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Field;
import org.framewright.naming.FieldType;
import org.framewright.naming.Finding;
import org.framewright.naming.Reserved;
import org.framewright.naming.Step;

/**
 * What a convention makes of the values typed so far. Where a value is missing or cannot be used,
 * the field's example stands in its place, so that the whole name can be seen from the start.
 *
 * @param jobName the job's name; empty while it cannot be made of what was typed
 * @param ruler the name in pieces, examples included
 * @param tree the folders that will be made and the names that will lie in them
 * @param findings what is wrong, by field; under the empty text what belongs to no field
 * @param missing the fields that are needed and empty
 * @param values the legal text of each field that the job's name shows
 * @param steps how people's text became legal text
 */
record Preview(
    String jobName,
    List<Segment> ruler,
    List<Branch> tree,
    Map<String, List<Finding>> findings,
    Set<String> missing,
    SequencedMap<String, String> values,
    List<Step> steps) {

  static final String JOB = Reserved.JOB;
  static final String FRAME = Reserved.FRAME;

  /** The kind of name that comes to lie in a folder of a role. */
  private static final Map<String, String> LIES_IN =
      Map.of(
          Reserved.FRAMES,
          FRAME,
          Reserved.SELECTS,
          Reserved.SELECT,
          Reserved.RETOUCHED,
          Reserved.RETOUCHED);

  /**
   * @param typed what was typed, by field; fields left empty are not in it
   */
  static Preview of(Convention convention, Map<String, String> typed) {
    var findings = new LinkedHashMap<String, List<Finding>>();
    var missing = new HashSet<String>();
    var job = convention.kinds().get(JOB);
    for (var field : convention.fields().values()) {
      if (!job.fields().containsKey(field.name())) {
        continue;
      }
      if (typed.containsKey(field.name())) {
        var wrong = wrong(convention, field, typed.get(field.name()));
        if (!wrong.isEmpty()) {
          findings.put(field.name(), wrong);
        }
      } else if (job.fields().get(field.name()) && takesAValue(field)) {
        missing.add(field.name());
      }
    }
    var filled = new HashMap<>(typed);
    findings.keySet().forEach(filled::remove);
    var examples = new HashSet<>(missing);
    examples.addAll(findings.keySet());
    examples.forEach(name -> filled.put(name, convention.fields().get(name).example()));
    return switch (convention.build(JOB, filled)) {
      case Built.Name name -> {
        var whole = examples.isEmpty();
        yield new Preview(
            whole ? name.text() : "",
            Segment.cut(name.text(), job.pattern(), examples),
            tree(convention, name.text(), withExamples(convention, filled)),
            findings,
            missing,
            name.values(),
            name.steps().stream().filter(step -> !examples.contains(step.field())).toList());
      }
      case Built.Refused refused -> {
        findings.put("", refused.findings());
        yield new Preview(
            "", List.of(), List.of(), findings, missing, new LinkedHashMap<>(), List.of());
      }
    };
  }

  /** What is wrong with a value for itself, whatever the other fields hold. */
  private static List<Finding> wrong(Convention convention, Field field, String value) {
    var alone = withExamples(convention, Map.of(field.name(), value));
    return convention.build(JOB, alone) instanceof Built.Refused refused
        ? refused.findings()
        : List.of();
  }

  private static boolean takesAValue(Field field) {
    return field.type() != FieldType.FIXED && field.defaultValue().isEmpty();
  }

  private static Map<String, String> withExamples(
      Convention convention, Map<String, String> values) {
    var filled = new HashMap<>(values);
    for (var field : convention.fields().values()) {
      if (takesAValue(field)) {
        filled.putIfAbsent(field.name(), field.example());
      }
    }
    return filled;
  }

  private static List<Branch> tree(
      Convention convention, String jobName, Map<String, String> values) {
    var tree = new ArrayList<Branch>();
    tree.add(new Branch(0, jobName, Branch.Kind.FOLDER));
    for (var role : convention.folders().sequencedKeySet()) {
      if (convention.buildFolder(role, values) instanceof Built.Name folder) {
        var depth = 0;
        for (var part : folder.text().split("/", -1)) {
          tree.add(new Branch(++depth, part, Branch.Kind.FOLDER));
        }
        var kind = LIES_IN.get(role);
        if (kind != null
            && convention.kinds().containsKey(kind)
            && convention.build(kind, values) instanceof Built.Name example) {
          tree.add(new Branch(depth + 1, example.text(), Branch.Kind.EXAMPLE));
        }
      }
    }
    return List.copyOf(tree);
  }
}
