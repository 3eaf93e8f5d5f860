package tabor.weave;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.weave.Woven.Shown;

/**
 * A filter for Pandoc: its document tree as JSON in and out. Code blocks and inline code of the
 * class {@code tabor} become pictures of the kind that the output takes; everything else stays.
 * Source: Pandoc's own description of its filters and of the type {@code Pandoc} (pandoc-types
 * 1.22).
 */
public final class PandocFilter {
  private final Lessons lessons;
  private final Kind kind;
  private final String pictures;
  private final Map<String, Shown> files = new LinkedHashMap<>();
  private final List<Problem> problems = new ArrayList<>();
  private int blocks;

  /** Images of staves in lines of text, by their words. */
  private final Map<String, JsonElement> inlines = new HashMap<>();

  private PandocFilter(Lessons lessons, Kind kind, String pictures) {
    this.lessons = lessons;
    this.kind = kind;
    this.pictures = pictures;
  }

  /** Kinds of picture files. */
  enum Kind {
    SVG,
    PDF,
    PNG;

    /** What an output format takes, by Pandoc's name for it. */
    static Kind of(String format) {
      String name = format.split("[+-]", -1)[0];
      return switch (name) {
        case "latex", "pdf", "beamer", "context" -> PDF;
        case "docx", "odt", "pptx", "rtf", "opendocument", "icml", "ms" -> PNG;
        default -> SVG;
      };
    }

    byte[] bytes(Picture picture) {
      return switch (this) {
        case SVG -> picture.svg();
        case PDF -> picture.pdf();
        case PNG -> picture.png();
      };
    }

    String ending() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * Filters a document.
   *
   * @param json as Pandoc writes it
   * @param format the name of the output format, as Pandoc hands it to its filters
   * @param pictures what stands before the name of a picture, such as {@code pictures/}
   * @throws IllegalArgumentException if this is no document of Pandoc's; the message says so
   */
  public static Woven filter(String json, String format, Lessons lessons, String pictures) {
    JsonElement document;
    try {
      document = JsonParser.parseString(json);
    } catch (JsonParseException e) {
      throw new IllegalArgumentException("this is no JSON", e);
    }
    if (!document.isJsonObject() || !document.getAsJsonObject().has("blocks")) {
      throw new IllegalArgumentException("this is no document of Pandoc's");
    }
    PandocFilter filter = new PandocFilter(lessons, Kind.of(format), pictures);
    JsonElement filtered = filter.walk(document);
    return new Woven(filtered + "\n", List.copyOf(filter.files.values()), filter.problems);
  }

  private JsonElement walk(JsonElement element) {
    if (element.isJsonArray()) {
      JsonArray walked = new JsonArray();
      for (JsonElement each : element.getAsJsonArray()) {
        List<JsonElement> instead = instead(each);
        if (instead == null) {
          walked.add(walk(each));
        } else {
          instead.forEach(walked::add);
        }
      }
      return walked;
    }
    if (element.isJsonObject()) {
      JsonObject walked = new JsonObject();
      element.getAsJsonObject().entrySet().forEach(e -> walked.add(e.getKey(), walk(e.getValue())));
      return walked;
    }
    return element;
  }

  /** What takes the place of a node; null for nothing. */
  private @Nullable List<JsonElement> instead(JsonElement node) {
    if (!node.isJsonObject() || !node.getAsJsonObject().has("t")) {
      return null;
    }
    String type = node.getAsJsonObject().get("t").getAsString();
    JsonElement content = node.getAsJsonObject().get("c");
    if (type.equals("CodeBlock")) {
      return block(content.getAsJsonArray());
    }
    if (type.equals("Code")) {
      String text = content.getAsJsonArray().get(1).getAsString();
      return MarkdownText.isNotation(text)
          ? inline(text.substring(MarkdownText.INLINE.length()))
          : null;
    }
    return null;
  }

  private @Nullable List<JsonElement> block(JsonArray content) {
    JsonArray attributes = content.get(0).getAsJsonArray();
    Map<String, String> values = new LinkedHashMap<>();
    boolean ours = false;
    for (JsonElement name : attributes.get(1).getAsJsonArray()) {
      if (name.getAsString().equals(WishReader.WORD)) {
        ours = true;
      } else {
        values.put(name.getAsString(), "");
      }
    }
    if (!ours) {
      return null;
    }
    for (JsonElement pair : attributes.get(2).getAsJsonArray()) {
      values.put(
          pair.getAsJsonArray().get(0).getAsString(), pair.getAsJsonArray().get(1).getAsString());
    }
    String text = content.get(1).getAsString();
    FigureMaker maker = maker();
    FencedBlock block = new FencedBlock("", text.isEmpty() ? "" : text + "\n", -1, 0, -1);
    Figure figure = maker.block(block, values);
    problems.addAll(maker.problems());
    return figure == null ? null : figure(figure);
  }

  private @Nullable List<JsonElement> inline(String words) {
    FigureMaker maker = maker();
    JsonElement known = inlines.get(words);
    if (known != null) {
      return List.of(known);
    }
    Picture picture = maker.inline(words, -1, 0);
    problems.addAll(maker.problems());
    if (picture == null) {
      return null;
    }
    JsonElement image = image(picture);
    inlines.put(words, image);
    return List.of(image);
  }

  /** Pandoc does not say where a block stands, so that it is named by its number. */
  private FigureMaker maker() {
    return new FigureMaker(Path.of("notation " + ++blocks), null, lessons);
  }

  private List<JsonElement> figure(Figure figure) {
    List<JsonElement> nodes = new ArrayList<>();
    Wish.As as = figure.wish().as();
    if (as == Wish.As.SOURCE || as == Wish.As.BOTH) {
      nodes.add(code("tabor-source", figure.source()));
    }
    if (as == Wish.As.GRID) {
      nodes.add(code("tabor-grid", figure.grid()));
    }
    if (as == Wish.As.SVG || as == Wish.As.PLAYER || as == Wish.As.BOTH) {
      figure.pictures().forEach(picture -> nodes.add(node("Para", array(image(picture)))));
    }
    String caption = figure.wish().caption();
    if (!caption.isEmpty()) {
      nodes.add(node("Para", array(node("Emph", array(words(caption))))));
    }
    return nodes;
  }

  private JsonElement image(Picture picture) {
    byte[] bytes = kind.bytes(picture);
    String name = Names.of(picture.name(), bytes, kind.ending());
    files.put(name, new Shown(name, bytes));
    JsonArray size = array(array(string("width"), string(Picture.pixels(picture.width()) + "px")));
    JsonArray attributes = array(string(""), new JsonArray(), size);
    JsonArray target = array(string(pictures + name), string(""));
    return node("Image", array(attributes, array(words(picture.alt())), target));
  }

  private static JsonElement code(String kind, String text) {
    JsonArray attributes = array(string(""), array(string(kind)), new JsonArray());
    return node("CodeBlock", array(attributes, string(text.stripTrailing())));
  }

  private static JsonElement words(String text) {
    return node("Str", string(text));
  }

  private static JsonElement string(String text) {
    return new JsonPrimitive(text);
  }

  private static JsonArray array(JsonElement... elements) {
    JsonArray array = new JsonArray();
    for (JsonElement element : elements) {
      array.add(element);
    }
    return array;
  }

  private static JsonObject node(String type, JsonElement content) {
    JsonObject node = new JsonObject();
    node.addProperty("t", type);
    node.add("c", content);
    return node;
  }
}
