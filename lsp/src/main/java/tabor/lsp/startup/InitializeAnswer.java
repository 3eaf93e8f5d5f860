package tabor.lsp.startup;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

/**
 * The answer to {@code initialize}. Written as JSON, since building it from LSP4J's classes would
 * load all of them before the first answer.
 */
public final class InitializeAnswer {
  private InitializeAnswer() {}

  private static final String WHAT =
      """
      {
        "textDocumentSync": {"openClose": true, "change": 2, "save": {"includeText": false}},
        "diagnosticProvider": {
          "identifier": "tabor", "interFileDependencies": true, "workspaceDiagnostics": false},
        "hoverProvider": true,
        "definitionProvider": true,
        "referencesProvider": true,
        "documentHighlightProvider": true,
        "documentSymbolProvider": true,
        "workspaceSymbolProvider": true,
        "foldingRangeProvider": true,
        "selectionRangeProvider": true,
        "inlayHintProvider": true,
        "codeLensProvider": {"resolveProvider": true},
        "documentLinkProvider": {"resolveProvider": false},
        "completionProvider": {},
        "signatureHelpProvider": {"triggerCharacters": [" "], "retriggerCharacters": [" ", ","]},
        "codeActionProvider": {"resolveProvider": true, "codeActionKinds": ["quickfix", "refactor.rewrite", "source.fixAll.tabor"]},
        "documentFormattingProvider": true,
        "documentRangeFormattingProvider": true,
        "documentOnTypeFormattingProvider": {"firstTriggerCharacter": "\\n"},
        "executeCommandProvider": {"workDoneProgress": true, "commands": ["tabor.build", "tabor.play", "tabor.stop",
          "tabor.showGrid", "tabor.showPlayer", "tabor.showSvg", "tabor.changes", "tabor.apply"]},
        "renameProvider": {"prepareProvider": true},
        "semanticTokensProvider": {
          "legend": {
            "tokenTypes": ["keyword", "class", "function", "type", "variable", "parameter",
              "enumMember", "number", "event", "string", "property", "operator", "comment"],
            "tokenModifiers": ["declaration", "accent"]},
          "full": {"delta": true}, "range": true},
        "workspace": {
          "workspaceFolders": {"supported": true, "changeNotifications": true}}
      }
      """;

  /** The whole answer. */
  public static JsonObject of(String encoding, String version) {
    JsonObject capabilities = JsonParser.parseString(WHAT).getAsJsonObject();
    capabilities.addProperty("positionEncoding", encoding);
    JsonObject info = new JsonObject();
    info.addProperty("name", "tabor-lsp");
    info.addProperty("version", version);
    JsonObject answer = new JsonObject();
    answer.add("capabilities", capabilities);
    answer.add("serverInfo", info);
    return answer;
  }
}
