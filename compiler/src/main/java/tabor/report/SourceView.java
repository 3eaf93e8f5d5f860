package tabor.report;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.compile.Compiled;
import tabor.source.LineIndex;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;

/** Finds spots of one compilation in the files that they come from. */
final class SourceView {
  private final Compiled compiled;
  private final Map<Path, Text> texts = new HashMap<>();

  SourceView(Compiled compiled) {
    this.compiled = compiled;
    texts.put(compiled.file(), new Text(compiled.text(), new LineIndex(compiled.text())));
  }

  /** A file's text and its lines. */
  record Text(String text, LineIndex lines) {}

  /**
   * A spot in its file.
   *
   * @param file the file as it was named
   * @param text its text
   * @param span offsets in the text
   */
  record Found(Path file, Text text, Span span) {
    /** 0-based line of the first character. */
    int line() {
      return text.lines().lineOf(span.start());
    }

    /** 0-based line of the last character. */
    int endLine() {
      return text.lines().lineOf(span.end());
    }

    /** 0-based column of the first character, in UTF-16 units. */
    int column() {
      return text.lines().columnOf(span.start());
    }

    /** 0-based column after the last character, in UTF-16 units, on {@link #endLine()}. */
    int endColumn() {
      return text.lines().columnOf(span.end());
    }
  }

  /** Where a spot stands. A spot of no known file is put at the start of the compiled one. */
  Found find(Spot spot) {
    Path file = compiled.fileOf(spot);
    if (file == null) {
      Text text = text(compiled.file());
      return new Found(compiled.file(), text, new Span(0, 0));
    }
    Text text = text(file);
    Span span = compiled.span(spot);
    int length = text.text().length();
    int start = Math.min(span.start(), length);
    return new Found(file, text, new Span(start, Math.max(start, Math.min(span.end(), length))));
  }

  private Text text(Path file) {
    return texts.computeIfAbsent(file, this::joined);
  }

  /** The text of a file in use, put together from its passages. */
  private Text joined(Path file) {
    List<Map.Entry<Passage, Compiled.Where>> parts = new ArrayList<>();
    for (Map.Entry<Passage, Compiled.Where> entry : compiled.places().entrySet()) {
      if (entry.getValue().file().equals(file)) {
        parts.add(entry);
      }
    }
    parts.sort(Comparator.comparingInt(entry -> entry.getValue().offset()));
    StringBuilder text = new StringBuilder();
    for (Map.Entry<Passage, Compiled.Where> part : parts) {
      while (text.length() < part.getValue().offset()) {
        text.append('\n');
      }
      text.append(part.getKey().text());
    }
    String whole = text.toString();
    return new Text(whole, new LineIndex(whole));
  }
}
