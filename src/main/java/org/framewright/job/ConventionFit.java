package org.framewright.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.concurrent.ConcurrentHashMap;
import org.framewright.base.Text;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.FieldType;
import org.framewright.naming.Finding;
import org.framewright.naming.Reserved;
import org.framewright.shotlist.ListFit;
import org.framewright.shotlist.Setup;

/**
 * What the convention's frame names need of a list. Each setup is tried as its frames will be
 * named, with an example for what only a frame can say; so that what could not be named in the
 * evening is found when the list comes in.
 */
final class ConventionFit implements ListFit {
  private static final int MOST_VIEWS = 1_000;

  private final Convention convention;
  private final FrameFields fields;
  private final SequencedMap<String, String> labels = new LinkedHashMap<>();

  /** The fields that a list says. */
  private final List<String> listed = new ArrayList<>();

  /** A value for every field, of which a setup's own take the place. */
  private final Map<String, String> examples = new LinkedHashMap<>();

  private final Map<String, Optional<Misfit>> views = new ConcurrentHashMap<>();

  private ConventionFit(Convention convention, FrameFields fields) {
    this.convention = convention;
    this.fields = fields;
    for (var name : fields.names()) {
      examples.put(name, fields.ofJob(name).orElseGet(() -> fields.field(name).example()));
      if (isOfList(name)) {
        listed.add(name);
        labels.putIfAbsent(name, name);
        labels.putIfAbsent(fields.field(name).label(), name);
      }
    }
  }

  /**
   * What a job's list must fit.
   *
   * @param values the values that the job began with
   */
  static ListFit of(Convention convention, Map<String, String> values) {
    var kind = convention.kinds().get(FrameFields.KIND);
    return kind == null
        ? ListFit.ANY
        : new ConventionFit(convention, new FrameFields(convention, kind, values));
  }

  /** The labels of the fields that a list may fill, by their names. */
  static SequencedMap<String, String> labels(Convention convention, Map<String, String> values) {
    var labels = new LinkedHashMap<String, String>();
    var kind = convention.kinds().get(FrameFields.KIND);
    if (kind != null) {
      var fit = new ConventionFit(convention, new FrameFields(convention, kind, values));
      fit.listed.forEach(name -> labels.put(name, convention.fields().get(name).label()));
    }
    return labels;
  }

  /** Whether a list says it: not the job, not the frame, and not the counter. */
  private boolean isOfList(String name) {
    return fields.ofJob(name).isEmpty()
        && switch (fields.field(name).type()) {
          case DATE, COUNTER, FIXED -> false;
          case CODE, WORDS, PERSON, NUMBER, CHOICE, GTIN -> true;
        };
  }

  @Override
  public Map<String, String> fields() {
    return Collections.unmodifiableMap(labels);
  }

  @Override
  public Optional<Misfit> code(String text) {
    return misfit(Reserved.SETUP, text);
  }

  @Override
  public boolean isView(String text) {
    return misfit(
            Reserved.VIEW, fields.names().contains(Reserved.VIEW) ? fields.choice(text) : text)
        .isEmpty();
  }

  /** The views of a long list are few. */
  private Optional<Misfit> viewMisfit(String view) {
    var known = views.get(view);
    if (known == null) {
      known = misfit(Reserved.VIEW, fields.choice(view));
      if (views.size() < MOST_VIEWS) {
        views.put(view, known);
      }
    }
    return known;
  }

  /** Why a value does not become a legal one of its field. */
  private Optional<Misfit> misfit(String field, String text) {
    if (!labels.containsValue(field)) {
      return Optional.empty();
    }
    var given = new LinkedHashMap<>(examples);
    given.put(field, text);
    return convention.build(FrameFields.KIND, given) instanceof Built.Refused refused
        ? Optional.of(misfit(field, text, refused.findings()))
        : Optional.empty();
  }

  private static Misfit misfit(String field, String text, List<Finding> findings) {
    var first = findings.getFirst();
    return new Misfit(field, text, first.said(), first.fix().orElse(Text.NONE));
  }

  @Override
  public Made make(Setup setup) {
    var given = fields.ofPeople(setup, Optional.empty());
    var misfits = new ArrayList<Misfit>();
    var complete = new LinkedHashMap<>(given);
    examples.forEach(
        (name, example) -> {
          if (complete.getOrDefault(name, "").isBlank() && fields.isRequired(name)) {
            complete.put(name, example);
          }
        });
    var built = convention.build(FrameFields.KIND, complete);
    if (built instanceof Built.Refused refused) {
      // Each value by itself, so that the finding stands at its cell.
      listed.stream()
          .filter(given::containsKey)
          .forEach(name -> misfit(name, given.get(name)).ifPresent(misfits::add));
      if (misfits.isEmpty()) {
        misfits.add(misfit(Reserved.SETUP, setup.code(), refused.findings()));
      }
    }
    listed.stream()
        .filter(name -> mustBeInList(name) && given.getOrDefault(name, "").isBlank())
        .forEach(name -> misfits.add(missing(name)));
    if (labels.containsValue(Reserved.VIEW)) {
      setup.views().forEach(view -> viewMisfit(view.code()).ifPresent(misfits::add));
    }
    return new Made(misfits, name(built));
  }

  /** A choice may be said by the folder that a frame lies in, a view by whoever marks it. */
  private boolean mustBeInList(String name) {
    return fields.isRequired(name)
        && fields.field(name).type() != FieldType.CHOICE
        && !name.equals(Reserved.VIEW)
        && fields.field(name).defaultValue().isEmpty();
  }

  private Misfit missing(String name) {
    var field = fields.field(name);
    return new Misfit(
        name,
        "",
        Text.of(
            "{0}: frames cannot be named without it, and the list does not say it", field.label()),
        Text.of("Give the list a column {0}, or say which column it is.", field.label()));
  }

  private Optional<String> name(Built built) {
    return fields.names().contains(Reserved.SETUP) && built instanceof Built.Name name
        ? Optional.of(name.text())
        : Optional.empty();
  }
}
