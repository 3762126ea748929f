package org.framewright.handoff.metadata;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;

/** A value in one of the forms of XMP (ISO 16684-1, clause 6.3). */
sealed interface Value {
  /** Plain text. */
  record Plain(String text) implements Value {
    public Plain {
      text = XmlText.legal(text);
    }
  }

  /** Text that may be there in several languages; ours is the default one. */
  record Languages(String text) implements Value {
    public Languages {
      text = XmlText.legal(text);
    }
  }

  /** A struct. */
  record Struct(SequencedMap<Name, Value> fields) implements Value {
    public Struct {
      fields = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(fields));
    }
  }

  /** Several values, in an order that means something or not. */
  record Items(boolean ordered, List<Value> items) implements Value {
    public Items {
      items = List.copyOf(items);
    }
  }

  static Items texts(boolean ordered, List<String> texts) {
    return new Items(ordered, texts.stream().map(text -> (Value) new Plain(text)).toList());
  }
}
