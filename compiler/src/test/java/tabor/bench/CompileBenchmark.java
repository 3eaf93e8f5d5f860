package tabor.bench;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonTokenStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.resolve.Options;

/** Text to diagnostics, beside what ANTLR alone takes to lex and parse the same text. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
public class CompileBenchmark {
  /** Bars of the text. */
  @Param({"1000", "10000", "100000"})
  public int bars;

  private String text = "";

  /** Makes the text. */
  @Setup
  public void write() {
    text = LongFile.ofBars(bars);
  }

  /** ANTLR's own lexing and parsing of the whole text, its tree included. */
  @Benchmark
  public Object antlrAlone() {
    TaborLexer lexer = new TaborLexer(CharStreams.fromString(text));
    lexer.removeErrorListeners();
    TaborParser parser = new TaborParser(new CommonTokenStream(lexer));
    parser.removeErrorListeners();
    parser.setInterpreter(TaborParser.Network.prediction(parser));
    return parser.file();
  }

  /** The whole compiler, from nothing. */
  @Benchmark
  public Compiled compile() {
    return new Compiler(Loader.NONE).compile(Path.of("long.tabor"), text, Options.NONE);
  }
}
