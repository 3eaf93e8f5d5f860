package tabor.weave.asciidoc;

import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.asciidoctor.ast.ContentModel;
import org.asciidoctor.ast.Document;
import org.asciidoctor.ast.StructuralNode;
import org.asciidoctor.extension.BlockProcessor;
import org.asciidoctor.extension.Contexts;
import org.asciidoctor.extension.Name;
import org.asciidoctor.extension.Reader;
import org.asciidoctor.log.LogRecord;
import org.asciidoctor.log.Severity;
import tabor.weave.Notation;
import tabor.weave.Picture;
import tabor.weave.Problem;
import tabor.weave.Wish;

/**
 * The block {@code [tabor]}: notation in a listing, with the attributes that a block in Markdown
 * takes. In HTML it becomes an SVG element, in all other back ends, the PDF one among them, a
 * picture. What cannot be shown is logged as an error and stands in the document as an admonition.
 */
@Name("tabor")
@Contexts({Contexts.LISTING, Contexts.LITERAL, Contexts.OPEN, Contexts.PARAGRAPH})
@ContentModel(ContentModel.RAW)
public final class TaborBlockProcessor extends BlockProcessor {
  private static final List<String> ATTRIBUTES =
      List.of("as", "file", "section", "width", "counts", "caption", "for");

  /** Points a pixel, as CSS has it. */
  private static final double POINTS = 0.75;

  @Override
  public Object process(StructuralNode parent, Reader reader, Map<String, Object> attributes) {
    String source = String.join("\n", reader.readLines());
    Document document = parent.getDocument();
    Notation notation =
        Notation.of(
            "notation " + document.getAndIncrementCounter("tabor-notation"),
            source.isBlank() ? "" : source + "\n",
            wanted(attributes),
            new DocumentLessons(document));
    for (Problem problem : notation.problems()) {
      Severity severity = problem.isError() ? Severity.ERROR : Severity.WARN;
      log(new LogRecord(severity, problem.words()));
    }
    if (notation.hasErrors()) {
      return warning(parent, notation);
    }
    // The PDF back end calls itself a kind of HTML.
    boolean html =
        document.isBasebackend("html") && !"pdf".equals(document.getAttribute("backend", ""));
    return html ? html(parent, notation) : printed(parent, notation);
  }

  /** The attributes of ours; {@code %counts} and {@code counts} among the unnamed are flags. */
  private static Map<String, String> wanted(Map<String, Object> attributes) {
    Map<String, String> wanted = new LinkedHashMap<>();
    for (String name : ATTRIBUTES) {
      Object value = attributes.get(name);
      if (value != null) {
        wanted.put(name, value.toString());
      }
    }
    attributes.forEach(
        (name, value) -> {
          boolean unnamed = name.chars().allMatch(c -> c >= '0' && c <= '9');
          if ((unnamed && "counts".equals(value)) || name.equals("counts-option")) {
            wanted.put("counts", "");
          }
        });
    return wanted;
  }

  private Object html(StructuralNode parent, Notation notation) {
    int from = parent.getDocument().getAndIncrementCounter("tabor-staff");
    String html = notation.html("Notation" + from + "-");
    return createBlock(parent, "pass", html, Map.of());
  }

  /** Pictures within the document itself: no file is left behind. */
  private Object printed(StructuralNode parent, Notation notation) {
    StructuralNode all = createBlock(parent, "open", List.of());
    Wish.As as = notation.figure().wish().as();
    if (as == Wish.As.SOURCE || as == Wish.As.BOTH) {
      all.append(createBlock(all, "listing", notation.figure().source().stripTrailing()));
    }
    if (as == Wish.As.GRID) {
      all.append(createBlock(all, "literal", notation.figure().grid().stripTrailing()));
    }
    if (as == Wish.As.SVG || as == Wish.As.PLAYER || as == Wish.As.BOTH) {
      for (Picture picture : notation.figure().pictures()) {
        all.append(createBlock(all, "image", "", image(picture)));
      }
    }
    String caption = notation.figure().wish().caption();
    if (!caption.isEmpty()) {
      all.setTitle(caption);
    }
    return all;
  }

  private static Map<String, Object> image(Picture picture) {
    Map<String, Object> attributes = new LinkedHashMap<>();
    String bytes = Base64.getEncoder().encodeToString(picture.png());
    attributes.put("target", "data:image/png;base64," + bytes);
    attributes.put("alt", picture.alt());
    attributes.put("pdfwidth", Math.round(picture.width() * POINTS) + "pt");
    return attributes;
  }

  private Object warning(StructuralNode parent, Notation notation) {
    StringBuilder words = new StringBuilder();
    for (Problem problem : notation.problems()) {
      if (problem.isError()) {
        words.append(words.isEmpty() ? "" : " ").append(problem.words()).append('.');
      }
    }
    Map<String, Object> attributes = new LinkedHashMap<>();
    attributes.put("name", "warning");
    attributes.put("textlabel", "Problem");
    StructuralNode box = createBlock(parent, "admonition", List.of(), attributes, compound());
    box.append(createBlock(box, "literal", words.toString()));
    return box;
  }

  private static Map<Object, Object> compound() {
    Map<Object, Object> options = new LinkedHashMap<>();
    options.put("content_model", ":compound");
    return options;
  }
}
