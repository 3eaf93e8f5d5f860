// Puts the language server that the build made into the package: its launcher, its jar, the pages on its codes.
const fs = require("fs");
const path = require("path");

const project = path.join(__dirname, "..", "..", "..");
const server = path.join(__dirname, "server");
const jar = path.join(project, "lsp", "target", "tabor-lsp.jar");

fs.rmSync(server, { recursive: true, force: true });
if (!fs.existsSync(jar)) {
  console.error("No server inside: build it first with mvn -q -DskipTests package. The package will look for tabor-lsp on the PATH.");
} else {
  fs.mkdirSync(path.join(server, "bin"), { recursive: true });
  fs.mkdirSync(path.join(server, "target"));
  fs.copyFileSync(path.join(project, "lsp", "bin", "tabor-lsp"), path.join(server, "bin", "tabor-lsp"));
  fs.chmodSync(path.join(server, "bin", "tabor-lsp"), 0o755);
  fs.copyFileSync(jar, path.join(server, "target", "tabor-lsp.jar"));
  fs.cpSync(path.join(project, "docs", "diagnostics"), path.join(server, "docs", "diagnostics"), { recursive: true });
}
