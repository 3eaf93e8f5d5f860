// The Tabor extension: starts the language server and offers its commands for the section under the cursor.
const vscode = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

async function send(name) {
  const editor = vscode.window.activeTextEditor;
  if (!client || !editor || editor.document.languageId !== "tabor") {
    return undefined;
  }
  const uri = editor.document.uri.toString();
  const { line, character } = editor.selection.active;
  const args = name === "stop" ? [] : name === "build" ? [uri] : [uri, { line, character }];
  try {
    return await client.sendRequest("workspace/executeCommand", { command: `tabor.${name}`, arguments: args });
  } catch (problem) {
    vscode.window.showWarningMessage(problem.message);
    return undefined;
  }
}

async function showGrid() {
  const grid = await send("showGrid");
  if (grid) {
    const document = await vscode.workspace.openTextDocument({ content: grid });
    await vscode.window.showTextDocument(document, vscode.ViewColumn.Beside, true);
  }
}

async function showSvg() {
  const uri = await send("showSvg");
  if (uri) {
    await vscode.commands.executeCommand("vscode.open", vscode.Uri.parse(uri), vscode.ViewColumn.Beside);
  }
}

async function activate(context) {
  const command = vscode.workspace.getConfiguration("tabor").get("server") || "tabor-lsp";
  client = new LanguageClient(
    "tabor",
    "Tabor",
    { command },
    { documentSelector: [{ language: "tabor" }] },
  );
  context.subscriptions.push(
    vscode.commands.registerCommand("tabor.here.play", () => send("play")),
    vscode.commands.registerCommand("tabor.here.stop", () => send("stop")),
    vscode.commands.registerCommand("tabor.here.build", () => send("build")),
    vscode.commands.registerCommand("tabor.here.showGrid", showGrid),
    vscode.commands.registerCommand("tabor.here.showSvg", showSvg),
  );
  await client.start();
}

function deactivate() {
  return client ? client.stop() : undefined;
}

module.exports = { activate, deactivate };
