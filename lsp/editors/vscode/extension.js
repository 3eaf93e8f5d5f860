// The Tabor extension: starts the language server and offers its commands for the section under the cursor.
const childProcess = require("child_process");
const fs = require("fs");
const path = require("path");
const vscode = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

// The command that the person set, the server inside this extension, or the one on the PATH.
function serverCommand(folder) {
  const set = vscode.workspace.getConfiguration("tabor").get("server");
  if (set) {
    return { command: set };
  }
  const jar = path.join(folder, "server", "target", "tabor-lsp.jar");
  const launcher = path.join(folder, "server", "bin", "tabor-lsp");
  if (!fs.existsSync(jar)) {
    return { command: "tabor-lsp" };
  }
  if (process.platform === "win32") {
    const home = process.env.JAVA_HOME;
    return { command: home ? path.join(home, "bin", "java") : "java", args: ["-jar", jar] };
  }
  if (!fs.existsSync(jar.replace(/jar$/, "jsa"))) {
    // Once: later starts then need not read the classes anew. Without it everything works as well.
    const made = childProcess.spawn("sh", [launcher, "--make-archive"], { detached: true, stdio: "ignore" });
    made.on("error", () => {});
    made.unref();
  }
  return { command: "sh", args: [launcher] };
}

// Opens what a command answers with. The server is told to leave that to us, so that it opens once.
async function open(command, answer) {
  if (!answer) {
    return;
  }
  if (command === "tabor.showGrid" || command === "tabor.showPlayer") {
    const document = await vscode.workspace.openTextDocument({ content: answer });
    await vscode.window.showTextDocument(document, vscode.ViewColumn.Beside, true);
  } else if (command === "tabor.showSvg") {
    await vscode.commands.executeCommand("vscode.open", vscode.Uri.parse(answer), vscode.ViewColumn.Beside);
  }
}

async function send(name) {
  const editor = vscode.window.activeTextEditor;
  if (!client || !editor || editor.document.languageId !== "tabor") {
    return;
  }
  const uri = editor.document.uri.toString();
  const { line, character } = editor.selection.active;
  const args = name === "stop" ? [] : name === "build" ? [uri] : [uri, { line, character }];
  const command = `tabor.${name}`;
  try {
    await open(command, await client.sendRequest("workspace/executeCommand", { command, arguments: args }));
  } catch (problem) {
    vscode.window.showWarningMessage(problem.message);
  }
}

async function activate(context) {
  const settings = vscode.workspace.getConfiguration("tabor");
  client = new LanguageClient("tabor", "Tabor", serverCommand(context.extensionPath), {
    documentSelector: [{ language: "tabor" }],
    initializationOptions: { showDocument: false, inlayHints: settings.get("inlayHints"), playerLens: settings.get("playerLens") },
    synchronize: { configurationSection: "tabor" },
    middleware: {
      // What a lens sends comes by here.
      async executeCommand(command, args, next) {
        try {
          const answer = await next(command, args);
          await open(command, answer);
          return answer;
        } catch (problem) {
          vscode.window.showWarningMessage(problem.message);
          return undefined;
        }
      },
    },
  });
  for (const name of ["play", "stop", "build", "showGrid", "showPlayer", "showSvg"]) {
    context.subscriptions.push(vscode.commands.registerCommand(`tabor.here.${name}`, () => send(name)));
  }
  await client.start();
}

function deactivate() {
  return client ? client.stop() : undefined;
}

module.exports = { activate, deactivate };
