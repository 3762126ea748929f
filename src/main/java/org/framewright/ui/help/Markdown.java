package org.framewright.ui.help;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableBody;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableHead;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.BulletList;
import org.commonmark.node.Code;
import org.commonmark.node.Emphasis;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.StrongEmphasis;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.framewright.ui.help.Run.Face;

/** Reads Markdown (CommonMark, with the tables of GitHub) into blocks; what else it has is left. */
final class Markdown {
  /** How the guide writes keys; all other code is what one types or what files are called. */
  private static final Pattern KEY =
      Pattern.compile(
          "(?:(?:Ctrl|Alt|Shift)\\+)*(?:[A-Z0-9/+,=-]|F\\d{1,2}|Backspace|Delete|Insert|Enter|Esc"
              + "|Space|Tab|Home|End|Page[ ]up|Page[ ]down|Left|Right|Up|Down|Shift|Ctrl)");

  private static final Parser PARSER =
      Parser.builder().extensions(List.of(TablesExtension.create())).build();

  private Markdown() {}

  static List<Block> blocks(String text) {
    return blocks(PARSER.parse(text));
  }

  /** Whether code names a key. */
  static boolean isKey(String code) {
    return KEY.matcher(code).matches();
  }

  /** What links call a heading by: its words in small letters, with hyphens between them. */
  static String anchor(String heading) {
    return Normalizer.normalize(heading.toLowerCase(Locale.ROOT), Normalizer.Form.NFC)
        .replaceAll("[^\\p{L}\\p{N} -]", "")
        .strip()
        .replace(' ', '-');
  }

  private static List<Block> blocks(Node parent) {
    return children(parent).flatMap(Markdown::block).toList();
  }

  private static Stream<Node> children(Node parent) {
    return Stream.iterate(parent.getFirstChild(), node -> node != null, Node::getNext);
  }

  private static Stream<Block> block(Node node) {
    return switch (node) {
      case Heading heading -> {
        var text = runs(heading);
        yield Stream.of(new Block.Heading(heading.getLevel(), anchor(Run.plain(text)), text));
      }
      case Paragraph paragraph when paragraph.getFirstChild() instanceof Image image ->
          Stream.of(new Block.Picture(image.getDestination(), Run.plain(runs(image))));
      case Paragraph paragraph -> Stream.of(new Block.Paragraph(runs(paragraph)));
      case IndentedCodeBlock code -> Stream.of(new Block.Code(code.getLiteral().stripTrailing()));
      case FencedCodeBlock code -> Stream.of(new Block.Code(code.getLiteral().stripTrailing()));
      case BlockQuote quote -> Stream.of(new Block.Quote(blocks(quote)));
      case BulletList list -> Stream.of(new Block.Items(0, items(list)));
      case OrderedList list -> Stream.of(new Block.Items(list.getMarkerStartNumber(), items(list)));
      case TableBlock table -> Stream.of(table(table));
      default -> Stream.empty();
    };
  }

  private static List<List<Block>> items(Node list) {
    return children(list).map(Markdown::blocks).toList();
  }

  private static Block table(TableBlock table) {
    var head = new ArrayList<List<Run>>();
    var rows = new ArrayList<List<List<Run>>>();
    children(table)
        .forEach(
            part -> {
              switch (part) {
                case TableHead top -> head.addAll(cells(top.getFirstChild()));
                case TableBody body -> children(body).forEach(row -> rows.add(cells(row)));
                default -> {}
              }
            });
    return new Block.Table(List.copyOf(head), List.copyOf(rows));
  }

  private static List<List<Run>> cells(Node row) {
    return row instanceof TableRow
        ? children(row).filter(TableCell.class::isInstance).map(Markdown::runs).toList()
        : List.of();
  }

  private static List<Run> runs(Node parent) {
    var runs = new ArrayList<Run>();
    addRuns(parent, Face.PLAIN, "", runs);
    return List.copyOf(runs);
  }

  private static void addRuns(Node parent, Face face, String link, List<Run> runs) {
    children(parent)
        .forEach(
            node -> {
              switch (node) {
                case Text text -> runs.add(new Run(text.getLiteral(), face, link));
                case Code code ->
                    runs.add(
                        new Run(
                            code.getLiteral(),
                            isKey(code.getLiteral()) ? Face.KEY : Face.CODE,
                            link));
                case SoftLineBreak _, HardLineBreak _ -> runs.add(new Run(" ", face, link));
                case StrongEmphasis strong -> addRuns(strong, Face.STRONG, link, runs);
                case Emphasis emphasis -> addRuns(emphasis, Face.EMPHASIS, link, runs);
                case Link to -> addRuns(to, face, to.getDestination(), runs);
                default -> addRuns(node, face, link, runs);
              }
            });
  }
}
