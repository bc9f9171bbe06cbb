@echo off
rem Starts Pipwright on Windows from where its archive was unpacked; needs a Java runtime, 17 or newer.
rem Not tried on Windows yet.
setlocal
set "home=%~dp0.."
if not defined PIPWRIGHT_CLASSPATH set "PIPWRIGHT_CLASSPATH=%home%\lib\*;%home%\lib\reference\*"
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java.exe"

rem Commands that compute for longer than the JVM takes to warm up.
set "long="
for %%c in (train duel standings rollout review drill desk tables) do if "%~1"=="%%c" set "long=1"
for %%a in (%*) do for %%c in (--batch --lookahead --seconds --rollout) do if "%%~a"=="%%c" set "long=1"
set "flags=-XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Xshare:auto"
if defined long set "flags=--add-modules jdk.incubator.vector --add-opens java.base/java.io=ALL-UNNAMED -XX:MaxRAMPercentage=50"
if "%~1"=="train" if not defined OMP_NUM_THREADS set "OMP_NUM_THREADS=1"

"%java%" %flags% -Dorg.bytedeco.javacpp.maxPhysicalBytes=0 -Dorg.deeplearning4j.crash.reporting.enabled=false %PIPWRIGHT_JAVA_OPTIONS% -cp "%PIPWRIGHT_CLASSPATH%" org.pipwright.cli.Main %*
exit /b %errorlevel%
