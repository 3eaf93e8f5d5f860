import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes {@code tabor.grammar.StatementTexts} from {@code statements.txt}, as the parser is written
 * from its grammar: a class starts sooner than a file of a jar is found, unpacked and read. The
 * build runs this source file as it is.
 */
final class StatementTexts {
  private static final List<String> FIELDS = List.of("sections", "usage", "meaning", "example");

  private StatementTexts() {}

  /** Arguments: the table, and the folder that the source is written into. */
  public static void main(String[] args) throws IOException {
    Path table = Path.of(args[0]);
    Path folder = Files.createDirectories(Path.of(args[1], "tabor", "grammar"));
    StringBuilder code = new StringBuilder();
    code.append("package tabor.grammar;\n\n");
    code.append("/** The blocks of statements.txt, written by the build. */\n");
    code.append("public final class StatementTexts {\n");
    List<List<String>> blocks = blocks(table);
    List<String> sections = blocks.stream().map(block -> block.get(2)).distinct().toList();
    code.append("  /** By number, sections that take a statement. */\n");
    code.append("  public static final String[] SECTIONS = {\n");
    sections.forEach(words -> code.append("    ").append(quoted(words)).append(",\n"));
    code.append("  };\n\n");
    code.append(
        "  /** A line to a block: label, keyword or nothing, number of its sections as '0' and on. */\n");
    code.append("  public static final String BLOCKS = \"\"\n");
    for (List<String> block : blocks) {
      String keyword = block.get(1) == null ? "" : block.get(1);
      String number = Character.toString('0' + sections.indexOf(block.get(2)));
      code.append("      + ")
          .append(quoted(String.join("\t", block.get(0), keyword, number) + "\n"))
          .append('\n');
    }
    code.append("      ;\n\n  private StatementTexts() {}\n\n");
    code.append(
        "  /** Of the block of this number, from 0: usage, meaning, example. Read when asked for. */\n");
    code.append("  public static String[] texts(int block) {\n    switch (block) {\n");
    for (int i = 0; i < blocks.size(); i++) {
      code.append("      case ").append(i).append(":\n        return new String[] {");
      blocks.get(i).subList(3, 6).forEach(text -> code.append(quoted(text)).append(", "));
      code.append("};\n");
    }
    code.append(
        "      default:\n        throw new IndexOutOfBoundsException(block);\n    }\n  }\n}\n");
    Path file = folder.resolve("StatementTexts.java");
    // A file that has not changed keeps its time, so that nothing is compiled again for it.
    if (!Files.exists(file) || !Files.readString(file).contentEquals(code)) {
      Files.writeString(file, code);
    }
  }

  private static List<List<String>> blocks(Path table) throws IOException {
    List<List<String>> blocks = new ArrayList<>();
    Map<String, String> fields = new HashMap<>();
    String name = null;
    List<String> lines = new ArrayList<>(Files.readAllLines(table));
    lines.add("");
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.startsWith("#")) {
        continue;
      }
      if (line.startsWith(" ")) {
        String[] field = line.strip().split(" +", 2);
        if (name == null
            || field.length != 2
            || !FIELDS.contains(field[0])
            || fields.put(field[0], field[1]) != null) {
          throw new IOException(table + ":" + (i + 1) + ": not a field of a block: " + line);
        }
      } else if (!line.isBlank()) {
        name = line.strip();
        fields.clear();
      } else if (name != null) {
        blocks.add(block(table, name, fields));
        name = null;
      }
    }
    return blocks;
  }

  private static List<String> block(Path table, String name, Map<String, String> fields)
      throws IOException {
    String[] names = name.split(" ", 2);
    List<String> block = new ArrayList<>();
    block.add(names[0]);
    block.add(names.length == 1 ? null : names[1]);
    for (String field : FIELDS) {
      if (fields.get(field) == null) {
        throw new IOException(table + ": no " + field + " of " + name);
      }
      block.add(fields.get(field));
    }
    return block;
  }

  private static String quoted(String text) {
    StringBuilder code = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      if (c == '"' || c == '\\') {
        code.append('\\').append(c);
      } else if (c == '\t') {
        code.append("\\t");
      } else if (c == '\n') {
        code.append("\\n");
      } else if (c < 0x20 || c > 0x7e) {
        code.append(String.format("\\u%04x", (int) c));
      } else {
        code.append(c);
      }
    }
    return code.append('"').toString();
  }
}
