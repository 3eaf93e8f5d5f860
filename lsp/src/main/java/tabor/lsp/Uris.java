package tabor.lsp;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/** Between the client's URIs and paths. */
final class Uris {
  private Uris() {}

  /** The path of a {@code file} URI, absolute and without dots; empty for any other. */
  static Optional<Path> path(String uri) {
    if (!uri.startsWith("file:")) {
      return Optional.empty();
    }
    try {
      return Optional.of(Path.of(new URI(uri)).toAbsolutePath().normalize());
    } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException e) {
      return loose(uri);
    }
  }

  /** A client that does not escape spaces and the like is understood all the same. */
  private static Optional<Path> loose(String uri) {
    try {
      String rest = uri.substring("file:".length());
      String path = rest.startsWith("//") ? rest.substring(rest.indexOf('/', 2)) : rest;
      return Optional.of(Path.of(path).toAbsolutePath().normalize());
    } catch (InvalidPathException | StringIndexOutOfBoundsException e) {
      return Optional.empty();
    }
  }

  /** The URI of a path. */
  static String of(Path path) {
    String uri = path.toUri().toString();
    // Path.toUri asks the disk and ends the URI of a folder with a slash.
    return uri.endsWith("/") && uri.length() > "file:///".length()
        ? uri.substring(0, uri.length() - 1)
        : uri;
  }
}
