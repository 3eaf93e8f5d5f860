package tabor.cli;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Finds the sources that the words of a command line name. */
final class SourceFiles {
  private SourceFiles() {}

  /** The ending of a source's name. */
  static final String ENDING = ".tabor";

  /**
   * The files named, each once, in the order named; a folder stands for every {@code .tabor} file
   * in it and below, in the order of their names, folders with a leading dot left out.
   */
  static List<Path> find(List<String> words) {
    Set<Path> found = new LinkedHashSet<>();
    for (String word : words) {
      Path path = path(word);
      if (!word.equals(SourceReader.STDIN) && Files.isDirectory(path)) {
        List<Path> inside = new ArrayList<>();
        walk(path, inside);
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

  private static void walk(Path folder, List<Path> into) {
    List<Path> children = new ArrayList<>();
    try (DirectoryStream<Path> listed = Files.newDirectoryStream(folder)) {
      listed.forEach(children::add);
    } catch (IOException e) {
      throw Failure.outside("the folder " + folder + " cannot be read: " + SourceReader.reason(e));
    }
    children.sort(Comparator.comparing(child -> child.getFileName().toString()));
    for (Path child : children) {
      String name = child.getFileName().toString();
      // Links to folders are not followed: they may lead round in a circle.
      if (Files.isDirectory(child, LinkOption.NOFOLLOW_LINKS)) {
        if (!name.startsWith(".")) {
          walk(child, into);
        }
      } else if (name.endsWith(ENDING) && isText(child)) {
        into.add(child);
      }
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
