package org.framewright.handoff.metadata;

import java.util.Optional;

/** What the fields of a job's convention say of a select. */
public interface FieldWords {
  /** Whether the convention has a field of that name, in that shape; the main one where empty. */
  boolean has(String field, String shape);

  /** What it says; empty where it says nothing of this select. */
  Optional<String> words(String field, String shape);
}
