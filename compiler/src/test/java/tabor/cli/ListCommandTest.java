package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ListCommandTest {
  private static final String LESSON =
      """
      tempo 60
      groove beat
        hihat : xx xx
        kick  : x  .
        time  2/4
      step answer
        add snare at 2
      chart practice
        play beat 2 times
      """;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int list(String text, String... more) {
    String[] args = new String[more.length + 2];
    args[0] = "list";
    args[1] = "-";
    System.arraycopy(more, 0, args, 2, more.length);
    ByteArrayInputStream in = new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    return Main.run(args, Io.of(in, out, err, false, false, Map.of()));
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  @Test
  void listsOneSection() {
    assertThat(list(LESSON, "answer")).isZero();
    assertThat(out())
        .isEqualTo(
            """
            section	bar	at	surface	limb	level	ornaments	count	length	ms
            answer	1	0	hihat	right hand	plain	-	1	1/8	0.000
            answer	1	0	kick	right foot	plain	-	1	1/4	0.000
            answer	1	1/8	hihat	right hand	plain	-	1&	1/8	500.000
            answer	1	1/4	hihat	right hand	plain	-	2	1/8	1000.000
            answer	1	1/4	snare	left hand	plain	-	2	1/4	1000.000
            answer	1	3/8	hihat	right hand	plain	-	2&	1/8	1500.000
            """);
    assertThat(err()).isEmpty();
  }

  @Test
  void listsEverySectionAndTakesATempo() {
    assertThat(list(LESSON, "--tempo", "120", "--left-handed")).isZero();
    assertThat(out().lines()).hasSize(1 + 5 + 6);
    assertThat(out()).contains("beat\t1\t3/8\thihat\tleft hand\tplain\t-\t2&\t1/8\t750.000\n");
  }

  @Test
  void openHandedKeepsTheOrderOfTheRows() {
    assertThat(list(LESSON.replace("time  2/4", "time  2/4\n ride : x ."), "beat", "--open-handed"))
        .isZero();
    assertThat(
            out().lines().skip(1).map(row -> row.split("\t", -1)[2] + " " + row.split("\t", -1)[4]))
        .containsExactly(
            "0 right hand",
            "0 left hand",
            "0 right foot",
            "1/8 left hand",
            "1/4 left hand",
            "3/8 left hand");
  }

  @Test
  void asJson() {
    assertThat(list(LESSON, "beat", "--as", "json")).isZero();
    assertThat(out()).startsWith("[\n  {\n    \"section\": \"beat\",").endsWith("]\n");
  }

  @Test
  void aFileWithErrorsListsNothing() {
    assertThat(list("groove g\n  hands : rl\n")).isEqualTo(ExitCode.ERRORS);
    assertThat(out()).isEmpty();
    assertThat(err()).contains("[bar-length]").contains("nothing can be made of it");
  }

  @Test
  void wrongWordsAreWrongUsage() {
    assertThat(list(LESSON, "anser")).isEqualTo(ExitCode.USAGE);
    assertThat(err()).contains("did you mean answer?");
    assertThat(list(LESSON, "practice")).isEqualTo(ExitCode.USAGE);
    assertThat(list(LESSON, "--as", "csv")).isEqualTo(ExitCode.USAGE);
    assertThat(err()).contains("tsv or json, not csv");
  }
}
