package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.List;

/** Tokens of an item in one row. */
record Row(List<Line.Unit> units, List<Token> tokens, List<Integer> unitOf) {
  static Row of(List<Line.Unit> units) {
    var tokens = new ArrayList<Token>();
    var unitOf = new ArrayList<Integer>();
    for (int u = 0; u < units.size(); u++) {
      for (var token : units.get(u).tokens()) {
        tokens.add(token);
        unitOf.add(u);
      }
    }
    return new Row(units, tokens, unitOf);
  }

  boolean begins(int token) {
    return token == 0 || !unitOf.get(token).equals(unitOf.get(token - 1));
  }

  boolean ends(int after) {
    return after == tokens.size() || begins(after);
  }

  Line.Unit unit(int token) {
    return units.get(unitOf.get(token));
  }

  /** Where the unit of a token ends. */
  int endOfUnit(int token) {
    int end = token;
    while (!ends(end)) {
      end++;
    }
    return end == token ? next(token) : end;
  }

  private int next(int token) {
    int end = token + 1;
    while (!ends(end)) {
      end++;
    }
    return end;
  }

  /** How far a name may reach that begins here: an ending of a file ends it. */
  int limit(int token) {
    int most = Math.min(tokens.size(), token + NameIndex.LONGEST);
    for (int at = token; at < most; at++) {
      if (unit(at).ending()) {
        return Math.min(most, endOfUnit(at));
      }
    }
    return most;
  }
}
