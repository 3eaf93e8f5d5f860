package tabor.cli;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Finds the sources that the words of a command line name. */
final class SourceFiles {
  private SourceFiles() {}

  /** The ending of a source's name. */
  static final String ENDING = ".tabor";

  /**
   * The files named, each once, in the order named; a folder stands for every {@code .tabor} file
   * in it and below, in the order of their names, folders with a leading dot left out. A folder
   * that cannot be looked into stands for itself: what reads it is told why, and goes on.
   */
  static List<Path> find(List<String> words) {
    return find(words, SourceFiles::children);
  }

  /** Says what is in a folder. */
  interface Lister {
    /**
     * The paths in a folder, in any order.
     *
     * @throws IOException if it cannot be looked into
     */
    List<Path> in(Path folder) throws IOException;
  }

  static List<Path> find(List<String> words, Lister lister) {
    Set<Path> found = new LinkedHashSet<>();
    for (String word : words) {
      Path path = path(word);
      if (!word.equals(SourceReader.STDIN) && Files.isDirectory(path)) {
        List<Path> inside = new ArrayList<>();
        walk(path, lister, inside);
        if (inside.isEmpty()) {
          throw Failure.usage("there is no " + ENDING + " file in the folder " + word);
        }
        found.addAll(inside);
      } else {
        found.add(path);
      }
    }
    return List.copyOf(found);
  }

  /** The path that a word of the command line names. */
  static Path path(String word) {
    if (word.isEmpty()) {
      throw Failure.usage("an empty word names no file and no folder; . is the folder you are in");
    }
    try {
      return Path.of(word);
    } catch (InvalidPathException e) {
      throw Failure.usage(
          "this cannot be the name of a file: "
              + word
              + (word.indexOf('\0') < 0 ? "; with LC_ALL=C.UTF-8 it may be one" : ""));
    }
  }

  /** What stands in a folder. */
  private record Child(String name, Path path) {}

  private static List<Path> children(Path folder) throws IOException {
    List<Path> found = new ArrayList<>();
    try (DirectoryStream<Path> listed = Files.newDirectoryStream(folder)) {
      listed.forEach(found::add);
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return found;
  }

  private static void walk(Path folder, Lister lister, List<Path> into) {
    List<Child> children = new ArrayList<>();
    try {
      for (Path path : lister.in(folder)) {
        children.add(new Child(path.getFileName().toString(), path));
      }
    } catch (IOException e) {
      into.add(folder);
      return;
    }
    children.sort((one, other) -> one.name().compareTo(other.name()));
    for (Child child : children) {
      BasicFileAttributes kind = attributes(child.path());
      // Links to folders are not followed: they may lead round in a circle.
      if (kind != null && kind.isDirectory()) {
        if (!child.name().startsWith(".")) {
          walk(child.path(), lister, into);
        }
      } else if (child.name().endsWith(ENDING)
          && ((kind != null && kind.isRegularFile()) || isText(child.path()))) {
        into.add(child.path());
      }
    }
  }

  /** Of the file itself, not of what a link leads to; null for one that is gone meanwhile. */
  static @Nullable BasicFileAttributes attributes(Path child) {
    try {
      return Files.readAttributes(child, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    } catch (IOException e) {
      return null;
    }
  }

  /** Not a folder, a pipe or a device; a link that leads nowhere is told about when it is read. */
  private static boolean isText(Path child) {
    return Files.isRegularFile(child) || !Files.exists(child);
  }

  /** The source's name without its ending: what its outputs are named after. */
  static String lessonName(Path file) {
    if (file.toString().equals(SourceReader.STDIN)) {
      return "lesson";
    }
    Path last = file.getFileName();
    String name = last == null ? "lesson" : last.toString();
    return name.endsWith(ENDING) && name.length() > ENDING.length()
        ? name.substring(0, name.length() - ENDING.length())
        : name;
  }
}
