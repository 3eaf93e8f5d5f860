package tabor.weave;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.commonmark.node.Node;
import org.commonmark.node.SourceSpan;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.diagnostic.Severity;

/** Markdown to Markdown: notation becomes pictures, everything else stays byte for byte. */
final class MarkdownWeaver {
  private final String text;
  private final Style style;
  private final FigureMaker maker;
  private final String lineEnd;
  private final Map<String, Woven.Shown> files = new LinkedHashMap<>();

  private MarkdownWeaver(Path document, String text, Lessons lessons, Style style) {
    this.text = text;
    this.style = style;
    this.maker = new FigureMaker(document, text, lessons);
    this.lineEnd = text.contains("\r\n") ? "\r\n" : "\n";
  }

  static Woven weave(Path document, String text, Lessons lessons, Style style) {
    return new MarkdownWeaver(document, text, lessons, style).weave();
  }

  private Woven weave() {
    StringBuilder out = new StringBuilder(text.length() + 256);
    int at = 0;
    for (MarkdownText.Place place : MarkdownText.places(MarkdownText.parse(text), text)) {
      out.append(text, at, place.start());
      out.append(place.isInline() ? inline(place) : block(place));
      at = place.end();
      if (!place.isInline()) {
        at = afterPictures(place.node(), at);
      }
    }
    out.append(text, at, text.length());
    return new Woven(out.toString(), List.copyOf(files.values()), maker.problems());
  }

  private String inline(MarkdownText.Place place) {
    FencedBlock block = place.block();
    int before = maker.problems().size();
    Picture picture = maker.inline(block.text(), block.line(), block.column());
    String code = text.substring(place.start(), place.end());
    if (picture == null) {
      return code + " **(" + escaped(whatIsWrong(before)) + ")**";
    }
    return style.keepText() ? code : image(picture);
  }

  private String block(MarkdownText.Place place) {
    int before = maker.problems().size();
    Figure figure = maker.block(place.block());
    String written = text.substring(place.start(), place.end());
    String prefix = prefix(place.start());
    String between = lineEnd + prefix;
    if (figure == null) {
      String box = "> **Problem:** " + escaped(whatIsWrong(before));
      return (style.keepText() ? written : ShownSource.broken(written)) + between.repeat(2) + box;
    }
    String below = String.join(between.repeat(2), pictures(figure, prefix));
    return switch (figure.wish().as()) {
      case SVG -> style.keepText() ? written + between.repeat(2) + below : below;
      case PLAYER ->
          (style.keepText() ? written + between.repeat(2) : "")
              + below
              + between.repeat(2)
              + practice(figure);
      case SOURCE -> style.keepText() ? written : fenced("tabor", figure.source(), prefix);
      case BOTH ->
          (style.keepText() ? written : fenced("tabor", figure.source(), prefix))
              + between.repeat(2)
              + below;
      case GRID ->
          style.keepText()
              ? written
              : fenced("text", figure.grid(), prefix) + captionBelow(figure, between);
    };
  }

  private String captionBelow(Figure figure, String between) {
    String caption = figure.wish().caption();
    return caption.isEmpty() ? "" : between.repeat(2) + "*" + escaped(caption) + "*";
  }

  /** A paragraph for each picture, the caption below the last. */
  private List<String> pictures(Figure figure, String prefix) {
    List<Picture> pictures = figure.pictures();
    List<String> paragraphs = new java.util.ArrayList<>();
    for (Picture picture : pictures) {
      paragraphs.add(image(picture));
    }
    String caption = figure.wish().caption();
    if (!caption.isEmpty() && !paragraphs.isEmpty()) {
      int last = paragraphs.size() - 1;
      paragraphs.set(
          last, paragraphs.get(last) + "\\" + lineEnd + prefix + "*" + escaped(caption) + "*");
    }
    return paragraphs;
  }

  private String image(Picture picture) {
    byte[] svg = picture.svg();
    return "![" + escaped(picture.alt()) + "](" + shown(picture.name(), svg, "svg") + ")";
  }

  /** A link to a practice page of the sections, which lies with the pictures. */
  private String practice(Figure figure) {
    byte[] page = Form.HTML.outputs(figure.lesson(), BuildOptions.ALL).get(0).bytes().get();
    String title = figure.title();
    return "[Play " + escaped(title) + "](" + shown(figure.name(), page, "html") + ")";
  }

  private String shown(String what, byte[] bytes, String ending) {
    String name = Names.of(what, bytes, ending);
    files.put(name, new Woven.Shown(name, bytes));
    return style.pictures() + name;
  }

  private String whatIsWrong(int from) {
    List<Problem> all = maker.problems();
    StringBuilder words = new StringBuilder();
    for (Problem problem : all.subList(Math.min(from, all.size()), all.size())) {
      if (problem.severity() == Severity.ERROR) {
        words.append(words.isEmpty() ? "" : "; ").append("line ").append(problem.line());
        words.append(": ").append(problem.message());
      }
    }
    return words.toString();
  }

  /** A code block that holds any text, its fence longer than every one inside. */
  private String fenced(String info, String content, String prefix) {
    int longest = 2;
    int run = 0;
    for (int i = 0; i < content.length(); i++) {
      run = content.charAt(i) == '`' ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    String fence = "`".repeat(longest + 1);
    StringBuilder out = new StringBuilder(fence).append(info);
    for (String line : content.stripTrailing().split("\r\n|\r|\n", -1)) {
      out.append(lineEnd).append(line.isEmpty() ? prefix.stripTrailing() : prefix + line);
    }
    return out.append(lineEnd).append(prefix).append(fence).toString();
  }

  /** What must stand before every further line at this place: marks of quotations, spaces. */
  private String prefix(int start) {
    int line = Math.max(text.lastIndexOf('\n', start - 1), text.lastIndexOf('\r', start - 1)) + 1;
    StringBuilder prefix = new StringBuilder();
    for (int i = line; i < start; i++) {
      char c = text.charAt(i);
      prefix.append(c == '>' || c == '\t' ? c : ' ');
    }
    return prefix.toString();
  }

  /** Where the text goes on after pictures of ours that follow a block. */
  private int afterPictures(Node block, int end) {
    int at = end;
    for (Node next = block.getNext(); WovenBefore.isOurs(next); next = next.getNext()) {
      List<SourceSpan> spans = next.getSourceSpans();
      SourceSpan last = spans.get(spans.size() - 1);
      at = last.getInputIndex() + last.getLength();
    }
    return at;
  }

  /** Text that stays text in Markdown. */
  static String escaped(String raw) {
    StringBuilder out = new StringBuilder(raw.length() + 16);
    for (int i = 0; i < raw.length(); i++) {
      char c = raw.charAt(i);
      if ("\\`*_[]<>&|~!#$".indexOf(c) >= 0) {
        out.append('\\').append(c);
      } else {
        out.append(c == '\n' || c == '\r' ? ' ' : c);
      }
    }
    return out.toString();
  }
}
