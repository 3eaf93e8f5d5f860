package tabor.lsp.editors;

import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.antlr.v4.runtime.Vocabulary;
import tabor.grammar.TaborLexer;
import tabor.groove.Loudness;
import tabor.kit.Kits;
import tabor.rhythm.NoteValue;

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

  private static final Set<String> HEADINGS = Set.of("groove", "step", "chart", "pattern", "kit");
  private static final Set<String> LIMBS =
      Set.of("right", "left", "hand", "hands", "foot", "feet", "all", "line");
  private static final Set<String> LEVELS =
      Set.of("ghost", "plain", "accent", "ghosted", "accented");
  private static final Set<String> CHOICES =
      Set.of("crescendo", "diminuendo", "straight", "swing", "high", "counts", "sticking");

  /** Copies the map. */
  WordClasses {
    words = Map.copyOf(words);
  }

  /** The words that the lexer knows, the default kit's surfaces, and the values named elsewhere. */
  static WordClasses ofTheNotation() {
    Map<Role, SortedSet<String>> found = new EnumMap<>(Role.class);
    for (Role role : Role.values()) {
      found.put(
          role,
          new TreeSet<>(Comparator.comparing(String::length).reversed().thenComparing(w -> w)));
    }
    Vocabulary vocabulary = TaborLexer.VOCABULARY;
    for (int type = 1; type <= vocabulary.getMaxTokenType(); type++) {
      String literal = vocabulary.getLiteralName(type);
      if (literal != null && literal.matches("'[a-z][a-z-]*'")) {
        String word = literal.substring(1, literal.length() - 1);
        at(found, role(word)).add(word);
      }
    }
    LEVELS.forEach(word -> at(found, Role.LEVEL).add(word));
    CHOICES.forEach(word -> at(found, Role.VALUE).add(word));
    for (Loudness loudness : Loudness.values()) {
      at(found, Role.VALUE).add(loudness.name().toLowerCase(java.util.Locale.ROOT));
    }
    for (NoteValue value : NoteValue.values()) {
      at(found, Role.VALUE).add(value.word());
    }
    at(found, Role.SURFACE).addAll(Kits.FIVE_PIECE.surfaceNames());
    Map<Role, List<String>> words = new EnumMap<>(Role.class);
    found.forEach((role, set) -> words.put(role, List.copyOf(set)));
    return new WordClasses(words);
  }

  private static Collection<String> at(Map<Role, SortedSet<String>> found, Role role) {
    SortedSet<String> set = found.get(role);
    if (set == null) {
      throw new IllegalStateException("no set for " + role);
    }
    return set;
  }

  private static Role role(String word) {
    return HEADINGS.contains(word)
        ? Role.HEADING
        : LIMBS.contains(word)
            ? Role.LIMB
            : LEVELS.contains(word) ? Role.LEVEL : CHOICES.contains(word) ? Role.VALUE : Role.WORD;
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
