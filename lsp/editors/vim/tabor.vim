" Tabor in Vim 8.1 or later. Put this file into ~/.vim/plugin/. The language client is the vim-lsp plugin;
" without it, files are still known and coloured.

augroup tabor
  autocmd!
  autocmd BufRead,BufNewFile *.tabor setfiletype tabor
  autocmd FileType tabor setlocal commentstring=#\ %s
  autocmd Syntax tabor call s:Syntax()
  autocmd User lsp_setup call lsp#register_server({
        \ 'name': 'tabor',
        \ 'cmd': {server_info -> [get(g:, 'tabor_lsp', 'tabor-lsp')]},
        \ 'allowlist': ['tabor'],
        \ })
augroup END

function! s:Syntax() abort
  syntax match taborComment /#.*$/
  syntax region taborText start=/"/ end=/"/ oneline
  syntax region taborText start=/"""/ end=/"""/
  syntax match taborHeading /^\s*\%(groove\|step\|chart\|pattern\|kit\)\>/
  syntax match taborWord /\<\%(plays\?\|split\|between\|add\|drop\|accent\|ghost\|plain\|double\|triple\|flam\|drag\|ruff\|buzz\|diddle\|choke\|open\|rimshot\|follows\|move\|shift\|swap\|only\|take\|fill\|at\|in\|from\|to\|where\|every\)\>/
  syntax match taborCount /\<\d\+[e&a]\?\%(\.\d\+\)*/
  syntax match taborBar /|/
  highlight default link taborComment Comment
  highlight default link taborText String
  highlight default link taborHeading Keyword
  highlight default link taborWord Statement
  highlight default link taborCount Number
  highlight default link taborBar Delimiter
endfunction
