package org.framewright.shotlist;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * What a list must fit: the names that frames are to have. This room knows no convention; whoever
 * knows one says here what its names need.
 */
public interface ListFit {

  /** Nothing is known of the names; every list fits. */
  ListFit ANY =
      new ListFit() {
        @Override
        public Map<String, String> fields() {
          return Map.of();
        }

        @Override
        public Optional<Misfit> code(String text) {
          return Optional.empty();
        }

        @Override
        public boolean isView(String text) {
          return true;
        }

        @Override
        public Made make(Setup setup) {
          return new Made(List.of(), Optional.empty());
        }
      };

  /**
   * Why no name can be made of a value.
   *
   * @param field {@code setup}, {@code view}, or another field of the names
   * @param value what stands in the list; empty where it is missing
   * @param what what is wrong, in words
   */
  record Misfit(String field, String value, Text what, Text remedy) {}

  /**
   * What became of a setup.
   *
   * @param misfits why no name can be made of it; empty if one can
   * @param name what its frames' names say of it; two setups for which it is the same cannot be
   *     told apart. Empty where names do not show setups
   */
  record Made(List<Misfit> misfits, Optional<String> name) {}

  /** The fields that a list may fill, each by its name and by the labels that people see. */
  Map<String, String> fields();

  /** Why a text cannot be a setup's code; empty if it can. */
  Optional<Misfit> code(String text);

  /** Whether a text can be a view. */
  boolean isView(String text);

  /** Makes a setup's names. */
  Made make(Setup setup);
}
