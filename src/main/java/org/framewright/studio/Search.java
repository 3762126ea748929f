package org.framewright.studio;

import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.framewright.base.PlainText;
import org.framewright.shotlist.SetupState;

/**
 * Looks for setups and frames in all jobs of a store. Every word has to be found, in a setup's
 * code, title or GTIN, in the names of its people, or in what is said of its job. The name of a
 * frame is looked for as a whole. Case, accents and signs do not count.
 */
public final class Search {
  /** As many hits are given at most. */
  public static final int MOST = 1000;

  /** Of a word that is nearly everywhere, no more rows are compared. */
  private static final int RANKED = 10_000;

  static final String SETUPS =
      """
      select f.job, j.name, coalesce(f.day, j.added::date), f.setup, f.title, f.state, f.gtins,
        f.people, a.about
      from (
        select s.*, ts_rank('{0.05, 0.3, 0.6, 1}', s.words, q.query) as rank
        from (select ?::tsquery as query) as q
        cross join lateral (
          select * from framewright.search_setup where words @@ q.query limit ?) as s
        order by rank desc, day desc nulls last, job, setup limit ?) as f
      join framewright.job j on j.id = f.job
      join framewright.searched a on a.job = f.job
      order by f.rank desc, f.day desc nulls last, j.name, f.job, f.setup
      """;

  static final String FRAMES =
      """
      select f.job, j.name, coalesce(s.day, j.added::date), f.setup, coalesce(s.title, ''), s.state
      from (
        select distinct job, setup from framewright.search_frames
        where numbers @> ?::bigint and stem = ? limit ?) as f
      join framewright.job j on j.id = f.job
      left join framewright.search_setup s on s.job = f.job and s.setup = f.setup
      order by coalesce(s.day, j.added::date) desc, j.name, f.job, f.setup
      limit ?
      """;

  private record Place(UUID job, String setup) {}

  private final Connection connection;
  private final int most;
  private final List<SearchHit> hits = new ArrayList<>();
  private final Set<Place> found = new LinkedHashSet<>();

  private Search(Connection connection, int most) {
    this.connection = connection;
    this.most = most;
  }

  /**
   * The best hits, the best first.
   *
   * @param text whatever somebody looks for
   * @param most from 1 to {@link #MOST}
   */
  public static List<SearchHit> of(Store store, String text, int most) throws IOException {
    if (most < 1 || most > MOST) {
      throw new IllegalArgumentException("hits: " + most);
    }
    return store.with(
        connection -> {
          var search = new Search(connection, most);
          search.frames(text);
          search.setups(text);
          return search.hits;
        });
  }

  private void frames(String text) throws SQLException {
    var asked = FrameRange.asked(text);
    if (asked.stem().isEmpty() && asked.first() == FrameRange.NONE) {
      return;
    }
    try (var statement = connection.prepareStatement(FRAMES)) {
      statement.setLong(1, asked.first());
      statement.setString(2, asked.stem());
      statement.setInt(3, RANKED);
      statement.setInt(4, most);
      try (var rows = statement.executeQuery()) {
        while (rows.next()) {
          add(rows, List.of("frame: " + PlainText.line(text.strip())));
        }
      }
    }
  }

  private void setups(String text) throws SQLException {
    var words =
        SearchKey.words(text).stream()
            .sorted(Comparator.comparingInt(String::length).reversed())
            .limit(SearchText.MOST_WORDS)
            .toList();
    if (words.isEmpty()) {
      return;
    }
    var exact =
        new SearchText(
            words.stream().map(word -> new SearchText.Word(word, Set.of(), Set.of())).toList());
    setups(exact, SearchText.How.SAME);
    setups(exact, SearchText.How.BEGINS);
    if (hits.size() < most) {
      var near = new ArrayList<SearchText.Word>();
      for (var word : words) {
        near.add(near(word));
      }
      setups(new SearchText(near), SearchText.How.PART);
      // Something that was found is not meant for a slip.
      if (hits.isEmpty()) {
        setups(new SearchText(near), SearchText.How.SLIP);
      }
    }
  }

  private SearchText.Word near(String word) throws SQLException {
    var parts = new LinkedHashSet<String>();
    var slips = new LinkedHashSet<String>();
    if (word.codePointCount(0, word.length()) >= SearchText.SHORTEST_PART) {
      try (var statement =
          connection.prepareStatement("select word, how from framewright.words_like(?, ?)")) {
        statement.setString(1, word);
        statement.setBoolean(
            2, word.length() >= SearchText.SHORTEST_SLIP && !SearchKey.isNumber(word));
        try (var rows = statement.executeQuery()) {
          while (rows.next()) {
            (rows.getInt(2) == 2 ? parts : slips).add(rows.getString(1));
          }
        }
      }
    }
    return new SearchText.Word(word, parts, slips);
  }

  private void setups(SearchText text, SearchText.How how) throws SQLException {
    if (hits.size() >= most) {
      return;
    }
    try (var statement = connection.prepareStatement(SETUPS)) {
      statement.setString(1, text.query(how));
      statement.setInt(2, RANKED);
      // Those that were found already may come again.
      statement.setInt(3, most + hits.size());
      try (var rows = statement.executeQuery()) {
        while (rows.next() && hits.size() < most) {
          var fields = new LinkedHashMap<String, String>();
          fields.put(SearchText.SETUP, rows.getString(4));
          fields.put("title", rows.getString(5));
          fields.put("gtin", rows.getString(7));
          fields.put("person", String.join(", ", rows.getString(8).lines().toList()));
          rows.getString(9)
              .lines()
              .forEach(line -> fields.putIfAbsent(SearchText.name(line), SearchText.value(line)));
          add(rows, text.matched(fields, how));
        }
      }
    }
  }

  private void add(ResultSet row, List<String> matched) throws SQLException {
    var job = row.getObject(1, UUID.class);
    var setup = row.getString(4);
    if (found.add(new Place(job, setup))) {
      hits.add(
          new SearchHit(
              job,
              row.getString(2),
              row.getObject(3, LocalDate.class),
              Optional.of(setup).filter(code -> !code.isEmpty()),
              row.getString(5),
              Optional.ofNullable(row.getString(6)).flatMap(SetupState::of),
              matched));
    }
  }
}
