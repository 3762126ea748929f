@echo off
rem Starts Framewright with a Java 25: JAVA_HOME if it is one, else that on the PATH or in the usual places.
setlocal DisableDelayedExpansion
set "here=%~dp0"
for %%l in ("%here%..\lib") do set "lib=%%~fl"
set "java="
if defined JAVA_HOME call :try "%JAVA_HOME%\bin\java.exe"
if not defined java for %%j in (java.exe) do if not "%%~$PATH:j"=="" call :try "%%~$PATH:j"
if not defined java for /d %%d in ("%ProgramFiles%\Eclipse Adoptium\jdk-25*" "%ProgramFiles%\Java\jdk-25*" "%ProgramFiles%\Microsoft\jdk-25*" "%USERPROFILE%\.jdks\*25*") do call :try "%%~d\bin\java.exe"
if not defined java (
  echo framewright: no Java 25 was found in JAVA_HOME, on the PATH or in the usual places. 1>&2
  echo Install a JDK 25 ^(for example Temurin^) or set JAVA_HOME to one. 1>&2
  exit /b 2
)

rem JavaFX wants to be modules; everything else is on the class path.
set "modules="
for /f "delims=" %%j in ('dir /b "%lib%\javafx-*.jar"') do call :module "%lib%\%%j"

rem A command is over sooner without the collector that the app needs, the short ones without the compiler for long runs.
set "collector=-XX:+UseSerialGC"
set "compiler="
set "what=%~1"
if not defined what set "what=open"
if "%what%"=="open" set "collector=@%here%app.options"
for %%c in (list mark start check new-convention) do if "%what%"=="%%c" set "compiler=-XX:TieredStopAtLevel=1"

"%java%" --enable-native-access=ALL-UNNAMED,javafx.graphics --module-path "%modules%" --add-modules javafx.controls "%collector%" %compiler% %FRAMEWRIGHT_JAVA_OPTIONS% "-Dframewright.home=%here%.." -cp "%lib%\*" org.framewright.cli.Framewright %*
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

:module
if defined modules (set "modules=%modules%;%~1") else set "modules=%~1"
goto :eof
