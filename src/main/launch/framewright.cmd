@echo off
rem Starts Framewright: with the Java that came with it, else with a Java 25, JAVA_HOME if it is one, that on the PATH or one in the usual places.
setlocal DisableDelayedExpansion
set "here=%~dp0"
for %%l in ("%here%..\lib") do set "lib=%%~fl"
set "java="
set "own="
if exist "%here%..\runtime\bin\java.exe" set "own=yes"
if defined own for %%j in ("%here%..\runtime\bin\java.exe") do set "java=%%~fj"
if not defined java if defined JAVA_HOME call :try "%JAVA_HOME%\bin\java.exe"
if not defined java for %%j in (java.exe) do if not "%%~$PATH:j"=="" call :try "%%~$PATH:j"
if not defined java for /d %%d in ("%ProgramFiles%\Eclipse Adoptium\jdk-25*" "%ProgramFiles%\Java\jdk-25*" "%ProgramFiles%\Microsoft\jdk-25*" "%USERPROFILE%\.jdks\*25*") do call :try "%%~d\bin\java.exe"
if not defined java (
  echo framewright: no Java 25 was found in JAVA_HOME, on the PATH or in the usual places. 1>&2
  echo Install a JDK 25 ^(for example Temurin^) or set JAVA_HOME to one. 1>&2
  exit /b 2
)

rem What every command loads comes first, so that it is found without opening all the others.
set "classes="
for /f "delims=" %%j in ('dir /b /on "%lib%\framewright-*.jar" "%lib%\picocli-*.jar"') do call :class "%lib%\%%j"
set "classes=%classes%;%lib%\*"

rem A command is over sooner without the collector that the app needs, most without the compiler for long runs.
set "what=%~1"
if not defined what set "what=open"
set "collector=-XX:+UseSerialGC"
set "compiler=-XX:TieredStopAtLevel=1"
for %%c in (copies copy deliver demo frames report returns serve slates verify) do if "%what%"=="%%c" set "compiler="
set "natives=-XX:-UsePerfData --enable-native-access=ALL-UNNAMED"
set "fx="
set "cache=%lib%\commands.aot"
rem What it says of itself is there as text; a cache takes longer to open than that to print.
for %%c in (--version -V --help -h) do if "%what%"=="%%c" set "cache="
if not "%what%"=="open" goto start

rem JavaFX wants to be modules; in the Java that came with the program it is.
set "collector=@%here%app.options"
set "compiler="
set "natives=--enable-native-access=ALL-UNNAMED,javafx.graphics"
set "cache=%lib%\app.aot"
set "modules="
if not defined own for /f "delims=" %%j in ('dir /b "%lib%\javafx-*.jar"') do call :module "%lib%\%%j"
if not defined own set "fx=yes"

:start
rem What Java made of the classes when the program was packaged; where it does not fit, Java does without.
set "kept="
if defined own if defined cache if exist "%cache%" set "kept=-XX:AOTCache=%cache%"
set "log=-Xlog:disable -Xlog:all=error,cds*=off,aot*=off:stderr"
if defined fx goto modules
if defined kept goto kept
"%java%" %log% %natives% "%collector%" %compiler% %FRAMEWRIGHT_JAVA_OPTIONS% "-Dframewright.home=%here%.." -cp "%classes%" org.framewright.cli.Framewright %*
exit /b %ERRORLEVEL%

:kept
"%java%" %log% "%kept%" %natives% "%collector%" %compiler% %FRAMEWRIGHT_JAVA_OPTIONS% "-Dframewright.home=%here%.." -cp "%classes%" org.framewright.cli.Framewright %*
exit /b %ERRORLEVEL%

:modules
"%java%" %log% %natives% --module-path "%modules%" --add-modules javafx.controls "%collector%" %FRAMEWRIGHT_JAVA_OPTIONS% "-Dframewright.home=%here%.." -cp "%classes%" org.framewright.cli.Framewright %*
exit /b %ERRORLEVEL%

:try
if defined java goto :eof
if not exist "%~1" goto :eof
rem A JDK says its version in a file beside bin: JAVA_VERSION="25.0.1".
if not exist "%~dp1..\release" goto :eof
for /f "usebackq tokens=1,2 delims==" %%a in ("%~dp1..\release") do if "%%a"=="JAVA_VERSION" call :version "%~1" %%b
goto :eof

:version
set "number=%~2"
if "%number:~0,3%"=="25." set "java=%~1"
if "%number%"=="25" set "java=%~1"
goto :eof

:class
if defined classes (set "classes=%classes%;%~1") else set "classes=%~1"
goto :eof

:module
if defined modules (set "modules=%modules%;%~1") else set "modules=%~1"
goto :eof
