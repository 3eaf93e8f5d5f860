package tabor.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Code;
import tabor.resolve.Options;

/**
 * A page of docs/diagnostics: what a code means, an example that shows it, what Tabor says of the
 * example, and the same text fixed.
 */
public final class DiagnosticPage {
  /** The folder of the pages. */
  public static final Path FOLDER = Path.of("../docs/diagnostics");

  private static final Path LESSON = Path.of("lesson.tabor");
  private static final Pattern BLOCK =
      Pattern.compile("^```tabor ?(\\S*)\\n(.*?)^```$", Pattern.DOTALL | Pattern.MULTILINE);
  private static final String SAID = "\nTabor says:\n\n```text\n";
  private static final String FIX = "\n## Fix\n";

  private final Code code;
  private final String text;

  private DiagnosticPage(Code code, String text) {
    this.code = code;
    this.text = text;
  }

  /** The page of a code. */
  public static DiagnosticPage of(Code code) {
    try {
      return new DiagnosticPage(code, Files.readString(file(code)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path file(Code code) {
    return FOLDER.resolve(code.word() + ".md");
  }

  /** All of it. */
  public String text() {
    return text;
  }

  /** What is wrong in the example. */
  public Compiled example(Options options) {
    return compile(text.substring(text.indexOf("\n## Example\n"), text.indexOf(FIX)), options);
  }

  /** What is wrong once it is fixed. */
  public Compiled fixed(Options options) {
    return compile(text.substring(text.indexOf(FIX)), options);
  }

  /** The example's text. */
  public String exampleText() {
    Matcher block = BLOCK.matcher(text);
    return block.find() ? block.group(2) : "";
  }

  /** What the page says that Tabor says of the example; empty if it says nothing of that. */
  public String said() {
    int from = text.indexOf(SAID);
    return from < 0 ? "" : text.substring(from, text.indexOf(FIX));
  }

  /** A page that says this, between its example and its fix. */
  public static String said(String report, String offered) {
    return SAID + report.strip() + "\n```\n" + (offered.isEmpty() ? "" : "\n" + offered + "\n");
  }

  /** Writes the page anew with other words of Tabor in it. */
  public void write(String said) {
    int from = text.indexOf(SAID);
    int fix = text.indexOf(FIX);
    try {
      Files.writeString(
          file(code), text.substring(0, from < 0 ? fix : from) + said + text.substring(fix));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A text with the named blocks of the page as the files that it can use. */
  public Compiled trial(String lesson, Options options) {
    return compile(files(text), lesson, options);
  }

  /** The block without a name, with the named ones as the files that it can use. */
  private static Compiled compile(String part, Options options) {
    Map<Path, String> files = files(part);
    return compile(files, files.getOrDefault(LESSON, ""), options);
  }

  private static Map<Path, String> files(String part) {
    Map<Path, String> files = new HashMap<>();
    Matcher blocks = BLOCK.matcher(part);
    while (blocks.find()) {
      Path name = blocks.group(1).isEmpty() ? LESSON : Path.of(blocks.group(1));
      files.put(name, blocks.group(2));
    }
    return files;
  }

  private static Compiled compile(Map<Path, String> files, String lesson, Options options) {
    Loader loader =
        (user, written) -> {
          Path path = Path.of(written);
          String text = files.get(path);
          return text != null
              ? Loader.Found.text(path, text)
              : Loader.Found.trouble(
                  path, written.startsWith("..") ? Loader.Trouble.OUTSIDE : Loader.Trouble.MISSING);
        };
    return new Compiler(loader).compile(LESSON, lesson, options);
  }
}
