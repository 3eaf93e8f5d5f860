" Tabor in Vim 8.1 or later. Put this file into ~/.vim/plugin/ and syntax/tabor.vim into ~/.vim/syntax/. The
" language client is the vim-lsp plugin; without it, files are still known, coloured and indented.

augroup tabor
  autocmd!
  autocmd BufRead,BufNewFile *.tabor setfiletype tabor
  autocmd FileType tabor setlocal commentstring=#\ %s expandtab shiftwidth=2 softtabstop=2 tabstop=2 autoindent
  autocmd User lsp_setup call s:Register()
augroup END

" One server for each root: every file of a folder must be seen by the same one, saved or not.
function! s:Register() abort
  call lsp#register_server({
        \ 'name': 'tabor',
        \ 'cmd': {server_info -> [get(g:, 'tabor_lsp', 'tabor-lsp')]},
        \ 'root_uri': {server_info -> lsp#utils#path_to_uri(s:Root())},
        \ 'allowlist': ['tabor'],
        \ })
endfunction

function! s:Root() abort
  let l:git = lsp#utils#find_nearest_parent_file_directory(lsp#utils#get_buffer_path(), '.git/')
  return empty(l:git) ? fnamemodify(lsp#utils#get_buffer_path(), ':p:h') : l:git
endfunction
