package tabor.lsp.editors;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tabor.lsp.editors.WordClasses.Role;

/**
 * The generated block of each editor's grammar: the words between two marked lines. The rest of a
 * grammar, which says where words stand and how lanes are read, is written by hand.
 */
final class EditorGrammars {
  static final String BEGIN = "begin generated words";
  static final String END = "end generated words";

  private final WordClasses words;

  EditorGrammars(WordClasses words) {
    this.words = words;
  }

  /** The block of each file under {@code lsp/editors}, without the marked lines. */
  Map<String, String> blocks() {
    Map<String, String> blocks = new TreeMap<>();
    blocks.put("vscode/syntaxes/tabor.tmLanguage.json", textMate());
    blocks.put("vim/syntax/tabor.vim", vim());
    blocks.put("kate/tabor.xml", kate());
    blocks.put("sublime/Tabor.sublime-syntax", sublime());
    blocks.put("emacs/tabor-mode.el", emacs());
    return blocks;
  }

  /** A grammar with its block replaced; the marked lines stay. */
  static String replaced(String grammar, String block) {
    int begin = grammar.indexOf('\n', grammar.indexOf(BEGIN)) + 1;
    int end = grammar.lastIndexOf('\n', grammar.indexOf(END)) + 1;
    if (begin <= 0 || end < begin) {
      throw new IllegalArgumentException("no marked block");
    }
    return grammar.substring(0, begin) + block + grammar.substring(end);
  }

  private static String scope(Role role) {
    return switch (role) {
      case HEADING -> "keyword.declaration.tabor";
      case WORD -> "keyword.other.tabor";
      case LIMB -> "variable.language.limb.tabor";
      case LEVEL -> "storage.modifier.level.tabor";
      case VALUE -> "constant.language.tabor";
      case SURFACE -> "support.variable.surface.tabor";
    };
  }

  /** Words do not end within a name: hyphens and dots are part of one. */
  private String whole(Role role) {
    return "(?<![\\w.-])(?:" + words.alternatives(role) + ")(?![\\w-]|\\.\\w)";
  }

  private String textMate() {
    return lines(
        role ->
            "        { \"name\": \""
                + scope(role)
                + "\", \"match\": \""
                + whole(role).replace("\\", "\\\\")
                + "\" },\n");
  }

  private String sublime() {
    return lines(role -> "    - match: '" + whole(role) + "'\n      scope: " + scope(role) + "\n");
  }

  private String vim() {
    return lines(
        role -> {
          String alternatives = String.join("\\|", words.of(role)).replace(".", "\\.");
          return "syntax match tabor"
              + camel(role)
              + " contained /\\%([[:alnum:]_.-]\\)\\@1<!\\%("
              + alternatives
              + "\\)\\%([[:alnum:]_-]\\|\\.[[:alnum:]]\\)\\@!/\n";
        });
  }

  private String kate() {
    return lines(
        role ->
            "    <list name=\""
                + role.name().toLowerCase(java.util.Locale.ROOT)
                + "\">\n"
                + words.of(role).stream()
                    .map(word -> "      <item>" + word + "</item>\n")
                    .collect(Collectors.joining())
                + "    </list>\n");
  }

  private String emacs() {
    return lines(
        role ->
            "(defconst tabor-mode-"
                + role.name().toLowerCase(java.util.Locale.ROOT)
                + "-words\n  '("
                + words.of(role).stream()
                    .map(word -> "\"" + word + "\"")
                    .collect(Collectors.joining("\n    "))
                + "))\n");
  }

  private interface Line {
    String of(Role role);
  }

  /** Surfaces first: a name like {@code hihat.foot} has a shorter word in it. */
  private static String lines(Line line) {
    List<Role> order =
        List.of(Role.SURFACE, Role.HEADING, Role.LIMB, Role.LEVEL, Role.VALUE, Role.WORD);
    return order.stream().map(line::of).collect(Collectors.joining());
  }

  private static String camel(Role role) {
    String word = role.name();
    return word.charAt(0) + word.substring(1).toLowerCase(java.util.Locale.ROOT);
  }
}
