package tabor.compile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.resolve.Options;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Files that use others: what is handed down, circles, and each file once. */
class UsedFilesTest {
  private final Map<String, String> files = new HashMap<>();
  private int loads;

  private final Loader loader =
      (user, written) -> {
        loads++;
        String text = files.get(written);
        Path path = Path.of(written);
        return text == null
            ? Loader.Found.trouble(path, Loader.Trouble.MISSING)
            : Loader.Found.text(path, text);
      };

  private Compiled compile(String text) {
    return new Compiler(loader).compile(Path.of("main.tabor"), text, Options.NONE);
  }

  private static List<Code> codes(Compiled compiled) {
    return compiled.diagnostics().stream().map(Diagnostic::code).toList();
  }

  private static Groove last(Compiled compiled) {
    List<Groove> grooves = compiled.lesson().grooves();
    return grooves.get(grooves.size() - 1);
  }

  @Test
  void sectionsInUseTakeTheTempoOfTheFileThatUsesThem() {
    files.put("beats.tabor", "groove beat\n kick : x . . .\n");
    Compiled compiled = compile("use \"beats.tabor\"\ntempo 132\nstep s from beat\n accent kick\n");
    assertThat(codes(compiled)).isEmpty();
    assertThat(last(compiled).setting().tempo()).isEqualTo(new Tempo(Time.of(1, 4), Time.of(132)));
  }

  @Test
  void whereTheirHeaderSetsOneTheyKeepIt() {
    files.put("beats.tabor", "tempo 60\nfeel swing eighths 60%\ngroove beat\n kick : x . . .\n");
    Groove step =
        last(
            compile(
                "use \"beats.tabor\"\n"
                    + "tempo 132\n"
                    + "levels ghost 20\n"
                    + "step s from beat\n"
                    + " accent kick\n"));
    assertThat(step.setting().tempo().perMinute()).isEqualTo(Time.of(60));
    assertThat(step.setting().feel().isStraight()).isFalse();
    assertThat(step.setting().levels().ghost()).isEqualTo(20);
  }

  @Test
  void valuesGoThroughAChainAndMeanTheSameInEveryMeter() {
    files.put("a.tabor", "use \"b.tabor\"\ntime 6/8\nstep a from b\n accent kick\n");
    files.put("b.tabor", "time 6/8\ngroove b\n kick : x .\n");
    Groove step =
        last(compile("use \"a.tabor\"\ntempo 100\nshow none\nstep s from a\n drop kick\n"));
    assertThat(step.setting().tempo()).isEqualTo(new Tempo(Time.of(1, 4), Time.of(100)));
    assertThat(step.setting().showCounts()).isFalse();
  }

  @Test
  void theKitIsHandedDownAndItsErrorStandsAtTheUseLine() {
    files.put("beats.tabor", "groove beat\n right : t . . .\n");
    Compiled compiled =
        compile(
            "on bare\nuse \"beats.tabor\"\nkit bare\n without tom1\ngroove g\n kick : x . . .\n");
    assertThat(codes(compiled)).containsExactly(Code.MISSING_SURFACE);
    Diagnostic told = compiled.diagnostics().get(0);
    assertThat(told.spot().text()).isEqualTo("\"beats.tabor\"");
    assertThat(told.message()).contains("beats.tabor", "beat, bar 1", "first tom");
  }

  @Test
  void aKitOfTheFileInUseMayBeTheOneHandedToIt() {
    files.put("kits.tabor", "kit bare\n without tom1 plays snare\ngroove beat\n right : t . . .\n");
    Compiled compiled = compile("on bare\nuse \"kits.tabor\"\nstep s from beat\n accent right\n");
    assertThat(codes(compiled)).isEmpty();
    assertThat(last(compiled).strokes().get(0).surface().name()).isEqualTo("snare");
  }

  @Test
  void oneErrorThereIsFixedAndSeveralAreToo() {
    files.put("one.tabor", "groove a\n kick : x . .\n");
    files.put("two.tabor", "groove c\n kick : x . .\ngroove d\n kick : x . .\n");
    assertThat(compile("use \"one.tabor\"\nuse \"two.tabor\"\n").diagnostics())
        .extracting(d -> d.message() + ", " + d.help())
        .containsExactly(
            "“one.tabor” has an error, fix it there first: tabor check one.tabor",
            "“two.tabor” has 2 errors, fix them there first: tabor check two.tabor");
  }

  @Test
  void aNameThatAShellWouldTakeApartStandsInQuotes() {
    files.put("week 1.tabor", "groove a\n kick : x . .\n");
    assertThat(compile("use \"week 1.tabor\"\n").diagnostics().get(0).help())
        .isEqualTo("fix it there first: tabor check \"week 1.tabor\"");
  }

  @Test
  void filesInACircleAreTold() {
    files.put("main.tabor", "use \"other.tabor\"\n");
    files.put("other.tabor", "use \"main.tabor\"\ngroove o\n kick : x . . .\n");
    assertThat(codes(compile("use \"other.tabor\"\ngroove g\n kick : x . . .\n")))
        .containsExactly(Code.USE_CYCLE);
  }

  @Test
  void eachFileIsReadOnceHoweverOftenItIsUsed() {
    for (int i = 0; i < 30; i++) {
      for (String side : List.of("a", "b")) {
        String uses = i == 29 ? "" : "use \"" + (i + 1) + "a\"\nuse \"" + (i + 1) + "b\"\n";
        files.put(i + side, uses + "groove g" + i + side + "\n kick : x . . .\n");
      }
    }
    assertThat(codes(compile("use \"0a\"\ngroove g\n kick : x . . .\n"))).isEmpty();
    assertThat(loads).isLessThan(130);
  }

  @Test
  void aLongChainDoesNotOverflow() {
    for (int i = 0; i < 5_000; i++) {
      files.put("c" + i, "use \"c" + (i + 1) + "\"\ngroove g" + i + "\n kick : x . . .\n");
    }
    files.put("c5000", "groove last\n kick : x . . .\n");
    assertThat(codes(compile("use \"c0\"\ngroove g\n kick : x . . .\n"))).isEmpty();
  }

  @Test
  void whatAnotherFileUsesIsNotUnused() {
    String kits = "kit bare\n without tom1\npattern p : rl\ngroove g\n kick : x . . .\n";
    files.put("kits.tabor", kits);
    Compiled shared = new Compiler(loader).compile(Path.of("kits.tabor"), kits, Options.NONE);
    Compiled user =
        compile(
            "use \"kits.tabor\"\ngroove h\n on bare\n kick : x . . .\n hands play p in eighths\n");
    assertThat(codes(shared)).containsExactly(Code.UNUSED_NAME, Code.UNUSED_NAME);
    assertThat(codes(shared.besides(List.of(shared, user)))).isEmpty();
    assertThat(codes(user)).isEmpty();
  }

  @Test
  void aChangeOfWhatIsHandedDownIsSeen() {
    files.put("beats.tabor", "groove beat\n kick : x . . .\n");
    Compiler compiler = new Compiler(loader);
    for (int tempo : new int[] {90, 120, 90, 77}) {
      Compiled compiled =
          compiler.compile(
              Path.of("main.tabor"),
              "use \"beats.tabor\"\ntempo " + tempo + "\nstep s from beat\n accent kick\n",
              Options.NONE);
      assertThat(last(compiled).setting().tempo().perMinute()).isEqualTo(Time.of(tempo));
    }
  }
}
