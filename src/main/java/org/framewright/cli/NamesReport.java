package org.framewright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.framewright.handoff.ClientNames;
import org.framewright.handoff.names.KnownName;
import org.framewright.handoff.names.NamesRead;
import org.framewright.handoff.names.Piece;

/** A client's list, as it was read, in JSON. */
final class NamesReport {
  private NamesReport() {}

  /**
   * The keys {@code unclear}, the number of lines to be settled, and {@code names}, a list of
   * lines.
   */
  static Map<String, Object> of(ClientNames names) {
    var document = new LinkedHashMap<String, Object>();
    document.put("unclear", names.unclear().size());
    document.put("names", names.read().lines().stream().map(line -> json(line, names)).toList());
    return document;
  }

  private static Map<String, Object> json(NamesRead.Line line, ClientNames names) {
    var one = new LinkedHashMap<String, Object>();
    one.put("line", line.number());
    one.put("text", line.text());
    one.put("passedOver", line.passedOver().orElse(null));
    one.put("unclear", line.unclear());
    one.put("parts", line.pieces().stream().map(piece -> json(piece, names)).toList());
    return one;
  }

  private static Map<String, Object> json(Piece piece, ClientNames names) {
    var one = new LinkedHashMap<String, Object>();
    one.put("written", piece.written());
    switch (piece) {
      case Piece.Taken taken -> {
        one.put("outcome", "taken");
        one.put("frames", taken.frames().stream().map(names::called).toList());
      }
      case Piece.Asked asked -> {
        one.put("outcome", "several");
        one.put("count", asked.count());
        one.put("fitting", json(asked.fitting(), names));
      }
      case Piece.Unknown unknown -> {
        one.put("outcome", "unknown");
        one.put("nearest", json(unknown.nearest(), names));
      }
      case Piece.Aside _ -> one.put("outcome", "passed-over");
    }
    one.put("why", piece.why());
    return one;
  }

  private static List<Map<String, Object>> json(List<KnownName> known, ClientNames names) {
    return known.stream()
        .map(
            name ->
                Map.<String, Object>of("frame", names.called(name.frame()), "name", name.text()))
        .toList();
  }
}
