package tabor.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.cli.DocumentFiles.Document;
import tabor.compile.Compiled;
import tabor.report.TextReport;
import tabor.resolve.Options;
import tabor.watch.FolderState;
import tabor.watch.LiveServer;
import tabor.watch.LiveServer.Content;
import tabor.weave.Names;
import tabor.weave.Problem;

/**
 * The work of {@code tabor watch}: a folder's documents as pages and its lessons as practice pages,
 * made again when a file changes. One thread makes; the server's threads read what was made.
 */
final class Watch implements LiveServer.Site {
  /** How many looks a file that was emptied is given to be written. */
  private static final int PATIENCE = 3;

  private final Io io;
  private final Path folder;
  private final Path output;
  private final Map<Path, List<String>> problems = new LinkedHashMap<>();
  private final Map<Path, Set<Path>> uses = new LinkedHashMap<>();
  private final Set<String> pages = Collections.synchronizedSet(new LinkedHashSet<>());
  private final Map<String, byte[]> sums = new LinkedHashMap<>();
  private FolderState state;
  private Set<Path> hot = Set.of();
  private boolean built;
  private int waited;

  Watch(Io io, Path folder, Path output) {
    this.io = io;
    this.folder = folder;
    this.output = output;
    this.state = FolderState.of(folder, output);
  }

  /** What is wrong now, in the order of the files. */
  List<String> problems() {
    List<String> all = new ArrayList<>();
    new TreeMap<>(problems).values().forEach(all::addAll);
    return new ArrayList<>(new LinkedHashSet<>(all));
  }

  /**
   * Looks at the folder and makes what has to be made.
   *
   * @return the pages that changed; null if there was nothing to do
   */
  @Nullable Set<String> look() {
    // Before the files are looked at, so that what is written meanwhile counts as later.
    long now = System.currentTimeMillis();
    FolderState fresh = FolderState.of(folder, output);
    Set<Path> changed = fresh.since(state);
    if (changed.isEmpty() && hot.isEmpty() && built) {
      return null;
    }
    // Many editors empty a file before they write it: what is wrong in between is nobody's news.
    if (built && fresh.isEmptied(state) && waited < PATIENCE) {
      waited++;
      return null;
    }
    waited = 0;
    state = fresh;
    Set<Path> touched = new LinkedHashSet<>(built ? changed : fresh.files());
    // A file saved twice within a tick of the disk's clock looks the same: it is made once more.
    touched.addAll(hot);
    hot = fresh.hot(now);
    problems.keySet().removeIf(file -> !Files.exists(file));
    Set<String> made = new LinkedHashSet<>();
    lessons(touched, made);
    documents(made);
    built = true;
    return difference(made);
  }

  /** The pages among those made that are other than before, or gone. */
  private Set<String> difference(Set<String> made) {
    Set<String> other = new LinkedHashSet<>();
    for (String page : List.copyOf(pages)) {
      if (!Files.exists(output.resolve(page))) {
        pages.remove(page);
        sums.remove(page);
        other.add(page);
      }
    }
    for (String page : made) {
      try {
        byte[] sum = Names.sha256(Files.readAllBytes(output.resolve(page)));
        if (!Arrays.equals(sum, sums.put(page, sum))) {
          other.add(page);
        }
      } catch (IOException gone) {
        other.add(page);
      }
    }
    return other;
  }

  private void documents(Set<String> made) {
    List<Document> documents;
    try {
      documents = DocumentFiles.find(List.of(folder.toString()), output);
    } catch (Failure none) {
      return; // no document yet, only lessons
    }
    Weave weave = new Weave(output, Weave.To.HTML, true, false, "pictures", null);
    List<Weave.Outcome> outcomes = weave.run(documents, new Progress(io));
    for (Weave.Outcome outcome : outcomes) {
      Document document = outcome.document();
      if (!document.isMarkdown()) {
        continue;
      }
      pages.add(weave.target(document));
      if (outcome.state() != Weave.State.FRESH) {
        made.add(weave.target(document));
      }
      List<String> found = new ArrayList<>();
      for (Problem problem : outcome.problems()) {
        if (problem.isError()) {
          found.add(problem.report().stripTrailing());
        }
      }
      problems.put(document.path(), found);
    }
  }

  /** Makes the practice pages of lessons that changed, or that use what changed. */
  private void lessons(Set<Path> touched, Set<String> made) {
    List<Path> files = new ArrayList<>();
    try {
      files.addAll(SourceFiles.find(List.of(folder.toString())));
    } catch (Failure none) {
      files.clear(); // no lesson, only documents
    }
    removed(files);
    for (Path file : files) {
      Set<Path> used = uses.getOrDefault(file, Set.of());
      // What a lesson with errors lacks may have come, whatever it is called.
      boolean wrong = !problems.getOrDefault(file, List.of("")).isEmpty();
      if (!touched.contains(file) && !wrong && used.stream().noneMatch(touched::contains)) {
        continue;
      }
      String name = name(file);
      Compiled compiled = new Toolchain(io, Options.NONE).compile(file);
      Set<Path> parts = new LinkedHashSet<>();
      compiled.places().values().forEach(where -> parts.add(where.file()));
      uses.put(file, parts);
      if (compiled.hasErrors()) {
        // The last good page stays, under the problems.
        problems.put(file, List.of(new TextReport(false).of(compiled, false).stripTrailing()));
        continue;
      }
      problems.put(file, List.of());
      byte[] page = Form.HTML.outputs(compiled.lesson(), BuildOptions.ALL).get(0).bytes().get();
      OutputFiles.makeFolder(output);
      OutputFiles.write(SafeFolder.file(output, name), page);
      pages.add(name);
      made.add(name);
    }
  }

  /** Takes away the pages of lessons that are gone. */
  private void removed(List<Path> files) {
    Set<Path> gone = new LinkedHashSet<>(uses.keySet());
    gone.removeAll(files);
    for (Path file : gone) {
      uses.remove(file);
      try {
        Files.deleteIfExists(SafeFolder.file(output, name(file)));
      } catch (IOException e) {
        // It stays, and harms nobody.
      }
    }
  }

  private String name(Path file) {
    return folder.relativize(file).toString().replace('\\', '/') + ".html";
  }

  @Override
  public @Nullable Content find(String path) {
    if (path.isEmpty()) {
      Content own = file("index.html");
      return own == null ? list() : own;
    }
    return path.endsWith("/") ? file(path + "index.html") : file(path);
  }

  private @Nullable Content file(String path) {
    try {
      Path root = output.toRealPath();
      Path named = root.resolve(path).normalize();
      if (!named.startsWith(root) || path.contains("\\") || hasHidden(root.relativize(named))) {
        return null;
      }
      Path real = named.toRealPath();
      return real.startsWith(root) && Files.isRegularFile(real)
          ? new Content(type(path), Files.readAllBytes(real))
          : null;
    } catch (IOException | InvalidPathException none) {
      return null;
    }
  }

  private static boolean hasHidden(Path path) {
    for (Path part : path) {
      if (part.toString().startsWith(".")) {
        return true;
      }
    }
    return false;
  }

  private static String type(String path) {
    String ending = path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    return switch (ending) {
      case "html", "htm" -> "text/html; charset=utf-8";
      case "css" -> "text/css; charset=utf-8";
      case "js" -> "text/javascript; charset=utf-8";
      case "svg" -> "image/svg+xml";
      case "png" -> "image/png";
      case "jpg", "jpeg" -> "image/jpeg";
      case "gif" -> "image/gif";
      case "pdf" -> "application/pdf";
      case "txt", "tabor", "md" -> "text/plain; charset=utf-8";
      default -> "application/octet-stream";
    };
  }

  /** The first page of a folder that has none of its own. */
  private Content list() {
    StringBuilder out = new StringBuilder();
    out.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<meta name=\"color-scheme\" content=\"light dark\">\n<title>Pages</title>\n")
        .append("<style>body{font:1.05rem/1.6 system-ui,sans-serif;max-width:44rem;")
        .append("margin:2rem auto;padding:0 1.5rem}a{color:LinkText}</style></head>\n")
        .append("<body><main><h1>Pages</h1>\n<ul>\n");
    for (String page : new TreeSet<>(List.copyOf(pages))) {
      String link = URI.create("x:/").resolve(uri(page)).getRawPath();
      out.append("<li><a href=\"").append(link).append("\">").append(escaped(page));
      out.append("</a></li>\n");
    }
    String html = out.append("</ul></main></body></html>\n").toString();
    return new Content("text/html; charset=utf-8", html.getBytes(StandardCharsets.UTF_8));
  }

  private static URI uri(String page) {
    try {
      return new URI(null, null, "/" + page, null);
    } catch (URISyntaxException e) {
      throw new UncheckedIOException(new IOException(e));
    }
  }

  private static String escaped(String raw) {
    return raw.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
