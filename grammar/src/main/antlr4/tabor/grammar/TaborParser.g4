parser grammar TaborParser;
options { tokenVocab = TaborLexer; }
line : words+=WORD* EOF ;
