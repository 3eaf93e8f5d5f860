package tabor.lsp;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;

/**
 * Where the page on a diagnostic's code lies: beside the server in its own folder tree, so that a
 * click on a code opens it without a network.
 */
final class DiagnosticPages {
  private static final @Nullable Path FOLDER = folder();
  private static final Map<Code, Optional<String>> KNOWN = new EnumMap<>(Code.class);

  private DiagnosticPages() {}

  /** The URI of a code's page; empty where the pages were not installed. */
  static synchronized Optional<String> of(Code code) {
    return KNOWN.computeIfAbsent(code, DiagnosticPages::find);
  }

  private static Optional<String> find(Code code) {
    if (FOLDER == null) {
      return Optional.empty();
    }
    Path page = FOLDER.resolve(code.word() + ".md");
    return Files.isRegularFile(page) ? Optional.of(Uris.of(page)) : Optional.empty();
  }

  /**
   * The folder {@code docs/diagnostics} next to one of the folders that the classes lie in. The
   * launcher says which these are, since the jar may have another name meanwhile.
   */
  private static @Nullable Path folder() {
    CodeSource source = DiagnosticPages.class.getProtectionDomain().getCodeSource();
    try {
      String home = System.getProperty("tabor.home");
      Path at =
          home != null
              ? Path.of(home)
              : source == null ? null : Path.of(source.getLocation().toURI());
      for (; at != null; at = at.getParent()) {
        Path pages = at.resolve("docs").resolve("diagnostics");
        if (Files.isDirectory(pages)) {
          return pages;
        }
      }
    } catch (URISyntaxException | IllegalArgumentException e) {
      return null;
    }
    return null;
  }
}
