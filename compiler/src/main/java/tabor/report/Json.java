package tabor.report;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.VisibleText;

/** Writes JSON into a string: fields in the order written, two spaces of indentation. */
public final class Json {
  private final StringWriter text = new StringWriter();
  private final JsonWriter writer = new JsonWriter(text);

  /** Writes nothing yet. */
  public Json() {
    writer.setIndent("  ");
    writer.setHtmlSafe(false);
  }

  /** A step that may write. */
  private interface Step {
    void run() throws IOException;
  }

  private Json tried(Step step) {
    try {
      step.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return this;
  }

  /** An object that {@code inside} fills. */
  public Json object(Runnable inside) {
    tried(writer::beginObject);
    inside.run();
    return tried(writer::endObject);
  }

  /** A field with an object that {@code inside} fills. */
  public Json object(String name, Runnable inside) {
    tried(() -> writer.name(name));
    return object(inside);
  }

  /** A field with an array that {@code inside} fills. */
  public Json array(String name, Runnable inside) {
    tried(() -> writer.name(name).beginArray());
    inside.run();
    return tried(writer::endArray);
  }

  /** A field with an array of texts. */
  public Json texts(String name, List<String> values) {
    return array(name, () -> values.forEach(value -> tried(() -> writer.value(value))));
  }

  /** A text field; left out where the value is null. */
  public Json text(String name, @Nullable String value) {
    return value == null ? this : tried(() -> writer.name(name).value(value));
  }

  /** A number field; left out where the value is null. */
  public Json number(String name, @Nullable Integer value) {
    return value == null ? this : tried(() -> writer.name(name).value(value));
  }

  /** A field that is true or false. */
  public Json flag(String name, boolean value) {
    return tried(() -> writer.name(name).value(value));
  }

  /**
   * What was written, with a line end. Control characters that JSON would let stand, and characters
   * that turn the direction of text, are escaped: a report may be looked at in a terminal.
   */
  @Override
  public String toString() {
    StringBuilder safe = new StringBuilder(text.getBuffer().length() + 1);
    for (int i = 0; i < text.getBuffer().length(); i++) {
      char each = text.getBuffer().charAt(i);
      // Half of a pair is fine here, and the line ends are the writer's own.
      if (each != '\n' && !Character.isSurrogate(each) && VisibleText.point(each) != each) {
        safe.append(String.format("\\u%04x", (int) each));
      } else {
        safe.append(each);
      }
    }
    return safe.append('\n').toString();
  }
}
