package tabor.cli;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;
import tabor.weave.Style;

/** Finds the documents that the words of a command line name, and the files that go with them. */
final class DocumentFiles {
  private final @Nullable Path output;
  private final Map<String, Document> found = new LinkedHashMap<>();

  private DocumentFiles(@Nullable Path output) {
    this.output = output;
  }

  /**
   * A file of a document folder.
   *
   * @param path where it is
   * @param root the folder that was named, or that the file named lies in: nothing outside it is
   *     read for this document
   * @param name its path below that folder, with slashes
   */
  record Document(Path path, Path root, String name) {
    /** True for Markdown, false for what is copied as it is. */
    boolean isMarkdown() {
      return Style.isDocument(name);
    }

    /** What stands before a name that counts from the folder named: {@code ../} for each level. */
    String up() {
      return "../".repeat(name.split("/", -1).length - 1);
    }
  }

  /**
   * The documents named, in order; a folder stands for every Markdown file in it and below, and for
   * all other files there, which go with them. Left out are names with a leading dot, the output
   * folder, and links that lead out of the folder or to a folder.
   *
   * @param output the folder that is written into; null for none
   */
  static List<Document> find(List<String> words, @Nullable Path output) {
    DocumentFiles files = new DocumentFiles(output == null ? null : real(output));
    for (String word : words) {
      Path path = SourceFiles.path(word);
      if (Files.isDirectory(path)) {
        int before = files.found.size();
        files.walk(path, path, "");
        List<Document> all = new ArrayList<>(files.found.values());
        if (!Lists.any(all.subList(before, all.size()), Document::isMarkdown)) {
          throw Failure.usage("there is no Markdown file (.md) in the folder " + word);
        }
      } else if (!Files.exists(path)) {
        throw Failure.outside(word + " is not there");
      } else {
        Path name = path.getFileName();
        if (name == null || !Style.isDocument(name.toString())) {
          throw Failure.usage(word + " is no Markdown file: its name should end in .md");
        }
        Path folder = path.getParent();
        files.add(new Document(path, folder == null ? Path.of("") : folder, name.toString()));
      }
    }
    return List.copyOf(files.found.values());
  }

  private void walk(Path root, Path folder, String above) {
    Map<String, Path> children = new TreeMap<>();
    try (DirectoryStream<Path> listed = Files.newDirectoryStream(folder)) {
      for (Path child : listed) {
        children.put(child.getFileName().toString(), child);
      }
    } catch (DirectoryIteratorException e) {
      throw unreadable(folder, e.getCause());
    } catch (IOException e) {
      throw unreadable(folder, e);
    }
    for (Map.Entry<String, Path> entry : children.entrySet()) {
      String name = entry.getKey();
      Path child = entry.getValue();
      if (name.startsWith(".")) {
        continue;
      }
      BasicFileAttributes own = SourceFiles.attributes(child);
      if (own == null) {
        continue; // It went away between being listed and being looked at.
      }
      boolean link = own.isSymbolicLink();
      if (own.isDirectory()) {
        if (!real(child).equals(output)) {
          walk(root, child, above + name + "/");
        }
      } else if (own.isRegularFile()
          || (link && Files.isRegularFile(child) && real(child).startsWith(real(root)))) {
        add(new Document(child, root, above + name));
      }
    }
  }

  private static Failure unreadable(Path folder, IOException why) {
    return Failure.outside("the folder " + folder + " cannot be read: " + SourceReader.reason(why));
  }

  private void add(Document document) {
    Document before = found.putIfAbsent(document.name().toLowerCase(Locale.ROOT), document);
    if (before != null && !real(before.path()).equals(real(document.path()))) {
      throw Failure.outside(
          before.path()
              + " and "
              + document.path()
              + " would both be written to "
              + document.name()
              + "; nothing is written: rename one, or weave them into different folders");
    }
  }

  /** A path without links; of what is not there yet the folder that is. */
  static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath().normalize();
    }
  }
}
