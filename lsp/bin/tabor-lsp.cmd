@echo off
rem Starts Tabor's language server from the jar of this copy. Never run on Windows so far.
setlocal
set "jar=%~dp0..\target\tabor-lsp.jar"
if not exist "%jar%" set "jar=%~dp0..\lib\tabor-lsp.jar"
if not exist "%jar%" (
  echo tabor-lsp: there is no tabor-lsp.jar in the folder lib beside this one; unpack the archive again 1>&2
  exit /b 1
)
set "java=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
if exist "%~dp0..\runtime\bin\java.exe" set "java=%~dp0..\runtime\bin\java.exe"
if not "%java%"=="java" goto start
where java >nul 2>nul
if not errorlevel 1 goto start
echo tabor-lsp: Java 17 or later is needed, and no java was found; set JAVA_HOME or PATH 1>&2
exit /b 1
:start
"%java%" -Xshare:auto -XX:TieredStopAtLevel=1 -Xms32m -Xmn12m -Xmx768m -XX:+UseSerialGC -XX:-UsePerfData -cp "%jar%" tabor.lsp.ServerMain %*
exit /b %errorlevel%
