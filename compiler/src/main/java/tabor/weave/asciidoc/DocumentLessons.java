package tabor.weave.asciidoc;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.asciidoctor.ast.Document;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;
import tabor.weave.Lessons;

/** Finds lessons in the folder of the document or below it, read by Asciidoctor's own rules. */
record DocumentLessons(Document document) implements Lessons {
  @Override
  public Found find(Path user, String written, Options options) {
    Path named = inside(written);
    if (named == null) {
      return Found.trouble("lies outside the folder of the document");
    }
    String text = read(named);
    if (text == null) {
      return Found.trouble("is not there, or cannot be read");
    }
    Compiled compiled = new Compiler(loader(named)).compile(named, text, options);
    return Found.of(compiled);
  }

  @Override
  public Loader loader(Path user) {
    return (from, written) -> {
      Path named = inside(from.resolveSibling(written).toString());
      if (named == null) {
        return Loader.Found.trouble(Path.of(written), Loader.Trouble.OUTSIDE);
      }
      String text = read(named);
      return text == null
          ? Loader.Found.trouble(named, Loader.Trouble.MISSING)
          : Loader.Found.text(named, text);
    };
  }

  /** A name within the document's folder; null for one that leads out of it. */
  private static @Nullable Path inside(String written) {
    try {
      Path named = Path.of(written).normalize();
      return named.isAbsolute() || named.startsWith("..") ? null : named;
    } catch (InvalidPathException e) {
      return null;
    }
  }

  private @Nullable String read(Path named) {
    Object folder = document.getAttribute("docdir", "");
    Path file = Path.of(folder.toString()).resolve(named);
    try {
      // A link must not lead out of the folder either.
      if (!file.toRealPath().startsWith(Path.of(folder.toString()).toRealPath())) {
        return null;
      }
    } catch (java.io.IOException e) {
      return null;
    }
    Map<Object, Object> options = new HashMap<>();
    options.put("normalize", true);
    return document.readAsset(file.toString(), options);
  }
}
