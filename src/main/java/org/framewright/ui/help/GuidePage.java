package org.framewright.ui.help;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A page of the guide.
 *
 * @param name what links call it, as in {@code copies}
 * @param topics the pages and questions of the app that it helps with
 */
record GuidePage(String name, String title, List<String> topics, List<Block> blocks) {
  private static final Pattern TOPICS = Pattern.compile("<!--\\s*help:([^>]*?)-->");

  /**
   * A part of a page below one heading.
   *
   * @param heading empty for what stands before the first one
   */
  record Section(String anchor, String heading, String text) {}

  GuidePage {
    topics = List.copyOf(topics);
    blocks = List.copyOf(blocks);
  }

  /** A page by its Markdown; its title is its first heading, else its name. */
  static GuidePage of(String name, String markdown) {
    var blocks = Markdown.blocks(markdown);
    var title =
        blocks.stream()
            .filter(Block.Heading.class::isInstance)
            .map(heading -> Run.plain(((Block.Heading) heading).text()))
            .findFirst()
            .orElse(name);
    var topics =
        TOPICS
            .matcher(markdown)
            .results()
            .flatMap(found -> Stream.of(found.group(1).split(",", -1)))
            .map(String::strip)
            .filter(topic -> !topic.isEmpty())
            .toList();
    return new GuidePage(name, title, topics, blocks);
  }

  /** Its parts from heading to heading, as text. */
  List<Section> sections() {
    var sections = new ArrayList<Section>();
    var anchor = "";
    var heading = "";
    var text = new StringBuilder();
    for (var block : blocks) {
      if (block instanceof Block.Heading(int level, var next, var words)) {
        if (level > 1) {
          sections.add(new Section(anchor, heading, text.toString()));
          text.setLength(0);
          anchor = next;
          heading = Run.plain(words);
        }
      } else {
        words(block).forEach(one -> text.append(one).append('\n'));
      }
    }
    sections.add(new Section(anchor, heading, text.toString()));
    return List.copyOf(sections);
  }

  /** Where its links lead. */
  List<String> links() {
    return blocks.stream()
        .flatMap(GuidePage::runs)
        .filter(Run::leads)
        .map(Run::link)
        .distinct()
        .toList();
  }

  /** The blocks within a block, itself first. */
  static Stream<Block> within(Block block) {
    return Stream.concat(
        Stream.of(block),
        switch (block) {
          case Block.Items(_, var items) ->
              items.stream().flatMap(List::stream).flatMap(GuidePage::within);
          case Block.Quote(var inside) -> inside.stream().flatMap(GuidePage::within);
          default -> Stream.empty();
        });
  }

  /** All text of a block that has a face. */
  static Stream<Run> runs(Block block) {
    return within(block)
        .flatMap(
            one ->
                switch (one) {
                  case Block.Heading(_, _, var text) -> text.stream();
                  case Block.Paragraph(var text) -> text.stream();
                  case Block.Table(var head, var rows) ->
                      Stream.concat(head.stream(), rows.stream().flatMap(List::stream))
                          .flatMap(List::stream);
                  default -> Stream.empty();
                });
  }

  private static Stream<String> words(Block block) {
    return within(block)
        .flatMap(
            one ->
                switch (one) {
                  case Block.Heading(_, _, var text) -> Stream.of(Run.plain(text));
                  case Block.Paragraph(var text) -> Stream.of(Run.plain(text));
                  case Block.Table(var head, var rows) ->
                      Stream.concat(Stream.of(head), rows.stream())
                          .map(
                              row ->
                                  String.join(" \u00b7 ", row.stream().map(Run::plain).toList()));
                  case Block.Code(var text) -> text.lines();
                  case Block.Picture(_, var says) -> Stream.of(says);
                  case Block.Items _, Block.Quote _ -> Stream.empty();
                });
  }
}
