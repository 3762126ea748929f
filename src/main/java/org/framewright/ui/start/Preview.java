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
import org.framewright.naming.Rule;
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

  static final String JOB = "job";

  /** The kind of name that comes to lie in a folder of a role. */
  private static final Map<String, String> LIES_IN =
      Map.of("frames", "frame", "selects", "select", "retouched", "retouched");

  /**
   * @param typed what was typed, by field; fields left empty are not in it
   */
  static Preview of(Convention convention, Map<String, String> typed) {
    var findings = new LinkedHashMap<String, List<Finding>>();
    var missing = new HashSet<String>();
    var built = convention.build(JOB, typed);
    if (built instanceof Built.Refused refused) {
      for (var finding : refused.findings()) {
        var field = fieldOf(convention, finding);
        if (finding.rule() == Rule.MISSING_VALUE) {
          missing.add(field);
        } else {
          findings.computeIfAbsent(field, _ -> new ArrayList<>()).add(finding);
        }
      }
    }
    var filled = new HashMap<>(typed);
    findings.keySet().forEach(filled::remove);
    var examples = fillWithExamples(convention, filled);
    var shown = built instanceof Built.Name ? built : convention.build(JOB, filled);
    var pattern = convention.kinds().get(JOB).pattern();
    var ruler =
        shown instanceof Built.Name name
            ? Segment.cut(name.text(), pattern, examples)
            : List.<Segment>of();
    return new Preview(
        built instanceof Built.Name name ? name.text() : "",
        ruler,
        shown instanceof Built.Name name ? tree(convention, name.text(), filled) : List.of(),
        Map.copyOf(findings),
        Set.copyOf(missing),
        built instanceof Built.Name name ? name.values() : new LinkedHashMap<>(),
        built instanceof Built.Name name ? List.copyOf(name.steps()) : List.of());
  }

  /** Which fields were given their example. */
  private static Set<String> fillWithExamples(Convention convention, Map<String, String> values) {
    var examples = new HashSet<String>();
    for (var field : convention.fields().values()) {
      if (field.type() != FieldType.FIXED
          && field.defaultValue().isEmpty()
          && !values.containsKey(field.name())) {
        values.put(field.name(), field.example());
        examples.add(field.name());
      }
    }
    return examples;
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

  /** The field that a finding is about; the empty text if it is about none. */
  static String fieldOf(Convention convention, Finding finding) {
    var where = finding.where();
    var name = where.startsWith("fields.") ? where.substring("fields.".length()) : where;
    return convention.fields().sequencedValues().stream()
        .map(Field::name)
        .filter(name::equals)
        .findFirst()
        .orElse("");
  }
}
