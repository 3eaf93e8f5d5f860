package tabor.weave;

import java.util.ArrayList;
import java.util.List;
import org.commonmark.Extension;
import org.commonmark.ext.front.matter.YamlFrontMatterExtension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Node;
import org.commonmark.node.SourceSpan;
import org.commonmark.parser.IncludeSourceSpans;
import org.commonmark.parser.Parser;

/** Finds the notation in a CommonMark document. */
final class MarkdownText {
  /** What an inline piece of notation begins with. */
  static final String INLINE = "tabor:";

  private static final List<Extension> EXTENSIONS =
      List.of(TablesExtension.create(), YamlFrontMatterExtension.create());

  private static final Parser PARSER =
      Parser.builder()
          .extensions(EXTENSIONS)
          .includeSourceSpans(IncludeSourceSpans.BLOCKS_AND_INLINES)
          .build();

  /** Stands in where the tree does not say where its parts come from. */
  private static final SourceSpan NOWHERE = SourceSpan.of(0, 0, 0, 0);

  private final String text;
  private final List<Place> places = new ArrayList<>();

  private MarkdownText(String text) {
    this.text = text;
  }

  /** True for inline code that holds notation; the bare word is only a word. */
  static boolean isNotation(String code) {
    return code.startsWith(INLINE) && !code.substring(INLINE.length()).isBlank();
  }

  /** The document as a tree. */
  static Node parse(String text) {
    return PARSER.parse(text);
  }

  /** Blocks and inline pieces of notation in the order of the document. */
  static List<Place> places(Node document, String text) {
    MarkdownText found = new MarkdownText(text);
    document.accept(found.new Finder());
    return found.places;
  }

  /**
   * Where notation stands.
   *
   * @param node the block or the inline code
   * @param block what it says; of inline code the words behind {@link #INLINE}, its head empty
   * @param start its first character in the document
   * @param end after its last one
   */
  record Place(Node node, FencedBlock block, int start, int end) {
    boolean isInline() {
      return node instanceof Code;
    }
  }

  private final class Finder extends AbstractVisitor {
    @Override
    public void visit(FencedCodeBlock block) {
      if (WishReader.isNotation(block.getInfo())) {
        List<SourceSpan> spans = block.getSourceSpans();
        SourceSpan first = spans.isEmpty() ? NOWHERE : spans.get(0);
        FencedBlock found =
            new FencedBlock(
                block.getInfo(),
                block.getLiteral(),
                first.getLineIndex(),
                first.getColumnIndex(),
                offset(block, spans));
        places.add(new Place(block, found, first.getInputIndex(), end(spans)));
      }
    }

    @Override
    public void visit(Code code) {
      if (isNotation(code.getLiteral())) {
        List<SourceSpan> spans = code.getSourceSpans();
        SourceSpan first = spans.isEmpty() ? NOWHERE : spans.get(0);
        String words = code.getLiteral().substring(INLINE.length());
        FencedBlock found =
            new FencedBlock("", words, first.getLineIndex(), first.getColumnIndex(), -1);
        places.add(new Place(code, found, first.getInputIndex(), end(spans)));
      }
    }
  }

  private static int end(List<SourceSpan> spans) {
    SourceSpan last = spans.isEmpty() ? NOWHERE : spans.get(spans.size() - 1);
    return last.getInputIndex() + last.getLength();
  }

  /** Where the block's text stands in one piece in the document; -1 if it does not. */
  private int offset(FencedCodeBlock block, List<SourceSpan> spans) {
    if (spans.size() < 2) {
      return -1;
    }
    int from = spans.get(1).getInputIndex();
    int at = from;
    String literal = block.getLiteral();
    for (int i = 0; i < literal.length(); i++) {
      char c = literal.charAt(i);
      if (c == '\n') {
        if (at == text.length()) {
          return i == literal.length() - 1 ? from : -1;
        }
        if (text.startsWith("\r\n", at)) {
          at += 2;
        } else if (text.charAt(at) == '\n' || text.charAt(at) == '\r') {
          at++;
        } else {
          return -1;
        }
      } else if (at < text.length() && text.charAt(at) == c) {
        at++;
      } else {
        return -1;
      }
    }
    return from;
  }
}
