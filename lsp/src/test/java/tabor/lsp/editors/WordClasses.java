package tabor.lsp.editors;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import tabor.parse.Vocabulary;

/**
 * The words of the notation by what they are, for grammars that colour without a server.
 *
 * @param words the words of each class, longest first among equals, so that an alternation finds
 *     the longest
 */
record WordClasses(Map<Role, List<String>> words) {
  /** What a word is. */
  enum Role {
    /** Opens a section. */
    HEADING,
    /** Begins a statement or joins its parts. */
    WORD,
    /** Who plays. */
    LIMB,
    /** How strong. */
    LEVEL,
    /** A choice: dynamics, note values, orders. */
    VALUE,
    /** What is struck, on the kit that is there without a word. */
    SURFACE
  }

  /** The classes by the roles of the notation's vocabulary; a word is in the first that has it. */
  private static final Map<Role, List<Vocabulary.Role>> CLASSES = classes();

  private static Map<Role, List<Vocabulary.Role>> classes() {
    Map<Role, List<Vocabulary.Role>> classes = new EnumMap<>(Role.class);
    classes.put(Role.HEADING, List.of(Vocabulary.Role.HEADING));
    classes.put(Role.LIMB, List.of(Vocabulary.Role.LIMB));
    classes.put(Role.LEVEL, List.of(Vocabulary.Role.LEVEL));
    classes.put(
        Role.VALUE,
        List.of(
            Vocabulary.Role.DYNAMIC,
            Vocabulary.Role.NOTE_VALUE,
            Vocabulary.Role.SHOWN,
            Vocabulary.Role.CLICK,
            Vocabulary.Role.FEEL,
            Vocabulary.Role.LIMIT,
            Vocabulary.Role.HEAD));
    classes.put(Role.SURFACE, List.of(Vocabulary.Role.SURFACE));
    classes.put(Role.WORD, List.of(Vocabulary.Role.STATEMENT, Vocabulary.Role.JOINING));
    return classes;
  }

  /** Copies the map. */
  WordClasses {
    words = Map.copyOf(words);
  }

  /** The words that the grammar knows, and the surfaces of the kit that is there without a word. */
  static WordClasses ofTheNotation() {
    Set<String> taken = new HashSet<>();
    Map<Role, List<String>> words = new EnumMap<>(Role.class);
    for (Role role :
        List.of(Role.HEADING, Role.LIMB, Role.LEVEL, Role.VALUE, Role.SURFACE, Role.WORD)) {
      NavigableSet<String> found =
          new TreeSet<>(Comparator.comparing(String::length).reversed().thenComparing(w -> w));
      for (Vocabulary.Role one : CLASSES.getOrDefault(role, List.of())) {
        Vocabulary.of(one).stream().filter(taken::add).forEach(found::add);
      }
      words.put(role, List.copyOf(found));
    }
    return new WordClasses(words);
  }

  /** The words of a class. */
  List<String> of(Role role) {
    return words.getOrDefault(role, List.of());
  }

  /** The words of a class as alternatives of a regular expression. */
  String alternatives(Role role) {
    return String.join("|", of(role)).replace(".", "\\.");
  }
}
