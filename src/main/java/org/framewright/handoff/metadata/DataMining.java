package org.framewright.handoff.metadata;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a picture may be used for by those who gather pictures: the PLUS vocabulary of the property
 * Data Mining (IPTC Photo Metadata Standard 2023.1), without those that point elsewhere.
 */
public enum DataMining {
  ALLOWED("allowed", "DMI-ALLOWED"),
  NO_GENERATIVE_TRAINING("no-generative-training", "DMI-PROHIBITED-GENAIMLTRAINING"),
  NO_TRAINING("no-training", "DMI-PROHIBITED-AIMLTRAINING"),
  SEARCH_ONLY("search-only", "DMI-PROHIBITED-EXCEPTSEARCHENGINEINDEXING"),
  PROHIBITED("prohibited", "DMI-PROHIBITED");

  private static final String VOCABULARY = "http://ns.useplus.org/ldf/vocab/";

  private final String word;
  private final String term;

  DataMining(String word, String term) {
    this.word = word;
    this.term = term;
  }

  /** The word for it in the settings' file. */
  public String word() {
    return word;
  }

  /** The one of a word. */
  public static Optional<DataMining> ofWord(String word) {
    return Arrays.stream(values()).filter(one -> one.word.equals(word)).findFirst();
  }

  String uri() {
    return VOCABULARY + term;
  }
}
