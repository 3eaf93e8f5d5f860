package tabor.speed;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonTokenStream;
import org.jspecify.annotations.Nullable;
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
import tabor.parse.Reader;
import tabor.resolve.Options;
import tabor.source.Passage;
import tabor.testing.Files;

/** What reading and compiling cost beside ANTLR's own lexing and parsing of the same text. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 3, time = 3)
@Fork(value = 1, jvmArgsAppend = "-Xmx2g")
public class ReadingBenchmark {
  /** Bars of the file. */
  @Param({"1000", "10000", "100000"})
  public int bars;

  private String text = "";

  /** Makes the file. */
  @Setup
  public void write() {
    text = Files.ofBars(bars, 7);
  }

  /** The floor: the generated lexer and parser on the whole text at once. */
  @Benchmark
  public TaborParser.FileContext antlr() {
    CommonTokenStream tokens = new CommonTokenStream(new TaborLexer(CharStreams.fromString(text)));
    TaborParser parser = new TaborParser(tokens);
    parser.setInterpreter(TaborParser.Network.prediction(parser));
    return parser.file();
  }

  /** Text to passages. */
  @Benchmark
  public List<Passage> passages() {
    return Reader.passages(text);
  }

  /** Text to trees, by a reader that remembers nothing yet. */
  @Benchmark
  public int trees() {
    Reader reader = new Reader();
    int lines = 0;
    for (Passage passage : Reader.passages(text)) {
      lines += reader.read(passage).lines().size();
    }
    return lines;
  }

  /** Text to diagnostics, by a compiler that remembers nothing yet. */
  @Benchmark
  public @Nullable Compiled diagnostics() {
    return new Compiler(Loader.NONE).compile(Path.of("speed.tabor"), text, Options.NONE);
  }
}
