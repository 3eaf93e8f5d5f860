-- Tabor in Neovim 0.7 or later, without plugins. Put this file into ~/.config/nvim/plugin/ and
-- ../vim/syntax/tabor.vim into ~/.config/nvim/syntax/.
-- The server is found on the PATH as tabor-lsp, or where vim.g.tabor_lsp says. vim.g.tabor_hints = true
-- shows notes in the lines where this Neovim can (0.10 or later).

vim.api.nvim_create_autocmd({ "BufRead", "BufNewFile" }, {
  pattern = "*.tabor",
  callback = function()
    vim.bo.filetype = "tabor"
  end,
})

local function root(file)
  local start = vim.fn.fnamemodify(file, ":p:h")
  local git = vim.fn.finddir(".git", start .. ";")
  local found = git ~= "" and vim.fn.fnamemodify(git, ":p:h:h") or start
  return vim.loop.fs_realpath(found) or found
end

local function keys(buffer)
  local function map(lhs, what)
    vim.api.nvim_buf_set_keymap(buffer, "n", lhs, "<Cmd>lua " .. what .. "<CR>", { noremap = true, silent = true })
  end
  map("K", "vim.lsp.buf.hover()")
  map("gd", "vim.lsp.buf.definition()")
  map("gr", "vim.lsp.buf.references()")
  map("<Leader>r", "vim.lsp.buf.rename()")
  map("<Leader>a", "vim.lsp.buf.code_action()")
  map("<Leader>f", vim.lsp.buf.format and "vim.lsp.buf.format()" or "vim.lsp.buf.formatting()")
  map("<Leader>h", "vim.lsp.buf.document_highlight()")
  map("]d", "vim.diagnostic.goto_next()")
  map("[d", "vim.diagnostic.goto_prev()")
  vim.bo[buffer].omnifunc = "v:lua.vim.lsp.omnifunc"
end

-- Sends a command about the section under the cursor: TaborDo play, stop, showGrid, showPlayer, showSvg,
-- build.
local function command(opts)
  local position = vim.lsp.util.make_position_params(0, "utf-16").position
  local uri = vim.uri_from_bufnr(0)
  local name = opts.args
  local arguments = (name == "stop") and {} or (name == "build") and { uri } or { uri, position }
  vim.lsp.buf_request(0, "workspace/executeCommand", { command = "tabor." .. name, arguments = arguments },
    function(err, result)
      if err then
        vim.notify(err.message, vim.log.levels.WARN)
      elseif name == "showGrid" or name == "showPlayer" then
        vim.cmd("new")
        vim.bo.buftype = "nofile"
        vim.api.nvim_buf_set_lines(0, 0, -1, false, vim.split(result, "\n"))
      elseif type(result) == "string" then
        print(result)
      end
    end)
end

-- One client for each root: every file of a folder must be seen by the same server, saved or not.
local clients = {}

local function client_for(folder)
  local id = clients[folder]
  local client = id and vim.lsp.get_client_by_id(id)
  if client and not client.is_stopped() then
    return id
  end
  id = vim.lsp.start_client({
    name = "tabor",
    cmd = type(vim.g.tabor_lsp) == "table" and vim.g.tabor_lsp or { vim.g.tabor_lsp or "tabor-lsp" },
    root_dir = folder,
    workspace_folders = { { uri = vim.uri_from_fname(folder), name = folder } },
    flags = { debounce_text_changes = 0 },
    init_options = { showDocument = false, inlayHints = vim.g.tabor_hints == true },
    on_exit = function()
      clients[folder] = nil
    end,
  })
  clients[folder] = id
  return id
end

local function start(buffer)
  vim.bo[buffer].commentstring = "# %s"
  vim.bo[buffer].expandtab = true
  vim.bo[buffer].shiftwidth = 2
  vim.bo[buffer].softtabstop = 2
  vim.bo[buffer].tabstop = 2
  vim.bo[buffer].autoindent = true
  local id = client_for(root(vim.api.nvim_buf_get_name(buffer)))
  if not id then
    return
  end
  vim.lsp.buf_attach_client(buffer, id)
  keys(buffer)
  if vim.g.tabor_hints and vim.lsp.inlay_hint then
    vim.lsp.inlay_hint.enable(true, { bufnr = buffer })
  end
  vim.api.nvim_buf_create_user_command(buffer, "TaborDo", command, {
    nargs = 1,
    complete = function()
      return { "play", "stop", "showGrid", "showPlayer", "showSvg", "build" }
    end,
  })
end

vim.api.nvim_create_autocmd("FileType", {
  pattern = "tabor",
  callback = function(args)
    start(args and args.buf or vim.api.nvim_get_current_buf())
  end,
})
