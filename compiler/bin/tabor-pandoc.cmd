@echo off
rem Tabor as a filter of Pandoc. Never run on Windows so far.
call "%~dp0tabor.cmd" pandoc %*
exit /b %errorlevel%
