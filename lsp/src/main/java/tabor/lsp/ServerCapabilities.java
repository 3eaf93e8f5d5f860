package tabor.lsp;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

/**
 * The answer to {@code initialize}. Written as JSON, since building it from LSP4J's classes would
 * load all of them before the first answer.
 */
final class ServerCapabilities {
  private ServerCapabilities() {}

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
        "codeLensProvider": {"resolveProvider": false},
        "documentLinkProvider": {"resolveProvider": false},
        "completionProvider": {"triggerCharacters": [" ", ":", "\\"", ",", "."]},
        "signatureHelpProvider": {"triggerCharacters": [" "], "retriggerCharacters": [" ", ","]},
        "codeActionProvider": {
          "codeActionKinds": ["quickfix", "refactor.rewrite", "source.fixAll.tabor"]},
        "documentFormattingProvider": true,
        "documentRangeFormattingProvider": true,
        "documentOnTypeFormattingProvider": {"firstTriggerCharacter": "\\n"},
        "executeCommandProvider": {"commands": ["tabor.build", "tabor.play", "tabor.stop",
          "tabor.showGrid", "tabor.showSvg", "tabor.changes"]},
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
  static JsonObject answer(PositionEncoding encoding, String version) {
    JsonObject capabilities = JsonParser.parseString(WHAT).getAsJsonObject();
    capabilities.addProperty("positionEncoding", encoding.word());
    JsonObject info = new JsonObject();
    info.addProperty("name", "tabor-lsp");
    info.addProperty("version", version);
    JsonObject answer = new JsonObject();
    answer.add("capabilities", capabilities);
    answer.add("serverInfo", info);
    return answer;
  }
}
