@echo off
rem Starts Ouzelbook with the Java that is there: JAVA_HOME's, else the one on the path.
setlocal
set "APP=%~dp0.."
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
"%JAVA%" -version >nul 2>&1
if errorlevel 1 (
    echo Ouzelbook needs Java 17 or newer, and there is none. 1>&2
    exit /b 1
)
if not defined OUZELBOOK_MEMORY set "OUZELBOOK_MEMORY=1g"
set "WINDOW="
if /i "%~1"=="open" set "WINDOW=yes"
for %%A in (%*) do if /i "%%~A"=="--window" set "WINDOW=yes"
set "FLAGS=-XX:TieredStopAtLevel=1"
rem Most commands are over before Java's second compiler has paid; those that may go through a million rows need it, as does what a
rem large book or file is asked, and those that weigh every map of a river need it for what they do over and over: it is asked ten times
rem later than is usual.
set "LATER=-XX:Tier4InvocationThreshold=50000 -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000"
for %%A in (%*) do (
    if not "%%~zA"=="" if %%~zA GTR 50000000 set "FLAGS="
    for %%B in ("%%~A.mv.db") do if not "%%~zB"=="" if %%~zB GTR 50000000 set "FLAGS="
)
for %%C in (import merge undo check backup) do if /i "%~1"=="%%C" set "FLAGS="
for %%C in (demo map density trend report) do if /i "%~1"=="%%C" set "FLAGS=%LATER%"
if /i "%~1 %~2"=="estimate territories" set "FLAGS=%LATER%"
if defined WINDOW set FLAGS=--module-path "%APP%\fx" --add-modules javafx.controls
"%JAVA%" %FLAGS% -XX:+UseSerialGC "-Xmx%OUZELBOOK_MEMORY%" -cp "%APP%\lib\*" org.ouzelbook.ui.Main %*
exit /b %ERRORLEVEL%
