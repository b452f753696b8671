-- Neovim 0.7 or later, headless, started by nvim.test.ts: opens a job with a slip in it, waits for the finding,
-- applies the fix, renames a part in all files, and prints what it saw as one line of JSON. Exit 3: no finding
-- came; 4: no fix was offered; 5: the finding did not go away; 6: the rename did not come back.
local seen = {}
local function fail(code)
  io.stdout:write(vim.json.encode(seen), '\n')
  vim.cmd('cq ' .. code)
end
vim.o.swapfile = false
vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, {
  pattern = '*.dowel',
  callback = function() vim.bo.filetype = 'dowel' end,
})
local client
vim.api.nvim_create_autocmd('FileType', {
  pattern = 'dowel',
  callback = function(event)
    client = client or vim.lsp.start_client({
      name = 'dowel',
      cmd = { vim.env.DOWEL_NODE, vim.env.DOWEL_SERVER, '--stdio' },
      root_dir = vim.fn.getcwd(),
    })
    vim.lsp.buf_attach_client(event.buf, client)
  end,
})

local function text(name)
  return table.concat(vim.api.nvim_buf_get_lines(vim.fn.bufnr(name), 0, -1, false), '\n')
end

local function ask(method, params)
  local answers = vim.lsp.buf_request_sync(0, method, params, 20000) or {}
  for _, answer in pairs(answers) do return answer.result end
end

local function run()
  if not vim.wait(20000, function() return #vim.diagnostic.get(0) > 0 end, 50) then return fail(3) end
  seen.findings = {}
  for _, one in ipairs(vim.diagnostic.get(0)) do
    table.insert(seen.findings, { line = one.lnum + 1, code = one.code, message = one.message })
  end
  local first = vim.diagnostic.get(0)[1]
  vim.api.nvim_win_set_cursor(0, { first.lnum + 1, first.col })
  local params = vim.lsp.util.make_range_params()
  params.context = { diagnostics = {}, only = { 'quickfix' } }
  local actions = ask('textDocument/codeAction', params)
  if not actions or not actions[1] then return fail(4) end
  seen.fix = actions[1].title
  vim.lsp.util.apply_workspace_edit(actions[1].edit, 'utf-16')
  if not vim.wait(20000, function() return #vim.diagnostic.get(0) == 0 end, 50) then return fail(5) end
  seen.fixed = text(vim.api.nvim_buf_get_name(0))
  vim.fn.search(vim.env.DOWEL_PART)
  local rename = vim.lsp.util.make_position_params()
  rename.newName = vim.env.DOWEL_NAME
  local edit = ask('textDocument/rename', rename)
  if not edit then return fail(6) end
  vim.lsp.util.apply_workspace_edit(edit, 'utf-16')
  seen.renamed = text(vim.api.nvim_buf_get_name(0))
  seen.machine = text(vim.env.DOWEL_MACHINE)
  io.stdout:write(vim.json.encode(seen), '\n')
  vim.cmd('qa!')
end

vim.api.nvim_create_autocmd('VimEnter', { callback = function() vim.defer_fn(run, 0) end })
