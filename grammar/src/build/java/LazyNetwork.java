import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Moves the network and the words of the generated parser to a class of their own, which is set up
 * when something first asks for them: lines that the table of decisions holds do without, and a
 * start is that much sooner. Stops if ANTLR writes parsers another way. The build runs this source
 * file as it is.
 */
final class LazyNetwork {
  private static final String NETWORK =
      "\t/** What ANTLR predicts by. */\n\tpublic static final class Network {\n";

  private LazyNetwork() {}

  /** Argument: the generated parser, which is changed where it stands, once. */
  public static void main(String[] args) throws IOException {
    Path parser = Path.of(args[0]);
    String code = Files.readString(parser).replace("\r\n", "\n");
    if (!code.contains(NETWORK)) {
      Files.writeString(parser, lazy(code));
    }
  }

  /**
   * The generated parser with its network in a class of its own, which is set up when something
   * first asks for it: with the table of decisions beside it, good lines do without.
   */
  private static String lazy(String code) {
    String lazy = code.substring(0, place(code, "\tpublic static final ATN _ATN ="));
    lazy = replaced(lazy, "\tprotected static final DFA[] _decisionToDFA;\n", "");
    lazy =
        replaced(
            lazy,
            "\t\t_interp = new ParserATNSimulator(this,_ATN,_decisionToDFA,_sharedContextCache);\n",
            "");
    lazy = replaced(lazy, "return _ATN;", "return Network.ATN;");
    int names = place(lazy, "\tprivate static String[] makeLiteralNames()");
    int end = place(lazy, "\t@Override\n\t@Deprecated\n\tpublic String[] getTokenNames()");
    String moved = lazy.substring(names, end);
    lazy = lazy.substring(0, names) + lazy.substring(end);
    lazy = replaced(lazy, "return tokenNames;", "return Network.tokenNames;");
    lazy = replaced(lazy, "return VOCABULARY;", "return Network.VOCABULARY;");
    return lazy
        + NETWORK
        + moved
        + "\t\tpublic static final ATN ATN =\n"
        + "\t\t\tnew ATNDeserializer().deserialize(_serializedATN.toCharArray());\n"
        + "\t\tprivate static final DFA[] DECISIONS = new DFA[ATN.getNumberOfDecisions()];\n"
        + "\t\tstatic {\n"
        + "\t\t\tfor (int i = 0; i < DECISIONS.length; i++) {\n"
        + "\t\t\t\tDECISIONS[i] = new DFA(ATN.getDecisionState(i), i);\n"
        + "\t\t\t}\n"
        + "\t\t}\n"
        + "\t\tprivate Network() {}\n\n"
        + "\t\t/** ANTLR's own prediction, which a parser takes as its interpreter. */\n"
        + "\t\tpublic static ParserATNSimulator prediction(Parser parser) {\n"
        + "\t\t\treturn new ParserATNSimulator(parser, ATN, DECISIONS, _sharedContextCache);\n"
        + "\t\t}\n"
        + "\t}\n"
        + "}\n";
  }

  private static String replaced(String code, String part, String other) {
    int at = place(code, part);
    return code.substring(0, at) + other + code.substring(at + part.length());
  }

  private static int place(String code, String part) {
    int at = code.indexOf(part);
    if (at < 0) {
      throw new IllegalStateException("ANTLR writes parsers another way now: no " + part.strip());
    }
    return at;
  }
}
