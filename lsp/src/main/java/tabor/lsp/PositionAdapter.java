package tabor.lsp;

import com.google.gson.JsonParseException;
import com.google.gson.TypeAdapter;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import org.eclipse.lsp4j.Position;
import org.jspecify.annotations.Nullable;

/**
 * Reads positions with care: one that is half there is wrong, not the first line or column, and one
 * far beyond any text, by which some clients mean the end of a line, stays far beyond it.
 */
final class PositionAdapter extends TypeAdapter<Position> {
  private static final String WORDS = "a position has a line and a character, both whole numbers";

  @Override
  public Position read(JsonReader in) throws IOException {
    if (in.peek() != JsonToken.BEGIN_OBJECT) {
      throw new JsonParseException(WORDS);
    }
    boolean line = false;
    boolean character = false;
    Position position = new Position();
    in.beginObject();
    while (in.hasNext()) {
      String name = in.nextName();
      if (name.equals("line")) {
        position.setLine(number(in));
        line = true;
      } else if (name.equals("character")) {
        position.setCharacter(number(in));
        character = true;
      } else {
        in.skipValue();
      }
    }
    in.endObject();
    if (!line || !character) {
      throw new JsonParseException(WORDS);
    }
    return position;
  }

  private static int number(JsonReader in) throws IOException {
    double value = in.peek() == JsonToken.NUMBER ? in.nextDouble() : Double.NaN;
    if (value != Math.rint(value)) {
      throw new JsonParseException(WORDS);
    }
    return (int) value; // the nearest there is
  }

  @Override
  public void write(JsonWriter out, @Nullable Position position) throws IOException {
    if (position == null) {
      out.nullValue();
      return;
    }
    out.beginObject();
    out.name("line").value(position.getLine());
    out.name("character").value(position.getCharacter());
    out.endObject();
  }
}
