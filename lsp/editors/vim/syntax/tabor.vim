" Colours for Tabor in Vim 8.1 or later and Neovim: put this file into ~/.vim/syntax/ or ~/.config/nvim/syntax/.

if exists('b:current_syntax')
  finish
endif

syntax case match
" One line at a time: what a word is depends on where it stands, and any word may be a name.
syntax match taborLine /^.*$/ contains=@taborParts
syntax cluster taborParts contains=taborSurface,taborHeading,taborLimb,taborLevel,taborValue,taborWord,taborCount,taborSign,taborLane,taborComment,taborText,taborLong,taborName

syntax match taborName contained /\<[a-z][[:alnum:]]*\%([.-][[:alnum:]]\+\)*/
" begin generated words
syntax match taborSurface contained /\%([[:alnum:]_.-]\)\@1<!\%(hihat\.splash\|snare\.cross\|hihat\.foot\|hihat\.half\|hihat\.open\|ride\.bell\|cowbell\|crash2\|splash\|china\|crash\|floor\|hihat\|snare\|kick\|ride\|tom1\|tom2\)\%([[:alnum:]_-]\|\.[[:alnum:]]\)\@!/
syntax match taborHeading contained /\%([[:alnum:]_.-]\)\@1<!\%(pattern\|groove\|player\|chart\|sheet\|step\|kit\)\%([[:alnum:]_-]\|\.[[:alnum:]]\)\@!/
syntax match taborLimb contained /\%([[:alnum:]_.-]\)\@1<!\%(hands\|right\|feet\|foot\|hand\|left\|line\|all\)\%([[:alnum:]_-]\|\.[[:alnum:]]\)\@!/
syntax match taborLevel contained /\%([[:alnum:]_.-]\)\@1<!\%(accented\|ghosted\|accent\|ghost\|plain\)\%([[:alnum:]_-]\|\.[[:alnum:]]\)\@!/
syntax match taborValue contained /\%([[:alnum:]_.-]\)\@1<!\%(sixteenth-triplets\|sixteenth-triplet\|dotted-sixteenth\|quarter-triplets\|quarter-triplet\|dotted-quarter\|thirty-seconds\|dotted-eighth\|thirty-second\|dotted-half\|quintuplets\|no-changes\|quintuplet\|septuplets\|sixteenths\|septuplet\|sixteenth\|circle-x\|quarters\|sticking\|straight\|triangle\|triplets\|changes\|diamond\|doubles\|eighths\|quarter\|triplet\|counts\|eighth\|halves\|normal\|reach\|swing\|half\|none\|off\|as\|ff\|mf\|mp\|on\|pp\|f\|p\|x\)\%([[:alnum:]_-]\|\.[[:alnum:]]\)\@!/
syntax match taborWord contained /\%([[:alnum:]_.-]\)\@1<!\%(left-handed\|open-handed\|ta-ka-di-mi\|diminuendo\|crescendo\|left-lead\|count-in\|language\|ostinato\|sections\|between\|columns\|degrees\|dynamic\|earlier\|follows\|grouped\|minutes\|rimshot\|seconds\|surface\|teacher\|through\|without\|column\|diddle\|double\|letter\|levels\|limits\|minute\|pickup\|second\|spread\|threes\|triple\|beats\|blank\|choke\|click\|climb\|every\|first\|fours\|large\|later\|place\|plays\|shift\|split\|staff\|tempo\|times\|title\|trade\|weeks\|where\|bars\|beat\|buzz\|days\|drag\|drop\|each\|feel\|fill\|flam\|from\|goal\|head\|high\|hold\|last\|like\|mark\|move\|next\|only\|open\|over\|page\|play\|rest\|roll\|ruff\|show\|swap\|take\|text\|time\|twos\|week\|with\|add\|and\|bar\|cue\|day\|for\|key\|log\|new\|say\|use\|a4\|at\|by\|cm\|de\|en\|es\|fr\|in\|of\|to\|a\|e\)\%([[:alnum:]_-]\|\.[[:alnum:]]\)\@!/
" end generated words
syntax match taborName contained /\%(^\s*\%(groove\|step\|sheet\|chart\|player\|pattern\|kit\)\s\+\)\@<=\%(like\>\|from\>\)\@![a-z][[:alnum:]-]*/

syntax match taborCount contained /\%([[:alnum:]-]\)\@1<!\d\+\%([ea&+]\|st\|nd\|rd\|th\|%\|\%(\a\|[^\x00-\x7f]\)\%(\a\|[^\x00-\x7f]\|['-]\)*\)\?\%(\.\d\+\)*\%(\/\d\+\)\?\%(\w\)\@!/
syntax match taborCount contained /\%(\S\)\@1<![&+ea]\%(\S\)\@!/
syntax match taborSign contained /[,=+|]/

" What follows the colon of a part or a pattern.
syntax match taborLane contained /\%([[:alnum:].-]\s*\)\@<=:.*$/ contains=taborBar,taborStroke,taborAccent,taborRest,taborOrnament,taborSpread,taborGhost,taborComment,taborText
syntax match taborColon contained /:/
syntax match taborBar contained /[|:]/
syntax match taborStroke contained /[a-z]/
syntax match taborAccent contained /[A-Z]/
syntax match taborRest contained /[.-]/
syntax match taborOrnament contained /['‘’/~=!^%{}()]/
syntax match taborGhost contained /(\@1<=[^)[:space:]|]\+)\@=/
syntax match taborSpread contained /\S\@1<=:\d\+/

syntax match taborComment contained /#.*$/
syntax match taborText contained /["“”„][^"“”„]*["“”„]\?/
syntax region taborLong start=/"""/ end=/"""/ keepend

highlight default link taborHeading Keyword
highlight default link taborWord Statement
highlight default link taborLimb Identifier
highlight default link taborLevel StorageClass
highlight default link taborValue Constant
highlight default link taborSurface Type
highlight default link taborName Function
highlight default link taborCount Number
highlight default link taborSpread Number
highlight default link taborSign Delimiter
highlight default link taborBar Delimiter
highlight default link taborColon Delimiter
highlight default link taborStroke Character
highlight default link taborAccent Special
highlight default link taborGhost Comment
highlight default link taborRest Operator
highlight default link taborOrnament Operator
highlight default link taborComment Comment
highlight default link taborText String
highlight default link taborLong String

let b:current_syntax = 'tabor'
